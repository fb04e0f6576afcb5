/** Recording facts: the same for `set`, `save` and `save that`. */
import { canBeTold } from '../../core/catalog.js';
import { type Answer, answer } from '../answer.js';
import { itemsText, phrase } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { CarView, Change, Context } from '../context.js';
import { type Altered, type How, isNotLaid, type Laid, lay } from '../facts.js';
import { catalog, numbersOf, situationOf } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { isSame } from '../same.js';
import { alteredRows, alteredTexts, sideEffects, unsaved } from '../show/altered.js';
import { sentence } from '../show/amount.js';
import { disagreements } from '../show/rests.js';
import { newCarId, refused } from './own.js';

/** Items of a change: facts and the state that they were taken in. Conditions of a question are left out. */
export const toRecord = (reading: Reading): readonly Item[] =>
  [...reading.sides.flatMap((side) => side.items), ...reading.tried].filter(
    ({ entry, said }) => said !== undefined && canBeTold(entry) && entry.scope !== 'question',
  );

/** What a line is called in the history: as it was typed, cut to a length that a phone shows. */
export const whyOf = (reading: Reading, items: readonly Item[], context: Context): string => {
  const line = `${reading.verb === 'save' ? `save ${reading.names.join(' ')}` : 'set'} ${itemsText(items, context)}`.trim();
  return [...line].length > 120 ? `${[...line].slice(0, 119).join('')}…` : line;
};

/** A fact told without a place where the places may differ: asked, never spread. */
export function askPlace(items: readonly Item[], verb: string): Answer | undefined {
  const loose = items.find((item) => !item.placed && item.places.length > 1 && !item.entry.alike);
  if (!loose?.said) return undefined;
  const value = loose.said.text;
  const line = (places: readonly string[]) => `${verb} ${phrase(loose.entry, ...places)} ${value}`;
  const ways =
    loose.entry.scope === 'corner'
      ? [
          ['lf', 'rf'],
          ['lr', 'rr'],
          ['lf', 'rf', 'lr', 'rr'],
        ]
      : loose.entry.scope === 'axle'
        ? [['front'], ['rear'], ['front', 'rear']]
        : loose.places.slice(0, 4).map((place) => [place]);
  return answer('asked', `Which ${loose.entry.scope === 'gear' ? 'gear' : loose.entry.scope === 'axle' ? 'end' : 'wheels'}?`, {
    choices: ways.map((places) => ({ label: line(places).slice(verb.length + 1), line: line(places) })),
  });
}

const told = (reading: Reading, { event, now, asker }: Context): How => ({
  is: 'told',
  told: { at: now, by: asker.id, cause: event.id },
  source: `${event.id}#${event.nth}`,
  ...(reading.evidence === undefined ? {} : { evidence: reading.evidence }),
});

function changedAnswer(car: string, laid: Laid, reading: Reading, context: Context): Answer {
  const { preferences } = context.asker;
  const rows = alteredRows(laid.told, preferences);
  const numbers = numbersOf(laid.situation);
  const paths = new Set(laid.told.map(({ path }) => path));
  const headline = rows.length === 1 ? sentence(alteredTexts(laid.told, preferences).join()) : `${rows.length} facts recorded for ${car}.`;
  return answer('changed', headline, {
    ...(rows.length > 1 ? { columns: ['was', 'is'], rows } : {}),
    notes: [...(rows.length === 1 ? [`Recorded for ${car}.`] : []), ...sideEffects(laid, preferences)],
    echoes: unsaved(reading),
    assumptions: disagreements(
      numbers,
      ({ used, unused }) => paths.has(unused) || [...paths].some((path) => catalog.dependsOn(used, path)),
    ),
    // A caution belongs under a change that is work on the car; a fact read off a label needs none twice.
    cautions: [...new Set(laid.told.flatMap(({ entry }) => (entry.work ? (entry.caution ?? []) : [])))].slice(0, 1),
    next: [{ label: 'undo', line: 'undo' }],
  });
}
/** Told again as it was, as well known as before. */
const isNothingNew = ({ before, after }: Altered): boolean =>
  before !== undefined &&
  after !== undefined &&
  isSame(before.value, after.value) &&
  before.within === after.within &&
  before.evidence === after.evidence;

/** Records items on a car of the asker's. */
export function recordOn(car: CarView, items: readonly Item[], reading: Reading, context: Context): Outcome {
  const laid = lay(situationOf(car.head, context), items, told(reading, context));
  if (isNotLaid(laid)) return refused(laid.refused, laid.line);
  if (laid.told.every(isNothingNew) && laid.carried.length === 0) {
    const rows = alteredRows(laid.told, context.asker.preferences).map(({ label, cells }) => ({ label, cells: cells.slice(1) }));
    return { answer: answer('told', `${car.name} has that already.`, { rows, echoes: unsaved(reading) }) };
  }
  const changes: readonly Change[] = [
    {
      ...{ change: 'record', car: car.id, head: car.head.id, facts: laid.situation.facts, why: whyOf(reading, items, context) },
      measuredIn: laid.measured ? 'now' : car.head.measuredIn,
    },
  ];
  return { answer: changedAnswer(car.name, laid, reading, context), changes };
}
/** The same on a new car, which is then in use. */
export function recordOnNew(name: string, items: readonly Item[], reading: Reading, context: Context, note?: string): Outcome {
  const why = whyOf(reading, items, context);
  const laid = lay({ facts: new Map() }, items, told(reading, context));
  if (isNotLaid(laid)) return refused(laid.refused, laid.line);
  const rows = alteredRows(laid.told, context.asker.preferences).map(({ label, cells }) => ({ label, cells: cells.slice(1) }));
  const car = newCarId(context);
  const done = answer(
    'changed',
    `${name} saved${rows.length === 1 ? ' with one fact' : rows.length > 1 ? ` with ${rows.length} facts` : ''}, and in use.`,
    {
      rows,
      notes: note === undefined ? [] : [note],
      echoes: unsaved(reading),
      next: [
        { label: 'show everything', line: 'show everything' },
        { label: 'help set', line: 'help set' },
      ],
    },
  );
  return {
    answer: done,
    changes: [
      { change: 'make car', car, name, facts: laid.situation.facts, measured: laid.measured, why },
      { change: 'choose car', car },
    ],
  };
}
