/** How long the figures of a car take, with their plus-or-minus: one alone, all that do not corner, and all. */
import { evaluate, type Situation } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { randomCar } from '../core/cars.js';

const warmUps = 5;
const runs = 15;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
const dear = new Set(catalog.descendants('cornering.model').map(({ path }) => path));
const figures = catalog.nodes.filter((node) => node.entry.kind === 'figure' && !node.then).map((node) => node.path);
const corners = (situation: Situation): boolean => evaluate(catalog, situation).status('cornering.state') === 'computed';

/** Milliseconds a car, median of several runs: each car is evaluated anew, and the half-width of every path asked for. */
function measure(garage: readonly Situation[], paths: readonly string[]): number {
  let sum = 0;
  const run = (): number => {
    const start = performance.now();
    for (const situation of garage) {
      const it = evaluate(catalog, situation);
      for (const path of paths) sum += it.within(path);
    }
    return (performance.now() - start) / garage.length;
  };
  for (let n = 0; n < warmUps; n++) run();
  const time = median(Array.from({ length: runs }, run));
  if (!(sum > 0)) throw new Error('the cars have no doubt at all: nothing was measured');
  return time;
}

/** Milliseconds: one figure and all that do not corner, of 50 varied cars; and all figures, of 10 of which enough is told to corner. */
export function measureFigures(): { oneFigureMs: number; plainFiguresMs: number; figuresMs: number } {
  const garage = Array.from({ length: 50 }, (_, n) => randomCar(catalog, n));
  return {
    oneFigureMs: measure(garage, ['rear.rideFrequency']),
    plainFiguresMs: measure(
      garage,
      figures.filter((path) => !dear.has(path)),
    ),
    figuresMs: measure(garage.filter(corners).slice(0, 10), figures),
  };
}
