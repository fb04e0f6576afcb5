/** What the wheel rates make of the ride of an axle: rear against front, how the rate rises, droop and deflection. */
import { front, given, inPractice, inverse, left, quantity, rear, refine, right, way, wheels } from '../../catalog.js';
import { totalMass } from '../mass/aboard.js';
import { axleSprungMass, sprungMass } from '../mass/loads.js';
import { motionRatio, springStack } from '../springs/forces.js';
import { compressionAt } from '../springs/law.js';
import { wheelTravel } from '../springs/motionRatio.js';
import { perchPitch } from '../springs/told.js';
import { cornerRideRate, cornerWheelRate, rideFrequency } from '../springs/wheelRates.js';
import { carriedForce, knee, ratioOfAxle } from './corner.js';
import { travelSince } from './standing.js';
import { tireRate } from './told.js';

const g = 9.80665;

export const frequencyRatio = quantity({
  path: 'frequencyRatio',
  scope: 'car',
  name: 'rear over front ride frequency',
  label: 'rear over front Hz',
  main: true,
  symbol: 'f_r/f_f',
  words: ['frequency ratio', 'ride frequency ratio', 'flat ride', 'flat ride ratio'],
  dimension: 'ratio',
  sane: [0.3, 3],
  typical: [inPractice('street cars', 1.1, 1.2), inPractice('autocross cars', 0.9, 1.2)],
  ways: [
    way({
      needs: { front: front(rideFrequency), rear: rear(rideFrequency) },
      compute: ({ front, rear }) => rear / front,
      formula: 'rear / front',
      source: 'by definition',
    }),
  ],
  nonlinear: knee,
});
export const { axle: droopTravel, corner: looseTravel } = wheels({
  path: 'droopTravel',
  over: 'mean',
  corner: { words: ['droop travel', 'corner droop travel', 'droop'] },
  name: 'droop travel until the spring is loose',
  label: 'droop until loose',
  symbol: 'u_d',
  words: ['droop travel', 'droop', 'travel until loose'],
  dimension: 'length',
  sane: [0.001, 0.6],
  ways: [
    way({
      needs: { stack: springStack, motion: motionRatio, force: carriedForce, travel: refine(travelSince, 0) },
      compute: ({ stack, motion, force, travel }) => {
        const bump = wheelTravel(motion, travel, -compressionAt(stack, force));
        return typeof bump === 'number' ? -bump : bump;
      },
      source: 'spring travel through the motion ratio; a droop stop may come first',
    }),
    way({
      needs: { sprung: sprungMass, rate: cornerWheelRate },
      compute: ({ sprung, rate }) => (sprung * g) / rate,
      formula: 'sprung * g / rate',
      source: 'weight over rate, both taken as constant',
      basis: 'weight over the wheel rate',
    }),
  ],
});
export const staticDeflection = quantity({
  path: 'staticDeflection',
  scope: 'axle',
  name: 'static deflection of springs and tires',
  label: 'static deflection',
  symbol: 'd_s',
  words: ['static deflection', 'deflection', 'sag', 'static sag'],
  dimension: 'length',
  sane: [0.005, 1],
  typical: [
    inPractice('street cars', 0.11, 0.25),
    inPractice('autocross cars', 0.05, 0.11),
    inPractice('race cars without wings', 0.04, 0.062),
  ],
  ways: [
    way({
      needs: { droop: droopTravel, sprung: axleSprungMass, tire: tireRate },
      compute: ({ droop, sprung, tire }) => droop + (sprung * g) / (2 * tire),
      formula: 'droop + sprung * g / (2 * tire)',
      source: 'wheel travel from the loose spring, and what the sprung weight squeezes the tire; weight over ride rate where all is linear',
      basis: 'on springs and tires',
    }),
    way({
      needs: { droop: droopTravel },
      compute: ({ droop }) => droop,
      formula: 'droop',
      source: 'wheel travel from the loose spring',
      basis: 'no tire in it',
    }),
    way({
      needs: { frequency: rideFrequency },
      compute: ({ frequency }) => g / (2 * Math.PI * frequency) ** 2,
      formula: 'g / (2 * pi * frequency)^2',
      source: 'a mass on a spring, undamped: weight over rate, by the frequency that both make',
      basis: 'from the ride frequency, of one rate',
    }),
  ],
});
/** The deflection alone says it, whatever the car weighs. */
inverse(rideFrequency, {
  needs: { deflection: given(staticDeflection) },
  compute: ({ deflection }) => Math.sqrt(g / deflection) / (2 * Math.PI),
  formula: 'sqrt(g / deflection) / (2 * pi)',
  source: 'a mass on a spring, undamped: weight over rate',
  basis: 'from the static deflection told, of one rate',
});
export const crossPerTurn = quantity({
  path: 'crossPerTurn',
  typical: [inPractice('road cars on coil-overs', 0.001, 0.006)],
  scope: 'axle',
  name: 'cross weight that one turn of a perch moves',
  label: 'cross per perch turn',
  symbol: 'dX/dn',
  words: ['cross per turn', 'cross weight per turn', 'wedge per turn', 'cross per perch turn'],
  dimension: 'ratio',
  sane: [0, 0.1],
  caution: 'Turn a perch only with the wheel off the ground and the car on stands; a compressed spring can kill.',
  ways: [
    way({
      needs: {
        pitch: perchPitch,
        ratio: ratioOfAxle,
        lf: front(left(cornerRideRate)),
        rf: front(right(cornerRideRate)),
        lr: rear(left(cornerRideRate)),
        rr: rear(right(cornerRideRate)),
        mass: totalMass,
      },
      compute: ({ pitch, ratio, lf, rf, lr, rr, mass }) => (2 * (pitch / ratio)) / ((1 / lf + 1 / rf + 1 / lr + 1 / rr) * mass * g),
      formula: '2 * (pitch / ratio) / ((1 / lf + 1 / rf + 1 / lr + 1 / rr) * mass * g)',
      source: 'four wheels that each go their own way, under a rigid body: what one diagonal gains the other loses',
      basis: 'four springs and tires, bars unhooked',
    }),
  ],
});
