import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change } from '../../../commands/context.js';
import { Draft } from '../../../commands/records/draft.js';
import { ChangeRefused, Moved } from '../../../commands/records/refused.js';
import type { Fact, Facts } from '../../../core/car.js';
import { Club } from '../garage.js';

const fact = (value: number, source = `told ${value}`): Fact => ({ value, within: 1, evidence: 'measured', source });
const facts = (mass: number): Facts => new Map([['mass', fact(mass)]]);

function club(): Club {
  const made = new Club();
  made.join('robin');
  made.join('sam');
  made.make('robin', 'turnip', facts(1200));
  made.make('sam', 'moth', facts(1000));
  return made;
}
type Recording = Extract<Change, { change: 'record' }>;
const recording = (draft: Draft, next: Facts, more: Partial<Recording> = {}): Recording => {
  const car = draft.garage.chosen!;
  return {
    change: 'record',
    car: car.id,
    head: car.head.id,
    facts: next,
    why: `set ${next.get('mass')?.value}`,
    measuredIn: car.head.measuredIn,
    ...more,
  };
};

describe('a draft', () => {
  it('makes one revision of all that a message records on a car', () => {
    const draft = new Draft(club().context('robin'));
    const before = draft.garage.chosen!.head.id;
    draft.apply(recording(draft, facts(1210)));
    draft.apply(recording(draft, facts(1220)));
    expect(draft.garage.chosen!.head.facts.get('mass')?.value).toBe(1220);
    expect(draft.garage.history(1, 9)[0]).toMatchObject({ parent: before, why: 'set 1210; set 1220' });
    expect(draft.garage.history(1, 9).map(({ id }) => id)).toEqual([-1, before]);
  });
  it('keeps no change that comes to nothing', () => {
    const draft = new Draft(club().context('robin'));
    const original = draft.garage.chosen!.head;
    draft.apply(recording(draft, facts(1210)));
    draft.apply(recording(draft, original.facts));
    expect(draft.changes).toEqual([]);
    expect(draft.garage.chosen!.head.id).toBe(original.id);
  });
  it('takes back what it did as if it had not been', () => {
    const context = club().context('robin');
    const draft = new Draft(context);
    const { head } = draft.garage.chosen!;
    draft.apply(recording(draft, facts(1210)));
    draft.apply({ change: 'prefer', preferences: { units: 'metric' } });
    draft.apply({ change: 'undo', lines: [context.event.line] });
    expect(draft.changes).toEqual([]);
    expect(draft.garage.chosen!.head).toBe(head);
    expect(draft.asker.preferences.units).toBe('us');
  });
  it('keeps an undo of a stored revision apart from what is recorded after it', () => {
    const it = club();
    const asked = it.context('robin');
    const setup = new Draft(asked);
    setup.apply(recording(setup, facts(1210)));
    it.commit('robin', { answers: [], changes: setup.changes, read: setup.read, seen: setup.seen });
    const draft = new Draft(it.context('robin'));
    const { head } = draft.garage.chosen!;
    draft.apply({ change: 'undo', lines: [asked.event.line] });
    draft.apply(recording(draft, facts(1300)));
    expect(draft.garage.history(1, 2).map(({ undoes }) => undoes)).toEqual([undefined, head.id]);
    it.commit('robin', { answers: [], changes: draft.changes, read: draft.read, seen: draft.seen });
    expect(it.head('turnip').facts.get('mass')?.value).toBe(1300);
    expect(it.revisions.at(-2)?.undoes).toBe(head.id);
  });
  it('gives a name to the moment at which it was given, not to what is recorded after it', () => {
    const it = club();
    const draft = new Draft(it.context('robin'));
    draft.apply(recording(draft, facts(1210)));
    draft.apply({ change: 'keep', car: 1, name: 'dry', revision: 'now' });
    draft.apply(recording(draft, facts(1300)));
    it.commit('robin', { answers: [], changes: draft.changes, read: draft.read, seen: draft.seen });
    expect(it.revisions.find(({ id }) => id === it.car('turnip').setups.get('dry'))?.facts.get('mass')?.value).toBe(1210);
    expect(it.head('turnip').facts.get('mass')?.value).toBe(1300);
  });
  it('lets a car be made, told, kept and chosen in one message', () => {
    const it = club();
    const draft = new Draft(it.context('robin'));
    draft.apply({ change: 'make car', car: -1, name: 'pickle', facts: facts(900), measured: false });
    draft.apply({ change: 'choose car', car: -1 });
    draft.apply(recording(draft, facts(950)));
    expect(draft.garage.chosen?.name).toBe('pickle');
    it.commit('robin', { answers: [], changes: draft.changes, read: draft.read, seen: draft.seen });
    expect(it.head('pickle').facts.get('mass')?.value).toBe(950);
    expect(it.garage('robin').chosen?.name).toBe('pickle');
  });
  it('notes the heads of the cars that were looked at, and of no others', () => {
    const it = club();
    it.make('robin', 'pickle', facts(900));
    it.share('moth');
    const draft = new Draft(it.context('robin'));
    expect(draft.garage.mine.map(({ name }) => name)).toEqual(['turnip', 'pickle']);
    expect(draft.read).toEqual([]);
    expect(draft.garage.others[0]!.head.facts.size).toBe(1);
    expect(draft.read).toEqual([{ car: 2, head: 2 }]);
  });
  it('gives the next line the preferences and the shares of the lines before it', () => {
    const draft = new Draft(club().context('robin'));
    draft.apply({ change: 'prefer', preferences: { units: 'metric' } });
    draft.apply({ change: 'share', car: 1, room: 'paddock' });
    expect(draft.asker.preferences).toEqual({ units: 'metric', decimalMark: '.' });
    expect(draft.garage.mine[0]?.shared).toBe(true);
    draft.apply({ change: 'forget me' });
    expect(draft.changes).toHaveLength(3);
    expect(draft.garage.mine).toEqual([]);
    expect(draft.garage.chosen).toBeUndefined();
  });
  it('refuses a change of a car that is not the asker’s, and one on another head, with all else of that line', () => {
    const draft = new Draft(club().context('robin'));
    expect(() =>
      draft.apply({ change: 'prefer', preferences: { units: 'metric' } }, { change: 'rename car', car: 2, name: 'mine' }),
    ).toThrow(ChangeRefused);
    expect(() => draft.apply(recording(draft, facts(1), { head: 77 }))).toThrow(Moved);
    expect(draft.asker.preferences.units).toBe('us');
    expect(draft.changes).toEqual([]);
  });
  it('ends where the same changes end when each is a message of its own', () => {
    const step = fc.oneof(
      fc.integer({ min: 1, max: 4 }).map((n) => ({ is: 'record', mass: 1000 + n }) as const),
      fc.constantFrom('dry', 'wet').map((name) => ({ is: 'keep', name }) as const),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 8 }), (steps) => {
        const [whole, apart] = [club(), club()];
        const one = new Draft(whole.context('robin'));
        for (const each of steps) {
          const single = new Draft(apart.context('robin'));
          for (const draft of [one, single])
            draft.apply(
              each.is === 'record' ? recording(draft, facts(each.mass)) : { change: 'keep', car: 1, name: each.name, revision: 'now' },
            );
          apart.commit('robin', { answers: [], changes: single.changes, read: single.read, seen: single.seen });
        }
        whole.commit('robin', { answers: [], changes: one.changes, read: one.read, seen: one.seen });
        const state = (club: Club) => ({
          mass: club.head('turnip').facts.get('mass')?.value,
          setups: [...club.car('turnip').setups]
            .map(([name, id]) => [name, club.revisions.find((one) => one.id === id)?.facts.get('mass')?.value])
            .sort(),
        });
        expect(state(whole)).toEqual(state(apart));
        // A revision for each stretch between two names at most.
        const stretches = steps.filter((s, n) => s.is === 'record' && steps[n - 1]?.is !== 'record').length;
        expect(one.garage.history(1, 99).filter(({ id }) => id < 0).length).toBeLessThanOrEqual(stretches);
      }),
    );
  });
});
