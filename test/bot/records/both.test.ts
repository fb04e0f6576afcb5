/** The state machine: memory and SQLite behave alike, a message's draft shows what the store then holds, and what is taken back is as it was. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Change, Garage } from '../../../commands/context.js';
import { Draft } from '../../../commands/records/draft.js';
import { withoutLine } from '../../../commands/records/edited.js';
import { cars } from '../../../commands/records/kinds/car.js';
import { addedPart, partsOf, removedPart } from '../../../commands/records/kinds/part.js';
import { kinds } from '../../../commands/records/kinds.js';
import { ChangeRefused, Moved } from '../../../commands/records/refused.js';
import { undoable } from '../../../commands/records/taking.js';
import { bothWays, contextOf, described, inMemory, inSqlite, type Kept, undoables } from './both.js';
import { facts, newEvent, paddock, robin } from './club.js';

const paths = ['mass', 'wheelbase', 'front.spring.rate'] as const;
/** One line of a message: what it does, to which car, with which number. */
const step = fc.record({
  does: fc.constantFrom(
    ...(['make', 'set', 'set', 'measure', 'undo', 'undo', 'keep', 'choose', 'rename', 'forget'] as const),
    ...(['share', 'unshare', 'prefer', 'box', 'unbox'] as const),
  ),
  pick: fc.nat(5),
  path: fc.constantFrom(...paths),
  value: fc.integer({ min: 1, max: 4 }),
});
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;
const names = ['turnip', 'moth', 'pickle', 'parsnip', 'swede'] as const;

/** The line as a command would put it, given the garage that it sees. */
function changesOf(garage: Garage, { does, pick, path, value }: Step): readonly Change[] {
  const free = names.find((name) => !garage.mine.some((car) => car.name === name));
  if (does === 'prefer') return [{ change: 'prefer', preferences: { units: value % 2 === 0 ? 'us' : 'metric' } }];
  if (does === 'undo') {
    const lines = undoable(garage.records, robin, value % 2 === 0 ? 1 : 2).map((entries) => entries[0]!.line);
    return lines.length === 0 ? [] : [{ change: 'undo', lines }];
  }
  if (does === 'make') {
    if (free === undefined) return [];
    const car = garage.records.next(cars);
    const begin = { name: free, facts: facts({ [path]: value }), measured: value % 2 === 0, why: `new ${free}` };
    return [
      { change: 'make car', car, ...begin },
      { change: 'choose car', car },
    ];
  }
  const car = garage.mine[pick % Math.max(1, garage.mine.length)];
  if (car === undefined) return [];
  const { id, head } = car;
  const record = { change: 'record', car: id, head: head.id, why: `${does} ${path} ${value}` } as const;
  const box = partsOf(garage, id);
  switch (does) {
    case 'set':
      return [{ ...record, facts: new Map([...head.facts, ...facts({ [path]: value })]), measuredIn: head.measuredIn }];
    case 'measure':
      return [{ ...record, facts: new Map([...head.facts, ...facts({ [path]: value })]), measuredIn: 'now' }];
    case 'keep':
      return [{ change: 'keep', car: id, name: path, revision: value % 2 === 0 ? 'now' : head.id }];
    case 'choose':
      return [{ change: 'choose car', car: id }];
    case 'rename':
      return free === undefined ? [] : [{ change: 'rename car', car: id, name: free }];
    case 'forget':
      return [{ change: 'forget car', car: id }];
    case 'box':
      return [addedPart(id, { facts: [], note: `${value} clicks`, line: `i have ${value} clicks` })];
    case 'unbox': {
      const part = box[value % Math.max(1, box.length)];
      return part ? [removedPart(part)] : [];
    }
    default:
      return [{ change: does, car: id, room: paddock }];
  }
}
/** A line's changes, or none: what can't be taken back is refused, and the line does nothing. */
function lay(draft: Draft, line: Step): void {
  try {
    draft.apply(...changesOf(draft.garage, line));
  } catch (problem) {
    if (!(problem instanceof ChangeRefused)) throw problem;
  }
}
const begun = (kept: Kept): Kept => {
  kept.change('robin', [
    { change: 'make car', car: -1, name: 'turnip', facts: facts({ mass: 9 }), measured: true, why: 'car turnip' },
    { change: 'choose car', car: -1 },
  ]);
  return kept;
};

test('property: messages of any lines leave in the store what their draft showed, in memory and in SQLite alike', () => {
  let applied = 0;
  let undone = 0;
  fc.assert(
    fc.property(fc.array(fc.array(step, { maxLength: 8 }), { minLength: 1, maxLength: 5 }), (messages) => {
      const both = [begun(inMemory()), begun(inSqlite())];
      for (const lines of messages) {
        const event = newEvent();
        const shown = both.map((kept) => {
          const draft = new Draft(contextOf(kept, 'robin', event));
          for (const line of lines) lay(draft, line);
          const { changes } = draft;
          const seen = [described(draft.garage), undoables(draft.garage, robin), draft.asker.preferences];
          kept.change('robin', changes, event);
          applied += changes.length;
          undone += changes.filter(({ change }) => change === 'undo').length;
          const garage = kept.garage('robin');
          expect([described(garage), undoables(garage, robin), kept.asker('robin').preferences]).toEqual(seen);
          return seen;
        });
        expect(shown[0]).toEqual(shown[1]);
      }
    }),
    { numRuns: 100 },
  );
  expect(applied).toBeGreaterThan(400);
  expect(undone).toBeGreaterThan(40);
});

test('property: what was done and taken back is as it was, whatever it was', () => {
  let taken = 0;
  fc.assert(
    fc.property(fc.array(step, { maxLength: 6 }), fc.array(step, { minLength: 1, maxLength: 6 }), fc.boolean(), (before, lines, edited) => {
      for (const kept of [begun(inMemory()), begun(inSqlite())]) {
        const say = (message: readonly Step[], event: string): readonly Change[] => {
          const draft = new Draft(contextOf(kept, 'robin', event));
          for (const line of message) lay(draft, line);
          kept.change('robin', draft.changes, event);
          return draft.changes;
        };
        say(before, newEvent());
        const was = [standing(kept), kept.asker('robin').preferences];
        const event = newEvent();
        const changes = say(lines, event);
        // Erased is erased; and what a message itself took back of earlier ones, it does not give back by an undo.
        if (changes.length === 0 || changes.some(({ change }) => change === 'forget car' || (change === 'undo' && !edited))) return;
        if (edited) {
          const edit = newEvent();
          const { changes: back } = withoutLine(contextOf(kept, 'robin', edit, event), 'edited', kinds);
          kept.change('robin', back, edit, event);
        } else {
          if (changes.some(({ change }) => change === 'make car')) return;
          if (undoable(kept.garage('robin').records, robin, 1)[0]?.[0]?.line !== event) return;
          kept.change('robin', [{ change: 'undo', lines: [event] }]);
        }
        expect([standing(kept), kept.asker('robin').preferences]).toEqual(was);
        taken++;
      }
    }),
    { numRuns: 120 },
  );
  expect(taken).toBeGreaterThan(90);
});
/** All of a garage that an undo brings back: not the history, which tells of it. */
function standing(kept: Kept): unknown {
  const garage = kept.garage('robin');
  return garage.mine.map((car) => ({
    ...{ id: car.id, name: car.name, shared: car.shared, chosen: garage.chosen?.id === car.id },
    facts: [...car.head.facts].sort(),
    parts: partsOf(garage, car.id),
    setups: garage.setups(car.id),
  }));
}

describe.each(bothWays)('%s', (_, make) => {
  const turnip = (kept: Kept) => kept.garage('robin').mine[0]!;
  const set = (kept: Kept, given: Readonly<Record<string, number>>, event = newEvent(), line = event): string => {
    const { id, head } = turnip(kept);
    const now = new Map([...head.facts, ...facts(given)]);
    kept.change(
      'robin',
      [{ change: 'record', car: id, head: head.id, facts: now, why: 'set it', measuredIn: head.measuredIn }],
      event,
      line,
    );
    return event;
  };
  const undo = (kept: Kept, ...lines: readonly string[]) => kept.change('robin', [{ change: 'undo', lines }]);
  const mass = (kept: Kept) => turnip(kept).head.facts.get('mass')?.value;

  test.each([
    ['another value', { mass: 1300 }],
    ['the value from before, told again', { mass: 9 }],
  ])('what was touched since by %s is not taken back', (_, since) => {
    const kept = begun(make());
    const event = set(kept, { mass: 1250 });
    set(kept, since);
    const shown = described(kept.garage('robin'));
    expect(() => undo(kept, event)).toThrow('What it changed was changed again since: weight of the car.');
    expect(described(kept.garage('robin'))).toEqual(shown);
  });
  test('what others did since stays, and a line goes with its edits', () => {
    const kept = begun(make());
    const line = set(kept, { mass: 1250, wheelbase: 2.6 });
    set(kept, { 'front.spring.rate': 70000 });
    const edit = newEvent();
    const { garage, changes } = withoutLine(contextOf(kept, 'robin', edit, line), 'edited: set weight 1240', kinds);
    const { id, head } = garage.mine[0]!;
    expect(head.facts).toEqual(facts({ mass: 9, 'front.spring.rate': 70000 }));
    const now = new Map([...head.facts, ...facts({ mass: 1240 })]);
    const record: Change = { change: 'record', car: id, head: head.id, facts: now, why: 'set weight 1240', measuredIn: head.measuredIn };
    kept.change('robin', [...changes, record], edit, line);
    // One revision that takes back and records anew.
    const history = kept.garage('robin').history(id, 9);
    expect(history.map(({ why }) => why)).toEqual(['set weight 1240', 'set it', 'set it', 'car turnip']);
    expect(mass(kept)).toBe(1240);
    set(kept, { wheelbase: 2.55 });
    undo(kept, line);
    expect(turnip(kept).head.facts).toEqual(facts({ mass: 9, 'front.spring.rate': 70000, wheelbase: 2.55 }));
  });
  test('an undo that is edited is taken back: what it took back stands again, and can be undone again', () => {
    const kept = begun(make());
    const line = set(kept, { mass: 1250 });
    const taking = newEvent();
    kept.change('robin', [{ change: 'undo', lines: [line] }], taking);
    expect(mass(kept)).toBe(9);
    const edit = newEvent();
    kept.change('robin', withoutLine(contextOf(kept, 'robin', edit, taking), 'edited', kinds).changes, edit, taking);
    expect(mass(kept)).toBe(1250);
    undo(kept, line);
    expect(mass(kept)).toBe(9);
  });
  test('an edit takes back a car that it made, unless more was told of it', () => {
    const kept = begun(make());
    const line = newEvent();
    const made = { change: 'make car', car: -1, name: 'moth', facts: facts({ mass: 900 }), measured: false } as const;
    kept.change('robin', [made, { change: 'choose car', car: -1 }], line);
    const edit = newEvent();
    const { garage, changes } = withoutLine(contextOf(kept, 'robin', edit, line), 'edited', kinds);
    expect(garage.mine.map(({ name }) => name)).toEqual(['turnip']);
    expect(garage.chosen?.name).toBe('turnip');
    kept.change('robin', [...changes, { ...made, name: 'Moth' }], edit, line);
    expect(kept.garage('robin').mine.map(({ name }) => name)).toEqual(['turnip', 'Moth']);
    const moth = kept.garage('robin').mine[1]!;
    kept.change('robin', [addedPart(moth.id, { facts: [], note: 'clicks', line: '' })]);
    expect(() => withoutLine(contextOf(kept, 'robin', newEvent(), line), 'edited', kinds)).toThrow(
      'What it changed was changed again since: Moth.',
    );
  });
  test.each(['export me', 'forget me', 'prefix', 'leave room'] as const)('%s is not taken back', (order) => {
    const kept = begun(make());
    const line = newEvent();
    const change: Change =
      order === 'prefix'
        ? { change: order, room: paddock, prefix: '?' }
        : order === 'leave room'
          ? { change: order, room: paddock }
          : { change: order };
    if (order === 'prefix' && make !== inMemory) return;
    kept.change('robin', [change], line);
    if (order === 'forget me') expect(undoable(kept.garage('robin').records, robin, 9)).toEqual([]);
    else expect(() => withoutLine(contextOf(kept, 'robin', newEvent(), line), 'edited', kinds)).toThrow("can't be taken back");
  });
  test('a head that moved, and a record that was changed since it was read', () => {
    const kept = begun(make());
    const { id, head } = turnip(kept);
    set(kept, { mass: 1250 });
    const late: Change = { change: 'record', car: id, head: head.id, facts: head.facts, why: 'late', measuredIn: undefined };
    expect(() => kept.change('robin', [late])).toThrow(Moved);
  });
  test("another member's line is not taken back, and their records are not found", () => {
    const kept = begun(make());
    const line = set(kept, { mass: 1250 });
    expect(kept.garage('sam').records.journal.ofLine(line)).toEqual([]);
    expect(() => kept.change('sam', [{ change: 'undo', lines: [line] }])).toThrow(ChangeRefused);
    expect(mass(kept)).toBe(1250);
    expect(kept.garage('sam').records.find(cars, turnip(kept).id)).toBeUndefined();
    expect(kept.garage('sam').records.list(cars, {})).toEqual([]);
  });
});
