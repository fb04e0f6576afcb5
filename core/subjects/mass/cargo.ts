/** What is put into a car: loads and where they sit, and how they press on the axles. Lengths in m, weights in kg. */
import { type Refusal, refuse } from '../../catalog.js';

/** Something of which not all may be known. `behind` the front axle, `right` of the middle of the car. */
interface Load {
  readonly weight: number | undefined;
  readonly behind: number | undefined;
  readonly right: number | undefined;
}
export interface Cargo {
  readonly wheelbase: number | undefined;
  readonly driver: Load;
  readonly passenger: Load;
  readonly ballast: Load;
  readonly fuel: Load;
}
/** What one load gives to each axle, kg, and its moment to the left, kg m; undefined where something of it is not known. */
interface Pressing {
  readonly front: number | undefined;
  readonly rear: number | undefined;
  readonly frontMoment: number | undefined;
  readonly rearMoment: number | undefined;
}
/** What a load is called, and what can be told of it: its weight, and where it sits. */
const kinds = {
  driver: ['driver.weight', 'driver.behind', 'driver.right'],
  passenger: ['passenger.weight', 'passenger.behind', 'passenger.right'],
  ballast: ['ballast.weight', 'ballast.behind', 'ballast.right'],
  fuel: ['fuel.volume', 'tank.behind', 'tank.right'],
} as const;
type Kind = keyof typeof kinds;
const allKinds: readonly Kind[] = ['driver', 'passenger', 'ballast', 'fuel'];

const nothing: Pressing = { front: 0, rear: 0, frontMoment: 0, rearMoment: 0 };
function pressing({ weight, behind, right }: Load, wheelbase: number | undefined): Pressing {
  if (weight === 0) return nothing;
  const back = weight === undefined || behind === undefined || wheelbase === undefined ? undefined : (weight * behind) / wheelbase;
  const front = back === undefined || weight === undefined ? undefined : weight - back;
  const times = (part: number | undefined): number | undefined => (part === undefined || right === undefined ? undefined : -part * right);
  return { front, rear: back, frontMoment: times(front), rearMoment: times(back) };
}
const isSame = (a: Load, b: Load): boolean => a.weight === b.weight && a.behind === b.behind && a.right === b.right;

function notKnown(kind: Kind, { weight, behind, right }: Load, wheelbase: number | undefined): Refusal {
  const [heavy, back, across] = kinds[kind];
  const lacks = [
    weight === undefined ? { words: 'how much it weighs', path: heavy } : undefined,
    behind === undefined ? { words: 'how far behind the front axle it sits', path: back } : undefined,
    right === undefined ? { words: 'how far right of the middle it sits', path: across } : undefined,
    wheelbase === undefined ? { words: 'the wheelbase', path: 'wheelbase' } : undefined,
  ].filter((lack) => lack !== undefined);
  const words = lacks.map((lack) => lack.words).join(', ');
  return refuse(`The ${kind} has changed since the car was weighed, and this is not known: ${words}.`, ...lacks.map(({ path }) => path));
}

/** How much of something there is more than there was. Refused where what has changed is not all known; what has not changed need not be. */
export function gained(then: Cargo, now: Cargo, of: (load: Pressing) => number | undefined): number | Refusal {
  if (then === now) return 0;
  let gain = 0;
  for (const kind of allKinds) {
    const alike = isSame(then[kind], now[kind]);
    if (alike && then.wheelbase === now.wheelbase) continue;
    const [before, after] = [of(pressing(then[kind], then.wheelbase)), of(pressing(now[kind], now.wheelbase))];
    if (before !== undefined && after !== undefined) gain += after - before;
    // A wheelbase that has become known since is not a change.
    else if (!alike) return before === undefined ? notKnown(kind, then[kind], then.wheelbase) : notKnown(kind, now[kind], now.wheelbase);
  }
  return gain;
}
