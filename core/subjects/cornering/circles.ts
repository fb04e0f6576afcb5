/** Small figures of corners: speed and grip on a circle, a slalom, steer angles, grip shared between braking and turning. */
import {
  firstOf,
  front,
  given,
  inPractice,
  isRefusal,
  maybe,
  quantity,
  type Refusal,
  rear,
  refuse,
  structure,
  way,
} from '../../catalog.js';
import { brakeShareNow } from '../braking/brakes.js';
import { type CornerBraking, cornerBraking } from '../braking/inTurn.js';
import { roadSpeed } from '../gearing/told.js';
import { gripCoefficient } from '../grip/told.js';
import { track, wheelbase } from '../mass/told.js';
import { brakeLift } from '../suspension/links.js';
import * as asked from './asked.js';
import { byCircle, carLimit } from './balance.js';
import { cornerModel } from './car.js';
import type { CornerModel } from './model.js';

const g = 9.80665;
const circle = 'steady motion on a circle';
/** m/s. */
const saneSpeed = [0.5, 120] as const;
const closed = 'A closed course only: nobody drives a number on a road.';

/** Speed at which a car that can hold `lateral` (m/s^2) on the level stays on a banked circle. */
const bankedSpeed = (lateral: number, radius: number, bank: number): number => {
  const mu = lateral / g;
  const [up, down] = [Math.sin(bank) + mu * Math.cos(bank), Math.cos(bank) - mu * Math.sin(bank)];
  return down > 0 && up > 0 ? Math.sqrt((radius * g * up) / down) : Number.NaN;
};
const bankSource = `${circle}; banked by theta: v^2 = R g (sin theta + mu cos theta)/(cos theta - mu sin theta), mu the lateral g of the level`;
const bankRefusal = refuse('On that bank the road itself holds the car at any speed, or none does.', 'bank');

export const cornerSpeed = quantity({
  path: 'cornerSpeed',
  scope: 'car',
  name: 'speed in the corner at the lateral acceleration that is asked',
  label: 'speed in the corner',
  symbol: 'v',
  words: ['corner speed', 'cornering speed', 'speed in the corner', 'speed around', 'speed'],
  dimension: 'speed',
  sane: saneSpeed,
  ways: [
    way({
      needs: { lateral: asked.lateral, radius: asked.radius, bank: asked.bank },
      compute: ({ lateral, radius, bank }) => {
        const speed = bankedSpeed(lateral, radius, bank);
        return Number.isFinite(speed) ? speed : bankRefusal;
      },
      source: bankSource,
    }),
  ],
  caution: closed,
});
export const cornerSpeedLimit = quantity({
  path: 'cornerSpeed.limit',
  scope: 'car',
  name: 'speed in the corner at the limit of the car',
  label: 'corner speed at limit',
  symbol: 'v*',
  words: ['corner speed limit', 'top corner speed', 'max corner speed', 'limit speed'],
  dimension: 'speed',
  sane: saneSpeed,
  ways: [
    way({
      needs: { limit: carLimit, radius: asked.radius, bank: asked.bank },
      compute: ({ limit, radius, bank }) => {
        const speed = bankedSpeed(limit, radius, bank);
        return Number.isFinite(speed) ? speed : bankRefusal;
      },
      source: bankSource,
    }),
  ],
  caution: closed,
});
export const lateralNeeded = quantity({
  path: 'lateralNeeded',
  scope: 'car',
  name: 'lateral acceleration at that speed and radius',
  label: 'lateral g needed',
  symbol: 'a_y',
  words: ['lateral needed', 'lateral g needed', 'grip needed', 'g needed', 'mu needed'],
  dimension: 'acceleration',
  sane: [0, 60],
  ways: [
    way({
      needs: { speed: roadSpeed, radius: asked.radius },
      compute: ({ speed, radius }) => speed ** 2 / radius,
      formula: 'speed^2 / radius',
      source: circle,
    }),
  ],
});
export const lateralOfCircle = quantity({
  path: 'lateralOfCircle',
  scope: 'car',
  name: 'lateral acceleration of a timed circle',
  label: 'lateral g of circle',
  symbol: 'a_y',
  words: ['skidpad', 'skidpad g', 'skid pad', 'circle g', 'lateral of the circle'],
  dimension: 'acceleration',
  sane: [0, 60],
  ways: [
    way({
      needs: { time: asked.circleTime, radius: asked.radius },
      compute: ({ time, radius }) => radius * ((2 * Math.PI) / time) ** 2,
      formula: 'radius * (2 * pi / time)^2',
      source: `${circle}; the radius is that of the path of the car's middle`,
    }),
  ],
});
export const slalomSpeed = quantity({
  path: 'slalomSpeed',
  scope: 'car',
  name: 'speed through a slalom at the lateral acceleration that is asked',
  label: 'speed in the slalom',
  symbol: 'v',
  words: ['slalom speed', 'slalom', 'speed in the slalom'],
  dimension: 'speed',
  sane: saneSpeed,
  ways: [
    way({
      needs: { spacing: asked.coneSpacing, swing: asked.slalomSwing, lateral: asked.lateral },
      compute: ({ spacing, swing, lateral }) => (spacing / Math.PI) * Math.sqrt(lateral / swing),
      formula: 'spacing / pi * sqrt(lateral / swing)',
      source:
        'a sine path y = A sin(pi x/s), whose sharpest curvature is A (pi/s)^2; no fact about cars, which also have to change direction',
    }),
  ],
});
export const slalomTime = quantity({
  path: 'slalomTime',
  scope: 'car',
  name: 'time from cone to cone',
  label: 'time from cone to cone',
  symbol: 'T',
  words: ['slalom time', 'time a cone', 'time per cone'],
  dimension: 'time',
  sane: [0.1, 30],
  ways: [
    way({
      needs: { spacing: asked.coneSpacing, speed: slalomSpeed },
      compute: ({ spacing, speed }) => spacing / speed,
      formula: 'spacing / speed',
      source: 'along the line of the cones',
    }),
  ],
});
export const slalomRadius = quantity({
  path: 'slalomRadius',
  scope: 'car',
  name: 'tightest radius of a slalom',
  label: 'tightest radius',
  symbol: 'R',
  words: ['slalom radius', 'tightest radius'],
  dimension: 'length',
  sane: [1, 2000],
  ways: [
    way({
      needs: { spacing: asked.coneSpacing, swing: asked.slalomSwing },
      compute: ({ spacing, swing }) => (spacing / Math.PI) ** 2 / swing,
      formula: '(spacing / pi)^2 / swing',
      source: 'a sine path',
    }),
  ],
});
const beyond = refuse('The turn already asks for more than the tires grip: it is beyond the limit.', 'lateral');
const alongCircle = (limit: number, lateral: number): number | Refusal =>
  lateral <= limit ? Math.sqrt(limit ** 2 - lateral ** 2) : beyond;
const partOf = (along: number | Refusal, part: number): number | Refusal => (typeof along === 'number' ? along * part : along);
const circleSource = 'friction circle of the whole car: every wheel uses all of its grip, however the brakes are shared';
const circleBasis = 'friction circle, brakes shared as the grip is';
/** The hardest braking in the turn, or why there is none. */
export const brakingLeft = structure({
  path: 'brake.leftInTurn',
  scope: 'car',
  name: 'how hard the car can still brake in the turn',
  needs: {
    model: cornerModel,
    lateral: asked.lateral,
    turn: asked.turn,
    share: brakeShareNow,
    frontLift: maybe(front(brakeLift)),
    rearLift: maybe(rear(brakeLift)),
  },
  compute: ({ model, lateral, turn, share, frontLift = 0, rearLift = 0 }, near?: { readonly found: CornerBraking | Refusal }) => {
    const [front, rear] = model.axles;
    // The links hold as they do under brakes, whether or not the question asks for some.
    const braked: CornerModel = {
      ...model,
      axles: [
        { ...front, driveLift: frontLift },
        { ...rear, driveLift: rearLift },
      ],
    };
    const from = near && !isRefusal(near.found) ? near.found : undefined;
    return { found: cornerBraking(braked, ((turn === 'left' ? 1 : -1) * lateral) / g, share, from) };
  },
  source: 'four-wheel equilibrium under brakes, friction ellipse of each wheel; both wheels of an axle brake alike',
});
export const alongLeft = quantity({
  path: 'alongLeft',
  scope: 'car',
  name: 'braking that is left at the lateral acceleration that is asked',
  label: 'braking left over',
  symbol: 'a_x',
  words: ['braking left', 'friction circle', 'braking left over', 'grip left'],
  dimension: 'acceleration',
  sane: [0, 30],
  ways: [
    way({
      needs: { left: brakingLeft },
      compute: ({ left: { found } }) =>
        isRefusal(found) ? found : found.braking < 1e-9 && Math.max(...found.use) > 1 + 1e-9 ? beyond : found.braking * g,
      source:
        'four-wheel equilibrium under brakes shared as they are: until the first wheel has no more grip, so that it is less than the friction circle leaves',
    }),
    way({
      needs: { limit: given(carLimit), lateral: asked.lateral, part: byCircle },
      compute: ({ limit, lateral, part }) => partOf(alongCircle(limit, lateral), part),
      source: `${circleSource}, at the lateral limit told`,
      sort: 'model',
      basis: circleBasis,
    }),
    way({
      needs: {
        front: firstOf(given(front(gripCoefficient)), given(rear(gripCoefficient))),
        rear: firstOf(given(rear(gripCoefficient)), given(front(gripCoefficient))),
        lateral: asked.lateral,
        part: byCircle,
      },
      compute: ({ front, rear, lateral, part }) => partOf(alongCircle(Math.min(front, rear) * g, lateral), part),
      source: `${circleSource}, at the grip coefficient told`,
      sort: 'model',
      basis: circleBasis,
    }),
  ],
  caution: closed,
  nonlinear:
    'It falls to nothing where the turn takes all the grip, of the lesser of two ends: a doubt that gets there is taken from its ends and halfway.',
});
export const steerOfRadius = quantity({
  path: 'steer',
  typical: [inPractice('turns of 10 to 100 m', 0.02269, 0.2618)],
  scope: 'car',
  name: 'steer angle for that radius at a crawl',
  label: 'steer at a crawl',
  symbol: 'delta',
  words: ['ackermann', 'ackermann angle', 'steer angle'],
  dimension: 'angle',
  sane: [0, 1],
  ways: [
    way({
      needs: { wheelbase, radius: asked.radius },
      compute: ({ wheelbase, radius }) => wheelbase / radius,
      formula: 'wheelbase / radius',
      source: 'wheelbase over radius, small angles; after Gillespie, from memory',
    }),
  ],
});
const turnedOut = refuse('The radius is inside of the car.', 'radius');
export const steerInner = quantity({
  path: 'steer.inner',
  typical: [inPractice('turns of 10 to 100 m', 0.02269, 0.2793)],
  scope: 'car',
  name: 'steer angle of the inner wheel at a crawl',
  label: 'inner wheel steer',
  symbol: 'delta_i',
  words: ['inner steer angle', 'inner wheel steer'],
  dimension: 'angle',
  sane: [0, 1.2],
  ways: [
    way({
      needs: { wheelbase, track: front(track), radius: asked.radius },
      compute: ({ wheelbase, track, radius }) => (radius > track / 2 ? Math.atan(wheelbase / (radius - track / 2)) : turnedOut),
      source: 'all wheels about one point on the line of the rear axle, radius to its middle',
    }),
  ],
});
export const steerOuter = quantity({
  path: 'steer.outer',
  typical: [inPractice('turns of 10 to 100 m', 0.02269, 0.2443)],
  scope: 'car',
  name: 'steer angle of the outer wheel at a crawl',
  label: 'outer wheel steer',
  symbol: 'delta_o',
  words: ['outer steer angle', 'outer wheel steer'],
  dimension: 'angle',
  sane: [0, 1],
  ways: [
    way({
      needs: { wheelbase, track: front(track), radius: asked.radius },
      compute: ({ wheelbase, track, radius }) => Math.atan(wheelbase / (radius + track / 2)),
      formula: 'atan(wheelbase / (radius + track / 2))',
      source: 'all wheels about one point on the line of the rear axle, radius to its middle',
    }),
  ],
});
