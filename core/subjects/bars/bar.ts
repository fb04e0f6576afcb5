/** The anti-roll bar as a beam: a middle part that twists, two arms that bend, and links that give. */

/** Second moment of area of a round section about its diameter, m^4; the polar one is twice it. */
export const secondMomentOfArea = (outer: number, bore: number): number => (Math.PI * (outer ** 4 - bore ** 4)) / 64;

/** Mass of a U-shaped round bar, kg, from the length of its centre line. */
export const barMass = (outer: number, bore: number, centreLine: number, density: number): number =>
  (Math.PI / 4) * (outer * outer - bore * bore) * centreLine * density;

export interface BarEnd {
  /** Lever at which the link pulls, square to the twisting axis, m: the hole. */
  readonly lever: number;
  /** Length of the arm itself along which it bends, m; at least the lever. */
  readonly arm: number;
}
export interface Bar {
  /** Outer diameter and bore (0 when solid), m. */
  readonly outer: number;
  readonly bore: number;
  /** Length that twists, m. */
  readonly length: number;
  /** Left and right. */
  readonly ends: readonly [BarEnd, BarEnd];
  /** Young's modulus of the arms, Pa; Infinity where they are blades or castings that hardly bend. */
  readonly youngsModulus: number;
  readonly shearModulus: number;
  /** Rate of each link with its bushings, N/m; Infinity for rigid ones. */
  readonly link: number;
}

/**
 * Torque in the bar per turn of one end against the other, N m/rad.
 * Twisting acts over the length, bending over each arm's true length, links in series at each lever. Corner bends are not in it.
 * With equal levers l it is l^2 times the rate per RELATIVE displacement of the ends: 1/K = A^2*B/(G*J) + 2*A^3/(3*E*I) + 2/k_link.
 * @source REFERENCES A5 (beam theory)
 */
export function barStiffness({ outer, bore, length, ends, youngsModulus, shearModulus, link }: Bar): number {
  const second = secondMomentOfArea(outer, bore);
  let compliance = length / (shearModulus * 2 * second);
  for (const { lever, arm } of ends) compliance += (arm ** 3 / (3 * youngsModulus * second) + 1 / link) / lever ** 2;
  return 1 / compliance;
}
