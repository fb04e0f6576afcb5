/** Which way the trade says that a change goes. No source: it is shown beside what was computed and marked so, never mixed into it. */
import type { Wish } from './goal.js';

type End = 'front' | 'rear';
/** What more of an input at the front does to rotation, by what the trade says; at the rear it is the other way unless told apart. */
const rotation: Readonly<Record<string, { readonly front: 1 | -1; readonly rear: 1 | -1 }>> = {
  'bar.diameter': { front: -1, rear: 1 },
  'bar.rate': { front: -1, rear: 1 },
  'roll.bar': { front: -1, rear: 1 },
  // A longer lever is a softer bar.
  'bar.lever': { front: 1, rear: -1 },
  'spring.rate': { front: -1, rear: 1 },
  'tire.pressure': { front: -1, rear: 1 },
  // More is less negative.
  camber: { front: -1, rear: 1 },
  // More is toe-in.
  toe: { front: -1, rear: -1 },
  'wheel.spacer': { front: 1, rear: -1 },
  track: { front: 1, rear: -1 },
  spacer: { front: -1, rear: 1 },
  'perch.turns': { front: -1, rear: 1 },
  'grip.mu': { front: 1, rear: -1 },
};
/** What more of it does to roll in the turn. */
const roll: Readonly<Record<string, 1 | -1>> = {
  'bar.diameter': -1,
  'bar.rate': -1,
  'roll.bar': -1,
  'bar.lever': 1,
  'spring.rate': -1,
  track: -1,
  'wheel.spacer': -1,
};

/**
 * The direction of a wish that more (1) or less (-1) of an input takes: 1 toward more of the wish. Undefined where the trade says nothing plain.
 * A grip of one end is helped by what is done at that end alone.
 */
export function practiceOf(wish: Wish, entry: string, end: End | undefined, way: 1 | -1): 1 | -1 | undefined {
  if (wish === 'roll') {
    const sign = roll[entry];
    return sign === undefined ? undefined : sign === way ? 1 : -1;
  }
  const sides = end === undefined ? undefined : rotation[entry];
  if (!sides || end === undefined) return undefined;
  const turns = sides[end] === way ? 1 : -1;
  if (wish === 'rotation') return turns;
  if (wish === 'front grip' && end === 'front') return turns;
  if (wish === 'rear grip' && end === 'rear') return turns === 1 ? -1 : 1;
  return undefined;
}
/** What is said of damper clicks, which no figure reads. */
export const damperPractice =
  'common practice, no source: dampers act while the car takes its set, going in and coming out, not mid corner';
