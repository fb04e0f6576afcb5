/** Cars of the published and derived check rows, as the equilibrium sees them. */
import type { AxleModel, BarModel, CornerModel, GripLaw, WheelLaw } from '../../../core/subjects/cornering/model.js';

export const inch = 0.0254;
export const pound = 4.4482216152605;
export const poundFootPerDegree = 1.3558179483314003 * (180 / Math.PI);
export const degree = Math.PI / 180;

/** A spring that carries `load` at rest and never pulls. */
export const linear = (load: number, rate: number): WheelLaw => ({
  force: (u) => Math.max(0, load + rate * u),
  slope: (u) => (load + rate * u > 0 ? rate : 0),
});
/** The same with no end to its droop: roll stiffness that a bar gives as well as springs do. */
export const endless = (load: number, rate: number): WheelLaw => ({ force: (u) => load + rate * u, slope: () => rate });
export const constantGrip: GripLaw = { coefficient: () => 1, slope: () => 0, valid: Number.POSITIVE_INFINITY };
/** mu = a - b*N. */
export const fallingGrip = (a: number, b: number): GripLaw => ({ coefficient: (n) => a - b * n, slope: () => -b, valid: a / (2 * b) });

const nowhere = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

interface L2 {
  readonly stiffness?: readonly [number, number];
  readonly tireRate?: number;
  readonly gravity?: boolean;
  readonly chassisStiffness?: number;
  readonly grip?: GripLaw;
}
/** The car of REFERENCES row L2: 2600 lbf, 52 % front, wheelbase 95 in, CG 19 in, tracks 58/57 in, roll centres 2/8 in; roll stiffness by the springs. */
export function carL2({
  stiffness = [620, 400],
  tireRate = Number.POSITIVE_INFINITY,
  gravity = false,
  chassisStiffness = Number.POSITIVE_INFINITY,
  grip = constantGrip,
}: L2 = {}): CornerModel {
  const weight = 2600 * pound;
  const h = 19 * inch;
  const unsprung = [180 * pound, 160 * pound] as const;
  const sprung = weight - unsprung[0] - unsprung[1];
  const axle = (j: 0 | 1): AxleModel => {
    const load = weight * (j === 0 ? 0.52 : 0.48);
    const track = (j === 0 ? 58 : 57) * inch;
    const rate = (2 * stiffness[j] * poundFootPerDegree) / (track * track);
    const law = endless((load - unsprung[j]) / 2, rate);
    return {
      kind: 'independent',
      track,
      springBase: track,
      law: [law, law],
      bar: undefined,
      rollCentreHeight: (j === 0 ? 2 : 8) * inch,
      unsprungHeight: 12 * inch,
      unsprung: [unsprung[j] / 2, unsprung[j] / 2],
      tireRate,
      reference: [load / 2, load / 2],
      grip: [grip, grip],
      driveLift: 0,
      camber: undefined,
      contact: nowhere,
      rest: { body: 0, axle: 0 },
    };
  };
  return {
    axles: [axle(0), axle(1)],
    toFront: 95 * inch * 0.48,
    toRear: 95 * inch * 0.52,
    cgHeight: h,
    sprungCgHeight: (weight * h - (unsprung[0] + unsprung[1]) * 12 * inch) / sprung,
    chassisStiffness,
    gravity,
  };
}

/** A bar with equal arms, by its rate per relative displacement of its ends (N/m), its motion ratio and the mismatch of its ends (m). */
const bar = (rate: number, ratio: number, mismatch: number): BarModel => {
  const lever = 0.2;
  return { stiffness: rate * lever * lever, arms: [ratio / lever, ratio / lever], mismatch: mismatch / lever, linkSpacing: 1 };
};
interface M8 {
  readonly gravity?: boolean;
  readonly independent?: boolean;
  readonly mismatch?: number;
}
/** The car of CORNERING rows M8 and M9. */
export function carM8({ gravity = false, independent = false, mismatch = 0 }: M8 = {}): CornerModel {
  const kb = 45490.9;
  const sprung = [5600, 4800] as const;
  const unsprung = [700, independent ? 700 : 1300] as const;
  const tracks = [1.45, 1.42] as const;
  const rates = independent ? ([25000, 22000] as const) : ([22000, 25000] as const);
  // M8's bar is told as roll stiffness 12000 N m/rad; M9 has the bar of REFERENCES A5 alone, ratio 0.60, in front.
  const front = independent ? bar(kb, 0.6, mismatch) : bar(12000 / (tracks[0] * tracks[0]), 1, 0);
  const axle = (j: 0 | 1): AxleModel => {
    const law = linear(sprung[j] / 2, rates[j]);
    const load = sprung[j] + unsprung[j];
    return {
      kind: j === 1 && !independent ? 'beam' : 'independent',
      track: tracks[j],
      springBase: 1,
      law: [law, law],
      bar: j === 0 ? front : undefined,
      rollCentreHeight: j === 0 ? 0.05 : independent ? 0.12 : 0.28,
      unsprungHeight: 0.3,
      unsprung: [unsprung[j] / 2, unsprung[j] / 2],
      tireRate: 200000,
      reference: [load / 2, load / 2],
      grip: [constantGrip, constantGrip],
      driveLift: 0,
      camber: undefined,
      contact: nowhere,
      rest: { body: 0, axle: 0 },
    };
  };
  const weight = 10400 + unsprung[0] + unsprung[1];
  const frontLoad = sprung[0] + unsprung[0];
  const wheelbase = 2.5;
  return {
    axles: [axle(0), axle(1)],
    toFront: wheelbase * (1 - frontLoad / weight),
    toRear: wheelbase * (frontLoad / weight),
    cgHeight: (10400 * 0.55 + (unsprung[0] + unsprung[1]) * 0.3) / weight,
    sprungCgHeight: 0.55,
    chassisStiffness: Number.POSITIVE_INFINITY,
    gravity,
  };
}

/** Two axles as rows M5 and M6 have them: 3000 N a wheel, all of it sprung, rigid tires, roll centre on the ground, CG 0.5 m high, no gravity. */
export function carM5(law: WheelLaw): CornerModel {
  const axle: AxleModel = {
    kind: 'independent',
    track: 1.45,
    springBase: 1.45,
    law: [law, law],
    bar: undefined,
    rollCentreHeight: 0,
    unsprungHeight: 0.3,
    unsprung: [0, 0],
    tireRate: Number.POSITIVE_INFINITY,
    reference: [3000, 3000],
    grip: [constantGrip, constantGrip],
    driveLift: 0,
    camber: undefined,
    contact: nowhere,
    rest: { body: 0, axle: 0 },
  };
  return {
    axles: [axle, axle],
    toFront: 1.25,
    toRear: 1.25,
    cgHeight: 0.5,
    sprungCgHeight: 0.5,
    chassisStiffness: Number.POSITIVE_INFINITY,
    gravity: false,
  };
}
