/** What was changed and when, and taking changes back. */
import { nameAt } from '../../core/engine.js';
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import type { CarView, Context, Revision } from '../context.js';
import { carInUse, isOutcome, ownCar, refused } from '../house/own.js';
import { ago } from '../house/time.js';
import { catalog } from '../looked.js';
import { textOf } from '../show/amount.js';
import { revisionNames, revisionRows } from '../show/revisions.js';
import { typed } from '../show/typed.js';
import { linesToTakeBack, without } from '../takingBack.js';
import { countOf, isNumber, shortened } from './count.js';

const usual = 9;
/** As many changes as one line may look at, or take back. */
const most = 200;

export const history: Command = {
  word: 'history',
  also: ['log', 'what changed'],
  group: 'verb',
  summary: 'The last changes of your car, newest first. history 20 shows more.',
  examples: [{ line: 'history', does: 'the last changes' }],
  takes: 'names',
  changes: false,
  run(reading, context) {
    const said = reading.names.find(isNumber);
    const count = said === undefined ? usual : countOf(said, most);
    if (count === undefined) return refused(`The history shows 1 to ${most} changes at once, not ${shortened(said ?? '')}.`, 'history 20');
    const car = ownCar({ ...reading, names: reading.names.filter((name) => !isNumber(name)) }, context);
    if (isOutcome(car)) return car;
    const revisions = context.garage.history(car.id, count + 1);
    const shown = revisions.slice(0, count);
    const kept = context.garage.setups(car.id);
    const rows = shown.map((revision, at) => {
      const names = kept.filter((setup) => setup.revision === revision.id).map(({ name }) => name);
      const why = revision.why === '' ? '(erased)' : revision.why;
      const label =
        names.length > 0 ? `${at} ${ago(revision.at, context.now)}, ${names.join(', ')}` : `${at} ${ago(revision.at, context.now)}`;
      return { label, cells: [why] };
    });
    const older = typed(`history ${Math.min(most, shown.length * 2)}`, context.room);
    const more = revisions.length > shown.length && shown.length < most ? [`Older ones: ${older}`] : [];
    return {
      answer: answer('told', `${car.name}: ${shown.length === 1 ? 'the last change' : `the last ${shown.length} changes`}`, {
        rows,
        notes: more,
        next: [{ label: 'undo', line: 'undo' }, ...(shown.length > 1 ? [{ label: 'back to 1', line: 'back to 1' }] : [])],
      }),
    };
  },
};

interface Taking {
  /** Whole lines, newest first; of each its revisions, newest first. */
  readonly lines: readonly (readonly [Revision, ...Revision[]])[];
  /** Of all of them, oldest first. */
  readonly revisions: readonly Revision[];
}
const parentIn =
  ({ garage }: Context) =>
  ({ parent, id, car }: Revision): Revision | undefined => {
    if (parent === undefined) return undefined;
    const found = garage.revision(parent);
    if (!found) throw new Error(`revision ${parent}, from which ${id} of car ${car} was made, is gone`);
    return found;
  };
/** The newest lines that are not taken back yet. One whose edits have left nothing of it is passed over. */
function newestLines(car: CarView, context: Context, count: number): Taking {
  const lines: [Revision, ...Revision[]][] = [];
  for (const line of linesToTakeBack(context.garage.history(car.id, most + 1))) {
    // The first revision is the car's beginning: there is nothing before it.
    if (lines.length === count || line.some(({ parent }) => parent === undefined)) break;
    const { touched, measuredIn } = without(line[0], [...line].reverse(), parentIn(context));
    if (touched.length > 0 || measuredIn !== line[0].measuredIn) lines.push([...line]);
  }
  return { lines, revisions: lines.flat().sort((a, b) => (isBefore(a, b) ? -1 : 1)) };
}
/** Revisions of this message have ids below 0, the newest the lowest. */
const isBefore = (a: Revision, b: Revision): boolean =>
  a.id < 0 && b.id < 0 ? a.id > b.id : a.id < 0 || b.id < 0 ? b.id < 0 : a.id < b.id;

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
    const said = reading.rest.trim();
    const count = countOf(said, most);
    if (count === undefined) return refused(`Undo takes a number of changes, from 1 to ${most}, not ${shortened(said)}.`, 'undo 2');
    const { lines, revisions } = newestLines(car, context, count);
    const last = lines.at(-1);
    if (!last) return refused(`${car.name} has no change to take back.`, 'history');
    const before = without(car.head, revisions, parentIn(context));
    if (before.changedSince.length > 0) {
      const names = before.changedSince.map((path) => {
        const { entry, place } = catalog.node(path);
        return nameAt(entry, place);
      });
      return refused(`Not taken back: it was changed again since (${names.join(', ')}).`, 'history');
    }
    const rows = revisionRows(car.head, before, context.asker.preferences);
    const whys = lines.map(([{ why }]) => (why === '' ? '(erased)' : why));
    const [row] = rows;
    const headline =
      lines.length === 1 && rows.length === 1 && row
        ? `Taken back: ${revisionNames(car.head, before, context.asker.preferences).join()} is ${textOf(row.cells[1] ?? '')} again.`
        : `Taken back: ${lines.length === 1 ? whys[0] : `${lines.length} changes`}`;
    return {
      answer: answer('changed', headline, {
        columns: ['was', 'is'],
        rows,
        notes: [...(lines.length > 1 ? whys : []), ...(lines.length < count ? [`There were only ${lines.length}.`] : [])],
        next: [{ label: 'history', line: 'history' }],
      }),
      changes: [
        {
          ...{ change: 'record', car: car.id, head: car.head.id, facts: before.facts, measuredIn: before.measuredIn },
          // The newest of the oldest line: what came before it in time, and stays, is not taken back with it.
          ...{ why: `undo ${last[0].why}`.trim(), undoes: last[0].id },
        },
      ],
    };
  },
};
