/** What a message sees of its own changes (the draft) and what the store holds after them are the same garage. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyChanges } from '../../../bot/store/apply.js';
import type { Store } from '../../../bot/store/database.js';
import { garageFor } from '../../../bot/store/garage.js';
import { findMember } from '../../../bot/store/members.js';
import type { CarView, Change, Garage, Member, Revision } from '../../../commands/context.js';
import { Draft } from '../../../commands/draft.js';
import { facts, meetClub, newCar, newEvent, paddock, record, robin } from './club.js';
import { opened } from './fresh.js';

const paths = ['mass', 'wheelbase', 'front.spring.rate'] as const;
/** One line of a message: what it does, to which car, with which number. */
const step = fc.record({
  does: fc.constantFrom('make', 'set', 'set', 'measure', 'undo', 'keep', 'choose', 'rename', 'forget', 'share', 'unshare', 'prefer'),
  pick: fc.nat(5),
  path: fc.constantFrom(...paths),
  value: fc.integer({ min: 1, max: 4 }),
});
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;
const names = ['turnip', 'moth', 'pickle', 'parsnip', 'swede'] as const;

/** The line as a command would put it, given the garage that it sees. */
function changesOf(garage: Garage, made: { cars: number }, { does, pick, path, value }: Step): readonly Change[] {
  const free = names.find((name) => !garage.mine.some((car) => car.name === name));
  if (does === 'prefer') return [{ change: 'prefer', preferences: { units: value % 2 === 0 ? 'us' : 'metric' } }];
  if (does === 'make') {
    if (free === undefined) return [];
    const car = -++made.cars;
    const begin: Change = {
      change: 'make car',
      car,
      name: free,
      facts: facts({ [path]: value }),
      measured: value % 2 === 0,
      why: `new ${free}`,
    };
    return [begin, { change: 'choose car', car }];
  }
  const car = garage.mine[pick % Math.max(1, garage.mine.length)];
  if (car === undefined) return [];
  const { id, head } = car;
  const record = { change: 'record', car: id, head: head.id, why: `${does} ${path} ${value}` } as const;
  switch (does) {
    case 'set':
      return [{ ...record, facts: new Map([...head.facts, ...facts({ [path]: value })]), measuredIn: head.measuredIn }];
    case 'measure':
      return [{ ...record, facts: new Map([...head.facts, ...facts({ [path]: value })]), measuredIn: 'now' }];
    case 'undo': {
      const back = head.parent === undefined ? undefined : garage.revision(head.parent);
      return back ? [{ ...record, facts: back.facts, measuredIn: back.measuredIn, undoes: head.id }] : [];
    }
    case 'keep':
      return [{ change: 'keep', car: id, name: path, revision: value % 2 === 0 ? 'now' : head.id }];
    case 'choose':
      return [{ change: 'choose car', car: id }];
    case 'rename':
      return free === undefined ? [] : [{ change: 'rename car', car: id, name: free }];
    case 'forget':
      return [{ change: 'forget car', car: id }];
    default:
      return [{ change: does, car: id, room: paddock }];
  }
}

/** A garage without its numbers, which differ between a draft and the store: revisions are named by their place in the car's history. */
function described(garage: Garage): unknown {
  const car = (view: CarView): unknown => {
    const history = [...garage.history(view.id, 100)].reverse();
    const place = (id: number | undefined): number | undefined =>
      id === undefined ? undefined : history.findIndex((one) => one.id === id);
    const moment = (one: Revision): unknown => ({
      ...{
        why: one.why,
        facts: [...one.facts].sort(),
        measuredIn: place(one.measuredIn),
        undoes: place(one.undoes),
        parent: place(one.parent),
      },
    });
    return {
      ...{ name: view.name, shared: view.shared, chosen: garage.chosen?.id === view.id, head: place(view.head.id) },
      history: history.map(moment),
      setups: garage
        .setups(view.id)
        .map(({ name, revision }) => [name, place(revision)])
        .sort(),
    };
  };
  return garage.mine.map(car);
}
const asker = (store: Store): Member => {
  const member = findMember(store, robin);
  if (member === undefined) throw new Error('robin is not there');
  return member;
};

test('property: messages of any lines leave in the store what their draft showed', () => {
  let applied = 0;
  fc.assert(
    fc.property(fc.array(fc.array(step, { maxLength: 8 }), { minLength: 1, maxLength: 4 }), (messages) => {
      const store = opened(':memory:');
      meetClub(store);
      const turnip = newCar(store, robin, 'turnip', facts({ mass: 9 }));
      record(store, robin, turnip, { wheelbase: 9 });
      for (const lines of messages) {
        const room = { id: paddock, direct: false };
        const draft = new Draft({ garage: garageFor(store, robin, paddock), asker: asker(store), room, now: 1 });
        const made = { cars: 0 };
        for (const line of lines) for (const change of changesOf(draft.garage, made, line)) draft.apply(change);
        const shown = described(draft.garage);
        const changes = draft.changes;
        store.transaction(() => applyChanges(store, { asker: asker(store), room: paddock, changes, at: 1, cause: newEvent() }));
        applied += changes.length;
        expect(described(garageFor(store, robin, paddock))).toEqual(shown);
        expect(asker(store).preferences).toEqual(draft.asker.preferences);
      }
      expect(store.database.pragma('foreign_key_check')).toEqual([]);
      store.close();
    }),
    { numRuns: 150 },
  );
  expect(applied).toBeGreaterThan(300);
});
