/**
 * Realistic cars of six layouts, to ask whether the truth lies inside what is said of a car that is only partly told. The distributions are of their own
 * sources and not taken from the catalog's widths: what both had in common could not be found wrong here.
 *
 * Sources, all from memory: masses, shares, wheelbases, tracks and heights of the center of gravity after the spread of measured road cars (Heydinger et al.,
 * "Measured Vehicle Inertial Parameters", SAE 1999-01-1336), with a driver aboard; motion ratios, roll centers and camber gains by the geometry of each
 * suspension (Milliken, Race Car Vehicle Dynamics, ch. 17; Reimpell, The Automotive Chassis, ch. 3); tire rates after Rhyne's rule for radial tires
 * (Tire Science and Technology 33, 2005); the rest is common practice, no source.
 */
import { normal, type Random } from '../cars.js';

export type Suspension = 'strut' | 'wishbone' | 'multilink' | 'twist beam' | 'live axle';
/** The mean and the standard deviation of a normal draw, cut off at 2.5 of them. */
export type Spread = readonly [mean: number, deviation: number];

export interface AxleOf {
  readonly suspensions: readonly Suspension[];
  /** Unsprung weight over the axle's. */
  readonly unsprung: Spread;
  /** How many in a hundred have a bar there, and its diameter, mm. */
  readonly bars: number;
  readonly bar: Spread;
}
export interface Layout {
  readonly name: string;
  readonly driven: 'front' | 'rear';
  readonly engine: 'front' | 'mid';
  readonly mass: Spread;
  readonly frontShare: Spread;
  readonly wheelbase: Spread;
  readonly track: Spread;
  readonly cgHeight: Spread;
  readonly tires: readonly string[];
  readonly front: AxleOf;
  readonly rear: AxleOf;
}

export const layouts: readonly Layout[] = [
  {
    name: 'front-drive hatch',
    driven: 'front',
    engine: 'front',
    mass: [1130, 110],
    frontShare: [0.618, 0.015],
    wheelbase: [2.46, 0.06],
    track: [1.43, 0.03],
    cgHeight: [0.535, 0.018],
    tires: ['185/60R14', '195/50R15', '195/55R15', '205/50R15', '205/45R16'],
    front: { suspensions: ['strut', 'strut', 'strut', 'wishbone'], unsprung: [0.115, 0.012], bars: 95, bar: [21, 2] },
    rear: { suspensions: ['twist beam', 'twist beam', 'multilink'], unsprung: [0.155, 0.015], bars: 50, bar: [15, 2.5] },
  },
  {
    name: 'front-drive saloon',
    driven: 'front',
    engine: 'front',
    mass: [1390, 110],
    frontShare: [0.602, 0.014],
    wheelbase: [2.66, 0.05],
    track: [1.51, 0.03],
    cgHeight: [0.545, 0.018],
    tires: ['195/65R15', '205/60R15', '205/55R16', '215/50R17'],
    front: { suspensions: ['strut', 'strut', 'wishbone'], unsprung: [0.11, 0.012], bars: 98, bar: [23, 2] },
    rear: { suspensions: ['multilink', 'multilink', 'twist beam', 'strut'], unsprung: [0.135, 0.014], bars: 75, bar: [16, 2.5] },
  },
  {
    name: 'rear-drive coupe',
    driven: 'rear',
    engine: 'front',
    mass: [1360, 110],
    frontShare: [0.53, 0.018],
    wheelbase: [2.53, 0.06],
    track: [1.5, 0.03],
    cgHeight: [0.5, 0.018],
    tires: ['205/55R16', '225/50R16', '225/45R17', '245/40R18'],
    front: { suspensions: ['strut', 'wishbone'], unsprung: [0.12, 0.012], bars: 98, bar: [24, 2.2] },
    rear: { suspensions: ['multilink', 'multilink', 'wishbone'], unsprung: [0.135, 0.014], bars: 85, bar: [17, 2.5] },
  },
  {
    name: 'rear-drive with a live axle',
    driven: 'rear',
    engine: 'front',
    mass: [1440, 140],
    frontShare: [0.55, 0.018],
    wheelbase: [2.58, 0.07],
    track: [1.47, 0.035],
    cgHeight: [0.53, 0.02],
    tires: ['205/60R15', '225/60R15', '225/55R16', '245/45R17'],
    front: { suspensions: ['strut', 'wishbone'], unsprung: [0.115, 0.012], bars: 97, bar: [25, 2.5] },
    rear: { suspensions: ['live axle'], unsprung: [0.2, 0.02], bars: 65, bar: [19, 2.5] },
  },
  {
    name: 'mid-engined',
    driven: 'rear',
    engine: 'mid',
    mass: [1160, 110],
    frontShare: [0.43, 0.018],
    wheelbase: [2.42, 0.06],
    track: [1.48, 0.03],
    cgHeight: [0.465, 0.016],
    tires: ['195/50R15', '205/50R15', '215/45R16', '225/45R17'],
    front: { suspensions: ['wishbone', 'strut'], unsprung: [0.125, 0.013], bars: 95, bar: [19, 2] },
    rear: { suspensions: ['wishbone', 'strut', 'multilink'], unsprung: [0.125, 0.013], bars: 80, bar: [17, 2.2] },
  },
  {
    name: 'light open two-seater',
    driven: 'rear',
    engine: 'front',
    mass: [1030, 75],
    frontShare: [0.518, 0.013],
    wheelbase: [2.28, 0.04],
    track: [1.43, 0.025],
    cgHeight: [0.455, 0.015],
    tires: ['185/60R14', '195/50R15', '205/50R15', '205/45R16'],
    front: { suspensions: ['wishbone'], unsprung: [0.125, 0.012], bars: 97, bar: [20.5, 1.8] },
    rear: { suspensions: ['wishbone', 'multilink'], unsprung: [0.135, 0.013], bars: 85, bar: [13.5, 1.8] },
  },
];

/** What each suspension's geometry makes of the motion ratios, the roll center and the camber. */
export const geometries: Readonly<
  Record<Suspension, { spring: Spread; bar: Spread; rollCenter: Spread; camberGain: Spread; ratioRise: Spread }>
> = {
  strut: { spring: [0.95, 0.025], bar: [0.9, 0.07], rollCenter: [0.065, 0.028], camberGain: [-0.28, 0.14], ratioRise: [0, 0.1] },
  wishbone: { spring: [0.66, 0.065], bar: [0.62, 0.08], rollCenter: [0.07, 0.028], camberGain: [-0.6, 0.17], ratioRise: [0.1, 0.12] },
  multilink: { spring: [0.74, 0.085], bar: [0.62, 0.09], rollCenter: [0.095, 0.03], camberGain: [-0.55, 0.17], ratioRise: [0.05, 0.12] },
  'twist beam': { spring: [0.86, 0.075], bar: [0.85, 0.08], rollCenter: [0.17, 0.03], camberGain: [-0.25, 0.1], ratioRise: [0, 0.08] },
  'live axle': { spring: [0.97, 0.03], bar: [0.95, 0.05], rollCenter: [0.26, 0.035], camberGain: [0, 0], ratioRise: [0, 0.06] },
};

/** Cut off at 2.5 standard deviations: what is further out would be another kind of car. */
export function draw([mean, deviation]: Spread, random: Random): number {
  for (;;) {
    const z = normal(random);
    if (Math.abs(z) <= 2.5) return mean + deviation * z;
  }
}
/** Vertical rate of a radial tire, N/m, after Rhyne, from memory: width and rim in mm, pressure in kPa, the rule in kg/mm. */
export function tireRate(size: string, pressure_kPa: number): number {
  const [, width, aspect, rim] = (/^(\d+)\/(\d+)R(\d+)$/.exec(size) ?? []).map(Number);
  if (width === undefined || aspect === undefined || rim === undefined) throw new Error(`${size} is not a size of this population`);
  const area = (1.03 - 0.004 * aspect) * width * ((width * aspect) / 50 + rim * 25.4);
  return (0.00028 * pressure_kPa * Math.sqrt(area) + 3.45) * 9806.65;
}
