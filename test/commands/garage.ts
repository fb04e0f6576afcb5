/** A club in memory: members, cars and rooms, and the bot's part of a reply (its changes applied, its trial and choices remembered). */

import type { Breathe } from '../../commands/breathing.js';
import type { Reply } from '../../commands/command.js';
import type { Calculator, CarView, Change, Context, Conversation, Garage, Member, Preferences, Revision } from '../../commands/context.js';
import type { Part } from '../../commands/parts/part.js';
import type { Choice } from '../../commands/reading.js';
import type { Facts } from '../../core/car.js';

interface StoredCar {
  readonly id: number;
  readonly owner: string;
  name: string;
  head: number;
  readonly setups: Map<string, number>;
  readonly sharedIn: Set<string>;
  parts: readonly Part[];
}
interface Person {
  member: Member;
  chosen: number | undefined;
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

export class Club {
  readonly people = new Map<string, Person>();
  readonly cars: StoredCar[] = [];
  readonly revisions: Revision[] = [];
  /** Other changes, as they came: prefix, leave room, export me. */
  readonly asked: Change[] = [];
  readonly rooms = new Map<string, { readonly direct: boolean; readonly members: Set<string> }>();
  #lastPart = 0;
  calculator: Calculator = noCalculator;
  breathe: Breathe = () => Promise.resolve();
  now = Date.UTC(2026, 4, 13, 18, 0);

  join(name: string, preferences: Partial<Preferences> = {}, room = 'paddock'): string {
    const id = `@${name}:example.org`;
    if (!this.people.has(name)) {
      const member = { id, name, preferences: { ...usual, ...preferences } };
      this.people.set(name, { member, chosen: undefined, conversation: silent });
    }
    const there = this.rooms.get(room) ?? { direct: false, members: new Set<string>() };
    there.members.add(id);
    this.rooms.set(room, there);
    return id;
  }
  leave(name: string, room = 'paddock'): void {
    this.rooms.get(room)?.members.delete(this.#person(name).member.id);
  }
  make(owner: string, name: string, facts: Facts, measured = true): number {
    const person = this.#person(owner);
    const id = this.cars.length + 1;
    const head = this.#revise({
      ...{ car: id, parent: undefined, at: this.now, by: person.member.id, why: `save my car ${name}`, facts },
      ...{ measuredIn: undefined, undoes: undefined },
    });
    if (measured) this.revisions[head - 1] = { ...this.revisions[head - 1]!, measuredIn: head };
    this.cars.push({ id, owner: person.member.id, name, head, setups: new Map(), sharedIn: new Set(), parts: [] });
    person.chosen = id;
    return id;
  }
  share(name: string, room = 'paddock'): void {
    this.car(name).sharedIn.add(room);
  }
  car(name: string): StoredCar {
    const car = this.cars.find((one) => one.name === name);
    if (!car) throw new Error(`no car ${name}`);
    return car;
  }
  head(name: string): Revision {
    return this.revisions[this.car(name).head - 1]!;
  }
  garage(name: string, room = 'paddock'): Garage {
    const { member, chosen } = this.#person(name);
    const here = this.rooms.get(room);
    const view = (car: StoredCar): CarView => ({
      ...{ id: car.id, owner: car.owner, ownerName: this.#nameOf(car.owner), name: car.name },
      head: this.revisions[car.head - 1]!,
      shared: car.sharedIn.has(room),
    });
    const own = this.cars.filter((car) => car.owner === member.id);
    const seen = this.cars.filter(
      (car) => car.owner !== member.id && car.sharedIn.has(room) && here?.members.has(car.owner) && here.members.has(member.id),
    );
    const mine = own.map(view);
    return {
      mine,
      chosen: mine.find((car) => car.id === chosen),
      others: seen.map(view),
      members: [...(here?.members ?? [])].map((id) => ({ id, name: this.#nameOf(id) })),
      revision: (id) => {
        const found = this.revisions[id - 1];
        if (!found) return undefined;
        if (own.some((car) => car.id === found.car)) return found;
        const other = seen.find((car) => car.id === found.car);
        const head = other && this.revisions[other.head - 1];
        return head && (head.id === id || head.measuredIn === id) ? found : undefined;
      },
      history: (car, limit, before) => {
        if (!own.some((one) => one.id === car)) return [];
        const all = this.revisions.filter((r) => r.car === car && (before === undefined || r.id < before)).reverse();
        return all.slice(0, limit);
      },
      setups: (car) => {
        const found = own.find((one) => one.id === car);
        return found ? [...found.setups].map(([setup, revision]) => ({ name: setup, revision })) : [];
      },
      parts: (car) => own.find((one) => one.id === car)?.parts ?? [],
    };
  }
  context(name: string, room = 'paddock'): Context {
    const { member, conversation } = this.#person(name);
    const direct = this.rooms.get(room)?.direct ?? false;
    return {
      ...{ asker: member, room: { id: room, direct }, now: this.now, garage: this.garage(name, room) },
      ...{ conversation, calculator: this.calculator, breathe: this.breathe },
    };
  }
  /** What a bare number stands for, in the last answer to that member. */
  choice(name: string, number: number): Choice | undefined {
    return this.#person(name).conversation.choices[number - 1];
  }
  /** The bot's part of a reply: changes made, what the next line may need remembered. Throws where the store would refuse. */
  commit(name: string, reply: Reply): void {
    const person = this.#person(name);
    const made = this.#apply(person, reply);
    const choices: readonly Choice[] = reply.answers.flatMap((one) => [...one.choices, ...one.next]);
    const trial = reply.trial && {
      ...reply.trial,
      car: made.get(`car ${reply.trial.car}`) ?? reply.trial.car,
      head: made.get(`revision ${reply.trial.head}`) ?? reply.trial.head,
    };
    person.conversation = { rest: [], choices, ...(trial ? { trial } : {}) };
  }

  /** As the store does it: in order, all or none; ids of the message's own replaced by those stored for them. */
  #apply(person: Person, reply: Reply): Map<string, number> {
    for (const { car, head } of reply.read) {
      if (this.cars.find((one) => one.id === car)?.head !== head) throw new Error(`car ${car} was not read at its head`);
    }
    const made = new Map<string, number>();
    const revision = (id: number) => made.get(`revision ${id}`) ?? id;
    for (const change of reply.changes) {
      const id = 'car' in change ? (made.get(`car ${change.car}`) ?? change.car) : 0;
      const car = this.cars.find((one) => one.id === id && one.owner === person.member.id);
      if ('car' in change && change.change !== 'make car' && !car) throw new Error(`car ${id} is not there to ${change.change}`);
      switch (change.change) {
        case 'make car': {
          const now = this.make(person.member.name, change.name, change.facts, change.measured);
          made.set(`car ${change.car}`, now);
          if (change.as !== undefined) made.set(`revision ${change.as}`, this.cars[now - 1]!.head);
          break;
        }
        case 'record': {
          if (car!.head !== revision(change.head)) throw new Error(`head of ${car!.name} has moved`);
          const { facts, why } = change;
          const base = { car: id, parent: car!.head, at: this.now, by: person.member.id, why, facts };
          const undoes = change.undoes === undefined ? undefined : revision(change.undoes);
          const next = this.revisions.length + 1;
          const measuredIn = change.measuredIn === 'now' ? next : change.measuredIn === undefined ? undefined : revision(change.measuredIn);
          car!.head = this.#revise({ ...base, undoes, measuredIn });
          if (change.as !== undefined) made.set(`revision ${change.as}`, car!.head);
          break;
        }
        case 'choose car':
          person.chosen = id;
          break;
        case 'rename car':
          car!.name = change.name;
          break;
        case 'forget car':
          this.cars.splice(this.cars.indexOf(car!), 1, { ...car!, owner: 'nobody', name: `forgotten ${id}` });
          if (person.chosen === id) person.chosen = this.cars.find((one) => one.owner === person.member.id)?.id;
          break;
        case 'keep':
          for (const setup of [...car!.setups.keys()]) if (setup.toLowerCase() === change.name.toLowerCase()) car!.setups.delete(setup);
          car!.setups.set(change.name, change.revision === 'now' ? car!.head : revision(change.revision));
          break;
        case 'share':
          car!.sharedIn.add(change.room);
          break;
        case 'add part': {
          const part = ++this.#lastPart;
          car!.parts = [...car!.parts, { ...change.part, id: part }];
          if (change.as !== undefined) made.set(`part ${change.as}`, part);
          break;
        }
        case 'forget part': {
          const part = made.get(`part ${change.part}`) ?? change.part;
          if (!car!.parts.some(({ id: one }) => one === part)) throw new Error(`part ${part} is not there`);
          car!.parts = car!.parts.filter(({ id: one }) => one !== part);
          break;
        }
        case 'unshare':
          car!.sharedIn.delete(change.room);
          break;
        case 'prefer':
          person.member = { ...person.member, preferences: { ...person.member.preferences, ...change.preferences } };
          break;
        case 'forget me':
          for (const own of this.cars.filter((one) => one.owner === person.member.id))
            this.cars.splice(this.cars.indexOf(own), 1, { ...own, owner: 'nobody', name: `forgotten ${own.id}` });
          person.chosen = undefined;
          break;
        default:
          this.asked.push(change);
      }
    }
    return made;
  }
  #revise(revision: Omit<Revision, 'id'>): number {
    this.revisions.push({ ...revision, id: this.revisions.length + 1 });
    return this.revisions.length;
  }
  #person(name: string): Person {
    const person = this.people.get(name);
    if (!person) throw new Error(`nobody is called ${name}`);
    return person;
  }
  #nameOf(id: string): string {
    return [...this.people.values()].find((one) => one.member.id === id)?.member.name ?? id;
  }
}
