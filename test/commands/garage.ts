/** A club in memory: members, cars and rooms, and the bot's part of a reply (its changes applied, its trial and choices remembered). */

import type { Breathe } from '../../commands/breathing.js';
import type { Reply } from '../../commands/command.js';
import type { Calculator, CarView, Change, Context, Conversation, Garage, Member, Preferences, Revision } from '../../commands/context.js';
import type { Choice } from '../../commands/reading.js';
import { garageOver, momentOf } from '../../commands/records/garage.js';
import { type Held, type Id, isOf, type Of } from '../../commands/records/held.js';
import type { Kind } from '../../commands/records/kind.js';
import { cars } from '../../commands/records/kinds/car.js';
import { members } from '../../commands/records/kinds/member.js';
import { revisions } from '../../commands/records/kinds/revision.js';
import { setups } from '../../commands/records/kinds/setup.js';
import { kinds as all, type Kinds } from '../../commands/records/kinds.js';
import { applyChange } from '../../commands/records/machine.js';
import { Overlay } from '../../commands/records/overlay.js';
import type { Reads } from '../../commands/records/tables.js';
import { Work } from '../../commands/records/work.js';
import type { Facts } from '../../core/car.js';

interface Person {
  readonly id: string;
  readonly name: string;
  readonly preferences: Preferences;
  conversation: Conversation;
}
const silent: Conversation = { rest: [], choices: [] };
const usual: Preferences = { units: 'us', decimalMark: '.' };

/** Never asked in these tests, unless a test gives its own. */
const noCalculator: Calculator = {
  calculate: () => {
    throw new Error('this test has no calculator');
  },
};
const nothing: Reads = {
  find: () => undefined,
  list: () => [],
  newest: () => [],
  next: () => 1,
  journal: { ofLine: () => [], newest: () => [], undoneBy: () => [] },
};

/** Of all clubs: one may be laid over another. */
let events = 0;

export class Club {
  readonly kinds: Kinds;
  readonly people = new Map<string, Person>();
  /** All that is kept: the store in memory, under the state machine that the real one has. */
  tables = new Overlay(nothing, 'up');
  /** Other changes, as they came: prefix, leave room, export me. */
  readonly asked: Change[] = [];
  readonly rooms = new Map<string, { readonly direct: boolean; readonly members: Set<string> }>();

  calculator: Calculator = noCalculator;
  breathe: Breathe = () => Promise.resolve();
  now = Date.UTC(2026, 4, 13, 18, 0);

  constructor(kinds: Kinds = all) {
    this.kinds = kinds;
  }
  join(name: string, preferences: Partial<Preferences> = {}, room = 'paddock'): string {
    const id = `@${name}:example.org`;
    if (!this.people.has(name)) this.people.set(name, { id, name, preferences: { ...usual, ...preferences }, conversation: silent });
    const there = this.rooms.get(room) ?? { direct: false, members: new Set<string>() };
    there.members.add(id);
    this.rooms.set(room, there);
    return id;
  }
  leave(name: string, room = 'paddock'): void {
    this.rooms.get(room)?.members.delete(this.#person(name).id);
  }
  make(owner: string, name: string, facts: Facts, measured = true): number {
    const car = this.tables.next(cars);
    this.apply(owner, [
      { change: 'make car', car: -1, name, facts, measured, why: `save my car ${name}` },
      { change: 'choose car', car: -1 },
    ]);
    return car;
  }
  share(name: string, room = 'paddock'): void {
    const { owner, id } = this.car(name);
    this.apply(this.#nameOf(owner), [{ change: 'share', car: id, room }], room);
  }
  car(name: string): { readonly id: number; readonly owner: string; readonly head: number; readonly setups: ReadonlyMap<string, number> } {
    const all = [...this.people.values()].flatMap(({ id }) => this.tables.list(cars, { member: id }));
    const car = all.find(({ data }) => data.name === name);
    if (!car) throw new Error(`no car ${name}`);
    const kept = this.tables.list(setups, { car: car.id }).map(({ data }) => [data.name, data.revision] as const);
    return { id: car.id, owner: car.of.member ?? '', head: car.data.head, setups: new Map(kept) };
  }
  head(name: string): Revision {
    return this.#moment(this.car(name).head);
  }
  /** Of all cars, oldest first. */
  get revisions(): readonly Revision[] {
    return this.tables.list(revisions, {}).map(momentOf);
  }
  member(name: string): Member {
    const { id, preferences } = this.#person(name);
    const data = this.tables.find(members, id)?.data;
    return { id, name, preferences: data ? { units: data.units, decimalMark: data.decimalMark } : preferences };
  }
  garage(name: string, room = 'paddock'): Garage {
    const { id: asker } = this.#person(name);
    const here = this.rooms.get(room);
    const others = [...(here?.members ?? [])]
      .filter((id) => id !== asker && here?.members.has(asker))
      .flatMap((owner) => this.#carsOf(owner, room))
      .filter(({ shared }) => shared);
    return garageOver(this.#readsOf(asker, room), {
      ...{ asker, room, others },
      members: [...(here?.members ?? [])].map((id) => ({ id, name: this.#nameOf(id) })),
      revision: (id) => {
        const seen = others.some(({ head }) => head.id === id || head.measuredIn === id);
        return seen ? this.#moment(id) : undefined;
      },
    });
  }
  context(name: string, room = 'paddock'): Context {
    const { direct = false, members: here } = this.rooms.get(room) ?? {};
    // As for a room in which nobody else ever was.
    const isPrivate = direct && here?.size === 1;
    const event = `$said-${events + 1}`;
    return {
      event: { id: event, line: event, nth: 0 },
      ...{ asker: this.member(name), room: { id: room, direct, private: isPrivate }, now: this.now, garage: this.garage(name, room) },
      ...{ conversation: this.#person(name).conversation, calculator: this.calculator, breathe: this.breathe },
    };
  }
  /** What a bare number stands for, in the last answer to that member. */
  choice(name: string, number: number): Choice | undefined {
    return this.#person(name).conversation.choices[number - 1];
  }
  /** The bot's part of a reply: changes made, what the next line may need remembered. Throws where the store would refuse. */
  commit(name: string, reply: Reply, room = 'paddock'): void {
    for (const { car, head } of reply.read)
      if (this.tables.find(cars, car)?.data.head !== head) throw new Error(`car ${car} was not read at its head`);
    const work = this.apply(name, reply.changes, room);
    const choices: readonly Choice[] = reply.answers.flatMap((one) => [...one.choices, ...one.next]);
    const trial = reply.trial && { ...reply.trial, car: work.kept(cars, reply.trial.car), head: work.kept(revisions, reply.trial.head) };
    this.#person(name).conversation = { rest: [], choices, ...(trial ? { trial } : {}) };
  }

  /** As the store does it: in order, all or none. */
  apply(name: string, changes: readonly Change[], room = 'paddock', cause = `$said-${++events}`, line = cause): Work {
    const { id } = this.#person(name);
    const tables = new Overlay(this.tables, 'up');
    const asking = { asker: this.member(name), room, at: this.now, cause, line };
    const asked: Change[] = [];
    const work = new Work(tables, this.kinds, asking, {
      isIn: (where) => this.rooms.get(where)?.members.has(id) ?? false,
      order: (order) => void asked.push(order),
    });
    for (const change of changes) applyChange(work, change);
    // What changes nothing lays nothing over what is kept.
    if (changes.length > 0) this.tables = tables;
    this.asked.push(...asked.filter(({ change }) => change !== 'forget me'));
    return work;
  }
  #carsOf(owner: string, room: string): readonly CarView[] {
    const sight = { asker: owner, room, others: [], members: [], revision: () => undefined };
    return garageOver(this.#readsOf(owner, room), sight).mine;
  }
  /** As the asker may see them. */
  #readsOf(asker: string, room: string): Reads {
    const { tables } = this;
    const maySee = ({ owner }: Kind, { member, car, room: where }: Of): boolean => {
      if (owner === 'member') return member === asker;
      if (owner === 'car') return car !== undefined && tables.find(cars, car)?.of.member === asker;
      return owner === 'club' || where === room;
    };
    return {
      find: <D, I extends Id>(kind: Kind<D, I>, id: I): Held<D, I> | undefined => {
        const held = tables.find(kind, id);
        return held && maySee(kind, held.of) ? held : undefined;
      },
      list: (kind, of) => tables.list(kind, of).filter((held) => isOf(held.of, of) && maySee(kind, held.of)),
      newest: (kind, of, limit, before) => tables.newest(kind, of, limit, before).filter((held) => maySee(kind, held.of)),
      next: () => -1,
      journal: {
        ofLine: (line) => tables.journal.ofLine(line).filter(({ member }) => member === asker),
        undoneBy: (line) => tables.journal.undoneBy(line).filter(({ member }) => member === asker),
        newest: (member, limit, before) => (member === asker ? tables.journal.newest(member, limit, before) : []),
      },
    };
  }
  #moment(id: number): Revision {
    const held = this.tables.find(revisions, id);
    if (!held) throw new Error(`no revision ${id}`);
    return momentOf(held);
  }
  #person(name: string): Person {
    const person = this.people.get(name);
    if (!person) throw new Error(`nobody is called ${name}`);
    return person;
  }
  #nameOf(id: string): string {
    return [...this.people.values()].find((one) => one.id === id)?.name ?? id;
  }
}
