/** Tire pressures: cold and hot undo each other, and move the right way. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ask, car, psi, refusalOf } from './tires/ask.js';

const gauges = fc.double({ min: 10, max: 60, noNaN: true }).map((p) => p * psi);
const colds = fc.double({ min: 255, max: 315, noNaN: true });
const rises = fc.double({ min: 1, max: 90, noNaN: true });
const airs = fc.double({ min: 70_000, max: 105_000, noNaN: true });

describe('pressure', () => {
  it('goes from cold to hot and back', () => {
    fc.assert(
      fc.property(gauges, colds, rises, airs, (cold, coldTemperature, rise, airPressure) => {
        const at = { coldTemperature, hotTemperature: coldTemperature + rise, airPressure };
        const hot = ask({ ...at, 'rf.tire.pressure': cold }, 'rf.tire.hotFromCold');
        expect(hot).toBeGreaterThan(cold);
        expect(ask({ ...at, 'rf.tire.hotPressure': hot }, 'rf.tire.coldFromHot') / cold).toBeCloseTo(1, 9);
        expect(ask({ ...at, 'rf.tire.pressure': cold }, 'rf.tire.pressureRise')).toBeCloseTo(hot - cold, 6);
      }),
    );
  });
  it('rises more than the gauge ratio says, as the air outside counts too', () => {
    fc.assert(
      fc.property(gauges, colds, rises, (cold, coldTemperature, rise) => {
        const at = { coldTemperature, hotTemperature: coldTemperature + rise, 'lf.tire.pressure': cold };
        expect(ask(at, 'lf.tire.hotFromCold')).toBeGreaterThan((cold * (coldTemperature + rise)) / coldTemperature);
      }),
    );
  });
  it('is of each wheel by itself', () => {
    const told = { 'lf.tire.pressure': 220_000, 'rr.tire.pressure': 180_000, coldTemperature: 290, hotTemperature: 320 };
    expect(ask(told, 'lf.tire.hotFromCold')).toBeGreaterThan(ask(told, 'rr.tire.hotFromCold'));
    expect(refusalOf(told, 'lr.tire.hotFromCold')).toMatch(/pressure/);
  });
  it('a flat tire is refused', () => {
    expect(refusalOf({ 'lf.tire.hotPressure': 1000, coldTemperature: 260, hotTemperature: 380 }, 'lf.tire.coldFromHot')).toContain('flat');
  });
  it('temperatures that nobody told are assumed, and doubted', () => {
    const it = car({ 'lf.tire.pressure': 200_000 });
    expect(it.status('hotTemperature')).toBe('estimated');
    expect(it.within('lf.tire.hotFromCold')).toBeGreaterThan(5000);
    expect(it.shares('lf.tire.hotFromCold').length).toBeGreaterThan(1);
  });
  it('the air thins with height', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3500, noNaN: true }), (altitude) => {
        expect(ask({ altitude: altitude + 100 }, 'airPressure')).toBeLessThan(ask({ altitude }, 'airPressure'));
      }),
    );
  });
});
