/** Dimensions that follow from a tire's size, and its three radii. Loads are beside it, in tireLoads. */
import { figure, firstOf, given, inverse, isRefusal, maybe, quantity, type Refusal, refuse, structure, way } from '../../catalog.js';
import { wheelSize } from '../wheels/told.js';
import type { WheelSize } from '../wheels/wheelSize.js';
import { approvedRims, designOf, limitsOf, widthPerRimWidth } from './design.js';
import type { TireSize } from './size.js';
import {
  diameterRatio,
  measuredCircumference,
  measuredDiameter,
  measuredSection,
  rollingFactor,
  statedTurns,
  tireSize,
  widthRatio,
} from './told.js';

const rule = 'UN R30 paragraph 6 and ISO 4000-1, from memory';
const printed = 'sizes as printed';
/** m: from a kart's to a truck's. */
const saneDiameter = [0.25, 1.4] as const;
const saneRadius = [0.12, 0.7] as const;
const saneWidth = [0.05, 0.6] as const;

export const tireDesign = structure({
  path: 'tire.design',
  scope: 'axle',
  name: 'design dimensions of the tire',
  needs: { size: tireSize },
  compute: ({ size }) => designOf(size),
  source: `${rule}; older sizes UN R30 Annex 5, from memory; flotation and race sizes: their labels`,
});
export const sectionHeight = quantity({
  path: 'tire.sectionHeight',
  scope: 'axle',
  name: 'section height of the tire',
  label: 'section height',
  symbol: 'H',
  words: ['section height', 'sidewall height', 'sidewall'],
  dimension: 'length',
  sane: [0.01, 0.4],
  ways: [
    way({
      needs: { design: tireDesign },
      compute: ({ design }) => design.sectionHeight,
      source: `H = S1·Ra/100, rounded to a millimetre; ${rule}`,
    }),
  ],
});
export const nominalSectionHeight = quantity({
  path: 'tire.nominalSectionHeight',
  scope: 'axle',
  name: 'nominal section height',
  label: 'nominal section ht.',
  symbol: 'H_n',
  words: ['nominal section height'],
  dimension: 'length',
  sane: [0.01, 0.4],
  ways: [
    way({
      needs: { design: tireDesign },
      compute: ({ design }) => design.nominalSectionHeight,
      source: 'the numbers of the size as they stand, not rounded',
    }),
  ],
});
export const designDiameter = quantity({
  path: 'tire.designDiameter',
  scope: 'axle',
  name: 'design diameter of the tire',
  label: 'design diameter',
  symbol: 'D_0',
  words: ['design diameter', 'design tire diameter'],
  dimension: 'length',
  sane: saneDiameter,
  ways: [
    way({
      needs: { design: tireDesign },
      compute: ({ design }) => design.diameter,
      source: `D = d + 2H, both rounded to a millimetre; ${rule}`,
    }),
  ],
});
export const nominalDiameter = quantity({
  path: 'tire.nominalDiameter',
  scope: 'axle',
  name: 'nominal diameter of the tire',
  label: 'nominal diameter',
  symbol: 'D_n',
  words: ['nominal diameter', 'nominal tire diameter'],
  dimension: 'length',
  sane: saneDiameter,
  ways: [
    way({
      needs: { design: tireDesign },
      compute: ({ design }) => design.nominalDiameter,
      source: 'the numbers of the size as they stand, not rounded, inch of exactly 25.4 mm',
      basis: printed,
    }),
  ],
});
export const tireDiameter = quantity({
  path: 'tire.freeDiameter',
  scope: 'axle',
  name: 'free diameter of the tire',
  label: 'tire diameter',
  main: true,
  symbol: 'D',
  words: ['tire diameter', 'diameter', 'overall diameter', 'tire height', 'how tall', 'tall'],
  dimension: 'length',
  sane: saneDiameter,
  typical: { range: [0.55, 0.7], of: 'road cars; common practice, no source' },
  ways: [
    way({ needs: { measured: measuredDiameter }, compute: ({ measured }) => measured, formula: 'measured', source: 'as measured' }),
    way({
      needs: { size: nominalDiameter, ratio: diameterRatio },
      compute: ({ size, ratio }) => size * ratio,
      formula: 'size * ratio',
      source: 'the printed size, and how much real tires differ from it',
    }),
    way({ needs: { size: nominalDiameter }, compute: ({ size }) => size, formula: 'size', source: 'the printed size' }),
  ],
});
export const freeRadius = quantity({
  path: 'tire.freeRadius',
  scope: 'axle',
  name: 'free radius of the tire',
  label: 'free radius',
  symbol: 'r_0',
  words: ['free radius', 'free tire radius', 'unloaded radius'],
  dimension: 'length',
  sane: saneRadius,
  ways: [
    way({
      needs: { diameter: tireDiameter },
      compute: ({ diameter }) => diameter / 2,
      formula: 'diameter / 2',
      source: 'definition: half the diameter of the inflated tire off the ground',
    }),
  ],
});
export const rollingCircumference = quantity({
  path: 'tire.rollingCircumference',
  scope: 'axle',
  name: 'rolling circumference',
  label: 'rollout',
  symbol: 'C',
  words: ['rolling circumference', 'rollout', 'roll out', 'tire circumference'],
  dimension: 'length',
  sane: [0.8, 4.5],
  typical: { range: [1.7, 2.1], of: 'road cars; common practice, no source' },
  ways: [
    way({ needs: { measured: measuredCircumference }, compute: ({ measured }) => measured, formula: 'measured', source: 'as measured' }),
    way({
      needs: { turns: statedTurns },
      compute: ({ turns }) => 1 / turns,
      formula: '1 / turns',
      source: "the maker's turns per distance; a mile is 1609.344 m",
    }),
    way({
      needs: { diameter: tireDiameter, factor: rollingFactor },
      compute: ({ diameter, factor }) => factor * diameter,
      formula: 'factor * diameter',
      source: 'ETRTO: 3.05·D for radial tires, from memory',
      basis: 'rolling, about 3 % under free',
    }),
  ],
});
export const rollingRadius = quantity({
  path: 'tire.rollingRadius',
  scope: 'axle',
  name: 'rolling (effective) radius of the tire',
  label: 'rolling radius',
  symbol: 'r_e',
  words: ['rolling radius', 'effective radius', 'effective rolling radius'],
  dimension: 'length',
  sane: saneRadius,
  ways: [
    way({
      needs: { circumference: rollingCircumference },
      compute: ({ circumference }) => circumference / (2 * Math.PI),
      formula: 'circumference / (2 * pi)',
      source: 'definition: way per turn over 2π; not the loaded radius',
    }),
  ],
});
export const tireTurns = quantity({
  path: 'tire.turns',
  scope: 'axle',
  name: 'turns of the tire',
  label: 'turns',
  main: true,
  symbol: 'N',
  words: ['turns per mile', 'rev per mile', 'revolution per mile', 'turns per km', 'rev per km', 'revolution per km', 'turns'],
  dimension: 'turnsPerLength',
  sane: [0.2, 1.3],
  typical: { range: [0.48, 0.58], of: 'road cars; common practice, no source' },
  ways: [
    way({
      needs: { circumference: rollingCircumference },
      compute: ({ circumference }) => 1 / circumference,
      formula: '1 / circumference',
      source: 'definition; a mile is 1609.344 m',
    }),
  ],
});
export const freeTurns = quantity({
  path: 'tire.freeTurns',
  scope: 'axle',
  name: 'turns of the free tire',
  label: 'turns, not loaded',
  symbol: 'N_0',
  words: ['free turns per mile', 'free rev per mile', 'free turns per km'],
  dimension: 'turnsPerLength',
  sane: [0.2, 1.3],
  ways: [
    way({
      needs: { diameter: nominalDiameter },
      compute: ({ diameter }) => 1 / (Math.PI * diameter),
      formula: '1 / (pi * diameter)',
      source: 'geometry of the nominal diameter; a loaded tire turns about 3 % more often',
    }),
  ],
});
export const designWidth = quantity({
  path: 'tire.designWidth',
  scope: 'axle',
  name: 'design section width',
  label: 'design width',
  symbol: 'S',
  words: ['design section width', 'design width'],
  dimension: 'length',
  sane: saneWidth,
  ways: [
    way({
      needs: { design: tireDesign },
      compute: ({ design }) =>
        design.width ?? refuse("A race size's width is its maker's label: measure the section on your wheel.", 'tire.measuredWidth'),
      source: `S = S1 + 0.4(A - A1), rounded to a millimetre; ${rule}`,
    }),
  ],
});
export const measuringRim = quantity({
  path: 'tire.measuringRim',
  scope: 'axle',
  name: 'width of the measuring rim',
  label: 'measuring rim',
  symbol: 'A',
  words: ['measuring rim', 'measuring rim width', 'design rim'],
  dimension: 'length',
  sane: saneWidth,
  ways: [
    way({
      needs: { design: tireDesign },
      compute: ({ design }) =>
        design.measuringRim ??
        refuse("No rule gives a race size's measuring rim: measure the section on your wheel.", 'tire.measuredWidth'),
      source: 'share of the section width by aspect ratio, to the half inch; ISO 4000-1, from memory, agrees with every row that we test',
    }),
  ],
});
export const mounted = structure({
  path: 'tire.mounted',
  scope: 'axle',
  name: 'the tire on its wheel',
  needs: { size: tireSize, wheel: wheelSize },
  compute: ({ size, wheel }) => ({ size, wheel, fits: Math.abs(size.rimDiameter - wheel.diameter) < 0.002 }),
  source: 'rim diameters must be the same',
});
const misfit = ({ size, wheel }: { readonly size: TireSize; readonly wheel: WheelSize }): Refusal =>
  refuse(`A ${size.label} tire does not go on a ${wheel.diameter_in} in wheel.`, 'tire.size', 'wheel.size');
export const widthOnWheel = figure({
  path: 'tire.widthOnWheel',
  scope: 'axle',
  name: 'section width to expect',
  label: 'width on this wheel',
  symbol: 'S_e',
  dimension: 'length',
  needs: { mounted, width: designWidth, measuringRim, ratio: widthRatio },
  compute: ({ mounted, width, measuringRim, ratio }) => ratio * (width + widthPerRimWidth * (mounted.wheel.width - measuringRim)),
  source: `the section grows by 0.4 of the extra rim width; ${rule}`,
});
export const sectionWidth = quantity({
  path: 'tire.sectionWidth',
  scope: 'axle',
  name: 'section width',
  main: true,
  symbol: 'S_w',
  words: ['section width', 'tire width', 'tire section width', 'how wide'],
  dimension: 'length',
  sane: saneWidth,
  ways: [
    way({
      needs: { width: firstOf(measuredSection, widthOnWheel, designWidth), mounted: maybe(mounted) },
      compute: ({ width, mounted }) => (mounted === undefined || mounted.fits ? width : misfit(mounted)),
      source: 'measured, else the design width carried to this rim width, else the design width on its measuring rim',
    }),
  ],
});
const rims =
  'ISO 4000-1 as remembered (0.85 to 1.00 of the section width up to aspect 40, 0.80 to 0.95 at 45, 0.70 to 0.90 at 50 to 65, 0.65 to 0.85 above)';
const rimCaution = "The tire maker's data decide which rims a tire may stand on.";
export const leastRim = figure({
  path: 'tire.leastRim',
  scope: 'axle',
  name: 'narrowest rim for the tire',
  label: 'narrowest rim',
  symbol: 'A_min',
  words: ['narrowest rim', 'least rim width', 'minimum rim width', 'smallest rim'],
  dimension: 'length',
  needs: { size: tireSize },
  compute: ({ size }) => {
    const range = approvedRims(size);
    return isRefusal(range) ? range : range[0];
  },
  source: rims,
  caution: rimCaution,
});
export const mostRim = figure({
  path: 'tire.mostRim',
  scope: 'axle',
  name: 'widest rim for the tire',
  label: 'widest rim',
  symbol: 'A_max',
  words: ['widest rim', 'most rim width', 'maximum rim width', 'largest rim'],
  dimension: 'length',
  needs: { size: tireSize },
  compute: ({ size }) => {
    const range = approvedRims(size);
    return isRefusal(range) ? range : range[1];
  },
  source: rims,
  caution: rimCaution,
});
export const rimMargin = figure({
  path: 'tire.rimMargin',
  scope: 'axle',
  name: 'rim width margin',
  symbol: 'm_A',
  words: ['rim width margin', 'rim margin'],
  dimension: 'length',
  needs: { mounted, least: leastRim, most: mostRim },
  compute: ({ mounted, least, most }) =>
    mounted.fits ? Math.min(mounted.wheel.width - least, most - mounted.wheel.width) : misfit(mounted),
  source: `${rims}; below zero the rim is out of the range`,
  caution: rimCaution,
});
const limitSource = 'UN R30 paragraph 6, from memory: d + 2H·0.97 to d + 2H·1.04, width to 1.04·S, radial tires';
export const leastDiameter = figure({
  path: 'tire.leastDiameter',
  scope: 'axle',
  name: 'least diameter of a new tire of this size',
  label: 'least diameter',
  symbol: 'D_min',
  words: ['least diameter', 'minimum diameter'],
  dimension: 'length',
  needs: { size: tireSize },
  compute: ({ size }) => {
    const limits = limitsOf(size);
    return isRefusal(limits) ? limits : limits.diameter[0];
  },
  source: limitSource,
});
export const mostDiameter = figure({
  path: 'tire.mostDiameter',
  scope: 'axle',
  name: 'greatest diameter of a new tire of this size',
  label: 'greatest diameter',
  symbol: 'D_max',
  words: ['greatest diameter', 'maximum diameter'],
  dimension: 'length',
  needs: { size: tireSize },
  compute: ({ size }) => {
    const limits = limitsOf(size);
    return isRefusal(limits) ? limits : limits.diameter[1];
  },
  source: limitSource,
});
export const mostWidth = figure({
  path: 'tire.mostWidth',
  scope: 'axle',
  name: 'greatest section width of a new tire',
  label: 'greatest width',
  symbol: 'S_max',
  words: ['greatest section width', 'maximum section width'],
  dimension: 'length',
  needs: { size: tireSize },
  compute: ({ size }) => {
    const limits = limitsOf(size);
    return isRefusal(limits) ? limits : limits.width;
  },
  source: limitSource,
});

// Up again.
inverse(rollingCircumference, {
  needs: { radius: given(rollingRadius) },
  compute: ({ radius }) => 2 * Math.PI * radius,
  formula: '2 * pi * radius',
  source: 'definition: way per turn',
});
inverse(rollingCircumference, {
  needs: { turns: given(tireTurns) },
  compute: ({ turns }) => 1 / turns,
  formula: '1 / turns',
  source: 'definition',
});
inverse(tireDiameter, {
  needs: { radius: given(freeRadius) },
  compute: ({ radius }) => 2 * radius,
  formula: '2 * radius',
  source: 'definition',
});
