/** Spring forces, rates and travel at each wheel, at the height at which this car stands. */
import { figure, given, inPractice, inverse, refine, refuse, way, wheels } from '../../catalog.js';
import { sprungMass } from '../mass/loads.js';
import { bindForce, coilLaw, motionRatio, springLaw, springStack } from '../springs/forces.js';
import { compressionAt, type ForceLaw, forceAt, rateAt, withSeries } from '../springs/law.js';
import { ratioAt, ratioRise, springTravel, wheelTravel } from '../springs/motionRatio.js';
import { helperRate } from '../springs/told.js';
import { travelSince } from './standing.js';
import { bump, springLoad } from './told.js';

const g = 9.80665;
const definition = 'by definition';
export const knee =
  'It steps where a helper closes or a stepped rate changes; a doubt that reaches across the step is taken from its two ends and may be too wide or too narrow.';
const noRatio = 'The motion ratio falls to nothing at this height.';

export const rideRatio = figure({
  path: 'corner.rideRatio',
  scope: 'corner',
  name: 'motion ratio at ride height',
  label: 'motion ratio at rest',
  symbol: 'MR_0',
  dimension: 'ratio',
  needs: { motion: motionRatio, travel: refine(travelSince, 0) },
  compute: ({ motion, travel }) => {
    const ratio = ratioAt(motion, travel);
    return ratio > 0 ? ratio : refuse(noRatio, 'spring.ratio', 'spring.ratioRise');
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
export const { axle: ratioOfAxle, corner: ratioHere } = wheels({
  path: 'motionRatio',
  over: 'mean',
  corner: { words: ['motion ratio', 'corner motion ratio'] },
  name: 'motion ratio at this height',
  label: 'motion ratio here',
  symbol: 'MR',
  words: ['motion ratio', 'motion ratio at this height', 'mr'],
  dimension: 'ratio',
  sane: [0.15, 1.6],
  typical: [inPractice('struts and live axles', 0.85, 1), inPractice('wishbones and links', 0.45, 0.85)],
  ways: [
    way({
      needs: { motion: motionRatio, travel: refine(travelSince, 0), bump: refine(bump, 0) },
      compute: ({ motion, travel, bump }) => {
        const ratio = ratioAt(motion, travel + bump);
        return ratio > 0 ? ratio : refuse(noRatio, 'spring.ratio', 'spring.ratioRise');
      },
      source: 'change of spring length over wheel travel',
    }),
  ],
});
export const ratioRiseHere = figure({
  path: 'corner.ratioRise',
  scope: 'corner',
  name: 'rise of the motion ratio in bump',
  label: 'motion ratio rise',
  symbol: 'dMR/du',
  dimension: 'ratioPerLength',
  needs: { motion: motionRatio, travel: refine(travelSince, 0), bump: refine(bump, 0) },
  compute: ({ motion, travel, bump }) => ratioRise(motion, travel + bump),
  source: definition,
});

export const { axle: axleSpringForce, corner: springForce } = wheels({
  path: 'springForce',
  over: 'mean',
  corner: { words: ['spring force', 'spring load', 'corner spring force'] },
  name: 'spring force',
  symbol: 'F_s',
  words: ['spring force', 'spring load'],
  dimension: 'force',
  sane: [1, 60000],
  ways: [
    way({ needs: { load: springLoad }, compute: ({ load }) => load, formula: 'load', source: 'as asked' }),
    way({
      needs: { stack: springStack, motion: motionRatio, carried: carriedForce, bump, travel: refine(travelSince, 0) },
      compute: ({ stack, motion, carried, bump, travel }) =>
        forceAt(stack, compressionAt(stack, carried) + springTravel(motion, travel + bump) - springTravel(motion, travel)),
      source: 'the force law after the spring travel that the motion ratio makes of the bump',
    }),
    way({ needs: { carried: carriedForce }, compute: ({ carried }) => carried, formula: 'carried', source: 'at ride height' }),
  ],
  nonlinear: knee,
});
export const { axle: axleSpringCompression, corner: springCompression } = wheels({
  path: 'springCompression',
  over: 'mean',
  corner: { words: ['spring compression', 'compression', 'corner spring compression'] },
  name: 'spring compression',
  symbol: 'x',
  words: ['spring compression', 'compression'],
  dimension: 'length',
  sane: [0.0005, 0.5],
  ways: [
    way({
      needs: { law: springLaw, force: springForce },
      compute: ({ law, force }) => compressionAt(law, force),
      source: 'the inverse of the force law, which for a progressive spring is not force over rate',
    }),
  ],
  nonlinear: knee,
});
inverse(springForce, {
  needs: { law: springLaw, compression: given(springCompression) },
  compute: ({ law, compression }) => forceAt(law, compression),
  source: 'the force law',
  basis: 'from the compression told',
});

/** The rate of a spring that has only one, whatever it carries. */
export const onlyRate = (law: ForceLaw) =>
  law.rate.length === 1 && law.rise[0] === 0
    ? rateAt(law, 0)
    : refuse(
        'The rate of that spring depends on what it carries: tell the weight of the car, or the load on the spring.',
        'mass',
        'springLoad',
      );
export const { axle: axleSpringRate, corner: springRateHere } = wheels({
  path: 'springRateHere',
  typical: [inPractice('street cars', 15_000, 50_000), inPractice('autocross and track cars', 40_000, 140_000)],
  over: 'mean',
  corner: {
    path: 'corner.springRate',
    words: ['spring rate at this height', 'tangent rate', 'corner spring rate at this height'],
  },
  name: 'spring rate at this height',
  label: 'spring at this height',
  main: true,
  symbol: 'k',
  words: ['spring rate at this height', 'rate', 'tangent rate', 'tangent spring rate', 'spring rate at ride height', 'spring rate here'],
  dimension: 'rate',
  sane: [500, 1e6],
  ways: [
    way({
      needs: { law: springLaw, compression: springCompression },
      compute: ({ law, compression }) => rateAt(law, compression),
      source: 'tangent of the force law, never its average',
    }),
    way({ needs: { law: springLaw }, compute: ({ law }) => onlyRate(law), source: 'one rate, whatever it carries' }),
    way({
      needs: { law: coilLaw, helper: helperRate },
      compute: ({ law, helper }) => onlyRate(withSeries(law, helper)),
      source: 'springs in series: compliances add',
      basis: 'until one of them goes solid',
    }),
  ],
  nonlinear: knee,
});
export const bindTravel = figure({
  path: 'corner.bindTravel',
  scope: 'corner',
  name: 'bump travel until the spring binds',
  label: 'bump until bind',
  symbol: 'u_b',
  words: ['travel to coil bind', 'corner bind travel'],
  dimension: 'length',
  needs: { stack: springStack, motion: motionRatio, force: carriedForce, bind: bindForce, travel: refine(travelSince, 0) },
  compute: ({ stack, motion, force, bind, travel }) =>
    wheelTravel(motion, travel, compressionAt(stack, bind) - compressionAt(stack, force)),
  source: 'spring travel through the motion ratio; below 0 the spring is bound at ride height',
  nonlinear: knee,
});
