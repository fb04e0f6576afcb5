/** How far the body rolls in the turn that is asked, and per g: by the four-wheel equilibrium, or about one roll axis. */
import { given, ifTold, inPractice, inverse, maybe, quantity, refuse, thisAxle, way } from '../../catalog.js';
import { lateral } from '../cornering/asked.js';
import { askedTurn, bends, indexOf, inTheTurn, model, readOff, restState, steadyAlone } from '../cornering/car.js';
import { at } from '../cornering/unknowns.js';
import { rollMoment } from './rollAxis.js';
import { carRollStiffness } from './stiffness.js';

const g = 9.80665;
const rollCaution = 'Past about 6 degrees of roll the small-angle model reads short.';
const degree = Math.PI / 180;
const plainRoll = 'one roll axis, rigid tires';
const atNone = refuse('At no lateral g there is no roll to take a part of.', 'lateral');
/** rad per g. */
const sanePerG = [0, 0.35] as const;
const toldPerG = { usually: 'measured', measured: { relative: 0.06 }, spec: { relative: 0.15 } } as const;
const linear = 'moment about the roll axis over the roll stiffness of springs and bars; after Gillespie, from memory';
const restless = refuse('The car does not come to rest on its springs with these facts.');
const soft = refuse('There is no roll stiffness to hold the body.', 'stiffness');

/** Of both ends, mean. */
const rollOf = (x: Float64Array): number => (x[at.roll(0)]! + x[at.roll(1)]!) / 2;

export const rollPerG = quantity({
  path: 'roll.perG',
  scope: 'car',
  name: 'roll per g, from rest to the turn that is asked',
  label: 'roll per g, so far',
  symbol: 'phi/a',
  words: ['roll per g', 'roll gradient', 'roll rate per g', 'secant roll gradient'],
  dimension: 'angle',
  sane: sanePerG,
  told: toldPerG,
  measure: 'From a photo taken square from behind in a steady turn: the angle of the body, over the lateral g.',
  typical: [
    inPractice('road cars', 4 * degree, 7 * degree),
    inPractice('club cars', 2 * degree, 4 * degree),
    inPractice('race cars', 0.5 * degree, 2 * degree),
  ],
  ways: [
    way({
      needs: { ...inTheTurn, rest: maybe(restState) },
      compute: ({ manoeuvre, rest, ...is }) => {
        if (manoeuvre.lateral === 0) return atNone;
        return rest ? readOff(is, (x) => (rollOf(x) - rollOf(rest.state.x)) / manoeuvre.lateral) : restless;
      },
      source: `change of roll from rest over the lateral g; ${askedTurn}`,
    }),
    way({
      needs: { moment: rollMoment, stiffness: carRollStiffness, steady: steadyAlone },
      compute: ({ moment, stiffness }) => (stiffness > 0 ? moment / stiffness : soft),
      formula: 'moment / stiffness',
      source: linear,
      sort: 'model',
      basis: plainRoll,
    }),
  ],
  caution: rollCaution,
  nonlinear: bends,
});
export const rollAngle = quantity({
  path: 'roll.angle',
  scope: 'car',
  name: 'roll angle in the turn',
  label: 'roll angle',
  main: true,
  symbol: 'phi',
  words: ['roll', 'roll angle', 'body roll', 'lean', 'lean angle', 'less roll'],
  dimension: 'angle',
  sane: [-0.35, 0.35],
  told: { usually: 'measured', measured: { absolute: 0.004 }, spec: { absolute: 0.009 } },
  measure: 'From a photo taken square from behind in a steady turn, against the same at rest.',
  typical: { range: [0.017, 0.09], of: 'road cars to race cars; common practice, no source' },
  ways: [
    way({
      needs: { perG: ifTold(rollPerG), lateral },
      compute: ({ perG, lateral }) => (perG * lateral) / g,
      formula: 'perG * lateral / g',
      source: 'as told per g',
      basis: 'roll per g as told',
    }),
    way({
      needs: inTheTurn,
      compute: ({ manoeuvre, ...is }) => readOff(is, (x) => (manoeuvre.lateral < 0 ? -1 : 1) * rollOf(x)),
      source: `of the body against the road, tires included, mean of both ends; ${askedTurn}`,
    }),
    way({
      needs: { perG: rollPerG, lateral },
      compute: ({ perG, lateral }) => (perG * lateral) / g,
      formula: 'perG * lateral / g',
      source: linear,
      sort: 'model',
    }),
  ],
  caution: rollCaution,
  nonlinear: bends,
});
inverse(rollPerG, {
  needs: { angle: given(rollAngle), lateral },
  compute: ({ angle, lateral }) => (lateral > 0 ? (angle * g) / lateral : atNone),
  formula: 'angle * g / lateral',
  source: 'the roll angle told, over the lateral g',
  basis: 'from the roll angle told',
});
export const elasticRoll = quantity({
  path: 'roll.onSprings',
  typical: [inPractice('street cars at 0.8 g', 0.04363, 0.08727), inPractice('autocross and sporty cars at 0.8 g', 0.02094, 0.05236)],
  scope: 'axle',
  name: 'roll of the body on its suspension',
  label: 'roll on springs',
  symbol: 'phi_s',
  words: ['roll on spring', 'elastic roll', 'suspension roll'],
  dimension: 'angle',
  sane: [-0.35, 0.35],
  told: { usually: 'measured', measured: { absolute: 0.004 }, spec: { absolute: 0.009 } },
  ways: [
    way({
      needs: { ...inTheTurn, axle: thisAxle },
      compute: ({ model, manoeuvre, axle, ...is }) => {
        const j = indexOf(axle);
        const onTires = (x: Float64Array): number => (x[at.wheel + 2 * j]! - x[at.wheel + 2 * j + 1]!) / model.axles[j].track;
        return readOff(is, (x) => (manoeuvre.lateral < 0 ? -1 : 1) * (x[at.roll(j)]! - onTires(x)));
      },
      source: `roll angle less that of the wheels on their tires; ${askedTurn}`,
    }),
    way({
      needs: { angle: rollAngle },
      compute: ({ angle }) => angle,
      formula: 'angle',
      source: 'the roll angle',
      sort: 'model',
      basis: 'rigid tires',
    }),
  ],
  nonlinear: bends,
});
export const rollPerGAtRest = quantity({
  path: 'roll.perGAtRest',
  typical: [
    inPractice('street cars', 0.06981, 0.1222),
    inPractice('autocross and sporty cars', 0.03491, 0.06981),
    inPractice('race cars', 0.008727, 0.03491),
  ],
  scope: 'car',
  name: 'roll per g, as the turn begins',
  label: 'roll per g, at first',
  symbol: 'dphi/da',
  words: ['roll per g at rest', 'initial roll gradient', 'tangent roll gradient', 'roll gradient at rest'],
  dimension: 'angle',
  sane: sanePerG,
  told: toldPerG,
  ways: [
    way({
      needs: { rest: restState },
      compute: ({ rest }) => (rest.slopes[at.roll(0)]! + rest.slopes[at.roll(1)]!) / 2,
      source: `slope of the roll angle over lateral g, at none; ${model}`,
    }),
  ],
  nonlinear: bends,
});
