/** Facts before and after, as rows and sentences. */
import { nameAt, nameAtAll } from '../../core/engine.js';
import type { Row } from '../answer.js';
import type { Preferences } from '../context.js';
import type { Altered, Laid } from '../facts.js';
import type { Reading } from '../reading.js';
import { isSame } from '../same.js';
import { factCell, textOf, valueText } from './amount.js';
import { labelAtAll } from './label.js';

const text = (one: Altered, fact: Altered['after'], preferences: Preferences): string =>
  fact === undefined ? 'not told' : valueText(one.entry, fact.value, preferences);

/** One row for places that were told the same and were the same before. */
export const alteredRows = (altered: readonly Altered[], preferences: Preferences): readonly Row[] =>
  together(altered, preferences).map(({ row }) => row);

function together(altered: readonly Altered[], preferences: Preferences): readonly { readonly name: string; readonly row: Row }[] {
  const groups: { readonly one: Altered; readonly places: string[] }[] = [];
  for (const one of altered) {
    const group = groups.find(
      ({ one: first }) =>
        first.entry === one.entry &&
        text(first, first.before, preferences) === text(one, one.before, preferences) &&
        text(first, first.after, preferences) === text(one, one.after, preferences),
    );
    if (group) group.places.push(one.place);
    else groups.push({ one, places: [one.place] });
  }
  return groups.map(({ one, places }) => ({
    name: nameAtAll(one.entry, places).join(' and '),
    row: {
      label: labelAtAll(one.entry, places),
      cells: [
        one.before && one.after && isSame(one.before.value, one.after.value) ? 'as it was' : text(one, one.before, preferences),
        one.after === undefined ? 'forgotten' : factCell(one.entry, one.after, preferences),
      ],
    },
  }));
}
/** What the facts are called, in a sentence. */
export const alteredNames = (altered: readonly Altered[], preferences: Preferences): readonly string[] =>
  together(altered, preferences).map(({ name }) => name);
/** `front spring rate 450 lb/in, was 400 lb/in`: each of them, for a headline or a note. */
export const alteredTexts = (altered: readonly Altered[], preferences: Preferences): readonly string[] =>
  together(altered, preferences).map(({ name, row }) => {
    const [was, is] = row.cells.map(textOf);
    return `${name} ${is}${was === 'not told' ? '' : `, was ${was === 'as it was' ? 'the same' : was}`}`;
  });

/** What else happened to the facts: said in other words before, carried on, lost. */
export function sideEffects(laid: Pick<Laid, 'forgot' | 'carried'>, preferences: Preferences): readonly string[] {
  const said = laid.forgot.map((one) => {
    const was = one.before ? ` ${valueText(one.entry, one.before.value, preferences)}` : '';
    return `Takes the place of ${nameAt(one.entry, one.place)}${was}.`;
  });
  const kept = laid.carried.filter((one) => one.after);
  const lost = laid.carried.filter((one) => !one.after);
  if (kept.length > 0) {
    const list = kept.map((one) => `${nameAt(one.entry, one.place)} ${text(one, one.after, preferences)}`).join(', ');
    said.push(`The car has changed since these were taken, so they were worked out anew: ${list}.`);
  }
  if (lost.length > 0) {
    const list = lost.map((one) => nameAt(one.entry, one.place)).join(', ');
    said.push(`The car has changed since these were taken, and what they are now can't be worked out; forgotten: ${list}.`);
  }
  return said;
}
/** Conditions of a question that a change can't keep. */
export const unsaved = (reading: Reading): readonly string[] => {
  const conditions = reading.tried.filter(({ entry }) => entry.scope === 'question').map(({ entry }) => entry.name);
  return conditions.length === 0 ? [] : [`Not saved, for it belongs to a question: ${conditions.join(', ')}.`];
};
