/** Where the springs of an axle stand, by its kind. */
import { quantity, refuse, structure, type Told } from '../../catalog.js';
import { axleKind } from '../layout/told.js';
import { track } from '../mass/told.js';

const taped: Told = { usually: 'measured', measured: { absolute: 0.005 }, spec: { absolute: 0.01 } };

const itself = {};
/** Known where the axle is a beam, and where it is not: what only one kind of axle needs is asked of that kind alone. */
export const beamAxle = structure({
  path: 'axle.beam',
  scope: 'axle',
  name: 'a beam axle',
  needs: { kind: axleKind },
  compute: ({ kind }) => (kind === 'beam' ? itself : refuse('The axle is no beam.', 'axle.kind')),
  source: 'the kind of axle',
});
export const independentAxle = structure({
  path: 'axle.independent',
  scope: 'axle',
  name: 'an axle whose wheels move alone',
  needs: { kind: axleKind },
  compute: ({ kind }) => (kind === 'beam' ? refuse('The axle is a beam.', 'axle.kind') : itself),
  source: 'the kind of axle',
});
export const springBase = quantity({
  path: 'spring.base',
  scope: 'axle',
  name: 'distance between the springs of a beam axle',
  label: 'spring spacing',
  symbol: 't_s',
  words: ['spring base', 'spring spacing', 'distance between the spring'],
  dimension: 'length',
  sane: [0.3, 1.8],
  step: { inch: 0.0254, metric: 0.01 },
  told: taped,
  measure: 'From the middle of one spring to the middle of the other, where they stand on the axle.',
  estimate: { needs: { track }, compute: ({ track }) => 0.7 * track, within: { relative: 0.15 }, source: 'common practice, no source' },
});
