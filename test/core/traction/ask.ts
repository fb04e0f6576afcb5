/** Asks the entries of engine, traction, brakes and links for one number, given facts in SI. */
import type { Fact } from '../../../core/car.js';
import { type Curve, isRefusal } from '../../../core/catalog.js';
import { type Evaluation, evaluate } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';

export type Told = Readonly<Record<string, number | string | Curve>>;
const fact = (path: string, value: number | string | Curve, within: number): Fact => ({ value, within, evidence: 'spec', source: path });
export const car = (told: Told, doubt = 0): Evaluation =>
  evaluate(catalog, {
    facts: new Map(
      Object.entries(told).map(([path, value]) => [path, fact(path, value, typeof value === 'number' ? doubt * Math.abs(value) : 0)]),
    ),
  });
/** The number; throws the sentence of a refusal. */
export function ask(told: Told, path: string): number {
  const value = car(told).number(path);
  if (isRefusal(value)) throw new Error(`${path}: ${value.refused}`);
  return value;
}
export function refusalOf(told: Told, path: string): string {
  const value = car(told).number(path);
  return isRefusal(value) ? value.refused : `no refusal but ${value}`;
}
export const g = 9.80665;
export const rpm = Math.PI / 30;
export const mph = 0.44704;
export const inch = 0.0254;
export const pound = 0.45359237;
export const poundForce = 4.4482216152605;
export const horsepower = 745.6998715822702;
const poundFootPerDegree = 1.3558179483314003 * (180 / Math.PI);

const rateForRoll = (stiffness: number, track: number): number => (2 * stiffness * poundFootPerDegree) / (track * track);
/** The car of REFERENCES row L2, told: 2600 lb, 52 % front, wheelbase 95 in, CG 19 in, tracks 58/57 in; grip of 1 that does not fall with load; stiff tires. */
export const L2: Told = {
  mass: 2600 * pound,
  frontShare: 0.52,
  wheelbase: 95 * inch,
  'cg.height': 19 * inch,
  'front.track': 58 * inch,
  'rear.track': 57 * inch,
  'front.unsprung.axle': 180 * pound,
  'rear.unsprung.axle': 160 * pound,
  'front.unsprung.height': 12 * inch,
  'rear.unsprung.height': 12 * inch,
  'front.rollCenter.height': 2 * inch,
  'rear.rollCenter.height': 8 * inch,
  'front.grip.mu': 1,
  'rear.grip.mu': 1,
  'front.grip.exponent': 0,
  'rear.grip.exponent': 0,
  'front.grip.leanLoss': 0,
  'rear.grip.leanLoss': 0,
  'front.bar.diameter': 0,
  'rear.bar.diameter': 0,
  'front.spring.rate': rateForRoll(620, 58 * inch),
  'rear.spring.rate': rateForRoll(400, 57 * inch),
  'front.spring.ratio': 1,
  'rear.spring.ratio': 1,
};
/** A light car with 118 hp at its rear wheels, told as a member would. */
export const light: Told = {
  mass: 1050,
  frontShare: 0.52,
  wheelbase: 2.3,
  'front.spring.rate': 55_000,
  'rear.spring.rate': 45_000,
  'front.bar.rate': 30_000,
  'rear.bar.rate': 12_000,
  'front.tire.size': '225/45R15',
  'rear.tire.size': '225/45R15',
  driven: 'rear',
  final: 4.1,
  '1.gear.ratio': 3.14,
  '2.gear.ratio': 1.89,
  '3.gear.ratio': 1.33,
  redline: 7200 * rpm,
  'engine.wheelPower': 118 * horsepower,
};
