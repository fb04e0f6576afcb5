/** Taking changes back, in the order in which they were made: of whatever kind, of whichever car. */
import { answer, type Row } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { carInUse, isOutcome, refused } from '../house/own.js';
import type { Change } from '../records/change.js';
import { cars } from '../records/kinds/car.js';
import { revisions } from '../records/kinds/revision.js';
import { kinds } from '../records/kinds.js';
import { applyChange } from '../records/machine.js';
import { Overlay } from '../records/overlay.js';
import { ChangeRefused } from '../records/refused.js';
import type { Entry, Reads } from '../records/tables.js';
import { finalText, isFinal, makesCar, undoable } from '../records/taking.js';
import { drafted } from '../records/work.js';
import { sentence, textOf } from '../show/amount.js';
import { revisionNames } from '../show/revisions.js';
import { countOf, shortened } from './count.js';
import { most } from './history.js';

/** What one line changed. */
type Line = readonly Entry[];

/** The records as they would be then. @throws ChangeRefused */
function without(
  lines: readonly Line[],
  { garage, asker, room, now, event }: Context,
): { readonly records: Reads; readonly change: Change } {
  const change: Change = { change: 'undo', lines: lines.map((line) => line[0]?.line ?? '') };
  const records = new Overlay(garage.records);
  const asking = { asker, room: room.id, at: now, cause: event.id, line: event.line };
  applyChange(drafted(records, kinds, asking), change);
  return { records, change };
}
/** Each record that is another one then: a car's facts by what it stands at. */
function rowsOf(lines: readonly Line[], was: Reads, is: Reads, { room, asker }: Context): readonly Row[] {
  const telling = { was, is, room: room.id, preferences: asker.preferences };
  const told = new Set<string>();
  return lines.flat().flatMap(({ kind: name, record, car }) => {
    const key = name === revisions.name ? `facts ${car}` : `${name} ${record}`;
    if (told.has(key)) return [];
    told.add(key);
    const kind = kinds.named(name);
    if (name !== revisions.name) return kind.rows(was.find(kind, record), is.find(kind, record), telling);
    const [before, after] = [was, is].map((reads) => headAt(reads, car));
    return revisions.rows(before, after, telling);
  });
}
function headAt(reads: Reads, car: number | undefined) {
  const held = car === undefined ? undefined : reads.find(cars, car);
  return held && reads.find(revisions, held.data.head);
}
/** What was typed, or what it was about. */
function lineText(line: Line, { garage, room, asker }: Context): string {
  const telling = { was: garage.records, is: garage.records, room: room.id, preferences: asker.preferences };
  const texts = [...line].reverse().flatMap(({ kind, record, after }) => {
    if (kind !== revisions.name) return after?.text || [];
    return (typeof record === 'number' && garage.records.find(revisions, record)?.text) || [];
  });
  const said = [...new Set(texts)].join('; ');
  if (said !== '') return [...said].length > 120 ? `${[...said].slice(0, 119).join('')}…` : said;
  const labels = line.flatMap(({ kind, before, after }) =>
    kinds
      .named(kind)
      .rows(before, after, telling)
      .map(({ label }) => label),
  );
  return [...new Set(labels)].join(', ') || '(erased)';
}
function headline(lines: readonly Line[], rows: readonly Row[], is: Reads, context: Context): string {
  const [line] = lines;
  const [row] = rows;
  if (lines.length > 1 || line === undefined) return `${sentence(counted(lines.length))} taken back.`;
  if (rows.length !== 1 || row === undefined) return `Taken back: ${lineText(line, context)}.`;
  const cell = textOf(row.cells[1] ?? '');
  const [entry] = line;
  if (entry?.kind !== revisions.name) return `${sentence(row.label)}: ${cell} again.`;
  const [before, after] = [context.garage.records, is].map((reads) => headAt(reads, entry.car));
  if (!before || !after) throw new Error(`car ${entry.car} is gone`);
  const name = revisionNames(before.data, after.data, context.asker.preferences).join();
  return after.data.facts.size < before.data.facts.size ? `${sentence(name)} is blank again.` : `${sentence(name)} ${cell} again.`;
}
const numerals = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const counted = (n: number): string => numerals[n] ?? `${n}`;
/** Why it takes nothing back, and what would take back what was before. */
function nothingTaken([final]: readonly Entry[], context: Context): Outcome {
  const all = undoable(context.garage.records, context.asker.id, most);
  const older = all.findIndex((line) => line.some((entry) => !isFinal(entry)) && !line.some(makesCar));
  if (final && (older >= 0 || isFinal(final)))
    return refused(`${sentence(finalText(final))} can't be taken back.`, older < 0 ? 'history' : `undo ${older + 1}`);
  const car = carInUse(context);
  return isOutcome(car) ? car : refused(`There's nothing to take back on ${car.name}.`, 'history');
}

export const undo: Command = {
  word: 'undo',
  also: ['undo that', 'take it back', 'take that back'],
  group: 'verb',
  summary: 'Takes your last change back; again takes the one before. undo 3 takes three.',
  examples: [{ line: 'set front spring 450\nundo', does: 'as it was before' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const said = reading.rest.trim();
    const count = countOf(said, most);
    if (count === undefined) return refused(`Undo takes a number of changes, from 1 to ${most}, not ${shortened(said)}.`, 'undo 2');
    const found = undoable(context.garage.records, context.asker.id, count);
    const lines = found
      .filter((line) => !line.some(makesCar))
      .map((line) => line.filter((entry) => !isFinal(entry)))
      .filter(({ length }) => length > 0);
    const finals = found.flat().filter((entry) => isFinal(entry) || makesCar(entry));
    if (lines.length === 0) return nothingTaken(finals, context);
    try {
      const { records, change } = without(lines, context);
      const rows = rowsOf(lines, context.garage.records, records, context);
      const notes = [
        ...(lines.length > 1 ? lines.map((line) => lineText(line, context)) : []),
        ...otherCars(lines, context),
        ...finals.map((entry) => `${sentence(finalText(entry))} can't be taken back.`),
        ...(found.length < count ? [`There were only ${counted(lines.length)}.`] : []),
      ];
      return {
        answer: answer('changed', headline(lines, rows, records, context), {
          // What one line says is not said again in a row.
          rows: rows.length > 1 ? rows.map(({ label, cells }) => ({ label, cells: [againText(cells.map(textOf))] })) : [],
          ...{ notes, next: [{ label: 'history', line: 'history' }] },
        }),
        changes: [change],
      };
    } catch (problem) {
      if (problem instanceof ChangeRefused) return refused(problem.message, 'history');
      throw problem;
    }
  },
};
/** `375 lb/in again`; what was not there before is not there again. */
const againText = ([, is = '']: readonly string[]): string => (is === 'forgotten' ? 'blank again' : `${is} again`);
/** Said where it is not the car in use. */
function otherCars(lines: readonly Line[], { garage }: Context): readonly string[] {
  const ids = new Set(lines.flat().flatMap(({ car }) => car ?? []));
  return garage.mine.flatMap(({ id, name }) => (ids.has(id) && id !== garage.chosen?.id ? [`Of ${name}.`] : []));
}
