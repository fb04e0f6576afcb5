/** Travel, camber and use of grip of each wheel in the turn that is asked. */
import { firstOf, inPractice, quantity, refuse, thisAxle, thisSide, way } from '../../catalog.js';
import { camber } from '../alignment/told.js';
import { track } from '../mass/told.js';
import { rollAngle } from '../roll/leaning.js';
import { springLever } from '../springs/springLever.js';
import { axleKind, camberGain } from '../suspension/told.js';
import { lateral, turn } from './asked.js';
import { carLimit } from './balance.js';
import { askedTurn, bends, cornerModel, gainOfArm, held, indexOf, inTheTurn, readOff, sideOf } from './car.js';
import { camberAt } from './grip.js';
import { axleUse } from './limits.js';
import { bumpOf } from './parts.js';

/** m. */
const saneTravel = [-0.4, 0.4] as const;
/** 1 for a wheel that the roll pushes into bump, -1 for one that it lets out. */
const signOf = (turn: 'left' | 'right', side: 'left' | 'right'): 1 | -1 => (turn === side ? -1 : 1);
const rigid = 'roll of the body alone, rigid tires';

export const travelInTurn = quantity({
  path: 'cornering.travel',
  scope: 'corner',
  name: 'bump travel in the turn',
  label: 'travel in the turn',
  symbol: 'u',
  words: ['travel in the turn', 'cornering travel', 'wheel travel in the turn'],
  dimension: 'length',
  sane: saneTravel,
  ways: [
    way({
      needs: { model: cornerModel, held, axle: thisAxle, side: thisSide },
      compute: ({ model, axle, side, ...is }) => readOff(is, (x) => bumpOf(model.axles[indexOf(axle)], indexOf(axle), sideOf(side), x)),
      source: `from where it stands, on a beam axle of its spring; droop is negative; ${askedTurn}`,
    }),
    way({
      needs: { angle: rollAngle, base: springLever, turn, side: thisSide },
      compute: ({ angle, base, turn, side }) => (signOf(turn, side) * base * angle) / 2,
      source: 'half of the track times the roll angle, on a beam axle of the distance between its springs',
      sort: 'model',
      basis: rigid,
    }),
  ],
  nonlinear: bends,
});
export const travelLeft = quantity({
  path: 'cornering.travelLeft',
  scope: 'corner',
  name: 'bump travel left in the turn',
  label: 'travel left in turn',
  symbol: 'u_l',
  words: ['travel left in the turn', 'bump travel left in the turn'],
  dimension: 'length',
  sane: saneTravel,
  ways: [
    way({
      needs: { model: cornerModel, travel: travelInTurn, axle: thisAxle, side: thisSide },
      compute: ({ model, travel, axle, side }) => {
        const contact = model.axles[indexOf(axle)].contact[sideOf(side)];
        return Number.isFinite(contact)
          ? contact - travel
          : refuse('Where that wheel meets its bump stop, or its spring binds, is not known.', 'bumpStop.gap', 'spring.travel');
      },
      source: `until the bump stop or bind, whichever comes first; below 0 it is on its stop; ${askedTurn}`,
    }),
  ],
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
  nonlinear: bends,
});
export const camberInTurn = quantity({
  path: 'cornering.camber',
  typical: [inPractice('outer wheels of road cars at 0.8 g', -0.03491, 0.06981)],
  scope: 'corner',
  name: 'camber under way in the turn',
  label: 'camber in the turn',
  symbol: 'gamma',
  words: ['camber in the turn', 'cornering camber', 'camber under way', 'dynamic camber'],
  dimension: 'angle',
  sane: [-0.3, 0.3],
  ways: [
    way({
      needs: { ...inTheTurn, camber, gain: firstOf(gainOfArm, camberGain), axle: thisAxle, side: thisSide },
      compute: ({ model, camber, gain, axle, side, ...is }) =>
        readOff(is, (x) => camberAt(model.axles[indexOf(axle)], indexOf(axle), sideOf(side), x, camber, gain)),
      source: `against the road: camber at rest, roll of the body, and change of camber with travel; on a beam the roll of the axle; ${askedTurn}`,
    }),
    way({
      needs: { camber, gain: firstOf(gainOfArm, camberGain), angle: rollAngle, track, kind: axleKind, turn, side: thisSide },
      compute: ({ camber, gain, angle, track, kind, turn, side }) =>
        kind === 'beam' ? camber : camber + signOf(turn, side) * angle * (1 + (gain * track) / 2),
      source: 'camber at rest, roll of the body, and change of camber with the travel that the roll makes; a beam stands on its tires',
      sort: 'model',
      basis: rigid,
    }),
  ],
  nonlinear: bends,
});
export const useInTurn = quantity({
  path: 'grip.use',
  typical: [inPractice('a turn that every wheel holds', 0.1, 1)],
  scope: 'axle',
  name: 'use of its grip in the turn',
  label: 'grip used',
  symbol: 'U',
  words: ['grip use', 'use of grip', 'grip used'],
  dimension: 'ratio',
  sane: [0, 3],
  ways: [
    way({
      needs: { ...inTheTurn, axle: thisAxle },
      compute: ({ model, manoeuvre, axle, ...is }) => readOff(is, (_, state) => axleUse(model, manoeuvre, state, indexOf(axle))),
      source: `lateral force over what both wheels can give at their loads, friction ellipse; over 1 there is no steady state; ${askedTurn}`,
    }),
  ],
  nonlinear: bends,
});
export const gripMargin = quantity({
  path: 'grip.margin',
  scope: 'car',
  name: 'lateral acceleration left to the limit',
  label: 'margin to the limit',
  symbol: 'a_m',
  words: ['grip margin', 'margin to the limit', 'margin'],
  dimension: 'acceleration',
  sane: [-30, 30],
  ways: [
    way({
      needs: { limit: carLimit, lateral },
      compute: ({ limit, lateral }) => limit - lateral,
      formula: 'limit - lateral',
      source: 'below 0 the car does not hold the turn that is asked: there is no steady state',
    }),
  ],
});
