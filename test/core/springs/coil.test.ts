import { describe, expect, it } from 'vitest';
import { bergstraesserFactor, coilRate, coilStress, solidLength, springIndex, wahlFactor } from '../../../core/subjects/springs/coil.js';

describe('coil', () => {
  it("Wahl's and Bergstraesser's factors agree within 1 % over the useful indices, and fall to 1", () => {
    for (let index = 4; index <= 20; index += 0.5) expect(Math.abs(bergstraesserFactor(index) / wahlFactor(index) - 1)).toBeLessThan(0.015);
    expect(wahlFactor(1e6)).toBeCloseTo(1, 5);
    // REFERENCES section 2: (4C+2)/(4C-3) is (C+0.5)/(C-0.75).
    expect(bergstraesserFactor(8)).toBeCloseTo(8.5 / 7.25, 12);
  });
  it('shears by the torque of the force on half the coil diameter, without a factor', () => {
    const [force, wire, diameter] = [2000, 0.012, 0.1];
    expect(coilStress(1, force, wire, diameter)).toBeCloseTo((force * (diameter / 2) * (wire / 2)) / ((Math.PI * wire ** 4) / 32), 3);
  });
  it('twists as a bar as long as its wire would', () => {
    const [modulus, wire, diameter, turns] = [79e9, 0.012, 0.1, 6];
    const polar = (Math.PI * wire ** 4) / 32;
    const twist = (diameter / 2) ** 2 * ((Math.PI * diameter * turns) / (modulus * polar));
    expect(coilRate(modulus, wire, diameter, turns) * twist).toBeCloseTo(1, 12);
  });
  it('has an index and a solid length', () => {
    expect(springIndex(0.01, 0.08)).toBeCloseTo(8, 12);
    expect(solidLength(0.01, 6, 2)).toBeCloseTo(0.08, 12);
  });
});
