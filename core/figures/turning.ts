/** What the car does in the turn that is asked: roll, loads, transfer and what it is made of, travel and camber of each wheel. */
import { figure, firstOf, front, rear, refuse, structure, thisAxle, thisSide } from '../catalog.js';
import { camberAt } from '../cornering/grip.js';
import { axleUse } from '../cornering/limits.js';
import { type AxleParts, bumpOf, partsOf } from '../cornering/parts.js';
import { at } from '../cornering/unknowns.js';
import { camber } from '../inputs/alignment.js';
import { camberGain } from '../inputs/axles.js';
import { lateral } from '../inputs/turning.js';
import { carLimit } from './balance.js';
import { bends, cornerModel, cornerState, gainOfArm, manoeuvre, model, restState } from './cornering.js';

const g = 9.80665;
const rollCaution = 'Past about 6 degrees of roll the small-angle model reads short.';
const state = { model: cornerModel, manoeuvre, state: cornerState } as const;
const asked = `at the lateral acceleration that is asked, 0.8 g unless told; ${model}`;

export const rollAngle = figure({
  path: 'roll.angle',
  scope: 'car',
  name: 'roll angle in the turn',
  label: 'roll angle',
  main: true,
  symbol: 'phi',
  words: ['roll', 'roll angle', 'body roll', 'lean', 'lean angle', 'less roll'],
  dimension: 'angle',
  typical: { range: [0.017, 0.09], of: '1 to 5 degrees; common practice, no source' },
  needs: state,
  compute: ({ manoeuvre, state: { x } }) => ((manoeuvre.lateral < 0 ? -1 : 1) * (x[at.roll(0)]! + x[at.roll(1)]!)) / 2,
  source: `of the body against the road, tires included, mean of both ends; ${asked}`,
  caution: rollCaution,
  nonlinear: bends,
});
export const elasticRoll = figure({
  path: 'roll.onSprings',
  scope: 'axle',
  name: 'roll of the body on its suspension',
  label: 'roll on springs',
  symbol: 'phi_s',
  words: ['roll on spring', 'elastic roll', 'suspension roll'],
  dimension: 'angle',
  needs: { ...state, axle: thisAxle },
  compute: ({ model, manoeuvre, state: { x }, axle }) => {
    const j = axle === 'front' ? 0 : 1;
    const { track } = model.axles[j]!;
    const onTires = (x[at.wheel + 2 * j]! - x[at.wheel + 2 * j + 1]!) / track;
    return (manoeuvre.lateral < 0 ? -1 : 1) * (x[at.roll(j)]! - onTires);
  },
  source: `roll angle less that of the wheels on their tires; ${asked}`,
  nonlinear: bends,
});
export const rollPerG = figure({
  path: 'roll.perG',
  scope: 'car',
  name: 'roll per g, from rest to the turn that is asked',
  label: 'roll per g, so far',
  symbol: 'phi/a',
  words: ['roll per g', 'roll gradient', 'roll rate per g', 'secant roll gradient'],
  dimension: 'angle',
  typical: { range: [0.035, 0.12], of: 'street 4 to 7 degrees, sport 2 to 4, race under 2; common practice, no source' },
  needs: { ...state, rest: restState },
  compute: ({ manoeuvre, state: { x }, rest }) =>
    (x[at.roll(0)]! + x[at.roll(1)]! - rest.state.x[at.roll(0)]! - rest.state.x[at.roll(1)]!) / 2 / manoeuvre.lateral,
  source: `change of roll from rest over the lateral g; ${asked}`,
  caution: rollCaution,
  nonlinear: bends,
});
export const rollPerGAtRest = figure({
  path: 'roll.perGAtRest',
  scope: 'car',
  name: 'roll per g, as the turn begins',
  label: 'roll per g, at first',
  symbol: 'dphi/da',
  words: ['roll per g at rest', 'initial roll gradient', 'tangent roll gradient', 'roll gradient at rest'],
  dimension: 'angle',
  needs: { rest: restState },
  compute: ({ rest }) => (rest.slopes[at.roll(0)]! + rest.slopes[at.roll(1)]!) / 2,
  source: `slope of the roll angle over lateral g, at none; ${model}`,
  nonlinear: bends,
});

export const loadInTurn = figure({
  path: 'cornering.load',
  scope: 'corner',
  name: 'load of the wheel in the turn',
  label: 'load in the turn',
  main: true,
  symbol: 'N',
  words: ['load in the turn', 'cornering load', 'wheel load in the turn', 'load', 'tire load in the turn', 'load at'],
  dimension: 'mass',
  needs: { ...state, axle: thisAxle, side: thisSide },
  compute: ({ state: { x }, axle, side }) => x[at.load + (axle === 'front' ? 0 : 2) + (side === 'left' ? 0 : 1)]! / g,
  source: `${asked}; 0: the wheel is off the ground`,
  nonlinear: bends,
});
export const parts = structure({
  path: 'cornering.parts',
  scope: 'car',
  name: 'what the load transfer is made of',
  needs: state,
  compute: ({ model, manoeuvre, state }): { readonly axles: readonly [AxleParts, AxleParts] } => ({
    axles: partsOf(model, manoeuvre, state.x),
  }),
  source: model,
});
const ofAxle = { parts, axle: thisAxle } as const;
const partly = (name: keyof AxleParts) => ({
  needs: ofAxle,
  compute: ({ parts, axle }: { parts: { readonly axles: readonly [AxleParts, AxleParts] }; axle: 'front' | 'rear' }): number =>
    parts.axles[axle === 'front' ? 0 : 1][name] / g,
});
export const transfer = figure({
  path: 'loadTransfer',
  scope: 'axle',
  name: 'lateral load transfer in the turn',
  label: 'load transfer',
  main: true,
  symbol: 'dN',
  words: ['load transfer', 'lateral load transfer', 'weight transfer', 'lateral weight transfer', 'transfer'],
  dimension: 'mass',
  ...partly('transfer'),
  source: `half of what the outer wheel gained on the inner; ${asked}`,
  nonlinear: bends,
});
export const transferUnsprung = figure({
  path: 'loadTransfer.unsprung',
  scope: 'axle',
  name: 'load transfer by the unsprung weight',
  label: 'by unsprung weight',
  symbol: 'dN_u',
  words: ['unsprung load transfer', 'unsprung transfer'],
  dimension: 'mass',
  ...partly('unsprung'),
  source: `its weight times its height over the track; ${asked}`,
});
export const transferGeometric = figure({
  path: 'loadTransfer.geometric',
  scope: 'axle',
  name: 'load transfer by the links, at once',
  label: 'by links, geometric',
  symbol: 'dN_g',
  words: ['geometric load transfer', 'geometric transfer', 'link load transfer'],
  dimension: 'mass',
  ...partly('geometric'),
  source: `lateral force of the sprung weight times roll center height over the track; ${asked}`,
});
export const transferElastic = figure({
  path: 'loadTransfer.elastic',
  scope: 'axle',
  name: 'load transfer by springs and bar',
  label: 'by springs and bar',
  symbol: 'dN_e',
  words: ['elastic load transfer', 'elastic transfer', 'spring load transfer'],
  dimension: 'mass',
  ...partly('elastic'),
  source: `without what gravity adds to it; ${asked}`,
  nonlinear: bends,
});
export const transferGravity = figure({
  path: 'loadTransfer.gravity',
  scope: 'axle',
  name: 'load transfer by the weight that moves sideways as the body rolls',
  label: 'by weight sideways',
  symbol: 'dN_y',
  words: ['gravity load transfer', 'gravity transfer'],
  dimension: 'mass',
  ...partly('gravity'),
  source: `sprung weight times its sideways shift, to the axles as springs and bars share the moment; ${asked}`,
  nonlinear: bends,
});
export const transferJacking = figure({
  path: 'loadTransfer.jacking',
  scope: 'axle',
  name: 'load transfer by jacking',
  label: 'by jacking',
  symbol: 'dN_j',
  words: ['jacking load transfer', 'jacking transfer'],
  dimension: 'mass',
  ...partly('jacking'),
  source: `what springs of unlike rate left and right make of the body's rise: their load transfer beyond that of the roll alone; ${asked}`,
  nonlinear: bends,
});
export const jacking = figure({
  path: 'cornering.jacking',
  scope: 'axle',
  name: 'lift of the body by the links in the turn',
  label: 'jacking force',
  symbol: 'F_j',
  words: ['jacking', 'jacking force'],
  dimension: 'force',
  needs: ofAxle,
  compute: ({ parts, axle }) => parts.axles[axle === 'front' ? 0 : 1].lift,
  source: `the outer tire carries more of the lateral force, so that its links lift more than the inner ones pull down; ${asked}`,
  nonlinear: bends,
});
const ends = { front: front(transfer), rear: rear(transfer) } as const;
export const transferShare = figure({
  path: 'loadTransfer.frontShare',
  scope: 'car',
  name: 'front share of the lateral load transfer',
  label: 'front transfer share',
  main: true,
  symbol: 'lambda',
  words: [
    'front share of load transfer',
    'front load transfer share',
    'load transfer share',
    'load transfer distribution',
    'lltd',
    'tlltd',
    'front lltd',
    'front share of lateral load transfer',
    'front share of weight transfer',
    'front weight transfer share',
    'lateral load transfer distribution',
    'front transfer share',
  ],
  dimension: 'ratio',
  needs: ends,
  compute: ({ front, rear }) => front / (front + rear),
  formula: 'front / (front + rear)',
  source: 'of all transfer: unsprung, links, springs and bars, gravity',
  nonlinear: bends,
});
export const elasticShare = figure({
  path: 'loadTransfer.elasticFrontShare',
  scope: 'car',
  name: 'front share of the load transfer by springs and bars',
  label: 'front elastic share',
  symbol: 'lambda_e',
  words: ['front share of elastic transfer', 'elastic transfer share', 'front elastic transfer share'],
  dimension: 'ratio',
  needs: { front: front(transferElastic), rear: rear(transferElastic) },
  compute: ({ front, rear }) => front / (front + rear),
  formula: 'front / (front + rear)',
  source: 'springs and bars alone',
  nonlinear: bends,
});

const side = (s: 'left' | 'right'): 0 | 1 => (s === 'left' ? 0 : 1);
const axleOf = (a: 'front' | 'rear'): 0 | 1 => (a === 'front' ? 0 : 1);
export const travelInTurn = figure({
  path: 'cornering.travel',
  scope: 'corner',
  name: 'bump travel in the turn',
  label: 'travel in the turn',
  symbol: 'u',
  words: ['travel in the turn', 'cornering travel', 'wheel travel in the turn'],
  dimension: 'length',
  needs: { model: cornerModel, state: cornerState, axle: thisAxle, side: thisSide },
  compute: ({ model, state: { x }, axle, side: s }) => bumpOf(model.axles[axleOf(axle)], axleOf(axle), side(s), x),
  source: `from where it stands, on a beam axle of its spring; droop is negative; ${asked}`,
  nonlinear: bends,
});
export const travelLeft = figure({
  path: 'cornering.travelLeft',
  scope: 'corner',
  name: 'bump travel left in the turn',
  label: 'travel left in turn',
  symbol: 'u_l',
  words: ['travel left in the turn', 'bump travel left in the turn'],
  dimension: 'length',
  needs: { model: cornerModel, travel: travelInTurn, axle: thisAxle, side: thisSide },
  compute: ({ model, travel, axle, side: s }) => {
    const contact = model.axles[axleOf(axle)].contact[side(s)];
    return Number.isFinite(contact)
      ? contact - travel
      : refuse('Where that wheel meets its bump stop, or its spring binds, is not known.', 'bumpStop.gap', 'spring.travel');
  },
  source: `until the bump stop or bind, whichever comes first; below 0 it is on its stop; ${asked}`,
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
  nonlinear: bends,
});
export const camberInTurn = figure({
  path: 'cornering.camber',
  scope: 'corner',
  name: 'camber under way in the turn',
  label: 'camber in the turn',
  symbol: 'gamma',
  words: ['camber in the turn', 'cornering camber', 'camber under way', 'dynamic camber'],
  dimension: 'angle',
  needs: { ...state, camber, gain: firstOf(gainOfArm, camberGain), axle: thisAxle, side: thisSide },
  compute: ({ model, state: { x }, camber, gain, axle, side: s }) =>
    camberAt(model.axles[axleOf(axle)], axleOf(axle), side(s), x, camber, gain),
  source: `against the road: camber at rest, roll of the body, and change of camber with travel; on a beam the roll of the axle; ${asked}`,
  nonlinear: bends,
});
export const useInTurn = figure({
  path: 'grip.use',
  scope: 'axle',
  name: 'use of its grip in the turn',
  label: 'grip used',
  symbol: 'U',
  words: ['grip use', 'use of grip', 'grip used'],
  dimension: 'ratio',
  needs: { ...state, axle: thisAxle },
  compute: ({ model, manoeuvre, state, axle }) => axleUse(model, manoeuvre, state, axleOf(axle)),
  source: `lateral force over what both wheels can give at their loads, friction ellipse; over 1 there is no steady state; ${asked}`,
  nonlinear: bends,
});
export const gripMargin = figure({
  path: 'grip.margin',
  scope: 'car',
  name: 'lateral acceleration left to the limit',
  label: 'margin to the limit',
  symbol: 'a_m',
  words: ['grip margin', 'margin to the limit', 'margin'],
  dimension: 'acceleration',
  needs: { limit: carLimit, lateral },
  compute: ({ limit, lateral }) => limit - lateral,
  formula: 'limit - lateral',
  source: 'below 0 the car does not hold the turn that is asked: there is no steady state',
});
