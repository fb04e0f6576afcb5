/**
 * The car as the four-wheel equilibrium sees it. SI throughout; signs of ISO 8855: x forward, y left, z up, roll positive with the right side down.
 * Wheels stand in the order left, right of the front axle, then of the rear.
 */

/** What springs and stops of one wheel push down with, as a function of its bump travel: writes the force (N) and its slope (N/m). */
export interface WheelLaw {
  force(bump: number): number;
  slope(bump: number): number;
}
export interface BarModel {
  /** Torque in the bar per turn of one end against the other, N m/rad: twist, arm bending and links in series. */
  readonly stiffness: number;
  /** Turn of each end per vertical travel of its wheel (for a beam: of its link), rad/m: motion ratio over lever. Unequal where the holes differ. */
  readonly arms: readonly [number, number];
  /** Free mismatch of the ends, rad: positive pushes the left wheel down. */
  readonly mismatch: number;
  /** Distance between the links, m: for a beam axle. */
  readonly linkSpacing: number;
}
/** Grip coefficient of a tire at a load (N), and its slope (1/N). `valid` is the load up to which the law may be used. */
export interface GripLaw {
  coefficient(load: number): number;
  slope(load: number, coefficient: number): number;
  readonly valid: number;
}
/** How the wheels of an axle lean, and what that does to their grip: a factor of 1 upright, most at `best`. */
export interface CamberModel {
  /** Camber at rest, rad, top outward positive. */
  readonly standing: readonly [number, number];
  /** Camber per bump travel, rad/m: minus one over the front-view swing-arm length. Not for a beam axle. */
  readonly gain: number;
  /** Lean toward the turn at which the tire grips most, rad. */
  readonly best: number;
  /** The factor is `(1 + sharpness*best^2)/(1 + sharpness*(lean - best)^2)`. */
  readonly sharpness: number;
}
export interface AxleModel {
  readonly kind: 'independent' | 'beam';
  readonly track: number;
  /** Distance between the springs of a beam axle, m. */
  readonly springBase: number;
  readonly law: readonly [WheelLaw, WheelLaw];
  readonly bar: BarModel | undefined;
  readonly rollCentreHeight: number;
  readonly unsprungHeight: number;
  /** Weights, N. */
  readonly unsprung: readonly [number, number];
  /** Vertical rate of each tire, N/m; Infinity for a rigid one. */
  readonly tireRate: number;
  /** Loads in the reference state, N, in which `law` is read at zero bump. */
  readonly reference: readonly [number, number];
  readonly grip: readonly [GripLaw, GripLaw];
  /** Undefined where camber is left out. */
  readonly camber: CamberModel | undefined;
  /** Bump travel at which each wheel meets its first stop, m; Infinity where none is known. The stops themselves are in `law`. */
  readonly contact: readonly [number, number];
  /**
   * Moments to the left, N m: on the body, by the sprung weight that lies off center (the law's springs carry it) and the propeller shaft's torque;
   * and on a beam axle itself, by that torque.
   */
  readonly rest: { readonly body: number; readonly axle: number };
  /** Tangent of the angle at which drive and brake forces lean on the links: lift of the body per unit of force. */
  readonly driveLift: number;
}
export interface CornerModel {
  readonly axles: readonly [AxleModel, AxleModel];
  /** Centre of gravity behind the front axle and ahead of the rear, m. */
  readonly toFront: number;
  readonly toRear: number;
  readonly cgHeight: number;
  readonly sprungCgHeight: number;
  /** N m/rad; Infinity for a rigid body. */
  readonly chassisStiffness: number;
  /** Whether the sideways shift of the weight counts: one switch for roll, loads and lift. */
  readonly gravity: boolean;
}
/** What is asked of the car. */
export interface Manoeuvre {
  /** Lateral acceleration over standard gravity, positive to the left (a left turn). */
  readonly lateral: number;
  /** Longitudinal acceleration over standard gravity, positive forward. */
  readonly longitudinal: number;
  /** Longitudinal force of each wheel, N. */
  readonly drive: readonly [number, number, number, number];
  /** Yaw moment of the longitudinal forces about the centre of gravity, N m, positive to the left. */
  readonly yawMoment: number;
}
export const steadyTurn = (lateral: number): Manoeuvre => ({ lateral, longitudinal: 0, drive: [0, 0, 0, 0], yawMoment: 0 });
