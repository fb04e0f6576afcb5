/** Facts before and after, as rows and sentences. */
import type { Entry } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Row } from '../answer.js';
import type { Preferences } from '../context.js';
import type { Altered, Laid } from '../facts.js';
import type { Reading } from '../reading.js';
import { isSame } from '../same.js';
import { ofResults, textOf, valueText } from './amount.js';
import { partName } from './partName.js';

/** The units in which facts were told, where they were told with one. */
export type UnitsTold = ReadonlyMap<Entry, string>;
const none: UnitsTold = new Map();

const text = (one: Altered, fact: Altered['after'], preferences: Preferences, units: UnitsTold): string =>
  fact === undefined
    ? 'none'
    : valueText(
        one.entry,
        fact.value,
        preferences,
        units.get(one.entry),
        units.has(one.entry) && fact === one.before ? ofResults : undefined,
      );
/** What is the same all round has no place in its name. */
const nameOf = (entry: Entry, places: readonly string[]): string =>
  partName(entry, places.length === placesOf(entry.scope).length && places.length > 1 ? [] : places);

/** One row for places that were told the same and were the same before: was, is. */
export const alteredRows = (altered: readonly Altered[], preferences: Preferences): readonly Row[] =>
  together(altered, preferences).map(({ row }) => row);
/** The same in one cell: `450 lb/in, was 375`; what is new has no was. */
export const recordedRows = (altered: readonly Altered[], preferences: Preferences, units = none): readonly Row[] =>
  together(altered, preferences, units).map(({ row: { label, cells } }) => ({ label, cells: [isWas(cells.map(textOf))] }));

function together(
  altered: readonly Altered[],
  preferences: Preferences,
  units = none,
): readonly { readonly name: string; readonly row: Row }[] {
  const groups: { readonly one: Altered; readonly places: string[] }[] = [];
  for (const one of altered) {
    const group = groups.find(
      ({ one: first }) =>
        first.entry === one.entry &&
        text(first, first.before, preferences, units) === text(one, one.before, preferences, units) &&
        text(first, first.after, preferences, units) === text(one, one.after, preferences, units),
    );
    if (group) group.places.push(one.place);
    else groups.push({ one, places: [one.place] });
  }
  return groups.map(({ one, places }) => ({
    name: nameOf(one.entry, places),
    row: {
      label: nameOf(one.entry, places),
      cells: [
        one.before && one.after && isSame(one.before.value, one.after.value) ? 'the same' : text(one, one.before, preferences, units),
        one.after === undefined ? 'forgotten' : valueText(one.entry, one.after.value, preferences, units.get(one.entry)),
      ],
    },
  }));
}
/** `450 lb/in, was 375`: the unit once, where both have it. */
function isWas([was = '', is = '']: readonly string[]): string {
  if (was === 'none' || was === 'the same') return was === 'none' ? is : `${is}, as before`;
  const unit = / \D*$/.exec(is)?.[0] ?? '';
  return `${is}, was ${unit !== '' && was.endsWith(unit) ? was.slice(0, -unit.length) : was}`;
}
/** What the facts are called, in a sentence. */
export const alteredNames = (altered: readonly Altered[], preferences: Preferences): readonly string[] =>
  together(altered, preferences).map(({ name }) => name);
/** `front spring 450 lb/in, was 400`: each of them, for a headline or a note. */
export const alteredTexts = (altered: readonly Altered[], preferences: Preferences, units = none): readonly string[] =>
  together(altered, preferences, units).map(({ name, row }) => `${name} ${isWas(row.cells.map(textOf))}`);

/** What else happened to the facts: said in other words before, carried on, lost. */
export function sideEffects(laid: Pick<Laid, 'forgot' | 'carried'>, preferences: Preferences): readonly string[] {
  const said = laid.forgot.map((one) => {
    const was = one.before ? ` ${valueText(one.entry, one.before.value, preferences)}` : '';
    return `That stands in for the ${partName(one.entry, [one.place])}${was}.`;
  });
  const kept = laid.carried.filter((one) => one.after);
  const lost = laid.carried.filter((one) => !one.after);
  if (kept.length > 0) {
    const list = kept.map((one) => `${partName(one.entry, [one.place])} ${text(one, one.after, preferences, none)}`).join(', ');
    said.push(`The car has changed since these were measured; now they come to ${list}.`);
  }
  if (lost.length > 0) {
    const list = lost.map((one) => partName(one.entry, [one.place])).join(', ');
    said.push(`The car has changed since these were measured, and I can't work out what they are now: ${list}. I dropped them.`);
  }
  return said;
}
/** Conditions of a question that a change can't keep. */
export const unsaved = (reading: Reading): readonly string[] => {
  const conditions = reading.tried.filter(({ entry }) => entry.scope === 'question').map(({ entry }) => entry.name);
  return conditions.length === 0 ? [] : [`Not saved, that's for one question: ${conditions.join(', ')}.`];
};
