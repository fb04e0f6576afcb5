/**
 * Every dimension that a fact or a figure can have, with its coherent SI unit and its exponents of kilogram, metre, second and kelvin.
 * An angle counts as a plain number, as in the SI. A test derives each formula's dimension from these exponents.
 */
export const dimensions = {
  ratio: { unit: '', base: [0, 0, 0, 0] },
  mass: { unit: 'kg', base: [1, 0, 0, 0] },
  force: { unit: 'N', base: [1, 1, -2, 0] },
  length: { unit: 'm', base: [0, 1, 0, 0] },
  rate: { unit: 'N/m', base: [1, 0, -2, 0] },
  angle: { unit: 'rad', base: [0, 0, 0, 0] },
  pressure: { unit: 'Pa', base: [1, -1, -2, 0] },
  stress: { unit: 'Pa', base: [1, -1, -2, 0] },
  frequency: { unit: 'Hz', base: [0, 0, -1, 0] },
  time: { unit: 's', base: [0, 0, 1, 0] },
  speed: { unit: 'm/s', base: [0, 1, -1, 0] },
  acceleration: { unit: 'm/s^2', base: [0, 1, -2, 0] },
  angularSpeed: { unit: 'rad/s', base: [0, 0, -1, 0] },
  turnsPerLength: { unit: '1/m', base: [0, -1, 0, 0] },
  ratioPerLength: { unit: '1/m', base: [0, -1, 0, 0] },
  torque: { unit: 'N m', base: [1, 2, -2, 0] },
  rollStiffness: { unit: 'N m/rad', base: [1, 2, -2, 0] },
  power: { unit: 'W', base: [1, 2, -3, 0] },
  powerPerMass: { unit: 'W/kg', base: [0, 2, -3, 0] },
  energy: { unit: 'J', base: [1, 2, -2, 0] },
  dampingRate: { unit: 'N s/m', base: [1, 0, -1, 0] },
  volume: { unit: 'm^3', base: [0, 3, 0, 0] },
  temperature: { unit: 'K', base: [0, 0, 0, 1] },
} as const;

export type Dimension = keyof typeof dimensions;
