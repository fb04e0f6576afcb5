/** Whether left and right are alike, so that the car turns both ways alike. */
import type { AxleModel, CornerModel } from './model.js';

/** Bump travels at which the springs of both sides are compared, m: about rest, at the ends of usual travel, and beyond its stops. */
const compared = [-0.12, -0.05, -0.02, 0, 0.02, 0.05, 0.12] as const;
const alike = (a: number, b: number): boolean => a === b || Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));

function mirroredAxle({ law, bar, unsprung, reference, camber, contact, rest }: AxleModel): boolean {
  return (
    alike(...unsprung) &&
    alike(...reference) &&
    alike(...contact) &&
    rest.body === 0 &&
    rest.axle === 0 &&
    (!bar || (bar.mismatch === 0 && alike(...bar.arms))) &&
    (!camber || alike(...camber.standing)) &&
    compared.every((bump) => alike(law[0].force(bump), law[1].force(bump)))
  );
}
export const mirrored = ({ axles }: CornerModel): boolean => axles.every(mirroredAxle);
