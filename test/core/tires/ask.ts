/** Asks the entries of tires, wheels, gearing and pressure for one number, given facts in SI: the whole way that a command goes. */

import type { Fact } from '../../../core/car.js';
import { isRefusal, type Refusal } from '../../../core/catalog.js';
import { type Evaluation, evaluate } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';

export type Told = Readonly<Record<string, number | string>>;
const fact = (path: string, value: number | string): Fact => ({ value, within: 0, evidence: 'spec', source: `${path} ${value}` });
export const factsOf = (told: Told): ReadonlyMap<string, Fact> =>
  new Map(Object.entries(told).map(([path, value]) => [path, fact(path, value)]));

export const car = (told: Told, then?: Told): Evaluation =>
  evaluate(catalog, { facts: factsOf(told), ...(then ? { then: factsOf(then) } : {}) });
/** The number, or the sentence of the refusal. */
export function ask(told: Told, path: string, then?: Told): number {
  const value: number | Refusal = car(told, then).number(path);
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
}
export function refusalOf(told: Told, path: string): string {
  const value = car(told).number(path);
  return isRefusal(value) ? value.refused : `no refusal but ${value}`;
}
export const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

export const inch = 0.0254;
export const mile = 1609.344;
export const psi = 6894.757293168361;
export const pound = 0.45359237;
export const rpm = Math.PI / 30;
export const mph = 0.44704;
export const fahrenheit = (degrees: number): number => ((degrees + 459.67) * 5) / 9;
