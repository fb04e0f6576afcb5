/** What was changed and when, and taking changes back. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import type { CarView, Context, Revision } from '../context.js';
import { carInUse, isOutcome, ownCar, refused } from '../house/own.js';
import { ago } from '../house/time.js';
import { textOf } from '../show/amount.js';
import { revisionNames, revisionRows } from '../show/revisions.js';

const usual = 9;
const deepest = 200;

const countIn = (names: readonly string[]): number | undefined => {
  const found = names.find((name) => /^\d{1,3}$/.test(name));
  return found === undefined ? undefined : Number(found);
};

export const history: Command = {
  word: 'history',
  also: ['log', 'what changed'],
  group: 'verb',
  summary: 'The last changes of your car, newest first. history 20 shows more.',
  examples: [{ line: 'history', does: 'the last changes' }],
  takes: 'names',
  changes: false,
  run(reading, context) {
    const count = countIn(reading.names);
    const car = ownCar({ ...reading, names: reading.names.filter((name) => !/^\d{1,3}$/.test(name)) }, context);
    if (isOutcome(car)) return car;
    const revisions = context.garage.history(car.id, Math.min(Math.max(1, count ?? usual), deepest) + 1);
    const shown = revisions.slice(0, count ?? usual);
    const kept = context.garage.setups(car.id);
    const rows = shown.map((revision, at) => {
      const names = kept.filter((setup) => setup.revision === revision.id).map(({ name }) => name);
      const why = revision.why === '' ? '(erased)' : revision.why;
      const label =
        names.length > 0 ? `${at} ${ago(revision.at, context.now)}, ${names.join(', ')}` : `${at} ${ago(revision.at, context.now)}`;
      return { label, cells: [why] };
    });
    const more = revisions.length > shown.length ? [`Older ones: history ${shown.length * 2}`] : [];
    return {
      answer: answer('told', `${car.name}: ${shown.length === 1 ? 'the last change' : `the last ${shown.length} changes`}`, {
        rows,
        notes: more,
        next: [{ label: 'undo', line: 'undo' }, ...(shown.length > 1 ? [{ label: 'back to 1', line: 'back to 1' }] : [])],
      }),
    };
  },
};

/**
 * The newest changes that were not taken back yet, newest first. An undo has taken back the revision that it names and all since:
 * both are passed over.
 */
function undoable(car: CarView, context: Context, count: number): readonly Revision[] {
  const found: Revision[] = [];
  let skipTo: number | undefined;
  for (const revision of context.garage.history(car.id, deepest)) {
    if (skipTo !== undefined) {
      if (revision.id === skipTo) skipTo = undefined;
    } else if (revision.undoes !== undefined) skipTo = revision.undoes;
    else found.push(revision);
    if (found.length > count) break;
  }
  return found;
}

export const undo: Command = {
  word: 'undo',
  also: ['undo that', 'take it back', 'take that back'],
  group: 'verb',
  summary: 'Takes the last change of your car back; again takes the one before. undo 3 takes three.',
  examples: [{ line: 'set front spring 450\nundo', does: 'as it was before' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const car = carInUse(context);
    if (isOutcome(car)) return car;
    const count = countIn(reading.names) ?? 1;
    if (count < 1) return refused('Undo how many?', 'undo 2');
    const found = undoable(car, context, count);
    // The first revision is the car's beginning: there is nothing before it.
    const taken = found.filter(({ parent }) => parent !== undefined).slice(0, count);
    const [first] = taken;
    if (!first) return refused(`${car.name} has no change to take back.`, 'history');
    const oldest = taken.at(-1) ?? first;
    const before = oldest.parent === undefined ? undefined : context.garage.revision(oldest.parent);
    if (!before) throw new Error(`revision ${oldest.parent} of car ${car.id} is gone`);
    const rows = revisionRows(car.head, before, context.asker.preferences);
    const whys = taken.map(({ why }) => (why === '' ? '(erased)' : why));
    const short = taken.length < count ? [`There were only ${taken.length}.`] : [];
    const [row] = rows;
    const headline =
      taken.length === 1 && rows.length === 1 && row
        ? `Taken back: ${revisionNames(car.head, before, context.asker.preferences).join()} is ${textOf(row.cells[1] ?? '')} again.`
        : `Taken back: ${taken.length === 1 ? whys[0] : `${taken.length} changes`}`;
    return {
      answer: answer('changed', headline, {
        columns: ['was', 'is'],
        rows,
        notes: [...(taken.length > 1 ? whys : []), ...short],
        next: [{ label: 'history', line: 'history' }],
      }),
      changes: [
        {
          ...{ change: 'record', car: car.id, head: car.head.id, facts: before.facts, measuredIn: before.measuredIn },
          ...{ why: `undo ${oldest.why}`.trim(), undoes: oldest.id },
        },
      ],
    };
  },
};
