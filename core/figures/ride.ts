/** Spring forces, rates and travel at each wheel, at the height at which this car stands. */
import { figure, firstOf, maybe, refuse } from '../catalog.js';
import { bump, springLoad } from '../inputs/ride.js';
import { compressionAt, forceAt, rateAt } from '../springs/law.js';
import { ratioAt, ratioRise, springTravel, wheelTravel } from '../springs/motionRatio.js';
import { sprungMass } from './loads.js';
import { bindForce, motionRatio, springLaw, springStack } from './springs.js';
import { travelSince } from './standing.js';

const g = 9.80665;
const definition = 'by definition';
export const knee =
  'It steps where a helper closes or a stepped rate changes; a doubt that reaches across the step is taken from its two ends and may be too wide or too narrow.';

export const rideRatio = figure({
  path: 'corner.rideRatio',
  scope: 'corner',
  name: 'motion ratio at ride height',
  label: 'motion ratio at rest',
  symbol: 'MR_0',
  dimension: 'ratio',
  needs: { motion: motionRatio, travel: maybe(travelSince) },
  compute: ({ motion, travel }) => {
    const ratio = ratioAt(motion, travel ?? 0);
    return ratio > 0 ? ratio : refuse('The motion ratio falls to nothing at this height.', 'spring.ratio', 'spring.ratioRise');
  },
  source: 'change of spring length over wheel travel',
});
export const carriedForce = figure({
  path: 'corner.carriedForce',
  scope: 'corner',
  name: 'spring force that carries the car',
  label: 'spring carries',
  symbol: 'F_0',
  dimension: 'force',
  needs: { sprung: sprungMass, ratio: rideRatio },
  compute: ({ sprung, ratio }) => (sprung * g) / ratio,
  formula: 'sprung * g / ratio',
  source: 'virtual work; the bar and rubber bushings left out',
});
export const ratioHere = figure({
  path: 'corner.motionRatio',
  scope: 'corner',
  name: 'motion ratio at this height',
  label: 'motion ratio here',
  symbol: 'MR',
  words: ['motion ratio', 'corner motion ratio'],
  dimension: 'ratio',
  typical: { range: [0.5, 1], of: 'road cars; common practice, no source' },
  needs: { motion: motionRatio, travel: maybe(travelSince), bump: maybe(bump) },
  compute: ({ motion, travel = 0, bump = 0 }) => {
    const ratio = ratioAt(motion, travel + bump);
    return ratio > 0 ? ratio : refuse('The motion ratio falls to nothing at this height.', 'spring.ratio', 'spring.ratioRise');
  },
  source: 'change of spring length over wheel travel',
});
export const ratioRiseHere = figure({
  path: 'corner.ratioRise',
  scope: 'corner',
  name: 'rise of the motion ratio in bump',
  label: 'motion ratio rise',
  symbol: 'dMR/du',
  dimension: 'ratioPerLength',
  needs: { motion: motionRatio, travel: maybe(travelSince), bump: maybe(bump) },
  compute: ({ motion, travel = 0, bump = 0 }) => ratioRise(motion, travel + bump),
  source: definition,
});
export const forceAtBump = figure({
  path: 'corner.forceAtBump',
  scope: 'corner',
  name: 'spring force at this bump travel',
  label: 'force at this bump',
  symbol: 'F_u',
  dimension: 'force',
  needs: { stack: springStack, motion: motionRatio, carried: carriedForce, bump, travel: maybe(travelSince) },
  compute: ({ stack, motion, carried, bump, travel = 0 }) =>
    forceAt(stack, compressionAt(stack, carried) + springTravel(motion, travel + bump) - springTravel(motion, travel)),
  source: 'the force law after the spring travel that the motion ratio makes of the bump',
  nonlinear: knee,
});
export const springForce = figure({
  path: 'corner.springForce',
  scope: 'corner',
  name: 'spring force',
  symbol: 'F_s',
  words: ['spring force', 'spring load', 'corner spring force'],
  dimension: 'force',
  needs: { force: firstOf(springLoad, forceAtBump, carriedForce) },
  compute: ({ force }) => force,
  formula: 'force',
  source: 'as asked, at the bump asked, or at ride height',
  nonlinear: knee,
});
export const springCompression = figure({
  path: 'corner.springCompression',
  scope: 'corner',
  name: 'spring compression',
  symbol: 'x',
  words: ['spring compression', 'compression', 'corner spring compression'],
  dimension: 'length',
  needs: { law: springLaw, force: springForce },
  compute: ({ law, force }) => compressionAt(law, force),
  source: 'the inverse of the force law, which for a progressive spring is not force over rate',
  nonlinear: knee,
});
export const springRateHere = figure({
  path: 'corner.springRate',
  scope: 'corner',
  name: 'spring rate at this height',
  label: 'spring at this height',
  main: true,
  symbol: 'k',
  words: ['spring rate at this height', 'tangent rate', 'corner spring rate at this height'],
  dimension: 'rate',
  needs: { law: springLaw, compression: springCompression },
  compute: ({ law, compression }) => rateAt(law, compression),
  source: 'tangent of the force law, never its average',
  nonlinear: knee,
});
export const looseTravel = figure({
  path: 'corner.droopTravel',
  scope: 'corner',
  name: 'droop travel until the spring is loose',
  label: 'droop until loose',
  symbol: 'u_d',
  words: ['droop travel', 'corner droop travel', 'droop'],
  dimension: 'length',
  needs: { stack: springStack, motion: motionRatio, force: carriedForce, travel: maybe(travelSince) },
  compute: ({ stack, motion, force, travel }) => {
    const bump = wheelTravel(motion, travel ?? 0, -compressionAt(stack, force));
    return typeof bump === 'number' ? -bump : bump;
  },
  source: 'spring travel through the motion ratio; a droop stop may come first',
});
export const bindTravel = figure({
  path: 'corner.bindTravel',
  scope: 'corner',
  name: 'bump travel until the spring binds',
  label: 'bump until bind',
  symbol: 'u_b',
  words: ['travel to coil bind', 'corner bind travel'],
  dimension: 'length',
  needs: { stack: springStack, motion: motionRatio, force: carriedForce, bind: bindForce, travel: maybe(travelSince) },
  compute: ({ stack, motion, force, bind, travel }) =>
    wheelTravel(motion, travel ?? 0, compressionAt(stack, bind) - compressionAt(stack, force)),
  source: 'spring travel through the motion ratio; below 0 the spring is bound at ride height',
  nonlinear: knee,
});
