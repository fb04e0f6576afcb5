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
import { scan } from '../scan.js';
import { alteredTexts, recordedRows, sideEffects, unsaved } from '../show/altered.js';
import { sentence, textOf } from '../show/amount.js';
import { opens } from '../show/opens.js';
import { disagreements } from '../show/rests.js';
import { meaningsOf } from '../units.js';
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

/** The units that facts were told in: a weight in kilos is said again in kilos. */
function unitsTold(items: readonly Item[]): ReadonlyMap<Item['entry'], string> {
  const units = new Map<Item['entry'], string>();
  for (const { entry, said } of items) {
    const [token] = said === undefined || entry.dimension === undefined || entry.dimension === 'ratio' ? [] : scan(said.text);
    if (token?.is !== 'amount' || token.unit === undefined) continue;
    const meant = meaningsOf(token.unit).find(({ dimension }) => dimension === entry.dimension);
    if (meant && !Number.isNaN(meant.unit.factor)) units.set(entry, meant.unit.shown);
  }
  return units;
}

function changedAnswer(car: string, laid: Laid, items: readonly Item[], reading: Reading, context: Context): Answer {
  const { preferences } = context.asker;
  const units = unitsTold(items);
  const rows = recordedRows(laid.told, preferences, units);
  const numbers = numbersOf(laid.situation);
  const paths = new Set(laid.told.map(({ path }) => path));
  // The car is named where there are several to mix up.
  const whose = context.garage.mine.length > 1 ? `${car}: ` : '';
  const one = alteredTexts(laid.told, preferences, units).join();
  const headline =
    rows.length === 1
      ? `${whose === '' ? sentence(one) : `${whose}${one}`}.`
      : `${whose === '' ? 'Got' : `${whose}got`} ${rows.length === 2 ? 'both' : `all ${rows.length}`}.`;
  return answer('changed', headline, {
    rows: rows.length > 1 ? rows : [],
    notes: sideEffects(laid, preferences),
    echoes: unsaved(reading),
    assumptions: disagreements(
      numbers,
      ({ used, unused }) => paths.has(unused) || [...paths].some((path) => catalog.dependsOn(used, path)),
    ),
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
    const rows = recordedRows(laid.told, context.asker.preferences, unitsTold(items)).map(({ label, cells }) => ({
      label,
      cells: [textOf(cells[0] ?? '').replace(/, as before$/, '')],
    }));
    return { answer: answer('told', `${car.name} has that already.`, { rows, echoes: unsaved(reading) }) };
  }
  const changes: readonly Change[] = [
    {
      ...{ change: 'record', car: car.id, head: car.head.id, facts: laid.situation.facts, why: whyOf(reading, items, context) },
      measuredIn: laid.measured ? 'now' : car.head.measuredIn,
    },
  ];
  return { answer: changedAnswer(car.name, laid, items, reading, context), changes };
}
/** Facts that one line has room for. */
const shortList = 90;
/** The same on a new car, which is then in use. */
export function recordOnNew(name: string, items: readonly Item[], reading: Reading, context: Context, note?: string): Outcome {
  const why = whyOf(reading, items, context);
  const laid = lay({ facts: new Map() }, items, told(reading, context));
  if (isNotLaid(laid)) return refused(laid.refused, laid.line);
  const { preferences } = context.asker;
  const rows = recordedRows(laid.told, preferences, unitsTold(items));
  const car = newCarId(context);
  const texts = rows.map(({ label, cells }) => `${label} ${textOf(cells[0] ?? '')}`).join(', ');
  const short = rows.length > 0 && texts.length <= shortList;
  const done = answer('changed', `${name} is saved${rows.length === 0 ? '' : short ? `: ${texts}` : ` with all ${rows.length} facts`}.`, {
    rows: short ? [] : rows,
    notes: [...(note === undefined ? [] : [note]), ...opens(numbersOf(laid.situation), laid.situation.facts)],
    echoes: unsaved(reading),
    next: [
      { label: 'what can I ask', line: 'help' },
      ...(rows.length === 0 ? [] : [{ label: 'all that I know of it', line: 'show everything' }]),
    ],
  });
  return {
    answer: done,
    changes: [
      { change: 'make car', car, name, facts: laid.situation.facts, measured: laid.measured, why },
      { change: 'choose car', car },
    ],
  };
}
