/** A beam at rest: by its springs at their own places, never as two wheels. Against rows of another solver, and against least energy, worked out here. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import type { Four, Support } from '../../../core/subjects/ride/axle.js';
import { type StaticState, staticState } from '../../../core/subjects/ride/equilibrium.js';
import { linearLaw } from '../../../core/subjects/springs/law.js';
import { evenRatio } from '../../../core/subjects/springs/motionRatio.js';
import { seeded } from '../cars.js';
import { ask, type Told } from './ask.js';

interface Wheel {
  readonly rate: number;
  readonly ratio: number;
  readonly tire: number;
  readonly unsprung: number;
  readonly load: number;
  readonly halfTrack: number;
  readonly halfBase: number;
  /** How much the line of the spring has grown, m. */
  readonly grown: number;
}
const supportOf = ({ rate, ratio, tire, unsprung, load, halfTrack, halfBase }: Wheel, grown: number): Support => ({
  law: linearLaw(rate),
  stack: linearLaw(rate),
  ratio: evenRatio(ratio, 0),
  longer: 0,
  packed: grown,
  lowered: 0,
  raised: 0,
  tireRate: tire,
  taller: 0,
  halfTrack,
  halfBase,
  unsprung,
  sprung: load - unsprung,
});
const nothing = { front: 0, rear: 0, frontMoment: 0, rearMoment: 0 };
const state = (wheels: Four<Wheel>, torsion = Number.POSITIVE_INFINITY): StaticState => {
  const at = (grown: (one: Wheel) => number): Four<Support> => [
    supportOf(wheels[0], grown(wheels[0])),
    supportOf(wheels[1], grown(wheels[1])),
    supportOf(wheels[2], grown(wheels[2])),
    supportOf(wheels[3], grown(wheels[3])),
  ];
  const found = staticState(
    at(() => 0),
    at(({ grown }) => grown),
    nothing,
    torsion,
  );
  if (isRefusal(found)) throw new Error(found.refused);
  return found;
};

/**
 * The gains of the wheels' loads by least energy: springs and tires are the only ones that hold any, the weights' part cancels against what they held.
 * Coordinates: heights and roll of the rigid body at both axles (one roll), and the four wheels. With linear springs the energy is a square, so
 * that one step of Newton's with differences of it is all.
 */
function byEnergy(wheels: Four<Wheel>): readonly number[] {
  const energy = (q: readonly number[]): number =>
    wheels.reduce((sum, { rate, ratio, tire, halfTrack, halfBase, grown }, i) => {
      const [own, other] = [q[3 + i]!, q[3 + (i ^ 1)]!];
      const side = i % 2 === 0 ? 1 : -1;
      const place = (own + other) / 2 + (own - other) * (halfBase / halfTrack / 2);
      const pressed = ratio * (place - q[i >> 1]! - side * halfBase * q[2]!) + grown;
      return sum + (rate * pressed ** 2) / 2 + (tire * own ** 2) / 2;
    }, 0);
  const at = (...steps: readonly (readonly [number, number])[]): number[] => {
    const q = new Array<number>(7).fill(0);
    for (const [k, h] of steps) q[k]! += h;
    return q;
  };
  const h = 1e-3;
  const rows = [...Array(7).keys()].map((k) => {
    const curves = [...Array(7).keys()].map(
      (c) =>
        (energy(at([k, h], [c, h])) - energy(at([k, h], [c, -h])) - energy(at([k, -h], [c, h])) + energy(at([k, -h], [c, -h]))) /
        (4 * h * h),
    );
    return [...curves, -(energy(at([k, h])) - energy(at([k, -h]))) / (2 * h)];
  });
  for (let k = 0; k < 7; k++) {
    for (let r = 0; r < 7; r++) {
      if (r === k) continue;
      const part = rows[r]![k]! / rows[k]![k]!;
      for (let c = k; c < 8; c++) rows[r]![c]! -= part * rows[k]![c]!;
    }
  }
  return wheels.map(({ tire }, i) => -(tire * rows[3 + i]![7]!) / rows[3 + i]![3 + i]!);
}

/** Car K of another solver's rows: front independent, rear beam; 2 mm a turn of a perch. */
const frontWheel = { rate: 40_000, ratio: 0.95, tire: 210_000, unsprung: 350, halfTrack: 0.74, halfBase: 0.74, grown: 0 };
const rearWheel = { rate: 30_000, ratio: 1, tire: 210_000, unsprung: 650, halfTrack: 0.72, halfBase: 0.5, grown: 0 };
const carK = (turns: Four<number>, turn = 0.002): Four<Wheel> => [
  { ...frontWheel, load: 3300, grown: turns[0] * turn },
  { ...frontWheel, load: 3100, grown: turns[1] * turn },
  { ...rearWheel, load: 2500, grown: turns[2] * turn },
  { ...rearWheel, load: 2700, grown: turns[3] * turn },
];
const crossOf = ({ load }: StaticState): number => (load[1] + load[2]) / (load[0] + load[1] + load[2] + load[3]);

describe('a beam axle at rest', () => {
  it('X2: one turn at a front wheel, and at a rear one', () => {
    const close = (got: readonly number[], expected: readonly number[]): void =>
      got.forEach((one, i) => {
        expect(one).toBeCloseTo(expected[i]!, 4);
      });
    close(state(carK([1, 0, 0, 0])).gain, [9.52554, -9.52554, -9.79014, 9.79014]);
    close(state(carK([0, 0, 1, 0])).gain, [-13.3929, 13.3929, 13.7649, -13.7649]);
  });
  it('X3: turns to 50 %', () => {
    for (const turns of [
      [0, 10.3543, 0, 0],
      [0, 0, 7.36435, 0],
      [0, 4.30352, 4.30352, 0],
    ] as const)
      expect(crossOf(state(carK(turns)))).toBeCloseTo(0.5, 6);
  });
  it('X7: a body that twists', () => {
    expect(state(carK([1, 0, 0, 0]), (8000 * 180) / Math.PI).gain[0]).toBeCloseTo(9.32394, 4);
  });
  it('X50: 10 mm at a front wheel, and at a rear one, in heights', () => {
    const front = state(carK([1, 0, 0, 0], 0.01)).rise;
    [8.98019, 1.54613, 3.61657, -3.61657].forEach((mm, i) => {
      expect(1000 * front[i]!).toBeCloseTo(mm, 4);
    });
    const rear = state(carK([0, 0, 1, 0], 0.01)).rise;
    [2.17385, -2.17385, 7.1151, 2.8849].forEach((mm, i) => {
      expect(1000 * rear[i]!).toBeCloseTo(mm, 4);
    });
  });
  it('carries what least energy makes it carry, on random cars', () => {
    const random = seeded(31);
    const pick = (low: number, high: number): number => low + (high - low) * random();
    for (let n = 0; n < 60; n++) {
      const end = (beam: boolean): readonly [Wheel, Wheel] => {
        const halfTrack = pick(0.65, 0.8);
        const halfBase = beam ? pick(0.4, 0.6) : halfTrack;
        const tire = pick(1.5e5, 3e5);
        const own = (): Wheel => ({
          ...{ rate: pick(2e4, 8e4), ratio: pick(0.6, 1), tire, halfTrack, halfBase },
          ...{ unsprung: pick(250, 700), load: pick(2500, 3500), grown: pick(-0.01, 0.01) },
        });
        return [own(), own()];
      };
      const wheels: Four<Wheel> = [...end(n % 3 === 0), ...end(n % 3 !== 1)];
      const expected = byEnergy(wheels);
      state(wheels).gain.forEach((one, i) => {
        expect(one, `car ${n}, wheel ${i}`).toBeCloseTo(expected[i]!, 2);
      });
    }
  });
  it('is so through the catalog: a perch of a live axle changes cross less than the same at two wheels', () => {
    const before: Told = {
      ...{ 'lf.scale': 3300 / 9.80665, 'rf.scale': 3100 / 9.80665, 'lr.scale': 2500 / 9.80665, 'rr.scale': 2700 / 9.80665 },
      ...{ driver: 'in', 'front.track': 1.48, 'rear.track': 1.44, 'rear.axle.kind': 'beam', 'rear.spring.base': 1 },
      ...{
        'front.unsprung.axle': 700 / 9.80665,
        'rear.unsprung.axle': 1300 / 9.80665,
        'front.tire.rate': 210_000,
        'rear.tire.rate': 210_000,
      },
      ...{ 'front.spring.rate': 40_000, 'front.spring.ratio': 0.95, 'rear.spring.rate': 30_000, 'rear.spring.ratio': 1 },
      ...{ 'front.spring.ratioRise': 0, 'rear.spring.ratioRise': 0, 'perch.pitch': 0.002 },
    };
    const gain = (told: Told, at: string): number =>
      9.80665 * (ask({ ...before, ...told }, `${at}.cornerMass`, before) - ask(before, `${at}.cornerMass`));
    expect(gain({ 'lr.perch.turns': 1 }, 'lr')).toBeCloseTo(13.7649, 3);
    expect(gain({ 'lf.perch.turns': 1 }, 'lf')).toBeCloseTo(9.52554, 3);
  });
});
