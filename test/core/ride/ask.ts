/** Asks the whole catalog about invented cars: facts in, a number out. */
import type { Fact, Facts } from '../../../core/car.js';
import { isRefusal, type Value } from '../../../core/catalog.js';
import { type Evaluation, evaluate } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';

export const inch = 0.0254;
export const pound = 0.45359237;
export const poundForce = 4.4482216152605;
export const poundPerInch = poundForce / inch;
export const foot = 0.3048;
export const degree = Math.PI / 180;

export type Told = Readonly<Record<string, Value>>;
const fact = (path: string, value: Value, within: number): Fact => ({
  value,
  within,
  evidence: 'measured',
  source: `${path} ${JSON.stringify(value)}`,
});
export const factsOf = (told: Told, within = 0): Facts =>
  new Map(Object.entries(told).map(([path, value]) => [path, fact(path, value, within)]));
export const car = (told: Told, then?: Told): Evaluation =>
  evaluate(catalog, { facts: factsOf(told), ...(then ? { then: factsOf(then) } : {}) });
/** The number; throws the sentence of a refusal. */
export function ask(told: Told, path: string, then?: Told): number {
  const value = car(told, then).number(path);
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
}
export function refusalOf(told: Told, path: string, then?: Told): string {
  const value = car(told, then).number(path);
  return isRefusal(value) ? value.refused : `no refusal but ${value}`;
}
/** The same at both ends. */
export const bothEnds = (told: Told): Told =>
  Object.fromEntries(
    Object.entries(told).flatMap(([path, value]) => [[`front.${path}`, value] as const, [`rear.${path}`, value] as const]),
  );
/** A spring that is straight through: 1 of spring for 1 of wheel, at all heights; and no bar beside it. */
export const straight = { 'spring.ratio': 1, 'spring.ratioRise': 0, 'bar.diameter': 0 };
/** A tire so stiff that it does not count. */
export const rigidTire = 1e15;
