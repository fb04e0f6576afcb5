/** Two cars, setups or states against each other in a sentence: which has more of it, by its name, by how much, and how sure that is. */
import type { Difference } from '../../core/difference.js';
import { balanceIndex, otherWayBalance } from '../../core/subjects/cornering/balance.js';
import type { Preferences } from '../context.js';
import { catalog } from '../looked.js';
import { sentence } from './amount.js';
import { doesText, percent, tenth } from './balance.js';
import { isChange } from './change.js';
import { spokenName } from './sayings.js';
import { endsSaid, plusMinus, said, sayingOf, spoken } from './spoken.js';

/** `moth`, of `moth (sam)`: whose it is stands where it is first spoken of. */
export const shortName = (label: string): string => label.replace(/ \(.*\)$/, '');

/** The car as it is has no name of its own, and a size is `the 17x8`. */
const subject = (label: string): string => (label === 'now' ? 'your car' : /^\d/.test(label) ? `the ${label}` : label);
/** `moth's`, `the 22 mm bar's`. */
const ofText = (label: string): string => (label.endsWith('s') ? `${label}'` : `${label}'s`);
/** How sure a difference is, after what it is. */
function surely(change: number, within: number, between: string, doubt: string): string {
  if (!(within > 0) || Math.abs(change) > 20 * within) return '';
  if (Math.abs(change) > within) return ` The ${between} between is sure (± ${doubt}).`;
  return Math.abs(change) > within / 2
    ? ` The ${between} between has ± ${doubt}: likely, not certain.`
    : ` The ${between} between has ± ${doubt}: too close to call.`;
}
/** What more of a figure is called of whichever has it, `#` being how much; a figure that is not listed is higher or lower. */
const compared: Readonly<Record<string, string>> = {
  'roll.angle': 'leans # more',
  'limit.car': 'holds # more',
  limit: 'holds # more',
  totalMass: 'is # heavier',
  mass: 'is # heavier',
  'tire.freeDiameter': 'is # taller',
  'tire.sectionWidth': 'is # wider',
  'tire.outerEdge': 'sticks out # more',
  'tire.innerEdge': 'reaches in # more',
  'wheel.edge': 'sticks out # more',
  'wheel.innerRimEdge': 'reaches in # more',
  'bar.rateAtEnds': 'is # stiffer',
  'coil.rate': 'is # stiffer',
};

/**
 * `turnip pushes 2.1 %, moth 0.3. The 1.8 between has ± 2: likely, not certain.`
 * @param labels of the side that `from` of the difference is of, and of the other
 */
export function versusText(
  labels: readonly [string, string],
  moved: Difference,
  path: string,
  preferences: Preferences,
  unit?: string,
): string {
  const [a, b] = [subject(labels[0]), subject(labels[1])];
  const { from, to, change, within } = moved;
  const { entry } = catalog.node(path);
  if (path === balanceIndex.path || path === otherWayBalance.path) {
    const doubt = Math.max(Math.abs(change) / 4, tenth);
    const [one, two] = [doesText(from, preferences, doubt), doesText(to, preferences, doubt)];
    const alike = from > 0 === to > 0 && one !== 'is even' && two !== 'is even';
    const second = alike ? said(Math.abs(to), percent, preferences, doubt) : two;
    return `${sentence(a)} ${one}, ${b} ${second}.${surely(change, within, said(Math.abs(change), percent, preferences, doubt), plusMinus(within, percent, preferences))}`;
  }
  const how = sayingOf(path, unit);
  const name = spokenName(path);
  if (!isChange(from, to)) return `${sentence(name)} is the same: ${spoken(from, how, preferences)}.`;
  const ends = endsSaid({ ...moved, within: 0 }, how, preferences);
  const first = endsSaid({ from: to, to: from, change: -change, within: 0 }, how, preferences);
  // Sizes are exact: what rounding leaves of their doubt says nothing of digits.
  const much = spoken(Math.abs(change), { ...how, difference: true }, preferences, within > Math.abs(change) / 200 ? within : 0);
  const words = compared[entry.path];
  const sure = surely(
    change,
    within,
    said(Math.abs(change), { ...how, difference: true }, preferences, within),
    within > 0 ? plusMinus(within, how, preferences) : '',
  );
  if (words !== undefined) {
    const [winner, loser, more, less] = change > 0 ? [b, a, ends.now, first.now] : [a, b, first.now, ends.now];
    return `${sentence(winner)} ${words.replace('#', much)}: ${more}, ${loser} ${less}.${sure}`;
  }
  return `${sentence(ofText(a))} ${name} is ${much} ${change < 0 ? 'higher' : 'lower'}: ${first.now}, ${b} ${ends.now}.${sure}`;
}
