/** Torque and power of the engine, and the thrust that they make in each gear. */
import { figure, firstOf, given, inverse, maybe, quantity, refuse, structure, way } from '../../catalog.js';
import { gearEngineSpeed, overallRatio, speedPerTurn, thrustPerTorque } from '../gearing/speeds.js';
import { driveEfficiency, engineSpeed, engineTorque, redline, roadSpeed } from '../gearing/told.js';
import { totalMass } from '../mass/aboard.js';
import * as told from './told.js';
import { lawOfCurve, lawOfPeaks, torqueAt } from './torque.js';

const definition = 'definition of power';
/** W and N. */
const sanePower = [5e3, 1.5e6] as const;
const saneThrust = [1, 60_000] as const;
const estimate =
  'estimated from the two peaks: the power rises smoothly from the torque peak to its own, so that each is greatest where it was told; parabolas beyond, common practice, no source';

export const powerOfWheels = figure({
  path: 'engine.powerOfWheels',
  scope: 'car',
  name: 'engine power from power at the wheels',
  label: 'power by wheel power',
  symbol: 'P',
  dimension: 'power',
  needs: { wheels: told.wheelPower, efficiency: driveEfficiency },
  compute: ({ wheels, efficiency }) => wheels / efficiency,
  formula: 'wheels / efficiency',
  source: 'definition of the efficiency',
});
const powerTold = firstOf(told.peakPower, powerOfWheels);
export const ratioOfSpeeds = figure({
  path: 'engine.ratioOfSpeeds',
  scope: 'car',
  name: 'engine speed of peak torque over that of peak power, as told',
  label: 'n_T over n_P, told',
  symbol: 'n_T/n_P',
  dimension: 'ratio',
  needs: { torqueSpeed: told.peakTorqueSpeedTold, powerSpeed: told.peakPowerSpeed },
  compute: ({ torqueSpeed, powerSpeed }) => torqueSpeed / powerSpeed,
  formula: 'torqueSpeed / powerSpeed',
  source: 'definition',
});
const ratio = firstOf(ratioOfSpeeds, told.torqueSpeedRatio);
export const torqueRise = figure({
  path: 'engine.torqueRise',
  scope: 'car',
  name: 'peak torque over torque at peak power',
  label: 'peak over torque at P',
  symbol: 'T_max/T_P',
  dimension: 'ratio',
  needs: { ratio, fall: told.torqueFall },
  compute: ({ ratio, fall }) =>
    ratio < 1 ? ratio ** -fall : refuse('Peak torque comes at a lower engine speed than peak power.', 'ratio'),
  source: 'definition of the fall',
});
export const powerOfTorque = figure({
  path: 'engine.powerOfTorque',
  scope: 'car',
  name: 'peak power from peak torque',
  label: 'power by peak torque',
  symbol: 'P',
  dimension: 'power',
  needs: { torque: told.peakTorque, rise: torqueRise, speed: told.peakPowerSpeed },
  compute: ({ torque, rise, speed }) => (torque / rise) * speed,
  formula: 'torque / rise * speed',
  source: definition,
});
export const torqueOfPower = figure({
  path: 'engine.torqueOfPower',
  scope: 'car',
  name: 'peak torque from peak power',
  label: 'torque by peak power',
  symbol: 'T',
  dimension: 'torque',
  needs: { power: powerTold, rise: torqueRise, speed: told.peakPowerSpeed },
  compute: ({ power, rise, speed }) => (power / speed) * rise,
  formula: 'power / speed * rise',
  source: definition,
});
export const speedOfPeakTorque = figure({
  path: 'engine.speedOfPeakTorque',
  scope: 'car',
  name: 'engine speed of peak torque by its ratio',
  label: 'peak torque at',
  symbol: 'n_T',
  dimension: 'angularSpeed',
  needs: { speed: told.peakPowerSpeed, ratio },
  compute: ({ speed, ratio }) => speed * ratio,
  formula: 'speed * ratio',
  source: 'definition',
});
export const engineLawOfCurve = structure({
  path: 'engine.lawOfCurve',
  scope: 'car',
  name: 'torque over engine speed, as told',
  needs: { curve: told.torqueCurve },
  compute: ({ curve }) => lawOfCurve(curve),
  source: 'the curve, straight from point to point',
});
export const engineLawOfPeaks = structure({
  path: 'engine.lawOfPeaks',
  scope: 'car',
  name: 'torque over engine speed, estimated from its peaks',
  needs: {
    torque: firstOf(told.peakTorque, torqueOfPower),
    torqueSpeed: speedOfPeakTorque,
    power: firstOf(powerTold, powerOfTorque),
    powerSpeed: told.peakPowerSpeed,
    redline: maybe(redline),
    fit: told.curveFit,
  },
  // Without a redline, a little beyond the peak of power.
  compute: ({ redline, ...peaks }) => lawOfPeaks({ ...peaks, redline: redline ?? 1.1 * peaks.powerSpeed }),
  source: estimate,
});
export const engineLaw = firstOf(engineLawOfCurve, engineLawOfPeaks);
const law = engineLaw;

export const greatestTorque = quantity({
  path: 'engine.greatestTorque',
  scope: 'car',
  name: 'greatest engine torque',
  label: 'peak torque',
  main: true,
  symbol: 'T_max',
  words: ['peak torque', 'max torque', 'maximum torque', 'greatest torque'],
  dimension: 'torque',
  sane: [10, 3000],
  typical: { range: [100, 450], of: 'road cars; common practice, no source' },
  ways: [
    way({
      needs: { law },
      compute: ({ law }) => law.peak.torque,
      source: 'of the curve, else as told or from the peak power',
    }),
  ],
});
export const greatestPower = quantity({
  path: 'engine.greatestPower',
  scope: 'car',
  name: 'greatest engine power',
  label: 'peak power',
  main: true,
  symbol: 'P_max',
  words: ['peak power', 'max power', 'maximum power', 'greatest power'],
  dimension: 'power',
  sane: sanePower,
  typical: { range: [60e3, 300e3], of: 'road cars; common practice, no source' },
  ways: [
    way({
      needs: { power: maybe(powerTold), law: maybe(law) },
      // A told power stands without its speed, of which the curve has need.
      compute: ({ power, law }) =>
        law?.most.power ?? power ?? refuse('Neither power nor torque of the engine is known.', 'engine.peakPower', 'engine.curve'),
      source: 'of the curve, else as told, from the power at the wheels, or from the peak torque',
    }),
  ],
});
export const greatestWheelPower = quantity({
  path: 'engine.greatestWheelPower',
  scope: 'car',
  name: 'greatest power at the wheels',
  label: 'power at the wheels',
  main: true,
  symbol: 'P_w',
  words: ['wheel power', 'whp', 'wheel hp', 'wheel horsepower', 'power at the wheel'],
  dimension: 'power',
  sane: sanePower,
  ways: [
    way({ needs: { wheels: told.wheelPower }, compute: ({ wheels }) => wheels, formula: 'wheels', source: 'as told' }),
    way({
      needs: { power: greatestPower, efficiency: driveEfficiency },
      compute: ({ power, efficiency }) => power * efficiency,
      formula: 'power * efficiency',
      source: 'definition of the efficiency; no rotating masses',
    }),
  ],
});

export const torqueOfLaw = figure({
  path: 'engine.torqueOfLaw',
  scope: 'car',
  name: 'engine torque by its curve',
  label: 'torque by curve',
  symbol: 'T',
  dimension: 'torque',
  needs: { law, speed: engineSpeed },
  compute: ({ law, speed }) => torqueAt(law, speed),
  source: `the told curve, else ${estimate}`,
});
export const torqueNow = quantity({
  path: 'engine.torque',
  scope: 'car',
  name: 'engine torque at full throttle',
  label: 'engine torque',
  symbol: 'T',
  words: ['engine torque', 'torque'],
  dimension: 'torque',
  sane: [1, 3000],
  ways: [
    way({
      needs: { torque: firstOf(engineTorque, torqueOfLaw) },
      compute: ({ torque }) => torque,
      formula: 'torque',
      source: 'told with the question, else by the curve at the engine speed asked',
    }),
  ],
});
export const enginePower = quantity({
  path: 'enginePower',
  scope: 'car',
  name: 'engine power',
  symbol: 'P',
  words: ['engine power', 'power', 'horsepower', 'hp', 'kw'],
  dimension: 'power',
  sane: [100, 1.5e6],
  ways: [
    way({
      needs: { torque: torqueNow, engineSpeed },
      compute: ({ torque, engineSpeed }) => torque * engineSpeed,
      formula: 'torque * engineSpeed',
      source: definition,
    }),
  ],
});
export const torqueInGear = quantity({
  path: 'gearTorque',
  scope: 'gear',
  name: 'engine torque at full throttle',
  label: 'engine torque',
  symbol: 'T',
  words: ['engine torque in gear'],
  dimension: 'torque',
  sane: [1, 3000],
  ways: [
    way({
      needs: { law, speed: firstOf(engineSpeed, gearEngineSpeed) },
      compute: ({ law, speed }) => torqueAt(law, speed),
      source: 'by the curve, at the engine speed asked or that of the road speed asked',
    }),
  ],
});
export const thrust = quantity({
  path: 'thrust',
  scope: 'gear',
  name: 'thrust at the tires',
  label: 'thrust',
  main: true,
  symbol: 'F',
  words: ['thrust', 'pull', 'tractive force', 'drive force', 'wheel force'],
  dimension: 'force',
  sane: saneThrust,
  ways: [
    way({
      needs: { torque: firstOf(engineTorque, torqueInGear), perTorque: thrustPerTorque },
      compute: ({ torque, perTorque }) => torque * perTorque,
      formula: 'torque * perTorque',
      source: 'exact at full throttle; no rotating masses; what the tires can hold is another question',
    }),
  ],
});
export const peakThrust = quantity({
  path: 'peakThrust',
  scope: 'gear',
  name: 'greatest thrust at the tires',
  label: 'greatest thrust',
  main: true,
  symbol: 'F_max',
  words: ['peak thrust', 'max thrust', 'greatest thrust', 'most thrust'],
  dimension: 'force',
  sane: saneThrust,
  ways: [
    way({
      needs: { torque: greatestTorque, perTorque: thrustPerTorque },
      compute: ({ torque, perTorque }) => torque * perTorque,
      formula: 'torque * perTorque',
      source: 'at the peak of torque; no rotating masses',
    }),
  ],
});
export const peakThrustSpeed = quantity({
  path: 'peakThrustSpeed',
  scope: 'gear',
  name: 'road speed of the greatest thrust',
  label: 'greatest thrust at',
  symbol: 'v',
  words: ['speed of peak thrust', 'peak thrust speed'],
  dimension: 'speed',
  sane: [0.3, 150],
  ways: [
    way({
      needs: { law, perTurn: speedPerTurn },
      compute: ({ law, perTurn }) => (law.peak.speed / (2 * Math.PI)) * perTurn,
      source: 'kinematics, exact',
    }),
  ],
});
export const massFactor = quantity({
  path: 'massFactor',
  scope: 'gear',
  name: 'what turning parts add to the weight in this gear',
  label: 'mass factor',
  symbol: 'gamma_m',
  words: ['mass factor', 'rotating mass factor', 'rotational inertia factor'],
  dimension: 'ratio',
  sane: [1, 2.5],
  typical: { range: [1.05, 1.5], of: 'road cars, top gear to first; Gillespie, from memory' },
  ways: [
    way({
      needs: { overall: overallRatio },
      compute: ({ overall }) => 1.04 + 0.0025 * overall ** 2,
      formula: '1.04 + 0.0025 * overall^2',
      ...{ sort: 'model', within: { relative: 0.06 } },
      source: 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 2 (also Wong), from memory',
    }),
  ],
});
export const gearAcceleration = quantity({
  path: 'gearAcceleration',
  scope: 'gear',
  name: 'acceleration by thrust',
  label: 'acceleration by gear',
  symbol: 'a_x',
  words: ['acceleration in gear', 'thrust acceleration', 'acceleration by thrust'],
  dimension: 'acceleration',
  sane: [0.01, 30],
  ways: [
    way({
      needs: { thrust: firstOf(thrust, peakThrust), mass: totalMass, turning: massFactor },
      compute: ({ thrust, mass, turning }) => thrust / (mass * turning),
      formula: 'thrust / (mass * turning)',
      source: 'Newton; at the speed asked, else at its peak; no drag or wheelspin',
      basis: 'rotating masses counted',
    }),
    way({
      needs: { thrust: firstOf(thrust, peakThrust), mass: totalMass },
      compute: ({ thrust, mass }) => thrust / mass,
      formula: 'thrust / mass',
      source: 'Newton; at the speed asked, else at its peak; no drag or wheelspin, so the car does less',
      basis: 'no rotating masses in it',
    }),
  ],
});
export const thrustByPower = quantity({
  path: 'thrust.byPower',
  scope: 'car',
  name: 'thrust that the power at the wheels makes at a speed',
  label: 'thrust by power',
  symbol: 'F_P',
  words: ['thrust by power', 'thrust from power', 'thrust of the power'],
  dimension: 'force',
  sane: saneThrust,
  ways: [
    way({
      needs: { power: greatestWheelPower, speed: roadSpeed },
      compute: ({ power, speed }) => power / speed,
      formula: 'power / speed',
      source: 'power is force times speed',
    }),
  ],
});
export const powerToWeight = quantity({
  path: 'powerToWeight',
  scope: 'car',
  name: 'power over weight',
  symbol: 'P/m',
  words: ['power to weight', 'power to weight ratio', 'power over weight', 'power per weight'],
  dimension: 'powerPerMass',
  sane: [5, 1500],
  typical: { range: [55, 180], of: 'road cars, W/kg; common practice, no source' },
  ways: [
    way({
      needs: { power: greatestPower, mass: totalMass },
      compute: ({ power, mass }) => power / mass,
      formula: 'power / mass',
      source: 'definition; at the engine',
    }),
  ],
});

// Up again.
inverse(torqueNow, {
  needs: { power: given(enginePower), speed: engineSpeed },
  compute: ({ power, speed }) => power / speed,
  formula: 'power / speed',
  source: definition,
});
inverse(greatestPower, {
  needs: { power: given(greatestWheelPower), efficiency: driveEfficiency },
  compute: ({ power, efficiency }) => power / efficiency,
  formula: 'power / efficiency',
  source: 'definition of the efficiency',
});
