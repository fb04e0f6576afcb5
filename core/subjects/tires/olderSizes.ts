/**
 * Sizes that name no aspect ratio: measuring rim (rim code), design diameter and section width (mm).
 *
 * Source: UN R30 Annex 5, FROM MEMORY, not seen; two millimetres either way. One outside anchor, FMVSS 109 Table I-H for 175R13
 * (nhtsa.gov/interpretations/nht74-115), agrees within 1.5 per cent.
 */
export interface OlderDimensions {
  readonly measuringRim_in: number;
  readonly diameter_mm: number;
  readonly width_mm: number;
}
type Row = readonly [size: string, rim: number, diameter: number, width: number];

const radial: readonly Row[] = [
  ['145R10', 4, 492, 147],
  ['135R12', 4, 522, 137],
  ['145R12', 4, 542, 147],
  ['155R12', 4.5, 550, 157],
  ['135R13', 4, 548, 137],
  ['145R13', 4, 566, 147],
  ['155R13', 4.5, 578, 157],
  ['165R13', 4.5, 596, 167],
  ['175R13', 5, 608, 178],
  ['185R13', 5.5, 624, 188],
  ['165R14', 4.5, 622, 167],
  ['175R14', 5, 634, 178],
  ['185R14', 5.5, 650, 188],
  ['145R15', 4, 616, 147],
  ['155R15', 4.5, 630, 157],
  ['165R15', 4.5, 646, 167],
  ['185R15', 5.5, 674, 188],
  ['205R16', 6, 736, 208],
];
const diagonal: readonly Row[] = [
  ['5.20-10', 3.5, 508, 132],
  ['5.20-12', 3.5, 558, 132],
  ['5.60-13', 4, 600, 145],
  ['6.40-13', 4.5, 642, 163],
  ['5.60-15', 4, 650, 145],
  ['6.40-15', 4.5, 692, 163],
  ['6.70-15', 4.5, 710, 170],
  ['7.00-13', 5, 644, 178],
  ['155-13', 4.5, 582, 157],
  ['6.15-13', 4.5, 582, 157],
  ['165-13', 4.5, 600, 167],
  ['6.45-13', 4.5, 600, 167],
];
export const olderSizes: ReadonlyMap<string, OlderDimensions> = new Map(
  [...radial, ...diagonal].map(([size, measuringRim_in, diameter_mm, width_mm]) => [size, { measuringRim_in, diameter_mm, width_mm }]),
);
