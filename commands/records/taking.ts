/** Taking back what lines changed, by the journal: each record as it was before, unless it was touched since. */
import type { TakeBack, Undo } from './change.js';
import type { Held } from './held.js';
import { piecesOf } from './kind.js';
import { cars } from './kinds/car.js';
import { factName, revisions, sameFact } from './kinds/revision.js';
import { dropOpen, headOf, isOpen, layFacts, touchedBy, withFacts } from './recording.js';
import { ChangeRefused } from './refused.js';
import { type Entry, newer, type Reads } from './tables.js';
import type { Work } from './work.js';

/** What can't be taken back, as it is said. */
const final: Readonly<Record<string, string>> = {
  'forget me': 'forgetting you',
  'forget car': 'erasing a car',
  prefix: 'setting the prefix of a room',
  'leave room': 'leaving a room',
  'export me': 'the export of your data',
};
export const isFinal = (entry: Entry): boolean => entry.kind === 'order';
export const finalText = (entry: Entry): string => (makesCar(entry) ? 'making a car' : (final[entry.record] ?? 'the last change'));

/** What a line did that stands and that an undo could take back; newest first. */
export const standing = (entries: readonly Entry[]): readonly Entry[] =>
  entries.filter(({ back, undone }) => !back && undone === undefined).sort((a, b) => newer(a.id, b.id));

/** @throws ChangeRefused for what can't be taken back, or was changed again since */
export function undo(work: Work, { lines }: Undo): void {
  // What a line made is erased by name; an undo brings back, and erases nothing.
  if (lines.some((line) => standing(work.tables.journal.ofLine(line)).some(makesCar)))
    throw new ChangeRefused("Making a car can't be taken back.");
  const own = lines.filter((line) => line === work.asking.line);
  for (const line of own) asIfNever(work, line);
  const others = lines.filter((line) => line !== work.asking.line);
  const entries = others.flatMap((line) => standing(work.tables.journal.ofLine(line))).filter((entry) => !isFinal(entry));
  work.noting('back', () => revert(work, entries, { by: 'undo', why: 'undo' }));
  for (const entry of entries) work.tables.journal.replace({ ...entry, undone: work.asking.line });
}
/** The message's own changes so far. */
function asIfNever(work: Work, line: string): void {
  const entries = standing(work.tables.journal.ofLine(line)).filter((entry) => entry.cause === work.asking.cause && !isFinal(entry));
  work.noting('quietly', () => revert(work, entries, { by: 'itself' }));
  for (const entry of entries) work.tables.journal.remove(entry);
}
/** @throws ChangeRefused likewise */
export function takeBack(work: Work, { line, why }: TakeBack): void {
  const { journal } = work.tables;
  const entries = journal
    .ofLine(line)
    .filter(({ undone }) => undone === undefined)
    .sort((a, b) => newer(a.id, b.id));
  const stuck = entries.find(isFinal);
  if (stuck !== undefined) throw new ChangeRefused(`${capital(finalText(stuck))} can't be taken back.`);
  work.noting('quietly', () => revert(work, entries, { by: 'edit', why }));
  for (const entry of entries) journal.replace({ ...entry, undone: line });
  // What the line had taken back stands again.
  for (const entry of journal.undoneBy(line)) if (entry.line !== line) journal.replace({ ...entry, undone: undefined });
}
/** Who takes it back: a later `undo`, an edit of the line, or a later line of the same message. */
type How = { readonly by: 'undo' | 'edit'; readonly why: string } | { readonly by: 'itself' };

function revert(work: Work, entries: readonly Entry[], how: How): void {
  const recorded = new Map<number, Entry[]>();
  for (const entry of entries) {
    if (makesCar(entry)) unmakeCar(work, entry);
    else if (entry.kind !== revisions.name) revertRecord(work, entry);
    else if (entry.car !== undefined) recorded.set(entry.car, [...(recorded.get(entry.car) ?? []), entry]);
  }
  // Last, when no setup that goes too holds a moment: what is recorded of a car is one revision, and so is what is taken back of it.
  const unmade = new Set(entries.flatMap((entry) => (makesCar(entry) ? [entry.record] : [])));
  for (const [car, made] of recorded) if (!unmade.has(car)) revertFacts(work, car, made, how);
}
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const makesCar = (entry: Entry): boolean => entry.kind === cars.name && entry.before === undefined;

const changedSince = (what: string): ChangeRefused => new ChangeRefused(`What it changed was changed again since: ${what}.`);
const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A record of any kind, piece by piece. */
function revertRecord(work: Work, { kind: name, record, before, after }: Entry): void {
  const kind = work.kinds.named(name);
  const now = work.tables.find(kind, record);
  const pieces = piecesOf(kind);
  const take = (held: Held | undefined) => (held === undefined ? undefined : pieces.take(kind.schema.parse(held.data)));
  const [was, left, is] = [take(before), take(after), take(now)];
  const telling = { was: work.tables, is: work.tables, room: work.asking.room, preferences: work.asking.asker.preferences };
  const label = (): string =>
    kind
      .rows(before, after, telling)
      .map((row) => row.label)
      .join(', ');
  const keys = [...new Set([...(was?.keys() ?? []), ...(left?.keys() ?? [])])].filter((key) => !isSame(was?.get(key), left?.get(key)));
  const whole = was === undefined || left === undefined;
  if (whole ? !isSame(left && [...left], is && [...is]) : is === undefined || keys.some((key) => !isSame(is.get(key), left.get(key))))
    throw changedSince(label());
  work.mine(kind, (before ?? after)?.of ?? {});
  if (before === undefined) {
    if (now !== undefined) work.remove(kind, now);
  } else if (now === undefined) work.put(kind, before);
  else if (was !== undefined) {
    const data = kind.schema.parse(pieces.put(now.data, new Map(keys.map((key) => [key, was.get(key)]))));
    const untouched = isSame([...(left ?? [])], [...(is ?? [])]);
    work.put(kind, untouched ? { ...before, data } : { ...now, data });
  }
}

function revertFacts(work: Work, id: number, entries: readonly Entry[], how: How): void {
  const { tables } = work;
  const car = tables.find(cars, id);
  if (car === undefined || car.of.member !== work.asking.asker.id)
    throw new ChangeRefused('The car that it changed is not there any more.');
  let { facts, measuredIn } = headOf(work, car).data;
  const since = new Set<string>();
  for (const entry of entries) {
    const { paths, was, is } = touchedBy(entry);
    for (const path of paths) if (!sameFact(facts.get(path), is.facts.get(path))) since.add(path);
    facts = withFacts(facts, paths, was.facts);
    if (measuredIn === is.measuredIn) measuredIn = was.measuredIn;
  }
  if (since.size > 0) throw changedSince([...since].sort().map(factName).join(', '));
  if (how.by !== 'itself') {
    const undoes = how.by === 'undo' ? { undoes: oldest(entries) } : {};
    layFacts(work, car, { facts, measuredIn, text: how.why, ...undoes });
    return;
  }
  // What it made goes, as far as nothing else stands on it.
  const made = new Set(entries.map(({ record }) => record));
  let now = car;
  for (let head = headOf(work, now); made.has(head.id) && isOpen(work, head); head = headOf(work, now)) now = dropOpen(work, now, head);
  if (now === car) layFacts(work, car, { facts, measuredIn, text: 'undo' });
}
const oldest = (entries: readonly Entry[]): number =>
  entries.flatMap(({ record }) => (typeof record === 'number' ? record : [])).sort((a, b) => newer(b, a))[0] ?? 0;

/** A car that was just made goes again, unless more was told of it. */
function unmakeCar(work: Work, { record, line }: Entry): void {
  const { tables } = work;
  const car = typeof record === 'number' ? tables.find(cars, record) : undefined;
  if (car === undefined || car.of.member !== work.asking.asker.id) throw new ChangeRefused('The car that it made is not there any more.');
  const causes = new Set(tables.journal.ofLine(line).map(({ cause }) => cause));
  const others = tables.list(revisions, { car: car.id }).some(({ told }) => told === undefined || !causes.has(told.cause));
  const more = work.kinds.all.some(
    (kind) => kind.owner === 'car' && kind.name !== revisions.name && tables.list(kind, { car: car.id }).length > 0,
  );
  if (others || more) throw changedSince(car.data.name);
  tables.remove(cars, car.id);
}

/** What an undo takes back, newest first: the lines of the member that changed something which stands. */
export function undoable(reads: Reads, member: string, count: number): readonly (readonly Entry[])[] {
  const found = new Map<string, Entry[]>();
  const page = 50;
  let before: number | undefined;
  for (;;) {
    const entries = reads.journal.newest(member, page, before);
    for (const entry of standing(entries)) {
      const line = found.get(entry.line);
      if (line === undefined && found.size > count) return [...found.values()].slice(0, count);
      if (line === undefined) found.set(entry.line, [entry]);
      else line.push(entry);
    }
    before = entries.at(-1)?.id;
    if (entries.length < page) return [...found.values()].slice(0, count);
  }
}
