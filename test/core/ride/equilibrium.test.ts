import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal, type Refusal } from '../../../core/catalog.js';
import type { Four, Support } from '../../../core/subjects/ride/axle.js';
import { type Added, type StaticState, staticState } from '../../../core/subjects/ride/equilibrium.js';
import { compressionAt, type ForceLaw, forceAt, lawOfRates, linearLaw, withSeries } from '../../../core/subjects/springs/law.js';
import { evenRatio, ratioAt, springTravel } from '../../../core/subjects/springs/motionRatio.js';

const rigid = Number.POSITIVE_INFINITY;
const nothing: Added = { front: 0, rear: 0, frontMoment: 0, rearMoment: 0 };
const solved = (state: StaticState | Refusal): StaticState => {
  if (isRefusal(state)) throw new Error(state.refused);
  return state;
};
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const progressive = (first: number, second: number): ForceLaw => {
  const law = lawOfRates({ x: [0, 0.06], y: [first, second], between: 'line' });
  if (isRefusal(law)) throw new Error(law.refused);
  return law;
};
const wheel: fc.Arbitrary<Support> = fc
  .record({
    law: fc.oneof(
      between(2e4, 1.5e5).map(linearLaw),
      fc.tuple(between(2e4, 8e4), between(2e4, 2e5)).map(([a, b]) => progressive(a, b)),
    ),
    ratio: fc.tuple(between(0.5, 1.05), between(-0.6, 0.6)).map(([ratio, rise]) => evenRatio(ratio, rise)),
    pad: fc.option(between(3e5, 3e6), { nil: undefined }),
    tireRate: between(1.5e5, 3e5),
    halfTrack: between(0.65, 0.8),
    unsprung: between(200, 600),
    sprung: between(1800, 4500),
    packed: between(-0.01, 0.01),
  })
  .map(({ pad, law, ...rest }) => ({
    ...rest,
    law,
    stack: pad === undefined ? law : withSeries(law, pad),
    longer: 0,
    lowered: 0,
    raised: 0,
    taller: 0,
    halfBase: rest.halfTrack,
  }));
/** An axle has one track, and springs on it or, of a beam, closer together. */
const axle: fc.Arbitrary<readonly [Support, Support]> = fc
  .tuple(wheel, wheel, fc.option(between(0.55, 0.95), { nil: 1 }))
  .map(([left, right, spread]) => {
    const { halfTrack } = left;
    return [
      { ...left, halfBase: spread * halfTrack },
      { ...right, halfTrack, halfBase: spread * halfTrack },
    ];
  });
const four: fc.Arbitrary<Four<Support>> = fc.tuple(axle, axle).map(([[lf, rf], [lr, rr]]) => [lf, rf, lr, rr]);
/** What is so at the wheels, at the springs' places. */
const atPlaces = ([lf, rf, lr, rr]: Four<Support>, of: readonly number[], power: 1 | -1): readonly number[] =>
  [lf, rf, lr, rr].map((one, i) => {
    const [own, other] = [of[i]!, of[i ^ 1]!];
    return (own + other) / 2 + ((own - other) / 2) * (one.halfBase / one.halfTrack) ** power;
  });
const added: fc.Arbitrary<Added> = fc.record({
  front: between(-500, 900),
  rear: between(-300, 900),
  frontMoment: between(-250, 250),
  rearMoment: between(-250, 250),
});
const torsions = fc.oneof(fc.constant(rigid), between(1e5, 1e6));
/** The same wheels with the springs, seats and tires of others: what a change of parts does. */
const changed = (then: Four<Support>, other: Four<Support>): Four<Support> => {
  const at = (i: 0 | 1 | 2 | 3): Support => ({
    ...other[i],
    sprung: then[i].sprung,
    unsprung: then[i].unsprung,
    halfTrack: then[i].halfTrack,
    halfBase: then[i].halfBase,
    ratio: then[i].ratio,
  });
  return [at(0), at(1), at(2), at(3)];
};
/** A copy with nothing more in the line of its spring than when it was measured. */
const still = (one: Support): Support => ({ ...one, packed: 0 });
const mirrored = ([lf, rf, lr, rr]: Four<Support>): Four<Support> => [rf, lf, rr, lr];
const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);

describe('static state', () => {
  it('is exactly what it was when nothing has changed', () => {
    fc.assert(
      fc.property(four, (then) => {
        const state = solved(staticState(then, then, nothing, rigid));
        expect(state.rise).toEqual([0, 0, 0, 0]);
        expect(state.travel).toEqual([0, 0, 0, 0]);
        expect(state.sprung).toEqual(then.map(({ sprung }) => sprung));
      }),
    );
  });
  it('solves to the same with copies of what was: to the rounding of a newton', () => {
    fc.assert(
      fc.property(four, (then) => {
        const [a, b, c, d] = then;
        const state = solved(staticState(then, [still(a), still(b), still(c), still(d)], nothing, rigid));
        for (const rise of state.rise) expect(Math.abs(rise)).toBeLessThan(1e-12);
      }),
    );
  });
  it('balances: each axle carries its share, the moments about the center line agree, springs and tires fit their loads', () => {
    fc.assert(
      fc.property(four, four, added, torsions, (then, other, load, torsion) => {
        const now = changed(then, other);
        const made = staticState(then, now, load, torsion);
        // A random car may stand with both springs of an axle loose: then it has no equilibrium, and says so.
        fc.pre(!isRefusal(made));
        const state = solved(made);
        expect(state.sprung[0] + state.sprung[1]).toBeCloseTo(then[0].sprung + then[1].sprung + load.front, 5);
        expect(state.sprung[2] + state.sprung[3]).toBeCloseTo(then[2].sprung + then[3].sprung + load.rear, 5);
        const moment = (of: readonly number[]): number => sum(of.map((one, i) => (i % 2 === 0 ? 1 : -1) * one * then[i]!.halfTrack));
        expect(moment(state.sprung)).toBeCloseTo(moment(then.map(({ sprung }) => sprung)) + load.frontMoment + load.rearMoment, 5);
        // A travel is less at a beam's springs than at its wheels, and a difference of forces more.
        const was = atPlaces(
          then,
          then.map(({ sprung }) => sprung),
          -1,
        );
        const travels = atPlaces(then, state.travel, 1);
        const pushes = atPlaces(then, state.sprung, -1);
        for (const i of [0, 1, 2, 3] as const) {
          const start = compressionAt(then[i].stack, was[i]! / then[i].ratio.ratio) + now[i].packed;
          const u = travels[i]!;
          expect(pushes[i]!).toBeCloseTo(ratioAt(now[i].ratio, u) * forceAt(now[i].stack, start + springTravel(now[i].ratio, u)), 4);
          const hub = now[i].taller + (then[i].sprung + then[i].unsprung) / then[i].tireRate - state.load[i] / now[i].tireRate;
          expect(state.travel[i]).toBeCloseTo(hub - state.rise[i], 9);
          expect(state.load[i]).toBeCloseTo(state.sprung[i] + now[i].unsprung, 9);
          expect(state.gain[i]).toBeCloseTo(state.load[i] - then[i].sprung - then[i].unsprung, 9);
        }
        if (torsion === rigid) {
          const roll = (l: 0 | 2, r: 1 | 3): number => (state.rise[l] - state.rise[r]) / (now[l].halfTrack + now[r].halfTrack);
          expect(roll(0, 1)).toBeCloseTo(roll(2, 3), 9);
        }
      }),
      { numRuns: 300 },
    );
  });
  it('is the mirror of its mirror', () => {
    fc.assert(
      fc.property(four, four, added, torsions, (then, other, load, torsion) => {
        const now = changed(then, other);
        const made = staticState(then, now, load, torsion);
        fc.pre(!isRefusal(made));
        const state = solved(made);
        const flipped = solved(
          staticState(mirrored(then), mirrored(now), { ...load, frontMoment: -load.frontMoment, rearMoment: -load.rearMoment }, torsion),
        );
        expect(flipped.rise[0]).toBeCloseTo(state.rise[1], 10);
        expect(flipped.rise[3]).toBeCloseTo(state.rise[2], 10);
        expect(flipped.sprung[0]).toBeCloseTo(state.sprung[1], 5);
      }),
    );
  });
  it('comes back: a change undone is no change', () => {
    fc.assert(
      fc.property(four, between(-0.008, 0.008), (then, seat) => {
        const [a, b, c, d] = then;
        const up: Four<Support> = [{ ...a, packed: seat }, still(b), still(c), still(d)];
        const there = staticState(then, up, nothing, rigid);
        fc.pre(!isRefusal(there));
        const state = solved(there);
        // The changed car as it stands is measured anew; its spring has the compression that it now has.
        const travels = atPlaces(up, state.travel, 1);
        const at = (i: 0 | 1 | 2 | 3): Support => {
          const { ratio, rise } = up[i].ratio;
          return { ...up[i], packed: 0, ratio: evenRatio(ratio + rise * travels[i]!, rise), sprung: state.sprung[i] };
        };
        const measured: Four<Support> = [at(0), at(1), at(2), at(3)];
        const back: Four<Support> = [{ ...measured[0], packed: -seat }, measured[1], measured[2], measured[3]];
        const again = solved(staticState(measured, back, nothing, rigid));
        for (const i of [0, 1, 2, 3] as const) expect(again.rise[i]).toBeCloseTo(-state.rise[i], 9);
      }),
    );
  });
  it('turns by the moment over the tangent roll stiffness t^2 k_L k_R/(k_L + k_R), not t^2 (k_L + k_R)/4 (CORNERING)', () => {
    const side = (rate: number): Support => ({
      law: linearLaw(rate),
      stack: linearLaw(rate),
      ratio: evenRatio(1, 0),
      longer: 0,
      packed: 0,
      lowered: 0,
      raised: 0,
      tireRate: 1e12,
      taller: 0,
      halfTrack: 0.75,
      halfBase: 0.75,
      unsprung: 400,
      sprung: 3000,
    });
    const car: Four<Support> = [side(20000), side(40000), side(25000), side(35000)];
    const state = solved(staticState(car, car, { ...nothing, frontMoment: 30 }, rigid));
    const stiffness = 1.5 ** 2 * ((20000 * 40000) / 60000 + (25000 * 35000) / 60000);
    expect((state.rise[1] - state.rise[0]) / 1.5 / (30 / stiffness)).toBeCloseTo(1, 6);
  });
  it('a coil never pulls: one too short hangs loose and the others carry', () => {
    const side = (): Support => ({
      law: linearLaw(60000),
      stack: linearLaw(60000),
      ratio: evenRatio(0.9, 0),
      longer: 0,
      packed: 0,
      lowered: 0,
      raised: 0,
      tireRate: 2e5,
      taller: 0,
      halfTrack: 0.75,
      halfBase: 0.75,
      unsprung: 400,
      sprung: 2000,
    });
    const [lf, rf, lr, rr] = [side(), side(), side(), side()];
    const state = solved(staticState([lf, rf, lr, rr], [{ ...lf, longer: -0.2 }, rf, lr, rr], nothing, rigid));
    expect(state.sprung[0]).toBe(0);
    expect(state.sprung[1]).toBeCloseTo(4000, 5);
    expect(state.load[0]).toBeCloseTo(400, 6);
  });
  it('refuses a wheel that carries nothing, and an axle whose springs are both too short', () => {
    const good: Support = {
      law: linearLaw(60000),
      stack: linearLaw(60000),
      ratio: evenRatio(0.9, 0),
      longer: 0,
      packed: 0,
      lowered: 0,
      raised: 0,
      tireRate: 2e5,
      taller: 0,
      halfTrack: 0.75,
      halfBase: 0.75,
      unsprung: 400,
      sprung: 2000,
    };
    const light = { ...good, sprung: -10 };
    expect(staticState([light, good, good, good], [{ ...light }, good, good, good], nothing, rigid)).toHaveProperty('refused');
    const gone: Added = { ...nothing, front: -5000 };
    expect(staticState([good, good, good, good], [good, good, good, good], gone, rigid)).toHaveProperty('refused');
  });
});
