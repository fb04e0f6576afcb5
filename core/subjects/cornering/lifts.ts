/** Where the inner wheels leave the ground as a turn grows, and the last turn in which the car finds its balance: beyond that it goes over. */
import { isRefusal, type Refusal } from '../../catalog.js';
import type { Course } from '../../numeric/follow.js';
import { type Equilibrium, equilibrium, nearby } from './equilibrium.js';
import type { CornerModel, Manoeuvre } from './model.js';
import { type Condition, courseOf, followedRoot, rootOf } from './roots.js';
import { at } from './unknowns.js';

type Wheel = 0 | 1 | 2 | 3;
export interface Lift {
  readonly wheel: Wheel;
  /** Over g, without sign. */
  readonly lateral: number;
  /** Where the same of cars nearby is found from. */
  readonly course?: Course;
}
export interface LiftOffs {
  /** In the order in which they happen: none, one or both of the inner wheels. */
  readonly lifts: readonly Lift[];
  /** The last steady state, over g, without sign; Infinity where there is one as far as is looked. */
  readonly over: number;
  /** Whether the steady states had to be walked up. */
  readonly walked: boolean;
  /** The states in which the body stood after it had snapped over, in order. */
  readonly landed: readonly Equilibrium[];
}
/** No car on tires goes beyond this, g. */
const farthest = 3;
const [longest, shortest] = [0.1, 1e-9] as const;
/** A doubt's change is told apart to this, g: far below what any doubt that matters moves, and what is less is none. */
const telling = 1e-6;
/** Steps in which a state is met where it is there, for a doubt: what takes more lies within its last millionth. */
const few = 12;
/** How far before the first lift-off of the car without a doubt the walk begins, g. */
const before = 0.2;
/** How far past a last state another is looked for, g. */
const past = 0.002;
/** N: a wheel that carries no more hangs. */
const nothing = 1e-6;

/** Walks the steady states up, from rest or from a turn of which it is known that no wheel lifts before it. */
class Walk {
  readonly #model: CornerModel;
  readonly #whole: Manoeuvre;
  readonly #way: 1 | -1;
  readonly #shortest: number;
  readonly #steps: number | undefined;

  constructor(model: CornerModel, whole: Manoeuvre, way: 1 | -1, finest: number) {
    this.#shortest = finest;
    this.#steps = finest === shortest ? undefined : few;
    this.#model = model;
    this.#whole = whole;
    this.#way = way;
  }
  #asked(lateral: number): Manoeuvre {
    return { ...this.#whole, lateral: this.#way * lateral };
  }
  /** The state at an acceleration: from a state near it, or built up from rest; undefined where there is none. */
  state(lateral: number, near?: Equilibrium): Equilibrium | undefined {
    const built = equilibrium(this.#model, this.#asked(lateral), near);
    return isRefusal(built) ? undefined : built;
  }
  /** By halves: what holds at `low` and no more at `high`, down to the last digits that can be told apart. */
  #last(low: number, from: Equilibrium, high: number, holds: (state: Equilibrium) => boolean): readonly [number, Equilibrium] {
    let [reached, state, beyond] = [low, from, high];
    while (beyond - reached > this.#shortest) {
      const middle = (reached + beyond) / 2;
      const next = nearby(this.#model, this.#asked(middle), state, this.#steps);
      if (next && holds(next)) [reached, state] = [middle, next];
      else beyond = middle;
    }
    return [reached, state];
  }
  /**
   * Where a spring comes loose the body may snap over onto its droop stop and stand there: another state, just past the last one that was walked up to.
   * Where there is none at once the car goes over, whatever it could hold in a sharper turn.
   */
  #across(until: number, there: Equilibrium, landed: Equilibrium | undefined): readonly [number, Equilibrium] | undefined {
    const known = landed && nearby(this.#model, this.#asked(until + past), landed);
    if (known) return [until + past, known];
    // At the last state itself the slopes say nothing of where to go.
    const shortly = nearby(this.#model, this.#asked(until - past), there) ?? there;
    const found = this.state(until + past, shortly);
    return found && [until + past, found];
  }
  /** @param near of the car without a doubt: a last state near its last is the last, and where it snapped over, this car lands near by */
  all(start: number, near?: LiftOffs): LiftOffs | Refusal {
    const rest = equilibrium(this.#model, this.#asked(start));
    if (isRefusal(rest)) return rest;
    const lifts: Lift[] = [];
    const landed: Equilibrium[] = [];
    const inner: Wheel[] = this.#way === 1 ? [0, 2] : [1, 3];
    const down = (wheel: Wheel, { x }: Equilibrium): boolean => x[at.load + wheel]! > nothing;
    // A wheel that comes up in a snap does so where the last state before it is.
    let [lateral, state, since] = [start, rest, start];
    while (lateral < farthest) {
      const next = Math.min(farthest, lateral + longest);
      const reached = nearby(this.#model, this.#asked(next), state);
      const [until, there] = reached ? [next, reached] : this.#last(lateral, state, next, () => true);
      for (const wheel of inner) {
        if (lifts.some((one) => one.wheel === wheel)) continue;
        if (!down(wheel, state)) lifts.push({ wheel, lateral: since });
        else if (!down(wheel, there)) lifts.push({ wheel, lateral: this.#last(lateral, state, until, (one) => down(wheel, one))[0] });
      }
      const known = near !== undefined && Math.abs(until - near.over) < longest;
      const on = reached ? ([until, there] as const) : known ? undefined : this.#across(until, there, near?.landed[landed.length]);
      if (on && !reached) landed.push(on[1]);
      if (!on) return { lifts: lifts.sort((a, b) => a.lateral - b.lateral), over: until, walked: true, landed };
      [lateral, state, since] = [...on, until];
    }
    return { lifts: lifts.sort((a, b) => a.lateral - b.lateral), over: Number.POSITIVE_INFINITY, walked: true, landed };
  }
  /** Whether two roots lie on the way up from rest: before the first both wheels are down, then one, and none past the second. */
  onTheWay([first, second]: readonly Lift[]): boolean {
    if (!first || !second) return false;
    const before = this.state(first.lateral * 0.999);
    const between = this.state((first.lateral + second.lateral) / 2, before);
    const late = this.state(second.lateral - (second.lateral - first.lateral) / 20, between);
    const load = (state: Equilibrium | undefined, { wheel }: Lift): number => state?.x[at.load + wheel] ?? Number.NaN;
    return (
      load(before, first) > nothing &&
      load(before, second) > nothing &&
      load(between, first) <= nothing &&
      load(between, second) > nothing &&
      // A tenth of the way is left; past a fold that the root lies behind it would carry more.
      load(late, second) > 0 &&
      load(late, second) < load(between, second) / 5
    );
  }
}

/** What has moved less than can be told apart has not moved. */
function settled(found: LiftOffs | Refusal, near: LiftOffs): LiftOffs | Refusal {
  if (isRefusal(found)) return found;
  const still = (now: number, was: number | undefined): number => (was !== undefined && Math.abs(now - was) < 2 * telling ? was : now);
  const lifts = found.lifts.map((lift) => ({
    ...lift,
    lateral: still(lift.lateral, near.lifts.find(({ wheel }) => wheel === lift.wheel)?.lateral),
  }));
  return { ...found, lifts, over: still(found.over, near.over) };
}

/**
 * The lift-offs of a turn that grows, and where it ends. Newton's roots where they lie on the way up from rest; else the steady states are walked up.
 * @param way 1 for left turns, -1 for right
 * @param near the same of the same car without a doubt: what has to be walked there is walked here from shortly before its first wheel lifts
 */
export function liftOffs(model: CornerModel, manoeuvre: Manoeuvre, way: 1 | -1, near?: LiftOffs): LiftOffs | Refusal {
  const walk = new Walk(model, manoeuvre, way, near ? telling : shortest);
  const from = Math.max(0, Math.min(near?.over ?? 0, near?.lifts[0]?.lateral ?? Number.POSITIVE_INFINITY, farthest) - before);
  if (near?.walked) return settled(walk.all(from, near), near);
  const inner: readonly Wheel[] = way === 1 ? [0, 2] : [1, 3];
  const roots = inner.flatMap((wheel): Lift[] => {
    const condition: Condition = { kind: 'lift', wheel };
    const course = near?.lifts.find((one) => one.wheel === wheel)?.course;
    const found = (course && followedRoot(course, model, manoeuvre, way, condition)) ?? rootOf(model, manoeuvre, way, condition);
    if (!found) return [];
    return [{ wheel, lateral: Math.abs(found.lateral), course: course ?? courseOf(model, manoeuvre, condition, found) }];
  });
  const found = roots.sort((a, b) => a.lateral - b.lateral);
  const sure = near ? found.length === 2 && found.every(({ wheel }, n) => wheel === near.lifts[n]?.wheel) : walk.onTheWay(found);
  return sure ? { lifts: found, over: found[1]!.lateral, walked: false, landed: [] } : walk.all(from);
}
