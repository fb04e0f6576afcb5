/** Can the car put its power down: the thrust that the tires hold, straight and in a corner, loads and differentials told apart. */
import { figure, firstOf, front, isRefusal, left, maybe, rear, refuse, right, structure, thisAxle } from '../catalog.js';
import type { AxleModel, CornerModel } from '../cornering/model.js';
import { axleKind } from '../inputs/axles.js';
import * as drive from '../inputs/driveline.js';
import { drivenAxle, finalDrive } from '../inputs/gearing.js';
import { track, wheelbase } from '../inputs/mass.js';
import { lateral, turn } from '../inputs/turning.js';
import { type CornerThrust, cornerThrust } from '../traction/corner.js';
import { type Driven, notDriven } from '../traction/driven.js';
import { type StraightCar, straightThrust } from '../traction/straight.js';
import { totalMass } from './aboard.js';
import { axleGrip, cgHeightNow, cornerModel } from './cornering.js';
import { driveLift } from './links.js';
import { cornerMass } from './loads.js';
import { rollStiffnessShare } from './roll.js';
import { rollingRadius } from './tires.js';

const g = 9.80665;
export const straightSource =
  'statics of the whole car, the grip at each load, the loads moved by the acceleration itself; springs alike left and right; no drag, no rotating masses';
export const cornerSource =
  'four-wheel equilibrium under that thrust, friction ellipse of each wheel, by differential; preload and viscous coupling left out; the other end is taken to hold';
export const lighter = 'The lighter of two wheels ends it: where both are alike, a doubt of either counts whole.';

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
  compute: ({ model: asked, lateral, turn, frontLift = 0, rearLift = 0, drivenFront, drivenRear }, here?: CornerThrust) => {
    // The model has the links as the question has them: braking, maybe.
    const lifting = (j: 0 | 1, lift: number): AxleModel =>
      asked.axles[j].driveLift === lift ? asked.axles[j] : { ...asked.axles[j], driveLift: lift };
    const model: CornerModel = { ...asked, axles: [lifting(0, frontLift), lifting(1, rearLift)] };
    const signed = ((turn === 'left' ? 1 : -1) * lateral) / g;
    const near = here ?? (last?.state.lateral === signed ? last : undefined);
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
