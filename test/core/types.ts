/** What the compiler must refuse: each line that expects an error has one, or `npm run types`, which is the test, fails. */
import { choice, figure, front, higher, left, maybe, quantity, rear } from '../../core/catalog.js';
import * as small from './small.js';

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
];
