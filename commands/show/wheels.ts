/** Four numbers as the wheels stand on the ground, seen from above, front first: a picture of text, at most 34 columns wide. */
import { isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
import { turn } from '../../core/subjects/cornering/asked.js';
import { loadInTurn } from '../../core/subjects/cornering/transfer.js';
import type { Preferences } from '../context.js';
import { bare } from './amount.js';

export interface FourWheels {
  /** In the order lf, rf, lr, rr, as they are to be read. */
  readonly texts: readonly [string, string, string, string];
  /** What each bears of the whole, 0 to 1: drawn as a bar. */
  readonly shares: readonly [number, number, number, number];
  /** Which way the car turns. */
  readonly turn: 'left' | 'right';
}
const longest = 5;
/** A wheel that bears a half of the car fills the bar. */
const blocks = (share: number): number => Math.max(0, Math.min(longest, Math.round(share * 2 * longest)));
const width = 14;

/** `  ▇ 235 lb | 1,151 lb ▇▇▇▇`, an axle a line: the outer wheels stand out. Lines that begin with two spaces are kept as they are. */
export function wheelsPicture({ texts, shares, turn }: FourWheels): string {
  const side = (at: 0 | 1 | 2 | 3): string => {
    const strip = shares[at] <= 0 ? 'up' : '▇'.repeat(Math.max(1, blocks(shares[at])));
    return at % 2 === 0 ? `${strip} ${texts[at]}`.padStart(width) : `${texts[at]} ${strip}`.padEnd(width);
  };
  const axle = (left: 0 | 2): string => `  ${side(left)} | ${side(left === 0 ? 1 : 3)}`.trimEnd();
  const arrow = turn === 'left' ? '  <- turning left' : '  turning right ->';
  return [`${arrow}, front above`, axle(0), axle(2)].join('\n');
}

const corners = ['lf', 'rf', 'lr', 'rr'] as const;
/** The loads of the four wheels in the turn that is asked; undefined where they are not known. */
export function loadsPicture(numbers: Evaluation, preferences: Preferences): string | undefined {
  const loads: number[] = [];
  for (const corner of corners) {
    const load = numbers.number(pathAt(corner, loadInTurn));
    if (isRefusal(load)) return undefined;
    loads.push(load);
  }
  const sum = loads.reduce((all, one) => all + one, 0);
  if (!(sum > 0)) return undefined;
  const text = (at: number) => bare(loads[at] ?? 0, 'mass', preferences, Math.max(1, sum / 200)).text;
  const share = (at: number) => (loads[at] ?? 0) / sum;
  return wheelsPicture({
    texts: [text(0), text(1), text(2), text(3)],
    shares: [share(0), share(1), share(2), share(3)],
    turn: numbers.get(turn.path) === 'right' ? 'right' : 'left',
  });
}
