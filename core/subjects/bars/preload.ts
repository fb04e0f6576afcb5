/** What unequal links of the anti-roll bars do to the car at rest, and what takes it out. */
import { left, quantity, thisAxle, thisSide, way } from '../../catalog.js';
import { bends, cornerModel, model, restState } from '../cornering/car.js';
import { barTorque } from '../cornering/parts.js';
import { at } from '../cornering/unknowns.js';
import { barLever, linkLonger } from './told.js';

const g = 9.80665;
const care = 'A bar under preload springs when a link comes off: car level on its wheels or both sides hanging.';
const links = `a mismatch is no load of stiffness times length: the body rolls, and both axles share it; ${model}`;

export const preload = quantity({
  path: 'preload',
  scope: 'corner',
  name: 'what the links of the bars add to the weight on the wheel',
  label: 'by links of bars',
  symbol: 'dN_p',
  words: ['preload', 'endlink preload', 'bar preload', 'link preload'],
  dimension: 'mass',
  sane: [-500, 500],
  ways: [
    way({
      needs: { model: cornerModel, rest: restState, axle: thisAxle, side: thisSide },
      compute: ({ model, rest, axle, side }) => {
        const [j, i] = [axle === 'front' ? 0 : 1, side === 'left' ? 0 : 1];
        return (rest.state.x[at.load + 2 * j + i]! - model.axles[j]!.reference[i]!) / g;
      },
      source: links,
    }),
  ],
  caution: care,
  nonlinear: bends,
});
export const crossHooked = quantity({
  path: 'preload.cross',
  percent: true,
  scope: 'car',
  name: 'cross weight with the bars hooked up',
  label: 'cross, bars hooked up',
  symbol: 'X_p',
  words: ['cross with bar', 'cross weight with bar', 'hooked up cross', 'cross percent with bar'],
  dimension: 'ratio',
  typical: { range: [0.49, 0.51], of: 'cars that turn both ways; common practice, no source' },
  sane: [0.3, 0.7],
  ways: [
    way({
      needs: { rest: restState },
      compute: ({ rest: { state } }) => {
        const [lf, rf, lr, rr] = [0, 1, 2, 3].map((wheel) => state.x[at.load + wheel]!);
        return (rf! + lr!) / (lf! + rf! + lr! + rr!);
      },
      source: links,
    }),
  ],
  nonlinear: bends,
});
export const linkForce = quantity({
  path: 'preload.link',
  scope: 'axle',
  name: 'load in the left link of the bar at rest',
  label: 'link load at rest',
  symbol: 'F_l',
  words: ['link load', 'endlink load'],
  dimension: 'force',
  sane: [-20_000, 20_000],
  ways: [
    way({
      needs: { model: cornerModel, rest: restState, axle: thisAxle, lever: left(barLever) },
      compute: ({ model, rest, axle, lever }) =>
        barTorque(model.axles[axle === 'front' ? 0 : 1], axle === 'front' ? 0 : 1, rest.state.x) / lever,
      source: links,
    }),
  ],
  nonlinear: bends,
});
export const shorten = quantity({
  path: 'preload.shorten',
  scope: 'axle',
  name: 'shorten the left link by this to take the preload out',
  label: 'shorten left link by',
  symbol: 'e_l',
  words: ['neutral endlink', 'endlink neutral', 'link neutral', 'set endlink neutral'],
  dimension: 'length',
  sane: [-0.06, 0.06],
  ways: [
    way({
      needs: { longer: linkLonger },
      compute: ({ longer }) => longer,
      formula: 'longer',
      source: 'links free to slip in with the car on level ground as it runs; or lengthen the right one by as much',
    }),
  ],
  caution: care,
});
