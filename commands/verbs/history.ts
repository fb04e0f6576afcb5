/** What was changed, and when. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import type { Context, Revision } from '../context.js';
import { isOutcome, ownCar, refused } from '../house/own.js';
import { ago } from '../house/time.js';
import { typed } from '../show/typed.js';
import { countOf, isNumber, shortened } from './count.js';

const usual = 9;
/** As many changes as one line may look at, or take back. */
export const most = 200;

/** What was typed. An undo does not repeat the words of what it took back: those may be erased. */
function whyText({ why, undoes }: Revision, { garage }: Context): string {
  if (why === 'undo' && undoes !== undefined) return `undo ${garage.revision(undoes)?.why ?? ''}`.trim();
  return why === '' ? '(erased)' : why;
}
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
      const why = whyText(revision, context);
      const label =
        names.length > 0 ? `${at} ${ago(revision.at, context.now)}, ${names.join(', ')}` : `${at} ${ago(revision.at, context.now)}`;
      return { label, cells: [why] };
    });
    const older = typed(`history ${Math.min(most, shown.length * 2)}`, context.room);
    const more = revisions.length > shown.length && shown.length < most ? [`Older ones: ${older}`] : [];
    return {
      answer: answer('told', `${car.name}: ${shown.length === 1 ? 'the last change' : `the last ${shown.length} changes`}, newest first.`, {
        rows,
        notes: more,
        next: [{ label: 'undo', line: 'undo' }, ...(shown.length > 1 ? [{ label: 'back to 1', line: 'back to 1' }] : [])],
      }),
    };
  },
};
