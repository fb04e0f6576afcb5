/** Choosing among the entries that one name may mean, by what they are alone: the rest of the line is not looked at. */
import { type Entry, isInput } from '../../core/catalog.js';
import { nouns } from '../words.js';
import { type Candidate, type Mode, rank } from './slots.js';
import { keyOf, stemsOf, type Vocabulary } from './vocabulary.js';

/** A candidate, with how much of the car it is of. */
export type Ranked = Candidate & { readonly rank: number };

/** Those of a name's candidates that are likeliest, each entry once. `amount` is whether an amount was told. */
export function likeliest(all: readonly Ranked[], mode: Mode, amount: boolean): readonly Candidate[] {
  let left = all;
  const keep = (test: (one: (typeof all)[number]) => boolean) => {
    const some = left.filter(test);
    if (some.length > 0) left = some;
  };
  // What is told is an input of that name, where there is one.
  if (amount && mode !== 'goal') keep((one) => isInput(one.item.entry));
  // A weight that is shared out is told where it is whole.
  keep((one) => !(one.item.entry.extensive && one.item.places.length > 1));
  keep((one) => !one.unlikely);
  if (!amount) keep((one) => one.item.said !== undefined);
  if (!amount) keep((one) => isInput(one.item.entry) === (mode === 'record'));
  else if (mode === 'goal') keep((one) => !isInput(one.item.entry));
  if (!amount) keep((one) => one.item.entry.kind !== 'curve');
  // One thing that can be told in several ways is meant in the plainest, where no amount says which.
  if (!amount) keep((one) => left.find((other) => sameThing(other.item.entry, one.item.entry)) === one);
  // One thing of the car, of an axle, of a wheel: it is meant where the words say, and as a whole where they don't.
  const least = Math.min(...left.map((one) => one.rank));
  if (related(left.map((one) => one.item.entry))) keep((one) => one.rank === least);
  const entries = new Set<Entry>();
  return left.filter((one) => !entries.has(one.item.entry) && entries.add(one.item.entry));
}
/** Pressures, speeds and the like have one plainest thing that they are of; in a question so has a rate or a weight. */
export function plainest(candidates: readonly Candidate[], changes: boolean, { phrases }: Vocabulary): readonly Candidate[] {
  const usual = candidates.flatMap(({ item }) => {
    const { dimension } = item.entry;
    const noun = dimension === undefined || (changes && (dimension === 'rate' || dimension === 'mass')) ? undefined : nouns.get(dimension);
    return noun === undefined ? [] : (phrases.get(keyOf(stemsOf(noun))) ?? []).map(({ entry }) => entry);
  });
  const plain = candidates.filter(({ item }) => usual.includes(item.entry) && item.entry.kind !== 'curve');
  const least = Math.min(...plain.map(({ item }) => rank[item.entry.scope]));
  return plain.length > 0 ? plain.filter(({ item }) => rank[item.entry.scope] === least) : candidates;
}
const sameThing = (a: Entry, b: Entry): boolean => a === b || (a.instead !== undefined && a.instead === b.instead && a.scope === b.scope);
/** Whether entries of one word are one thing at different places, as their names tell. */
function related(entries: readonly Entry[]): boolean {
  const [first, ...others] = entries;
  if (!first) return false;
  if (others.every((one) => one.extensive && first.extensive) || others.every((one) => !isInput(one) && !isInput(first))) return true;
  if (others.some((one) => one.dimension !== first.dimension)) return false;
  const words = new Set(stemsOf(first.name));
  return others.every((one) => stemsOf(one.name).some((word) => words.has(word)));
}
