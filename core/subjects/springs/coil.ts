/**
 * A round-wire helical compression spring. SI throughout.
 * `wire` diameter d (m), `diameter` mean coil diameter D (m), `turns` active coils n, `modulus` shear modulus G (Pa).
 * Source of all but where named: Bhandari, Design of Machine Elements, chapter 10 (worked examples checked in test/references).
 */

/** Spring index C = D/d. Useful from about 3; below 1 there is no coil. */
export const springIndex = (wire: number, diameter: number): number => diameter / wire;

/** Rate k = G d^4/(8 D^3 n), N/m: torsion of the wire alone, ends excluded. */
export const coilRate = (modulus: number, wire: number, diameter: number, turns: number): number =>
  (modulus * wire ** 4) / (8 * diameter ** 3 * turns);

/** Wahl's factor for curvature and direct shear, of the spring index. */
export const wahlFactor = (index: number): number => (4 * index - 1) / (4 * index - 4) + 0.615 / index;

/** Bergstraesser's factor, which many texts use instead of Wahl's: within 1 % of it for an index over 4. */
export const bergstraesserFactor = (index: number): number => (4 * index + 2) / (4 * index - 3);

/** Greatest shear stress in the wire, Pa, under a force (N), with a curvature factor of one's choice. */
export const coilStress = (factor: number, force: number, wire: number, diameter: number): number =>
  (factor * 8 * force * diameter) / (Math.PI * wire ** 3);

/** Mass of the active wire, kg; density in kg/m^3 (spring steel 7850). */
export const activeMass = (wire: number, diameter: number, turns: number, density: number): number =>
  density * ((Math.PI * wire ** 2) / 4) * Math.PI * diameter * turns;

/** First surge frequency, Hz, both ends held: half the root of rate over active mass. */
export const surgeFrequency = (rate: number, mass: number): number => Math.sqrt(rate / mass) / 2;

/** Length with all coils touching, m: ground ends; unground squared ends are one wire longer. */
export const solidLength = (wire: number, turns: number, deadTurns: number): number => wire * (turns + deadTurns);
