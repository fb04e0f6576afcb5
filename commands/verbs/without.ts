/** A line without a verb: a name is shown, a fact on a saved car is asked about once, two sides are compared. */
import { isInput } from '../../core/catalog.js';
import { answer } from '../answer.js';
import { itemsText } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { Context } from '../context.js';
import { firstCarLine, refused } from '../house/own.js';
import { askPlace } from '../house/record.js';
import { catalog, entryAt } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { tireTopic } from '../topics/tire.js';
import { topicAnswer } from '../topics/topic.js';
import { wheelTopic } from '../topics/wheel.js';
import { pathsOf } from './asked.js';
import { compareSides } from './compare.js';
import { showAnswer } from './show.js';

const isFact = (item: Item): boolean => item.said !== undefined && isInput(item.entry);

export function withoutVerb(reading: Reading, line: string, context: Context): Outcome {
  const [clause] = reading.sides;
  if (reading.sides.length > 1) return compareSides(reading, context);
  const items = clause?.items ?? [];
  const subjects = clause?.subjects ?? [];
  if (items.length === 0 && subjects.length === 0 && !reading.everything) {
    return refused('That is not something that I can read.', 'help');
  }
  const facts = items.filter((item) => isFact(item) && item.entry.scope !== 'question');
  // Something is asked for: what is told is supposed.
  if (facts.length === 0 || facts.length < items.length) return showAnswer(reading, context);
  const size = facts.every(({ entry }) => entry.kind === 'designation');
  const tells = subjects.length > 0 || context.garage.chosen !== undefined;
  if (size) return topicAnswer(facts.some(({ entry }) => entry.path.startsWith('wheel')) ? wheelTopic : tireTopic, reading, context);
  if (tells) return recordOrTry(reading, facts, context);
  return fromTold(reading, facts, line, context);
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
function fromTold(reading: Reading, facts: readonly Item[], line: string, context: Context): Outcome {
  const paths = facts.flatMap(pathsOf);
  const figures = catalog.entries.filter(
    (entry) => entry.kind === 'figure' && (entry.words?.length ?? 0) > 0 && paths.some((path) => dependsAnywhere(entry.path, path)),
  );
  const word = entryAt(paths[0] ?? '').name;
  const topic = { word, also: [], summary: '', examples: [{ line: firstCarLine, does: '' }], figures } as const;
  const found = topicAnswer(topic, reading, context);
  const saved = `save my car turnip ${line}`;
  if (found.answer.kind === 'told') return { answer: { ...found.answer, next: [{ label: saved, line: saved }] } };
  return {
    answer: answer('asked', 'You have no saved car to record that for. Save one with it?', { choices: [{ label: saved, line: saved }] }),
  };
}
const dependsAnywhere = (figure: string, input: string): boolean =>
  catalog.nodes.some((node) => !node.then && node.entry.path === figure && catalog.dependsOn(node.path, input));
