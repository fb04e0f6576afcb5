/** A line without a verb: a name is shown, a fact on a saved car is asked about once, two sides are compared. */
import { canBeTold, isInput } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import { answer } from '../answer.js';
import { itemsText } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { Context } from '../context.js';
import { firstCarLine, refused } from '../house/own.js';
import { askPlace } from '../house/record.js';
import { catalog, nothing, numbersOf } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { gearTopic } from '../topics/gear.js';
import { pressureTopic } from '../topics/pressure.js';
import { springTopic } from '../topics/spring.js';
import { tireTopic } from '../topics/tire.js';
import { type Topic, topicAnswer } from '../topics/topic.js';
import { wheelTopic } from '../topics/wheel.js';
import { askedOf } from './asked.js';
import { compareSides } from './compare.js';
import { showAnswer } from './show.js';

const topics: readonly Topic[] = [gearTopic, springTopic, tireTopic, wheelTopic, pressureTopic];
const isFact = (item: Item): boolean => item.said !== undefined && canBeTold(item.entry);

export function withoutVerb(reading: Reading, line: string, context: Context): Outcome | Promise<Outcome> {
  const [clause] = reading.sides;
  if (reading.sides.length > 1) return compareSides(reading, context);
  const items = clause?.items ?? [];
  const subjects = clause?.subjects ?? [];
  if (items.length === 0 && subjects.length === 0 && !reading.everything) {
    return refused("I can't make sense of that.", 'help');
  }
  const topic = topicOf(reading);
  if (topic) return topicAnswer(topic, { ...reading, sides: [{ items: [], subjects }] }, context);
  const facts = items.filter((item) => isFact(item) && item.entry.scope !== 'question');
  // Something is asked for: what is told is supposed.
  if (facts.length === 0 || facts.length < items.length) return showAnswer(reading, context);
  const size = facts.every(({ entry }) => entry.kind === 'designation');
  const tells = subjects.length > 0 || context.garage.chosen !== undefined;
  if (size) return topicAnswer(facts.some(({ entry }) => entry.path.startsWith('wheel')) ? wheelTopic : tireTopic, reading, context);
  if (tells) return recordOrTry(reading, facts, context);
  return fromTold(reading, line, context);
}

/** `gear at 6500 rpm`: the word of a topic with conditions alone asks for the topic, not for the fact of the same name. */
function topicOf(reading: Reading): Topic | undefined {
  const items = reading.sides[0]?.items ?? [];
  if (reading.tried.length === 0 || items.some((item) => item.said !== undefined || !isInput(item.entry))) return undefined;
  const [first] = reading.rest.toLowerCase().split(/\s+/);
  return topics.find(({ word }) => word === first);
}

/** A fact on a saved car: recorded, or only tried? Asked once. */
function recordOrTry(reading: Reading, facts: readonly Item[], context: Context): Outcome {
  const subject = reading.sides[0]?.subjects.find((one) => one.is === 'car');
  const other = subject?.is === 'car' ? context.garage.mine.find(({ id }) => id === subject.id) : undefined;
  const text = `${itemsText(facts, context)}${reading.tried.length > 0 ? ` with ${itemsText(reading.tried, context)}` : ''}`;
  const place = askPlace(facts, 'set');
  if (place) return { answer: place };
  const car = other ?? context.garage.chosen;
  const on = other && other.id !== context.garage.chosen?.id ? ` on ${other.name}` : '';
  return {
    answer: answer('asked', `${text}: record it${car ? ` for ${car.name}` : ''}, or only try it?`, {
      choices: [
        { label: 'record it', line: `set ${text}${on}` },
        { label: 'only try it', line: `try ${text}${on}` },
      ],
    }),
  };
}

/** Figures that follow from what was told alone; else the offer to save it. */
async function fromTold(reading: Reading, line: string, context: Context): Promise<Outcome> {
  const asked = askedOf(reading.sides[0], reading, context);
  if ('answer' in asked) return asked;
  const [told, without] = [numbersOf(asked.looked.situation), numbersOf(nothing.situation)];
  const follows = (path: string) => told.status(path) === 'computed' && told.get(path) !== without.get(path);
  const figures = catalog.entries.filter(
    (entry) =>
      entry.kind === 'figure' && (entry.words?.length ?? 0) > 0 && placesOf(entry.scope).some((place) => follows(pathAt(place, entry))),
  );
  const saved = `save my car turnip ${line}`;
  const offer = { label: saved, line: saved };
  if (figures.length > 0) {
    const topic: Topic = { word: 'told', also: [], summary: '', examples: [{ line: firstCarLine, does: '' }], figures };
    const { answer: shown } = await topicAnswer(topic, reading, context);
    if (shown.kind === 'told') return { answer: { ...shown, next: [offer] } };
  }
  return { answer: answer('asked', 'You have no saved car to record that for. Save one with it?', { choices: [offer] }) };
}
