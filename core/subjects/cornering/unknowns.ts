/** Where each unknown of the four-wheel equilibrium stands: body height and roll at each axle, wheel heights, vertical loads, chassis torque. */
export const unknowns = 13;
export const at = {
  height: (j: number): number => 2 * j,
  roll: (j: number): number => 2 * j + 1,
  wheel: 4,
  load: 8,
  torque: 12,
} as const;
