/**
 * Plain sums of a turn: one body that leans about one roll axis through both roll centers, on rigid tires, the lean itself moving no weight sideways
 * (moments about the axis; Milliken, Race Car Vehicle Dynamics, ch. 18, from memory). The four-wheel equilibrium is what these leave out.
 */
import { front, given, left, quantity, rear, refuse, right, structure, way } from '../../catalog.js';
import { cgHeightNow } from '../cornering/car.js';
import { unsprungCorner, weighedAxle, weighedTotal } from '../mass/weighed.js';
import { rollCenterHeight, unsprungHeight } from '../suspension/told.js';

const g = 9.80665;

export interface RollAxis {
  /** Weight that leans, N. */
  readonly weight: number;
  /** Moment about the axis, N m per g. */
  readonly moment: number;
  /** What the links and the unsprung weight carry across at once, front and rear, N m per g. */
  readonly atOnce: readonly [number, number];
}
const weights = { front: front(weighedAxle), rear: rear(weighedAxle) } as const;
const unsprungBoth = {
  lf: front(left(unsprungCorner)),
  rf: front(right(unsprungCorner)),
  lr: rear(left(unsprungCorner)),
  rr: rear(right(unsprungCorner)),
} as const;
const centers = { frontCenter: front(rollCenterHeight), rearCenter: rear(rollCenterHeight) } as const;
const unsprungTooMuch = refuse('The unsprung weight of an axle is more than the axle carries.', 'front', 'rear');
const moments = 'moments about the axis through both roll centers';
export const rollAxis = structure({
  path: 'roll.axis',
  scope: 'car',
  name: 'how the weight stands about the roll axis',
  ways: [
    way({
      needs: {
        ...weights,
        ...unsprungBoth,
        ...centers,
        frontHeight: front(unsprungHeight),
        rearHeight: rear(unsprungHeight),
        height: cgHeightNow,
      },
      compute: (is) => {
        const unsprung = [(is.lf + is.rf) * g, (is.lr + is.rr) * g] as const;
        const sprung = [is.front * g - unsprung[0], is.rear * g - unsprung[1]] as const;
        if (!(sprung[0] > 0 && sprung[1] > 0)) return unsprungTooMuch;
        const atOnce = [
          unsprung[0] * is.frontHeight + sprung[0] * is.frontCenter,
          unsprung[1] * is.rearHeight + sprung[1] * is.rearCenter,
        ] as const;
        const made: RollAxis = {
          weight: sprung[0] + sprung[1],
          moment: (is.front + is.rear) * g * is.height - atOnce[0] - atOnce[1],
          atOnce,
        };
        return made;
      },
      source: moments,
      basis: 'sprung weight about the roll centers',
    }),
    way({
      needs: { ...weights, ...centers, height: cgHeightNow },
      compute: (is): RollAxis => {
        const weight = (is.front + is.rear) * g;
        const atOnce = [is.front * g * is.frontCenter, is.rear * g * is.rearCenter] as const;
        return { weight, moment: weight * is.height - atOnce[0] - atOnce[1], atOnce };
      },
      source: `${moments}; all weight sprung`,
      basis: 'whole weight about the roll centers',
    }),
    way({
      needs: { mass: weighedTotal, height: cgHeightNow },
      compute: ({ mass, height }): RollAxis => ({ weight: mass * g, moment: mass * g * height, atOnce: [0, 0] }),
      source: 'moments about a roll axis on the ground; all weight sprung',
      basis: 'roll axis on the ground',
    }),
  ],
});
export const rollArm = quantity({
  path: 'roll.arm',
  scope: 'car',
  name: 'height of the weight that leans above the roll axis',
  label: 'arm of roll',
  symbol: 'h_phi',
  words: ['roll arm', 'roll moment arm', 'roll couple', 'arm about the roll axis'],
  dimension: 'length',
  sane: [0.05, 1],
  ways: [
    way({
      needs: { axis: rollAxis },
      compute: ({ axis: { moment, weight } }) => moment / weight,
      source: 'moment about the roll axis over the weight that leans',
    }),
  ],
});
/** The same with the arm as told, where the heights that it follows from are not. */
export const rollMoment = quantity({
  path: 'roll.moment',
  scope: 'car',
  name: 'moment of the weight about the roll axis at 1 g',
  label: 'roll moment at 1 g',
  symbol: 'M_phi',
  words: ['roll moment', 'roll moment per g'],
  dimension: 'torque',
  sane: [100, 40_000],
  ways: [
    way({
      needs: { arm: given(rollArm), ...weights, ...unsprungBoth },
      compute: ({ arm, front, rear, lf, rf, lr, rr }) => {
        const sprung = front + rear - lf - rf - lr - rr;
        return sprung > 0 ? sprung * g * arm : unsprungTooMuch;
      },
      formula: '(front + rear - lf - rf - lr - rr) * g * arm',
      source: 'sprung weight times the arm told',
      basis: 'sprung weight at the arm told',
    }),
    way({
      needs: { arm: given(rollArm), mass: weighedTotal },
      compute: ({ arm, mass }) => mass * g * arm,
      formula: 'mass * g * arm',
      source: 'weight times the arm told',
      basis: 'weight at the arm told',
    }),
    way({ needs: { axis: rollAxis }, compute: ({ axis }) => axis.moment, source: moments }),
  ],
});
