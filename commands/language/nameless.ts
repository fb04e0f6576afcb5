/** Amounts that no words name: what they can be by their dimension and size, or by what people call by its number alone. */
import { type Entry, isInput } from '../../core/catalog.js';
import type { Dimension } from '../../core/dimensions.js';
import type { AmountToken } from '../scan.js';
import { meaningsOf } from '../units.js';
import { stem } from '../words.js';
import { isAmount } from './atom.js';
import type { Search } from './named.js';
import { placing } from './placing.js';
import type { Candidate, Trouble } from './slots.js';
import { type AmountAtom, atomText, canBe, type TextAtom } from './values.js';
import { keyOf } from './vocabulary.js';
import { extras } from './worths.js';

/** An amount without words: every entry that its dimension, its size and the places allow. */
export function byAmount(
  search: Search,
  amount: AmountAtom | TextAtom,
  reach: readonly string[] | undefined,
  gear: string | undefined,
): { candidates: readonly Candidate[]; trouble?: Trouble } {
  const pool = search.mode === 'goal' ? figuresFor(search, amount) : inputsFor(search, amount);
  const candidates: Candidate[] = [];
  let trouble: Trouble | undefined;
  const plainly = isAmount(amount) && !amount.list && amount.change === undefined ? amount.token : undefined;
  for (const entry of pool) {
    // What is looked at in a moment comes first: this is asked of every entry, for many spans of a line.
    if (gear !== undefined && entry.scope !== 'gear') continue;
    if (!entry.words || (amount.is === 'text' && entry.kind !== 'designation')) continue;
    if (entry.scope === 'question' && search.mode === 'record') continue;
    if (plainly && !search.worths.canBe(entry, plainly)) continue;
    const where = placing(entry, reach, gear);
    if (!where || (entry.extensive && where.places.length > 1)) continue;
    if (search.mode === 'goal' && isAmount(amount) && !canBeSought(search, entry, amount.token)) continue;
    const value = search.worths.of(entry, amount);
    if ('bad' in value) {
      if (amount.is === 'text' && value.bad === 'range') trouble ??= { kind: 'range', why: value.why, entry, places: where.places };
      continue;
    }
    candidates.push({
      item: { entry, ...where, said: value.said },
      unlikely: value.unlikely,
      ...extras(value),
    });
  }
  const likely = candidates.filter((one) => !one.unlikely);
  let left: readonly Candidate[] = likely.length > 0 ? likely : candidates;
  if (amount.is === 'text' && left.length > 1) {
    // A size is the size of what stands on the car, unless its words say otherwise.
    const axle = left.filter((one) => one.item.entry.scope === 'axle');
    if (axle.length > 0) left = axle;
  }
  if (left.length === 0 && isAmount(amount) && amount.token.sign === '-') {
    const { sign: _, ...token } = amount.token;
    const [above] = byAmount(search, { ...amount, token: { ...token, value: Math.abs(token.value) } }, reach, gear).candidates;
    if (above)
      trouble = {
        kind: 'negative',
        why: () => `${above.item.entry.name} must be above 0`,
        entry: above.item.entry,
        places: above.item.places,
        amount,
      };
  }
  return { candidates: left, trouble: trouble ?? { kind: 'alone', why: () => (amount.is === 'text' ? amount.text : atomText(amount)) } };
}
/** Inputs that an amount may be of, in their order: its unit leaves those of its dimensions, but a share of anything. */
function inputsFor({ ground: { vocabulary } }: Search, amount: AmountAtom | TextAtom): readonly Entry[] {
  if (amount.is === 'text' || amount.token.unit === undefined || amount.token.soft) return vocabulary.inputs;
  const meanings = meaningsOf(amount.token.unit);
  if (meanings.some(({ unit }) => unit.shown === '%')) return vocabulary.inputs;
  return meanings
    .flatMap(({ dimension }) => vocabulary.byDimension.get(dimension) ?? [])
    .filter(isInput)
    .sort((a, b) => a.order - b.order);
}
/** A figure that is also told (an engine speed) is sought within what is sane to tell. */
const canBeSought = ({ ground }: Search, { dimension, words }: Entry, token: AmountToken): boolean =>
  ground.vocabulary.inputs
    .filter((input) => input.dimension === dimension && input.words?.some((word) => words?.includes(word)))
    .every((input) => canBe(input, token, ground.preferences));
function figuresFor(search: Search, amount: AmountAtom | TextAtom): readonly Entry[] {
  if (amount.is === 'text') return [];
  const { byDimension } = search.ground.vocabulary;
  const unit = amount.token.unit;
  const dimensions: readonly Dimension[] = unit === undefined ? [...byDimension.keys()] : meaningsOf(unit).map((one) => one.dimension);
  return dimensions.flatMap((dimension) => byDimension.get(dimension) ?? []).filter((entry) => !isInput(entry));
}
/** `350s`, `425 rears`, `4.10s`: what people call by its number alone. */
export function byNumber(
  search: Search,
  amount: AmountAtom,
  reach: readonly string[] | undefined,
): { candidates: readonly Candidate[]; trouble?: Trouble } | undefined {
  const { phrases } = search.ground.vocabulary;
  const { value } = amount.token;
  if (amount.token.unit !== undefined) return undefined;
  const width = value >= 135 && value <= 355 && value % 10 === 5;
  const candidates: Candidate[] = [];
  for (const word of ['spring', 'final drive'])
    for (const { entry } of phrases.get(keyOf(word.split(' ').map(stem))) ?? []) {
      if (entry.kind !== 'quantity' || entry.scope === 'corner') continue;
      const where = placing(entry, reach, undefined);
      const said = where && search.worths.of(entry, amount);
      if (where && said && !('bad' in said) && !said.unlikely)
        candidates.push({ item: { entry, ...where, said: said.said }, unlikely: false, ...(said.note ? { note: said.note } : {}) });
    }
  if (!width) return candidates.length > 0 ? { candidates } : undefined;
  const why = () => `${amount.token.text}: springs of ${value}, or tires ${value} wide? A tire needs its whole size, like ${value}/40R17`;
  return {
    candidates: [],
    trouble: {
      kind: 'unit',
      why,
      amount,
      ...(candidates[0] ? { entry: candidates[0].item.entry, places: candidates[0].item.places } : {}),
    },
  };
}
