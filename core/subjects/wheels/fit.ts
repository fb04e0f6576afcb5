/** Where a wheel and its tire stand from the hub, and whether they find room. Distances are taken from the hub's mounting face. */
import { asMeasured, figure, firstOf, maybe, quantity, refuse, way } from '../../catalog.js';
import { freeRadius, sectionWidth } from '../tires/dimensions.js';
import {
  backspacing,
  flanges,
  frontViewLever,
  gapAround,
  gapInside,
  gapOutside,
  roomAround,
  roomInside,
  roomOutside,
  wheelOffset,
  wheelSize,
  wheelSpacer,
} from './told.js';

/** m from the hub's mounting face. */
const saneEdge = [-0.3, 0.6] as const;
const saneOffset = [-0.25, 0.25] as const;
const geometry = 'geometry; offset as ISO and the trade define it, positive with the mounting face outboard of the rim center';

export const rimWidth = quantity({
  path: 'wheel.width',
  scope: 'axle',
  name: 'rim width',
  symbol: 'A_w',
  words: ['rim width', 'wheel width'],
  dimension: 'length',
  sane: [0.05, 0.6],
  ways: [
    way({
      needs: { wheel: wheelSize },
      compute: ({ wheel }) => wheel.width,
      source: 'the wheel size',
    }),
  ],
});
export const overallWidth = quantity({
  path: 'wheel.overallWidth',
  scope: 'axle',
  name: 'overall wheel width',
  symbol: 'B_w',
  words: ['overall wheel width'],
  dimension: 'length',
  sane: [0.05, 0.65],
  ways: [
    way({
      needs: { width: rimWidth, flanges },
      compute: ({ width, flanges }) => width + flanges,
      formula: 'width + flanges',
      source: geometry,
    }),
  ],
});
/** Of the wheel alone. */
export const offsetOfWheel = quantity({
  path: 'wheel.offsetAlone',
  scope: 'axle',
  name: 'offset of the wheel without spacer',
  label: 'offset of the wheel',
  symbol: 'ET',
  dimension: 'length',
  ways: [
    way({ needs: { offset: wheelOffset }, compute: ({ offset }) => offset, formula: 'offset', source: 'as told' }),
    way({
      needs: { back: backspacing, overall: overallWidth },
      compute: ({ back, overall }) => back - overall / 2,
      formula: 'back - overall / 2',
      source: geometry,
    }),
    way({
      needs: { wheel: wheelSize, flanges: maybe(flanges) },
      compute: ({ wheel, flanges }) => {
        if (wheel.offset !== undefined) return wheel.offset;
        if (wheel.backspacing === undefined)
          return refuse('The wheel size names no offset: write it behind, as in 17x8 ET35.', 'wheel.offset');
        if (flanges === undefined) return refuse('How much wider than its rim the wheel is: tell its flanges.', 'wheel.flanges');
        return wheel.backspacing - (wheel.width + flanges) / 2;
      },
      source: geometry,
    }),
  ],
});
export const effectiveOffset = quantity({
  path: 'wheel.effectiveOffset',
  scope: 'axle',
  name: 'offset of the wheel with its spacer',
  label: 'offset',
  symbol: 'ET_e',
  words: ['wheel offset', 'offset', 'effective offset', 'et'],
  dimension: 'length',
  sane: saneOffset,
  ways: [
    way({
      needs: { offset: offsetOfWheel, spacer: wheelSpacer },
      compute: ({ offset, spacer }) => offset - spacer,
      formula: 'offset - spacer',
      source: geometry,
    }),
  ],
});
export const backspacingNow = quantity({
  path: 'wheel.backspacingNow',
  scope: 'axle',
  name: 'backspacing',
  symbol: 'BS_w',
  words: ['backspacing', 'back spacing', 'backspace'],
  dimension: 'length',
  sane: [0, 0.5],
  ways: [
    way({
      needs: { overall: overallWidth, offset: effectiveOffset, spacer: wheelSpacer },
      compute: ({ overall, offset, spacer }) => overall / 2 + offset + spacer,
      formula: 'overall / 2 + offset + spacer',
      source: geometry,
    }),
  ],
});
export const innerRimEdge = quantity({
  path: 'wheel.innerRimEdge',
  scope: 'axle',
  name: 'inner rim edge from the hub face',
  label: 'inner rim edge',
  symbol: 'x_ri',
  words: ['inner rim edge'],
  dimension: 'length',
  sane: saneEdge,
  ways: [
    way({
      needs: { overall: overallWidth, offset: effectiveOffset },
      compute: ({ overall, offset }) => overall / 2 + offset,
      formula: 'overall / 2 + offset',
      source: geometry,
    }),
  ],
});
export const outerRimEdge = quantity({
  path: 'wheel.edge',
  scope: 'axle',
  name: 'outer rim edge from the hub face',
  label: 'outer rim edge',
  symbol: 'x_ro',
  words: ['wheel edge', 'outer rim edge', 'stick out', 'poke', 'outer wheel edge'],
  dimension: 'length',
  sane: saneEdge,
  ways: [
    way({
      needs: { overall: overallWidth, offset: effectiveOffset },
      compute: ({ overall, offset }) => overall / 2 - offset,
      formula: 'overall / 2 - offset',
      source: geometry,
    }),
  ],
});
export const innerTireEdge = quantity({
  path: 'tire.innerEdge',
  scope: 'axle',
  name: 'inner tire edge from the hub face',
  label: 'inner tire edge',
  main: true,
  symbol: 'x_ti',
  words: ['inner edge', 'inner tire edge', 'inside edge'],
  dimension: 'length',
  sane: saneEdge,
  ways: [
    way({
      needs: { section: sectionWidth, offset: effectiveOffset },
      compute: ({ section, offset }) => section / 2 + offset,
      formula: 'section / 2 + offset',
      source: geometry,
    }),
  ],
});
export const outerTireEdge = quantity({
  path: 'tire.outerEdge',
  scope: 'axle',
  name: 'outer tire edge from the hub face',
  label: 'outer tire edge',
  main: true,
  symbol: 'x_to',
  words: ['outer edge', 'outer tire edge', 'outside edge', 'tire edge'],
  dimension: 'length',
  sane: saneEdge,
  ways: [
    way({
      needs: { section: sectionWidth, offset: effectiveOffset },
      compute: ({ section, offset }) => section / 2 - offset,
      formula: 'section / 2 - offset',
      source: geometry,
    }),
  ],
});
export const trackPart = figure({
  path: 'wheel.trackPart',
  scope: 'axle',
  name: 'track added by the wheels',
  label: 'track change',
  symbol: 'dt',
  words: ['track change', 'wheel track change'],
  dimension: 'length',
  needs: { offset: effectiveOffset },
  compute: ({ offset }) => -2 * offset,
  formula: '-2 * offset',
  source: `${geometry}; two wheels, so twice the offset`,
});
export const offsetShift = quantity({
  path: 'wheel.shift',
  scope: 'axle',
  name: 'outward move of each wheel',
  label: 'wheel moves out',
  symbol: 'dET',
  words: ['wheel shift'],
  dimension: 'length',
  sane: [-0.2, 0.2],
  ways: [
    way({
      needs: { now: effectiveOffset, before: asMeasured(effectiveOffset) },
      compute: ({ now, before }) => before - now,
      formula: 'before - now',
      source: `${geometry}; since the car was last measured`,
    }),
  ],
});
export const trackChange = quantity({
  path: 'track.change',
  scope: 'axle',
  name: 'change of the track by the wheels since the car was measured',
  label: 'track change',
  symbol: 'dt',
  words: ['track change since measured', 'change of track since measured'],
  dimension: 'length',
  sane: [-0.4, 0.4],
  ways: [
    way({ needs: { shift: offsetShift }, compute: ({ shift }) => 2 * shift, formula: '2 * shift', source: `${geometry}; two wheels` }),
  ],
});
export const leverRatio = quantity({
  path: 'wheel.leverRatio',
  scope: 'axle',
  name: 'change of motion ratio by the wheels',
  label: 'motion ratio factor',
  symbol: "MR'/MR",
  words: ['motion ratio change', 'lever ratio'],
  dimension: 'ratio',
  sane: [0.5, 2],
  typical: { range: [0.97, 1.03], of: 'changes of offset up to 40 mm; common practice, no source' },
  ways: [
    way({
      needs: { lever: frontViewLever, shift: offsetShift },
      compute: ({ lever, shift }) =>
        lever + shift > 0 ? lever / (lever + shift) : refuse('The lever is shorter than the shift of the wheel.', 'wheel.lever'),
      formula: 'lever / (lever + shift)',
      source: "front-view geometry, exact: MR' = MR·e/(e + dET), against the wheels that were on when the car was last measured",
    }),
  ],
});

export const roomFromGapInside = figure({
  path: 'room.fromGapInside',
  scope: 'axle',
  name: 'inside room by the gap',
  label: 'inside room by gap',
  symbol: 'R_gi',
  dimension: 'length',
  needs: { gap: gapInside, edge: asMeasured(innerTireEdge), rim: asMeasured(innerRimEdge) },
  compute: ({ gap, edge, rim }) => gap + Math.max(edge, rim),
  formula: 'gap + max(edge, rim)',
  source: geometry,
});
export const roomFromGapOutside = figure({
  path: 'room.fromGapOutside',
  scope: 'axle',
  name: 'outside room by the gap',
  label: 'outside room by gap',
  symbol: 'R_go',
  dimension: 'length',
  needs: { gap: gapOutside, edge: asMeasured(outerTireEdge), rim: asMeasured(outerRimEdge) },
  compute: ({ gap, edge, rim }) => gap + Math.max(edge, rim),
  formula: 'gap + max(edge, rim)',
  source: geometry,
});
export const roomFromGapAround = figure({
  path: 'room.fromGapAround',
  scope: 'axle',
  name: 'room around by the gap',
  label: 'tread room by gap',
  symbol: 'R_gr',
  dimension: 'length',
  needs: { gap: gapAround, radius: asMeasured(freeRadius) },
  compute: ({ gap, radius }) => gap + radius,
  formula: 'gap + radius',
  source: geometry,
});
const fitCaution =
  'A number is no test fit: turn the steering from lock to lock and the suspension through its travel by hand, car on stands, before you drive.';
export const clearInside = figure({
  path: 'clear.inside',
  scope: 'axle',
  name: 'clearance inside',
  symbol: 'c_i',
  words: ['inside clearance', 'clearance inside', 'inner clearance'],
  dimension: 'length',
  needs: { room: firstOf(roomInside, roomFromGapInside), edge: innerTireEdge, rim: innerRimEdge },
  compute: ({ room, edge, rim }) => room - Math.max(edge, rim),
  formula: 'room - max(edge, rim)',
  source: geometry,
  caution: fitCaution,
  carriesOn: gapInside,
});
export const clearOutside = figure({
  path: 'clear.outside',
  scope: 'axle',
  name: 'clearance outside',
  symbol: 'c_o',
  words: ['outside clearance', 'clearance outside', 'outer clearance', 'fender clearance'],
  dimension: 'length',
  needs: { room: firstOf(roomOutside, roomFromGapOutside), edge: outerTireEdge, rim: outerRimEdge },
  compute: ({ room, edge, rim }) => room - Math.max(edge, rim),
  formula: 'room - max(edge, rim)',
  source: geometry,
  caution: fitCaution,
  carriesOn: gapOutside,
});
export const clearAround = figure({
  path: 'clear.around',
  scope: 'axle',
  name: 'clearance around the tread',
  label: 'clearance of tread',
  symbol: 'c_r',
  words: ['tread clearance', 'radial clearance', 'clearance around'],
  dimension: 'length',
  needs: { room: firstOf(roomAround, roomFromGapAround), radius: freeRadius },
  compute: ({ room, radius }) => room - radius,
  formula: 'room - radius',
  source: geometry,
  caution: fitCaution,
  carriesOn: gapAround,
});
export const leastClearance = figure({
  path: 'clear.least',
  scope: 'axle',
  name: 'least clearance of the tire',
  label: 'least clearance',
  main: true,
  symbol: 'c',
  words: ['clearance', 'fit', 'rub', 'rubbing', 'tire clearance', 'least clearance'],
  dimension: 'length',
  typical: { range: [0.005, 0.03], of: 'wheels that fit, by common practice, no source' },
  needs: { inside: clearInside, outside: clearOutside, around: clearAround },
  compute: ({ inside, outside, around }) => Math.min(inside, outside, around),
  formula: 'min(inside, outside, around)',
  source: `${geometry}; the tire fits if it is above zero`,
  caution: fitCaution,
  nonlinear: 'The least of three: near a tie its plus-or-minus is that of the one which is least now.',
});
