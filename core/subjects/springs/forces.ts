/** The one force law that everything else reads, from whatever is told of the springs, and the motion ratio that brings it to the wheel. */
import { figure, given, quantity, type Refusal, refine, refuse, structure, way } from '../../catalog.js';
import { leverRatio } from '../wheels/fit.js';
import { travelToBind } from './coilFigures.js';
import { type ForceLaw, forceAt, lawOfForces, lawOfRates, linearLaw, withBeside, withSeries } from './law.js';
import { evenRatio, type MotionRatio, ratioOfTable, withLever } from './motionRatio.js';
import * as told from './told.js';

const exact = 'by definition';
const hooke = "Hooke's law";
const series = 'springs in series: travels add';

/** The main spring as it is told. Of its axle one of rate, rates and forces is told; a corner's own spring comes before them. */
export const mainLaw = structure({
  path: 'spring.mainLaw',
  scope: 'corner',
  name: 'force law of the main spring',
  ways: [
    way({ needs: { rate: told.cornerSpringRate }, compute: ({ rate }): ForceLaw => linearLaw(rate), source: hooke }),
    way({ needs: { rates: told.springRates }, compute: ({ rates }) => lawOfRates(rates), source: 'force is the integral of the rate' }),
    way({ needs: { forces: told.springForces }, compute: ({ forces }) => lawOfForces(forces), source: exact }),
    way({ needs: { rate: told.springRate }, compute: ({ rate }): ForceLaw => linearLaw(rate), source: hooke }),
  ],
});
export const coilLaw = structure({
  path: 'spring.coilLaw',
  scope: 'corner',
  name: 'force law of the main spring, with one beside it',
  needs: { law: mainLaw, beside: told.besideRate, gap: told.besideGap },
  compute: ({ law, beside, gap }): ForceLaw => (beside > 0 ? withBeside(law, beside, gap) : law),
  source: 'springs side by side: forces add',
});
export const springLaw = structure({
  path: 'spring.law',
  scope: 'corner',
  name: 'force law of the spring, with its helper',
  ways: [
    way({
      needs: { law: coilLaw, helper: told.helperRate, closing: told.helperForce },
      compute: ({ law, helper, closing }) => withSeries(law, helper, closing),
      source: 'springs in series: travels add until the helper is closed',
    }),
    way({
      needs: { law: coilLaw, helper: told.helperRate },
      compute: (): ForceLaw | Refusal =>
        refuse(
          'A helper spring is fitted, and where it closes is not known: tell its travel or the force that closes it.',
          'helper.travel',
          'helper.force',
        ),
      source: 'springs in series',
    }),
    way({ needs: { law: coilLaw }, compute: ({ law }) => law, source: 'one spring' }),
  ],
});
const asTold = 'what was told of isolators is all there is';
const noneSpring = (): number | Refusal => refuse('No isolator is fitted at the spring.', 'isolator.thickness');
const nonePerch = (): number | Refusal => refuse('No isolator is fitted at the perch.', 'perchIsolator.thickness');
/** Says that there is one: switched on by what was told, never by a doubted thickness. */
export const isolatorFitted = quantity({
  path: 'isolator.fitted',
  scope: 'axle',
  name: 'stiffness of the isolator that is fitted at the spring',
  label: 'isolator stiffness',
  symbol: 'k_c',
  dimension: 'rate',
  ways: [
    way({
      needs: { thickness: given(told.isolatorThickness), rate: told.isolatorRate },
      compute: ({ thickness, rate }) => (thickness > 0 ? rate : noneSpring()),
      source: exact,
    }),
    way({ needs: { rate: given(told.isolatorRate) }, compute: ({ rate }) => rate, source: 'what has a stiffness is there' }),
    way({ needs: {}, compute: noneSpring, source: asTold }),
  ],
});
export const perchIsolatorFitted = quantity({
  path: 'perchIsolator.fitted',
  scope: 'axle',
  name: 'stiffness of the isolator that is fitted at the perch',
  label: 'perch isolator rate',
  symbol: 'k_p',
  dimension: 'rate',
  ways: [
    way({
      needs: { thickness: given(told.perchIsolatorThickness), rate: told.perchIsolatorRate },
      compute: ({ thickness, rate }) => (thickness > 0 ? rate : nonePerch()),
      source: exact,
    }),
    way({ needs: { rate: given(told.perchIsolatorRate) }, compute: ({ rate }) => rate, source: 'what has a stiffness is there' }),
    way({ needs: {}, compute: nonePerch, source: asTold }),
  ],
});
/** As heights see it: rubber that nobody told of was there before as well as it is now. */
export const seatedStack = structure({
  path: 'spring.seatedStack',
  scope: 'corner',
  name: 'force law of the spring with the isolators that were told',
  needs: {
    law: springLaw,
    isolator: refine(isolatorFitted, Number.POSITIVE_INFINITY, 'an isolator that gives'),
    perchIsolator: refine(perchIsolatorFitted, Number.POSITIVE_INFINITY, 'an isolator at the perch that gives'),
  },
  compute: ({ law, isolator, perchIsolator }): ForceLaw => {
    const padded = isolator === Number.POSITIVE_INFINITY ? law : withSeries(law, isolator);
    return perchIsolator === Number.POSITIVE_INFINITY ? padded : withSeries(padded, perchIsolator);
  },
  source: series,
});
/** N: the force under which rubber that was not told of is guessed. */
const guessedUnder = 1000;
export const untoldRubber = quantity({
  path: 'isolator.untold',
  scope: 'axle',
  name: 'squeeze under 1000 N of rubber at the spring that was not told of',
  label: 'rubber at the spring',
  symbol: 's_c',
  dimension: 'length',
  asks: { words: 'whether rubber sits at the spring', tell: told.isolatorThickness, as: 0 },
  ways: [
    way({ needs: { thickness: given(told.isolatorThickness) }, compute: () => 0, source: asTold }),
    way({ needs: { rate: given(told.isolatorRate) }, compute: () => 0, source: asTold }),
    way({ needs: { thickness: given(told.perchIsolatorThickness) }, compute: () => 0, source: asTold }),
    way({ needs: { rate: given(told.perchIsolatorRate) }, compute: () => 0, source: asTold }),
    way({
      needs: {},
      compute: () => 0,
      sort: 'estimate',
      within: { absolute: 0.0008 },
      error: 'common',
      source: 'springs in their own perches have none, springs of a standard car some that gives 0.5 to 1 mm; common practice, no source',
    }),
  ],
});
export const springStack = structure({
  path: 'spring.stack',
  scope: 'corner',
  name: 'force law of the spring with its isolators',
  needs: { stack: seatedStack, untold: refine(untoldRubber, 0) },
  compute: ({ stack, untold }): ForceLaw => (untold === 0 ? stack : withSeries(stack, guessedUnder / untold)),
  source: series,
});
export const bindForce = figure({
  path: 'spring.bindForce',
  scope: 'corner',
  name: 'spring force when it binds',
  label: 'force at bind',
  symbol: 'F_b',
  words: ['bind force', 'force at bind'],
  dimension: 'force',
  needs: { law: coilLaw, travel: travelToBind },
  compute: ({ law, travel }) => forceAt(law, travel),
  source: 'the force law at its last travel',
});

/** At the wheels that were on when it was measured. */
export const ratioAsMeasured = structure({
  path: 'spring.ratioAsMeasured',
  scope: 'axle',
  name: 'motion ratio over the travel, as measured',
  ways: [
    way({ needs: { table: told.springRatioTable }, compute: ({ table }) => ratioOfTable(table), source: exact }),
    way({
      needs: { ratio: told.springRatio, rise: refine(told.springRatioRise, 0, 'a motion ratio that changes') },
      compute: ({ ratio, rise }): MotionRatio => evenRatio(ratio, rise),
      source: exact,
    }),
  ],
});
/** The ratio as it was measured, and with the wheels that are on: a wheel that stands further out has a longer lever. */
export const motionRatio = structure({
  path: 'spring.motion',
  scope: 'axle',
  name: 'motion ratio over the travel',
  needs: { measured: ratioAsMeasured, lever: refine(leverRatio, 1, 'wheels that stand further out or in') },
  compute: ({ measured, lever }): MotionRatio => (lever === 1 ? measured : withLever(measured, lever)),
  source: "front-view geometry: MR' = MR e/(e + change of offset)",
});
