/** Where a wheel and its tire stand from the hub, and whether they find room. Distances are taken from the hub's mounting face. */
import { asMeasured, figure, firstOf, refuse } from '../catalog.js';
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
} from '../inputs/wheels.js';
import { freeRadius, sectionWidth } from './tires.js';

const geometry = 'geometry; offset as ISO and the trade define it, positive with the mounting face outboard of the rim center';

export const rimWidth = figure({
  path: 'wheel.width',
  scope: 'axle',
  name: 'rim width',
  symbol: 'A_w',
  words: ['rim width', 'wheel width'],
  dimension: 'length',
  needs: { wheel: wheelSize },
  compute: ({ wheel }) => wheel.width,
  source: 'the wheel size',
});
export const overallWidth = figure({
  path: 'wheel.overallWidth',
  scope: 'axle',
  name: 'overall wheel width',
  symbol: 'B_w',
  words: ['overall wheel width'],
  dimension: 'length',
  needs: { width: rimWidth, flanges },
  compute: ({ width, flanges }) => width + flanges,
  formula: 'width + flanges',
  source: geometry,
});
export const offsetInSize = figure({
  path: 'wheel.offsetInSize',
  scope: 'axle',
  name: "offset in the wheel's size",
  symbol: 'ET_s',
  dimension: 'length',
  needs: { wheel: wheelSize, flanges },
  compute: ({ wheel, flanges }) =>
    wheel.offset ??
    (wheel.backspacing === undefined
      ? refuse('The wheel size names no offset: write it behind, as in 17x8 ET35.', 'wheel.offset')
      : wheel.backspacing - (wheel.width + flanges) / 2),
  source: geometry,
});
export const offsetFromBackspacing = figure({
  path: 'wheel.offsetFromBackspacing',
  scope: 'axle',
  name: 'offset from the backspacing',
  symbol: 'ET_b',
  dimension: 'length',
  needs: { back: backspacing, overall: overallWidth },
  compute: ({ back, overall }) => back - overall / 2,
  formula: 'back - overall / 2',
  source: geometry,
});
export const effectiveOffset = figure({
  path: 'wheel.effectiveOffset',
  scope: 'axle',
  name: 'offset of the wheel with its spacer',
  symbol: 'ET_e',
  words: ['wheel offset', 'offset', 'effective offset', 'et'],
  dimension: 'length',
  needs: { offset: firstOf(wheelOffset, offsetFromBackspacing, offsetInSize), spacer: wheelSpacer },
  compute: ({ offset, spacer }) => offset - spacer,
  formula: 'offset - spacer',
  source: geometry,
});
export const backspacingNow = figure({
  path: 'wheel.backspacingNow',
  scope: 'axle',
  name: 'backspacing',
  symbol: 'BS_w',
  words: ['backspacing', 'back spacing', 'backspace'],
  dimension: 'length',
  needs: { overall: overallWidth, offset: effectiveOffset, spacer: wheelSpacer },
  compute: ({ overall, offset, spacer }) => overall / 2 + offset + spacer,
  formula: 'overall / 2 + offset + spacer',
  source: geometry,
});
export const innerRimEdge = figure({
  path: 'wheel.innerRimEdge',
  scope: 'axle',
  name: 'inner rim edge from the hub face',
  symbol: 'x_ri',
  words: ['inner rim edge'],
  dimension: 'length',
  needs: { overall: overallWidth, offset: effectiveOffset },
  compute: ({ overall, offset }) => overall / 2 + offset,
  formula: 'overall / 2 + offset',
  source: geometry,
});
export const outerRimEdge = figure({
  path: 'wheel.edge',
  scope: 'axle',
  name: 'outer rim edge from the hub face',
  symbol: 'x_ro',
  words: ['wheel edge', 'outer rim edge', 'stick out', 'poke', 'outer wheel edge'],
  dimension: 'length',
  needs: { overall: overallWidth, offset: effectiveOffset },
  compute: ({ overall, offset }) => overall / 2 - offset,
  formula: 'overall / 2 - offset',
  source: geometry,
});
export const innerTireEdge = figure({
  path: 'tire.innerEdge',
  scope: 'axle',
  name: 'inner tire edge from the hub face',
  symbol: 'x_ti',
  words: ['inner edge', 'inner tire edge', 'inside edge'],
  dimension: 'length',
  needs: { section: sectionWidth, offset: effectiveOffset },
  compute: ({ section, offset }) => section / 2 + offset,
  formula: 'section / 2 + offset',
  source: geometry,
});
export const outerTireEdge = figure({
  path: 'tire.outerEdge',
  scope: 'axle',
  name: 'outer tire edge from the hub face',
  symbol: 'x_to',
  words: ['outer edge', 'outer tire edge', 'outside edge', 'tire edge'],
  dimension: 'length',
  needs: { section: sectionWidth, offset: effectiveOffset },
  compute: ({ section, offset }) => section / 2 - offset,
  formula: 'section / 2 - offset',
  source: geometry,
});
export const trackPart = figure({
  path: 'wheel.trackPart',
  scope: 'axle',
  name: 'track added by the wheels',
  symbol: 'dt',
  words: ['track change', 'wheel track change'],
  dimension: 'length',
  needs: { offset: effectiveOffset },
  compute: ({ offset }) => -2 * offset,
  formula: '-2 * offset',
  source: `${geometry}; two wheels, so twice the offset`,
});
export const offsetShift = figure({
  path: 'wheel.shift',
  scope: 'axle',
  name: 'outward move of each wheel',
  symbol: 'dET',
  words: ['wheel shift'],
  dimension: 'length',
  needs: { now: effectiveOffset, before: asMeasured(effectiveOffset) },
  compute: ({ now, before }) => before - now,
  formula: 'before - now',
  source: `${geometry}; since the car was last measured`,
});
export const leverRatio = figure({
  path: 'wheel.leverRatio',
  scope: 'axle',
  name: 'change of motion ratio by the wheels',
  symbol: "MR'/MR",
  words: ['motion ratio change', 'lever ratio'],
  dimension: 'ratio',
  typical: { range: [0.97, 1.03], of: 'changes of offset up to 40 mm; common practice, no source' },
  needs: { lever: frontViewLever, shift: offsetShift },
  compute: ({ lever, shift }) =>
    lever + shift > 0 ? lever / (lever + shift) : refuse('The lever is shorter than the shift of the wheel.', 'wheel.lever'),
  formula: 'lever / (lever + shift)',
  source: "front-view geometry, exact: MR' = MR·e/(e + dET), against the wheels that were on when the car was last measured",
});

export const roomFromGapInside = figure({
  path: 'room.fromGapInside',
  scope: 'axle',
  name: 'inside room by the gap',
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
  symbol: 'c',
  words: ['clearance', 'fit', 'tire clearance', 'least clearance'],
  dimension: 'length',
  typical: { range: [0.005, 0.03], of: 'wheels that fit, by common practice, no source' },
  needs: { inside: clearInside, outside: clearOutside, around: clearAround },
  compute: ({ inside, outside, around }) => Math.min(inside, outside, around),
  formula: 'min(inside, outside, around)',
  source: `${geometry}; the tire fits if it is above zero`,
  caution: fitCaution,
  nonlinear: 'The least of three: near a tie its plus-or-minus is that of the one which is least now.',
});
