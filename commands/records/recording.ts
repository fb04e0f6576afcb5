/** Recording facts: a new revision of a car on top of the one at which it stands. What one message records of a car is one revision. */
import type { Fact, Facts } from '../../core/car.js';
import type { MakeCar, RecordFacts } from './change.js';
import { cars, type HeldCar, ownCar } from './kinds/car.js';
import { met } from './kinds/member.js';
import { differing, type HeldRevision, noMoment, type RevisionData, revisions } from './kinds/revision.js';
import { setups } from './kinds/setup.js';
import { ChangeRefused, Moved } from './refused.js';
import type { Entry } from './tables.js';
import type { Work } from './work.js';

export function makeCar(work: Work, { name, facts, measured, why = '' }: MakeCar): void {
  const { tables, told } = work;
  met(work);
  const [car, revision] = [tables.next(cars), tables.next(revisions)];
  work.put(cars, { id: car, of: { member: work.asking.asker.id }, data: { name, head: revision }, told, text: '' });
  // A car's beginning is not taken back by itself: it goes with the car.
  const data = { parent: undefined, facts, measuredIn: measured ? revision : undefined, undoes: undefined };
  work.insert(revisions, { id: revision, of: { car }, data, told, text: why });
}

/** @throws Moved when the car stands elsewhere; ChangeRefused for another car's revision */
export function record(work: Work, { car: id, head, facts, why, measuredIn }: RecordFacts): void {
  const { tables } = work;
  const car = ownCar(work, id);
  if (car.data.head !== work.kept(revisions, head)) throw new Moved(`Car ${car.id} has changed since the message was worked out.`);
  const taken = typeof measuredIn === 'number' ? work.kept(revisions, measuredIn) : measuredIn;
  if (typeof taken === 'number' && tables.find(revisions, taken)?.of.car !== car.id) throw new ChangeRefused(noMoment(car.data.name));
  layFacts(work, car, { facts, measuredIn: taken, text: why });
}

interface Laid {
  readonly facts: Facts;
  readonly measuredIn: number | 'now' | undefined;
  readonly text: string;
  /** Of an undo: a revision of its own, so that the history tells it. */
  readonly undoes?: number;
}
/** Puts facts on top of a car's head: into the revision that this message has open, or into a new one. */
export function layFacts(work: Work, car: HeldCar, laid: Laid): void {
  const head = headOf(work, car);
  if (laid.undoes === undefined && isOpen(work, head)) join(work, car, head, laid);
  else add(work, car, head, laid);
}
export function headOf({ tables }: Work, car: HeldCar): HeldRevision {
  const head = tables.find(revisions, car.data.head);
  if (head === undefined) throw new Error(`car ${car.id} has no revision ${car.data.head}`);
  return head;
}
/** Made by this message, and further records join it. What names a moment closes it: a setup, an undo. */
export const isOpen = ({ tables, asking }: Work, revision: HeldRevision): boolean =>
  revision.told?.cause === asking.cause &&
  revision.data.undoes === undefined &&
  !tables.list(setups, { car: revision.of.car ?? 0 }).some(({ data }) => data.revision === revision.id);

function add(work: Work, car: HeldCar, head: HeldRevision, { facts, measuredIn, text, undoes }: Laid): void {
  const { tables, told } = work;
  const id = tables.next(revisions);
  const data: RevisionData = { parent: head.id, facts, measuredIn: measuredIn === 'now' ? id : measuredIn, undoes };
  const made: HeldRevision = { id, of: { car: car.id }, data, told, text };
  work.insert(revisions, made);
  tables.replace(cars, { ...car, data: { ...car.data, head: id } });
  const images = imagesOf(made, head.data, data);
  work.note(revisions, made, images.before, images.after);
}

function join(work: Work, car: HeldCar, open: HeldRevision, laid: Laid): void {
  const { tables } = work;
  const measuredIn = laid.measuredIn === 'now' ? open.id : laid.measuredIn;
  const entry = entryOf(work, open);
  const data = { ...open.data, facts: laid.facts, measuredIn };
  const parent = data.parent === undefined ? undefined : tables.find(revisions, data.parent);
  if (parent && parent.data.measuredIn === measuredIn && differing(parent.data.facts, data.facts).length === 0) {
    dropOpen(work, car, open);
    return;
  }
  // What an edit has put back so far has no words of its own.
  const text = entry === undefined && parent !== undefined ? laid.text : [open.text, laid.text].filter((one) => one !== '').join('; ');
  const joined: HeldRevision = { ...open, data, text };
  tables.replace(revisions, joined);
  if (parent === undefined) return;
  const images = imagesOf(joined, entry === undefined ? open.data : momentBefore(entry, open), data);
  if (entry === undefined) work.note(revisions, joined, images.before, images.after);
  else tables.journal.replace({ ...entry, ...images });
}
/** The message's own revision goes, as if it had not been asked for. */
export function dropOpen(work: Work, car: HeldCar, open: HeldRevision): HeldCar {
  const { tables } = work;
  const { parent } = open.data;
  if (parent === undefined) throw new Error(`car ${car.id} has nothing before its first revision`);
  const entry = entryOf(work, open);
  if (entry !== undefined) tables.journal.remove(entry);
  const now = { ...car, data: { ...car.data, head: parent } };
  tables.replace(cars, now);
  tables.remove(revisions, open.id);
  return now;
}

interface Images {
  readonly before: HeldRevision;
  readonly after: HeldRevision;
}
type Moment = Pick<RevisionData, 'facts' | 'measuredIn'>;
/** The facts that differ, before and after. */
function imagesOf(revision: HeldRevision, was: Moment, is: Moment): Images {
  const paths = differing(was.facts, is.facts);
  const image = ({ facts, measuredIn }: Moment): HeldRevision => {
    const only = new Map<string, Fact>();
    for (const path of paths) {
      const fact = facts.get(path);
      if (fact !== undefined) only.set(path, fact);
    }
    return { ...revision, data: { parent: undefined, facts: only, measuredIn, undoes: undefined }, told: undefined, text: '' };
  };
  return { before: image(was), after: image(is) };
}
/** What the journal says that a revision touched, as it was and as it became. */
export function touchedBy({ before, after }: Entry): { readonly paths: readonly string[]; readonly was: Moment; readonly is: Moment } {
  const [was, is] = [before, after].map((image) => revisions.schema.parse(image?.data));
  if (was === undefined || is === undefined) throw new Error('a revision without its images');
  return { paths: [...new Set([...was.facts.keys(), ...is.facts.keys()])], was, is };
}
/** The car's moment before its open revision. */
function momentBefore(entry: Entry, open: HeldRevision): Moment {
  const { paths, was } = touchedBy(entry);
  return { facts: withFacts(open.data.facts, paths, was.facts), measuredIn: was.measuredIn };
}
export function withFacts(facts: Facts, paths: readonly string[], as: Facts): Facts {
  const now = new Map(facts);
  for (const path of paths) {
    const fact = as.get(path);
    if (fact === undefined) now.delete(path);
    else now.set(path, fact);
  }
  return now;
}
const entryOf = ({ tables, asking }: Work, revision: HeldRevision): Entry | undefined =>
  tables.journal.ofLine(asking.line).find(({ kind, record }) => kind === revisions.name && record === revision.id);
