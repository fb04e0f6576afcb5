/** One number in a sentence: `Rear ride frequency 1.83 Hz ± 0.09, tire in it`, `Lean 2.5° ± 0.5 at 0.8 g`. */
import { isRefusal } from '../../core/catalog.js';
import type { Evaluation } from '../../core/engine.js';
import { nameAt } from '../../core/engine.js';
import { lateral } from '../../core/subjects/cornering/asked.js';
import type { Preferences } from '../context.js';
import { bare } from './amount.js';

/** How a figure is said, where its name is no words for a sentence. */
interface Saying {
  /** Without where it is. */
  readonly name?: string;
  /** A place of its own in the sentence: `The front holds`. */
  readonly at?: (place: string) => string;
  /** What text books differ about, in a few words. */
  readonly basis?: string;
}
const corners: Readonly<Record<string, string>> = { lf: 'left front', rf: 'right front', lr: 'left rear', rr: 'right rear' };
const where = (place: string): string => corners[place] ?? place;

const sayings: Readonly<Record<string, Saying>> = {
  'roll.angle': { name: 'lean' },
  'roll.perG': { name: 'lean per g' },
  rideFrequency: { basis: 'tire in it' },
  'corner.rideFrequency': { name: 'ride frequency', basis: 'tire in it' },
  springFrequency: { name: 'ride frequency', basis: 'no tire in it' },
  rideRate: { name: 'ride rate', basis: 'tire in it' },
  'corner.rideRate': { name: 'ride rate', basis: 'tire in it' },
  wheelRate: { basis: 'no tire in it' },
  'bar.rateAtEnds': { name: 'bar rate', basis: 'at its ends, links in it' },
  'tire.freeDiameter': { name: 'tire diameter', basis: 'none of it squashed' },
  limit: { at: (place) => `the ${place} holds` },
  'limit.car': { name: 'the car holds' },
  'lift.car': { name: 'the first wheel lifts at' },
  'cornering.load': { at: (place) => `the ${where(place)} carries` },
  loadTransfer: { at: (place) => `load moving across the ${place}` },
  'loadTransfer.car': { name: 'load moving across, both ends together' },
  'loadTransfer.frontShare': { name: 'front share of the load moving across' },
  'roll.frontShare': { name: 'front share of roll stiffness' },
  'roll.suspension': { name: 'roll stiffness' },
  'axle.rideHeight': { name: 'ride height' },
  cornerMass: { name: 'weight' },
  axleMass: { name: 'weight' },
  totalMass: { name: 'weight' },
  frontShareNow: { name: 'front share' },
  cross: { name: 'cross weight' },
  'cg.heightNow': { name: 'CG height' },
  'tire.rate': { name: 'tire rate' },
  springRateHere: { name: 'spring rate', basis: 'at ride height' },
  gearSpeed: { basis: 'tire rolling, 3 % under free' },
  topSpeed: { name: 'top speed', basis: 'by gearing alone' },
};
/** What it is called in a sentence, in lower case. */
export function sayingAt(numbers: Evaluation, path: string): string {
  const { entry, place } = numbers.catalog.node(path);
  const own = sayings[entry.path];
  if (own?.at) return own.at(place);
  return nameAt({ name: (own?.name ?? entry.name).replace(/ in the turn$| as it stands$/, ''), scope: entry.scope }, place);
}
/** What text books differ about, of a number of a whole car. */
export const basisOfCar = (numbers: Evaluation, path: string): string | undefined => sayings[numbers.catalog.node(path).entry.path]?.basis;

/** `at 0.8 g`, for a number that the turn makes. */
export function turnAt(numbers: Evaluation, path: string, preferences: Preferences): string {
  const g = numbers.number(lateral.path);
  if (path === lateral.path || isRefusal(g) || !numbers.catalog.dependsOn(path, lateral.path)) return '';
  const { entry } = numbers.catalog.node(path);
  const isTurn = sayings[entry.path]?.name === 'lean' || / in the turn\b/.test(entry.name);
  return isTurn ? ` at ${bare(g, 'acceleration', preferences).text}` : '';
}
