/** The entries that a span's words name, with its amount and where its place words say. */
import { canBeTold, isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import { meaningsOf } from '../units.js';
import { isAmount } from './atom.js';
import { everyday } from './everyday.js';
import { likeliest, type Ranked } from './likeliest.js';
import { type End, placeWhy, placing, withinNames } from './placing.js';
import { type Candidate, type Ground, type Mode, rank, type Trouble } from './slots.js';
import type { AmountAtom, TextAtom } from './values.js';
import { keyOf, type Phrase } from './vocabulary.js';
import { extras, type Worths } from './worths.js';

/** Whether an amount is told in percent. */
export const percent = (amount: AmountAtom): boolean =>
  amount.token.unit !== undefined && meaningsOf(amount.token.unit).some((one) => one.dimension === 'ratio' && one.unit.shown === '%');

/** What a section's spans are looked up with. */
export interface Search {
  readonly mode: Mode;
  readonly ground: Ground;
  readonly worths: Worths;
}
/** Entries whose words are these words: all of them, place words taken in or left out; else those whose words hold them. */
export function byWords(
  search: Search,
  words: readonly string[],
  ends: readonly End[],
  reach: readonly string[] | undefined,
  gear: string | undefined,
  amount: AmountAtom | TextAtom | undefined,
): { candidates: readonly Candidate[]; trouble?: Trouble; cost: number } {
  const { phrases } = search.ground.vocabulary;
  const asPercent = isAmount(amount) && percent(amount);
  let trouble: Trouble | undefined;
  // The more place words an entry's own words take, the more exactly it was named.
  for (const { taken, left } of withinNames(ends)) {
    const all = [...words, ...taken];
    const keys = asPercent ? [keyOf(all), keyOf([...all, 'percent']), keyOf([...all, 'share'])] : [keyOf(all)];
    for (const key of keys) {
      const found = phrases.get(key);
      if (!found) continue;
      const one = choose(search, found, left, gear, amount);
      if (one.candidates.length > 0) return { candidates: one.candidates, cost: 0 };
      if (!trouble || one.trouble.kind !== 'dimension') trouble = one.trouble;
    }
  }
  if (trouble) return { candidates: [], trouble, cost: 0 };
  if (words.length === 0) return { candidates: [], cost: 0 };
  const { topic } = search.ground;
  const ofTopic = topic === undefined || words.includes(topic) ? undefined : phrases.get(keyOf([...words, topic]));
  const own = ofTopic && choose(search, ofTopic, reach, gear, amount);
  if (own && own.candidates.length > 0) return { candidates: own.candidates, cost: 0.2 };
  return reach?.length === 0 ? { candidates: [], cost: 0 } : wider(search, words, reach, gear, amount);
}
/** Entries whose words hold these and at most two more, those with the fewest more first. */
function wider(
  search: Search,
  words: readonly string[],
  reach: readonly string[] | undefined,
  gear: string | undefined,
  amount: AmountAtom | TextAtom | undefined,
) {
  const { holding, phrases } = search.ground.vocabulary;
  const [first = '', another] = words;
  // An everyday word alone names nothing by being part of a name: `most` is no rim.
  if (another === undefined && everyday.has(first)) return { candidates: [], cost: 0 };
  let trouble: Trouble | undefined;
  const sizes = new Map<number, Phrase[]>();
  for (const key of holding.get(first) ?? []) {
    const parts = key.split(' ');
    if (parts.length > words.length + 2 || !words.every((word) => parts.includes(word))) continue;
    const extra = parts.length - words.length;
    const alike = sizes.get(extra) ?? [];
    alike.push(...(phrases.get(key) ?? []).filter((one) => one.option === undefined));
    sizes.set(extra, alike);
  }
  for (const extra of [0, 1, 2]) {
    const found = sizes.get(extra);
    if (!found) continue;
    const one = choose(search, found, reach, gear, amount);
    if (one.candidates.length > 0) return { candidates: one.candidates, cost: 0.8 + 0.4 * extra };
    trouble ??= one.trouble;
  }
  return trouble ? { candidates: [], trouble, cost: 1 } : { candidates: [], cost: 0 };
}
/** The phrases that fit the places and the amount, narrowed to the likeliest. */
function choose(
  search: Search,
  found: readonly Phrase[],
  reach: readonly string[] | undefined,
  gear: string | undefined,
  amount: AmountAtom | TextAtom | undefined,
) {
  const candidates: Ranked[] = [];
  let trouble: Trouble | undefined;
  for (const { entry, option } of found) {
    const input = isInput(entry);
    if (amount && !canBeTold(entry) && search.mode !== 'goal') {
      trouble ??= { kind: 'kind', why: () => `${entry.name} is worked out, not told`, entry };
      continue;
    }
    if (!amount && input && entry.scope === 'question' && search.mode !== 'record' && option === undefined) continue;
    const where = placing(entry, reach, gear);
    if (!where) {
      const better: Trouble = {
        kind: 'place',
        why: () => placeWhy(entry, reach, gear),
        entry,
        places: placesOf(entry.scope),
        ...(isAmount(amount) ? { amount } : {}),
      };
      if (!trouble || trouble.kind === 'kind') trouble = better;
      continue;
    }
    if (option !== undefined) {
      if (!amount)
        candidates.push({
          item: { entry, ...where, said: { value: option, text: option } },
          unlikely: false,
          rank: rank[entry.scope],
        });
      continue;
    }
    if (!amount) {
      candidates.push({ item: { entry, ...where }, unlikely: false, rank: rank[entry.scope] });
      continue;
    }
    const value = search.worths.of(entry, amount);
    if ('bad' in value) {
      const likelier =
        !trouble ||
        trouble.kind === 'place' ||
        trouble.kind === 'kind' ||
        (trouble.kind === 'dimension' && value.bad !== 'kind' && value.bad !== 'dimension');
      if (likelier)
        trouble = {
          kind: value.bad,
          why: value.why,
          entry,
          places: where.places,
          ...(value.units ? { units: value.units } : {}),
          ...(isAmount(amount) ? { amount } : {}),
        };
      continue;
    }
    candidates.push({
      item: { entry, ...where, said: value.said },
      unlikely: value.unlikely,
      rank: rank[entry.scope],
      ...extras(value),
    });
  }
  return {
    candidates: likeliest(candidates, search.mode, amount !== undefined),
    trouble: trouble ?? { kind: 'word' as const, why: () => '' },
  };
}
