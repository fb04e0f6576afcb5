/** Whether a line says enough, and one thing: how much, where, and nothing twice. */
import { isInput } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import type { Choice, Item, Stop } from '../reading.js';
import { everydayUnits, fromSI } from '../units.js';
import { sentence } from './asking.js';
import { replaced, without } from './assembling.js';
import { exampleGoal, whichEnd } from './goals.js';
import type { Draft, Spoken } from './spoken.js';
import { valueText } from './values.js';
import { keyOf } from './vocabulary.js';
import { writeItem, writeReading } from './write.js';

/** The first thing that a reading lacks or says twice; undefined where it is complete. */
export function check(spoken: Spoken, draft: Draft): Stop | undefined {
  return (
    amountless(spoken, draft) ??
    bareSupposition(spoken) ??
    oneOfTwo(spoken, draft) ??
    whichPlaces(spoken, draft) ??
    toldTwice(spoken, draft)
  );
}
/** A change without an amount, something sought without a goal, a comparison of nothing. */
function amountless(spoken: Spoken, draft: Draft): Stop | undefined {
  const { verb } = draft;
  const items = draft.sides.flatMap((side) => side.items);
  if (verb === 'set' || verb === 'save') {
    const bare = items.find((item) => item.said === undefined);
    if (bare && !isInput(bare.entry))
      return {
        stop: 'refused',
        sentence: `${sentence(bare.entry.name)} is worked out, not told.`,
        line: `why ${spoken.vocabulary.nameOf(bare.entry)}`,
      };
    if (bare) return howMuch(spoken, draft, bare);
    if (items.length === 0 && verb === 'set')
      return { stop: 'refused', sentence: 'Set what, to how much?', line: 'set front spring 450 lb/in' };
  }
  if (verb === 'find' && !draft.goal && !spoken.asked.goalOnly) {
    return { stop: 'refused', sentence: 'Find it for how much of what?', line: exampleGoal(spoken, items[0]) };
  }
  if (verb === 'compare' && draft.sides.every((side) => side.items.length === 0 && side.subjects.length === 0))
    return { stop: 'refused', sentence: 'Compare what with what?', line: 'compare 245/40R17 vs 255/40R17' };
  return undefined;
}
/** `set front spring 450 to 500`: a fact is one amount; neither end is dropped. */
function oneOfTwo(spoken: Spoken, draft: Draft): Stop | undefined {
  const { verb } = draft;
  const items = draft.sides.flatMap((side) => side.items);
  const told = items.every((item) => item.said !== undefined);
  if (verb !== 'set' && verb !== 'save' && verb !== 'try' && !(verb === undefined && told && draft.sides.length === 1)) return undefined;
  const item = items.find(({ entry, said }) => said?.to !== undefined && entry.kind === 'quantity' && entry.scope !== 'question');
  if (item?.said?.to === undefined) return undefined;
  const { to, ...said } = item.said;
  const preferences = spoken.setting.preferences;
  const choices = [said.value, to].map((value): Choice => {
    const one: Item = { ...item, said: { value, text: typeof value === 'number' ? valueText(value, item.entry, preferences) : said.text } };
    const line = writeReading(replaced(draft, item, one), spoken.setting);
    return { label: line, line };
  });
  const [first, second] = choices.map(({ line }) => line);
  return first === second ? undefined : { stop: 'asked', sentence: `${sentence(item.entry.name)}: which of the two?`, choices };
}
/** `ride height with passenger`: an input that is supposed, and not how much of it. */
function bareSupposition(spoken: Spoken): Stop | undefined {
  const { tried, sides } = spoken.sections;
  const asksBeside = sides.some(({ atoms }) => atoms.some((atom) => atom.is === 'word'));
  if (!asksBeside || spoken.asked.verb === 'compare' || spoken.asked.verb === 'draw') return undefined;
  for (const atoms of tried) {
    if (atoms.some((atom) => atom.is !== 'word' && atom.is !== 'place' && atom.is !== 'break')) continue;
    const words = atoms.flatMap((atom) => (atom.is === 'word' ? [atom.word] : []));
    const named = spoken.vocabulary.phrases.get(keyOf(words)) ?? [];
    const [only] = named;
    if (words.length === 0 || only === undefined || !named.every(({ entry }) => isInput(entry) && entry.kind === 'quantity')) continue;
    const example = exampleFor(spoken, { entry: only.entry, places: placesOf(only.entry.scope).slice(0, 1), placed: true });
    const amount = writeItem(example, spoken.setting);
    return {
      stop: 'refused',
      sentence: `${sentence(only.entry.name)}: how much?`,
      line: `${spoken.asked.text.replace(/\b(?:with|w)\b.*$/i, '').trim()} with ${amount}`,
    };
  }
  return undefined;
}
function howMuch(spoken: Spoken, draft: Draft, bare: Item): Stop {
  const example = exampleFor(spoken, bare);
  const line = writeReading({ ...draft, sides: [{ subjects: draft.sides[0]?.subjects ?? [], items: [example] }] }, spoken.setting);
  return { stop: 'refused', sentence: `${sentence(bare.entry.name)}: how much?`, line };
}
/** An item told a usual amount, for a line to show. */
function exampleFor(spoken: Spoken, item: Item): Item {
  const { entry } = item;
  const all = placesOf(entry.scope);
  const where = item.placed || entry.alike ? item : { ...item, places: [all[0] ?? ''], placed: true };
  const { preferences } = spoken.setting;
  if (entry.dimension && entry.sane && entry.kind === 'quantity') {
    const [low, high] = entry.sane;
    const unit = everydayUnits(entry.dimension, preferences)[0]!;
    const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
    const value = Number(fromSI(middle, unit).toPrecision(2)) * unit.factor + (unit.offset ?? 0);
    return { ...where, said: { value, text: '' } };
  }
  const value = entry.options?.[0] ?? '245/40R17';
  return { ...where, said: { value, text: value } };
}
/** A change, or a trial, says where. */
function whichPlaces(spoken: Spoken, draft: Draft): Stop | undefined {
  const { verb } = draft;
  if (verb === 'find') return whichEnd(spoken, draft);
  if (verb !== 'set' && verb !== 'save' && verb !== 'try') return undefined;
  for (const side of draft.sides)
    for (const item of side.items) {
      if (item.placed || item.entry.alike || item.said === undefined) continue;
      const groups = placeGroups(item);
      const choices = groups.map((places): Choice => {
        const line = writeReading(placedAlike(draft, item, places), spoken.setting);
        return { label: line, line };
      });
      const which = item.entry.scope === 'gear' ? 'Which gear' : item.entry.scope === 'axle' ? 'Front or rear' : 'Which wheels';
      return { stop: 'asked', sentence: `${which}? ${sentence(item.entry.name)} ${item.said.text}`.trim(), choices };
    }
  return undefined;
}
/** What else is told without a place, of the same kind of place, goes where the first goes: springs and their isolators. */
function placedAlike(draft: Draft, item: Item, places: readonly string[]): Draft {
  const loose = (one: Item): boolean =>
    !one.placed && !one.entry.alike && one.said !== undefined && one.entry.scope === item.entry.scope && !one.entry.extensive;
  return draft.sides
    .flatMap((side) => side.items)
    .filter((one) => one === item || loose(one))
    .reduce((so, one) => replaced(so, one, { ...one, places, placed: true }), draft);
}
/** One path told twice in a line is never taken for one of them. */
function toldTwice(spoken: Spoken, draft: Draft): Stop | undefined {
  for (const side of [...draft.sides, { items: draft.tried, subjects: [] }]) {
    const seen = new Map<string, Item>();
    for (const item of side.items) {
      if (item.said === undefined) continue;
      for (const place of item.places) {
        const path = pathAt(place, item.entry);
        const before = seen.get(path);
        if (before && before !== item) {
          const choices = [before, item].map((one): Choice => {
            const line = writeReading(without(draft, one === before ? item : before), spoken.setting);
            return { label: line, line };
          });
          return { stop: 'asked', sentence: `${sentence(item.entry.name)} is told twice: which?`, choices };
        }
        seen.set(path, item);
      }
    }
  }
  return undefined;
}
/** Groups of places that a member may have meant, at most four. */
function placeGroups(item: Item): readonly (readonly string[])[] {
  switch (item.entry.scope) {
    case 'axle':
      return item.entry.extensive ? [['front'], ['rear']] : [['front'], ['rear'], ['front', 'rear']];
    case 'corner':
      return item.entry.extensive
        ? [['lf'], ['rf'], ['lr'], ['rr']]
        : [
            ['lf', 'rf'],
            ['lr', 'rr'],
            ['lf', 'rf', 'lr', 'rr'],
          ];
    case 'gear':
      return [['1'], ['2'], ['3'], ['4']];
    default:
      return [['']];
  }
}
