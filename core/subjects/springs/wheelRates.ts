/** What the springs make at the wheel: rates, with and without the tire, and the frequencies on them. Each can be told as well. */
import { given, inPractice, inverse, left, maybe, quantity, refine, refuse, right, way, wheels } from '../../catalog.js';
import { axleSprungMass, sprungMass } from '../mass/loads.js';
import { weighedSprung } from '../mass/weighed.js';
import { knee, onlyRate, ratioHere, ratioRiseHere, springForce } from '../ride/corner.js';
import { tireRate } from '../ride/told.js';
import { isolatorFitted, perchIsolatorFitted, ratioAsMeasured, springStack } from './forces.js';
import { compressionAt, rateAt, riseAt } from './law.js';
import { besideRate, helperRate, springRate, springRatioRise, springRatioTable } from './told.js';

const g = 9.80665;
const suspensionText = 'Barton & Fieldhouse, Automotive Chassis Engineering, eq. 3.33';
const series = 'springs in series: compliances add';
const oscillator = 'a mass on a spring, undamped';
const together = `${oscillator}; left and right together`;
/** N/m: from the softest of small cars to race cars with wings. */
const saneRate = [3000, 500_000] as const;
/** Hz. */
const saneFrequency = [0.5, 8] as const;
const byRate = 'spring rate times motion ratio squared';
const fromFrequency = 'from the ride frequency told';
const fromSpringFrequency = 'from the frequency told, no tire in it';

export const stackRate = quantity({
  path: 'corner.stackRate',
  scope: 'corner',
  name: 'spring rate at this height, with isolators',
  label: 'with isolators',
  symbol: 'k_s',
  dimension: 'rate',
  ways: [
    way({
      needs: { stack: springStack, force: springForce },
      compute: ({ stack, force }) => rateAt(stack, compressionAt(stack, force)),
      source: series,
    }),
    way({ needs: { stack: springStack }, compute: ({ stack }) => onlyRate(stack), source: 'one rate, whatever it carries' }),
  ],
  nonlinear: knee,
});

export const { axle: wheelRate, corner: cornerWheelRate } = wheels({
  path: 'wheelRate',
  corner: { words: ['wheel rate', 'corner wheel rate'] },
  over: 'mean',
  name: 'wheel rate',
  main: true,
  symbol: 'k_w',
  words: ['wheel rate', 'wheelrate', 'rate at the wheel'],
  dimension: 'rate',
  sane: saneRate,
  typical: [inPractice('street cars', 12_000, 30_000), inPractice('autocross and track cars', 25_000, 80_000)],
  ways: [
    way({
      needs: { spring: stackRate, ratio: ratioHere, force: springForce, rise: ratioRiseHere },
      compute: ({ spring, ratio, force, rise }) => {
        const rate = spring * ratio ** 2 + force * rise;
        return rate > 0 ? rate : refuse('The falling motion ratio takes away all of the wheel rate.', 'spring.ratioRise');
      },
      formula: 'spring * ratio^2 + force * rise',
      source: `${suspensionText}, with the term of a ratio that changes`,
      basis: byRate,
    }),
    way({
      // A rise that is only guessed is left out: what it adds goes with a weight that is not known, and would leave nothing to say.
      needs: { spring: stackRate, ratio: ratioHere, rise: refine(given(springRatioRise), 0), table: maybe(springRatioTable) },
      compute: ({ spring, ratio, rise, table }) =>
        rise === 0 && (table === undefined || table.x.length === 1)
          ? spring * ratio ** 2
          : refuse(
              'Where the motion ratio changes, the wheel rate depends on what the spring carries: tell the weight of the car.',
              'mass',
            ),
      source: suspensionText,
      basis: byRate,
    }),
  ],
  nonlinear: knee,
});
export const { axle: rideRate, corner: cornerRideRate } = wheels({
  path: 'rideRate',
  typical: [inPractice('street cars', 11_000, 28_000), inPractice('autocross and track cars', 22_000, 70_000)],
  corner: { words: ['ride rate', 'corner ride rate'], main: true },
  over: 'mean',
  name: 'ride rate, with tire',
  symbol: 'k_r',
  words: ['ride rate'],
  dimension: 'rate',
  sane: saneRate,
  ways: [
    way({
      needs: { wheel: cornerWheelRate, tire: tireRate },
      compute: ({ wheel, tire }) => (wheel * tire) / (wheel + tire),
      formula: 'wheel * tire / (wheel + tire)',
      source: series,
    }),
  ],
  nonlinear: knee,
});
export const cornerFrequency = quantity({
  path: 'corner.rideFrequency',
  typical: [inPractice('street cars', 1, 1.5), inPractice('autocross cars', 1.5, 2.2), inPractice('race cars without wings', 2, 2.5)],
  scope: 'corner',
  name: 'ride frequency, with tire',
  label: 'ride frequency',
  symbol: 'f',
  words: ['ride frequency', 'corner ride frequency'],
  dimension: 'frequency',
  sane: saneFrequency,
  ways: [
    way({
      needs: { rate: cornerRideRate, sprung: sprungMass },
      compute: ({ rate, sprung }) => Math.sqrt(rate / sprung) / (2 * Math.PI),
      formula: 'sqrt(rate / sprung) / (2 * pi)',
      source: oscillator,
      basis: 'on springs and tires',
    }),
    way({
      needs: { rate: cornerWheelRate, sprung: sprungMass },
      compute: ({ rate, sprung }) => Math.sqrt(rate / sprung) / (2 * Math.PI),
      formula: 'sqrt(rate / sprung) / (2 * pi)',
      source: oscillator,
      basis: 'no tire in it',
    }),
  ],
  nonlinear: knee,
});
export const rideFrequency = quantity({
  path: 'rideFrequency',
  scope: 'axle',
  name: 'ride frequency',
  main: true,
  symbol: 'f',
  words: ['ride frequency', 'frequency', 'ride', 'hz', 'natural frequency'],
  dimension: 'frequency',
  sane: saneFrequency,
  typical: [inPractice('road cars', 1, 1.5), inPractice('club cars', 1.5, 2.2), inPractice('race cars without wings', 2, 3)],
  ways: [
    way({
      needs: { left: left(cornerRideRate), right: right(cornerRideRate), sprung: axleSprungMass },
      compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
      formula: 'sqrt((left + right) / sprung) / (2 * pi)',
      source: `${together}, tires in series`,
      basis: 'on springs and tires',
    }),
    way({
      needs: { left: left(cornerWheelRate), right: right(cornerWheelRate), sprung: axleSprungMass },
      compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
      formula: 'sqrt((left + right) / sprung) / (2 * pi)',
      source: together,
      basis: 'no tire in it',
    }),
  ],
  nonlinear: knee,
});
export const springFrequency = quantity({
  path: 'springFrequency',
  typical: [
    inPractice('street cars', 1.05, 1.62),
    inPractice('autocross cars', 1.575, 2.376),
    inPractice('race cars without wings', 2.1, 2.7),
  ],
  scope: 'axle',
  name: 'ride frequency on the springs alone, no tire',
  label: 'frequency, no tire',
  symbol: 'f_w',
  words: ['spring frequency', 'frequency without tire', 'ride frequency without tire', 'ride frequency on spring'],
  dimension: 'frequency',
  sane: saneFrequency,
  ways: [
    way({
      needs: { left: left(cornerWheelRate), right: right(cornerWheelRate), sprung: axleSprungMass },
      compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
      formula: 'sqrt((left + right) / sprung) / (2 * pi)',
      source: together,
      basis: 'no tire in it',
    }),
  ],
  nonlinear: knee,
});

/** From the wheel up: what one spring alone has to have. The car's weight counts only where the motion ratio changes. */
inverse(springRate, {
  needs: {
    wheel: given(wheelRate),
    motion: ratioAsMeasured,
    left: maybe(left(weighedSprung)),
    right: maybe(right(weighedSprung)),
    isolator: refine(isolatorFitted, Number.POSITIVE_INFINITY, 'an isolator that gives'),
    perchIsolator: refine(perchIsolatorFitted, Number.POSITIVE_INFINITY, 'an isolator at the perch that gives'),
    beside: besideRate,
    helper: maybe(helperRate),
  },
  compute: ({ wheel, motion: { ratio, rise }, left, right, isolator, perchIsolator, beside, helper }) => {
    if (helper !== undefined || beside > 0) {
      return refuse(
        'With a helper or a second spring the wheel rate does not say the rate of one spring: tell the spring rate.',
        'spring.rate',
      );
    }
    if (rise !== 0 && (left === undefined || right === undefined)) {
      return refuse(
        'Where the motion ratio changes, the wheel rate depends on what the spring carries: tell the weight of the car.',
        'mass',
      );
    }
    const carried = rise === 0 ? 0 : ((left! + right!) / 2) * (g / ratio);
    const stack = (wheel - carried * rise) / ratio ** 2;
    const give = 1 / stack - 1 / isolator - 1 / perchIsolator;
    return stack > 0 && give > 0
      ? 1 / give
      : refuse('No spring makes that wheel rate: the isolators and the motion ratio alone leave less.', 'wheel', 'isolator', 'motion');
  },
  source: `${suspensionText}, the other way round`,
  basis: 'from the wheel rate',
});
// Up again. A frequency was told of the car as it was weighed: how it stands now rests on its springs, which would be a circle.
inverse(cornerRideRate, {
  needs: { frequency: given(cornerFrequency), sprung: weighedSprung },
  compute: ({ frequency, sprung }) => (2 * Math.PI * frequency) ** 2 * sprung,
  formula: '(2 * pi * frequency)^2 * sprung',
  source: oscillator,
  basis: fromFrequency,
});
inverse(rideRate, {
  needs: { frequency: given(rideFrequency), sprung: given(axleSprungMass) },
  compute: ({ frequency, sprung }) => ((2 * Math.PI * frequency) ** 2 * sprung) / 2,
  formula: '(2 * pi * frequency)^2 * sprung / 2',
  source: together,
  basis: fromFrequency,
});
inverse(rideRate, {
  needs: { frequency: given(rideFrequency), left: left(weighedSprung), right: right(weighedSprung) },
  compute: ({ frequency, left, right }) => ((2 * Math.PI * frequency) ** 2 * (left + right)) / 2,
  formula: '(2 * pi * frequency)^2 * (left + right) / 2',
  source: together,
  basis: fromFrequency,
});
const underTire = (ride: number, tire: number) =>
  tire > ride
    ? 1 / (1 / ride - 1 / tire)
    : refuse('The ride rate is no lower than the rate of the tire alone, which carries it too.', 'ride', 'tire');
inverse(cornerWheelRate, {
  needs: { ride: given(cornerRideRate), tire: refine(tireRate, Number.POSITIVE_INFINITY, 'tires that flex') },
  compute: ({ ride, tire }) => underTire(ride, tire),
  formula: '1 / (1 / ride - 1 / tire)',
  source: series,
  basis: 'from the ride rate',
});
inverse(wheelRate, {
  needs: { ride: given(rideRate), tire: refine(tireRate, Number.POSITIVE_INFINITY, 'tires that flex') },
  compute: ({ ride, tire }) => underTire(ride, tire),
  formula: '1 / (1 / ride - 1 / tire)',
  source: series,
  basis: 'from the ride rate',
});
inverse(wheelRate, {
  needs: { frequency: given(springFrequency), sprung: given(axleSprungMass) },
  compute: ({ frequency, sprung }) => ((2 * Math.PI * frequency) ** 2 * sprung) / 2,
  formula: '(2 * pi * frequency)^2 * sprung / 2',
  source: together,
  basis: fromSpringFrequency,
});
inverse(wheelRate, {
  needs: { frequency: given(springFrequency), left: left(weighedSprung), right: right(weighedSprung) },
  compute: ({ frequency, left, right }) => ((2 * Math.PI * frequency) ** 2 * (left + right)) / 2,
  formula: '(2 * pi * frequency)^2 * (left + right) / 2',
  source: together,
  basis: fromSpringFrequency,
});

export const { axle: rateRise, corner: rateRiseHere } = wheels({
  path: 'rateRise',
  over: 'mean',
  name: 'rise of the wheel rate per bump travel, part of itself',
  label: 'wheel rate rise',
  symbol: 'dk/k du',
  words: ['rate rise', 'rising rate', 'wheel rate rise'],
  dimension: 'ratioPerLength',
  sane: [-20, 100],
  ways: [
    way({
      needs: { stack: springStack, force: springForce, spring: stackRate, ratio: ratioHere, rise: ratioRiseHere, wheel: cornerWheelRate },
      compute: ({ stack, force, spring, ratio, rise, wheel }) =>
        (riseAt(stack, compressionAt(stack, force)) * ratio ** 3 + 3 * spring * ratio * rise) / wheel,
      source: 'derivative of the wheel rate along the travel; a kink of the motion ratio left out',
    }),
  ],
  nonlinear: knee,
});
