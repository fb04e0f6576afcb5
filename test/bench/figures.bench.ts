/** How long the figures of a car take, with their plus-or-minus: one alone, all that do not corner, and all. */
import { evaluate, type Situation } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { randomCar } from '../core/cars.js';

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
const dear = new Set(catalog.descendants('cornering.model').map(({ path }) => path));
const figures = catalog.nodes.filter((node) => node.entry.kind === 'figure' && !node.then).map((node) => node.path);
const corners = (situation: Situation): boolean => evaluate(catalog, situation).status('cornering.state') === 'computed';

/** Milliseconds a car, median of several runs: each car is evaluated anew, and the half-width of every path asked for. */
function measure(garage: readonly Situation[], paths: readonly string[], runs: number): number {
  let sum = 0;
  const run = (): number => {
    const start = performance.now();
    for (const situation of garage) {
      const it = evaluate(catalog, situation);
      for (const path of paths) sum += it.within(path);
    }
    return (performance.now() - start) / garage.length;
  };
  for (let n = 0; n < Math.ceil(runs / 3); n++) run();
  const time = median(Array.from({ length: runs }, run));
  if (!(sum > 0)) throw new Error('the cars have no doubt at all: nothing was measured');
  return time;
}

/**
 * Milliseconds: one figure and all that do not corner, of 50 varied cars; and all figures, of 10 of which enough is told to corner.
 * @param smoke only to see that it runs: few cars, few times
 */
export function measureFigures(smoke = false): { oneFigureMs: number; plainFiguresMs: number; figuresMs: number } {
  const garage = Array.from({ length: 50 }, (_, n) => randomCar(catalog, n));
  const plain = figures.filter((path) => !dear.has(path));
  const few = smoke ? garage.slice(0, 10) : garage;
  return {
    oneFigureMs: measure(few, ['rear.rideFrequency'], smoke ? 3 : 15),
    plainFiguresMs: measure(few, plain, smoke ? 3 : 15),
    figuresMs: measure(garage.filter(corners).slice(0, smoke ? 3 : 10), figures, smoke ? 1 : 7),
  };
}
