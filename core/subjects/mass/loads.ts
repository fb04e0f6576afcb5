/** What each wheel carries as the car stands, sprung and whole, and what follows for the car. */
import {
  asMeasured,
  figure,
  front,
  given,
  inverse,
  left,
  maybe,
  quantity,
  rear,
  refuse,
  right,
  thisAxle,
  thisSide,
  way,
} from '../../catalog.js';
import { equilibrium, standing, wheel } from '../ride/standing.js';
import { addedMoment, addedWeight, axleMass } from './aboard.js';
import * as massTold from './told.js';
import { leftRead, shareRead, twist, unsprungBoth, weighedCorner, weighedSprung } from './weighed.js';

const g = 9.80665;
const statics = 'statics';
const sum = 'sum';

/** What comes to one wheel of an axle by a weight in the middle and its moment to the left. */
const onWheel = (weight: number, moment: number, track: number | undefined, side: 'left' | 'right') => {
  if (moment === 0) return weight / 2;
  if (track === undefined) return refuse('What came aboard sits to one side, and the track is not known.', 'track');
  return weight / 2 + (side === 'left' ? moment : -moment) / (g * track);
};
export const loadShared = figure({
  path: 'loadShared',
  scope: 'corner',
  name: 'weight on the wheel, with what came aboard shared by distance alone',
  label: 'weight, by distance',
  symbol: 'N',
  dimension: 'mass',
  needs: { weighed: weighedCorner, weight: addedWeight, moment: addedMoment, track: maybe(massTold.track), side: thisSide },
  compute: ({ weighed, weight, moment, track, side }) => {
    const came = onWheel(weight, moment, track, side);
    return typeof came === 'number' ? weighed + came : came;
  },
  source: 'statics without the springs, where those are not known; common practice, no source',
});
export const cornerMass = quantity({
  path: 'cornerMass',
  scope: 'corner',
  name: 'corner weight as it stands',
  label: 'corner weight',
  main: true,
  symbol: 'W_i',
  words: ['weight', 'corner weight', 'wheel weight', 'wheel load', 'scale'],
  dimension: 'mass',
  sane: [20, 2000],
  ways: [
    // The scale's own reading and what was gained since.
    way({
      needs: { weighed: asMeasured(weighedCorner), standing, axle: thisAxle, side: thisSide },
      compute: ({ weighed, standing, axle, side }) => weighed + standing.gain[wheel(axle, side)] / g,
      source: equilibrium,
    }),
    // Where only the sprung weight was told, that and the unsprung.
    way({
      needs: { standing, axle: thisAxle, side: thisSide },
      compute: ({ standing, axle, side }) => standing.load[wheel(axle, side)] / g,
      source: equilibrium,
    }),
    way({ needs: { load: loadShared }, compute: ({ load }) => load, formula: 'load', source: statics }),
  ],
  carriesOn: massTold.scaleReading,
});
export const sprungMass = quantity({
  path: 'sprungMass',
  scope: 'corner',
  name: 'sprung weight as it stands',
  label: 'sprung weight',
  symbol: 'W_s',
  words: ['sprung weight', 'sprung mass', 'corner sprung weight'],
  dimension: 'mass',
  sane: [20, 1500],
  ways: [
    way({
      needs: { standing, axle: thisAxle, side: thisSide },
      compute: ({ standing, axle, side }) => standing.sprung[wheel(axle, side)] / g,
      source: equilibrium,
    }),
    way({
      needs: { sprung: weighedSprung, weighed: maybe(weighedCorner), load: maybe(loadShared) },
      compute: ({ sprung, weighed, load }) => (weighed === undefined || load === undefined ? sprung : sprung + load - weighed),
      source: statics,
    }),
  ],
  carriesOn: massTold.sprungTold,
});
export const axleSprungMass = quantity({
  path: 'axle.sprungMass',
  scope: 'axle',
  name: 'sprung weight of both wheels',
  label: 'sprung, both wheels',
  symbol: 'W_sj',
  words: ['sprung weight', 'sprung mass', 'axle sprung weight'],
  dimension: 'mass',
  sane: [60, 2500],
  ways: [
    way({
      needs: { left: left(sprungMass), right: right(sprungMass) },
      compute: ({ left, right }) => left + right,
      formula: 'left + right',
      source: sum,
    }),
    way({
      needs: { axle: axleMass, unsprung: unsprungBoth },
      compute: ({ axle, unsprung }) =>
        axle > unsprung ? axle - unsprung : refuse('The unsprung weight is more than the axle weighs.', 'axleWeight', 'unsprung.axle'),
      formula: 'axle - unsprung',
      source: 'what is not unsprung',
    }),
  ],
});
inverse(sprungMass, {
  needs: { both: given(axleSprungMass) },
  compute: ({ both }) => both / 2,
  formula: 'both / 2',
  source: 'as told of the axle, both sides alike',
});
inverse(weighedSprung, {
  needs: { both: asMeasured(given(axleSprungMass)) },
  compute: ({ both }) => both / 2,
  formula: 'both / 2',
  source: 'as told of the axle, both sides alike',
});

const fourLoads = { lf: front(left(cornerMass)), rf: front(right(cornerMass)), lr: rear(left(cornerMass)), rr: rear(right(cornerMass)) };
export const cross = quantity({
  path: 'cross',
  percent: true,
  scope: 'car',
  name: 'cross weight, right front and left rear',
  label: 'cross weight',
  main: true,
  symbol: 'X',
  words: ['cross', 'cross weight', 'cross percent', 'wedge', 'diagonal weight'],
  dimension: 'ratio',
  sane: [0.3, 0.7],
  told: { usually: 'measured', measured: { absolute: 0.003 }, spec: { absolute: 0.01 } },
  typical: { range: [0.49, 0.51], of: 'cars that turn both ways; common practice, no source' },
  measure: 'Four scales on level ground, bars unhooked: right front and left rear over the sum of all four.',
  ways: [
    way({
      needs: fourLoads,
      compute: ({ lf, rf, lr, rr }) => (rf + lr) / (lf + rf + lr + rr),
      formula: '(rf + lr) / (lf + rf + lr + rr)',
      source: 'by definition',
    }),
  ],
});
/** Where the corners themselves were not told: with the shares it leaves one answer. */
inverse(twist, {
  needs: { cross: asMeasured(given(cross)), front: shareRead, left: leftRead },
  compute: ({ cross, front, left }) => (front * (1 - left) + (1 - front) * left - cross) / (2 * front * (1 - front)),
  formula: '(front * (1 - left) + (1 - front) * left - cross) / (2 * front * (1 - front))',
  source: 'cross of two axles whose left shares differ, solved for their difference',
});
export const leftShareNow = figure({
  path: 'leftShareNow',
  percent: true,
  scope: 'car',
  name: 'left share of the weight as it stands',
  label: 'left share',
  symbol: 'w_l',
  words: ['left share', 'left percent', 'percent left'],
  dimension: 'ratio',
  needs: fourLoads,
  compute: ({ lf, rf, lr, rr }) => (lf + lr) / (lf + rf + lr + rr),
  formula: '(lf + lr) / (lf + rf + lr + rr)',
  source: 'by definition',
  carriesOn: massTold.leftShare,
});
export const cgRightNow = figure({
  path: 'cg.rightNow',
  scope: 'car',
  name: 'center of gravity, right of center, as it stands',
  label: 'CG right of center',
  symbol: 'y',
  words: ['cg right of center', 'cg sideways', 'cg offset'],
  dimension: 'length',
  needs: { ...fourLoads, front: front(massTold.track), rear: rear(massTold.track) },
  compute: ({ lf, rf, lr, rr, front, rear }) => ((rf - lf) * front + (rr - lr) * rear) / (2 * (lf + rf + lr + rr)),
  formula: '((rf - lf) * front + (rr - lr) * rear) / (2 * (lf + rf + lr + rr))',
  source: 'moments about the center line',
  carriesOn: massTold.cgRight,
});
