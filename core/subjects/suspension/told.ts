/** What kind of axle it is, and where its roll center, its unsprung weight and its stops lie. */
import { asMeasured, carry, given, inPractice, left, maybe, quantity, refine, refuse, right, way } from '../../catalog.js';
import { axleKind, suspension } from '../layout/told.js';
import { travelSince } from '../ride/standing.js';
import { freeRadius } from '../tires/dimensions.js';

export { axleKind } from '../layout/told.js';
export { beamAxle, independentAxle, springBase } from './beam.js';

const degree = Math.PI / 180;

/** m/m. */
const usualFall = { strut: 2.55, wishbone: 1.25, multilink: 1.25, 'trailing arm': 0.4, 'twist beam': 0.1, 'live axle': 0.15 } as const;
export const rollCenterFall = quantity({
  path: 'rollCenter.fall',
  typical: [inPractice('struts', 2.4, 2.7), inPractice('wishbones and five links', 1, 1.5), inPractice('live axles', 0.05, 0.5)],
  scope: 'axle',
  name: 'fall of the roll center for each unit of lowering',
  label: 'roll center falls by',
  symbol: 'dh_RC/du',
  words: ['roll center fall', 'roll center drop', 'roll center fall in bump'],
  dimension: 'ratio',
  sane: [-3, 6],
  told: { usually: 'measured', measured: { absolute: 0.2 }, spec: { absolute: 0.5 } },
  measure:
    'From the hard points at two heights: how much the roll center falls over the ground for each millimetre that the body is lowered.',
  ways: [
    way({
      needs: { suspension },
      compute: ({ suspension }) => usualFall[suspension],
      ...{
        sort: 'estimate',
        within: { absolute: 0.5 },
        source:
          'by the kind of suspension: struts 2.4 to 2.7, wishbones and links 1 to 1.5, trailing arms 0 to 0.5; common practice, no source',
      },
    }),
    way({
      needs: { kind: axleKind },
      compute: ({ kind }) => (kind === 'beam' ? usualFall['live axle'] : 1.4),
      ...{ sort: 'estimate', within: { absolute: 1.4 }, source: 'by the kind of axle; common practice, no source' },
    }),
  ],
});
/** How far it has fallen since the car was measured. */
const fallen = { fall: rollCenterFall, left: refine(left(travelSince), 0), right: refine(right(travelSince), 0) };
const fallenBy = (is: { fall: number; left: number; right: number }): number => (is.fall * (is.left + is.right)) / 2;
/** m above the ground. */
const usualRollCenter = {
  strut: 0.065,
  wishbone: 0.07,
  multilink: 0.095,
  'trailing arm': 0.04,
  'twist beam': 0.17,
  'live axle': 0.26,
} as const;
export const rollCenterHeight = quantity({
  path: 'rollCenter.height',
  scope: 'axle',
  name: 'height of the roll center',
  label: 'roll center height',
  symbol: 'h_RC',
  words: ['roll center', 'roll center height', 'rc', 'rc height'],
  dimension: 'length',
  sane: [-0.2, 0.6],
  step: { inch: 0.0254 / 4, metric: 0.005 },
  told: { usually: 'spec', measured: { absolute: 0.015 }, spec: { absolute: 0.03 } },
  measure: 'From the hard points; on a beam, where its lateral link crosses the middle of the car. Above the ground, at ride height.',
  ways: [
    way({
      needs: { suspension, ...fallen },
      compute: ({ suspension, ...is }) => usualRollCenter[suspension] - fallenBy(is),
      ...{
        sort: 'estimate',
        within: { absolute: 0.065 },
        source: 'by the kind of suspension; Reimpell, The Automotive Chassis, ch. 3, from memory',
      },
    }),
    way({
      needs: { kind: axleKind, ...fallen },
      compute: ({ kind, ...is }) => (kind === 'beam' ? usualRollCenter['live axle'] : 0.1) - fallenBy(is),
      ...{ sort: 'estimate', within: { absolute: 0.11 }, source: 'by the kind of axle; common practice, no source' },
    }),
  ],
});
carry(rollCenterHeight, {
  needs: { measured: asMeasured(given(rollCenterHeight)), ...fallen, fall: maybe(rollCenterFall) },
  compute: ({ measured, fall, left, right }) => {
    if (left === 0 && right === 0) return measured;
    if (fall === undefined) return refuse('How far the roll center falls with the body is not known.', 'rollCenter.fall');
    return measured - fallenBy({ fall, left, right });
  },
  source: 'as told, and how far it has fallen with the body since',
});
export const unsprungHeight = quantity({
  path: 'unsprung.height',
  nature: 'car',
  scope: 'axle',
  name: 'height of the unsprung weight',
  label: 'unsprung height',
  symbol: 'h_u',
  words: ['unsprung height', 'unsprung cg height', 'unsprung cg'],
  dimension: 'length',
  sane: [0.1, 0.6],
  told: { usually: 'measured', measured: { absolute: 0.01 }, spec: { absolute: 0.02 } },
  measure: 'Near the middle of the hub.',
  estimate: {
    needs: { radius: maybe(freeRadius) },
    compute: ({ radius }) => radius ?? 0.3,
    within: { absolute: 0.025 },
    error: 'common',
    source: 'the middle of the wheel; common practice, no source',
  },
});
export const bumpStopRate = quantity({
  path: 'bumpStop.rate',
  typical: [inPractice('foam bump stops, their first third', 30_000, 150_000)],
  scope: 'axle',
  name: 'rate of the bump stop, along the damper',
  label: 'bump stop rate',
  symbol: 'k_g',
  words: ['bump stop rate', 'bumpstop rate', 'bump stop stiffness', 'stop rate'],
  dimension: 'rate',
  sane: [5000, 2e6],
  told: { usually: 'spec', measured: { relative: 0.15 }, spec: { relative: 0.3 } },
  measure: 'Press it on a scale: the gain of force over its first 10 to 20 mm. It stiffens further; taken as straight.',
  estimate: { needs: {}, compute: () => 80_000, within: { relative: 0.7 }, error: 'common', source: 'common practice, no source' },
});
export const droopStopTravel = quantity({
  path: 'droopStop.travel',
  scope: 'axle',
  name: 'droop travel of the wheel until its stop',
  label: 'droop until the stop',
  symbol: 'u_d',
  state: true,
  words: ['droop stop', 'droop stop travel', 'droop travel', 'droop limit', 'droop'],
  dimension: 'length',
  sane: [0.005, 0.3],
  told: { usually: 'measured', measured: { absolute: 0.004 }, spec: { absolute: 0.01 } },
  measure: 'How far the hub comes down, from ride height, when the body is lifted until the wheel hangs.',
  caution: 'Lift with a rated jack, on level ground, and hold the car on stands before you reach in.',
});
/** rad/m: the top goes in as the wheel comes up. */
const usualCamberGain = {
  strut: -0.3,
  wishbone: -0.6,
  multilink: -0.55,
  'trailing arm': -0.15,
  'twist beam': -0.25,
  'live axle': 0,
} as const;
export const camberGain = quantity({
  path: 'camber.gain',
  scope: 'axle',
  name: 'change of camber in bump',
  label: 'camber gain',
  symbol: 'c',
  words: ['camber gain', 'camber change in bump', 'camber curve'],
  dimension: 'ratioPerLength',
  sane: [-4, 1.5],
  told: { usually: 'measured', measured: { absolute: 0.05 }, spec: { absolute: 0.1 } },
  measure:
    'Camber at 25 mm of bump less camber at ride height, in radians (degrees over 57.3), over 0.025 m; negative when the top goes in. Or tell the front view swing arm length.',
  caution: 'With the spring out and the car on stands.',
  ways: [
    way({
      needs: { suspension },
      compute: ({ suspension }) => usualCamberGain[suspension],
      ...{ sort: 'estimate', within: { absolute: 0.35 }, source: 'by the kind of suspension; common practice, no source' },
    }),
    way({ needs: {}, compute: () => -0.42, ...{ sort: 'estimate', within: { absolute: 0.5 }, source: 'common practice, no source' } }),
  ],
});
export const complianceSteer = quantity({
  path: 'compliance.steer',
  typical: [inPractice('road cars', -0.005236, 0.01047)],
  scope: 'axle',
  name: 'steer that the suspension gives by itself at 1 g',
  label: 'compliance steer',
  symbol: 'A W',
  words: ['compliance steer', 'compliance', 'bushing steer'],
  dimension: 'angle',
  sane: [-2 * degree, 3 * degree],
  told: { usually: 'measured', measured: { absolute: 0.1 * degree }, spec: { absolute: 0.2 * degree } },
  measure:
    'Pull each wheel sideways at the ground with half of the axle weight and read the change of toe. Positive: front wheels turn out of the corner, rear wheels too (tail out).',
});
