/** What a redacted line typed is left nowhere: not in what its facts rest on, not in what the journal keeps for an undo. What it changed stays. */
import { expect, it } from 'vitest';
import { garageFor } from '../../bot/records/garage.js';
import { chat, paddock, robin, sam } from './club.js';
import { frontSpring, said, withCar } from './realClub.js';
import { everything } from './records/club.js';

const lines = [
  ['set front spring 450 lb/in', 'set front spring 450'],
  ['i have 22 and 25 mm rear bars, 40 min to swap', 'to swap'],
  ['i have 12 clicks of rear rebound, 1 min', 'i have 12'],
  ['front spring 460 lb/in measured, rear spring 350 lb/in measured', 'rear spring 350'],
] as const;

it.each(lines)('of %s', async (line, words) => {
  const it = await withCar();
  const event = await said(it, chat, robin, line.startsWith('front') ? `set ${line}` : line);
  expect(JSON.stringify(everything(it.bot.store))).toContain(words);
  await said(it, chat, robin, 'undo');
  it.server.redact(chat, robin, event);
  await it.settle();
  const rows = everything(it.bot.store);
  // The reply to the undo tells what it took back, and ages like any other.
  expect(JSON.stringify({ ...rows, outbox: [], conversations: [] })).not.toContain(words);
});
it('taken back and put in again, and forgotten: the journal keeps no words', async () => {
  const it = await withCar();
  const event = await said(it, chat, robin, 'i have 22 and 25 mm rear bars, 40 min to swap');
  await said(it, chat, robin, 'box forget 1');
  it.server.redact(chat, robin, event);
  await it.settle();
  expect(JSON.stringify({ ...everything(it.bot.store), outbox: [], conversations: [] })).not.toContain('to swap');
  // What was in the box comes back, without the words.
  await said(it, chat, robin, 'undo');
  expect(await it.ask(chat, robin, 'box')).toEqual([expect.stringMatching(/22 mm, 25 mm/)]);
});
it('what a fact rests on holds no words from the start, also where the car is shared', async () => {
  const it = await withCar();
  await said(it, paddock, robin, '!set front spring 450 lb/in, rear spring 350 lb/in');
  await said(it, paddock, robin, '!share');
  expect(frontSpring(it)).toBe(450);
  const [car] = garageFor(it.bot.store, sam, paddock).others;
  const sources = [...(car?.head.facts.values() ?? [])].map(({ source }) => source);
  expect(sources.length).toBeGreaterThan(2);
  for (const source of sources) expect(source).toMatch(/^\S+#\d+\.\d+$/);
  expect(new Set(sources).size).toBe(sources.length);
  expect(JSON.stringify(everything(it.bot.store).revisions?.map((row) => Object(row).facts))).not.toContain('spring 450');
});
