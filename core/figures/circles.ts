/** Small figures of corners: speed and grip on a circle, a slalom, steer angles, grip shared between braking and turning. */
import { figure, front, rear, refuse } from '../catalog.js';
import { roadSpeed } from '../inputs/gearing.js';
import { gripCoefficient } from '../inputs/grip.js';
import { track, wheelbase } from '../inputs/mass.js';
import * as asked from '../inputs/turning.js';
import { carLimit } from './balance.js';

const g = 9.80665;
const circle = 'steady motion on a circle';
const closed = 'A closed course only: nobody drives a number on a road.';

/** Speed at which a car that can hold `lateral` (m/s^2) on the level stays on a banked circle. */
const bankedSpeed = (lateral: number, radius: number, bank: number): number => {
  const mu = lateral / g;
  const [up, down] = [Math.sin(bank) + mu * Math.cos(bank), Math.cos(bank) - mu * Math.sin(bank)];
  return down > 0 && up > 0 ? Math.sqrt((radius * g * up) / down) : Number.NaN;
};
const bankSource = `${circle}; banked by theta: v^2 = R g (sin theta + mu cos theta)/(cos theta - mu sin theta), mu the lateral g of the level`;
const bankRefusal = refuse('On that bank the road itself holds the car at any speed, or none does.', 'bank');

export const cornerSpeed = figure({
  path: 'cornerSpeed',
  scope: 'car',
  name: 'speed in the corner at the lateral acceleration that is asked',
  label: 'speed in the corner',
  symbol: 'v',
  words: ['corner speed', 'cornering speed', 'speed in the corner', 'speed around', 'speed'],
  dimension: 'speed',
  needs: { lateral: asked.lateral, radius: asked.radius, bank: asked.bank },
  compute: ({ lateral, radius, bank }) => {
    const speed = bankedSpeed(lateral, radius, bank);
    return Number.isFinite(speed) ? speed : bankRefusal;
  },
  source: bankSource,
  caution: closed,
});
export const cornerSpeedLimit = figure({
  path: 'cornerSpeed.limit',
  scope: 'car',
  name: 'speed in the corner at the limit of the car',
  label: 'corner speed at limit',
  symbol: 'v*',
  words: ['corner speed limit', 'top corner speed', 'max corner speed', 'limit speed'],
  dimension: 'speed',
  needs: { limit: carLimit, radius: asked.radius, bank: asked.bank },
  compute: ({ limit, radius, bank }) => {
    const speed = bankedSpeed(limit, radius, bank);
    return Number.isFinite(speed) ? speed : bankRefusal;
  },
  source: bankSource,
  caution: closed,
});
export const lateralNeeded = figure({
  path: 'lateralNeeded',
  scope: 'car',
  name: 'lateral acceleration at that speed and radius',
  label: 'lateral g needed',
  symbol: 'a_y',
  words: ['lateral needed', 'lateral g needed', 'grip needed', 'g needed', 'mu needed'],
  dimension: 'acceleration',
  needs: { speed: roadSpeed, radius: asked.radius },
  compute: ({ speed, radius }) => speed ** 2 / radius,
  formula: 'speed^2 / radius',
  source: circle,
});
export const lateralOfCircle = figure({
  path: 'lateralOfCircle',
  scope: 'car',
  name: 'lateral acceleration of a timed circle',
  label: 'lateral g of circle',
  symbol: 'a_y',
  words: ['skidpad', 'skidpad g', 'skid pad', 'circle g', 'lateral of the circle'],
  dimension: 'acceleration',
  needs: { time: asked.circleTime, radius: asked.radius },
  compute: ({ time, radius }) => radius * ((2 * Math.PI) / time) ** 2,
  formula: 'radius * (2 * pi / time)^2',
  source: `${circle}; the radius is that of the path of the car's middle`,
});
export const slalomSpeed = figure({
  path: 'slalomSpeed',
  scope: 'car',
  name: 'speed through a slalom at the lateral acceleration that is asked',
  label: 'speed in the slalom',
  symbol: 'v',
  words: ['slalom speed', 'slalom', 'speed in the slalom'],
  dimension: 'speed',
  needs: { spacing: asked.coneSpacing, swing: asked.slalomSwing, lateral: asked.lateral },
  compute: ({ spacing, swing, lateral }) => (spacing / Math.PI) * Math.sqrt(lateral / swing),
  formula: 'spacing / pi * sqrt(lateral / swing)',
  source: 'a sine path y = A sin(pi x/s), whose sharpest curvature is A (pi/s)^2; no fact about cars, which also have to change direction',
});
export const slalomTime = figure({
  path: 'slalomTime',
  scope: 'car',
  name: 'time from cone to cone',
  label: 'time from cone to cone',
  symbol: 'T',
  words: ['slalom time', 'time a cone', 'time per cone'],
  dimension: 'time',
  needs: { spacing: asked.coneSpacing, speed: slalomSpeed },
  compute: ({ spacing, speed }) => spacing / speed,
  formula: 'spacing / speed',
  source: 'along the line of the cones',
});
export const slalomRadius = figure({
  path: 'slalomRadius',
  scope: 'car',
  name: 'tightest radius of a slalom',
  label: 'tightest radius',
  symbol: 'R',
  words: ['slalom radius', 'tightest radius'],
  dimension: 'length',
  needs: { spacing: asked.coneSpacing, swing: asked.slalomSwing },
  compute: ({ spacing, swing }) => (spacing / Math.PI) ** 2 / swing,
  formula: '(spacing / pi)^2 / swing',
  source: 'a sine path',
});
export const alongLeft = figure({
  path: 'alongLeft',
  scope: 'car',
  name: 'braking that is left at the lateral acceleration that is asked',
  label: 'braking left over',
  symbol: 'a_x',
  words: ['braking left', 'friction circle', 'braking left over', 'grip left'],
  dimension: 'acceleration',
  needs: { lateral: asked.lateral, front: front(gripCoefficient), rear: rear(gripCoefficient) },
  compute: ({ lateral, front, rear }) => {
    const most = Math.min(front, rear) * g;
    return lateral <= most ? Math.sqrt(most ** 2 - lateral ** 2) : refuse('The turn already asks for more than the tires grip.', 'lateral');
  },
  source: 'friction circle of the whole car at the grip coefficient told; load transfer left out: ask the limit with braking for that',
  caution: closed,
  nonlinear:
    'A root that falls to nothing where the turn takes all the grip, of the lesser of two ends: a doubt that gets there is taken from its ends and halfway.',
});
export const steerOfRadius = figure({
  path: 'steer',
  scope: 'car',
  name: 'steer angle for that radius at a crawl',
  label: 'steer at a crawl',
  symbol: 'delta',
  words: ['ackermann', 'ackermann angle', 'steer angle'],
  dimension: 'angle',
  needs: { wheelbase, radius: asked.radius },
  compute: ({ wheelbase, radius }) => wheelbase / radius,
  formula: 'wheelbase / radius',
  source: 'wheelbase over radius, small angles; after Gillespie, from memory',
});
const turnedOut = refuse('The radius is inside of the car.', 'radius');
export const steerInner = figure({
  path: 'steer.inner',
  scope: 'car',
  name: 'steer angle of the inner wheel at a crawl',
  label: 'inner wheel steer',
  symbol: 'delta_i',
  words: ['inner steer angle', 'inner wheel steer'],
  dimension: 'angle',
  needs: { wheelbase, track: front(track), radius: asked.radius },
  compute: ({ wheelbase, track, radius }) => (radius > track / 2 ? Math.atan(wheelbase / (radius - track / 2)) : turnedOut),
  source: 'all wheels about one point on the line of the rear axle, radius to its middle',
});
export const steerOuter = figure({
  path: 'steer.outer',
  scope: 'car',
  name: 'steer angle of the outer wheel at a crawl',
  label: 'outer wheel steer',
  symbol: 'delta_o',
  words: ['outer steer angle', 'outer wheel steer'],
  dimension: 'angle',
  needs: { wheelbase, track: front(track), radius: asked.radius },
  compute: ({ wheelbase, track, radius }) => Math.atan(wheelbase / (radius + track / 2)),
  formula: 'atan(wheelbase / (radius + track / 2))',
  source: 'all wheels about one point on the line of the rear axle, radius to its middle',
});
