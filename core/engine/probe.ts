/** Figures as functions of an input: only what lies between the two is worked out again. */
import type { Fact, Facts } from '../car.js';
import { canBeTold, isNumeric } from '../catalog.js';
import { type Catalog, hasBit } from './compile.js';
import { catalogFor } from './evaluate.js';
import { isKnown } from './settle.js';
import { load, type Situation } from './state.js';
import { telling } from './telling.js';

/** Gives the figures at a value of the inputs, in the order in which they were asked for; undefined where one has no value. */
export type Probe = (value: number) => readonly (number | undefined)[];

const tried = (value: number): Fact => ({ value, within: 0, evidence: 'estimated', source: 'tried' });

/** The situation with these inputs tried. What the car was when it was last measured stays as it was: trying a spring changes the ride height. */
function trying(catalog: Catalog, situation: Situation, inputs: readonly string[]): Situation {
  let facts: Facts = situation.facts;
  for (const path of inputs) {
    const { entry } = catalog.node(path);
    if (!isNumeric(entry) || !canBeTold(entry)) throw new Error(`${path} is a ${entry.kind}, and cannot be tried as an amount`);
    facts = telling(catalog, facts, path, tried(entry.sane?.[0] ?? 0));
  }
  return { ...situation, facts, then: situation.then ?? situation.facts };
}
/** The catalog compiled for what a situation tells, and for these inputs, which may be results. */
export const catalogTrying = (catalog: Catalog, situation: Situation, inputs: readonly string[]): Catalog =>
  catalogFor(catalog, trying(catalog, situation, inputs));

/**
 * Makes a probe of a car, or of a plain sum.
 * @param inputs what is moved together (both rear corners); results that can be told, too; throws for anything else
 * @param figures paths of the numbers that are wanted
 * @param from what is added to the value of each input; left out, all have the same value
 */
export function probe(
  any: Catalog,
  situation: Situation,
  inputs: readonly string[],
  figures: readonly string[],
  from: readonly number[] = [],
): Probe {
  const trial = trying(any, situation, inputs);
  const catalog = catalogFor(any, trial);
  const moved = inputs.map((path) => catalog.node(path));
  const wanted = figures.map((path) => catalog.node(path).index);
  const state = load(catalog, trial);
  const between = catalog.nodes.filter(
    ({ index }) =>
      moved.some((input) => hasBit(catalog.below[input.index]!, index)) && wanted.some((figure) => hasBit(catalog.below[index]!, figure)),
  );
  return (value) => {
    for (const [n, { index }] of moved.entries()) {
      const given = catalog.givenOf[index]!;
      state.told[index] = value + (from[n] ?? 0);
      if (given >= 0) state.told[given] = state.told[index]!;
    }
    for (const { index } of between) state.settled[index] = 0;
    return wanted.map((figure) => {
      const number = isKnown(state, figure) ? state.number[figure]! : Number.NaN;
      return Number.isNaN(number) ? undefined : number;
    });
  };
}
