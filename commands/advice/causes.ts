/** Why the car pushes or is loose at the limit: the balance taken apart in the model itself, one effect after another switched off. */
import { isRefusal } from '../../core/catalog.js';
import { pathAt } from '../../core/engine.js';
import { lateral, turn } from '../../core/subjects/cornering/asked.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { transferShare } from '../../core/subjects/cornering/transfer.js';
import { camberInTurn } from '../../core/subjects/cornering/turning.js';
import { gripCoefficient, gripExponent, gripLeanLoss, gripLoad } from '../../core/subjects/grip/told.js';
import { axleMass, frontShareNow } from '../../core/subjects/mass/aboard.js';
import type { Preferences } from '../context.js';
import { isNotLaid, lay } from '../facts.js';
import { type Looked, numbersOf } from '../looked.js';
import type { Item } from '../reading.js';
import { balanceText, percent, tenth } from '../show/balance.js';
import { known, listed, said, sayingOf, spoken } from '../show/spoken.js';

/** An effect, and what it adds to the balance: above 0 push. All of them together are the balance. */
export interface BalanceCause {
  readonly what: 'load' | 'weight' | 'camber' | 'tires';
  readonly part: number;
}
const both = ['front', 'rear'];
const without = (entry: typeof gripExponent | typeof gripLeanLoss): Item => ({
  ...{ entry, places: both, placed: true },
  said: { value: 0, text: '0' },
});
/** The balance of the car if its tires did not care for what was left out. */
function balanceWithout(looked: Looked, ...left: readonly Item[]): number | undefined {
  const laid = left.length === 0 ? looked : lay(looked.situation, left, { is: 'tried' });
  if ('refused' in laid && isNotLaid(laid)) return undefined;
  return known(numbersOf(laid.situation), balanceIndex.path);
}
const g = 9.80665;
/**
 * What the weight at each end makes by itself, nothing moving across: each tire's coefficient at a half of its axle's weight (mu = mu0 (N/N0)^-n),
 * against the same with no fall. 0 where the grip is not known.
 */
function byWeight(looked: Looked): number {
  const numbers = numbersOf(looked.situation);
  const at = (end: string, falls: boolean): number | undefined => {
    const [mu, load, exponent, mass] = [gripCoefficient, gripLoad, gripExponent, axleMass].map((entry) =>
      known(numbers, pathAt(end, entry)),
    );
    if (mu === undefined || load === undefined || exponent === undefined || mass === undefined) return undefined;
    return mu * ((mass * g) / 2 / load) ** (falls ? -exponent : 0);
  };
  const index = (falls: boolean): number => {
    const [front, rear] = [at('front', falls), at('rear', falls)];
    return front === undefined || rear === undefined ? 0 : (rear - front) / Math.min(front, rear);
  };
  return index(true) - index(false);
}
/**
 * Load moving across costs grip because a tire's coefficient falls with load, and camber because a tire that leans grips less or more; what is left is
 * of the tires themselves and of drive and brakes. Shapley's value of both effects, so that their order does not matter.
 */
export function balanceCauses(looked: Looked): readonly BalanceCause[] | undefined {
  const [load, lean] = [without(gripExponent), without(gripLeanLoss)];
  const [whole, noLoad, noLean, neither] = [
    balanceWithout(looked),
    balanceWithout(looked, load),
    balanceWithout(looked, lean),
    balanceWithout(looked, load, lean),
  ];
  if (whole === undefined || noLoad === undefined || noLean === undefined || neither === undefined) return undefined;
  const byLoad = (whole - noLoad + (noLean - neither)) / 2;
  const weight = byWeight(looked);
  return [
    { what: 'load', part: byLoad - weight },
    { what: 'weight', part: weight },
    { what: 'camber', part: (whole - noLean + (noLoad - neither)) / 2 },
    { what: 'tires', part: neither },
  ];
}
/** A tenth of a per cent is nothing to speak of. */
const least = 1e-3;
const names: Readonly<Record<BalanceCause['what'], string>> = {
  load: 'load moving across',
  weight: 'the weight on each end',
  camber: 'camber',
  tires: 'the grip and the drive of the tires',
};
const asPercent = (part: number, preferences: Preferences): string => said(Math.abs(part), percent, preferences, tenth);

/** `Load moving across makes push 4.0 %; camber takes 1.9 back.` */
function mainSentence(causes: readonly BalanceCause[], preferences: Preferences): string {
  const order = causes.filter(({ part }) => Math.abs(part) >= least).toSorted((a, b) => Math.abs(b.part) - Math.abs(a.part));
  const [first, ...rest] = order;
  if (!first) return 'Nothing makes it push or loose: both ends hold alike.';
  const others = rest.map(
    ({ what, part }) =>
      `${names[what]} ${part > 0 === first.part > 0 ? 'adds' : 'takes'} ${asPercent(part, preferences)}${part > 0 === first.part > 0 ? '' : ' back'}`,
  );
  const name = names[first.what];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} makes it ${balanceText(first.part, preferences, tenth)}${others.length === 0 ? '' : `; ${listed(others)}`}.`;
}
/** `The front takes 60 % of that load, on 53 % of the weight.` */
function loadSentence(looked: Looked, preferences: Preferences): readonly string[] {
  const numbers = numbersOf(looked.situation);
  const [load, weight] = [known(numbers, transferShare.path), known(numbers, frontShareNow.path)];
  if (load === undefined || weight === undefined) return [];
  const write = (share: number): string => spoken(share, percent, preferences, 0.02);
  return [`The front takes ${write(load)} of that load, on ${write(weight)} of the weight.`];
}
/** `At 0.8 g the outside front leans out 0.7°, the outside rear in 0.2°.` */
function camberSentence(looked: Looked, preferences: Preferences): readonly string[] {
  const numbers = numbersOf(looked.situation);
  const outside = numbers.get(turn.path) === 'right' ? 'l' : 'r';
  const at = known(numbers, lateral.path);
  const lean = (end: 'f' | 'r'): string | undefined => {
    const path = pathAt(`${outside}${end}`, camberInTurn);
    const camber = known(numbers, path);
    if (camber === undefined) return undefined;
    const text = spoken(Math.abs(camber), sayingOf(path), preferences, 0.004);
    // Negative camber of an outside wheel leans its top toward the turn, where it grips.
    return /[1-9]/.test(text) ? `leans ${text} ${camber < 0 ? 'into the turn' : 'out of it'}` : 'stands upright';
  };
  const [front, rear] = [lean('f'), lean('r')];
  if (front === undefined || rear === undefined || at === undefined) return [];
  return [`At ${spoken(at, { dimension: 'acceleration' }, preferences)} the outside front ${front}, the outside rear ${rear}.`];
}
/** Why, in sentences: which effect makes how much of it, and what stands behind each. Undefined where the car has no balance. */
export function whyBalance(looked: Looked, preferences: Preferences): readonly string[] | undefined {
  if (isRefusal(numbersOf(looked.situation).number(balanceIndex.path))) return undefined;
  const causes = balanceCauses(looked);
  if (!causes) return undefined;
  const counts = (what: BalanceCause['what']): boolean => causes.some((one) => one.what === what && Math.abs(one.part) >= least);
  return [
    mainSentence(causes, preferences),
    ...(counts('load') ? loadSentence(looked, preferences) : []),
    ...(counts('camber') ? camberSentence(looked, preferences) : []),
  ];
}
