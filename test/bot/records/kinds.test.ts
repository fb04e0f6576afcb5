/** A new kind of record costs its file: draft, store, undo, edits, export, forgetting and redaction take it from there. */
import { describe, expect, test } from 'vitest';
import type { Store } from '../../../bot/records/database.js';
import { exportMember } from '../../../bot/records/export.js';
import { garageFor } from '../../../bot/records/garage.js';
import { eraseTexts } from '../../../bot/records/redact.js';
import { added, removed, replaced } from '../../../commands/records/change.js';
import { Draft } from '../../../commands/records/draft.js';
import { withoutLine } from '../../../commands/records/edited.js';
import { Kinds, kinds as real } from '../../../commands/records/kinds.js';
import { ChangeRefused, Moved } from '../../../commands/records/refused.js';
import { undoable } from '../../../commands/records/taking.js';
import { contextOf, inMemory, inSqlite, type Kept } from './both.js';
import { everything, facts, garden, meetClub, newEvent, paddock, robin, sam } from './club.js';
import { opened } from './fresh.js';
import { type EventData, events } from './kinds/event.js';
import { type ListData, lists } from './kinds/list.js';

const kinds = new Kinds([...real.all, lists, events]);
const bothWays = [
  ['in memory', () => inMemory(kinds)],
  ['in SQLite', () => inSqlite(kinds)],
] as const;
const row = (name: string, count: number, cause: string, note = ''): ListData['rows'][number] => ({ name, count, note, cause });
const begun = (kept: Kept): number => {
  kept.change('robin', [
    { change: 'make car', car: -1, name: 'turnip', facts: facts({ mass: 9 }), measured: false },
    { change: 'choose car', car: -1 },
  ]);
  return kept.garage('robin').mine[0]!.id;
};

describe.each(bothWays)('a list with named rows, %s', (_, make) => {
  const read = (kept: Kept, name = 'robin') => kept.garage(name).records.list(lists, {});
  const mend = (kept: Kept, rows: ListData['rows'], event: string): void => {
    const [held] = read(kept);
    kept.change('robin', [replaced(lists, held!, { rows }, `mend ${event}`)], event);
  };
  test('a draft sees what the message did so far; the store then holds it, checked', () => {
    const kept = make();
    const car = begun(kept);
    const event = newEvent();
    const draft = new Draft(contextOf(kept, 'robin', event), kinds);
    draft.apply(added(lists, { car }, { rows: [row('jack', 1, event)] }, 'list jack'));
    const [first] = draft.garage.records.list(lists, { car });
    expect(first).toMatchObject({ id: -1, data: { rows: [{ name: 'jack' }] }, text: 'list jack' });
    draft.apply(replaced(lists, first!, { rows: [row('jack', 1, event), row('tape', 2, event)] }, 'and tape'));
    expect(() => draft.apply({ ...added(lists, { car }, { rows: [] }, ''), data: { rows: [row('tape', 0, event)] } })).toThrow(
      'a count from 1 on',
    );
    kept.change('robin', draft.changes, event);
    expect(read(kept).map(({ data, text }) => [data.rows.map(({ name }) => name), text])).toEqual([[['jack', 'tape'], 'and tape']]);
  });
  test('rows are taken back one by one, unless touched since', () => {
    const kept = make();
    const car = begun(kept);
    const [a, b, c] = [newEvent(), newEvent(), newEvent()];
    kept.change('robin', [added(lists, { car }, { rows: [row('jack', 1, a)] }, 'list jack')], a);
    mend(kept, [row('jack', 1, a), row('tape', 2, b)], b);
    mend(kept, [row('jack', 3, c), row('tape', 2, b)], c);
    kept.change('robin', [{ change: 'undo', lines: [b] }]);
    expect(read(kept)[0]?.data.rows).toEqual([row('jack', 3, c)]);
    expect(() => kept.change('robin', [{ change: 'undo', lines: [a] }])).toThrow('What it changed was changed again since: jack.');
    kept.change('robin', [{ change: 'undo', lines: [c] }]);
    kept.change('robin', [{ change: 'undo', lines: [a] }]);
    expect(read(kept)).toEqual([]);
    expect(undoable(kept.garage('robin').records, robin, 9)).toHaveLength(1);
  });
  test('what goes comes back under its number, and an edit makes it anew', () => {
    const kept = make();
    const car = begun(kept);
    const a = newEvent();
    kept.change('robin', [added(lists, { car }, { rows: [row('jack', 1, a)] }, 'list jack')], a);
    const [held] = read(kept);
    const gone = newEvent();
    kept.change('robin', [removed(lists, held!)], gone);
    expect(read(kept)).toEqual([]);
    kept.change('robin', [{ change: 'undo', lines: [gone] }]);
    expect(read(kept)).toEqual([held]);
    const edit = newEvent();
    const { changes } = withoutLine(contextOf(kept, 'robin', edit, a), 'edited', kinds);
    kept.change('robin', [...changes, added(lists, { car }, { rows: [row('jacks', 2, edit)] }, 'list jacks')], edit, a);
    expect(read(kept).map(({ data }) => data.rows)).toEqual([[row('jacks', 2, edit)]]);
    kept.change('robin', [{ change: 'undo', lines: [a] }]);
    expect(read(kept)).toEqual([]);
  });
  test('mended on what has changed since it was read, it is worked out again', () => {
    const kept = make();
    const car = begun(kept);
    const a = newEvent();
    kept.change('robin', [added(lists, { car }, { rows: [row('jack', 1, a)] }, '')], a);
    const [seen] = read(kept);
    mend(kept, [row('jack', 2, a)], newEvent());
    expect(() => kept.change('robin', [replaced(lists, seen!, { rows: [] }, '')])).toThrow(Moved);
  });
  test('is its owner’s alone, and goes with its car', () => {
    const kept = make();
    const car = begun(kept);
    kept.change('robin', [added(lists, { car }, { rows: [] }, ''), { change: 'share', car, room: paddock }]);
    const [held] = read(kept);
    expect([read(kept, 'sam'), kept.garage('sam').records.find(lists, held!.id)]).toEqual([[], undefined]);
    for (const change of [added(lists, { car }, { rows: [] }, ''), replaced(lists, held!, { rows: [] }, ''), removed(lists, held!)])
      expect(() => kept.change('sam', [change])).toThrow(ChangeRefused);
    kept.change('robin', [{ change: 'forget car', car }]);
    expect(read(kept)).toEqual([]);
    expect(kept.tables.find(lists, held!.id)).toBeUndefined();
  });
});

describe.each(bothWays)('an event of a room, %s', (_, make) => {
  const plan = (event: string): EventData => ({ title: 'gravel day', titledIn: event, day: '2027-05-01', coming: [] });
  const read = (kept: Kept, name: string) => kept.garage(name).records.list(events, {});
  const join = (kept: Kept, name: string, event = newEvent()): string => {
    const [held] = read(kept, name);
    const coming = [...held!.data.coming, { member: `@${name}:example.org`, with: 1 }];
    kept.change(name, [replaced(events, held!, { ...held!.data, coming }, `${name} comes`)], event);
    return event;
  };
  test('is seen and changed by the members of the room, each taking back their own', () => {
    const kept = make();
    const made = newEvent();
    kept.change('robin', [added(events, { room: paddock }, plan(made), 'plan gravel day')], made);
    const robins = join(kept, 'robin');
    const sams = join(kept, 'sam');
    expect(read(kept, 'robin')[0]?.data.coming.map(({ member }) => member)).toEqual([robin, sam]);
    expect(() => kept.change('robin', [{ change: 'undo', lines: [made] }])).toThrow('changed again since: gravel day');
    kept.change('robin', [{ change: 'undo', lines: [robins] }]);
    expect(read(kept, 'sam')[0]?.data.coming.map(({ member }) => member)).toEqual([sam]);
    kept.change('sam', [{ change: 'undo', lines: [sams] }]);
    kept.change('robin', [{ change: 'undo', lines: [made] }]);
    expect(read(kept, 'robin')).toEqual([]);
    expect(() => kept.change('robin', [added(events, { room: garden + garden }, plan(made), '')])).toThrow(ChangeRefused);
  });
  test('stays without who is forgotten, with all that they typed', () => {
    const kept = make();
    const made = newEvent();
    kept.change('robin', [added(events, { room: paddock }, plan(made), 'plan gravel day')], made);
    join(kept, 'robin');
    join(kept, 'sam');
    kept.change('robin', [{ change: 'forget me' }]);
    const [held] = read(kept, 'sam');
    expect(held?.data.coming).toEqual([{ member: sam, with: 1 }]);
    kept.change('sam', [{ change: 'forget me' }]);
    expect(kept.tables.list(events, {})).toMatchObject([{ data: { coming: [] }, text: '', told: undefined }]);
  });
});

describe('in the store', () => {
  const open = (): { readonly store: Store; readonly kept: Kept } => {
    const store = opened(undefined, { kinds });
    return { store, kept: inSqlite(kinds, store) };
  };
  test('another room, and who has left, sees nothing and changes nothing', () => {
    const { store, kept } = open();
    const made = newEvent();
    kept.change('robin', [added(events, { room: paddock }, { title: 'x', titledIn: made, day: '2027-05-01', coming: [] }, '')], made);
    for (const [member, room] of [
      [robin, garden],
      ['@ash:example.org', paddock],
      ['@ash:example.org', garden],
    ] as const) {
      const { records } = garageFor(store, member, room);
      expect([records.list(events, {}), records.list(events, { room: paddock }), records.find(events, 1)]).toEqual([[], [], undefined]);
    }
    const [held] = kept.garage('robin').records.list(events, {});
    expect(() => kept.change('ash', [replaced(events, held!, held!.data, '')])).toThrow('not planned any more');
  });
  test('the export holds what is the member’s, and what they are in', () => {
    const { store, kept } = open();
    const car = begun(kept);
    const a = newEvent();
    kept.change(
      'robin',
      [
        added(lists, { car }, { rows: [row('jack', 1, a, 'blue')] }, 'list a blue jack'),
        added(
          events,
          { room: paddock },
          { title: 'gravel day', titledIn: a, day: '2027-05-01', coming: [{ member: sam, with: 0 }] },
          'plan',
        ),
      ],
      a,
    );
    const data = exportMember(store, robin, 0);
    expect(data.cars[0]?.testLists).toEqual([{ rows: [{ name: 'jack', count: 1, note: 'blue' }], line: 'list a blue jack' }]);
    expect(data.testEvents).toHaveLength(1);
    expect(exportMember(store, sam, 0).testEvents).toEqual([
      { title: 'gravel day', day: '2027-05-01', coming: [{ member: sam, with: 0 }] },
    ]);
    expect(exportMember(store, '@ash:example.org', 0).testEvents).toEqual([]);
  });
  test('redaction takes the words, wherever they stand, and keeps the rest', () => {
    const { store, kept } = open();
    const car = begun(kept);
    const [a, b] = [newEvent(), newEvent()];
    kept.change(
      'robin',
      [
        added(lists, { car }, { rows: [row('jack', 1, a, 'quincewords')] }, 'list medlarwords'),
        added(events, { room: paddock }, { title: 'damsonwords', titledIn: a, day: '2027-05-01', coming: [] }, 'plan sloewords'),
      ],
      a,
    );
    const [list] = kept.garage('robin').records.list(lists, {});
    const [event] = kept.garage('robin').records.list(events, {});
    kept.change('robin', [replaced(lists, list!, { rows: [...list!.data.rows, row('tape', 2, b, 'kept')] }, 'and tape')], b);
    kept.change('sam', [replaced(events, event!, { ...event!.data, day: '2027-06-01' }, 'later')]);
    for (const words of ['quince', 'medlar', 'damson', 'sloe']) expect(JSON.stringify(everything(store)), words).toContain(`${words}words`);
    store.transaction(() => eraseTexts(store, a));
    expect(JSON.stringify(everything(store))).not.toMatch(/quincewords|medlarwords|damsonwords|sloewords/);
    expect(
      kept
        .garage('robin')
        .records.list(lists, {})[0]
        ?.data.rows.map(({ count, note }) => [count, note]),
    ).toEqual([
      [1, ''],
      [2, 'kept'],
    ]);
    kept.change('robin', [{ change: 'undo', lines: [b] }]);
    expect(
      kept
        .garage('robin')
        .records.list(lists, {})[0]
        ?.data.rows.map(({ name }) => name),
    ).toEqual(['jack']);
  });
  test('forgotten, a member is in no record, and in nothing that others have changed', () => {
    const { store, kept } = open();
    meetClub(store);
    const car = begun(kept);
    const a = newEvent();
    kept.change(
      'robin',
      [
        added(lists, { car }, { rows: [row('jack', 1, a, 'quincewords')] }, 'list medlarwords'),
        added(
          events,
          { room: paddock },
          { title: 'gravel day', titledIn: a, day: '2027-05-01', coming: [{ member: robin, with: 3 }] },
          'plan sloewords',
        ),
      ],
      a,
    );
    const [event] = kept.garage('sam').records.list(events, {});
    kept.change('sam', [replaced(events, event!, { ...event!.data, day: '2027-06-01' }, 'later')]);
    kept.change('robin', [{ change: 'forget me' }]);
    const rows = everything(store);
    expect(JSON.stringify([rows.records, rows.journal])).not.toMatch(/robin|quincewords|medlarwords|sloewords/);
    expect(kept.garage('sam').records.list(events, {})).toMatchObject([{ data: { day: '2027-06-01', coming: [] } }]);
  });
});
