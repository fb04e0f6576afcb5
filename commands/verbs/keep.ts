/** Give the car's set-up a name, and go back to it. */
import { answer } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { CarView, Context, Revision } from '../context.js';
import { carInUse, isOutcome, refused, setupNamed } from '../house/own.js';
import { ago, endOfDay } from '../house/time.js';
import { nameOf } from '../names.js';
import { recordedRows } from '../show/altered.js';
import { alteredBetween, isNothing, revisionRows } from '../show/revisions.js';
import { countOf, isNumber, shortened } from './count.js';
import { saveTrial } from './save.js';

export const keep: Command = {
  word: 'keep',
  also: ['keep as', 'keep this as', 'ok keep it', 'keep it as'],
  group: 'verb',
  summary: 'keep as NAME: the car gets a setup of that name. keep it: saves what was just tried.',
  examples: [
    { line: 'keep as dry', does: 'a setup called dry' },
    { line: 'try rear spring 650\nok keep it', does: 'tries, then saves it' },
  ],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const text = reading.names.join(' ').replace(/^as /i, '');
    if (text === '' || /^(it|that|this)$/i.test(text)) return saveTrial(reading, context);
    const car = carInUse(context);
    if (isOutcome(car)) return car;
    const checked = nameOf(text, 'setup');
    if ('refused' in checked) return refused(checked.refused, 'keep as dry');
    const { name } = checked;
    const before = setupNamed(context, car, name);
    const notes = before && before.revision !== car.head.id ? [`An earlier setup had that name; it stays in the history.`] : [];
    return {
      answer: answer('changed', `${name} is kept: ${car.name} with all that's on it now.`, {
        notes,
        next: [{ label: `back to ${name}`, line: `back to ${name}` }],
      }),
      changes: [{ change: 'keep', car: car.id, name, revision: car.head.id }],
    };
  },
};

/** How far back the history is looked through. */
const deepest = 1000;

/** A setup by its name, the car at the end of a day, or so many changes ago. */
function wanted(text: string, car: CarView, context: Context): { readonly revision: Revision; readonly label: string } | Outcome {
  const setup = setupNamed(context, car, text);
  const kept = setup && context.garage.revision(setup.revision);
  if (setup && kept) return { revision: kept, label: setup.name };
  const end = endOfDay(text, context.now);
  if (end !== undefined) {
    const revision = context.garage.history(car.id, deepest).find(({ at }) => at < end);
    if (!revision) return refused(`${car.name} was not saved yet then.`, 'history');
    return { revision, label: `${text} (${ago(revision.at, context.now)}, days in UTC)` };
  }
  if (isNumber(text)) {
    const count = countOf(text, deepest);
    if (count === undefined) return refused(`Back takes a number of changes, from 1 to ${deepest}, not ${shortened(text)}.`, 'back to 1');
    const revision = context.garage.history(car.id, count + 1)[count];
    if (!revision) return refused(`${car.name} has not had that many changes.`, 'history');
    return { revision, label: `${count} ${count === 1 ? 'change' : 'changes'} ago` };
  }
  const names = context.garage.setups(car.id).map(({ name }) => name);
  const have = names.length === 0 ? 'none is kept yet' : `kept: ${names.join(', ')}`;
  return refused(`${car.name} has no setup called ${text}; ${have}.`, names[0] === undefined ? 'keep as dry' : `back to ${names[0]}`);
}

export const back: Command = {
  word: 'back',
  also: ['back to', 'go back to', 'put it back', 'put it back how it was', 'put it back to'],
  group: 'verb',
  summary: 'Back to a kept setup, a day, or a number of changes ago; undo takes it back.',
  examples: [
    { line: 'keep as dry\nback to dry', does: 'as it was kept' },
    { line: 'back to 1', does: 'as it was one change ago; or: back to sunday' },
  ],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const car = carInUse(context);
    if (isOutcome(car)) return car;
    const text = reading.names.join(' ').replace(/^(to|how it was|on) /i, '');
    if (text === '') {
      const names = context.garage.setups(car.id).map(({ name }) => name);
      const choices = [...names.slice(-4), 'yesterday'].map((name) => ({ label: name, line: `back to ${name}` }));
      return { answer: answer('asked', 'Back to what?', { choices }) };
    }
    const found = wanted(text, car, context);
    if (isOutcome(found)) return found;
    const rows = revisionRows(car.head, found.revision, context.asker.preferences);
    if (isNothing(rows)) return { answer: answer('told', `${car.name} is as it was at ${found.label}: nothing to put back.`) };
    return {
      answer: answer('changed', `${car.name} is back to ${found.label}.`, {
        rows: recordedRows(alteredBetween(car.head, found.revision), context.asker.preferences),
        next: [{ label: 'undo', line: 'undo' }],
      }),
      changes: [
        {
          ...{ change: 'record', car: car.id, head: car.head.id, facts: found.revision.facts, why: `back to ${text}` },
          measuredIn: found.revision.measuredIn,
        },
      ],
    };
  },
};
