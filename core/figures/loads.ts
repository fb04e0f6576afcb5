/** What each wheel carries as the car stands, sprung and whole, and what follows for the car. */
import { asMeasured, figure, firstOf, front, left, maybe, rear, right, thisAxle, thisSide } from '../catalog.js';
import * as massTold from '../inputs/mass.js';
import { addedMoment, addedWeight } from './aboard.js';
import { weighedCorner, weighedSprung } from './mass.js';
import { equilibrium, standing, wheel } from './standing.js';

const g = 9.80665;
const statics = 'statics';

export const loadOnSprings = figure({
  path: 'loadOnSprings',
  scope: 'corner',
  name: 'weight on the wheel, on springs and tires',
  label: 'weight, on springs',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { weighed: maybe(asMeasured(weighedCorner)), standing, axle: thisAxle, side: thisSide },
  compute: ({ weighed, standing, axle, side }) => {
    const i = wheel(axle, side);
    // The scale's own reading and what was gained since; where only the sprung weight was told, that and the unsprung.
    return weighed === undefined ? standing.load[i] / g : weighed + standing.gain[i] / g;
  },
  source: equilibrium,
});
export const loadShared = figure({
  path: 'loadShared',
  scope: 'corner',
  name: 'weight on the wheel, with what came aboard shared by distance alone',
  label: 'weight, by distance',
  symbol: 'N',
  dimension: 'mass',
  needs: { weighed: weighedCorner, weight: addedWeight, moment: addedMoment, track: massTold.track, side: thisSide },
  compute: ({ weighed, weight, moment, track, side }) => weighed + weight / 2 + (side === 'left' ? moment : -moment) / (g * track),
  source: 'statics without the springs, where those are not known; common practice, no source',
});
export const cornerMass = figure({
  path: 'cornerMass',
  scope: 'corner',
  name: 'corner weight as it stands',
  label: 'corner weight',
  main: true,
  symbol: 'W_i',
  words: ['weight', 'corner weight', 'wheel weight', 'wheel load', 'scale'],
  dimension: 'mass',
  needs: { load: firstOf(loadOnSprings, loadShared) },
  compute: ({ load }) => load,
  formula: 'load',
  source: equilibrium,
  carriesOn: massTold.scaleReading,
});
export const sprungOnSprings = figure({
  path: 'sprungOnSprings',
  scope: 'corner',
  name: 'sprung weight of the wheel on springs and tires',
  label: 'sprung, on springs',
  symbol: 'W_s',
  dimension: 'mass',
  needs: { standing, axle: thisAxle, side: thisSide },
  compute: ({ standing, axle, side }) => standing.sprung[wheel(axle, side)] / g,
  source: equilibrium,
});
export const sprungShared = figure({
  path: 'sprungShared',
  scope: 'corner',
  name: 'sprung weight of the wheel as weighed, with what came aboard',
  label: 'sprung, by distance',
  symbol: 'W_s',
  dimension: 'mass',
  needs: { sprung: weighedSprung, weighed: maybe(weighedCorner), load: maybe(loadShared) },
  compute: ({ sprung, weighed, load }) => (weighed === undefined || load === undefined ? sprung : sprung + load - weighed),
  source: statics,
});
export const sprungMass = figure({
  path: 'sprungMass',
  scope: 'corner',
  name: 'sprung weight as it stands',
  label: 'sprung weight',
  symbol: 'W_s',
  words: ['sprung weight', 'sprung mass', 'corner sprung weight'],
  dimension: 'mass',
  needs: { sprung: firstOf(sprungOnSprings, sprungShared) },
  compute: ({ sprung }) => sprung,
  formula: 'sprung',
  source: equilibrium,
  carriesOn: massTold.sprungTold,
});
export const axleSprungMass = figure({
  path: 'axle.sprungMass',
  scope: 'axle',
  name: 'sprung weight of both wheels',
  label: 'sprung, both wheels',
  symbol: 'W_sj',
  words: ['sprung weight', 'sprung mass', 'axle sprung weight'],
  dimension: 'mass',
  needs: { left: left(sprungMass), right: right(sprungMass) },
  compute: ({ left, right }) => left + right,
  formula: 'left + right',
  source: 'sum',
});

const fourLoads = { lf: front(left(cornerMass)), rf: front(right(cornerMass)), lr: rear(left(cornerMass)), rr: rear(right(cornerMass)) };
export const cross = figure({
  path: 'cross',
  scope: 'car',
  name: 'cross weight, right front and left rear',
  label: 'cross weight',
  main: true,
  symbol: 'X',
  words: ['cross', 'cross weight', 'cross percent', 'wedge', 'diagonal weight'],
  dimension: 'ratio',
  typical: { range: [0.49, 0.51], of: 'cars that turn both ways; common practice, no source' },
  needs: fourLoads,
  compute: ({ lf, rf, lr, rr }) => (rf + lr) / (lf + rf + lr + rr),
  formula: '(rf + lr) / (lf + rf + lr + rr)',
  source: 'by definition',
});
export const leftShareNow = figure({
  path: 'leftShareNow',
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
