/** Record facts about a car of one's own. */
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { isOutcome, ownCar, refused } from '../house/own.js';
import { askPlace, recordOn, recordOnNew, toRecord } from '../house/record.js';
import type { Reading } from '../reading.js';
import { typed } from '../show/typed.js';

/** A first car's name until its owner gives it one. */
export const firstName = (asker: string): string => {
  const plain = asker.replace(/[^\p{L}\p{N} -]/gu, '').trim();
  return plain === '' ? 'first car' : `${[...plain].slice(0, 16).join('')}s car`;
};

export function setFacts(reading: Reading, context: Context): Outcome {
  const items = toRecord(reading);
  if (items.length === 0) return refused('I found nothing to record in that.', 'set front spring 450 lb/in');
  const asked = askPlace(items, 'set');
  if (asked) return { answer: asked };
  if (context.garage.mine.length === 0 && reading.sides.every((side) => side.subjects.length === 0)) {
    const name = firstName(context.asker.name);
    return recordOnNew(name, items, reading, context, `I call it ${name} till you say: ${typed('rename to NAME', context.room)}`);
  }
  const car = ownCar({ ...reading, names: [] }, context);
  return isOutcome(car) ? car : recordOn(car, items, reading, context);
}

export const set: Command = {
  word: 'set',
  also: ['record', 'change', 'put'],
  group: 'verb',
  summary: 'Records facts about your car; shows old and new. undo takes them back.',
  examples: [
    { line: 'set front spring 450', does: 'in your units: lb/in' },
    { line: 'set lf weight 860 rf 820 lr 715 rr 745 with driver, half tank', does: 'four scales and how they were taken' },
    { line: 'set wheelbase 99 in ± 0.1 measured', does: 'with how sure you are' },
    { line: 'my car is 2640 lb, 52.5% front', does: 'several facts at once' },
    { line: 'set rear pressure 2 psi less', does: 'a change of what is there' },
  ],
  takes: 'items',
  changes: true,
  run: setFacts,
};
