/** The wheels, what stands between them and the hub, and the room around them. */
import { designation, quantity, type Told } from '../catalog.js';
import { readWheelSize, writeWheelSize } from '../tires/wheelSize.js';

const millimetre = { inch: 0.0254 / 16, metric: 0.001 };
const room: Told = { usually: 'measured', measured: { absolute: 0.003 }, spec: { absolute: 0.006 } };
const roomCaution =
  'Check by hand at full bump and full lock on both sides, car on stands, before you drive: a tire that touches a brake line, strut or body can fail.';

export const wheelSize = designation({
  path: 'wheel.size',
  scope: 'axle',
  name: 'wheel size',
  alike: true,
  words: ['wheel', 'wheel size', 'rim', 'rim size'],
  measure: 'Cast or stamped on the wheel: rim diameter by width in inches, offset behind ET in millimetres: 17x8 ET35.',
  caution: "Wheel, offset and spacers must suit hub, studs and load: the maker's data and local rules decide.",
  parse: readWheelSize,
  write: writeWheelSize,
});
export const wheelOffset = quantity({
  path: 'wheel.offset',
  scope: 'axle',
  name: 'wheel offset',
  symbol: 'ET',
  alike: true,
  instead: 'wheel offset',
  words: ['wheel offset', 'offset', 'et'],
  dimension: 'length',
  sane: [-0.12, 0.12],
  step: { inch: 0.001, metric: 0.001 },
  trade: 'mm',
  told: { usually: 'spec', measured: { absolute: 0.0015 }, spec: { absolute: 0.0005 } },
  measure: 'From the mounting face to the middle of the rim; positive when the face is outboard of the middle.',
});
export const backspacing = quantity({
  path: 'wheel.backspacing',
  scope: 'axle',
  name: 'measured backspacing',
  label: 'backspacing, read',
  symbol: 'BS',
  alike: true,
  instead: 'wheel offset',
  words: ['measured backspacing', 'backspacing', 'back spacing', 'backspace'],
  dimension: 'length',
  sane: [0.02, 0.32],
  step: { inch: 0.0254 / 8, metric: 0.001 },
  told: { usually: 'measured', measured: { absolute: 0.0015 }, spec: { absolute: 0.0025 } },
  measure: 'Lay a straight edge over the inner rim edge and measure down to the mounting face.',
});
export const wheelSpacer = quantity({
  path: 'wheel.spacer',
  scope: 'axle',
  name: 'wheel spacer',
  symbol: 't_s',
  words: ['wheel spacer', 'hub spacer'],
  dimension: 'length',
  sane: [0, 0.06],
  step: millimetre,
  told: { usually: 'spec', measured: { absolute: 0.0003 }, spec: { absolute: 0.0003 } },
  measure: 'Thickness with a caliper.',
  caution: 'Spacers need longer studs and a hub that still centers the wheel.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'none unless told' },
});
export const flanges = quantity({
  path: 'wheel.flanges',
  scope: 'axle',
  name: 'both rim flanges together',
  label: 'rim flanges',
  symbol: 't_f',
  alike: true,
  words: ['rim flanges', 'rim lips'],
  dimension: 'length',
  sane: [0.01, 0.05],
  told: { usually: 'measured', measured: { absolute: 0.001 }, spec: { absolute: 0.002 } },
  measure: 'Overall width of the bare wheel less its nominal rim width.',
  estimate: {
    needs: {},
    compute: () => 0.0254,
    within: { absolute: 0.006 },
    error: 'common',
    source: 'about an inch over the nominal width: common practice, no source',
  },
});
export const frontViewLever = quantity({
  path: 'wheel.lever',
  scope: 'axle',
  name: 'suspension lever in front view',
  label: 'front-view lever',
  symbol: 'e',
  words: ['front view lever', 'swing arm length', 'front view swing arm length'],
  dimension: 'length',
  sane: [0.4, 20],
  told: { usually: 'measured', measured: { relative: 0.05 }, spec: { relative: 0.1 } },
  measure: 'In the front view, from the middle of the tire to where the lines of the upper and lower links meet.',
});

const gapSane = [-0.05, 0.3] as const;
export const gapInside = quantity({
  path: 'gap.inside',
  scope: 'axle',
  name: 'gap inside the tire',
  label: 'inside gap',
  symbol: 'g_i',
  state: true,
  words: ['inside gap', 'gap inside', 'inner gap', 'strut gap'],
  dimension: 'length',
  sane: gapSane,
  told: room,
  measure: 'From the inner sidewall or rim edge to the nearest thing inboard, on the tighter side, with the wheels that are on the car.',
  caution: roomCaution,
});
export const gapOutside = quantity({
  path: 'gap.outside',
  scope: 'axle',
  name: 'gap outside the tire',
  label: 'outside gap',
  symbol: 'g_o',
  state: true,
  words: ['outside gap', 'gap outside', 'outer gap', 'fender gap', 'gap to the fender'],
  dimension: 'length',
  sane: gapSane,
  told: room,
  measure: 'Sideways from the outer sidewall to the plane of the fender edge, where the tire will pass it; on the tighter side.',
  caution: roomCaution,
});
export const gapAround = quantity({
  path: 'gap.around',
  scope: 'axle',
  name: 'gap around the tread',
  label: 'tread gap',
  symbol: 'g_r',
  state: true,
  words: ['tread gap', 'gap around the tire', 'gap above the tire', 'radial gap'],
  dimension: 'length',
  sane: gapSane,
  told: room,
  measure: 'From the tread to the nearest thing around it, away from the ground, with the travel and steering that you use.',
  caution: roomCaution,
});
const roomSane = [0, 0.6] as const;
export const roomInside = quantity({
  path: 'room.inside',
  scope: 'axle',
  name: 'inside room',
  symbol: 'R_i',
  instead: 'room inside',
  words: ['inside room', 'room inside', 'inner room'],
  dimension: 'length',
  sane: roomSane,
  told: room,
  measure: 'Wheel off: along the axle from the hub face inboard to the nearest thing that a tire could touch.',
  caution: roomCaution,
});
export const roomOutside = quantity({
  path: 'room.outside',
  scope: 'axle',
  name: 'outside room',
  symbol: 'R_o',
  instead: 'room outside',
  words: ['outside room', 'room outside', 'outer room'],
  dimension: 'length',
  sane: roomSane,
  told: room,
  measure: 'Wheel off: along the axle from the hub face outboard to the plane of the fender edge.',
  caution: roomCaution,
});
export const roomAround = quantity({
  path: 'room.around',
  scope: 'axle',
  name: 'room around the tire',
  label: 'tread room',
  symbol: 'R_r',
  instead: 'room around',
  words: ['radial room', 'room around', 'room around the tire'],
  dimension: 'length',
  sane: [0.2, 0.8],
  told: room,
  measure: 'Wheel off: from the middle of the hub to the nearest thing around the tire, with the travel and steering that you use.',
  caution: roomCaution,
});
