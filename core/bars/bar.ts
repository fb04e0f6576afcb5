/** The anti-roll bar as a beam: a middle part that twists, and two arms that bend. */

/** Second moment of area of a round section about its diameter, m^4; the polar one is twice it. */
export const secondMomentOfArea = (outer: number, bore: number): number => (Math.PI * (outer ** 4 - bore ** 4)) / 64;

export interface Bar {
  /** Outer diameter and bore (0 when solid), m. */
  readonly outer: number;
  readonly bore: number;
  /** Length that twists, m. */
  readonly length: number;
  /** Lever at which the link pulls, square to the twisting axis, m. */
  readonly lever: number;
  /** Length of the arm itself along which it bends, m; at least the lever. */
  readonly arm: number;
  /** Bending stiffness of each arm, N m^2; Infinity where the arms are blades or castings that hardly bend. */
  readonly armStiffness: number;
  readonly shearModulus: number;
}

/**
 * Rate of a U-shaped bar at its ends, per RELATIVE displacement of the two ends, N/m.
 * Twisting acts at the lever, bending over the arm's true length. Corner bends and bushings are not in it.
 * @source REFERENCES A5 (beam theory): 1/K = A^2*B/(G*J) + 2*A^3/(3*E*I)
 */
export function barRate({ outer, bore, length, lever, arm, armStiffness, shearModulus }: Bar): number {
  const twisting = (lever * lever * length) / (shearModulus * 2 * secondMomentOfArea(outer, bore));
  const bending = (2 * arm ** 3) / (3 * armStiffness);
  return 1 / (twisting + bending);
}

/** The same with a link (its bushings) at each end in series: `2/link` of compliance more, N/m. */
export const withLinks = (rate: number, link: number): number => 1 / (1 / rate + 2 / link);
