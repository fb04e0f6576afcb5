/** What the trade knows of bars, camber and links, as directions of the model. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { ask, car, refusalOf, type Told } from '../ride/ask.js';
import { pickle } from './pickle.js';

const degree = Math.PI / 180;
const balance = (told: Told): number => ask({ ...pickle, ...told }, 'balance');
const rearCamber = (angle: number): Told => ({ 'lr.camber': angle * degree, 'rr.camber': angle * degree });

describe('what the trade knows (common practice, no source)', () => {
  it('a stiffer rear bar adds rotation, a stiffer front bar takes it away', () => {
    const rear = [0, 0.014, 0.018, 0.022].map((diameter) => balance({ 'rear.bar.diameter': diameter }));
    const front = [0.018, 0.022, 0.026].map((diameter) => balance({ 'front.bar.diameter': diameter }));
    for (let n = 1; n < rear.length; n++) expect(rear[n]!).toBeLessThan(rear[n - 1]!);
    for (let n = 1; n < front.length; n++) expect(front[n]!).toBeGreaterThan(front[n - 1]!);
  });
  it('so does its stiffer hole, on both sides or on one', () => {
    const hole = (left: number, right: number): number =>
      balance({ 'rear.bar.diameter': 0.018, 'lr.bar.lever': left, 'rr.bar.lever': right });
    expect(hole(0.2, 0.24)).toBeLessThan(hole(0.24, 0.24));
    expect(hole(0.2, 0.2)).toBeLessThan(hole(0.2, 0.24));
  });
  it('more negative rear camber, up to about -2 degrees, adds rear grip and takes rotation away', () => {
    const angles = [0, -0.5, -1, -1.5, -2];
    const limits = angles.map((angle) => ask({ ...pickle, ...rearCamber(angle) }, 'rear.limit'));
    const balances = angles.map((angle) => balance(rearCamber(angle)));
    for (let n = 1; n < angles.length; n++) {
      expect(limits[n]!).toBeGreaterThan(limits[n - 1]!);
      expect(balances[n]!).toBeGreaterThan(balances[n - 1]!);
    }
  });
  it('unequal end links bias the car to one side', () => {
    const biased = { ...pickle, 'rear.bar.diameter': 0.018, 'rear.bar.linkLonger': 0.008 };
    expect(Math.abs(ask(biased, 'balance') - ask(biased, 'balance.otherWay'))).toBeGreaterThan(1e-4);
    expect(Math.abs(ask(biased, 'preload.cross') - 0.5)).toBeGreaterThan(1e-3);
    expect(car(pickle).number('balance.otherWay')).toHaveProperty('refused');
    // Turned the other way, the same car is the other car.
    expect(ask({ ...biased, turn: 'right' }, 'balance')).toBeCloseTo(ask(biased, 'balance.otherWay'), 9);
  });
  it('softer springs roll more, a lower car transfers less', () => {
    expect(ask({ ...pickle, 'front.spring.rate': 40_000 }, 'roll.angle')).toBeGreaterThan(ask(pickle, 'roll.angle'));
    const lower = { ...pickle, 'front.spring.drop': 0.025, 'rear.spring.drop': 0.025 };
    expect(ask(lower, 'cg.heightNow', pickle)).toBeLessThan(ask(pickle, 'cg.heightNow') - 0.018);
    expect(ask(lower, 'front.loadTransfer', pickle)).toBeLessThan(ask(pickle, 'front.loadTransfer'));
  });
  it('braking in a turn takes from what the rear can hold', () => {
    expect(ask({ ...pickle, braking: 0.3 * 9.80665 }, 'rear.limit')).toBeLessThan(ask(pickle, 'rear.limit'));
  });
  it('meets its bump stop sooner with less gap, and the balance bends there', () => {
    const stop = (gap: number): Told => ({ ...pickle, 'front.bumpStop.gap': gap, 'front.bumpStop.rate': 100_000 });
    expect(ask(stop(0.005), 'stopContact')).toBeLessThan(ask(stop(0.01), 'stopContact'));
    expect(ask(stop(0.01), 'balance')).toBeGreaterThan(ask(pickle, 'balance'));
    // A gap that no turn closes is known: its stop is not reached, and that is what is said, with where the turns end.
    const over = ask(stop(0.2), 'rollover') / 9.80665;
    expect(refusalOf(stop(0.2), 'stopContact')).toBe(
      `No outer wheel meets its stop before the limit: the car goes over at ${over.toFixed(2)} g.`,
    );
    expect(ask(stop(0.02), 'rf.cornering.travelLeft')).toBeLessThan(ask(stop(0.02), 'front.stopTravel'));
  });
  it('says by how much a car is asked more than it can', () => {
    expect(ask({ ...pickle, lateral: 1.4 * 9.80665 }, 'grip.margin')).toBeLessThan(0);
    expect(ask({ ...pickle, lateral: 0.5 * 9.80665 }, 'grip.margin')).toBeGreaterThan(0);
  });
});
