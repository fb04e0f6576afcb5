/** A car of a layout as it truly is, and what a member tells of it: some facts, each as far off as such a telling usually is. */
import type { Fact, Facts } from '../../../core/car.js';
import { halfWidth, type Value } from '../../../core/catalog.js';
import { catalog } from '../../../core/stubaxle.js';
import { normal, type Random } from '../cars.js';
import { type AxleOf, draw, geometries, type Layout, type Spread, type Suspension, tireRate } from './layouts.js';

export type Values = ReadonlyMap<string, Value>;
const g = 9.80665;
const degree = Math.PI / 180;
const oneOf = <T>(list: readonly T[], random: Random): T => list[Math.floor(random() * list.length)]!;

/** Every input of the catalog that the figures of how a car stands and corners read, at its true value. */
export function trueCar(layout: Layout, random: Random): Values {
  const car = new Map<string, Value>();
  const set = (path: string, value: Value): void => void (catalog.byPath.has(path) && car.set(path, value));
  const of = (spread: Spread): number => draw(spread, random);
  const mass = of(layout.mass);
  const share = of(layout.frontShare);
  const wheelbase = of(layout.wheelbase);
  const height = of(layout.cgHeight);
  const left = of([0.507, 0.006]);
  const cross = of([0.5, 0.007]);
  set('wheelbase', wheelbase);
  set('cg.height', height);
  set('driven', layout.driven);
  set('engine.place', layout.engine);
  set('chassis.stiffness', of([11000, 2800]) / degree);
  const tuned = random() < 0.4;
  const frontHertz = of(tuned ? [1.8, 0.22] : [1.32, 0.12]);
  const hertz = { front: frontHertz, rear: frontHertz * of([1.08, 0.08]) };
  const frontTrack = of(layout.track);
  const track = { front: frontTrack, rear: frontTrack + of([-0.005, 0.012]) };
  const tire = oneOf(layout.tires, random);
  const mu = of([1, 0.07]);
  const [exponent, bestLean, leanLoss] = [of([0.14, 0.035]), of([2.4, 0.4]) * degree, of([0.035, 0.01])];
  const perLoad = of([12, 1.7]);
  for (const end of ['front', 'rear'] as const) {
    const axle: AxleOf = layout[end];
    const suspension: Suspension = oneOf(axle.suspensions, random);
    const beam = suspension === 'live axle';
    const geometry = geometries[suspension];
    const weight = mass * (end === 'front' ? share : 1 - share);
    const unsprung = weight * of(axle.unsprung);
    const pressure = of([225, 14]);
    const rate = tireRate(tire, pressure) * of([1, 0.05]);
    const ratio = of(geometry.spring);
    const ride = (2 * Math.PI * hertz[end]) ** 2 * ((weight - unsprung) / 2);
    const wheelRate = 1 / (1 / ride - 1 / rate);
    set(`${end}.track`, track[end]);
    set(`${end}.axle.kind`, kindOf(suspension));
    set(`${end}.suspension`, suspension);
    set(`${end}.unsprung.axle`, unsprung);
    set(`${end}.unsprung.height`, of([0.3, 0.01]));
    set(`${end}.spring.ratio`, ratio);
    set(`${end}.spring.ratioRise`, of(geometry.ratioRise));
    set(`${end}.spring.rate`, wheelRate / ratio ** 2);
    if (beam) set(`${end}.spring.base`, track[end] * of([0.7, 0.05]));
    set(`${end}.tire.size`, tire);
    set(`${end}.tire.rate`, rate);
    set(`${end}.rollCenter.height`, of(geometry.rollCenter));
    set(`${end}.camber.gain`, of(geometry.camberGain));
    set(`${end}.tire.cornering`, ((perLoad * weight * g) / 2) * of([1, 0.06]));
    set(`${end}.grip.mu`, mu * of([1, 0.015]));
    set(`${end}.grip.exponent`, exponent);
    set(`${end}.grip.bestLean`, bestLean);
    set(`${end}.grip.leanLoss`, leanLoss);
    setBar(set, end, axle, suspension, track[end], random);
    const camber = of(tuned ? [-1.8, 0.6] : [-0.9, 0.4]) * degree;
    for (const side of ['l', 'r']) {
      const here = `${side}${end === 'front' ? 'f' : 'r'}`;
      set(`${here}.camber`, beam ? 0 : camber);
      set(`${here}.tire.pressure`, pressure * 1000);
    }
  }
  // Four scales that agree with the shares: front, left and cross.
  const diagonal = mass * cross;
  const [front, lefts] = [mass * share, mass * left];
  const rf = (diagonal + front - lefts) / 2;
  set('rf.scale', rf);
  set('lf.scale', front - rf);
  set('lr.scale', diagonal - rf);
  set('rr.scale', mass - front - (diagonal - rf));
  set('brake.frontShare', Math.min(0.82, share + (0.85 * height) / wheelbase + of([0, 0.022])));
  return car;
}
/** As the catalog has it: a twist beam stands by itself only where it is an option. */
function kindOf(suspension: Suspension): string {
  const options = catalog.node('front.axle.kind').entry.options ?? [];
  if (suspension === 'live axle') return 'beam';
  return suspension === 'twist beam' && options.includes('twist beam') ? 'twist beam' : 'independent';
}
function setBar(
  set: (path: string, value: Value) => void,
  end: 'front' | 'rear',
  axle: AxleOf,
  suspension: Suspension,
  track: number,
  random: Random,
): void {
  const of = (spread: Spread): number => draw(spread, random);
  const fitted = random() * 100 < axle.bars;
  set(`${end}.bar.diameter`, fitted ? of(axle.bar) / 1000 : 0);
  set(`${end}.bar.ratio`, of(geometries[suspension].bar));
  set(`${end}.bar.length`, track * of([0.68, 0.05]));
  set(`${end}.bar.linkSpacing`, track * of([0.75, 0.06]));
  set(`${end}.bar.linkRate`, 10 ** of([6.4, 0.15]));
  const lever = of([0.25, 0.03]);
  for (const side of ['l', 'r']) {
    set(`${side}${end === 'front' ? 'f' : 'r'}.bar.lever`, lever);
    set(`${side}${end === 'front' ? 'f' : 'r'}.bar.arm`, lever * 1.03);
  }
}

/** How often a member tells it, in a hundred: the spec sheet's numbers nearly always, what must be measured seldom. */
const told: readonly (readonly [RegExp, number])[] = [
  [/^driven$|engine\.place$/, 85],
  [/^(mass|frontShare|wheelbase)$|track$|spring\.rate$|tire\.size$/, 90],
  [/axle\.kind$|suspension$/, 85],
  [/bar\.diameter$/, 60],
  [/spring\.ratio$/, 40],
  [/^cg\.height$|rollCenter|unsprung\.axle|tire\.rate|bar\.(ratio|length|lever)|spring\.base|brake\.frontShare/, 20],
  [/camber$|tire\.pressure$/, 55],
  [/grip\.mu$/, 20],
  [/./, 8],
];
const twins: Readonly<Record<string, readonly string[]>> = {
  lf: ['rf'],
  lr: ['rr'],
};

/** What a member tells of it. The weights are told as the whole and its share, or (one in five) by four scales. */
export function toldOf(car: Values, random: Random): Facts {
  const facts = new Map<string, Fact>();
  const scaled = random() < 0.2;
  const all = new Map(car);
  const scale = (place: string): number => Number(car.get(`${place}.scale`));
  const whole = scale('lf') + scale('rf') + scale('lr') + scale('rr');
  if (!scaled) {
    for (const place of ['lf', 'rf', 'lr', 'rr']) all.delete(`${place}.scale`);
    all.set('mass', whole);
    all.set('frontShare', (scale('lf') + scale('rf')) / whole);
  }
  const right = new Set(Object.values(twins).flat());
  for (const [path, value] of all) {
    const [place = '', ...rest] = path.split('.');
    // Both sides are told or neither, by one look.
    if (right.has(place) && !path.endsWith('.scale')) continue;
    const often = path.endsWith('.scale') ? 100 : (told.find(([which]) => which.test(path))?.[1] ?? 0);
    if (random() * 100 >= often) continue;
    const fact = factOf(path, value, random);
    facts.set(path, fact);
    if (!path.endsWith('.scale')) for (const twin of twins[place] ?? []) facts.set([twin, ...rest].join('.'), { ...fact, source: path });
  }
  return facts;
}
function factOf(path: string, value: Value, random: Random): Fact {
  const { entry } = catalog.node(path);
  const evidence = entry.told?.usually ?? 'spec';
  if (typeof value !== 'number' || !entry.told) return { value, within: 0, evidence, source: path };
  const width = halfWidth(value, entry.told[evidence]);
  // None is none: a bar that is not there is told without doubt.
  const off = value === 0 ? 0 : (width / 1.96) * normal(random);
  const [low, high] = entry.sane ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return { value: Math.min(high, Math.max(low, value + off)), within: value === 0 ? 0 : width, evidence, source: path };
}
/** All of it, without doubt. */
export const exactly = (car: Values): Facts =>
  new Map([...car].map(([path, value]) => [path, { value, within: 0, evidence: 'measured' as const, source: path }]));
