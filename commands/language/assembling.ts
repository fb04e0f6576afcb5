/** Assembling a reading from the slots of its parts: what is asked, what is told, what is tried for this answer. */
import { canBeTold, isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Clause, Item } from '../reading.js';
import { carriedPlaces } from './places.js';
import type { Trouble } from './slots.js';
import type { Draft, Part, Spoken } from './spoken.js';

/** The items of a part: of a list, one for each place. */
function itemsOf(part: Part, instead: ReadonlyMap<Trouble, Item>): Item[] {
  return part.slots.flatMap((slot) => {
    const other = slot.trouble && instead.get(slot.trouble);
    if (other) return [other];
    const [candidate] = slot.candidates;
    if (!candidate) return [];
    const { item, each } = candidate;
    if (!each) return [item];
    return each.map((said, n): Item => ({ entry: item.entry, places: [placesOf(item.entry.scope)[n] ?? ''], placed: true, said }));
  });
}
/** The reading of a line, but for its echoes. `instead` puts items in the place of spans in trouble. */
export function draftOf(spoken: Spoken, parts: readonly Part[], instead: ReadonlyMap<Trouble, Item> = new Map()): Draft {
  const { verb, topic, goalOnly } = spoken.asked;
  const sections = spoken.sections;
  const sides = sections.sides.map((side, n) => ({
    subjects: side.subjects.map(({ subject }) => subject),
    items: parts.filter((part) => part.part === 'side' && part.side === n).flatMap((part) => itemsOf(part, instead)),
  }));
  const of = (which: Part['part']) => parts.filter((part) => part.part === which).flatMap((part) => itemsOf(part, instead));
  const tried: Item[] = [...of('condition')];
  const asked: Item[] = [];
  const present = (item: Item, word: string): Item => {
    if (item.said !== undefined || item.entry.kind !== 'choice') return item;
    const option = item.entry.options?.find((one) => item.entry.optionWords?.[one]?.includes(word));
    return option === undefined ? item : { ...item, said: { value: option, text: option } };
  };
  for (const item of [...of('tried').map((one) => present(one, 'with')), ...of('without').map((one) => present(one, 'without'))]) {
    if (canBeTold(item.entry) && item.said !== undefined) tried.push(item);
    else asked.push(item);
  }
  let goal = of('goal')[0];
  if (goal && isInput(goal.entry)) {
    tried.push(goal);
    goal = undefined;
  }
  const against = of('against')[0];
  let made: Clause[] = sides;
  const factsStay =
    verb === 'set' || verb === 'save' || verb === 'try' || verb === 'compare' || verb === 'forget' || topic || made.length > 1;
  const figureAsked = made.some((side) => side.items.some((item) => item.said === undefined)) || asked.length > 0;
  if (!factsStay && (figureAsked || verb !== undefined)) {
    // A question with facts: they are for this answer.
    tried.unshift(...made.flatMap((side) => side.items.filter((item) => item.said !== undefined)));
    made = made.map((side) => ({ ...side, items: side.items.filter((item) => item.said === undefined) }));
  } else {
    const conditions = made.flatMap((side) => side.items.filter((item) => item.said !== undefined && item.entry.scope === 'question'));
    tried.push(...conditions);
    if (conditions.length > 0) made = made.map((side) => ({ ...side, items: side.items.filter((item) => !conditions.includes(item)) }));
  }
  if (made.length > 1) made = sharedFigures(made);
  if (asked.length > 0) made = made.map((side) => ({ ...side, items: [...asked, ...side.items] }));
  if (goalOnly) {
    goal = made[0]?.items[0];
    made = made.map((side) => ({ ...side, items: [] }));
  }
  const placed = carriedPlaces(spoken, { sides: made, tried, ...(goal ? { goal } : {}), ...(against ? { against } : {}) });
  const twoSided = made.length > 1 && sections.parted;
  const verbNow = verbFor(verb, placed, twoSided, goal);
  const places = placesAlone(spoken);
  return {
    verb: verbNow,
    sides: placed.sides,
    tried: placed.tried,
    names: spoken.asked.names,
    ...(placed.goal ? { goal: placed.goal } : {}),
    ...(placed.against ? { against: placed.against } : {}),
    ...(spoken.atoms.wantedUnit ? { wantedUnit: spoken.atoms.wantedUnit } : {}),
    ...(spoken.atoms.evidence ? { evidence: spoken.atoms.evidence } : {}),
    ...(sections.everything ? { everything: { places } } : {}),
  };
}
/** The verb that the line comes to: nothing sought is shown, two sides are compared. */
function verbFor(verb: string | undefined, placed: Pick<Draft, 'sides'>, two: boolean, goal: Item | undefined): string | undefined {
  if (verb === 'find' && !goal) {
    const figure = placed.sides.some((side) => side.items.some((item) => !isInput(item.entry)));
    if (figure) return 'show';
  }
  if (two && (verb === undefined || verb === 'show' || verb === 'try')) return 'compare';
  return verb;
}
/** Figures that were named on one side are asked of all. */
function sharedFigures(sides: readonly Clause[]): Clause[] {
  const figures: Item[] = [];
  for (const item of sides.flatMap((side) => side.items))
    if (item.said === undefined && !figures.some((one) => one.entry === item.entry && one.places.join() === item.places.join()))
      figures.push(item);
  return sides.map((side) => ({ ...side, items: [...figures, ...side.items.filter((item) => item.said !== undefined)] }));
}
/** The place that `everything` is asked of. */
function placesAlone(spoken: Spoken): readonly string[] {
  const places = spoken.atoms.atoms.flatMap((atom) => (atom.is === 'place' && !atom.all ? [atom] : []));
  const [only] = places;
  if (!only) return [];
  const [axle] = only.places.filter((place) => place === 'front' || place === 'rear');
  return axle === undefined ? only.places : [axle];
}
/** A draft with one item in the place of another. */
export const replaced = (draft: Draft, item: Item, by: Item): Draft => ({
  ...draft,
  sides: draft.sides.map((side) => ({ ...side, items: side.items.map((one) => (one === item ? by : one)) })),
});
/** A draft but for one item. */
export const without = (draft: Draft, item: Item): Draft => ({
  ...draft,
  sides: draft.sides.map((side) => ({ ...side, items: side.items.filter((one) => one !== item) })),
  tried: draft.tried.filter((one) => one !== item),
});
