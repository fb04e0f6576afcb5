/** The car as the four-wheel equilibrium sees it, and how it holds the turn that is asked. Steady state; roll under about 6 degrees; no wings. */
import {
  asMeasured,
  figure,
  firstOf,
  front,
  given,
  isRefusal,
  left,
  maybe,
  quantity,
  type Refusal,
  rear,
  refine,
  refuse,
  right,
  structure,
  way,
} from '../../catalog.js';
import type { Course } from '../../numeric/follow.js';
import { camber } from '../alignment/told.js';
import { brakeShareNow } from '../braking/brakes.js';
import { drivenAxle } from '../gearing/told.js';
import * as grips from '../grip/told.js';
import { sprungMass } from '../mass/loads.js';
import * as massTold from '../mass/told.js';
import { unsprungCorner } from '../mass/weighed.js';
import { riseSince } from '../ride/standing.js';
import { chassisStiffness, tireRate } from '../ride/told.js';
import { springLever } from '../springs/springLever.js';
import { brakeLift, driveLift } from '../suspension/links.js';
import * as axles from '../suspension/told.js';
import { frontDriveShare } from '../traction/told.js';
import { frontViewLever } from '../wheels/told.js';
import * as asked from './asked.js';
import { besideSprings, cornerLaw, nowhere } from './cornerLaws.js';
import { courseOf, type Equilibrium, equilibrium, followed, tangent } from './equilibrium.js';
import { powerGrip } from './grip.js';
import type { AxleModel, CamberModel, CornerModel, Manoeuvre } from './model.js';
import { steadyTurn } from './model.js';

const g = 9.80665;
const degree = Math.PI / 180;
export const model =
  'four-wheel equilibrium (core/subjects/cornering/residual.ts): steady turn of over ten wheelbases, roll under about 6 degrees, no wings, no slip angles or transients, roll centers where they are told';

/** Said of the numbers that are read off the equilibrium. */
export const bends =
  'Springs that come loose, stops that are met and wheels that lift bend it: a doubt that reaches across such a point is taken from its ends and halfway.';

/** A guess for the whole car is not as far off at both ends alike, and the balance is their difference. */
export const gripOfEnd = quantity({
  path: 'grip.ofEnd',
  scope: 'axle',
  name: 'grip coefficient of this end',
  label: 'grip of this end',
  symbol: 'mu_j',
  dimension: 'ratio',
  asks: { words: 'how much the tires grip at each end', tell: grips.gripCoefficient },
  ways: [
    way({ needs: { mu: given(grips.gripCoefficient) }, compute: ({ mu }) => mu, formula: 'mu', source: 'as told' }),
    way({
      needs: { mu: grips.gripCoefficient },
      compute: ({ mu }) => mu,
      ...{
        sort: 'estimate',
        within: { relative: 0.03 },
        source: 'heat, pressure and wear are not the same at both ends; common practice, no source',
      },
    }),
  ],
});
export const axleGrip = structure({
  path: 'cornering.grip',
  scope: 'axle',
  name: 'law of grip of the tires of an axle',
  needs: { mu: gripOfEnd, load: grips.gripLoad, exponent: refine(grips.gripExponent, 0, 'grip that falls with load') },
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
/** Left out of a plain sum; of a car whose camber nobody told, a doubt about its grip. */
export const standingCamber = quantity({
  path: 'camber.standing',
  scope: 'corner',
  name: 'camber that grip is taken at',
  label: 'camber for grip',
  symbol: 'gamma_0',
  dimension: 'angle',
  asks: { words: 'how its wheels lean', tell: camber },
  ways: [
    way({ needs: { camber }, compute: ({ camber }) => camber, formula: 'camber', source: 'as it stands' }),
    way({
      needs: { kind: axles.axleKind },
      compute: ({ kind }) => (kind === 'beam' ? 0 : -1.1 * degree),
      ...{ sort: 'estimate', within: { absolute: 1.3 * degree }, error: 'common', source: 'common practice, no source' },
    }),
  ],
});
export const axleCamber = structure({
  path: 'cornering.leaning',
  scope: 'axle',
  name: 'lean of the wheels of an axle and what it does to grip',
  needs: {
    left: left(standingCamber),
    right: right(standingCamber),
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
    'a factor that is 1 upright, largest at the best lean, and lower by the told part 3 degrees from there; left out where a camber is not known; common practice, no source',
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
    bar: besideSprings,
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
      bar: is.bar.stiffness === 0 ? undefined : is.bar,
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
/** What the plain sums of a turn are of: they know nothing of brakes and thrust. */
export const steadyAlone = structure({
  path: 'cornering.steady',
  scope: 'question',
  name: 'a turn without braking or speeding up',
  needs: { braking: asked.braking, driving: asked.driving },
  compute: ({ braking, driving }) =>
    braking === 0 && driving === 0
      ? { lateral: true }
      : refuse('A plain sum of a turn is of a steady one: without braking or speeding up.', 'braking', 'driving'),
  source: 'as asked',
});
/** A state of the car, or why there is none: it would roll over, or finds no balance. What reads it refuses with that, and takes no plainer way around it. */
export interface Held {
  readonly found: Equilibrium | Refusal;
  /** Where the states of cars nearby are found from. */
  readonly course?: Course;
}
export const held = structure({
  path: 'cornering.held',
  scope: 'car',
  name: 'how the car holds the turn that is asked, or why it does not',
  needs: { model: cornerModel, manoeuvre },
  compute: ({ model, manoeuvre }, near?: Held): Held => {
    const next = near?.course && followed(near.course, model, manoeuvre);
    if (next) return { found: next };
    const found = equilibrium(model, manoeuvre, near && !isRefusal(near.found) ? near.found : undefined);
    return near || isRefusal(found) ? { found } : { found, course: courseOf(model, manoeuvre, found) };
  },
  source: model,
});
export const cornerState = structure({
  path: 'cornering.state',
  scope: 'car',
  name: 'how the car holds the turn that is asked',
  needs: { held },
  compute: ({ held }) => held.found,
  source: model,
});
/** The car at rest with its bars hooked up, and how everything starts to move as it turns. */
export interface AtRest {
  readonly state: Equilibrium;
  /** Slope of every unknown over lateral g. */
  readonly slopes: Float64Array;
  /** Where the same of cars nearby is found from. */
  readonly course: Course;
}
export const restState = structure({
  path: 'cornering.rest',
  scope: 'car',
  name: 'how the car stands with its bars hooked up, and how it starts to lean',
  needs: { model: cornerModel },
  compute: ({ model }, near?: AtRest) => {
    const state = (near && followed(near.course, model, steadyTurn(0))) ?? equilibrium(model, steadyTurn(0));
    if (isRefusal(state)) return state;
    const slopes = tangent(model, state);
    const made: AtRest = { state, slopes, course: near?.course ?? courseOf(model, steadyTurn(0), state) };
    return slopes.every(Number.isFinite) ? made : refuse('The car has no stiffness in roll with these facts.');
  },
  source: model,
});

/** What is read off the turn that is asked. */
export const inTheTurn = { model: cornerModel, manoeuvre, held } as const;
/** Reads a number off the state that was found; where there is none, its reason is the answer. */
export const readOff = ({ held }: { readonly held: Held }, read: (x: Float64Array, state: Equilibrium) => number): number | Refusal =>
  isRefusal(held.found) ? held.found : read(held.found.x, held.found);
export const askedTurn = `at the lateral acceleration that is asked, 0.8 g unless told; ${model}`;
export const indexOf = (axle: 'front' | 'rear'): 0 | 1 => (axle === 'front' ? 0 : 1);
export const sideOf = (side: 'left' | 'right'): 0 | 1 => (side === 'left' ? 0 : 1);
