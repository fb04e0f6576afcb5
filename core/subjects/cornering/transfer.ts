/** What each wheel carries in the turn that is asked, the load that goes across and what it is made of: by the four-wheel equilibrium, or about one roll axis. */
import {
  firstOf,
  front,
  given,
  ifTold,
  inPractice,
  inverse,
  isRefusal,
  left,
  quantity,
  type Refusal,
  rear,
  refuse,
  right,
  structure,
  thisAxle,
  thisSide,
  way,
} from '../../catalog.js';
import { cornerMass } from '../mass/loads.js';
import { track } from '../mass/told.js';
import { unsprungCorner, weighedAxle, weighedTotal } from '../mass/weighed.js';
import { rollAngle } from '../roll/leaning.js';
import { rollAxis } from '../roll/rollAxis.js';
import { suspensionRollStiffness } from '../roll/stiffness.js';
import { rollCenterHeight, unsprungHeight } from '../suspension/told.js';
import { lateral, turn } from './asked.js';
import { askedTurn, bends, cgHeightNow, indexOf, inTheTurn, model, readOff, sideOf, steadyAlone } from './car.js';
import { type AxleParts, partsOf, sideForces } from './parts.js';
import { at } from './unknowns.js';

const g = 9.80665;
/** kg, of one axle: what the outer wheel gains. */
const saneTransfer = [0, 1500] as const;
/** Of a part, which may work the other way. */
const sanePart = [-1500, 1500] as const;
const toldTransfer = { usually: 'measured', measured: { relative: 0.03 }, spec: { relative: 0.06 } } as const;
const atNone = refuse('At no lateral g no load goes across, so that there is no part of it.', 'lateral');
const summed =
  'by unsprung weight, by roll centers, and the rest as roll stiffness is shared; Milliken, Race Car Vehicle Dynamics, ch. 18, from memory';

/** Both axles', or why the car has no state to take them from. */
interface Split {
  readonly found: readonly [AxleParts, AxleParts] | Refusal;
}
export const parts = structure({
  path: 'cornering.parts',
  scope: 'car',
  name: 'what the load transfer is made of',
  needs: inTheTurn,
  compute: ({ model, manoeuvre, held: { found } }): Split => ({ found: isRefusal(found) ? found : partsOf(model, manoeuvre, found.x) }),
  source: model,
});
const ofAxle = { parts, axle: thisAxle } as const;
const partOf = ({ parts: { found }, axle }: { parts: Split; axle: 'front' | 'rear' }, name: keyof AxleParts): number | Refusal =>
  isRefusal(found) ? found : found[indexOf(axle)][name];
const inKilograms = (force: number | Refusal): number | Refusal => (isRefusal(force) ? force : force / g);
const partly = (name: keyof AxleParts, source: string) =>
  way({ needs: ofAxle, compute: (is) => inKilograms(partOf(is, name)), source: `${source}; ${askedTurn}` });
const gained = 'half of what the outer wheel gained on the inner';

export const transferPerG = quantity({
  path: 'loadTransfer.perG',
  scope: 'axle',
  name: 'lateral load transfer per g',
  label: 'load transfer per g',
  symbol: 'dN/a',
  words: ['load transfer per g', 'lateral load transfer per g', 'weight transfer per g', 'transfer per g'],
  dimension: 'mass',
  sane: saneTransfer,
  told: toldTransfer,
  ways: [
    way({
      needs: { ...ofAxle, lateral },
      compute: ({ lateral, ...is }) => {
        const transfer = partOf(is, 'transfer');
        return isRefusal(transfer) ? transfer : lateral > 0 ? transfer / lateral : atNone;
      },
      source: `${gained}, over the lateral g; ${askedTurn}`,
    }),
    way({
      needs: {
        axis: rollAxis,
        front: front(suspensionRollStiffness),
        rear: rear(suspensionRollStiffness),
        track,
        axle: thisAxle,
        steady: steadyAlone,
      },
      compute: ({ axis, front, rear, track, axle }) => {
        if (!(front + rear > 0)) return refuse('There is no roll stiffness at either end to share the load.', 'front', 'rear');
        const share = (axle === 'front' ? front : rear) / (front + rear);
        return (axis.moment * share + axis.atOnce[indexOf(axle)]) / track / g;
      },
      source: summed,
      sort: 'model',
      basis: 'by share of roll stiffness, linear, rigid tires',
    }),
  ],
  nonlinear: bends,
});
const upright = {
  mass: weighedTotal,
  height: cgHeightNow,
  front: firstOf(front(track), rear(track)),
  rear: firstOf(rear(track), front(track)),
} as const;
const uprightSource = 'moments about the outer wheels, on the mean of both tracks';
const uprightBasis = 'weight times g times height over track, no roll';
export const carTransferPerG = quantity({
  path: 'loadTransfer.carPerG',
  scope: 'car',
  name: 'lateral load transfer of the car per g',
  label: 'load transfer per g',
  symbol: 'dN/a',
  words: ['load transfer per g', 'car load transfer per g', 'total load transfer per g', 'weight transfer per g'],
  dimension: 'mass',
  sane: [0, 3000],
  told: toldTransfer,
  ways: [
    way({
      needs: { front: front(transferPerG), rear: rear(transferPerG) },
      compute: ({ front, rear }) => front + rear,
      formula: 'front + rear',
      source: 'both axles',
      basis: 'both axles',
    }),
    way({
      needs: upright,
      compute: ({ mass, height, front, rear }) => (2 * mass * height) / (front + rear),
      formula: '2 * mass * height / (front + rear)',
      source: uprightSource,
      sort: 'model',
      basis: uprightBasis,
    }),
  ],
  nonlinear: bends,
});
export const transfer = quantity({
  path: 'loadTransfer',
  scope: 'axle',
  name: 'lateral load transfer in the turn',
  label: 'load transfer',
  main: true,
  symbol: 'dN',
  words: ['load transfer', 'lateral load transfer', 'weight transfer', 'lateral weight transfer', 'transfer'],
  dimension: 'mass',
  sane: saneTransfer,
  told: toldTransfer,
  typical: { range: [80, 300], of: 'road cars at 0.8 g; common practice, no source' },
  ways: [
    way({
      needs: { perG: ifTold(transferPerG), lateral },
      compute: ({ perG, lateral }) => (perG * lateral) / g,
      formula: 'perG * lateral / g',
      source: 'as told per g',
      basis: 'load transfer per g as told',
    }),
    partly('transfer', gained),
    way({
      needs: { perG: transferPerG, lateral },
      compute: ({ perG, lateral }) => (perG * lateral) / g,
      formula: 'perG * lateral / g',
      source: summed,
      sort: 'model',
    }),
  ],
  nonlinear: bends,
});
export const carTransfer = quantity({
  path: 'loadTransfer.car',
  scope: 'car',
  name: 'lateral load transfer of the car in the turn',
  label: 'load transfer',
  symbol: 'dN',
  words: ['load transfer', 'lateral load transfer', 'weight transfer', 'car load transfer', 'total load transfer'],
  dimension: 'mass',
  sane: [0, 3000],
  told: toldTransfer,
  ways: [
    way({
      needs: { perG: ifTold(carTransferPerG), lateral },
      compute: ({ perG, lateral }) => (perG * lateral) / g,
      formula: 'perG * lateral / g',
      source: 'as told per g',
      basis: 'load transfer per g as told',
    }),
    way({
      needs: { front: front(transfer), rear: rear(transfer) },
      compute: ({ front, rear }) => front + rear,
      formula: 'front + rear',
      source: 'both axles',
      basis: 'both axles',
    }),
    way({
      needs: { ...upright, lateral },
      compute: ({ mass, height, front, rear, lateral }) => (2 * mass * height * lateral) / ((front + rear) * g),
      formula: '2 * mass * height * lateral / ((front + rear) * g)',
      source: uprightSource,
      sort: 'model',
      basis: uprightBasis,
    }),
  ],
  nonlinear: bends,
});
const ends = { front: front(transfer), rear: rear(transfer), lateral } as const;
const shareOf = (front: number, rear: number, lateral: number): number | Refusal =>
  lateral > 0 && front + rear !== 0 ? front / (front + rear) : atNone;
const toldShare = { usually: 'spec', measured: { absolute: 0.02 }, spec: { absolute: 0.04 } } as const;
export const transferShare = quantity({
  path: 'loadTransfer.frontShare',
  percent: true,
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
  sane: [0, 1],
  told: toldShare,
  typical: { range: [0.45, 0.65], of: 'road cars, a few hundredths over the front share of the weight; common practice, no source' },
  ways: [
    way({
      needs: ends,
      compute: ({ front, rear, lateral }) => shareOf(front, rear, lateral),
      source: 'front over both; of all transfer: unsprung, links, springs and bars, gravity',
    }),
  ],
  nonlinear: bends,
});
inverse(transferPerG, {
  needs: { transfer: given(transfer), lateral },
  compute: ({ transfer, lateral }) => (lateral > 0 ? (transfer * g) / lateral : atNone),
  formula: 'transfer * g / lateral',
  source: 'the load transfer told, over the lateral g',
  basis: 'from the load transfer told',
});
inverse(transferPerG, {
  needs: { whole: given(carTransferPerG), share: given(transferShare), axle: thisAxle },
  compute: ({ whole, share, axle }) => whole * (axle === 'front' ? share : 1 - share),
  source: 'by definition',
  basis: 'of the whole and the front share told',
});
inverse(carTransferPerG, {
  needs: { whole: given(carTransfer), lateral },
  compute: ({ whole, lateral }) => (lateral > 0 ? (whole * g) / lateral : atNone),
  formula: 'whole * g / lateral',
  source: 'the load transfer told, over the lateral g',
  basis: 'from the load transfer told',
});

const unsprungBoth = { left: left(unsprungCorner), right: right(unsprungCorner) } as const;
export const transferUnsprung = quantity({
  path: 'loadTransfer.unsprung',
  scope: 'axle',
  name: 'load transfer by the unsprung weight',
  label: 'by unsprung weight',
  symbol: 'dN_u',
  words: ['unsprung load transfer', 'unsprung transfer'],
  dimension: 'mass',
  sane: saneTransfer,
  told: toldTransfer,
  ways: [
    partly('unsprung', 'its weight times its height over the track'),
    way({
      needs: { ...unsprungBoth, height: unsprungHeight, track, lateral },
      compute: ({ left, right, height, track, lateral }) => ((left + right) * height * lateral) / track / g,
      formula: '(left + right) * height * lateral / track / g',
      source: 'its weight times its height over the track',
    }),
  ],
});
export const transferGeometric = quantity({
  path: 'loadTransfer.geometric',
  scope: 'axle',
  name: 'load transfer by the links, at once',
  label: 'by links, geometric',
  symbol: 'dN_g',
  words: ['geometric load transfer', 'geometric transfer', 'link load transfer'],
  dimension: 'mass',
  sane: sanePart,
  ways: [
    partly('geometric', 'lateral force of the sprung weight times roll center height over the track'),
    way({
      needs: { axle: weighedAxle, ...unsprungBoth, center: rollCenterHeight, track, lateral },
      compute: ({ axle, left, right, center, track, lateral }) => ((axle - left - right) * center * lateral) / track / g,
      formula: '(axle - left - right) * center * lateral / track / g',
      source: 'sprung weight of the axle times roll center height over the track',
    }),
    way({
      needs: { axle: weighedAxle, center: rollCenterHeight, track, lateral },
      compute: ({ axle, center, track, lateral }) => (axle * center * lateral) / track / g,
      formula: 'axle * center * lateral / track / g',
      source: 'weight of the axle times roll center height over the track',
      basis: 'all weight sprung',
    }),
  ],
});
export const transferElastic = quantity({
  path: 'loadTransfer.elastic',
  scope: 'axle',
  name: 'load transfer by springs and bar',
  label: 'by springs and bar',
  symbol: 'dN_e',
  words: ['elastic load transfer', 'elastic transfer', 'spring load transfer'],
  dimension: 'mass',
  sane: sanePart,
  ways: [
    partly('elastic', 'without what gravity adds to it'),
    way({
      needs: { stiffness: suspensionRollStiffness, angle: rollAngle, track },
      compute: ({ stiffness, angle, track }) => (stiffness * angle) / track / g,
      formula: 'stiffness * angle / track / g',
      source: 'roll stiffness times roll angle over the track',
      sort: 'model',
      basis: 'rigid tires',
    }),
  ],
  nonlinear: bends,
});
export const transferGravity = quantity({
  path: 'loadTransfer.gravity',
  scope: 'axle',
  name: 'load transfer by the weight that moves sideways as the body rolls',
  label: 'by weight sideways',
  symbol: 'dN_y',
  words: ['gravity load transfer', 'gravity transfer'],
  dimension: 'mass',
  sane: sanePart,
  ways: [partly('gravity', 'sprung weight times its sideways shift, to the axles as springs and bars share the moment')],
  nonlinear: bends,
});
export const transferJacking = quantity({
  path: 'loadTransfer.jacking',
  scope: 'axle',
  name: 'load transfer by jacking',
  label: 'by jacking',
  symbol: 'dN_j',
  words: ['jacking load transfer', 'jacking transfer'],
  dimension: 'mass',
  sane: sanePart,
  ways: [
    partly(
      'jacking',
      "what springs of unlike rate left and right make of the body's rise: their load transfer beyond that of the roll alone",
    ),
  ],
  nonlinear: bends,
});
export const elasticShare = quantity({
  path: 'loadTransfer.elasticFrontShare',
  percent: true,
  typical: [inPractice('road cars', 0.45, 0.75)],
  scope: 'car',
  name: 'front share of the load transfer by springs and bars',
  label: 'front elastic share',
  symbol: 'lambda_e',
  words: ['front share of elastic transfer', 'elastic transfer share', 'front elastic transfer share'],
  dimension: 'ratio',
  sane: [0, 1],
  told: toldShare,
  ways: [
    way({
      needs: { front: front(transferElastic), rear: rear(transferElastic), lateral },
      compute: ({ front, rear, lateral }) => shareOf(front, rear, lateral),
      source: 'front over both; springs and bars alone',
    }),
  ],
  nonlinear: bends,
});

/** Whether the wheel stands on the outside of the turn. */
const isOuter = (turn: 'left' | 'right', side: 'left' | 'right'): boolean => turn !== side;
const inTheAir = refuse('More load goes across than the inner wheel carries: it is off the ground by then.', 'transfer');
const gains = (rest: number, transfer: number, outer: boolean, inner: number): number | Refusal =>
  inner < transfer ? inTheAir : outer ? rest + transfer : rest - transfer;
export const loadInTurn = quantity({
  path: 'cornering.load',
  scope: 'corner',
  name: 'load of the wheel in the turn',
  label: 'load in the turn',
  main: true,
  symbol: 'N',
  words: ['load in the turn', 'cornering load', 'wheel load in the turn', 'load', 'tire load in the turn', 'load at'],
  dimension: 'mass',
  sane: [0, 2000],
  told: toldTransfer,
  ways: [
    way({
      needs: { left: left(cornerMass), right: right(cornerMass), transfer: ifTold(transfer), turn, side: thisSide },
      compute: ({ left, right, transfer, turn, side }) =>
        gains(side === 'left' ? left : right, transfer, isOuter(turn, side), turn === 'left' ? left : right),
      source: 'what it carries at rest, and the load transfer told',
      basis: 'load transfer as told',
    }),
    way({
      needs: { ...inTheTurn, axle: thisAxle, side: thisSide },
      compute: ({ axle, side, ...is }) => readOff(is, (x) => x[at.load + 2 * indexOf(axle) + sideOf(side)]! / g),
      source: `${askedTurn}; 0: the wheel is off the ground`,
    }),
    way({
      needs: { axle: weighedAxle, transfer, turn, side: thisSide },
      compute: ({ axle, transfer, turn, side }) => gains(axle / 2, transfer, isOuter(turn, side), axle / 2),
      source: 'half of the axle, and the load transfer',
      sort: 'model',
      basis: 'half of the axle at rest',
    }),
  ],
  nonlinear: bends,
});

/** N. */
const saneForce = [-20_000, 20_000] as const;
export const sideForce = quantity({
  path: 'sideForce',
  scope: 'corner',
  name: 'side force of the tire in the turn, toward its inside',
  label: 'side force',
  symbol: 'F_y',
  words: ['side force', 'lateral tire force', 'cornering force'],
  dimension: 'force',
  sane: saneForce,
  ways: [
    way({
      needs: { ...inTheTurn, axle: thisAxle, side: thisSide },
      compute: ({ model, manoeuvre, axle, side, ...is }) =>
        readOff(is, (x) => (manoeuvre.lateral < 0 ? -1 : 1) * sideForces(model, manoeuvre, x, indexOf(axle))[sideOf(side)]),
      source: `each wheel gives as it can at its load; ${askedTurn}`,
    }),
  ],
  nonlinear: bends,
});
const byForces =
  'the outer tire gives more of the side force, so that its links lift more than the inner ones pull down: the difference at the slope of the links, roll center height over half the track';
export const jackingOfForces = quantity({
  path: 'cornering.jackingOfForces',
  scope: 'axle',
  name: 'lift of the body by the links, of the side forces of both tires',
  label: 'jacking, side forces',
  symbol: 'F_j',
  dimension: 'force',
  ways: [
    way({
      needs: { left: left(sideForce), right: right(sideForce), center: rollCenterHeight, track, turn },
      compute: ({ left, right, center, track, turn }) => ((turn === 'left' ? right - left : left - right) * 2 * center) / track,
      source: byForces,
      basis: 'side forces of both tires',
    }),
  ],
  nonlinear: bends,
});
export const jacking = quantity({
  path: 'cornering.jacking',
  scope: 'axle',
  name: 'lift of the body by the links in the turn',
  label: 'jacking force',
  symbol: 'F_j',
  words: ['jacking', 'jacking force'],
  dimension: 'force',
  sane: saneForce,
  ways: [
    way({
      needs: ofAxle,
      compute: (is) => partOf(is, 'lift'),
      source: `${byForces}; what the unsprung weight takes is not in it; ${askedTurn}`,
    }),
    way({
      needs: { forces: jackingOfForces },
      compute: ({ forces }) => forces,
      formula: 'forces',
      source: byForces,
      sort: 'model',
    }),
  ],
  nonlinear: bends,
});
