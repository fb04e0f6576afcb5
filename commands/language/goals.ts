/** Lines that seek an input for a figure: the goal that they lack, the end of the car that they leave open. */
import { type Entry, isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Choice, Item, Stop } from '../reading.js';
import { everydayUnits, fromSI } from '../units.js';
import { replaced } from './assembling.js';
import { reaches } from './settling.js';
import { type Draft, type Part, type Spoken, slotsOf } from './spoken.js';
import { writeReading } from './write.js';

/** Something sought and no purpose: which of several it may be does not matter yet. */
export function goalless(spoken: Spoken, parts: readonly Part[]): Stop | undefined {
  if (spoken.asked.verb !== 'find' || spoken.asked.goalOnly || spoken.sections.goal) return undefined;
  const candidates = slotsOf(parts).flatMap((slot) => slot.candidates.map(({ item }) => item));
  if (candidates.length === 0 || candidates.some((item) => !isInput(item.entry))) return undefined;
  return { stop: 'refused', sentence: 'Find it for how much of what?', line: exampleGoal(spoken, candidates[0]) };
}
/** A line that seeks the same input for a usual amount of a figure that it moves. */
export function exampleGoal(spoken: Spoken, sought: Item | undefined): string {
  const fallback = 'find front spring for front ride frequency 2 Hz';
  if (!sought || !isInput(sought.entry)) return fallback;
  const all = placesOf(sought.entry.scope);
  const input: Item = sought.placed || all.length === 1 ? sought : { ...sought, places: [all[0] ?? ''], placed: true };
  // A figure of the same kind of place is the nearest, and of those one that people talk of.
  const near = (entry: Entry): number => 2 * Number(entry.scope === sought.entry.scope) + Number(entry.main ?? false);
  const figures = spoken.setting.catalog.entries.filter((entry) => entry.kind === 'figure' && entry.words && entry.typical);
  for (const entry of [...figures].sort((a, b) => near(b) - near(a))) {
    if (!entry.typical) continue;
    for (const place of placesOf(entry.scope)) {
      const goal: Item = { entry, places: [place], placed: true };
      if (!reaches(spoken, goal, input)) continue;
      const [low, high] = entry.typical.range;
      const unit = everydayUnits(entry.dimension ?? 'ratio', spoken.setting.preferences)[0]!;
      const value = Number(fromSI((low + high) / 2, unit).toPrecision(2)) * unit.factor + (unit.offset ?? 0);
      return writeReading(
        { verb: 'find', sides: [{ items: [input], subjects: [] }], goal: { ...goal, said: { value, text: '' } }, tried: [], names: [] },
        spoken.setting,
      );
    }
  }
  return fallback;
}
/** An input sought without a place: the line for each end of the car. */
export function whichEnd(spoken: Spoken, draft: Draft): Stop | undefined {
  const { goal } = draft;
  const sought = draft.sides.flatMap((side) => side.items);
  const [first] = sought;
  if (!goal || !first || spoken.asked.goalOnly) return undefined;
  if (first.placed || first.entry.alike || placesOf(first.entry.scope).length === 1) {
    // The goal is where the input reaches.
    return undefined;
  }
  const axles = first.entry.scope === 'axle' || first.entry.scope === 'corner' ? ['front', 'rear'] : [];
  if (axles.length === 0) return undefined;
  const choices = axles.map((end): Choice => {
    const places = first.entry.scope === 'axle' ? [end] : end === 'front' ? ['lf', 'rf'] : ['lr', 'rr'];
    const atEnd = goal.entry.scope === 'axle' && !goal.placed ? { ...goal, places: [end], placed: true } : goal;
    const line = writeReading({ ...replaced(draft, first, { ...first, places, placed: true }), goal: atEnd }, spoken.setting);
    return { label: line, line };
  });
  return { stop: 'asked', sentence: 'Front or rear?', choices };
}
