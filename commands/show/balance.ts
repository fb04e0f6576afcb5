/** The balance of a car in words: `push 2.1 %` is by how much more the rear would hold than the front at the limit, `loose 1.2 %` the other way. */
import type { Difference } from '../../core/difference.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
import { axleLimitThisWay, balanceIndex } from '../../core/subjects/cornering/balance.js';
import type { Preferences } from '../context.js';
import { isChange } from './change.js';
import { moveOf, plusMinus, type Saying, said, spoken, surenessOf } from './spoken.js';

/** Hundredths of the limit. */
export const percent: Saying = { dimension: 'ratio', percent: true, unit: '%' };
/** Digits of a balance that nothing is known to be in doubt of, or whose doubt is finer than anybody feels. */
const finest = 5e-4;
/** Shown to a tenth of a per cent. */
export const tenth = 2e-3;

/** `push 2.1 %`, `loose 1.2 %`; `even` where it shows as neither. */
export function balanceText(index: number, preferences: Preferences, within = finest): string {
  const text = spoken(Math.abs(index), percent, preferences, Math.max(within, finest));
  if (!/[1-9]/.test(text)) return 'even';
  return `${index > 0 ? 'push' : 'loose'} ${text}`;
}
/** `turnip pushes 2.1 %`. */
export function doesText(index: number, preferences: Preferences, within = finest): string {
  const text = balanceText(index, preferences, within);
  return text === 'even' ? 'is even' : text.replace(/^push/, 'pushes').replace(/^loose/, 'is loose');
}
/** The balance before, after one of the same kind: `2.1`; the whole of it after another kind: `loose 0.3 %`. */
function before(from: number, to: number, within: number, preferences: Preferences): string {
  const text = balanceText(from, preferences, within);
  return from > 0 === to > 0 && text !== 'even' ? said(Math.abs(from), percent, preferences, Math.max(within, finest)) : text;
}
const limitAt = (end: 'front' | 'rear'): string => pathAt(end, axleLimitThisWay);
/** What each end does to the balance: `the rear gains, the front doesn't`; empty where neither is sure to move. */
function endsText(a: Evaluation, b: Evaluation): string {
  const way = (end: 'front' | 'rear'): number => {
    const moved = moveOf(a, b, limitAt(end));
    return moved === undefined || Math.abs(moved.change) <= moved.within ? 0 : Math.sign(moved.change);
  };
  const [front, rear] = [way('front'), way('rear')];
  const does = (sign: number): string => (sign > 0 ? 'gains' : 'loses');
  if (front === 0 && rear === 0) return '';
  if (front === 0) return `the rear ${does(rear)}, the front doesn't`;
  if (rear === 0) return `the front ${does(front)}, the rear doesn't`;
  return front === rear ? `both ends ${front > 0 ? 'gain' : 'lose'}` : `the front ${does(front)}, the rear ${does(rear)}`;
}
/** `(0.41 ± 0.18 more)`, of push or of looseness, whichever it is now. */
function byText({ from, to, change, within }: Difference, preferences: Preferences): string {
  const much = `${said(Math.abs(change), percent, preferences, within)}${within > finest / 10 ? ` ± ${plusMinus(within, percent, preferences)}` : ''}`;
  if (from > 0 === to > 0 || from === 0) return `${much} ${change > 0 === to > 0 ? 'more' : 'less'}`;
  return `${much} toward ${to > 0 ? 'push' : 'loose'}`;
}
/** `Push 2.5 %, was 2.1 (0.41 ± 0.18 more): the rear gains, the front doesn't`. */
export function balanceMove(a: Evaluation, b: Evaluation, path: string, preferences: Preferences): string | undefined {
  const moved = moveOf(a, b, path);
  if (!moved || !isChange(moved.from, moved.to)) return undefined;
  const { from, to, change, within } = moved;
  const sureness = surenessOf(moved, path);
  const shown = sureness === 'next to nothing' || sureness === 'open' ? tenth : Math.max(Math.abs(change) / 3, tenth);
  const both = `${balanceText(to, preferences, shown)}, was ${before(from, to, shown, preferences)}`;
  if (sureness === 'next to nothing') return `${both}: next to nothing`;
  if (sureness === 'open') return `${both}: too close to tell (± ${plusMinus(within, percent, preferences)} %)`;
  const sure = sureness === 'likely' ? `${both}: likely ${byText(moved, preferences)}` : `${both} (${byText(moved, preferences)})`;
  if (sureness === 'likely') return sure;
  const ends = path === balanceIndex.path ? endsText(a, b) : '';
  return ends === '' ? sure : `${sure}: ${ends}`;
}
