/** The parts box: what a member can change on a car, with its work and price; told in plain lines, listed, forgotten. Its owner alone sees it. */
import type { Value } from '../../core/catalog.js';
import { type Answer, answer, type Row } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { CarView, Change, Context, Preferences } from '../context.js';
import { carInUse, isOutcome, noCar, ownCar, refused } from '../house/own.js';
import { addedPart, partsOf, removedPart } from '../records/kinds/part.js';
import { isSame } from '../same.js';
import { labelAtAll } from '../show/label.js';
import { typed } from '../show/typed.js';
import { tellsEffort } from './effort.js';
import type { NewPart, Part, PartFact } from './part.js';
import { exampleLine, isBoxed, opening, readBox } from './read.js';
import { costText, entryOf, partLine, thingText, valueToTell } from './write.js';

/** More than that is a shop. */
const mostParts = 60;

const sameFact = (a: PartFact, b: PartFact): boolean => a.entry === b.entry && a.places.join() === b.places.join();
const sameCan = ({ can: a }: PartFact, { can: b }: PartFact): boolean =>
  a.is === 'range'
    ? b.is === 'range' && a.from === b.from && a.to === b.to && a.step === b.step
    : b.is === 'values' && a.values.length === b.values.length && a.values.every((value, n) => isSame(value, b.values[n] ?? ''));
/** What can be turned or moved over is told anew, not beside what was told of it before. */
const isSetting = ({ entry, can }: PartFact): boolean => can.is === 'range' || entry === 'bar.lever';
const takesPlaceOf = (part: NewPart, old: NewPart): boolean =>
  part.facts.length === old.facts.length &&
  part.note === old.note &&
  part.facts.every((fact, n) => {
    const other = old.facts[n];
    return other !== undefined && sameFact(fact, other) && (sameCan(fact, other) || (isSetting(fact) && isSetting(other)));
  });
const isSameCost = (a: NewPart, b: NewPart): boolean =>
  a.minutes === b.minutes && a.price?.amount === b.price?.amount && a.price?.currency === b.price?.currency;
const isSamePart = (a: NewPart, b: NewPart): boolean =>
  takesPlaceOf(a, b) && isSameCost(a, b) && a.facts.every((fact, n) => sameCan(fact, b.facts[n] ?? fact));

function valuesText(fact: PartFact, preferences: Preferences): string {
  const entry = entryOf(fact);
  const { can } = fact;
  const write = (value: Value): string => valueToTell(entry, value, preferences);
  return can.is === 'range' ? `${write(can.from)} to ${write(can.to)}` : can.values.map(write).join(', ');
}
export function partRow(part: NewPart, number: number, preferences: Preferences): Row {
  const [fact, ...more] = part.facts;
  const cost = costText(part) || 'not told';
  if (!fact) return { label: `${number} ${part.note ?? ''}`, cells: ['a note', cost] };
  const values = [fact, ...more].map((one) => valuesText(one, preferences)).join(', ');
  return { label: `${number} ${labelAtAll(entryOf(fact), fact.places)}`, cells: [values, cost] };
}
export function boxAnswer(car: CarView, parts: readonly Part[], context: Context): Answer {
  if (parts.length === 0)
    return answer('told', `The box of ${car.name} is empty: tell what you can change on it.`, {
      notes: [`A line that works:\n  ${typed(exampleLine, context.room)}`],
      next: [{ label: exampleLine, line: exampleLine }],
    });
  return answer('told', `The box of ${car.name}: ${parts.length === 1 ? 'one thing' : `${parts.length} things`}`, {
    columns: ['what', 'work'],
    rows: parts.map((part, n) => partRow(part, n + 1, context.asker.preferences)),
    next: [
      { label: 'more rotation mid corner', line: 'more rotation mid corner' },
      { label: `box forget ${parts.length}`, line: `box forget ${parts.length}` },
    ],
  });
}

export const box: Command = {
  word: 'box',
  also: ['parts box', 'my box', 'parts', 'my parts', 'show box', 'whats in my box', "what's in the box", 'what parts do i have', 'spares'],
  group: 'house',
  summary: 'What you can change on your car, with its work and price. Nobody else sees it.',
  examples: [
    { line: 'box', does: 'lists it, numbered' },
    { line: 'box turnip', does: 'that of another car of yours' },
  ],
  takes: 'names',
  changes: false,
  run(reading, context) {
    const { garage, asker } = context;
    const theirs = reading.sides.flatMap(({ subjects }) => subjects).some((one) => one.is === 'member' && one.id !== asker.id);
    const others = reading.sides
      .flatMap(({ subjects }) => subjects)
      .some((one) => one.is === 'car' && garage.others.some(({ id }) => id === one.id));
    if (theirs || others) return refused('Only its owner sees the box of a car.', 'box');
    const car = ownCar(reading, context);
    return isOutcome(car) ? car : { answer: boxAnswer(car, partsOf(garage, car.id), context) };
  },
};

const otherVerb =
  /^(?:set|record|change|put|try|what|whats|which|how|show|find|compare|draw|plot|why|calc|save|keep|back|undo|history|help|words|doubt|tire|tyre|wheel|gear|ride|pressure|forget|box|rename|copy|share|in)\b/i;
/** Lines that are for the box without its word: `i have ...`, and a thing with its work: `rear bar holes 8 and 9 in, 5 min`. */
export function hearsBox(line: string): boolean {
  if (opening.test(line)) return !line.includes('?') && (!/^got\b/i.test(line) || /\d/.test(line));
  // 30 min after degrees are of an angle.
  return tellsEffort(line) && /\d/.test(line) && !otherVerb.test(line) && !/(?:°|deg\w*) ?\d/i.test(line);
}

function added(parts: readonly NewPart[], replaced: readonly Part[], car: CarView, count: number, context: Context): Answer {
  const { preferences } = context.asker;
  const [first] = parts;
  const cost = first === undefined ? '' : costText(first);
  const one = parts.length === 1 && first ? `${thingText(first, preferences)}${cost === '' ? '' : `, ${cost}`}` : `${parts.length} things`;
  const unknown = parts.some(({ minutes }) => minutes === undefined);
  const lifts = parts.some(({ facts, line }) => facts.some(({ entry }) => entry === 'spacer') && !/spring|perch|coil/i.test(line));
  return answer('changed', `In the box of ${car.name}: ${one}.`, {
    ...(parts.length > 1 ? { columns: ['what', 'work'], rows: parts.map((part, n) => partRow(part, count + n + 1, preferences)) } : {}),
    notes: [
      ...(parts.some(({ note }) => note !== undefined) ? ['Kept as a note: dampers are not in the model, so advice only names it.'] : []),
      ...replaced.map((part) => `Takes the place of ${thingText(part, preferences)}.`),
    ],
    echoes: lifts ? ['Read as a spacer of the spring, which lifts the car; one behind the wheel is a wheel spacer.'] : [],
    assumptions: unknown ? ['No minutes told: advice puts it after what has them.'] : [],
    next: [
      { label: `box forget ${count + 1}`, line: `box forget ${count + 1}` },
      { label: 'box', line: 'box' },
    ],
  });
}
function add(text: string, context: Context): Outcome {
  const car = carInUse(context);
  if (isOutcome(car)) return noCar();
  const read = readBox(text, context);
  if (!isBoxed(read)) return read;
  const there = partsOf(context.garage, car.id);
  const fresh = read.parts.filter((part) => !there.some((old) => isSamePart(part, old)));
  if (fresh.length === 0) {
    const done = boxAnswer(car, there, context);
    return { answer: { ...done, headline: `That is in the box of ${car.name} already.`, echoes: read.echoes } };
  }
  const replaced = there.filter((old) => fresh.some((part) => takesPlaceOf(part, old)));
  if (there.length - replaced.length + fresh.length > mostParts)
    return refused(`A box holds ${mostParts} things; forget one first.`, 'box forget 1');
  const done = added(fresh, replaced, car, there.length - replaced.length, context);
  const changes: Change[] = [...replaced.map(removedPart), ...fresh.map((part) => addedPart(car.id, part))];
  return { answer: { ...done, echoes: [...read.echoes, ...done.echoes] }, changes };
}

export const boxAdd: Command = {
  word: 'box add',
  also: ['add to box', 'add to my box', 'add to the box', 'put in the box', 'put in my box'],
  group: 'house',
  summary: 'Puts what you can change into the box. i have ... and i can set ... do it too.',
  examples: [
    { line: exampleLine, does: 'parts, by size, with the work' },
    { line: 'i can set rear pressure 24 to 34 psi 2 min', does: 'a setting and its range' },
    { line: 'rear bar holes 8, 8.5 and 9.5 in 5 min', does: 'holes of a bar' },
    { line: 'box add 425 front spring, 1 h, $120', does: 'with its price' },
  ],
  takes: 'text',
  hears: hearsBox,
  changes: true,
  run: (reading, context) => add(reading.rest, context),
};

export const boxForget: Command = {
  word: 'box forget',
  also: ['box remove', 'box delete', 'forget from box', 'remove from box'],
  group: 'house',
  summary: 'Takes one thing out of the box, by its number in box; the answer offers to put it back.',
  examples: [{ line: `${exampleLine}\nbox forget 1`, does: 'the first of the list' }],
  takes: 'text',
  changes: true,
  run(reading, context) {
    const car = carInUse(context);
    if (isOutcome(car)) return car;
    const parts = partsOf(context.garage, car.id);
    if (parts.length === 0) return refused(`The box of ${car.name} is empty.`, exampleLine);
    const numbers = [...new Set((reading.rest.match(/\d+/g) ?? []).map(Number))];
    const gone = numbers.flatMap((number) => parts[number - 1] ?? []);
    if (numbers.length === 0 || gone.length < numbers.length)
      return refused(`Which of them, from 1 to ${parts.length}? box numbers them.`, 'box forget 1');
    const lines = gone.map((part) => partLine(part, context));
    return {
      answer: answer(
        'changed',
        `Out of the box of ${car.name}: ${gone.map((part) => thingText(part, context.asker.preferences)).join('; ')}.`,
        {
          next: [...lines.map((line) => ({ label: `put back: ${line.replace(/^box add /, '')}`, line })), { label: 'box', line: 'box' }],
        },
      ),
      changes: gone.map(removedPart),
    };
  },
};

export const boxEmpty: Command = {
  word: 'box empty',
  also: ['box clear', 'empty box', 'empty my box', 'clear my box'],
  group: 'house',
  summary: 'Empties the box of the car in use. Asks first.',
  examples: [{ line: 'box empty', does: 'asks, then empties it' }],
  takes: 'nothing',
  changes: true,
  run(_, context) {
    const car = carInUse(context);
    if (isOutcome(car)) return car;
    const { length } = partsOf(context.garage, car.id);
    if (length === 0) return { answer: boxAnswer(car, [], context) };
    return {
      answer: answer('asked', `Empty the box of ${car.name}, ${length === 1 ? 'one thing' : `${length} things`}? It can't be undone.`, {
        choices: [
          { label: 'empty it', line: 'box empty now' },
          { label: 'keep it', line: 'box' },
        ],
      }),
    };
  },
};
export const boxEmptyNow: Command = {
  word: 'box empty now',
  also: [],
  group: 'house',
  summary: 'Empties the box of the car in use, at once.',
  examples: [{ line: `${exampleLine}\nbox empty now`, does: 'without asking again' }],
  takes: 'nothing',
  changes: true,
  run(_, context) {
    const car = carInUse(context);
    if (isOutcome(car)) return car;
    const parts = partsOf(context.garage, car.id);
    if (parts.length === 0) return refused(`The box of ${car.name} is empty.`, exampleLine);
    return {
      answer: answer('changed', `The box of ${car.name} is empty.`, { next: [{ label: exampleLine, line: exampleLine }] }),
      changes: parts.map(removedPart),
    };
  },
};
