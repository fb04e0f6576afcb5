/** What has to be said of a number about a turn: that an end's limit is hypothetical, or that there is no steady state where it is asked. */
import { isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
import { lateral } from '../../core/subjects/cornering/asked.js';
import { axleLimitThisWay, carLimit } from '../../core/subjects/cornering/balance.js';
import { gripMargin } from '../../core/subjects/cornering/turning.js';
import type { Preferences } from '../context.js';
import { bare } from './amount.js';

const g = (si: number, preferences: Preferences, within = 0): string => bare(si, 'acceleration', preferences, within).text;

/** Sentences for the notes under a number; none for one that no turn is in. */
export function turnNotes(numbers: Evaluation, path: string, preferences: Preferences): readonly string[] {
  const { entry, place } = numbers.catalog.node(path);
  if (entry === axleLimitThisWay) {
    const end = place === 'front' ? 'rear' : 'front';
    const [own, other] = [numbers.number(path), numbers.number(pathAt(end, axleLimitThisWay))];
    if (isRefusal(own) || isRefusal(other) || own <= other) return [];
    return [`It never gets there: the ${end} lets go first, at ${g(other, preferences, numbers.within(pathAt(end, axleLimitThisWay)))}.`];
  }
  const asked = numbers.number(lateral.path);
  if (isRefusal(asked) || numbers.status(lateral.path) !== 'told' || !numbers.catalog.dependsOn(path, lateral.path)) return [];
  const margin = path === gripMargin.path ? 0 : numbers.number(gripMargin.path);
  if (isRefusal(margin) || margin >= 0) return [];
  const limit = numbers.number(carLimit.path);
  const most = isRefusal(limit) ? '' : `: it lets go at ${g(limit, preferences, numbers.within(carLimit.path))}`;
  return [`It won't hold ${g(asked, preferences)}${most}. This is of tires that would.`];
}
