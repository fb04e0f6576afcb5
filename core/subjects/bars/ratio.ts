/** How much stiffer one bar is than another, as the wheel feels it. */

export interface BarShape {
  readonly outer: number;
  /** 0: solid. */
  readonly bore: number;
  /** Lever of the hole in use; alike on both where it does not differ. */
  readonly lever: number;
}
/**
 * Stiffness at the wheel of the second bar over that of the first: (D^4 - d^4)/lever^2 of each. Twist and the bending of the arms both follow the
 * section, so that for one lever this is exact for the bar itself; links that give take some of it, and arms do where the lever changes.
 * @source second moments of area go with D^4 - d^4, and virtual work; REFERENCES A3 and A4
 * @example twistRatio({ outer: 22, bore: 0, lever: 1 }, { outer: 25, bore: 0, lever: 1 }) // 1.6675
 */
export const twistRatio = (from: BarShape, to: BarShape): number =>
  ((to.outer ** 4 - to.bore ** 4) / to.lever ** 2) * (from.lever ** 2 / (from.outer ** 4 - from.bore ** 4));
