/** The core's equilibrium against a second formulation (independent.ts), on random cars: beams, bars with unlike holes and links, stops, lifted wheels. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { equilibrium } from '../../../core/subjects/cornering/equilibrium.js';
import { steadyTurn } from '../../../core/subjects/cornering/model.js';
import { at } from '../../../core/subjects/cornering/unknowns.js';
import { settleFrom, solve } from './independent.js';
import { pair } from './randomPairs.js';

const wanted = 500;
/** Of a wheel's usual load, and of a radian. */
const tolerance = 1e-6;

describe('a second formulation', () => {
  it(`finds the same loads and roll for ${wanted} random cars`, { timeout: 240_000 }, () => {
    const seen = { compared: 0, beams: 0, lifted: 0, twisting: 0, over: 0, snapped: 0 };
    const far: string[] = [];
    for (let seed = 0; seen.compared < wanted; seed++) {
      const { model, body, lateral } = pair(seed);
      const mine = equilibrium(model, steadyTurn(lateral));
      let other = solve(body, lateral);
      if (!isRefusal(mine) && !other) {
        // Where a spring comes loose the body may snap over to its droop stop, which no small steps lead across: start beyond it.
        const list = (...at: number[]): number[] => at.map((k) => mine.x[k]!);
        other = settleFrom(body, lateral, list(0, 2), list(1, 3), list(4, 5, 6, 7));
        seen.snapped++;
      }
      if (isRefusal(mine) || !other) {
        // A car that goes over has no state in either.
        if (isRefusal(mine) !== !other)
          far.push(`${seed}: ${isRefusal(mine) ? mine.refused : 'solved here'}, ${other ? 'solved' : 'not solved'} there`);
        seen.over++;
        continue;
      }
      seen.compared++;
      if (model.axles.some(({ kind }) => kind === 'beam')) seen.beams++;
      if (other.loads.some((load) => load === 0)) seen.lifted++;
      if (Number.isFinite(model.chassisStiffness)) seen.twisting++;
      other.loads.forEach((load, i) => {
        const off = Math.abs(mine.x[at.load + i]! - load) / 3000;
        if (!(off < tolerance)) far.push(`${seed} at ${lateral.toFixed(3)} g, load ${i}: ${mine.x[at.load + i]} and ${load}`);
      });
      other.rolls.forEach((roll, j) => {
        const off = Math.abs(mine.x[at.roll(j)]! - roll);
        if (!(off < tolerance)) far.push(`${seed} at ${lateral.toFixed(3)} g, roll ${j}: ${mine.x[at.roll(j)]} and ${roll}`);
      });
    }
    expect(far).toEqual([]);
    expect(seen.beams).toBeGreaterThan(150);
    expect(seen.lifted).toBeGreaterThan(40);
    expect(seen.twisting).toBeGreaterThan(100);
    expect(seen.snapped).toBeLessThan(5);
  });
});
