/** What can be asked of a car that little is known of, and what to tell next: the facts that most of what members talk of waits for. */
import type { Facts } from '../../core/car.js';
import { canBeTold, type Entry, isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt, placesOf } from '../../core/engine.js';
import { catalog } from '../looked.js';
import { sentence } from './amount.js';
import { sayingAt } from './saying.js';
import { listed } from './spoken.js';

const mostAsked = 3;
const mostTold = 4;
/** What members ask first, in this order: common practice, no source. */
const first = ['rideFrequency', 'balance', 'roll.angle', 'topSpeed', 'wheelRate', 'axleMass'];

/** The plainest word of a fact, of several: `springs`, `tires`. */
const plural = ({ words, name, scope }: Entry): string => {
  const word = words?.[0] ?? name;
  return scope === 'car' || word.endsWith('s') ? word : `${word}s`;
};
/** `Now you can ask its weight front and rear.` `Next: springs, tires, tracks.` */
export function opens(numbers: Evaluation, facts: Facts): readonly string[] {
  const figures = catalog.entries.filter((entry) => entry.kind === 'figure' && entry.main === true && entry.scope !== 'corner');
  const rank = ({ path }: Entry): number => (first.indexOf(path) + first.length + 1) % (first.length + 1);
  const known: string[] = [];
  const waits = new Map<Entry, number>();
  for (const entry of figures.toSorted((a, b) => rank(a) - rank(b))) {
    const [place = ''] = placesOf(entry.scope);
    const path = pathAt(place, entry);
    const value = numbers.number(path);
    if (!isRefusal(value)) {
      if (first.includes(entry.path) && numbers.status(path) === 'computed') known.push(sayingAt(numbers, path).replace(/^front /, ''));
      continue;
    }
    for (const because of value.because ?? []) {
      const node = catalog.byPath.get(because);
      if (node && canBeTold(node.entry) && !facts.has(because)) waits.set(node.entry, (waits.get(node.entry) ?? 0) + 1);
    }
  }
  const next = [...waits].sort(([, a], [, b]) => b - a).map(([entry]) => plural(entry));
  const told = [...new Set(next)].slice(0, mostTold);
  const asked = [...new Set(known)].slice(0, mostAsked);
  return [
    ...(asked.length === 0 ? [] : [`You can ask: ${listed(asked)}.`]),
    ...(told.length === 0 ? [] : [`${sentence('next')}: ${told.join(', ')}.`]),
  ];
}
