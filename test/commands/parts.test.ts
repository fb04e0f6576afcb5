/** The parts box by text: lines read, listed, forgotten, seen by nobody else. */
import { beforeEach, describe, expect, it, test } from 'vitest';
import { effortOf, minutesText } from '../../commands/parts/effort.js';
import type { NewPart, PartFact } from '../../commands/parts/part.js';
import { isBoxed, readBox } from '../../commands/parts/read.js';
import { partLine } from '../../commands/parts/write.js';
import { isStop } from '../../commands/reading.js';
import { partsOf } from '../../commands/records/kinds/part.js';
import { read } from '../../commands/resolve.js';
import { demoClub } from './demo.js';
import type { Club } from './garage.js';
import { boxLines, othersLines } from './lines/parts.js';
import { expected } from './reads.js';
import { ask, everything, say } from './say.js';
import { setting } from './setting.js';

const digits = (value: unknown): string => (typeof value === 'number' ? String(Number(value.toPrecision(5))) : String(value));
const factText = ({ entry, places, can }: PartFact): string => {
  const values = can.is === 'range' ? `${digits(can.from)}..${digits(can.to)} by ${digits(can.step)}` : can.values.map(digits).join(' or ');
  return `${places.join('+')}.${entry}=${values}`;
};
const partText = ({ facts, note, minutes, price }: NewPart): string =>
  [
    note === undefined ? facts.map(factText).join(' + ') : `note: ${note}`,
    ...(minutes === undefined ? [] : [`${minutes} min`]),
    ...(price === undefined ? [] : [`${price.currency}${price.amount}`]),
  ].join(' | ');
/** Values behind `or` and `by` are in the unit of the corpus too. */
const wanted = (want: string): string => expected(want.replace(/ (or|by) (?=[-\d])/g, ' $1=')).replace(/ (or|by)=/g, ' $1 ');

let club: Club;
beforeEach(async () => {
  club = await demoClub();
  await say(club, 'robin', 'box empty now');
});
const boxed = (line: string): string => {
  const found = readBox(line.replace(/^(?:box add|add to my box:?)\s*/, ''), club.context('robin'));
  if (isBoxed(found)) return found.parts.map(partText).join(' & ');
  return `${found.answer.kind}: ${found.answer.headline} ${[...found.answer.choices, ...found.answer.next].map((one) => one.line).join(' | ')}`;
};

describe('lines about the box', () => {
  test('are enough', () => expect(boxLines.length).toBeGreaterThanOrEqual(40));
  test.each(boxLines)('%s', (line, want) => {
    const got = boxed(line);
    const stop = /^(asked|refused): (.*)$/.exec(want);
    if (!stop) return expect(got).toBe(wanted(want));
    expect(got.startsWith(`${stop[1]}: `), got).toBe(true);
    for (const piece of (stop[2] ?? '').split(' | ')) expect(got.toLowerCase()).toContain(piece.toLowerCase());
  });
  test.each(boxLines)('reach the box: %s', (line) => {
    const reading = read(line, setting);
    expect(isStop(reading) ? reading.sentence : reading.verb).toBe('box add');
  });
  test.each(othersLines)('leave alone: %s', (line) => {
    const reading = read(line, setting);
    expect(isStop(reading) ? 'none' : (reading.verb ?? 'none')).not.toMatch(/^box add$|^advise$/);
  });
  test('say a line that works when they are refused', () => {
    for (const [line, want] of boxLines.filter(([, one]) => one.startsWith('refused'))) {
      const found = readBox(line, club.context('robin'));
      if (isBoxed(found)) throw new Error(`${line} was read, not ${want}`);
      const [next] = found.answer.next;
      expect(next, line).toBeDefined();
      const again = readBox(next!.line, club.context('robin'));
      const other = read(next!.line, setting);
      expect(isBoxed(again) || !isStop(other), `${line}: ${next!.line}`).toBe(true);
    }
  });
  test('are written so that they read back as the same', () => {
    for (const [line] of boxLines) {
      const found = readBox(line.replace(/^(?:box add|add to my box:?)\s*/, ''), club.context('robin'));
      if (!isBoxed(found)) continue;
      for (const part of found.parts) {
        const written = partLine(part, club.context('robin'));
        const back = readBox(written.replace(/^box add /, ''), club.context('robin'));
        expect(isBoxed(back) ? back.parts.map(partText) : back.answer.headline, written).toEqual([partText(part)]);
      }
    }
  });
});
test('work and money are read in many ways', () => {
  const cases: readonly (readonly [string, number | undefined, string | undefined, string])[] = [
    ['bar 40 min to swap', 40, undefined, 'bar'],
    ['bar, 1 h 30 min, $15', 90, '$15', 'bar'],
    ['bar 1h30', 90, undefined, 'bar'],
    ['bar takes me an hour and a half', 90, undefined, 'bar'],
    ['bar half an hour for 20 quid', 30, '£20', 'bar'],
    ['spring 10 min per side', 20, undefined, 'spring'],
    ['bar 1/2 hour', 30, undefined, 'bar'],
    ['bar 2,5 h €99.50', 150, '€99.5', 'bar'],
    ['bar 22 mm', undefined, undefined, 'bar 22 mm'],
    ['spring 300 lb/in', undefined, undefined, 'spring 300 lb/in'],
  ];
  for (const [line, minutes, price, rest] of cases) {
    const got = effortOf(line);
    expect([got.minutes, got.price && `${got.price.currency}${got.price.amount}`, got.rest], line).toEqual([minutes, price, rest]);
  }
  expect([minutesText(5), minutesText(60), minutesText(95)]).toEqual(['5 min', '1 h', '1 h 35 min']);
});

describe('the box', () => {
  const lines = [
    'i have 22 and 25 mm rear bars, 40 min',
    'i can set rear pressure 24 to 34 psi 2 min',
    'i have 12 clicks of rear rebound 1 min',
  ];
  it('lists what was told, with its work', async () => {
    for (const line of lines) expect((await ask(club, 'robin', line)).kind).toBe('changed');
    const shown = await ask(club, 'robin', 'box');
    expect(shown.rows).toEqual([
      { label: '1 rear bar diameter', cells: ['22 mm, 25 mm', '40 min'] },
      { label: '2 cold tire pressure, rears', cells: ['24 psi to 34 psi', '2 min'] },
      { label: '3 12 clicks of rear rebound', cells: ['a note', '1 min'] },
    ]);
  });
  it('forgets by number and offers to put it back, in one message too', async () => {
    await say(club, 'robin', lines.join('\n'));
    expect((await ask(club, 'robin', 'box forget 2')).headline).toBe(
      'Out of the box of turnip: rear tire pressure 24 psi to 34 psi by 1 psi.',
    );
    await ask(club, 'robin', '1');
    expect((await ask(club, 'robin', 'box')).rows).toHaveLength(3);
    await ask(club, 'robin', 'box forget 3');
    const { answers } = await say(club, 'robin', 'i have a 19 mm front bar\nbox forget 3\nbox');
    expect(answers.map(({ kind }) => kind)).toEqual(['changed', 'changed', 'told']);
    expect(answers[2]!.rows).toHaveLength(2);
    expect((await ask(club, 'robin', 'box forget 9')).kind).toBe('refused');
  });
  it('is told the same once, and a setting told again takes the place of the old one', async () => {
    await ask(club, 'robin', lines[1]!);
    expect((await ask(club, 'robin', lines[1]!)).headline).toMatch(/already/);
    const again = await ask(club, 'robin', 'i can set rear pressure 26 to 32 psi 2 min');
    expect(again.notes).toContain('Takes the place of rear tire pressure 24 psi to 34 psi by 1 psi.');
    expect((await ask(club, 'robin', 'box')).rows).toHaveLength(1);
  });
  it('is emptied after asking', async () => {
    await say(club, 'robin', lines.join('\n'));
    expect((await ask(club, 'robin', 'box empty')).kind).toBe('asked');
    await ask(club, 'robin', '1');
    expect((await ask(club, 'robin', 'box')).headline).toMatch(/is empty/);
  });
  it('is of one car, and nobody else sees it', async () => {
    await say(club, 'robin', `share\n${lines.join('\n')}`);
    expect((await ask(club, 'robin', 'box pickle')).headline).toMatch(/box of pickle is empty/);
    for (const line of ['box turnip', 'box @robin']) {
      const seen = await ask(club, 'sam', line);
      expect(everything(seen), line).not.toMatch(/22 mm|rebound|psi/);
      expect(seen.kind, line).toBe('refused');
    }
    expect(partsOf(club.garage('sam'), club.car('turnip').id)).toEqual([]);
  });
  it('changes nothing of the car', async () => {
    const before = club.head('turnip').id;
    await say(club, 'robin', lines.join('\n'));
    expect(club.head('turnip').id).toBe(before);
  });
  it('needs a car', async () => {
    expect((await ask(club, 'lee', lines[0]!)).kind).toBe('refused');
    expect((await ask(club, 'lee', 'box')).kind).toBe('refused');
  });
});
