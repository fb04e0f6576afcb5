/** What an engine gives over its speeds: from a told curve, or estimated from its two peaks. */

import { type Curve, type Refusal, refuse } from '../../catalog.js';
import { bisect } from '../../numeric/bracket.js';
import { whole } from '../../pieces.js';

export interface TorqueLaw {
  /** Engine speeds between which it is known, rad/s. */
  readonly from: number;
  readonly to: number;
  /** Torque at an engine speed in between, N m. */
  torque(speed: number): number;
  readonly peak: { readonly torque: number; readonly speed: number };
  readonly most: { readonly power: number; readonly speed: number };
}

/** A told curve, straight from point to point. Refused unless speeds rise and torques are above zero. */
export function lawOfCurve({ x, y, between }: Curve): TorqueLaw | Refusal {
  if (x.length < 2) return refuse('A torque curve needs at least two points.');
  if (!y.every((torque) => torque > 0)) return refuse('Torque must stay above zero along the curve.');
  const last = x.length - 1;
  const pieceOf = (speed: number): number => {
    let piece = 0;
    while (piece < last - 1 && speed >= x[piece + 1]!) piece++;
    return piece;
  };
  const slopeOf = (piece: number): number => (between === 'step' ? 0 : (y[piece + 1]! - y[piece]!) / (x[piece + 1]! - x[piece]!));
  const torque = (speed: number): number => {
    if (between === 'step' && speed >= x[last]!) return y[last]!;
    const piece = pieceOf(speed);
    return y[piece]! + slopeOf(piece) * (speed - x[piece]!);
  };
  let peak = { torque: y[0]!, speed: x[0]! };
  let most = { power: 0, speed: x[0]! };
  const tryPower = (speed: number): void => {
    const power = speed * torque(speed);
    if (power > most.power) most = { power, speed };
  };
  x.forEach((speed, i) => {
    if (y[i]! > peak.torque) peak = { torque: y[i]!, speed };
    tryPower(speed);
    // Along a falling piece, torque a + b*n, power is greatest at -a/(2b).
    const slope = i < last ? slopeOf(i) : 0;
    const turn = slope < 0 ? speed / 2 - y[i]! / (2 * slope) : speed;
    if (i < last && turn > speed && turn < x[i + 1]!) tryPower(turn);
  });
  return { from: x[0]!, to: x[last]!, torque, peak, most };
}

export interface Peaks {
  /** N m and rad/s. */
  readonly torque: number;
  readonly torqueSpeed: number;
  /** W and rad/s. */
  readonly power: number;
  readonly powerSpeed: number;
  /** Highest speed used, rad/s. */
  readonly redline: number;
  /** What the engine gives away from its peaks over what this curve says there; 1 changes nothing. */
  readonly fit: number;
}
/** Torque at no speed, as a share of the peak, if the parabola below the peak ran on; and the part of its power that an engine loses at twice the speed of its peak, likewise. Common practice, no source. */
const belowPeak = 0.5;
const abovePeak = 4;
/** The estimate begins at this part of the speed of peak torque: below it an engine hardly pulls. */
const lowest = 0.2;

/**
 * The smoothest simple curve through both peaks. Between them the power rises as `P - (P - P_T)*(1 - u)^m`, u from 0 to 1, with the exponent that makes the torque stand
 * still at its own peak; so the torque never passes its peak, nor the power its own, and each is greatest where it was told.
 * Below the torque peak the torque, above the power peak the power, is a parabola.
 * @returns a refusal where one engine cannot have both peaks: power over its speed must lie below the peak torque, and above its share at the torque peak
 */
export function lawOfPeaks({ torque, torqueSpeed, power, powerSpeed, redline, fit }: Peaks): TorqueLaw | Refusal {
  const atPeak = torque * torqueSpeed;
  if (!(torqueSpeed < powerSpeed))
    return refuse('Peak torque comes at a lower engine speed than peak power.', 'engine.peakTorqueSpeed', 'engine.peakPowerSpeed');
  if (power > torque * powerSpeed)
    return refuse(
      'The peaks do not fit: that power at that speed takes more than the peak torque.',
      'engine.peakTorque',
      'engine.peakPower',
    );
  if (power <= atPeak)
    return refuse(
      'The peaks do not fit: the engine has more power at its torque peak than at its power peak.',
      'engine.peakTorque',
      'engine.peakPower',
    );
  const exponent = (torque * (powerSpeed - torqueSpeed)) / (power - atPeak);
  const law = (speed: number): number => {
    if (speed <= torqueSpeed) {
      const below = 1 - speed / torqueSpeed;
      return torque * (1 - belowPeak * below * below) * away(below);
    }
    if (speed <= powerSpeed) {
      const part = (speed - torqueSpeed) / (powerSpeed - torqueSpeed);
      return ((power - (power - atPeak) * (1 - part) ** exponent) / speed) * (1 + (fit - 1) * 8 * part * part * (1 - part) * (1 - part));
    }
    const above = speed / powerSpeed - 1;
    return Math.max(0, (power / speed) * (1 - abovePeak * above * above)) * away(above);
  };
  // The doubt is nothing at the peaks and whole well away from them; half between them.
  const away = (distance: number): number => 1 + ((fit - 1) * distance * distance) / (distance * distance + 0.15 * 0.15);
  return {
    from: lowest * torqueSpeed,
    to: Math.max(redline, powerSpeed),
    torque: law,
    peak: { torque, speed: torqueSpeed },
    most: { power, speed: powerSpeed },
  };
}

/** Torque at an engine speed (rad/s), or why there is none. */
export function torqueAt(law: TorqueLaw, speed: number): number | Refusal {
  // Room for rounding at the ends.
  if (speed < law.from * (1 - 1e-9)) return refuse('The engine turns too slowly there to pull.', 'speed');
  if (speed > law.to * (1 + 1e-9)) return refuse('That is beyond the highest engine speed of this car.', 'speed', 'redline');
  return law.torque(speed);
}

/**
 * The highest engine speed at which the torque still reaches what is asked; undefined where it never does.
 * @param wanted torque, N m, above 0
 */
export function lastSpeedAt(law: TorqueLaw, wanted: number): number | undefined {
  if (law.torque(law.to) >= wanted) return law.to;
  const steps = 60;
  let [low, high] = [Number.NaN, law.to];
  for (let k = steps - 1; k >= 0 && Number.isNaN(low); k--) {
    const speed = law.from + ((law.to - law.from) * k) / steps;
    if (law.torque(speed) >= wanted) low = speed;
    else high = speed;
  }
  if (Number.isNaN(low)) {
    // A narrow top between two steps.
    if (law.peak.torque < wanted) return undefined;
    [low, high] = [law.peak.speed, Math.min(law.to, law.peak.speed + (law.to - law.from) / steps)];
  }
  return whole(bisect((speed) => law.torque(speed) >= wanted, low, high))[0];
}
