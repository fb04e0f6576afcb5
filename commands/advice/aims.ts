/** Which figures a wish speaks of, which way, and under which conditions of the question. */
import type { Goal } from '../../core/advice/rank.js';
import { pathAt, type Situation } from '../../core/engine.js';
import { isNotLaid, lay } from '../facts.js';
import { entryAt } from '../looked.js';
import type { Item } from '../reading.js';
import type { Phase, Wanted, Wish } from './goal.js';

const g = 9.80665;
/** How hard the car brakes going in, and speeds up coming out, where it is not said. */
const usual = { braking: 0.3, driving: 0.2 };
/** Of the balance: a hundredth of the limit is more than most drivers feel. */
const balanceHeld = { path: 'balance', slack: 0.01 } as const;

interface Told {
  readonly goal: Goal;
  /** The figure that the rows tell the shift of; none where several are weighed. */
  readonly figure: string | undefined;
}
const single = (path: string, towards: 1 | -1): Told => ({ goal: { aims: [{ path, towards }] }, figure: path });
export function aimsOf({ wish, towards, held }: Pick<Wanted, 'wish' | 'towards' | 'held'>): Told {
  const told = alone(wish, towards);
  return held === undefined ? told : { ...told, goal: { ...told.goal, hold: balanceHeld } };
}
function alone(wish: Wish, towards: 1 | -1): Told {
  switch (wish) {
    // The index is above 0 where the front gives up first: more rotation is less of it.
    case 'rotation':
      return single('balance', towards === 1 ? -1 : 1);
    case 'grip':
      return single('limit.car', towards);
    case 'front grip':
      return single('front.limit', towards);
    case 'rear grip':
      return single('rear.limit', towards);
    case 'roll':
      return single('roll.angle', towards);
    case 'traction':
      return single('traction.cornerAcceleration', towards);
    case 'softer':
    case 'stiffer': {
      const way = wish === 'softer' ? -1 : 1;
      const aims = [
        { path: 'front.rideFrequency', towards: way },
        { path: 'rear.rideFrequency', towards: way },
      ] as const;
      return { goal: { aims, hold: balanceHeld }, figure: undefined };
    }
  }
}
/** What else is told of a change: how it rolls and rides, and what each end does. */
export const alongside = ['balance', 'roll.angle', 'front.rideFrequency', 'rear.rideFrequency', 'front.limit', 'rear.limit'] as const;

const condition = (path: string, value: number | string, text: string): Item => ({
  ...{ entry: entryAt(path), places: [''], placed: true },
  said: { value, text },
});
/** Conditions of the question that a wish means. */
export function conditionsOf({ wish, phase, hardness, turn }: Pick<Wanted, 'wish' | 'phase' | 'hardness' | 'turn'>): readonly Item[] {
  const items: Item[] = [];
  const steady = wish === 'softer' || wish === 'stiffer';
  const along = (path: 'braking' | 'driving', hard: number) => items.push(condition(path, hard * g, `${hard} g`));
  // Thrust that the tires hold is asked at a lateral acceleration, not under a thrust of its own.
  if (wish === 'traction' || (phase === 'mid' && hardness !== undefined)) {
    if (hardness !== undefined) items.push(condition('lateral', hardness * g, `${hardness} g`));
  } else if (!steady && phase === 'entry') along('braking', hardness ?? usual.braking);
  else if (!steady && phase === 'exit') along('driving', hardness ?? usual.driving);
  if (turn !== undefined) items.push(condition('turn', turn, turn));
  return items;
}
export function under(from: Situation, conditions: readonly Item[]): Situation | { readonly refused: string } {
  if (conditions.length === 0) return from;
  const laid = lay(from, conditions, { is: 'tried' });
  return isNotLaid(laid) ? { refused: laid.refused } : laid.situation;
}
export const phaseText: Readonly<Record<Phase, string>> = { entry: 'going in', mid: 'mid corner', exit: 'coming out' };
const more: Readonly<Record<Wish, string>> = {
  rotation: 'rotation',
  grip: 'grip',
  'front grip': 'front grip',
  'rear grip': 'rear grip',
  roll: 'roll',
  traction: 'thrust in the turn',
  softer: 'softer, same balance',
  stiffer: 'stiffer, same balance',
};
/** `more rotation mid corner`: a line that says the wish again. */
export function wishText({ wish, towards, phase, hardness, turn, held }: Wanted): string {
  if (wish === 'softer' || wish === 'stiffer') return more[wish];
  const when = wish === 'traction' ? 'coming out' : phaseText[phase];
  const hard = hardness === undefined ? '' : ` at ${hardness} g`;
  const way = turn === undefined ? '' : ` in ${turn} turns`;
  return `${towards === 1 ? 'more' : 'less'} ${wish === 'traction' ? 'traction' : more[wish]} ${when}${hard}${way}${held ? ', same balance' : ''}`;
}
export const figureAt = (path: string) => {
  const dot = path.indexOf('.');
  const place = ['front', 'rear'].includes(path.slice(0, dot)) ? path.slice(0, dot) : '';
  return { entry: entryAt(path), place, path: pathAt(place, entryAt(path)) };
};
