/** What amounts are worth to entries, lists among them: asked for many spans of a section, worked out once. */
import type { Entry } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Preferences } from '../context.js';
import type { Said } from '../reading.js';
import type { AmountToken } from '../scan.js';
import { type AmountAtom, canBe, type TextAtom, textWorth, type Worth, worth } from './values.js';

/** What an amount is worth to an entry, each of a list apart. */
export type Valued = Worth & { readonly each?: readonly Said[] };

/** The worths of one section, by amount and entry. */
export class Worths {
  readonly #preferences: Preferences;
  readonly #known = new Map<AmountAtom | TextAtom, Map<Entry, Valued>>();
  readonly #possible = new Map<AmountToken, Map<Entry, boolean>>();

  constructor(preferences: Preferences) {
    this.#preferences = preferences;
  }
  /** Whether a bare number can be an amount of an entry at all. */
  canBe(entry: Entry, token: AmountToken): boolean {
    const known = this.#possible.get(token) ?? new Map<Entry, boolean>();
    this.#possible.set(token, known);
    const can = known.get(entry) ?? canBe(entry, token, this.#preferences);
    known.set(entry, can);
    return can;
  }
  of(entry: Entry, amount: AmountAtom | TextAtom): Valued {
    const known = this.#known.get(amount) ?? new Map<Entry, Valued>();
    this.#known.set(amount, known);
    const value = known.get(entry) ?? valued(entry, amount, this.#preferences);
    known.set(entry, value);
    return value;
  }
}
function valued(entry: Entry, amount: AmountAtom | TextAtom, preferences: Preferences): Valued {
  if (amount.is === 'text') return textWorth(entry, amount);
  const { list } = amount;
  if (!list) return worth(entry, amount, preferences);
  const places = placesOf(entry.scope).length;
  if (places < 2 || (entry.scope === 'gear' ? list.length > places : list.length !== places))
    return { bad: 'kind', why: () => `${list.length} amounts for ${entry.name}: say which is which` };
  const each: Said[] = [];
  let note: string | undefined;
  for (const token of list) {
    const one = worth(entry, { is: 'amount', token }, preferences);
    if ('bad' in one) return one;
    note ??= one.note;
    each.push(one.said);
  }
  const [first] = each;
  if (!first) throw new Error('a list has amounts');
  return { said: first, each, unlikely: false, ...(note ? { note } : {}) };
}
/** What a value brings to its candidate beside what was said. */
export const extras = (value: { readonly note?: string; readonly each?: readonly Said[] }) => ({
  ...(value.note ? { note: value.note } : {}),
  ...(value.each ? { each: value.each } : {}),
});
