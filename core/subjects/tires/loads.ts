/** Loads that go with a tire's size and its pressure. */
import { type Refusal, refuse } from '../../catalog.js';
import type { TireSize } from './size.js';

/**
 * Load of a P-metric size at a pressure, in kilograms, before it is rounded to a load index.
 * L = 6.67e-5·P^0.5·Sd^1.39·(Dr + Sd), Sd = (0.34848 + 0.6497·A)·S, P in kPa, lengths in mm, Dr the rim diameter to the millimetre.
 * For aspect ratios of 50 to 80 and pressures up to 240 kPa, which is the series' standard. European metric sizes of the same numbers carry another load.
 * Source: TRA, by a public summary (eng-tips.com/faqs.cfm?fid=1148). Pressure in pascals of gauge pressure.
 */
export function pMetricLoad(size: TireSize, pressure: number): number | Refusal {
  if (size.form !== 'metric' || size.series !== 'P')
    return refuse(`${size.label} is not a P-metric size: the P stands in front, as in P215/65R15.`, 'tire.size');
  if (size.aspect < 50 || size.aspect > 80)
    return refuse(`The P-metric load formula that we have is for aspect ratios from 50 to 80, not ${size.aspect}.`, 'tire.size');
  const width = (0.34848 + (0.6497 * size.aspect) / 100) * size.width_mm;
  const rim = Math.round(size.rimCode * 25.4);
  const kilopascals = Math.min(pressure, pMetricPressure) / 1000;
  return 6.67e-5 * Math.sqrt(kilopascals) * width ** 1.39 * (rim + width);
}
/** Pressure of the P-metric series' standard loads, Pa. */
export const pMetricPressure = 240_000;

/** A P-metric tire on a truck, bus, trailer or multipurpose vehicle counts for its load over 1.10: FMVSS 120 S5.1.2 (nhtsa.gov, nht76-1.47). */
export const pMetricOnTruck = (load: number): number => load / 1.1;

/**
 * Load at less than the standard pressure: load·(P/Pref)^n, never more than the load itself. Pressures are gauge.
 * The exponent is an input: 0.5 (P-metric), 0.65 and 0.8 (European practice, newer and older) are all in use; from memory, except that the
 * published loads of 175R13 from 16 to 40 psi (nhtsa.gov/interpretations/nht74-115) fit 0.5493.
 */
export const loadAtPressure = (load: number, pressure: number, standardPressure: number, exponent: number): number =>
  load * Math.min(1, pressure / standardPressure) ** exponent;
