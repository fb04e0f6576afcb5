/** How stiff a bar has to be for a share of the roll stiffness in front, where the springs' own share is known. */

/**
 * Roll stiffness of one bar over that of all springs, so that the front has a wanted share of the whole.
 * Springs: front s of 1. A rear bar x: s/(1 + x) = w; a front bar x: (s + x)/(1 + x) = w. Below 0 where a bar at that end takes the share the other way.
 * @param springs front share of the roll stiffness of the springs alone, above 0 and below 1
 * @param wanted front share with the bar, above 0 and below 1
 * @source by definition of the share
 * @example barForShare(0.6, 0.8, 'front') // 1: as stiff as all springs together
 */
export const barForShare = (springs: number, wanted: number, end: 'front' | 'rear'): number =>
  end === 'rear' ? springs / wanted - 1 : (wanted - springs) / (1 - wanted);
