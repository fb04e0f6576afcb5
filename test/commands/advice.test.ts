/** Advice by text: wishes read, answered from the box of the demo car. */
import { beforeAll, describe, expect, test } from 'vitest';
import { wantedOf } from '../../commands/advice/goal.js';
import { isStop } from '../../commands/reading.js';
import { read } from '../../commands/resolve.js';
import { demoClub } from './demo.js';
import type { Club } from './garage.js';
import { goalLines, othersLines } from './lines/parts.js';
import { ask, everything, say } from './say.js';
import { setting } from './setting.js';

const described = (line: string): string => {
  const it = wantedOf(line);
  if (!it) return 'none';
  if (it.wish === 'softer' || it.wish === 'stiffer') return it.wish;
  const phase = `${it.phase}${it.hardness === undefined ? '' : ` ${it.hardness} g`}`;
  return [`${it.wish} ${it.towards > 0 ? '+' : '-'}`, phase, ...(it.turn ? [it.turn] : [])].join(' | ');
};
describe('wishes', () => {
  test('are enough', () => expect(goalLines.length).toBeGreaterThanOrEqual(40));
  test.each(goalLines)('%s', (line, want) => expect(described(line)).toBe(want));
  test.each(othersLines)('none: %s', (line) => expect(described(line)).toBe('none'));
});

describe('a wish', () => {
  test.each(goalLines)('reaches advice: %s', (line) => {
    const reading = read(line, setting);
    expect(isStop(reading) ? reading.sentence : reading.verb).toBe('advise');
  });
});

describe('advice', () => {
  let club: Club;
  beforeAll(async () => {
    club = await demoClub();
  });
  // Common practice, no source: a stiffer rear bar, or its stiffer hole, adds rotation.
  test('from the box: shift with its doubt, work, what else moves, what the trade says, each a line that can be tried', async () => {
    const told = await ask(club, 'robin', 'more rotation mid corner');
    expect(told.kind).toBe('told');
    expect(told.headline).toMatch(/^Push comes down to 2\.9 to 3\.0 %, whichever you pick: too close to rank\.$/);
    expect(told.columns).toEqual(['push, %', 'holds, g', 'work']);
    expect(told.rows.length).toBeGreaterThan(0);
    const [now, ...others] = told.rows.map(({ cells }) => Number(cells[0]));
    for (const push of others) expect(push).toBeLessThan(now!);
    expect(everything(told)).toMatch(/^Rear bar .* also moves: .*roll angle/m);
    expect(everything(told)).toMatch(/surely adds? grip|No grip for sure/);
    expect(everything(told)).toMatch(/Common practice, no source, says so too: 1/);
    expect(everything(told).match(/transients, dampers/g)).toHaveLength(1);
    // The caution comes with the job, not with the advice.
    expect(told.cautions).toEqual([]);
    expect(told.choices.length).toBeGreaterThan(0);
    for (const { line } of told.choices) expect(line).toMatch(/^try (?:rear|lr|bar) /);
    const tried = await ask(club, 'robin', '1');
    expect(tried.headline).toMatch(/^Push (?:2\.9|3\.0) %, was 3\.4 /);
    expect((await ask(club, 'robin', 'save that')).kind).toBe('changed');
    expect((await ask(club, 'robin', 'undo')).kind).toBe('changed');
  });
  test('the other way round for less of it, and the conditions of going in and coming out', async () => {
    const loose = await ask(club, 'robin', 'loose coming out');
    // One change alone: from what to what is in the first line.
    const [from, to] = [...loose.headline.matchAll(/(loose|push)? ?([\d.]+) %/g)].map(
      ([, way, much]) => (way === 'loose' ? -1 : 1) * Number(much),
    );
    expect(to).toBeGreaterThan(from!);
    expect(everything(loose)).toMatch(/Taken with forward acceleration 0.2 g/);
    const entry = await ask(club, 'robin', 'pushes going in');
    expect(entry.choices[0]!.line).toMatch(/with braking 0.3 g$/);
    expect((await ask(club, 'robin', entry.choices[0]!.line)).kind).toBe('told');
    expect(everything(await ask(club, 'robin', 'it pushes'))).toMatch(/Taken as mid corner/);
  });
  test('softer at the same balance; pairs on request, alone for what was asked last', async () => {
    const single = await ask(club, 'robin', 'keep balance but softer');
    expect(single.kind).toBe('told');
    expect(single.next.map(({ line }) => line)).toContain('pairs softer, same balance');
    const pair = await ask(club, 'robin', 'pairs');
    expect(pair.kind).toBe('told');
    const two = await ask(club, 'robin', 'pairs more rotation mid corner');
    expect(two.rows.length).toBeGreaterThan(0);
    for (const { label } of two.rows.slice(1)) expect(label).toContain(' + ');
    expect((await ask(club, 'lee', 'pairs')).kind).toBe('refused');
  });
  test('an empty box: one sentence, a line that works, and which way to go, marked as not from the box', async () => {
    await say(club, 'sam', 'car moth');
    const told = await ask(club, 'sam', 'more rotation mid corner');
    expect(told.headline).toMatch(/^The box of moth is empty/);
    expect(told.next.map(({ line }) => line)).toContain('i have 22 and 25 mm rear bars, 40 min');
    expect(told.rows.length).toBeGreaterThan(0);
    for (const { cells } of told.rows.slice(1)) expect(cells.at(-1)).toBe('not in the box');
    expect((await ask(club, 'sam', told.next[0]!.line)).kind).toBe('changed');
  });
  test('a clubmate is not advised on, nor is a car that lacks what it takes', async () => {
    expect((await ask(club, 'robin', 'more rotation on moth')).headline).toMatch(/Only its owner/);
    expect((await ask(club, 'robin', 'more rotation on flumph')).headline).toMatch(/no car called flumph/);
    const bare = await ask(club, 'robin', 'more rotation on pickle');
    expect(bare.kind).toBe('refused');
    expect(bare.next).toHaveLength(1);
    expect((await ask(club, 'lee', 'less roll')).kind).toBe('refused');
    expect((await ask(club, 'robin', 'advise flumph')).kind).toBe('refused');
  });
});
