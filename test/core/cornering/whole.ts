/** The whole catalog with bars and cornering in it, asked about invented cars. */
import { isRefusal } from '../../../core/catalog.js';
import { compile, type Evaluation, evaluate } from '../../../core/engine.js';
import { entries, entriesOf } from '../../../core/entries.js';
import * as balance from '../../../core/figures/balance.js';
import * as barFigures from '../../../core/figures/bars.js';
import * as circles from '../../../core/figures/circles.js';
import * as cornering from '../../../core/figures/cornering.js';
import * as preload from '../../../core/figures/preload.js';
import * as roll from '../../../core/figures/roll.js';
import * as turning from '../../../core/figures/turning.js';
import * as axles from '../../../core/inputs/axles.js';
import * as bars from '../../../core/inputs/bars.js';
import * as grip from '../../../core/inputs/grip.js';
import * as conditions from '../../../core/inputs/turning.js';
import { factsOf, type Told } from '../ride/ask.js';

export const cornerEntries = entriesOf([axles, bars, grip, conditions, barFigures, roll, cornering, balance, turning, preload, circles]);
export const catalog = compile(new Set([...entries, ...cornerEntries]));
export const car = (told: Told, within = 0, then?: Told): Evaluation =>
  evaluate(catalog, { facts: factsOf(told, within), ...(then ? { then: factsOf(then, within) } : {}) });
/** The number; throws the sentence of a refusal. */
export function ask(told: Told, path: string, then?: Told): number {
  const value = car(told, 0, then).number(path);
  if (isRefusal(value)) throw new Error(`${path}: ${value.refused}`);
  return value;
}
/** A roadster of a club: facts that a member would tell. */
export const pickle: Told = {
  mass: 1090,
  frontShare: 0.525,
  wheelbase: 2.265,
  'front.track': 1.41,
  'rear.track': 1.43,
  'cg.height': 0.47,
  'front.spring.rate': 60_000,
  'rear.spring.rate': 45_000,
  'front.spring.ratio': 0.7,
  'rear.spring.ratio': 0.75,
  'front.bar.diameter': 0.022,
  'rear.bar.diameter': 0.014,
  'front.tire.size': '205/50R15',
  'rear.tire.size': '205/50R15',
};
