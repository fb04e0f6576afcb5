/** What is wrong with a span, said, with a line that would be right. */
import { isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Choice, Item, Stop } from '../reading.js';
import { everydayUnits, fromSI, meaningsOf } from '../units.js';
import { nearestLine, sentence } from './asking.js';
import { draftOf } from './assembling.js';
import type { Atom } from './atom.js';
import type { Trouble } from './slots.js';
import { readings } from './spans.js';
import { type Part, type Spoken, slotsOf } from './spoken.js';
import { writeReading } from './write.js';

/** What is worst of what is wrong with the spans. */
export function worstOf(spoken: Spoken, parts: readonly Part[]): Stop | undefined {
  const all = slotsOf(parts).flatMap((slot) => (slot.trouble ? [{ slot, trouble: slot.trouble }] : []));
  const troubles = spoken.sections.everything ? all.filter(({ trouble }) => trouble.kind !== 'alone') : all;
  // The worst first: what can't be at all, then what is not understood, then what is only not enough.
  const order: readonly Trouble['kind'][] = ['negative', 'dimension', 'range', 'unit', 'word', 'place', 'kind', 'alone'];
  const below = ({ trouble }: (typeof troubles)[number]) => ((trouble.amount?.token.value ?? 0) < 0 ? 0 : 1);
  const [worst] = troubles.sort((a, b) => order.indexOf(a.trouble.kind) - order.indexOf(b.trouble.kind) || below(a) - below(b));
  return worst && refusal(spoken, parts, worst.trouble, worst.slot.text());
}
/** What is wrong, in the words that its kind calls for. */
function refusal(spoken: Spoken, parts: readonly Part[], trouble: Trouble, text = ''): Stop {
  const line = lineInstead(spoken, parts, trouble);
  const { entry } = trouble;
  switch (trouble.kind) {
    case 'unit':
      return whichUnit(spoken, parts, trouble);
    case 'word':
      return {
        stop: 'refused',
        sentence: `I can't tell what "${text}" is about here.`,
        line: nearestLine(spoken.atoms, spoken.vocabulary),
      };
    case 'alone':
      return ofWhat(trouble);
    case 'place':
      return { stop: 'refused', sentence: `${sentence(trouble.why())}.`, ...(line ? { line } : {}) };
    case 'negative':
      return { stop: 'refused', sentence: `${text === '' ? '' : `"${text}": `}${trouble.why()}.`, ...(line ? { line } : {}) };
    default:
      return {
        stop: 'refused',
        sentence: `${sentence(trouble.why())}.`,
        ...(line ? { line } : entry ? { line: `show ${spoken.vocabulary.nameOf(entry)}` } : {}),
      };
  }
}
/** An amount or a place that stands alone: of what? */
export function ofWhat(trouble: Trouble): Stop {
  const say = /\d/.test(trouble.why()) ? `${trouble.why()} of what?` : `${sentence(trouble.why())}: of what?`;
  const example = /^(?:front|rear|left|right)$/.test(trouble.why()) ? `show everything ${trouble.why()}` : 'set front spring 450 lb/in';
  return { stop: 'asked', sentence: `${say} Say it with a word: ${example}`, choices: [] };
}
/** A number that needs a unit: the line with each that it may have. */
function whichUnit(spoken: Spoken, parts: readonly Part[], trouble: Trouble): Stop {
  const { entry, amount, units = [] } = trouble;
  if (!entry?.dimension || !amount || units.length === 0) return { stop: 'asked', sentence: `${sentence(trouble.why())}.`, choices: [] };
  const choices = units.slice(0, 4).map((unit): Choice => {
    const one = meaningsOf(unit.toLowerCase()).find((meaning) => meaning.dimension === entry.dimension)?.unit;
    const value = one ? amount.token.value * one.factor + (one.offset ?? 0) : amount.token.value;
    const line = lineWith(spoken, parts, trouble, value);
    return { label: `${amount.token.value} ${unit}`, line: line ?? '' };
  });
  return { stop: 'asked', sentence: `${sentence(trouble.why())}`, choices: choices.filter((choice) => choice.line !== '') };
}
/** The line with the span in trouble put right: the same number in the unit that was wanted, or a usual amount. */
function lineInstead(spoken: Spoken, parts: readonly Part[], trouble: Trouble): string | undefined {
  const { entry, amount } = trouble;
  if (!entry?.dimension || !isInput(entry) || !entry.sane) return undefined;
  const [low, high] = entry.sane;
  const { preferences } = spoken.setting;
  const unit = everydayUnits(entry.dimension, preferences)[0]!;
  const same = amount ? Math.abs(amount.token.value) * unit.factor + (unit.offset ?? 0) : Number.NaN;
  const fits = same >= low && same <= high && (low < 0 || same > 0);
  const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
  const shown = Number(fromSI(middle, unit).toPrecision(2)) * unit.factor + (unit.offset ?? 0);
  return lineWith(spoken, parts, trouble, fits ? same : shown);
}
/** The line with a value in the place of the span in trouble. */
function lineWith(spoken: Spoken, parts: readonly Part[], trouble: Trouble, value: number): string | undefined {
  const { entry, places = [] } = trouble;
  if (!entry) return undefined;
  const all = placesOf(entry.scope);
  const some = places.length === all.length && !entry.alike && all.length > 1 ? [all[0] ?? ''] : places;
  const item: Item = { entry, places: some, placed: all.length === 1 || some.length < all.length, said: { value, text: '' } };
  const draft = draftOf(spoken, parts, new Map([[trouble, item]]));
  return writeReading(draft, spoken.setting);
}
/** In a line about what is not built, a fact that is wrong whatever it is for: `wheelbase 0`, `track 58 lb, what's my roll stiffness`. */
export function plainlyWrong(spoken: Spoken): Stop | undefined {
  for (const segment of segments(spoken.atoms.atoms)) {
    const [slots = []] = readings(segment, 'ask', spoken.ground, false);
    const apart = slots.length === 1;
    for (const { trouble } of slots)
      if (
        trouble?.entry &&
        (trouble.kind === 'negative' || (trouble.kind === 'dimension' && apart && trouble.amount?.token.unit !== '%'))
      ) {
        return refusal(spoken, [{ part: 'side', side: 0, slots }], trouble);
      }
  }
  return undefined;
}
/** The runs of atoms between commas. */
function segments(atoms: readonly Atom[]): readonly (readonly Atom[])[] {
  const out: Atom[][] = [[]];
  for (const atom of atoms) {
    if (atom.is === 'break') out.push([]);
    else if (atom.is === 'word' || atom.is === 'place' || atom.is === 'amount' || atom.is === 'text' || atom.is === 'gear')
      out.at(-1)!.push(atom);
  }
  return out.filter((segment) => segment.length > 0);
}
