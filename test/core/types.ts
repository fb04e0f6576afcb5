/** What the compiler must refuse: each line that expects an error has one, or `npm run types`, which is the test, fails. */
import {
  choice,
  figure,
  front,
  given,
  higher,
  inverse,
  left,
  maybe,
  quantity,
  rear,
  refine,
  refuse,
  structure,
  way,
  wheels,
} from '../../core/catalog.js';
import * as small from './small.js';

const step = { name: 'x', symbol: 'x', dimension: 'ratio' } as const;
const rest = { name: 'x', symbol: 'x', dimension: 'ratio', source: 'x' } as const;

export const wrong = (): unknown[] => [
  // @ts-expect-error a misspelled entry
  figure({ ...rest, path: 'a', scope: 'axle', needs: { spring: small.sprnig }, compute: () => 1 }),
  // @ts-expect-error a need that is not asked for
  figure({ ...rest, path: 'b', scope: 'axle', needs: { spring: small.spring }, compute: ({ ratio }) => ratio }),
  // @ts-expect-error an axle's entry is two things, seen from the car
  figure({ ...rest, path: 'c', scope: 'car', needs: { spring: small.spring }, compute: () => 1 }),
  // @ts-expect-error a corner's entry is two things, seen from the axle
  figure({ ...rest, path: 'd', scope: 'axle', needs: { camber: small.camber }, compute: () => 1 }),
  // @ts-expect-error only an axle's entry turns to the front
  front(small.camber),
  // @ts-expect-error only a corner's entry turns to the left
  left(small.spring),
  // @ts-expect-error only a gear has a higher gear
  higher(small.mass),
  // @ts-expect-error the car cannot read one gear's ratio
  figure({ ...rest, path: 'e', scope: 'car', needs: { gear: small.gear }, compute: () => 1 }),
  // @ts-expect-error what may be missing has to be looked at first
  figure({ ...rest, path: 'f', scope: 'axle', needs: { base: maybe(small.base) }, compute: ({ base }) => base * 2 }),
  // @ts-expect-error a word that is no option
  figure({ ...rest, path: 'g', scope: 'axle', needs: { kind: small.kind }, compute: ({ kind }) => (kind === 'sideways' ? 1 : 2) }),
  // @ts-expect-error a figure is a number
  figure({ ...rest, path: 'h', scope: 'car', needs: {}, compute: () => 'long' }),
  // @ts-expect-error a dimension that does not exist
  figure({ ...rest, path: 'i', scope: 'car', dimension: 'heaviness', needs: {}, compute: () => 1 }),
  choice({
    path: 'j',
    scope: 'car',
    name: 'x',
    words: ['x'],
    measure: 'x',
    options: ['yes', 'no'],
    // @ts-expect-error an estimate that is no option
    estimate: { needs: {}, compute: () => 'perhaps' as const, source: 'x' },
  }),
  choice({
    path: 'o',
    scope: 'car',
    name: 'x',
    words: ['x'],
    measure: 'x',
    options: ['yes', 'no'],
    // @ts-expect-error words for an option that there is not
    optionWords: { perhaps: ['maybe'] },
  }),
  quantity({
    path: 'k',
    scope: 'car',
    name: 'x',
    words: ['x'],
    dimension: 'ratio',
    sane: [0, 1],
    measure: 'x',
    told: small.told,
    // @ts-expect-error an estimate without the width of its doubt
    estimate: { needs: {}, compute: () => 1, source: 'x' },
  }),
  // @ts-expect-error a way that is a guess, without the width of its doubt
  way({ needs: {}, compute: () => 1, sort: 'estimate', source: 'x' }),
  // @ts-expect-error only a guess is a constant
  way({ needs: {}, compute: () => 1, constant: true, source: 'x' }),
  // @ts-expect-error a need that is not asked for
  way({ needs: { spring: small.spring }, compute: ({ ratio }) => ratio, source: 'x' }),
  // @ts-expect-error what may be missing has to be looked at first
  way({ needs: { base: maybe(small.base) }, compute: ({ base }) => base * 2, source: 'x' }),
  // @ts-expect-error what stands for a missing number is a number
  way({ needs: { base: refine(small.base, 'none') }, compute: ({ base }) => base, source: 'x' }),
  // @ts-expect-error a way of a number gives a number
  quantity({ ...step, path: 'p', scope: 'car', ways: [way({ needs: {}, compute: () => 'long', source: 'x' })] }),
  quantity({
    ...step,
    path: 'q',
    scope: 'car',
    // @ts-expect-error the car cannot read one corner
    ways: [way({ needs: { camber: small.camber }, compute: ({ camber }) => camber, source: 'x' })],
  }),
  quantity({
    ...step,
    path: 'r',
    scope: 'car',
    ways: [
      way({ needs: { mass: small.mass }, compute: ({ mass }) => mass, source: 'x' }),
      // @ts-expect-error nor can any of several ways
      way({ needs: { spring: small.spring }, compute: ({ spring }) => spring, source: 'x' }),
    ],
  }),
  // @ts-expect-error what has words can be told, and says what is sane
  quantity({ ...step, path: 's', scope: 'car', words: ['s'], ways: [] }),
  // @ts-expect-error the ways of twins are those of a wheel, which has no car around its gear
  wheels({ ...step, path: 't', over: 'mean', ways: [way({ needs: { gear: small.gear }, compute: ({ gear }) => gear, source: 'x' })] }),
  // @ts-expect-error the mean or the sum
  wheels({ ...step, path: 'u', over: 'product', ways: [] }),
  // @ts-expect-error an inverse gives what the entry is: a number
  inverse(small.spring, { needs: { rate: given(small.wheelRate) }, compute: () => 'stiff', source: 'x' }),
  // @ts-expect-error an inverse reads what the entry can read
  inverse(small.mass, { needs: { rate: given(small.wheelRate) }, compute: ({ rate }) => rate, source: 'x' }),
  // @ts-expect-error an option that there is not
  way({ needs: { kind: given(small.kind) }, compute: ({ kind }) => (kind === 'sideways' ? 1 : 2), source: 'x' }),
  // @ts-expect-error a structure is no number
  structure({ path: 'v', scope: 'car', name: 'x', ways: [way({ needs: {}, compute: () => 1, source: 'x' })] }),
];

/** What it must accept, with the types that come out. */
export const right = (): unknown[] => [
  figure({
    ...rest,
    path: 'l',
    scope: 'car',
    needs: { f: front(small.spring), r: rear(left(small.camber)) },
    compute: ({ f, r }) => f + r,
  }),
  figure({
    ...rest,
    path: 'm',
    scope: 'corner',
    needs: { spring: small.spring, mass: small.mass },
    compute: ({ spring, mass }) => spring / mass,
  }),
  figure({ ...rest, path: 'n', scope: 'axle', needs: { kind: small.kind }, compute: ({ kind }) => (kind === 'beam' ? 1 : 2) }),
  quantity({
    ...step,
    path: 'w',
    scope: 'axle',
    words: ['w'],
    sane: [0, 1],
    ways: [
      way({
        needs: { spring: small.spring, base: refine(small.base, 0, 'a base') },
        compute: ({ spring, base }) => spring * base,
        source: 'x',
      }),
      way({ needs: { left: left(small.camber) }, compute: ({ left }) => (left > 0 ? left : refuse('No.')), source: 'x' }),
      way({ needs: {}, compute: () => 1, within: { relative: 0.1 }, sort: 'estimate', constant: true, source: 'x' }),
    ],
  }),
  structure({
    path: 'x',
    scope: 'corner',
    name: 'x',
    ways: [
      way({ needs: { law: small.forceLaw }, compute: ({ law }) => ({ full: law.atFull() }), source: 'x' }),
      way({ needs: { camber: small.camber }, compute: ({ camber }) => ({ full: camber }), source: 'x' }),
    ],
  }),
  // The corner's path follows from the axle's, and both are numbers.
  ((): number => {
    const { axle, corner } = wheels({
      ...step,
      path: 'y',
      over: 'sum',
      ways: [way({ needs: { c: small.camber }, compute: ({ c }) => c, source: 'x' })],
    });
    const paths: readonly ['y', 'corner.y'] = [axle.path, corner.path];
    return paths.length;
  })(),
];
