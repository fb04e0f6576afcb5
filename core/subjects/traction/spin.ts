/** Can it spin its tires: what each gear makes against what the tires hold, and how much rotation the throttle has to give. */
import { figure, firstOf, front, inPractice, quantity, rear, refuse, way } from '../../catalog.js';
import { engineLaw, greatestWheelPower, massFactor, peakThrust, thrust } from '../engine/power.js';
import { lastSpeedAt } from '../engine/torque.js';
import { speedPerTurn, thrustPerTorque } from '../gearing/speeds.js';
import { totalMass } from '../mass/aboard.js';
import type { CornerThrust } from './corner.js';
import { type Driven, sidewaysLeft } from './driven.js';
import { cornering, cornerLimit, cornerSource, drivenNow, lighter, straightLimit, straightSource } from './thrust.js';

const speedCaution = 'Try it only on a closed course: tires let go without notice.';
const drivenBoth = { drivenFront: front(drivenNow), drivenRear: rear(drivenNow) };
const made = firstOf(thrust, peakThrust);
const atSpeed = 'thrust at the engine or road speed asked, else at its peak, at full throttle';
export const spin = quantity({
  path: 'traction.spin',
  typical: [inPractice('wheels that hold', 0.1, 1)],
  scope: 'gear',
  name: 'thrust over what the tires hold, straight ahead',
  label: 'thrust over grip',
  main: true,
  symbol: 'F/F_s',
  words: ['spin', 'wheelspin', 'tire spin', 'spin margin', 'spin the tire', 'light up'],
  dimension: 'ratio',
  sane: [0, 50],
  caution: speedCaution,
  nonlinear: lighter,
  ways: [
    way({
      needs: { thrust: made, limit: straightLimit },
      compute: ({ thrust, limit }) => thrust / limit,
      formula: 'thrust / limit',
      source: `over 1 the driven tires can spin; ${atSpeed}`,
    }),
  ],
});
export const spinInCorner = quantity({
  path: 'traction.spinInCorner',
  typical: [inPractice('wheels that hold', 0.1, 1)],
  scope: 'gear',
  name: 'thrust over what the tires hold in the turn',
  label: 'over grip, turning',
  main: true,
  symbol: 'F/F_c',
  words: ['spin in the turn', 'wheelspin in the turn', 'spin in a corner', 'spin out of the corner', 'corner spin'],
  dimension: 'ratio',
  sane: [0, 500],
  caution: speedCaution,
  nonlinear: 'It grows without end as the corner takes all the grip; a doubt that gets there is taken from the side that does not.',
  ways: [
    way({
      needs: { thrust: made, limit: cornerLimit },
      compute: ({ thrust, limit }) =>
        limit > 0 ? thrust / limit : refuse('The turn takes all the grip of the driven wheels: any thrust spins them.', 'lateral'),
      source: `over 1 the driven tires can spin; ${atSpeed}`,
    }),
  ],
});
export const spinSpeed = quantity({
  path: 'traction.spinSpeed',
  scope: 'gear',
  name: 'highest speed at which the gear spins the tires, straight ahead',
  label: 'spins up to',
  main: true,
  symbol: 'v_spin',
  words: ['spin speed', 'spins up to', 'highest spin speed', 'wheelspin speed'],
  dimension: 'speed',
  sane: [0.1, 150],
  nonlinear:
    'It ends at once where the gear no longer spins the tires at all; a doubt that gets there is taken from the side that does not.',
  caution: speedCaution,
  ways: [
    way({
      needs: { law: engineLaw, perTorque: thrustPerTorque, perTurn: speedPerTurn, limit: straightLimit },
      compute: ({ law, perTorque, perTurn, limit }) => {
        const speed = lastSpeedAt(law, limit / perTorque);
        if (speed === undefined) return refuse('The tires hold all the thrust of this gear.');
        return (speed / (2 * Math.PI)) * perTurn;
      },
      source: `where the thrust of the gear comes down to what the tires hold; ${straightSource}`,
    }),
  ],
});
export const fastestSpin = quantity({
  path: 'traction.fastestSpin',
  scope: 'car',
  name: 'speed beyond which no gear spins the tires, straight ahead',
  label: 'no spin beyond',
  main: true,
  symbol: 'v_max,spin',
  words: ['fastest spin', 'fastest wheelspin', 'no spin beyond', 'highest speed with wheelspin'],
  dimension: 'speed',
  sane: [0.1, 150],
  caution: speedCaution,
  nonlinear: lighter,
  ways: [
    way({
      needs: { power: greatestWheelPower, limit: straightLimit },
      compute: ({ power, limit }) => power / limit,
      formula: 'power / limit',
      source: 'all the power at the wheels, in the gear that would suit best: thrust is power over speed',
    }),
  ],
});
export const accelerationHeld = quantity({
  path: 'traction.acceleration',
  scope: 'gear',
  name: 'acceleration, by thrust or by grip',
  label: 'acceleration held',
  main: true,
  symbol: 'a_x',
  words: ['acceleration', 'how hard it pulls', 'straight line acceleration'],
  dimension: 'acceleration',
  sane: [0.01, 30],
  ways: [
    way({
      needs: { thrust: made, limit: straightLimit, mass: totalMass, turning: massFactor },
      compute: ({ thrust, limit, mass, turning }) => Math.min(thrust / turning, limit) / mass,
      formula: 'min(thrust / turning, limit) / mass',
      source: `Newton; what turns takes its part of the thrust; no drag; ${atSpeed}`,
      basis: 'rotating masses counted',
    }),
    way({
      needs: { thrust: made, limit: straightLimit, mass: totalMass },
      compute: ({ thrust, limit, mass }) => Math.min(thrust, limit) / mass,
      formula: 'min(thrust, limit) / mass',
      source: `Newton; no drag; ${atSpeed}`,
      basis: 'no rotating masses in it',
    }),
  ],
  nonlinear: 'Thrust or grip, whichever is less: near the change-over a doubt counts by its two ends.',
});
export const throttleRotation = figure({
  path: 'traction.rotation',
  scope: 'gear',
  name: 'side force that full throttle takes from the rear in the turn, over what the turn asks of it',
  label: 'throttle rotation',
  symbol: 'r_T',
  words: [
    'throttle rotation',
    'throttle on rotation',
    'power on rotation',
    'rotation on throttle',
    'throttle oversteer',
    'power oversteer',
  ],
  dimension: 'ratio',
  needs: { thrust: made, corner: cornering, ...drivenBoth },
  compute: ({ thrust, corner, drivenFront, drivenRear }) => {
    const lost = (driven: Driven, axle: CornerThrust['axles'][number]): number => {
      if (driven.share === 0 || !(axle.lateral > 0)) return 0;
      return Math.max(0, 1 - sidewaysLeft(axle.grip, driven.differential, thrust * driven.share) / axle.lateral);
    };
    // While the tires hold the thrust, the rear holds its line: the throttle has no rotation to give.
    if (thrust <= corner.thrust) return 0;
    return lost(drivenRear, corner.axles[1]) - lost(drivenFront, corner.axles[0]);
  },
  source: `0 while the tires hold the thrust; up to 1 where the rear spins and holds nothing; below 0 where the front does: throttle then pushes; ${cornerSource}`,
  nonlinear: 'It is 0 until the thrust passes the grip: a doubt that gets there counts by its two ends.',
  caution: speedCaution,
});
