/** What the engine gives: a curve, its two peaks, or what a chassis dynamometer read at the wheels. */
import { curve, inPractice, quantity } from '../../catalog.js';
import { redline } from '../gearing/told.js';

const rpm = Math.PI / 30;
const kilowatt = 1e3;
/** Two runs on one dynamometer differ by a few per cent, two dynamometers by more. */
const dynamometer = { usually: 'spec', measured: { relative: 0.05 }, spec: { relative: 0.05 } } as const;
const speeds = { usually: 'spec', measured: { absolute: 150 * rpm }, spec: { absolute: 150 * rpm } } as const;
const practice = 'common practice, no source';

export const torqueCurve = curve({
  path: 'engine.curve',
  scope: 'car',
  name: 'engine torque over engine speed',
  label: 'torque curve',
  words: ['torque curve', 'engine curve', 'dyno curve', 'dyno sheet', 'torque table'],
  dimension: 'torque',
  along: 'angularSpeed',
  sane: [5, 2000],
  saneAlong: [500 * rpm, 15_000 * rpm],
  told: { usually: 'measured', measured: { relative: 0.04 }, spec: { relative: 0.05 } },
  measure: 'At the crankshaft, at full throttle: torque at several engine speeds, from an engine dynamometer.',
});
export const peakTorque = quantity({
  path: 'engine.peakTorque',
  scope: 'car',
  name: 'peak engine torque',
  symbol: 'T_max',
  words: ['peak torque', 'max torque', 'maximum torque', 'most torque', 'engine torque', 'torque'],
  dimension: 'torque',
  sane: [20, 2000],
  step: { inch: 1.3558179483314003, metric: 1 },
  told: dynamometer,
  measure: "At the crankshaft, from the maker's data or an engine dynamometer.",
});
export const peakTorqueSpeedTold = quantity({
  path: 'engine.peakTorqueSpeed',
  scope: 'car',
  name: 'engine speed of peak torque',
  label: 'peak torque at',
  symbol: 'n_T',
  words: ['peak torque rpm', 'torque peak', 'torque rpm', 'peak torque engine speed', 'max torque rpm'],
  dimension: 'angularSpeed',
  sane: [1000 * rpm, 12_000 * rpm],
  step: { inch: 100 * rpm, metric: 100 * rpm },
  told: speeds,
  measure: "From the maker's data, or where the curve of torque is highest.",
});
export const peakPower = quantity({
  path: 'engine.peakPower',
  scope: 'car',
  name: 'peak engine power',
  symbol: 'P_max',
  words: ['peak power', 'engine power', 'power', 'hp', 'horsepower', 'bhp', 'crank power', 'crank hp', 'max power', 'kw'],
  dimension: 'power',
  sane: [15 * kilowatt, 1200 * kilowatt],
  step: { inch: 745.6998715822702, metric: 1000 },
  told: dynamometer,
  instead: 'peak power',
  measure: "At the crankshaft, from the maker's data or an engine dynamometer.",
});
export const wheelPower = quantity({
  path: 'engine.wheelPower',
  scope: 'car',
  name: 'peak power at the wheels',
  label: 'peak wheel power',
  symbol: 'P_w',
  words: ['wheel power', 'whp', 'wheel hp', 'wheel horsepower', 'power at the wheel', 'hp at the wheel'],
  dimension: 'power',
  sane: [15 * kilowatt, 1200 * kilowatt],
  step: { inch: 745.6998715822702, metric: 1000 },
  told: dynamometer,
  instead: 'peak power',
  measure: 'On a chassis dynamometer: it already lacks what gears and tires lose on the rolls.',
});
export const peakPowerSpeed = quantity({
  path: 'engine.peakPowerSpeed',
  scope: 'car',
  name: 'engine speed of peak power',
  label: 'peak power at',
  symbol: 'n_P',
  words: ['peak power rpm', 'power peak', 'power rpm', 'peak power engine speed', 'max power rpm', 'hp rpm'],
  dimension: 'angularSpeed',
  sane: [1500 * rpm, 15_000 * rpm],
  step: { inch: 100 * rpm, metric: 100 * rpm },
  told: speeds,
  measure: "From the maker's data or the dynamometer's sheet.",
  estimate: { needs: { redline }, compute: ({ redline }) => 0.92 * redline, within: { relative: 0.08 }, source: practice },
});
export const torqueFall = quantity({
  path: 'engine.torqueFall',
  typical: [inPractice('road engines', 0.2, 0.7)],
  scope: 'car',
  name: 'fall of torque between the peaks, 0 for flat torque to 1 for flat power',
  label: 'torque fall by peaks',
  symbol: 'e',
  words: ['torque fall', 'fall of torque'],
  dimension: 'ratio',
  sane: [0.02, 0.98],
  told: { usually: 'measured', measured: { absolute: 0.05 }, spec: { absolute: 0.05 } },
  measure: 'Logarithm of peak torque over torque at peak power, over that of the two engine speeds. Told peaks make it needless.',
  estimate: { needs: {}, compute: () => 0.4, within: { absolute: 0.25 }, source: practice },
});
export const torqueSpeedRatio = quantity({
  path: 'engine.torqueSpeedRatio',
  typical: [inPractice('engines without a turbo', 0.55, 0.8), inPractice('turbo engines', 0.3, 0.6)],
  scope: 'car',
  name: 'engine speed of peak torque over that of peak power',
  label: 'n_T over n_P',
  symbol: 'n_T/n_P',
  words: ['torque speed ratio'],
  dimension: 'ratio',
  sane: [0.2, 0.95],
  told: { usually: 'measured', measured: { absolute: 0.03 }, spec: { absolute: 0.03 } },
  measure: 'One speed over the other. Told peaks make it needless.',
  estimate: { needs: {}, compute: () => 0.72, within: { absolute: 0.12 }, source: `${practice}; turbocharged engines have less` },
});
export const curveFit = quantity({
  path: 'engine.curveFit',
  untypical: 'How far a rule is off, not a property of a car.',
  scope: 'car',
  name: 'torque away from the peaks over the estimated curve',
  label: 'curve fit off peaks',
  symbol: 'f_T',
  words: ['torque curve fit', 'curve fit'],
  dimension: 'ratio',
  sane: [0.6, 1.4],
  told: { usually: 'measured', measured: { absolute: 0.05 }, spec: { absolute: 0.05 } },
  measure: 'A torque curve makes it needless. At the peaks it changes nothing, far below and above them all, between them half.',
  estimate: {
    needs: {},
    compute: () => 1,
    within: { absolute: 0.1 },
    source: 'doubt of a curve that only two peaks fix; common practice, no source',
  },
});
