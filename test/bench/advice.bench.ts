/** How long the ranking of thirty single changes takes, the doubts of the best included. */
import { type Candidate, type Goal, rank } from '../../core/advice/rank.js';
import type { Fact } from '../../core/car.js';
import { isRefusal } from '../../core/catalog.js';
import { catalog } from '../../core/stubaxle.js';

const told = (value: number, within: number, source: string): Fact => ({ value, within, evidence: 'measured', source });
const ends = ['front', 'rear'] as const;
/** A car of everyday numbers, told as a member tells one. */
const car = new Map<string, Fact>([
  ['mass', told(1200, 5, 'mass')],
  ['frontShare', told(0.525, 0.005, 'share')],
  ['wheelbase', told(2.515, 0.003, 'wheelbase')],
  ['cg.height', told(0.48, 0.02, 'cg')],
  ...ends.flatMap((end): readonly (readonly [string, Fact])[] => [
    [`${end}.track`, told(1.45, 0.003, `${end} track`)],
    [`${end}.spring.rate`, told(65_000, 1300, `${end} spring`)],
    [`${end}.spring.ratio`, told(0.68, 0.01, `${end} ratio`)],
    [`${end}.bar.diameter`, told(0.02, 0.0001, `${end} bar`)],
    [`${end}.bar.ratio`, told(0.6, 0.012, `${end} bar ratio`)],
  ]),
  ...['lf', 'rf', 'lr', 'rr'].flatMap((at): readonly (readonly [string, Fact])[] => [
    [`${at}.bar.lever`, told(0.22, 0.002, `${at} lever`)],
    [`${at}.camber`, told(-0.03, 0.002, `${at} camber`)],
  ]),
]);
const changed = (to: Readonly<Record<string, number>>): Candidate<string> => ({
  what: Object.keys(to).join(),
  situation: { facts: new Map([...car, ...Object.entries(to).map(([path, value]) => [path, told(value, 0, 'tried')] as const)]) },
  minutes: 10,
});
const five = [1, 2, 3, 4, 5] as const;
const thirty: readonly Candidate<string>[] = five.flatMap((n) => [
  changed({ 'front.bar.diameter': 0.017 + 0.0015 * n }),
  changed({ 'rear.bar.diameter': 0.017 + 0.0015 * n }),
  changed({ 'front.spring.rate': 50_000 + 6000 * n }),
  changed({ 'rear.spring.rate': 50_000 + 6000 * n }),
  changed({ 'lr.camber': -0.008 * n, 'rr.camber': -0.008 * n }),
  changed({ 'lr.bar.lever': 0.18 + 0.015 * n, 'rr.bar.lever': 0.18 + 0.015 * n }),
]);
const goal: Goal = { aims: [{ path: 'balance', towards: -1 }] };
const runs = 9;
const warmUps = 3;

/** Milliseconds, median of several runs. */
export function measureAdvice(): { readonly adviceMs: number } {
  const run = (): number => {
    const start = performance.now();
    const found = rank(catalog, { facts: car }, thirty, goal);
    if (isRefusal(found) || found.ranked.length !== 30 || !found.ranked.some(({ verdict }) => verdict === 'helps'))
      throw new Error('the changes were not ranked: nothing was measured');
    return performance.now() - start;
  };
  for (let n = 0; n < warmUps; n++) run();
  const times = Array.from({ length: runs }, run).sort((a, b) => a - b);
  return { adviceMs: times[runs >> 1] ?? Number.NaN };
}
