/** Can the car put its power down: the thrust that the tires hold, straight and in a corner, loads and differentials told apart. */
import {
  figure,
  firstOf,
  front,
  inPractice,
  isRefusal,
  left,
  maybe,
  quantity,
  type Refusal,
  rear,
  refuse,
  right,
  structure,
  thisAxle,
  way,
} from '../../catalog.js';
import { lateral, slope, turn } from '../cornering/asked.js';
import { axleGrip, cgHeightNow, cornerModel } from '../cornering/car.js';
import type { AxleModel, CornerModel } from '../cornering/model.js';
import { drivenAxle, finalDrive } from '../gearing/told.js';
import { gripCoefficient } from '../grip/told.js';
import { totalMass } from '../mass/aboard.js';
import { cornerMass } from '../mass/loads.js';
import { cgHeight, track, wheelbase } from '../mass/told.js';
import { weighedCorner, weighedShare, weighedTotal } from '../mass/weighed.js';
import { rollStiffnessShare } from '../roll/stiffness.js';
import { driveLift } from '../suspension/links.js';
import { axleKind } from '../suspension/told.js';
import { rollingRadius } from '../tires/dimensions.js';
import { type CornerThrust, cornerThrust } from './corner.js';
import { type Driven, notDriven } from './driven.js';
import { thrustLimit } from './limit.js';
import { type StraightCar, straightThrust } from './straight.js';
import * as drive from './told.js';

const g = 9.80665;
export const straightSource =
  'statics of the whole car, the grip at each load, the loads moved by the acceleration itself; springs alike left and right; no drag, no rotating masses';
export const cornerSource =
  'four-wheel equilibrium under that thrust, friction ellipse of each wheel, by differential; preload and viscous coupling left out; the other end is taken to hold';
const noneMoves = 'no load moved back';
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
/** Of the axle's wheels as they were weighed, standing still. */
export const thrustOfAxle = quantity({
  path: 'traction.ofAxle',
  scope: 'axle',
  name: 'thrust that the wheels of the axle hold where they stand',
  label: 'axle holds',
  symbol: 'F_j',
  dimension: 'force',
  ways: [
    way({
      needs: {
        left: left(weighedCorner),
        right: right(weighedCorner),
        mu: gripCoefficient,
        differential: drive.differential,
        bias: maybe(drive.biasRatio),
      },
      compute: ({ left, right, mu, differential, bias }) => {
        if (differential === 'biasing' && bias === undefined)
          return refuse('How much more the better wheel gets is not known: tell the bias ratio.', 'differential.bias');
        const kind = differential === 'biasing' ? ({ kind: 'biasing', bias: bias ?? 1 } as const) : ({ kind: differential } as const);
        return thrustLimit([mu * left * g, mu * right * g], 0, kind);
      },
      source: 'grip times load of each wheel, through the differential',
      basis: noneMoves,
    }),
  ],
});
/** The grip of the axle that drives; of both the lesser. */
const drivenGrip = {
  driven: drivenAxle,
  frontKind: front(axleKind),
  rearKind: rear(axleKind),
  frontGrip: maybe(front(gripCoefficient)),
  rearGrip: maybe(rear(gripCoefficient)),
};
interface DrivenGrip {
  readonly driven: 'front' | 'rear' | 'both';
  readonly frontKind: 'independent' | 'beam';
  readonly rearKind: 'independent' | 'beam';
  readonly frontGrip: number | undefined;
  readonly rearGrip: number | undefined;
}
function gripOf({ driven, frontKind, rearKind, frontGrip, rearGrip }: DrivenGrip): number | Refusal {
  const beam = (driven !== 'rear' && frontKind === 'beam') || (driven !== 'front' && rearKind === 'beam');
  if (beam)
    return refuse(
      "The shaft's torque on a beam axle needs the final drive and the tire size.",
      'final',
      `${driven === 'front' ? 'front' : 'rear'}.tire.size`,
    );
  const lesser = frontGrip === undefined ? rearGrip : Math.min(frontGrip, rearGrip ?? frontGrip);
  const grip = driven === 'front' ? frontGrip : driven === 'rear' ? rearGrip : lesser;
  return grip ?? refuse('The grip of the driven tires is not known.', `${driven === 'rear' ? 'rear' : 'front'}.grip.mu`);
}
/** Thrust over weight with a grip that does not fall with load. */
function thrustOverWeight(driven: 'front' | 'rear' | 'both', grip: number, share: number, heightOverBase: number): number | Refusal {
  if (driven === 'both') return grip;
  if (driven === 'front') return (grip * share) / (1 + grip * heightOverBase);
  return grip * heightOverBase < 1
    ? Math.min(grip, (grip * (1 - share)) / (1 - grip * heightOverBase))
    : refuse('With so much grip that high the front wheels come off the ground before the rear wheels spin.', 'cg.height', 'wheelbase');
}
const shortcut = 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, from memory; grip that does not fall with load';
const moves = 'with the load that moves back';
export const straightLimit = quantity({
  path: 'traction.straight',
  scope: 'car',
  name: 'thrust that the tires hold, straight ahead',
  label: 'thrust held straight',
  main: true,
  symbol: 'F_t',
  words: ['thrust limit', 'traction limit', 'traction', 'thrust the tire holds', 'drive grip', 'grip for thrust'],
  dimension: 'force',
  sane: [50, 60_000],
  ways: [
    way({
      needs: { car: straightCar, ...drivenBoth },
      compute: ({ car, drivenFront, drivenRear }) => straightThrust(car, [drivenFront, drivenRear]),
      source: straightSource,
      basis: moves,
    }),
    way({
      needs: { ...drivenGrip, mass: weighedTotal, share: weighedShare, height: cgHeight, wheelbase },
      compute: ({ mass, share, height, wheelbase, ...grips }) => {
        const grip = gripOf(grips);
        const part = isRefusal(grip) ? grip : thrustOverWeight(grips.driven, grip, share, height / wheelbase);
        return isRefusal(part) ? part : part * mass * g;
      },
      source: shortcut,
      basis: moves,
    }),
    way({
      needs: { ...drivenGrip, mass: weighedTotal, share: weighedShare },
      compute: ({ mass, share, ...grips }) => {
        const grip = gripOf(grips);
        const part = isRefusal(grip) ? grip : thrustOverWeight(grips.driven, grip, share, 0);
        return isRefusal(part) ? part : part * mass * g;
      },
      source: shortcut,
      basis: noneMoves,
    }),
    way({
      needs: { driven: drivenAxle, front: maybe(front(thrustOfAxle)), rear: maybe(rear(thrustOfAxle)) },
      compute: ({ driven, front, rear }) => {
        const one = driven === 'front' ? front : driven === 'rear' ? rear : undefined;
        return (
          one ?? refuse('What the driven wheels carry is not known: tell the weight of the car and its front share.', 'mass', 'frontShare')
        );
      },
      source: 'the driven axle as it stands',
      basis: noneMoves,
    }),
  ],
  nonlinear: lighter,
});
export const straightLimitAcceleration = quantity({
  path: 'traction.straightAcceleration',
  scope: 'car',
  name: 'acceleration that the tires hold, straight ahead',
  label: 'acceleration held',
  symbol: 'a_t',
  words: ['acceleration limit', 'launch acceleration', 'traction limited acceleration', 'grip limited acceleration'],
  dimension: 'acceleration',
  sane: [0.1, 30],
  typical: { range: [4, 8], of: 'road tires on dry asphalt; common practice, no source' },
  ways: [
    way({
      needs: { limit: straightLimit, mass: totalMass },
      compute: ({ limit, mass }) => limit / mass,
      formula: 'limit / mass',
      source: 'Newton; wheels that are about to spin turn at the speed of the car',
    }),
    way({
      needs: { ...drivenGrip, share: weighedShare, height: cgHeight, wheelbase },
      compute: ({ share, height, wheelbase, ...grips }) => {
        const grip = gripOf(grips);
        const part = isRefusal(grip) ? grip : thrustOverWeight(grips.driven, grip, share, height / wheelbase);
        return isRefusal(part) ? part : part * g;
      },
      source: shortcut,
      basis: moves,
    }),
    way({
      needs: drivenGrip,
      compute: (grips) => {
        if (grips.driven !== 'both')
          return refuse('How much of the weight is on the driven wheels is not known.', 'frontShare', 'cg.height', 'wheelbase');
        const grip = gripOf(grips);
        return isRefusal(grip) ? grip : grip * g;
      },
      source: 'all wheels driven: grip times gravity',
    }),
  ],
  nonlinear: lighter,
});
export const slopeLimit = quantity({
  path: 'slope.limit',
  typical: [inPractice('road tires on a dry slope', 0.3, 0.8)],
  nonlinear: 'The wheel with less to press it lets go first: near the change-over a doubt counts by its two ends.',
  scope: 'car',
  name: 'steepest slope that the tires climb, rise over run',
  label: 'steepest slope',
  symbol: 'tan s',
  words: ['steepest slope', 'steepest hill', 'slope limit', 'hill limit'],
  dimension: 'ratio',
  sane: [0.01, 3],
  ways: [
    way({
      needs: { acceleration: straightLimitAcceleration },
      compute: ({ acceleration }) => acceleration / g,
      formula: 'acceleration / g',
      source: 'on a slope the weight along the road stands for the acceleration: tan of the slope is what would be a/g on the level',
    }),
  ],
  caution: 'Not for parking or towing: a wet or loose road holds far less.',
});
export const slopeThrust = quantity({
  path: 'slope.thrust',
  scope: 'car',
  name: 'thrust that the slope takes',
  label: 'thrust for the slope',
  symbol: 'F_s',
  words: ['slope thrust', 'thrust for the slope', 'hill thrust', 'force of the slope'],
  dimension: 'force',
  sane: [0, 60_000],
  ways: [
    way({
      needs: { mass: totalMass, slope },
      compute: ({ mass, slope }) => mass * g * Math.sin(Math.atan(slope)),
      formula: 'mass * g * sin(atan(slope))',
      source: 'weight along the road',
    }),
  ],
});

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
    return cornerThrust(model, signed, [drivenFront, drivenRear], here);
  },
  source: cornerSource,
});
export const cornerLimit = quantity({
  path: 'traction.inCorner',
  scope: 'car',
  name: 'thrust that the tires hold in the turn',
  label: 'tires hold, turning',
  main: true,
  symbol: 'F_c',
  words: ['thrust limit in the turn', 'traction in the turn', 'thrust limit in a corner', 'corner traction', 'corner exit traction'],
  dimension: 'force',
  sane: [0, 60_000],
  nonlinear: 'It ends at nothing where the corner takes all the grip; a doubt that gets there is taken from its ends.',
  ways: [
    way({
      needs: { corner: cornering },
      compute: ({ corner }) => corner.thrust,
      source: cornerSource,
    }),
  ],
});
export const cornerLimitAcceleration = quantity({
  path: 'traction.cornerAcceleration',
  scope: 'car',
  name: 'acceleration that the tires hold in the turn',
  label: 'tires hold, turning',
  symbol: 'a_c',
  words: ['acceleration limit in the turn', 'corner exit acceleration'],
  dimension: 'acceleration',
  sane: [0, 30],
  nonlinear: 'It ends at nothing where the corner takes all the grip; a doubt that gets there is taken from its ends.',
  ways: [
    way({
      needs: { limit: cornerLimit, mass: totalMass },
      compute: ({ limit, mass }) => limit / mass,
      formula: 'limit / mass',
      source: 'Newton; no rotating masses',
    }),
  ],
});
