/** Settling what is still open: which of several entries is meant, by what depends on what in the rest of the line. */
import { canBeTold, type Entry, isInput } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import type { Choice, Item, Stop } from '../reading.js';
import { askOne } from './asking.js';
import { draftOf } from './assembling.js';
import { plainest } from './likeliest.js';
import type { Candidate, Slot } from './slots.js';
import { type Draft, type Part, type Spoken, slotsOf } from './spoken.js';
import { keyOf } from './vocabulary.js';
import { writeReading } from './write.js';

/** `22 mm bar, how stiff`: a figure that nothing told can move is meant of what was told, if its words and those name one that can be. */
function ofTheTold(spoken: Spoken, parts: readonly Part[]): readonly Part[] {
  const told = slotsOf(parts).filter((slot) => slot.candidates.some(({ item }) => item.said !== undefined && isInput(item.entry)));
  if (told.length === 0) return parts;
  const reached = (item: Item) =>
    told.some((slot) => slot.candidates.some((one) => one.item.entry.scope !== 'question' && reaches(spoken, item, one.item)));
  const instead = (slot: Slot): Slot => {
    const { candidates, words } = slot;
    if (!words?.length || candidates.length === 0 || candidates.some(({ item }) => isInput(item.entry) || reached(item))) return slot;
    for (const other of told) {
      const found = spoken.vocabulary.phrases.get(keyOf([...new Set([...words, ...(other.words ?? [])])])) ?? [];
      for (const { entry } of found) {
        if (isInput(entry)) continue;
        const places = placesOf(entry.scope);
        const item: Item = { entry, places, placed: places.length === 1 };
        if (reached(item)) return { ...slot, candidates: [{ item, unlikely: false }] };
      }
    }
    return slot;
  };
  return parts.map((part) => ({ ...part, slots: part.slots.map(instead) }));
}
/** Entries that several candidates leave open: those that a figure of the line depends on come first. */
export function settle(spoken: Spoken, read: readonly Part[]): readonly Part[] {
  const parts = ofTheTold(spoken, read);
  const figures = slotsOf(parts).flatMap((slot) =>
    slot.candidates.length === 1 && !isInput(slot.candidates[0]!.item.entry) ? [slot.candidates[0]!.item] : [],
  );
  const inputs = slotsOf(parts).flatMap((slot) =>
    slot.candidates.length === 1 && isInput(slot.candidates[0]!.item.entry) ? [slot.candidates[0]!.item] : [],
  );
  return parts.map((part) => ({
    ...part,
    slots: part.slots.map((slot) =>
      slot.candidates.length < 2 ? slot : { ...slot, candidates: narrow(spoken, slot, part, figures, inputs) },
    ),
  }));
}
/** What stays open is asked. */
export function stillOpen(spoken: Spoken, parts: readonly Part[]): Stop | undefined {
  const slot = slotsOf(parts).find((one) => one.candidates.length > 1);
  if (!slot) return undefined;
  const choices = slot.candidates.slice(0, 4).map((candidate): Choice => {
    const line = writeReading(draftWith(spoken, parts, slot, candidate), spoken.setting);
    return { label: line, line };
  });
  return askOne(slot, slot.candidates.length, choices);
}
/** A pair with a stroke, or four readings told in a row: which is which is asked of a change. */
export function orders(spoken: Spoken, parts: readonly Part[]): Stop | undefined {
  const changes =
    spoken.asked.verb === 'set' || spoken.asked.verb === 'try' || spoken.asked.verb === 'save' || spoken.asked.verb === undefined;
  for (const slot of slotsOf(parts)) {
    const [candidate] = slot.candidates;
    const each = candidate?.each;
    if (!candidate || !each || candidate.item.entry.scope === 'gear') continue;
    if (each.length !== 2 && !(changes && spoken.asked.verb !== undefined)) continue;
    const swapped = each.length === 2 ? [1, 0] : [0, 2, 1, 3].map((n) => n);
    const lines = [each, swapped.map((n) => each[n]!)].map((said) =>
      writeReading(draftWith(spoken, parts, slot, { ...candidate, each: said }), spoken.setting),
    );
    const which = each.length === 2 ? 'Front and rear: which is which?' : 'Which reading is of which wheel?';
    return { stop: 'asked', sentence: which, choices: lines.map((line) => ({ label: line, line })) };
  }
  return undefined;
}
/** Whether an input moves a figure, anywhere that both are meant. */
export function reaches(spoken: Spoken, figure: Item, input: Item): boolean {
  return figure.places.some((f) =>
    input.places.some((i) => spoken.setting.catalog.dependsOn(pathAt(f, figure.entry), pathAt(i, input.entry))),
  );
}
/** Whether two inputs move one figure, wherever they are. */
function meets({ setting: { catalog } }: Spoken, a: Item, b: Item): boolean {
  const known = meeting.get(catalog) ?? new Map<string, boolean>();
  meeting.set(catalog, known);
  const key = `${a.entry.path} ${b.entry.path}`;
  const met = known.get(key) ?? catalog.entries.some((entry) => entry.kind === 'figure' && moves(a.entry, entry) && moves(b.entry, entry));
  known.set(key, met);
  return met;

  function moves(input: Entry, figure: Entry): boolean {
    const from = placesOf(input.scope);
    return placesOf(figure.scope).some((f) => from.some((i) => catalog.dependsOn(pathAt(f, figure), pathAt(i, input))));
  }
}
/** The catalog stays as it is: of each pair it is found out once. */
const meeting = new WeakMap<object, Map<string, boolean>>();
/** The candidates of a slot that the rest of the line leaves likely. */
function narrow(spoken: Spoken, slot: Slot, part: Part, figures: readonly Item[], inputs: readonly Item[]): readonly Candidate[] {
  let left = slot.candidates;
  const keep = (test: (one: Candidate) => boolean) => {
    const some = left.filter(test);
    if (some.length > 0) left = some;
  };
  const told = (one: Candidate) => one.item.said !== undefined && canBeTold(one.item.entry);
  const reached = (one: Candidate) => figures.some((figure) => reaches(spoken, figure, one.item));
  // What would change nothing of what is asked is not what was meant.
  if (!slot.words?.length && left.some(told) && figures.length > 0 && !left.some(reached)) return left;
  if (left.some(told)) keep(reached);
  else if (inputs.length > 0) keep((one) => inputs.every((input) => input.entry.scope === 'question' || reaches(spoken, one.item, input)));
  // A bare fraction that needs no unit to be sane is the ratio that it looks like: at .65.
  keep(
    (one) =>
      part.part === 'condition' &&
      one.item.entry.dimension === 'ratio' &&
      typeof one.item.said?.value === 'number' &&
      !Number.isInteger(one.item.said.value),
  );
  // What is said with a bare amount at `at` is a condition, if it can be one.
  if (part.part === 'condition' || spoken.asked.topic || spoken.asked.verb === undefined || spoken.asked.verb === 'show')
    keep((one) => one.item.entry.scope === 'question');
  // at .65, said of a spring, is the spring's.
  if (left.length > 1 && part.part === 'condition')
    keep((one) =>
      inputs.some((input) => input.entry !== one.item.entry && input.entry.path.split('.')[0] === one.item.entry.path.split('.')[0]),
    );
  if (left.length > 1) left = plainest(left, spoken.asked.changes || spoken.asked.verb === 'try', spoken.vocabulary);
  // A bare number is of what has to do with the rest of the line: a temperature says nothing of gears.
  if (!slot.words?.length && left.length > 1 && figures.length === 0)
    keep((one) => inputs.some((input) => input.entry !== one.item.entry && meets(spoken, input, one.item)));
  // A weight of a new car is the car's.
  if (spoken.asked.verb === 'save' || spoken.asked.verb === 'set')
    keep((one) => one.item.entry.words?.[0] === 'weight' && one.item.entry.scope === 'car');
  return left;
}
/** The line with one slot's candidate chosen, and the first of all others. */
function draftWith(spoken: Spoken, parts: readonly Part[], slot: Slot, candidate: Candidate): Draft {
  const chosen = parts.map((part) => ({
    ...part,
    slots: part.slots.map((one) =>
      one === slot
        ? { ...one, candidates: [candidate] }
        : one.candidates.length > 1
          ? { ...one, candidates: one.candidates.slice(0, 1) }
          : one,
    ),
  }));
  return draftOf(spoken, chosen);
}
