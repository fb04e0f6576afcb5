/** What the parts of the brakes make of a pedal: pressure, torque at each axle, and how they share the force. */
import { figure, firstOf, front, inPractice, quantity, rear, way } from '../../catalog.js';
import { brakeShare } from '../grip/told.js';
import { totalMass } from '../mass/aboard.js';
import { loadedRadius } from '../ride/travel.js';
import * as told from './told.js';

const care = 'A figure for choosing parts, not a proof of safety: the maker, local rules and a licensed workshop decide.';
const hydraulics = 'hydraulics: force is pressure times area; both faces of the disc; losses left out';

export const torquePerPressure = figure({
  path: 'brake.torquePerPressure',
  scope: 'axle',
  name: 'brake torque per line pressure',
  label: 'torque per pressure',
  symbol: 'T/p',
  dimension: 'volume',
  needs: { piston: told.pistonDiameter, count: told.pistonCount, radius: told.brakeRadius, pad: told.padFriction },
  compute: ({ piston, count, radius, pad }) => Math.PI * piston ** 2 * count * pad * radius,
  formula: 'pi * piston^2 * count * pad * radius',
  source: `${hydraulics}; two wheels`,
});
export const brakeTorqueShare = quantity({
  path: 'brake.torqueShare',
  percent: true,
  typical: [inPractice('road cars', 0.58, 0.8)],
  scope: 'car',
  name: 'front share of the brake torque, by the parts',
  label: 'front torque share',
  symbol: 'T_f/T',
  words: ['front brake torque share', 'brake torque share'],
  dimension: 'ratio',
  sane: [0.05, 0.99],
  ways: [
    way({
      needs: { front: front(torquePerPressure), rear: rear(torquePerPressure), pressure: told.rearPressureShare },
      compute: ({ front, rear, pressure }) => front / (front + rear * pressure),
      formula: 'front / (front + rear * pressure)',
      source: hydraulics,
    }),
  ],
});
export const shareOfParts = figure({
  path: 'brake.shareOfParts',
  percent: true,
  scope: 'car',
  name: 'front share of the brake force, by the parts',
  label: 'brake share by parts',
  symbol: 'p',
  dimension: 'ratio',
  needs: {
    front: front(torquePerPressure),
    rear: rear(torquePerPressure),
    pressure: told.rearPressureShare,
    frontRadius: front(loadedRadius),
    rearRadius: rear(loadedRadius),
  },
  compute: ({ front, rear, pressure, frontRadius, rearRadius }) =>
    front / frontRadius / (front / frontRadius + (rear * pressure) / rearRadius),
  formula: 'front / frontRadius / (front / frontRadius + rear * pressure / rearRadius)',
  source: 'a share of force is the share of torque over radius',
});
export const brakeShareNow = figure({
  path: 'brake.share',
  percent: true,
  scope: 'car',
  name: 'front share of the brake force as it stands',
  label: 'front brake share',
  main: true,
  symbol: 'p',
  words: ['brake share', 'front brake share', 'brake bias', 'front brake bias', 'brake split'],
  dimension: 'ratio',
  typical: { range: [0.6, 0.75], of: 'road cars; common practice, no source' },
  needs: { share: firstOf(shareOfParts, brakeShare) },
  compute: ({ share }) => share,
  formula: 'share',
  source: 'by the parts where they are known, else as told or usual',
  caution: care,
});
export const rodForce = quantity({
  path: 'brake.rodForce',
  scope: 'car',
  name: 'force on the master cylinder',
  label: 'master rod force',
  symbol: 'F_m',
  words: ['master cylinder force', 'rod force', 'push rod force'],
  dimension: 'force',
  sane: [1, 60_000],
  ways: [
    way({
      needs: { pedal: told.pedalForce, ratio: told.pedalRatio, boost: told.brakeBoost },
      compute: ({ pedal, ratio, boost }) => pedal * ratio * boost,
      formula: 'pedal * ratio * boost',
      source: 'lever and booster',
    }),
  ],
});
export const boosterForce = quantity({
  path: 'brake.boosterForce',
  scope: 'car',
  name: 'what the booster adds',
  label: 'booster force',
  symbol: 'F_b',
  words: ['booster force'],
  dimension: 'force',
  sane: [0, 50_000],
  ways: [
    way({
      needs: { pedal: told.pedalForce, ratio: told.pedalRatio, rod: rodForce },
      compute: ({ pedal, ratio, rod }) => rod - pedal * ratio,
      formula: 'rod - pedal * ratio',
      source: 'difference',
    }),
  ],
});
export const linePressure = quantity({
  path: 'brake.linePressure',
  typical: [inPractice('road cars, hard braking', 4_000_000, 10_000_000)],
  scope: 'car',
  name: 'line pressure of the brakes',
  label: 'brake line pressure',
  symbol: 'p_l',
  words: ['line pressure', 'brake pressure', 'brake line pressure'],
  dimension: 'pressure',
  sane: [1e4, 4e7],
  caution: care,
  ways: [
    way({
      needs: { rod: rodForce, bore: told.masterBore },
      compute: ({ rod, bore }) => rod / ((Math.PI / 4) * bore ** 2),
      formula: 'rod / (pi / 4 * bore^2)',
      source: hydraulics,
    }),
  ],
});
export const pedalDeceleration = quantity({
  path: 'brake.ofPedal',
  scope: 'car',
  name: 'braking that the pedal force makes',
  label: 'braking by pedal',
  symbol: 'a_b',
  words: ['braking by pedal', 'deceleration by pedal'],
  dimension: 'acceleration',
  sane: [0.01, 40],
  caution: care,
  ways: [
    way({
      needs: {
        pressure: linePressure,
        rearShare: told.rearPressureShare,
        front: front(torquePerPressure),
        rear: rear(torquePerPressure),
        frontRadius: front(loadedRadius),
        rearRadius: rear(loadedRadius),
        mass: totalMass,
      },
      compute: ({ pressure, rearShare, front, rear, frontRadius, rearRadius, mass }) =>
        (pressure * (front / frontRadius + (rearShare * rear) / rearRadius)) / mass,
      formula: 'pressure * (front / frontRadius + rearShare * rear / rearRadius) / mass',
      source: `${hydraulics}; while no wheel locks`,
    }),
  ],
});
