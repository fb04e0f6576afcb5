/**
 * Load indices and what they stand for.
 *
 * Source: ISO 4000-1 / UN R30 Annex 4, not seen. 0 to 126 agree with two public tables of the trade (each has misprints, which the rule below shows up);
 * 127 to 279 are from memory of the standard: its series repeats every 80 steps, ten times as large.
 */
import { type Refusal, refuse } from '../../catalog.js';

/** One period of the series: the loads in kilograms of indices 0 to 79 before the standard drops what it does not print. */
const period = [
  45, 46.25, 47.5, 48.75, 50, 51.5, 53, 54.5, 56, 58, 60, 61.5, 63, 65, 67, 69, 71, 73, 75, 77.5, 80, 82.5, 85, 87.5, 90, 92.5, 95, 97.5,
  100, 103, 106, 109, 112, 115, 118, 121.5, 125, 128.5, 132, 136, 140, 145, 150, 155, 160, 165, 170, 175, 180, 185, 190, 195, 200, 206, 212,
  218, 224, 230, 236, 243, 250, 257.5, 265, 272.5, 280, 290, 300, 307.5, 315, 325, 335, 345, 355, 365, 375, 387.5, 400, 412.5, 425, 437.5,
] as const;
export const highestLoadIndex = 279;

/**
 * Load of a load index: the most that one tire may carry, in kilograms, at its standard's pressure and up to its symbol's speed.
 * Not for a lower pressure (see `loadAtPressure`) and not for camber or speeds that the standard derates.
 * Index a whole number from 0 to 279; anything else is refused.
 */
export function loadOfIndex(index: number): number | Refusal {
  const within = period[index % period.length];
  if (!Number.isInteger(index) || index < 0 || index > highestLoadIndex || within === undefined) {
    return refuse(`Load indices are whole numbers from 0 to ${highestLoadIndex}: there is no ${index}.`, 'tire.size');
  }
  const kilograms = within * 10 ** Math.floor(index / period.length);
  // As printed: one decimal below 100 kg, none above, what is beyond dropped (46.25 is 46.2; 257.5 is 257; 2575 stays).
  return kilograms < 100 ? Math.floor(kilograms * 10) / 10 : Math.floor(kilograms);
}

/** The load index whose load is nearest, as the P-metric tables round theirs (TRA, by a public summary). Kilograms, 45 to 136,000. */
export function indexNearest(kilograms: number): number | Refusal {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 0; index <= highestLoadIndex; index++) {
    const load = loadOfIndex(index);
    if (typeof load !== 'number') return load;
    const off = Math.abs(load - kilograms);
    if (off < least) {
      least = off;
      best = index;
    }
  }
  if (!(kilograms >= 44) || kilograms > 138_000) return refuse(`No load index is near ${kilograms} kg.`);
  return best;
}
