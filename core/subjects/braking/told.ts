/** The parts that decide how braking is shared between front and rear; the share itself, told, is with the grip. */
import { inPractice, quantity } from '../../catalog.js';

const care = "Brakes are safety: parts and work by the maker's data and somebody licensed for them; test in a safe place first.";
const practice = 'common practice, no source';
const calipered = { usually: 'measured', measured: { absolute: 0.0003 }, spec: { absolute: 0.0002 } } as const;

export const pistonDiameter = quantity({
  path: 'brake.piston',
  scope: 'axle',
  name: 'caliper piston diameter',
  label: 'caliper piston',
  symbol: 'd_p',
  words: ['caliper piston', 'piston diameter', 'brake piston', 'caliper bore', 'piston'],
  dimension: 'length',
  sane: [0.02, 0.08],
  told: calipered,
  measure: 'Stamped on the caliper, or across the piston. Pistons of different sizes: one that has their mean area.',
  caution: care,
});
export const pistonCount = quantity({
  path: 'brake.pistons',
  typical: [inPractice('floating calipers', 1, 2), inPractice('fixed calipers', 2, 3)],
  scope: 'axle',
  name: 'number of pistons on one side of a caliper',
  label: 'pistons on one side',
  symbol: 'z_p',
  words: ['pistons on one side', 'piston count', 'number of pistons'],
  dimension: 'ratio',
  sane: [1, 4],
  told: { usually: 'measured', measured: { absolute: 0.001 }, spec: { absolute: 0.001 } },
  measure: 'Count one side of the disc only: two of a caliper with four opposed pistons, one of a sliding caliper.',
});
export const brakeRadius = quantity({
  path: 'brake.radius',
  scope: 'axle',
  name: 'effective brake radius',
  label: 'brake radius',
  symbol: 'r_b',
  words: ['brake radius', 'effective brake radius', 'rotor radius', 'pad radius'],
  dimension: 'length',
  sane: [0.07, 0.22],
  told: { usually: 'measured', measured: { absolute: 0.002 }, spec: { absolute: 0.003 } },
  measure: 'From the middle of the hub to the middle of the pad: about the radius of the disc less half the height of the pad.',
});
export const padFriction = quantity({
  path: 'brake.pad',
  typical: [inPractice('street pads', 0.33, 0.45), inPractice('track pads', 0.42, 0.6)],
  scope: 'axle',
  name: 'brake pad friction',
  label: 'pad friction',
  symbol: 'mu_p',
  words: ['pad friction', 'pad mu', 'brake pad friction', 'brake pad'],
  dimension: 'ratio',
  sane: [0.2, 0.8],
  told: { usually: 'spec', measured: { relative: 0.08 }, spec: { relative: 0.1 } },
  measure: "From the maker's data, at the temperature of your runs.",
  caution: care,
  // One error: the same pads all round until told.
  estimate: { needs: {}, compute: () => 0.4, within: { absolute: 0.08 }, error: 'common', source: practice },
});
export const rearPressureShare = quantity({
  path: 'brake.rearPressure',
  percent: true,
  typical: [inPractice('without a valve', 0.95, 1.05), inPractice('behind a reducing valve', 0.3, 0.7)],
  scope: 'car',
  name: 'rear line pressure over front line pressure',
  label: 'rear over front press',
  symbol: 'p_r/p_f',
  words: ['rear pressure share', 'rear line pressure share', 'proportioning', 'proportioning valve'],
  dimension: 'ratio',
  sane: [0.2, 1.5],
  told: { usually: 'measured', measured: { absolute: 0.03 }, spec: { absolute: 0.05 } },
  measure: 'With a gauge on each line, at the pedal force of hard braking: a valve changes it with the force.',
  caution: care,
  estimate: { needs: {}, compute: () => 1, within: { absolute: 0 }, source: 'one pressure for all unless told' },
});
export const masterBore = quantity({
  path: 'brake.master',
  scope: 'car',
  name: 'master cylinder bore',
  label: 'master cylinder bore',
  symbol: 'd_m',
  words: ['master cylinder', 'master bore', 'master cylinder bore'],
  dimension: 'length',
  sane: [0.012, 0.035],
  told: calipered,
  measure: 'Stamped on the cylinder.',
  caution: care,
});
export const pedalRatio = quantity({
  path: 'brake.pedalRatio',
  typical: [inPractice('boosted brakes', 3, 4.5), inPractice('brakes without a booster', 4.5, 6.5)],
  scope: 'car',
  name: 'brake pedal ratio',
  label: 'brake pedal ratio',
  symbol: 'i_p',
  words: ['pedal ratio', 'brake pedal ratio'],
  dimension: 'ratio',
  sane: [1, 8],
  told: { usually: 'measured', measured: { relative: 0.04 }, spec: { relative: 0.03 } },
  measure: 'Pivot to the middle of the pedal, over pivot to the rod.',
});
export const brakeBoost = quantity({
  path: 'brake.boost',
  typical: [inPractice('road cars', 3, 7)],
  scope: 'car',
  name: 'brake booster ratio',
  label: 'booster ratio',
  symbol: 'i_b',
  words: ['brake booster', 'booster ratio', 'boost ratio', 'booster'],
  dimension: 'ratio',
  sane: [1, 8],
  told: { usually: 'spec', measured: { relative: 0.05 }, spec: { relative: 0.1 } },
  measure:
    "Force on the master cylinder over the pedal's own force there, from the maker; 1 without a booster. It holds until the booster runs out.",
  estimate: { needs: {}, compute: () => 1, within: { absolute: 0 }, source: 'no booster unless told' },
});
export const pedalForce = quantity({
  path: 'pedalForce',
  scope: 'question',
  name: 'brake pedal force',
  label: 'brake pedal force',
  symbol: 'F_p',
  words: ['pedal force', 'brake pedal force', 'pedal effort'],
  dimension: 'force',
  sane: [10, 3000],
  told: { usually: 'spec', measured: { relative: 0.05 }, spec: { absolute: 0 } },
  measure: 'Asked with the question: pedal force 60 lbf.',
});
