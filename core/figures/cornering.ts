/** The car as the four-wheel equilibrium sees it, and how it holds the turn that is asked. Steady state; roll under about 6 degrees; no wings. */
import { asMeasured, figure, firstOf, front, left, maybe, rear, refuse, right, structure, thisSide } from '../catalog.js';
import { type Equilibrium, equilibrium, holding, tangent } from '../cornering/equilibrium.js';
import { powerGrip } from '../cornering/grip.js';
import type { AxleModel, CamberModel, CornerModel, Manoeuvre, WheelLaw } from '../cornering/model.js';
import { steadyTurn } from '../cornering/model.js';
import { type Suspension, wheelLaw } from '../cornering/wheelLaw.js';
import { camber } from '../inputs/alignment.js';
import * as axles from '../inputs/axles.js';
import { frontDriveShare } from '../inputs/driveline.js';
import { drivenAxle } from '../inputs/gearing.js';
import * as grips from '../inputs/grip.js';
import * as massTold from '../inputs/mass.js';
import { chassisStiffness, tireRate } from '../inputs/ride.js';
import * as asked from '../inputs/turning.js';
import { frontViewLever } from '../inputs/wheels.js';
import { barModel } from './bars.js';
import { brakeShareNow } from './brakes.js';
import { brakeLift, driveLift } from './links.js';
import { sprungMass } from './loads.js';
import { unsprungCorner } from './mass.js';
import { bindTravel, ratioOfAxle } from './ride.js';
import { looseTravel } from './rideTravel.js';
import { springLever } from './roll.js';
import { motionRatio, springStack } from './springs.js';
import { riseSince, travelSince } from './standing.js';
import { damperRatio, stopTravel } from './travel.js';

const g = 9.80665;
const degree = Math.PI / 180;
export const model =
  'four-wheel equilibrium (core/cornering/residual.ts): steady turn of over ten wheelbases, roll under about 6 degrees, no wings, no slip angles or transients, roll centers where they are told';

/** Said of the numbers that are read off the equilibrium. */
export const bends =
  'Springs that come loose, stops that are met and wheels that lift bend it: a doubt that reaches across such a point is taken from its ends and halfway.';

export const droopStopNow = figure({
  path: 'droopStop.now',
  scope: 'axle',
  name: 'droop travel until the stop as it stands',
  label: 'droop until stop now',
  symbol: 'u_d',
  words: ['droop stop', 'droop stop travel', 'droop limit'],
  dimension: 'length',
  needs: { told: axles.droopStopTravel, left: maybe(left(travelSince)), right: maybe(right(travelSince)) },
  compute: ({ told, left = 0, right = 0 }) => told + (left + right) / 2,
  source: 'the reading, and how much the wheels have come up since',
  carriesOn: axles.droopStopTravel,
});
const nowhere = Number.POSITIVE_INFINITY;
/** No stop, always the same one, so that what depends on it sees no change. */
const noStop: Suspension['stop'] = { at: nowhere, rate: 0 };
export const bumpStop = structure({
  path: 'cornering.bumpStop',
  scope: 'axle',
  name: 'bump stop at the wheel',
  needs: { gap: maybe(stopTravel), rate: axles.bumpStopRate, ratio: firstOf(damperRatio, ratioOfAxle) },
  // On its stop already, a car is taken to have just met it.
  compute: ({ gap, rate, ratio }) => (gap === undefined ? noStop : { at: Math.max(0, gap), rate: rate * ratio ** 2 }),
  source: 'damper travel and force through its motion ratio',
});
/** What pushes a wheel down, and where it meets its first stop. */
interface Corner {
  readonly law: WheelLaw;
  readonly contact: number;
}
export const cornerLaw = structure({
  path: 'cornering.law',
  scope: 'corner',
  name: 'spring and stops at the wheel',
  needs: {
    stack: springStack,
    ratio: motionRatio,
    travel: maybe(travelSince),
    left: left(sprungMass),
    right: right(sprungMass),
    track: massTold.track,
    base: springLever,
    side: thisSide,
    stop: bumpStop,
    bind: maybe(bindTravel),
    loose: looseTravel,
    droop: maybe(droopStopNow),
  },
  compute: ({ stack, ratio, travel = 0, left, right, track, base, side, stop, bind, loose, droop }) => {
    // The springs of a beam stand closer together than its wheels: weight off center loads them more unlike than the wheels.
    const unlike = ((side === 'left' ? left - right : right - left) * track) / (2 * base);
    const carried = ((left + right) / 2 + unlike) * g;
    if (!(carried > 0)) return refuse('The weight lies so far to one side that a spring carries nothing.', 'scale', 'spring.base');
    const bound = bind ?? nowhere;
    const law = wheelLaw({ stack, ratio, here: travel, carried, stop, bind: bound, droop: Math.max(0, droop ?? loose) });
    const made: Corner = { law, contact: Math.min(stop.at, bound) };
    return made;
  },
  source:
    'spring force through the motion ratio; bump stop through that of the damper; a coil never pulls: a lifted wheel hangs on its droop stop, or where its spring is loose',
});
export const axleGrip = structure({
  path: 'cornering.grip',
  scope: 'axle',
  name: 'law of grip of the tires of an axle',
  needs: { mu: grips.gripCoefficient, load: grips.gripLoad, exponent: grips.gripExponent },
  compute: ({ mu, load, exponent }) => powerGrip(mu, load, exponent),
  source: 'mu = mu_0 (N/N_0)^-n',
});
export const gainOfArm = figure({
  path: 'camber.gainOfArm',
  scope: 'axle',
  name: 'change of camber in bump from the swing arm',
  label: 'camber gain by arm',
  symbol: 'c',
  dimension: 'ratioPerLength',
  needs: { arm: frontViewLever },
  compute: ({ arm }) => -1 / arm,
  formula: '-1 / arm',
  source: 'front-view geometry',
});
export const axleCamber = structure({
  path: 'cornering.leaning',
  scope: 'axle',
  name: 'lean of the wheels of an axle and what it does to grip',
  needs: {
    left: left(camber),
    right: right(camber),
    gain: firstOf(gainOfArm, axles.camberGain),
    best: grips.gripBestLean,
    loss: grips.gripLeanLoss,
  },
  compute: ({ left, right, gain, best, loss }): CamberModel => ({
    standing: [left, right],
    gain,
    best,
    sharpness: loss / (1 - loss) / (3 * degree) ** 2,
  }),
  source:
    'a factor that is 1 upright, largest at the best lean, and lower by the told part 3 degrees from there; left out where a camber is not told; common practice, no source',
});
/** N/m: stiffer than any tire, and than numbers of 16 digits can be solved with. */
const rigidTire = 1e9;
export const axleModel = structure({
  path: 'cornering.axle',
  scope: 'axle',
  name: 'an axle as the cornering model has it',
  needs: {
    kind: axles.axleKind,
    track: massTold.track,
    springBase: springLever,
    left: left(cornerLaw),
    right: right(cornerLaw),
    bar: barModel,
    rollCenter: axles.rollCenterHeight,
    unsprungHeight: axles.unsprungHeight,
    leftUnsprung: left(unsprungCorner),
    rightUnsprung: right(unsprungCorner),
    leftSprung: left(sprungMass),
    rightSprung: right(sprungMass),
    tireRate,
    grip: axleGrip,
    camber: maybe(axleCamber),
    driveLift: maybe(driveLift),
    brakeLift: maybe(brakeLift),
    braking: asked.braking,
  },
  compute: (is): AxleModel => {
    const unsprung = [is.leftUnsprung * g, is.rightUnsprung * g] as const;
    const carried = [is.leftSprung * g, is.rightSprung * g] as const;
    const reference = [carried[0] + unsprung[0], carried[1] + unsprung[1]] as const;
    return {
      kind: is.kind,
      track: is.track,
      springBase: is.springBase,
      law: [is.left.law, is.right.law],
      bar: is.bar.stiffness > 0 ? is.bar : undefined,
      rollCentreHeight: is.rollCenter,
      unsprungHeight: is.unsprungHeight,
      unsprung,
      tireRate: is.tireRate < rigidTire ? is.tireRate : nowhere,
      reference,
      grip: [is.grip, is.grip],
      // A tire that doesn't care how it leans.
      camber: is.camber && is.camber.sharpness > 0 ? is.camber : undefined,
      contact: [is.left.contact, is.right.contact],
      rest: {
        body: (is.track / 2) * (carried[0] - carried[1]),
        axle: is.kind === 'beam' ? (is.track / 2) * (unsprung[0] - unsprung[1]) : 0,
      },
      // Links whose angle is not told neither lift nor squat.
      driveLift: (is.braking > 0 ? is.brakeLift : is.driveLift) ?? 0,
    };
  },
  source: `${model}; anti-dive and anti-squat where the instant centers of the links are told`,
});
export const cgHeightNow = figure({
  path: 'cg.heightNow',
  scope: 'car',
  name: 'height of the center of gravity as it stands',
  label: 'cg height now',
  symbol: 'h',
  words: ['cg height', 'height of cg', 'center of gravity', 'cg', 'cg ht', 'center of gravity height'],
  dimension: 'length',
  typical: { range: [0.42, 0.6], of: 'road cars; common practice, no source' },
  needs: {
    height: massTold.cgHeight,
    then: asMeasured(massTold.cgHeight),
    lf: maybe(front(left(riseSince))),
    rf: maybe(front(right(riseSince))),
    lr: maybe(rear(left(riseSince))),
    rr: maybe(rear(right(riseSince))),
    lfSprung: maybe(front(left(sprungMass))),
    rfSprung: maybe(front(right(sprungMass))),
    lrSprung: maybe(rear(left(sprungMass))),
    rrSprung: maybe(rear(right(sprungMass))),
    lfUnsprung: maybe(front(left(unsprungCorner))),
    rfUnsprung: maybe(front(right(unsprungCorner))),
    lrUnsprung: maybe(rear(left(unsprungCorner))),
    rrUnsprung: maybe(rear(right(unsprungCorner))),
  },
  compute: (is) => {
    // Told again since the car was measured: it is of the car as it is.
    if (is.height !== is.then) return is.height;
    const rise = [is.lf, is.rf, is.lr, is.rr];
    const sprung = [is.lfSprung, is.rfSprung, is.lrSprung, is.rrSprung];
    const unsprung = [is.lfUnsprung, is.rfUnsprung, is.lrUnsprung, is.rrUnsprung];
    let [moment, weight] = [0, 0];
    for (let i = 0; i < 4; i++) {
      const [up, held, below] = [rise[i], sprung[i], unsprung[i]];
      if (up === undefined || held === undefined || below === undefined) return is.height;
      moment += up * held;
      weight += held + below;
    }
    return is.height + moment / weight;
  },
  source: 'as told, and the rise of the sprung weight since the car was measured; what came aboard and the size of the tires left out',
});
export const cornerModel = structure({
  path: 'cornering.model',
  scope: 'car',
  name: 'the car as the cornering model has it',
  needs: {
    front: front(axleModel),
    rear: rear(axleModel),
    wheelbase: massTold.wheelbase,
    cgHeight: cgHeightNow,
    torsion: maybe(chassisStiffness),
  },
  compute: ({ front, rear, wheelbase, cgHeight, torsion }) => {
    const weightOf = (axle: AxleModel): number => axle.reference[0] + axle.reference[1];
    const unsprungOf = (axle: AxleModel): number => axle.unsprung[0] + axle.unsprung[1];
    const weight = weightOf(front) + weightOf(rear);
    const sprung = weight - unsprungOf(front) - unsprungOf(rear);
    const low = unsprungOf(front) * front.unsprungHeight + unsprungOf(rear) * rear.unsprungHeight;
    if (!(sprung > 0)) return refuse('The unsprung weight is more than the car weighs.', 'front.unsprung.axle', 'rear.unsprung.axle');
    const made: CornerModel = {
      axles: [front, rear],
      toFront: (wheelbase * weightOf(rear)) / weight,
      toRear: (wheelbase * weightOf(front)) / weight,
      cgHeight,
      sprungCgHeight: (weight * cgHeight - low) / sprung,
      chassisStiffness: torsion ?? nowhere,
      gravity: true,
    };
    return made;
  },
  source: `${model}; the body rigid unless its stiffness is told`,
});
export const manoeuvre = structure({
  path: 'cornering.manoeuvre',
  scope: 'car',
  name: 'the turn that is asked',
  needs: {
    model: cornerModel,
    turn: asked.turn,
    lateral: asked.lateral,
    braking: asked.braking,
    driving: asked.driving,
    brakes: brakeShareNow,
    driven: maybe(drivenAxle),
    split: frontDriveShare,
  },
  compute: ({ model, turn, lateral, braking, driving, brakes, driven, split }) => {
    if (braking > 0 && driving > 0) return refuse('The car brakes or speeds up, not both.', 'braking', 'driving');
    if (driving > 0 && driven === undefined) return refuse('Which wheels are driven is not known.', 'driven');
    const weight = model.axles.reduce((sum, { reference }) => sum + reference[0] + reference[1], 0);
    const ahead = driven === 'front' ? 1 : driven === 'rear' ? 0 : split;
    const force = (weight * (driving - braking)) / g;
    const share = braking > 0 ? brakes : ahead;
    const [f, r] = [(force * share) / 2, (force * (1 - share)) / 2];
    const made: Manoeuvre = {
      lateral: ((turn === 'left' ? 1 : -1) * lateral) / g,
      longitudinal: (driving - braking) / g,
      drive: [f, f, r, r],
      yawMoment: 0,
    };
    return made;
  },
  source: 'left and right wheels push or brake alike; air drag left out',
});
export const cornerState = structure({
  path: 'cornering.state',
  scope: 'car',
  name: 'how the car holds the turn that is asked',
  needs: { model: cornerModel, manoeuvre },
  compute: ({ model, manoeuvre }, near?: Equilibrium): Equilibrium | ReturnType<typeof refuse> =>
    near ? equilibrium(model, manoeuvre, near) : holding(model, manoeuvre, 'turn'),
  source: model,
});
/** The car at rest with its bars hooked up, and how everything starts to move as it turns. */
export interface AtRest {
  readonly state: Equilibrium;
  /** Slope of every unknown over lateral g. */
  readonly slopes: Float64Array;
}
export const restState = structure({
  path: 'cornering.rest',
  scope: 'car',
  name: 'how the car stands with its bars hooked up, and how it starts to lean',
  needs: { model: cornerModel },
  compute: ({ model }, near?: AtRest) => {
    const state = near ? equilibrium(model, steadyTurn(0), near.state) : holding(model, steadyTurn(0), 'rest');
    if ('refused' in state) return state;
    const slopes = tangent(model, state);
    const made: AtRest = { state, slopes };
    return slopes.every(Number.isFinite) ? made : refuse('The car has no stiffness in roll with these facts.');
  },
  source: model,
});
