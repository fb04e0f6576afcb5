/** Can the car put its power down: the thrust that the tires hold, straight and in a corner, against what each gear makes. */
import { figure, firstOf, front, isRefusal, left, maybe, rear, refuse, right, structure, thisAxle } from '../catalog.js';
import type { AxleModel, CornerModel } from '../cornering/model.js';
import { axleKind } from '../inputs/axles.js';
import * as drive from '../inputs/driveline.js';
import { drivenAxle, finalDrive } from '../inputs/gearing.js';
import { track, wheelbase } from '../inputs/mass.js';
import { lateral, turn } from '../inputs/turning.js';
import { type CornerThrust, cornerThrust } from '../traction/corner.js';
import { type Driven, notDriven, sidewaysLeft } from '../traction/driven.js';
import { type StraightCar, straightThrust } from '../traction/straight.js';
import { lastSpeedAt } from '../traction/torque.js';
import { totalMass } from './aboard.js';
import { axleGrip, cgHeightNow, cornerModel } from './cornering.js';
import { engineLaw, greatestWheelPower, peakThrust, thrust } from './engine.js';
import { speedPerTurn, thrustPerTorque } from './gearing.js';
import { driveLift } from './links.js';
import { cornerMass } from './loads.js';
import { rollStiffnessShare } from './roll.js';
import { rollingRadius } from './tires.js';

const g = 9.80665;
const straightSource =
  'statics of the whole car, the grip at each load, the loads moved by the acceleration itself; springs alike left and right; no drag, no rotating masses';
const cornerSource =
  'four-wheel equilibrium under that thrust, friction ellipse of each wheel, by differential; preload and viscous coupling left out; the other end is taken to hold';
const lighter = 'The lighter of two wheels ends it: where both are alike, a doubt of either counts whole.';
const speedCaution = 'Try it only on a closed course: tires let go without notice.';

export const shaftReaction = figure({
  path: 'shaft.reactionBySprings',
  scope: 'axle',
  name: 'part of the shaft torque on a beam that the other axle holds',
  label: 'shaft torque share',
  symbol: 'K_o/K',
  dimension: 'ratio',
  needs: { share: rollStiffnessShare, axle: thisAxle },
  compute: ({ share, axle }) => (axle === 'rear' ? share : 1 - share),
  source: 'both axles resist the roll of the body side by side',
});
export const drivenNow = structure({
  path: 'drive.axle',
  scope: 'axle',
  name: 'what drives the axle',
  needs: {
    driven: drivenAxle,
    frontShare: drive.frontDriveShare,
    differential: drive.differential,
    bias: drive.biasRatio,
    kind: axleKind,
    final: maybe(finalDrive),
    radius: maybe(rollingRadius),
    reaction: firstOf(shaftReaction, drive.shaftReactionTold),
    axle: thisAxle,
  },
  compute: ({ driven, frontShare, differential, bias, kind, final, radius, reaction, axle }) => {
    const share = driven === 'both' ? (axle === 'front' ? frontShare : 1 - frontShare) : driven === axle ? 1 : 0;
    if (share === 0) return notDriven;
    let shaft = 0;
    if (kind === 'beam') {
      if (final === undefined || radius === undefined)
        return refuse("The shaft's torque on a beam axle needs the final drive and the tire size.", 'final', 'tire.size');
      shaft = radius / final;
    }
    const made: Driven = {
      differential: differential === 'biasing' ? { kind: 'biasing', bias } : { kind: differential },
      share,
      shaft,
      reaction,
    };
    return made;
  },
  source: 'both axles driven: the thrust is shared by a fixed split, and the first axle to spin ends it',
});
const drivenBoth = { drivenFront: front(drivenNow), drivenRear: rear(drivenNow) };

export const straightCar = structure({
  path: 'traction.car',
  scope: 'car',
  name: 'the car along a straight line',
  needs: {
    lf: front(left(cornerMass)),
    rf: front(right(cornerMass)),
    lr: rear(left(cornerMass)),
    rr: rear(right(cornerMass)),
    height: cgHeightNow,
    wheelbase,
    frontGrip: front(axleGrip),
    rearGrip: rear(axleGrip),
    frontTrack: front(track),
    rearTrack: rear(track),
  },
  compute: ({ lf, rf, lr, rr, height, wheelbase, frontGrip, rearGrip, frontTrack, rearTrack }): StraightCar => ({
    loads: [lf * g, rf * g, lr * g, rr * g],
    heightOverBase: height / wheelbase,
    grip: [(load) => frontGrip.coefficient(load) * load, (load) => rearGrip.coefficient(load) * load],
    track: [frontTrack, rearTrack],
  }),
  source: straightSource,
});
export const straightLimit = figure({
  path: 'traction.straight',
  scope: 'car',
  name: 'thrust that the tires hold, straight ahead',
  label: 'tires hold, straight',
  main: true,
  symbol: 'F_s',
  words: ['thrust limit', 'traction limit', 'traction', 'thrust the tire holds', 'drive grip', 'grip for thrust'],
  dimension: 'force',
  needs: { car: straightCar, ...drivenBoth },
  compute: ({ car, drivenFront, drivenRear }) => straightThrust(car, [drivenFront, drivenRear]),
  source: straightSource,
  nonlinear: lighter,
});
export const straightLimitAcceleration = figure({
  path: 'traction.straightAcceleration',
  scope: 'car',
  name: 'acceleration that the tires hold, straight ahead',
  label: 'tires hold, straight',
  symbol: 'a_s',
  words: ['acceleration limit', 'launch acceleration', 'traction limited acceleration', 'grip limited acceleration'],
  dimension: 'acceleration',
  typical: { range: [4, 8], of: 'road tires on dry asphalt; common practice, no source' },
  needs: { limit: straightLimit, mass: totalMass },
  compute: ({ limit, mass }) => limit / mass,
  formula: 'limit / mass',
  source: 'Newton; no rotating masses',
  nonlinear: lighter,
});

/** The last solution: the same car with one error moved is rarely far away. Where the search ends does not depend on where it starts. */
let last: CornerThrust | undefined;
export const cornering = structure({
  path: 'traction.corner',
  scope: 'car',
  name: 'how the driven wheels hold thrust in the turn that is asked',
  needs: { model: cornerModel, lateral, turn, frontLift: maybe(front(driveLift)), rearLift: maybe(rear(driveLift)), ...drivenBoth },
  compute: ({ model: asked, lateral, turn, frontLift = 0, rearLift = 0, drivenFront, drivenRear }) => {
    // The model has the links as the question has them: braking, maybe.
    const lifting = (j: 0 | 1, lift: number): AxleModel =>
      asked.axles[j].driveLift === lift ? asked.axles[j] : { ...asked.axles[j], driveLift: lift };
    const model: CornerModel = { ...asked, axles: [lifting(0, frontLift), lifting(1, rearLift)] };
    const signed = ((turn === 'left' ? 1 : -1) * lateral) / g;
    const near = last && last.state.lateral === signed ? last : undefined;
    const found = cornerThrust(model, signed, [drivenFront, drivenRear], near);
    if (!isRefusal(found)) last = found;
    return found;
  },
  source: cornerSource,
});
export const cornerLimit = figure({
  path: 'traction.inCorner',
  scope: 'car',
  name: 'thrust that the tires hold in the turn',
  label: 'tires hold, turning',
  main: true,
  symbol: 'F_c',
  words: ['thrust limit in the turn', 'traction in the turn', 'thrust limit in a corner', 'corner traction', 'corner exit traction'],
  dimension: 'force',
  needs: { corner: cornering },
  compute: ({ corner }) => corner.thrust,
  source: cornerSource,
  nonlinear: 'It ends at nothing where the corner takes all the grip; a doubt that gets there is taken from its ends.',
});
export const cornerLimitAcceleration = figure({
  path: 'traction.cornerAcceleration',
  scope: 'car',
  name: 'acceleration that the tires hold in the turn',
  label: 'tires hold, turning',
  symbol: 'a_c',
  words: ['acceleration limit in the turn', 'corner exit acceleration'],
  dimension: 'acceleration',
  needs: { limit: cornerLimit, mass: totalMass },
  compute: ({ limit, mass }) => limit / mass,
  formula: 'limit / mass',
  source: 'Newton; no rotating masses',
  nonlinear: 'It ends at nothing where the corner takes all the grip; a doubt that gets there is taken from its ends.',
});

const made = firstOf(thrust, peakThrust);
const atSpeed = 'thrust at the engine or road speed asked, else at its peak, at full throttle';
export const spin = figure({
  path: 'traction.spin',
  scope: 'gear',
  name: 'thrust over what the tires hold, straight ahead',
  label: 'thrust over grip',
  main: true,
  symbol: 'F/F_s',
  words: ['spin', 'wheelspin', 'tire spin', 'spin margin', 'spin the tire', 'light up'],
  dimension: 'ratio',
  needs: { thrust: made, limit: straightLimit },
  compute: ({ thrust, limit }) => thrust / limit,
  formula: 'thrust / limit',
  source: `over 1 the driven tires can spin; ${atSpeed}`,
  caution: speedCaution,
  nonlinear: lighter,
});
export const spinInCorner = figure({
  path: 'traction.spinInCorner',
  scope: 'gear',
  name: 'thrust over what the tires hold in the turn',
  label: 'over grip, turning',
  main: true,
  symbol: 'F/F_c',
  words: ['spin in the turn', 'wheelspin in the turn', 'spin in a corner', 'spin out of the corner', 'corner spin'],
  dimension: 'ratio',
  needs: { thrust: made, limit: cornerLimit },
  compute: ({ thrust, limit }) =>
    limit > 0 ? thrust / limit : refuse('The turn takes all the grip of the driven wheels: any thrust spins them.', 'lateral'),
  source: `over 1 the driven tires can spin; ${atSpeed}`,
  caution: speedCaution,
  nonlinear: 'It grows without end as the corner takes all the grip; a doubt that gets there is taken from the side that does not.',
});
export const spinSpeed = figure({
  path: 'traction.spinSpeed',
  scope: 'gear',
  name: 'highest speed at which the gear spins the tires, straight ahead',
  label: 'spins up to',
  main: true,
  symbol: 'v_spin',
  words: ['spin speed', 'spins up to', 'highest spin speed', 'wheelspin speed'],
  dimension: 'speed',
  needs: { law: engineLaw, perTorque: thrustPerTorque, perTurn: speedPerTurn, limit: straightLimit },
  compute: ({ law, perTorque, perTurn, limit }) => {
    const speed = lastSpeedAt(law, limit / perTorque);
    if (speed === undefined) return refuse('The tires hold all the thrust of this gear.');
    return (speed / (2 * Math.PI)) * perTurn;
  },
  source: `where the thrust of the gear comes down to what the tires hold; ${straightSource}`,
  nonlinear:
    'It ends at once where the gear no longer spins the tires at all; a doubt that gets there is taken from the side that does not.',
  caution: speedCaution,
});
export const fastestSpin = figure({
  path: 'traction.fastestSpin',
  scope: 'car',
  name: 'speed beyond which no gear spins the tires, straight ahead',
  label: 'no spin beyond',
  main: true,
  symbol: 'v_max,spin',
  words: ['fastest spin', 'fastest wheelspin', 'no spin beyond', 'highest speed with wheelspin'],
  dimension: 'speed',
  needs: { power: greatestWheelPower, limit: straightLimit },
  compute: ({ power, limit }) => power / limit,
  formula: 'power / limit',
  source: 'all the power at the wheels, in the gear that would suit best: thrust is power over speed',
  caution: speedCaution,
  nonlinear: lighter,
});
export const accelerationHeld = figure({
  path: 'traction.acceleration',
  scope: 'gear',
  name: 'acceleration, by thrust or by grip',
  label: 'acceleration',
  main: true,
  symbol: 'a_x',
  words: ['acceleration', 'how hard it pulls', 'straight line acceleration'],
  dimension: 'acceleration',
  needs: { thrust: made, limit: straightLimit, mass: totalMass },
  compute: ({ thrust, limit, mass }) => Math.min(thrust, limit) / mass,
  formula: 'min(thrust, limit) / mass',
  source: `Newton; no rotating masses, no drag; ${atSpeed}`,
  nonlinear: 'Thrust or grip, whichever is less: near the change-over a doubt counts by its two ends.',
});
export const throttleRotation = figure({
  path: 'traction.rotation',
  scope: 'gear',
  name: 'side force that full throttle takes from the rear in the turn, over what the turn asks of it',
  label: 'throttle rotation',
  main: true,
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
