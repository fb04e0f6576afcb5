/** How a change of a figure is said to a member. Most are said alike; a few have a way of their own, listed by the figure's path. */
import { nameAt } from '../../core/engine.js';
import { lateral } from '../../core/subjects/cornering/asked.js';
import { balanceIndex, otherWayBalance } from '../../core/subjects/cornering/balance.js';
import type { Preferences } from '../context.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import { sentence } from './amount.js';
import { balanceMove } from './balance.js';
import { isChange } from './change.js';
import { labelAt } from './label.js';
import { endsSaid, known, moveOf, plusMinus, said, sayingOf, spoken, surenessOf } from './spoken.js';

interface Told {
  readonly before: Looked;
  readonly after: Looked;
  readonly path: string;
  readonly place: string;
  readonly preferences: Preferences;
  readonly wantedUnit: string | undefined;
}
/** A sentence without its full stop; undefined where the figure is not known on both sides, or stays as it is. */
type Way = (told: Told) => string | undefined;

/** Of a change that is not sure: how sure it is. */
function doubtText(told: Told, moved: NonNullable<ReturnType<typeof moveOf>>): string {
  const { path, preferences, wantedUnit } = told;
  switch (surenessOf(moved, path)) {
    case 'sure':
      return '';
    case 'likely':
      return ': likely, not certain';
    case 'next to nothing':
      return ': next to nothing';
    default:
      return `: too close to tell (± ${plusMinus(moved.within, sayingOf(path, wantedUnit), preferences)})`;
  }
}
const longestName = 24;
/** The name in a sentence; a long one gives way to the short form of a row. */
export function spokenName(path: string): string {
  const { entry, place } = catalog.node(path);
  return [...entry.name].length > longestName ? labelAt(entry, place) : nameAt(entry, place);
}
/** What a number is of, where text books differ. */
const bases: Readonly<Record<string, string>> = {
  rideFrequency: 'tire in it',
  springFrequency: 'no tire in it',
  'tire.freeDiameter': 'not squashed',
};

/** `Front ride frequency 1.74 Hz, was 1.66, tire in it`. */
function plainly(told: Told, name = spokenName(told.path)): string | undefined {
  const { before, after, path, preferences, wantedUnit } = told;
  const moved = moveOf(numbersOf(before.situation), numbersOf(after.situation), path);
  if (!moved || !isChange(moved.from, moved.to)) return undefined;
  const how = sayingOf(path, wantedUnit);
  const basis = bases[catalog.node(path).entry.path];
  const { now, was } = endsSaid(moved, how, preferences);
  return `${sentence(name)} ${now}, was ${was}${basis === undefined ? '' : `, ${basis}`}${doubtText(told, moved)}`;
}
const end = ({ place }: Told): string => sentence(place === '' ? 'the car' : place);

/** `Front bar 27 % stiffer: 337 lb/in at its ends, was 265`. */
const bar: Way = (told) => {
  const { before, after, path, preferences, wantedUnit } = told;
  const [from, to] = [before, after].map(({ situation }) => known(numbersOf(situation), path));
  if (from === undefined && to === undefined) return undefined;
  const how = sayingOf(path, wantedUnit);
  if (to === undefined || to === 0) return from === undefined || from === 0 ? undefined : `${end(told)} bar off`;
  const rate = `${spoken(to, how, preferences)} at its ends`;
  if (from === undefined || from === 0) return `${end(told)} bar on: ${rate}, none before`;
  if (!isChange(from, to)) return undefined;
  const share = Math.abs(to / from - 1) * 100;
  const much = share < 1 ? 'next to nothing' : `${share.toFixed(0)} %`;
  return `${end(told)} bar ${much} ${to > from ? 'stiffer' : 'softer'}: ${rate}, was ${said(from, how, preferences)}`;
};
/** `Front sits 0.30 in ± 0.15 higher`: against how it stood, whenever the car was measured. */
const height: Way = ({ before, after, path, place, preferences, wantedUnit }) => {
  const since = numbersOf({ facts: new Map(after.situation.facts), then: before.situation.facts });
  const change = known(since, path);
  if (change === undefined || !isChange(0, change)) return undefined;
  const how = sayingOf(path, wantedUnit);
  const within = since.within(path);
  if (!Number.isFinite(within)) return undefined;
  const way = change > 0 ? 'higher' : 'lower';
  const who = place === '' ? 'The car' : sentence(place);
  if (Math.abs(change) <= within)
    return Math.abs(change) + within < 0.003 ? undefined : `${who} sits about as high, ± ${spoken(within, how, preferences, within)}`;
  const doubt = within > Math.abs(change) / 50 ? ` ± ${plusMinus(within, how, preferences)}` : '';
  return `${who} sits ${spoken(Math.abs(change), how, preferences, doubt === '' ? Math.abs(change) / 20 : within)}${doubt} ${way}`;
};
/** `Lean at 0.8 g 2.3°, was 2.4`. */
const lean: Way = (told) => {
  const at = known(numbersOf(told.after.situation), lateral.path);
  const how = { dimension: 'acceleration' } as const;
  return plainly(told, at === undefined ? 'lean' : `lean at ${spoken(at, how, told.preferences)}`);
};
/** `The front holds 1.05 g, was 1.03`. */
const holds: Way = (told) => plainly(told, `${told.place === '' ? 'the car' : `the ${told.place}`} holds`);
const balance: Way = ({ before, after, path, preferences }) => {
  const [a, b] = [numbersOf(before.situation), numbersOf(after.situation)];
  const text = balanceMove(a, b, path, preferences);
  if (text === undefined) return undefined;
  return path === otherWayBalance.path ? `The other way ${text}` : sentence(text);
};
/** Seconds later or sooner are told of which end: `The rears lock first, at 0.82 g; the fronts not till 1.29`. */
const locks: Way = ({ before, after, path, preferences }) => {
  const [a, b] = [numbersOf(before.situation), numbersOf(after.situation)];
  const order = known(b, path);
  const [front, rear] = [known(b, 'front.brake.lock'), known(b, 'rear.brake.lock')];
  if (order === undefined || front === undefined || rear === undefined || !isChange(known(a, path) ?? 0, order)) return undefined;
  const how = { dimension: 'acceleration' } as const;
  const write = (end: 'front' | 'rear', si: number, say = spoken): string =>
    say(si, how, preferences, Math.max(b.within(`${end}.brake.lock`), 0.05));
  if (Math.abs(order) <= b.within(path))
    return `Which end locks first is a toss-up: front at ${write('front', front)}, rear at ${write('rear', rear)}`;
  return order < 0
    ? `The rears lock first, at ${write('rear', rear)}; the fronts not till ${write('front', front, said)}`
    : `The fronts lock first, at ${write('front', front)}; the rears not till ${write('rear', rear, said)}`;
};

const ways: Readonly<Record<string, Way>> = {
  [balanceIndex.path]: balance,
  [otherWayBalance.path]: balance,
  'bar.rateAtEnds': bar,
  'roll.angle': lean,
  heightChange: height,
  limit: holds,
  'limit.car': holds,
  'brake.order': locks,
};
/** What becomes of a figure from one state of a car to another, in a sentence without its full stop. */
export function moveSaid(before: Looked, after: Looked, path: string, preferences: Preferences, wantedUnit?: string): string | undefined {
  const { entry, place } = catalog.node(path);
  const own = ways[entry.path];
  const told: Told = { before, after, path, place, preferences, wantedUnit };
  return own ? own(told) : plainly(told);
}
