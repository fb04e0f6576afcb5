/** Sizes of tires and wheels side by side: also whether one fits in place of another. */
import type { Entry } from '../../core/catalog.js';
import { isRefusal } from '../../core/catalog.js';
import { difference } from '../../core/difference.js';
import { pathAt } from '../../core/engine.js';
import { speedometerTire } from '../../core/subjects/gearing/told.js';
import * as tires from '../../core/subjects/tires/dimensions.js';
import * as wheels from '../../core/subjects/wheels/fit.js';
import type { Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { numbersOf } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { amount, bare } from '../show/amount.js';
import { type Side, sideBySide } from '../show/sides.js';
import { typed } from '../show/typed.js';
import { pathsOf, supposing } from '../verbs/asked.js';
import { tireFigures, wheelFigures } from './figures.js';
import { placesFor } from './places.js';

const isTire = ({ entry }: Item): boolean => entry.path === 'tire.size';
const isWheel = ({ entry }: Item): boolean => entry.path === 'wheel.size';

/** The speedometer is right on the first of the sizes, unless the car was told otherwise: what members mean by the question. */
function calibrated(sides: readonly Side[], facts: readonly Item[]): { readonly sides: readonly Side[]; readonly note: readonly string[] } {
  const size = facts.find(isTire);
  const told = sides.some(({ looked }) => [...looked.situation.facts.keys()].some((path) => path.startsWith('speedometer.')));
  if (!size?.said || told) return { sides, note: [] };
  const item: Item = { entry: speedometerTire, places: [''], placed: true, said: size.said };
  const laid = sides.map((side) => {
    const looked = supposing(side.looked, [item]);
    return 'answer' in looked ? undefined : { ...side, looked };
  });
  const whole = laid.filter((side) => side !== undefined);
  return whole.length < sides.length
    ? { sides, note: [] }
    : { sides: whole, note: [`The speedometer is taken to be right on ${size.said.text}.`] };
}

/** What to say of whether it fits: the room has to be measured on the car. */
function fitNote(sides: readonly Side[], facts: readonly Item[], { room }: Context): readonly string[] {
  if (!facts.some(isTire) || !facts.some(isWheel)) return [];
  const [first] = sides;
  const places = placesFor(wheels.leastClearance, facts);
  const known = first && places.some((place) => !isRefusal(numbersOf(first.looked.situation).number(pathAt(place, wheels.leastClearance))));
  return known ? [] : [`Whether it fits, only measured room can say: ${typed('help measure inside room', room)}`];
}

const fitFigures: readonly Entry[] = [
  wheels.outerTireEdge,
  wheels.innerTireEdge,
  tires.tireDiameter,
  tires.rimMargin,
  wheels.leastClearance,
];

/** `Further out by 0.69 in, further in by 0.69 in`: what taking the place of the other does to both edges of the tire, at the first axle that tells. */
function edgesMove(sides: readonly Side[], facts: readonly Item[], preferences: Preferences): string | undefined {
  const [before, after] = sides;
  if (!before || !after) return undefined;
  const [a, b] = [numbersOf(before.looked.situation), numbersOf(after.looked.situation)];
  const moves = [wheels.outerTireEdge, wheels.innerTireEdge].map((entry) => {
    const path = placesFor(entry, facts)
      .map((place) => pathAt(place, entry))
      .find((one) => !isRefusal(a.number(one)) && !isRefusal(b.number(one)));
    const moved = path === undefined ? undefined : difference(a, b, path, { sameCar: true });
    if (moved === undefined || isRefusal(moved)) return undefined;
    return { by: moved.change, text: bare(Math.abs(moved.change), 'length', preferences, Math.max(moved.within, 5e-4)).text };
  });
  const [out, inward] = moves;
  if (!out || !inward) return undefined;
  const much = ({ by, text }: typeof out): string => `${text} ${by >= 0 ? 'more' : 'less'}`;
  return `it sticks out ${much(out)}, reaches in ${much(inward)}`;
}
/** Whether the second side fits: the first line of an answer to `will A fit instead of B`. */
function fitHeadline(sides: readonly Side[], facts: readonly Item[], preferences: Preferences): string | undefined {
  const after = sides[1];
  const moved = edgesMove(sides, facts, preferences);
  if (!after || moved === undefined) return undefined;
  const numbers = numbersOf(after.looked.situation);
  for (const place of placesFor(wheels.leastClearance, facts)) {
    const path = pathAt(place, wheels.leastClearance);
    const least = numbers.number(path);
    if (isRefusal(least)) continue;
    const within = numbers.within(path);
    const says = least > within ? 'It fits' : least < -within ? 'It does not fit' : 'Too close to tell';
    return `${says}: least clearance ${amount(least, 'length', preferences, within).text}, ${moved}`;
  }
  return `Only measured room can say whether it fits: ${moved}`;
}

export async function sizesSideBySide(all: readonly Side[], facts: readonly Item[], reading: Reading, context: Context): Promise<Outcome> {
  // What is there now comes first: changes then are what the new one does.
  const given = reading.replacing ? all.toReversed() : all;
  const answered = await sizesCompared(given, facts, reading, context);
  const headline = reading.replacing ? fitHeadline(given, facts, context.asker.preferences) : undefined;
  if (headline === undefined) return answered;
  const top = answered.answer.headline;
  const line = answered.answer.kind === 'told' ? [top] : [];
  return { ...answered, answer: { ...answered.answer, headline, notes: [...line, ...answered.answer.notes] } };
}
function sizesCompared(given: readonly Side[], facts: readonly Item[], reading: Reading, context: Context): Promise<Outcome> {
  const { sides, note } = calibrated(given, facts);
  const both = facts.some(isTire) && facts.some(isWheel);
  const figures = both ? [...new Set([...fitFigures, ...wheelFigures, ...tireFigures])] : facts.some(isTire) ? tireFigures : wheelFigures;
  const asked = sides.flatMap(({ items }) => items.flatMap(pathsOf));
  return sidesOfFigures(figures, sides, facts, [...new Set(asked)], context, {
    wantedUnit: reading.wantedUnit,
    notes: [
      ...(asked.some((path) => path.startsWith('speedometer')) || figures.some(({ path }) => path.startsWith('speedometer')) ? note : []),
      ...fitNote(sides, facts, context),
    ],
  });
}

/** Figures that all sides know and that what was told bears on, in their order; those asked for alone, where some were. */
export function sidesOfFigures(
  figures: readonly Entry[],
  sides: readonly Side[],
  told: readonly Item[],
  asked: readonly string[],
  context: Context,
  more: { readonly wantedUnit?: string | undefined; readonly notes?: readonly string[] },
): Promise<Outcome> {
  const toldPaths = told.flatMap(pathsOf);
  const numbers = sides.map(({ looked }) => numbersOf(looked.situation));
  const known = (path: string) => numbers.every((one) => !isRefusal(one.number(path)));
  const bears = (path: string) => toldPaths.length === 0 || toldPaths.some((one) => numbers[0]?.catalog.dependsOn(path, one));
  const own = figures
    .flatMap((entry) => placesFor(entry, told).map((place) => pathAt(place, entry)))
    .filter((path) => known(path) && bears(path));
  const askedKnown = asked.filter(known);
  // A figure that was asked for and is not known does not hide the others; when there are none, it says what it lacks.
  const paths = askedKnown.length > 0 ? askedKnown : own.length > 0 ? own : asked;
  return sideBySide(sides, { paths, ...more }, context);
}
