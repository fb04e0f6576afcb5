/** Where each end gives up, which one first, both ways; where wheels lift and meet their stops; and the understeer of the linear range. */
import {
  firstOf,
  front,
  given,
  ifTold,
  inPractice,
  isRefusal,
  left,
  quantity,
  type Refusal,
  rear,
  refuse,
  right,
  structure,
  thisAxle,
  way,
} from '../../catalog.js';
import type { Course } from '../../numeric/follow.js';
import { corneringStiffness, gripCoefficient } from '../grip/told.js';
import { cornerMass } from '../mass/loads.js';
import { track, wheelbase } from '../mass/told.js';
import { weighedAxle } from '../mass/weighed.js';
import { springRate } from '../springs/told.js';
import { complianceSteer } from '../suspension/told.js';
import { turn } from './asked.js';
import { axleGrip, bends, cgHeightNow, cornerModel, manoeuvre, model } from './car.js';
import { type LiftOffs, liftOffs } from './lifts.js';
import { axleLimit, stopContact } from './limits.js';
import { linearLimit } from './linearLimit.js';
import { mirrored } from './mirror.js';
import type { CornerModel, GripLaw, Manoeuvre } from './model.js';
import type { Reached } from './roots.js';
import { transferPerG } from './transfer.js';

const g = 9.80665;
const places = ['lf', 'rf', 'lr', 'rr'] as const;
const limitCaution = 'A closed course only, and never by aiming at a number: grip changes with surface, heat and tire.';
const hypothetical =
  'lateral acceleration at which the axle uses all of its grip, the other end taken to hold: the end with the higher one never gets there';
const directionOf = (asked: Manoeuvre): 1 | -1 => (asked.lateral < 0 ? -1 : 1);
/** Where an end gives up, or why it does not. */
interface Ended {
  readonly found: Reached | Refusal;
}
const ended = ({ model, manoeuvre, axle }: InTurn, way: 1 | -1, near: Ended | undefined): Ended => {
  const from = near && !isRefusal(near.found) ? near.found.course : undefined;
  return { found: axleLimit(model, axle === 'front' ? 0 : 1, directionOf(manoeuvre) === way ? 1 : -1, manoeuvre, from) };
};
interface InTurn {
  readonly model: CornerModel;
  readonly manoeuvre: Manoeuvre;
  readonly axle: 'front' | 'rear';
}
const limitOf = ({ found }: Ended): number | Refusal => (isRefusal(found) ? found : Math.abs(found.lateral) * g);
export const thisWayEnd = structure({
  path: 'cornering.end',
  scope: 'axle',
  name: 'where the axle has no more grip',
  needs: { model: cornerModel, manoeuvre, axle: thisAxle },
  compute: (is, near?: Ended) => ended(is, 1, near),
  source: model,
});
export const otherWayEnd = structure({
  path: 'cornering.endOtherWay',
  scope: 'axle',
  name: 'where the axle has no more grip the other way',
  needs: { model: cornerModel, manoeuvre, axle: thisAxle },
  compute: (is, near?: Ended): Ended =>
    mirrored(is.model) ? { found: refuse('Left and right are alike in this car, so that it turns both ways alike.') } : ended(is, -1, near),
  source: model,
});

/** m/s^2. */
const saneLimit = [0.5, 30] as const;
const toldLimit = { usually: 'measured', measured: { relative: 0.03 }, spec: { relative: 0.06 } } as const;
/** Loads and transfer are masses here. */
const linearGrip = (outer: number, inner: number, perG: number, grip: GripLaw): number =>
  linearLimit(outer * g, inner * g, perG * g, grip) * g;
const atRest = { left: left(cornerMass), right: right(cornerMass), turn } as const;
const asToldPerG = 'load transfer per g as told';
const byTransfer = 'where the grip at the loads of both wheels holds the axle no more';
export const axleLimitThisWay = quantity({
  path: 'limit',
  scope: 'axle',
  name: 'lateral limit of the axle',
  label: 'lateral limit',
  main: true,
  symbol: 'a*',
  words: ['limit', 'grip limit', 'lateral limit', 'axle limit'],
  dimension: 'acceleration',
  sane: saneLimit,
  told: toldLimit,
  typical: [inPractice('street tires, dry', 7, 11), inPractice('autocross street tires, dry', 9, 13)],
  ways: [
    way({
      needs: { perG: ifTold(transferPerG), ...atRest, grip: axleGrip },
      compute: ({ perG, left, right, turn, grip }) =>
        turn === 'left' ? linearGrip(right, left, perG, grip) : linearGrip(left, right, perG, grip),
      source: `${byTransfer}; the transfer told`,
      basis: asToldPerG,
    }),
    way({
      needs: { perG: ifTold(transferPerG), axle: weighedAxle, grip: axleGrip },
      compute: ({ perG, axle, grip }) => linearGrip(axle / 2, axle / 2, perG, grip),
      source: `${byTransfer}; the transfer told, left and right alike`,
      basis: asToldPerG,
    }),
    way({
      needs: { end: thisWayEnd },
      compute: ({ end }) => limitOf(end),
      source: `${hypothetical}; ${model}`,
    }),
    way({
      needs: { perG: transferPerG, axle: weighedAxle, grip: axleGrip },
      compute: ({ perG, axle, grip }) => linearGrip(axle / 2, axle / 2, perG, grip),
      source: `${byTransfer}; left and right alike, the transfer in proportion to the lateral g`,
      sort: 'model',
    }),
  ],
  caution: limitCaution,
  nonlinear: bends,
});
/** What a sum by grip alone leaves out, as numbers of their own: how a car is worked out is known only where it is asked for. */
const leftOut = (path: string, name: string, label: string, within: number) =>
  quantity({
    path,
    scope: 'car',
    name,
    label,
    symbol: 'e',
    dimension: 'ratio',
    asks: { words: 'how stiff its springs are', tell: springRate },
    ways: [
      way({
        needs: {},
        compute: () => 1,
        ...{ sort: 'model', within: { relative: within }, source: 'by the four-wheel equilibrium of realistic cars' },
      }),
    ],
  });
export const byGripAlone = leftOut('limit.byGripAlone', 'what load transfer does to a limit by grip alone', 'grip alone, part', 0.17);
export const byCircle = leftOut('alongLeft.byCircle', 'what wheels that give up early do to a friction circle', 'circle, part', 0.6);
export const carLimit = quantity({
  path: 'limit.car',
  scope: 'car',
  name: 'lateral limit of the car',
  label: 'lateral limit',
  main: true,
  symbol: 'a*',
  words: ['limit', 'grip limit', 'lateral limit', 'cornering limit', 'max lateral g', 'max lateral', 'cornering grip', 'lateral grip'],
  dimension: 'acceleration',
  sane: saneLimit,
  told: toldLimit,
  measure: 'A steady circle on a closed course, as fast as the car holds it: radius and time of a lap.',
  typical: [inPractice('street tires, dry', 7, 10), inPractice('autocross street tires, dry', 9, 12)],
  ways: [
    way({
      needs: { front: front(axleLimitThisWay), rear: rear(axleLimitThisWay) },
      compute: ({ front, rear }) => Math.min(front, rear),
      formula: 'min(front, rear)',
      source: 'of the end that gives up first; beyond it there is no steady state',
    }),
    way({
      needs: {
        front: firstOf(given(front(gripCoefficient)), given(rear(gripCoefficient))),
        rear: firstOf(given(rear(gripCoefficient)), given(front(gripCoefficient))),
        part: byGripAlone,
      },
      compute: ({ front, rear, part }) => Math.min(front, rear) * g * part,
      formula: 'min(front, rear) * g * part',
      source: 'every wheel uses all of its grip, whatever it carries: a little too much, since grip falls as load goes across',
      sort: 'model',
      basis: 'grip alone, no load transfer',
    }),
  ],
  caution: limitCaution,
  nonlinear: 'The lesser of two: near a tie its plus-or-minus is that of the one which is less now.',
});
const indexSource =
  'our own index, no standard one is known to us: how much later the rear gives up than the front, over the earlier of both: above 0 the front gives up first';
export const balanceIndex = quantity({
  path: 'balance',
  percent: true,
  scope: 'car',
  name: 'balance at the limit',
  main: true,
  symbol: 'B',
  words: ['balance', 'balance percent', 'handling balance', 'limit balance', 'rotation', 'understeer', 'oversteer', 'push', 'loose'],
  dimension: 'ratio',
  typical: { range: [-0.05, 0.15], of: 'road cars; common practice, no source' },
  sane: [-1, 1],
  ways: [
    way({
      needs: { front: front(axleLimitThisWay), rear: rear(axleLimitThisWay) },
      compute: ({ front, rear }) => (rear - front) / Math.min(front, rear),
      formula: '(rear - front) / min(front, rear)',
      source: indexSource,
    }),
  ],
  nonlinear: bends,
});
export const otherWayLimit = quantity({
  path: 'limit.otherWay',
  scope: 'axle',
  name: 'lateral limit of the axle the other way',
  label: 'limit the other way',
  symbol: 'a*',
  words: ['limit the other way', 'other limit'],
  dimension: 'acceleration',
  sane: saneLimit,
  told: toldLimit,
  ways: [
    way({
      needs: { end: otherWayEnd },
      compute: ({ end }) => limitOf(end),
      source: `in a turn the other way than asked; ${hypothetical}; ${model}`,
    }),
  ],
  caution: limitCaution,
  nonlinear: bends,
});
export const otherWayBalance = quantity({
  path: 'balance.otherWay',
  percent: true,
  typical: [inPractice('road cars push a little', -0.05, 0.15)],
  scope: 'car',
  name: 'balance at the limit the other way',
  label: 'balance other way',
  symbol: 'B',
  words: ['balance the other way', 'other balance', 'other balance percent'],
  dimension: 'ratio',
  sane: [-1, 1],
  ways: [
    way({
      needs: { front: front(otherWayLimit), rear: rear(otherWayLimit) },
      compute: ({ front, rear }) => (rear - front) / Math.min(front, rear),
      formula: '(rear - front) / min(front, rear)',
      source: indexSource,
    }),
  ],
  nonlinear: bends,
});

/** A wheel and the lateral acceleration, over g and without sign, at which it happens. */
export interface Happening {
  readonly wheel: (typeof places)[number];
  readonly lateral: number;
  /** Where the same of cars nearby is found from. */
  readonly course?: Course | undefined;
}
type Wheel = 0 | 1 | 2 | 3;
const courseAt = (
  near: { readonly first: Happening | undefined; readonly second: Happening | undefined } | undefined,
  wheel: Wheel,
): Course | undefined => near && [near.first, near.second].find((one) => one?.wheel === places[wheel])?.course;
const happens = (found: Reached | ReturnType<typeof refuse>, wheel: Wheel): Happening[] =>
  'refused' in found ? [] : [{ wheel: places[wheel], lateral: Math.abs(found.lateral), course: found.course }];
export const lifts = structure({
  path: 'cornering.lifts',
  scope: 'car',
  name: 'where the inner wheels leave the ground, and where the car goes over',
  needs: { model: cornerModel, manoeuvre },
  compute: ({ model, manoeuvre }, near?: LiftOffs) => liftOffs(model, manoeuvre, directionOf(manoeuvre), near),
  source: model,
});
/** What there is to say where no wheel lifts, or not that one. */
const staysDown = (which: string, { over }: LiftOffs): ReturnType<typeof refuse> =>
  refuse(
    Number.isFinite(over)
      ? `${which} leaves the ground before the car rolls over, at ${over.toFixed(2)} g.`
      : `${which} leaves the ground up to 3 g.`,
  );
const liftAt = (inner: number, perG: number): number | ReturnType<typeof refuse> =>
  perG > 0 ? (inner / perG) * g : refuse('No load goes across, so that no wheel lifts.', 'perG');
export const firstLift = quantity({
  path: 'lift.car',
  scope: 'car',
  name: 'lateral acceleration at which a wheel lifts',
  label: 'first wheel lifts at',
  main: true,
  symbol: 'a_l',
  words: ['wheel lift', 'lift', 'lift off', 'first lift', 'three wheel', 'wheel off the ground'],
  dimension: 'acceleration',
  sane: [1, 30],
  ways: [
    way({
      needs: { lifts },
      compute: ({ lifts }) => (lifts.lifts[0] ? lifts.lifts[0].lateral * g : staysDown('No wheel', lifts)),
      source: `on tires that would hold: beyond the limit of grip it is not reached; ${model}`,
    }),
  ],
  nonlinear: bends,
});
const halfOfAxle = 'half of the axle over the load transfer per g';
export const axleLift = quantity({
  path: 'lift',
  scope: 'axle',
  name: 'lateral acceleration at which the inner wheel of the axle lifts',
  label: 'inner wheel lifts at',
  symbol: 'a_l',
  words: ['wheel lift', 'lift', 'lift off', 'inner wheel lift'],
  dimension: 'acceleration',
  sane: [1, 30],
  ways: [
    way({
      needs: { perG: ifTold(transferPerG), ...atRest },
      compute: ({ perG, left, right, turn }) => liftAt(turn === 'left' ? left : right, perG),
      source: 'what the inner wheel carries over the load transfer per g told',
      basis: asToldPerG,
    }),
    way({
      needs: { perG: ifTold(transferPerG), axle: weighedAxle },
      compute: ({ perG, axle }) => liftAt(axle / 2, perG),
      source: halfOfAxle,
      basis: asToldPerG,
    }),
    way({
      needs: { lifts, axle: thisAxle },
      compute: ({ lifts, axle }) => {
        const own = lifts.lifts.find(({ wheel }) => wheel < 2 === (axle === 'front'));
        return own ? own.lateral * g : staysDown('No wheel of that axle', lifts);
      },
      source: `on tires that would hold: beyond the limit of grip it is not reached; ${model}`,
    }),
    way({
      needs: { perG: transferPerG, axle: weighedAxle },
      compute: ({ perG, axle }) => liftAt(axle / 2, perG),
      source: halfOfAxle,
      sort: 'model',
    }),
  ],
  nonlinear: bends,
});
export const rollover = quantity({
  path: 'rollover',
  scope: 'car',
  name: 'lateral acceleration at which the car would roll over',
  label: 'rolls over at',
  symbol: 'a_o',
  words: ['rollover', 'rollover threshold', 'rollover g'],
  dimension: 'acceleration',
  typical: { range: [11, 16], of: 'road cars; common practice, no source' },
  sane: [3, 40],
  ways: [
    way({
      needs: { lifts },
      compute: ({ lifts }) =>
        Number.isFinite(lifts.over) ? lifts.over * g : refuse('The car finds its balance in every steady turn up to 3 g.'),
      source: `the last steady turn: both inner wheels come off the ground there, or the springs no longer hold the body up; steady, level, nothing tripped over: curbs, ruts and quick steering take a car over sooner; ${model}`,
    }),
    way({
      needs: { height: cgHeightNow, front: firstOf(front(track), rear(track)), rear: firstOf(rear(track), front(track)) },
      compute: ({ height, front, rear }) => ((front + rear) * g) / (4 * height),
      formula: '(front + rear) * g / (4 * height)',
      source:
        'moments about the outer wheels, half of the mean track over the height (static stability factor); springs and tires let a car go over sooner',
      sort: 'model',
      basis: 'a rigid car',
    }),
  ],
  caution: 'No promise of safety: a curb, a rut or a quick swerve rolls a car over at less.',
  nonlinear: bends,
});
export interface Contacts {
  readonly first: Happening;
  readonly second: Happening | undefined;
}
/** A stop is no fact that is missing: it is not reached. */
const neverMet = (turn: LiftOffs | ReturnType<typeof refuse>): ReturnType<typeof refuse> =>
  refuse(
    'refused' in turn || !Number.isFinite(turn.over)
      ? 'No outer wheel meets its stop up to 3 g: it is not reached in a turn.'
      : `No outer wheel meets its stop before the limit: the car goes over at ${turn.over.toFixed(2)} g.`,
  );
export const contacts = structure({
  path: 'cornering.contacts',
  scope: 'car',
  name: 'where the outer wheels meet their stops',
  needs: { model: cornerModel, manoeuvre },
  compute: ({ model, manoeuvre }, near): Contacts | ReturnType<typeof refuse> => {
    const way = directionOf(manoeuvre);
    // As with lifts: a wheel that meets none in the car as it is isn't searched again for each doubt.
    const met = (wheel: Wheel): boolean => !near || [near.first, near.second].some((one) => one?.wheel === places[wheel]);
    const outer = (way === 1 ? ([1, 3] as const) : ([0, 2] as const)).filter(met);
    if (outer.every((wheel) => model.axles[wheel >> 1]!.contact[wheel & 1] === Number.POSITIVE_INFINITY))
      return refuse(
        'Neither the gap to a bump stop nor the travel until a spring binds is known.',
        'front.bumpStop.gap',
        'rear.bumpStop.gap',
        'front.spring.travel',
        'rear.spring.travel',
      );
    const found = outer
      .flatMap((wheel) => happens(stopContact(model, wheel, way, manoeuvre, courseAt(near, wheel)), wheel))
      .sort((a, b) => a.lateral - b.lateral);
    return found[0] ? { first: found[0], second: found[1] } : neverMet(liftOffs(model, manoeuvre, way));
  },
  source: model,
});
export const firstContact = quantity({
  path: 'stopContact',
  scope: 'car',
  name: 'lateral acceleration at which a wheel meets its stop',
  label: 'first stop is met at',
  symbol: 'a_s',
  words: ['stop contact', 'bump stop contact', 'bump stop in the turn', 'on the bump stop'],
  dimension: 'acceleration',
  sane: [0, 30],
  ways: [
    way({
      needs: { contacts },
      compute: ({ contacts }) => contacts.first.lateral * g,
      source: `bump stop or bind, of the outer wheels, on tires that would hold: beyond the limit of grip it is not reached; ${model}`,
    }),
  ],
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
  nonlinear: bends,
});

const linearRange = 'linear range of the tires, both of an axle alike; after Gillespie, from memory';
/** Said of what goes with one over the cornering stiffness of a tire. */
const overStiffness = 'One over a stiffness that may be a third off: the soft end moves it farther than the stiff one, and both count.';
export const slipPerG = quantity({
  path: 'slipPerG',
  typical: [inPractice('road cars', 0.03491, 0.1222)],
  scope: 'axle',
  name: 'slip angle of the axle per g',
  label: 'slip angle per g',
  symbol: 'W/C',
  words: ['slip angle per g', 'cornering compliance'],
  dimension: 'angle',
  sane: [0.005, 0.5],
  ways: [
    way({
      needs: { left: left(cornerMass), right: right(cornerMass), stiffness: corneringStiffness },
      compute: ({ left, right, stiffness }) => ((left + right) * g) / (2 * stiffness),
      formula: '(left + right) * g / (2 * stiffness)',
      source: linearRange,
    }),
    way({
      needs: { axle: weighedAxle, stiffness: corneringStiffness },
      compute: ({ axle, stiffness }) => (axle * g) / (2 * stiffness),
      formula: 'axle * g / (2 * stiffness)',
      source: linearRange,
    }),
  ],
  nonlinear: overStiffness,
});
export const understeerGradient = quantity({
  path: 'understeer',
  scope: 'car',
  name: 'understeer gradient per g, tires alone',
  label: 'understeer gradient',
  main: true,
  symbol: 'K',
  words: ['understeer gradient', 'understeer per g', 'steer gradient'],
  dimension: 'angle',
  typical: { range: [0, 0.09], of: 'road cars 1 to 5 degrees per g; common practice, no source' },
  sane: [-0.3, 0.3],
  ways: [
    way({
      needs: { front: front(slipPerG), rear: rear(slipPerG) },
      compute: ({ front, rear }) => front - rear,
      formula: 'front - rear',
      source: `of the linear range, well below the limit, and no measure of the limit; ${linearRange}`,
    }),
  ],
  nonlinear: overStiffness,
});
export const understeerWithCompliance = quantity({
  path: 'understeer.withCompliance',
  typical: [inPractice('road cars', 0.01745, 0.1222)],
  scope: 'car',
  name: 'understeer gradient per g, with compliance steer',
  label: 'understeer, compliance',
  symbol: 'K',
  words: ['understeer gradient with compliance', 'total understeer gradient'],
  dimension: 'angle',
  sane: [-0.3, 0.3],
  ways: [
    way({
      needs: { tires: understeerGradient, front: front(complianceSteer), rear: rear(complianceSteer) },
      compute: ({ tires, front, rear }) => tires + front - rear,
      formula: 'tires + front - rear',
      source: 'after Gillespie, from memory',
    }),
  ],
  nonlinear: overStiffness,
});
export const characteristicSpeed = quantity({
  path: 'understeer.characteristicSpeed',
  scope: 'car',
  name: 'characteristic speed',
  symbol: 'v_ch',
  words: ['characteristic speed'],
  dimension: 'speed',
  sane: [5, 300],
  ways: [
    way({
      needs: { gradient: understeerGradient, wheelbase },
      compute: ({ gradient, wheelbase }) =>
        gradient > 0
          ? Math.sqrt((wheelbase * g) / gradient)
          : refuse(
              'Only a car that understeers in the linear range has a characteristic speed.',
              'front.tire.cornering',
              'rear.tire.cornering',
            ),
      source: 'sqrt(wheelbase g/gradient): there the steer for a radius is twice that of a crawl; after Gillespie, from memory',
    }),
  ],
  nonlinear: 'It grows without end as the gradient goes to nothing: a doubt that gets there is taken from its other side.',
});
export const criticalSpeed = quantity({
  path: 'understeer.criticalSpeed',
  scope: 'car',
  name: 'critical speed',
  symbol: 'v_c',
  words: ['critical speed'],
  dimension: 'speed',
  sane: [5, 300],
  ways: [
    way({
      needs: { gradient: understeerGradient, wheelbase },
      compute: ({ gradient, wheelbase }) =>
        gradient < 0
          ? Math.sqrt((wheelbase * g) / -gradient)
          : refuse('Only a car that oversteers in the linear range has a critical speed.', 'front.tire.cornering', 'rear.tire.cornering'),
      source: 'sqrt(wheelbase g/-gradient): above it such a car does not run straight by itself; after Gillespie, from memory',
    }),
  ],
  caution: 'A car that oversteers in the linear range swerves by itself above this speed.',
  nonlinear: 'It grows without end as the gradient goes to nothing: a doubt that gets there is taken from its other side.',
});
export const staticMargin = quantity({
  path: 'understeer.staticMargin',
  typical: [inPractice('road cars', 0, 0.12)],
  scope: 'car',
  name: 'static margin',
  symbol: 'SM',
  words: ['static margin'],
  dimension: 'ratio',
  sane: [-0.5, 0.5],
  ways: [
    way({
      needs: {
        lf: front(left(cornerMass)),
        rf: front(right(cornerMass)),
        lr: rear(left(cornerMass)),
        rr: rear(right(cornerMass)),
        front: front(corneringStiffness),
        rear: rear(corneringStiffness),
      },
      compute: ({ lf, rf, lr, rr, front, rear }) => rear / (front + rear) - (lr + rr) / (lf + rf + lr + rr),
      formula: 'rear / (front + rear) - (lr + rr) / (lf + rf + lr + rr)',
      source:
        'how far behind the center of gravity a side force acts that turns the car neither way, over the wheelbase; after Abe, from memory',
    }),
  ],
});
