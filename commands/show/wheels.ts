/** Four numbers as the wheels stand on the ground, seen from above, front first: a picture of text, at most 34 columns wide. */
import { isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
import { lateral, turn } from '../../core/subjects/cornering/asked.js';
import { loadInTurn } from '../../core/subjects/cornering/transfer.js';
import type { Preferences } from '../context.js';
import { unitFor } from '../language/quantities.js';
import { bare } from './amount.js';

export interface FourWheels {
  /** In the order lf, rf, lr, rr, as they are to be read. */
  readonly texts: readonly [string, string, string, string];
  /** What each bears of the whole, 0 to 1: drawn as a bar. */
  readonly shares: readonly [number, number, number, number];
  /** What is seen: `turning left, 0.9 g, lb`. */
  readonly head: string;
}
const strips = '▁▂▃▄▅▆▇█';
/** A wheel that bears a half of the car fills the strip. */
const strip = (share: number): string => (share <= 0 ? ' ' : (strips[Math.min(7, Math.floor(share * 16))] ?? '█'));
const room = 7;

/** The car from above, its front up, each wheel with what it bears. Lines that begin with two spaces are kept as they are. */
export function wheelsPicture({ texts, shares, head }: FourWheels): string {
  const left = (at: 0 | 2): string => `${texts[at].padStart(room)} ${strip(shares[at])}`;
  const right = (at: 1 | 3): string => `${strip(shares[at])} ${texts[at].padStart(room - 2)}`;
  const indent = ' '.repeat(room + 2);
  return [
    `  ${head}`,
    `  ${indent} front`,
    `  ${left(0)} ┌─────┐ ${right(1)}`,
    `  ${indent} │     │`,
    `  ${left(2)} └─────┘ ${right(3)}`,
    `  ${indent}  rear`,
  ].join('\n');
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
  const unit = unitFor('mass', preferences).shown;
  const step = sum / 100;
  const text = (at: number) => (loads[at]! > 0 ? bare(loads[at]!, 'mass', preferences, step).text.replace(` ${unit}`, '') : 'up');
  const g = numbers.number(lateral.path);
  const at = isRefusal(g) ? '' : `, ${bare(g, 'acceleration', preferences).text}`;
  const share = (at: number) => (loads[at] ?? 0) / sum;
  return wheelsPicture({
    texts: [text(0), text(1), text(2), text(3)],
    shares: [share(0), share(1), share(2), share(3)],
    head: `turning ${numbers.get(turn.path) === 'right' ? 'right' : 'left'}${at}, ${unit}`,
  });
}
