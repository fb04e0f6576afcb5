/** Design dimensions of a tire size: what the standard's rules, its tables or the size's own label say, before any real tire is measured. */
import { type Refusal, refuse } from '../../catalog.js';
import { olderSizes } from './olderSizes.js';
import type { MetricSize, OlderSize, TireSize } from './size.js';

const inch_mm = 25.4;

/** All in metres. */
export interface Design {
  /** `rule`: the standard's rule for metric sizes. `table`: a row of the older sizes. `label`: the size's own numbers, which are names. */
  readonly basis: 'rule' | 'table' | 'label';
  /** Rounded as the standard rounds it. */
  readonly sectionHeight: number;
  readonly diameter: number;
  /** Unrounded: rim code in inches and width times aspect, as they stand. */
  readonly nominalSectionHeight: number;
  readonly nominalDiameter: number;
  /** On the measuring rim; missing where no rule or table says (race sizes). */
  readonly width?: number;
  readonly measuringRim?: number;
}

const toHalfInch = (millimetres: number): number => Math.round((millimetres / inch_mm) * 2) / 2;
/** Nominal rim diameter rounded to a millimetre: 13 is 330, 16 is 406, 17 is 432. */
const rimDiameter_mm = ({ rimCode }: TireSize): number => (rimCode >= 100 ? rimCode : Math.round(rimCode * inch_mm));

/** Measuring rim over section width, by aspect ratio. ISO 4000-1, from memory; it gives every measuring rim of the standard rows that we test. */
function measuringShare(aspect: number): number {
  if (aspect >= 75) return 0.7;
  if (aspect >= 60) return 0.75;
  if (aspect >= 50) return 0.8;
  if (aspect >= 45) return 0.85;
  return aspect >= 30 ? 0.9 : 0.92;
}
/** Theoretical rim over section width: UN R30 paragraph 6, from memory; below aspect 30 the 0.85 of its neighbours is carried on. */
const theoreticalShare = (aspect: number): number => (aspect >= 50 ? 0.7 : 0.85);
/** Least and most rim over section width, by aspect ratio: ISO 4000-1, from memory; check the tire maker's data. */
function approvedShares(aspect: number): readonly [number, number] {
  if (aspect >= 70) return [0.65, 0.85];
  if (aspect >= 50) return [0.7, 0.9];
  if (aspect >= 45) return [0.8, 0.95];
  return [0.85, 1];
}
/** What a section grows by for each unit of extra rim width: UN R30 paragraph 6. */
export const widthPerRimWidth = 0.4;

function metricDesign(size: MetricSize): Design {
  const { width_mm, aspect } = size;
  const nominalHeight = (width_mm * aspect) / 100;
  const height = Math.round(nominalHeight);
  const measuringRim = toHalfInch(measuringShare(aspect) * width_mm) * inch_mm;
  return {
    basis: 'rule',
    sectionHeight: height / 1000,
    diameter: (rimDiameter_mm(size) + 2 * height) / 1000,
    nominalSectionHeight: nominalHeight / 1000,
    nominalDiameter: size.rimDiameter + (2 * nominalHeight) / 1000,
    width: Math.round(width_mm + widthPerRimWidth * (measuringRim - theoreticalShare(aspect) * width_mm)) / 1000,
    measuringRim: measuringRim / 1000,
  };
}
function olderDesign(size: OlderSize): Design | Refusal {
  // A speed letter inside the size (165SR13) changes no dimension.
  const row = olderSizes.get(size.label.replace(/[A-Z](?=R)/, ''));
  if (!row)
    return refuse(`${size.label} names no height, and is not in our table of older sizes: measure the tire.`, 'tire.measuredDiameter');
  const height = (row.diameter_mm - rimDiameter_mm(size)) / 2000;
  return {
    basis: 'table',
    sectionHeight: height,
    diameter: row.diameter_mm / 1000,
    nominalSectionHeight: height,
    nominalDiameter: row.diameter_mm / 1000,
    width: row.width_mm / 1000,
    measuringRim: (row.measuringRim_in * inch_mm) / 1000,
  };
}
const labelled = (diameter: number, size: TireSize): Design => {
  const height = (diameter - size.rimDiameter) / 2;
  return { basis: 'label', sectionHeight: height, diameter, nominalSectionHeight: height, nominalDiameter: diameter };
};

/**
 * Design dimensions of a tire size, in metres.
 * Metric sizes: H = S1·Ra/100 to the millimetre, D = d + 2H with d to the millimetre, S = S1 + 0.4(A - A1) to the millimetre (UN R30 paragraph 6 and
 * ISO 4000-1, from memory). Older sizes: the table, or a refusal. Flotation and race sizes: their own label, which a real tire need not meet.
 */
export function designOf(size: TireSize): Design | Refusal {
  switch (size.form) {
    case 'metric':
      return metricDesign(size);
    case 'older':
      return olderDesign(size);
    case 'flotation': {
      // 0.8 of the section: TRA's flotation tables as remembered (10.50 on 8.5, 12.50 on 10).
      const measuringRim = (toHalfInch(0.8 * size.width_in * inch_mm) * inch_mm) / 1000;
      return { ...labelled((size.diameter_in * inch_mm) / 1000, size), width: (size.width_in * inch_mm) / 1000, measuringRim };
    }
    case 'race':
      return labelled(size.diameter, size);
  }
}

/**
 * Rim widths that the standard approves for a size, in metres.
 * Metric sizes only, to the half inch, ISO 4000-1 from memory: the tire maker's data decide. Others are refused.
 */
export function approvedRims(size: TireSize): readonly [least: number, most: number] | Refusal {
  if (size.form !== 'metric') return refuse(`No rule gives the rim widths of ${size.label}: take them from the tire maker's data.`);
  const [least, most] = approvedShares(size.aspect);
  const rim = (share: number): number => (toHalfInch(share * size.width_mm) * inch_mm) / 1000;
  return [rim(least), rim(most)];
}

/**
 * Limits that a new radial tire of a metric size must keep, in metres: diameter d + 2H·0.97 to d + 2H·1.04, width at most 4 per cent over design.
 * UN R30 paragraph 6, from memory. Not for older, flotation and race sizes.
 */
export function limitsOf(size: TireSize): { readonly diameter: readonly [number, number]; readonly width: number } | Refusal {
  if (size.form !== 'metric') return refuse(`The limits of new tires are known to us for metric sizes only, not for ${size.label}.`);
  const { diameter, sectionHeight, width = 0 } = metricDesign(size);
  const rim = diameter - 2 * sectionHeight;
  return { diameter: [rim + 2 * sectionHeight * 0.97, rim + 2 * sectionHeight * 1.04], width: width * 1.04 };
}

/**
 * What is usual for a size: real over design diameter, and rolling circumference over diameter. Plain ratios; their doubts stand with the inputs.
 * Flotation labels run large (31 in tires measure about 30.5, 30 about 29.5, 33 about 32.6: TRA, from memory); the rolling factor is ETRTO's
 * 3.05 for radial tires and 2.99 for others, from memory.
 */
/** Rolling circumference over diameter of a radial tire: ETRTO, from memory. */
export const radialFactor = 3.05;
export const usualOf = (size: TireSize): { readonly diameterRatio: number; readonly rollingFactor: number } => ({
  diameterRatio: size.form === 'flotation' ? 0.985 : 1,
  rollingFactor: size.construction === 'radial' ? radialFactor : 2.99,
});
