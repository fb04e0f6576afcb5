/** How long every figure of a car takes, with its plus-or-minus. */
import { evaluate } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { randomCar } from '../core/cars.js';

const cars = 50;
const runs = 15;
const warmUps = 10;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** Milliseconds a car, median of several runs over 50 varied cars: every value is worked out, and every figure's half-width asked for. */
export function measureFigures(): { figuresMs: number } {
  const garage = Array.from({ length: cars }, (_, n) => randomCar(catalog, n));
  const paths = catalog.nodes.filter((node) => node.entry.kind === 'figure' && !node.then).map((node) => node.path);
  let sum = 0;
  const run = (): number => {
    const start = performance.now();
    for (const situation of garage) {
      const it = evaluate(catalog, situation);
      for (const path of paths) sum += it.within(path);
    }
    return (performance.now() - start) / cars;
  };
  for (let n = 0; n < warmUps; n++) run();
  const figuresMs = median(Array.from({ length: runs }, run));
  if (!(sum > 0)) throw new Error('the cars have no doubt at all: nothing was measured');
  return { figuresMs };
}
