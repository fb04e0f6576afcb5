/** What a driven axle can push with, by its differential, in a line and in a corner. */
import { bisect } from '../../numeric/bracket.js';
import { whole } from '../../pieces.js';

/** `open`: both wheels push alike. `biasing`: the one that grips may push up to `bias` times the other. `locked`: each what it can. */
export type Differential = { readonly kind: 'open' } | { readonly kind: 'biasing'; readonly bias: number } | { readonly kind: 'locked' };

/** Sideways force that is left to both wheels while they push with `weak` and `strong`, N. */
const sidewaysLeft = (gripWeak: number, gripStrong: number, weak: number, strong: number): number =>
  Math.sqrt(Math.max(0, gripWeak * gripWeak - weak * weak)) + Math.sqrt(Math.max(0, gripStrong * gripStrong - strong * strong));

/**
 * The largest thrust of an axle that still holds its line.
 * The sum of both longitudinal forces is made as large as the friction ellipses and the differential allow, while the lateral force that the corner asks remains.
 * @param grip what each wheel can give in any one direction (mu*N), N, at least 0
 * @param lateral lateral force that the axle must give, N, without sign
 * @returns thrust in N; 0 where the corner already takes all there is
 * @source CORNERING, "Thrust while cornering" (exact; friction ellipse)
 */
export function thrustLimit(grip: readonly [number, number], lateral: number, differential: Differential): number {
  const weak = Math.min(...grip);
  const strong = Math.max(...grip);
  const both = weak + strong;
  if (lateral >= both) return 0;
  // Each wheel at the same angle on its ellipse: what no differential can better.
  const free = Math.sqrt(both * both - lateral * lateral);
  const bias = differential.kind === 'locked' ? Number.POSITIVE_INFINITY : differential.kind === 'open' ? 1 : differential.bias;
  if (strong <= bias * weak) {
    if (bias > 1 || strong === weak) return free;
  }
  if (!Number.isFinite(bias)) return free;
  const largest = Math.min(weak, strong / bias);
  if (sidewaysLeft(weak, strong, largest, bias * largest) >= lateral) return (1 + bias) * largest;
  // What is left sideways falls as the thrust rises: the one crossing, halved to rounding.
  const [low] = whole(bisect((thrust) => sidewaysLeft(weak, strong, thrust, bias * thrust) >= lateral, 0, largest));
  return (1 + bias) * low;
}

/**
 * Acceleration over g at which a beam axle on an open differential loses grip in a straight line: the propeller shaft's torque lifts one of its wheels.
 * @param mu grip coefficient, both tires
 * @param rearShare share of the weight on the driven rear axle
 * @param heightOverBase CG height over wheelbase
 * @param radius loaded tire radius, m; `ratio` final drive; `track` of the rear, m
 * @param frontRollShare share of the roll stiffness that the front has: what of the torque the front suspension reacts through the body
 * @source CORNERING (Gillespie, rederived)
 */
export function beamDriveLimit(
  mu: number,
  rearShare: number,
  heightOverBase: number,
  radius: number,
  ratio: number,
  track: number,
  frontRollShare: number,
): number {
  return (mu * rearShare) / (1 - mu * heightOverBase + (2 * mu * radius * frontRollShare) / (ratio * track));
}
