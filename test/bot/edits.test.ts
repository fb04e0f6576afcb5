/** An edit belongs to its line: what the line did goes with it, and undo takes back both. */
import { describe, expect, it } from 'vitest';
import { type Club, chat, paddock, robin, sam } from './club.js';
import { facts, frontSpring, said, shown, withCar } from './realClub.js';

const rear = (it: Club): unknown => facts(it)['rear.spring.rate'];
async function edited(it: Club, room: string, event: string, ...texts: readonly string[]): Promise<string | undefined> {
  for (const text of texts) {
    it.server.edit(room, robin, event, text);
    await it.settle();
  }
  return shown(it, room, event).at(-1);
}

describe('undo', () => {
  it.each([1, 2, 5])('takes a line back with its %i edits, at once', async (edits) => {
    const it = await withCar();
    const before = facts(it);
    const line = await said(it, chat, robin, 'set front spring 450');
    await edited(it, chat, line, ...Array.from({ length: edits }, (_, k) => `set front spring ${460 + 10 * k}`));
    expect(frontSpring(it)).toBe(450 + 10 * edits);
    expect(await it.ask(chat, robin, 'undo')).toEqual([expect.stringMatching(/^Taken back: front spring rate is 400/)]);
    expect(facts(it)).toEqual(before);
    expect(await it.ask(chat, robin, 'undo')).toEqual([expect.stringMatching(/nothing to take back/)]);
    expect(facts(it)).toEqual(before);
  });
  it('of an edit that changed a part of the line takes back all of it', async () => {
    const it = await withCar();
    const before = facts(it);
    const line = await said(it, chat, robin, 'set front spring 450, rear spring 350');
    await edited(it, chat, line, 'set front spring 450, rear spring 360');
    await it.ask(chat, robin, 'undo');
    expect(facts(it)).toEqual(before);
  });
  it('leaves what another line did between the line and its edit', async () => {
    const it = await withCar();
    const line = await said(it, chat, robin, 'set front spring 450');
    await it.ask(chat, robin, 'set rear spring 350');
    const between = rear(it);
    await edited(it, chat, line, 'set front spring 460');
    await it.ask(chat, robin, 'undo');
    expect([frontSpring(it), rear(it)]).toEqual([400, between]);
    // The next one is the other line's.
    await it.ask(chat, robin, 'undo');
    expect([frontSpring(it), Math.round(Number((rear(it) as readonly unknown[])[0]))]).toEqual([400, 52538]);
    expect(await it.ask(chat, robin, 'undo')).toEqual([expect.stringMatching(/nothing to take back/)]);
  });
  it('passes over a line whose edits have left nothing of it', async () => {
    const it = await withCar();
    const before = facts(it);
    await it.ask(chat, robin, 'set rear spring 350');
    const line = await said(it, chat, robin, 'set front spring 450');
    await edited(it, chat, line, 'front spring');
    expect(frontSpring(it)).toBe(400);
    await it.ask(chat, robin, 'undo');
    expect(facts(it)).toEqual(before);
  });
  it('counts a line with its edits as one', async () => {
    const it = await withCar();
    const before = facts(it);
    await it.ask(chat, robin, 'set rear spring 350');
    const line = await said(it, chat, robin, 'set front spring 450');
    await edited(it, chat, line, 'set front spring 460', 'set front spring 470');
    await it.ask(chat, robin, 'undo 2');
    expect(facts(it)).toEqual(before);
  });
  it('that is itself edited is made anew from before it', async () => {
    const it = await withCar();
    await it.ask(chat, robin, 'set front spring 450');
    await it.ask(chat, robin, 'set front spring 500');
    const line = await said(it, chat, robin, 'undo');
    expect(frontSpring(it)).toBe(450);
    await edited(it, chat, line, 'undo 2');
    expect(frontSpring(it)).toBe(400);
    await edited(it, chat, line, 'front spring');
    expect(frontSpring(it)).toBe(500);
    await it.ask(chat, robin, 'undo');
    expect(frontSpring(it)).toBe(450);
  });
  it('that a line is edited into takes back what was before the line', async () => {
    const it = await withCar();
    await it.ask(chat, robin, 'set front spring 450');
    const line = await said(it, chat, robin, 'set front spring 500');
    await edited(it, chat, line, 'undo');
    expect(frontSpring(it)).toBe(400);
  });
});

describe('after an undo', () => {
  it('an edit of the line changes nothing, and says so', async () => {
    const it = await withCar();
    const line = await said(it, chat, robin, 'set front spring 450');
    await it.ask(chat, robin, 'undo');
    expect(await edited(it, chat, line, 'set front spring 460')).toMatch(/^Your edit was not applied: undo has taken that line back\./);
    expect(frontSpring(it)).toBe(400);
    expect(await edited(it, chat, line, 'front spring')).toMatch(/400/);
    expect(frontSpring(it)).toBe(400);
  });
  it('a line is edited again where its change was brought back', async () => {
    const it = await withCar();
    const before = facts(it);
    const line = await said(it, chat, robin, 'set front spring 450');
    await it.ask(chat, robin, 'undo');
    await it.ask(chat, robin, 'undo 1');
    await it.ask(chat, robin, 'back to 1');
    expect(frontSpring(it)).toBe(450);
    await edited(it, chat, line, 'set front spring 460');
    const now = frontSpring(it);
    expect([450, 460]).toContain(now);
    await it.ask(chat, robin, 'undo 9');
    expect(facts(it)).toEqual(before);
  });
});

describe('an edit after a later change of the same fact', () => {
  it('is not applied; undo then goes line by line', async () => {
    const it = await withCar();
    const line = await said(it, chat, robin, 'set front spring 450');
    await it.ask(chat, robin, 'set front spring 500');
    expect(await edited(it, chat, line, 'set front spring 460')).toMatch(
      /^Your edit was not applied\. What it changed was changed again since/,
    );
    expect(frontSpring(it)).toBe(500);
    await it.ask(chat, robin, 'undo');
    expect(frontSpring(it)).toBe(450);
    await it.ask(chat, robin, 'undo');
    expect(frontSpring(it)).toBe(400);
  });
});

describe('a line that is edited into chat', () => {
  it.each(['lunch at noon?', 'set front spring 450', 'stubaxle said my front spring is 450', '> quoted\n\nyes'])(
    'is taken back in a room, and its reply says so: %s',
    async (text) => {
      const it = await withCar();
      const before = facts(it);
      const line = await said(it, paddock, robin, '!set front spring 450');
      expect(await edited(it, paddock, line, text)).toBe('Taken back, as your edited line is not for me: front spring rate.');
      expect(facts(it)).toEqual(before);
      expect(it.replies(paddock, line)).toHaveLength(1);
      // The words that are not for the bot are not kept.
      const dump = JSON.stringify([
        ...it.bot.store.database.prepare('SELECT why FROM revisions').all(),
        ...it.bot.store.database.prepare('SELECT line.content FROM inbox AS line').all(),
      ]);
      expect(dump).not.toContain('lunch');
    },
  );
  it('in a direct chat the reply says what is taken back', async () => {
    const it = await withCar();
    const line = await said(it, chat, robin, 'set front spring 450, rear spring 350');
    expect((await edited(it, chat, line, 'oh well'))?.replace(/\s+/g, ' ')).toContain(
      'Taken back, as your edited line no longer says it: front spring rate, rear spring rate.',
    );
    expect(frontSpring(it)).toBe(400);
  });
  it('and back again is made anew', async () => {
    const it = await withCar();
    const line = await said(it, paddock, robin, '!set front spring 450');
    await edited(it, paddock, line, 'lunch', 'lunch!', '!set front spring 460');
    expect(frontSpring(it)).toBe(460);
    await edited(it, paddock, line, 'lunch');
    expect(frontSpring(it)).toBe(400);
  });
  it('stands, and says so, where it can not be taken back', async () => {
    const it = await withCar();
    const line = await said(it, chat, robin, 'set front spring 450\nexport my data');
    await edited(it, chat, line, 'lunch');
    // The file follows the reply.
    expect(shown(it, chat, line)[0]).toMatch(/^Your edit was not applied\. The export of your data can't be taken back/);
    expect(frontSpring(it)).toBe(450);
    const changed = await said(it, paddock, robin, '!set rear spring 350');
    await it.ask(paddock, robin, '!set rear spring 360');
    expect(await edited(it, paddock, changed, 'lunch')).toMatch(/changed again since: rear spring rate/);
  });
  it('is taken back whatever it changed', async () => {
    const it = await withCar();
    const before = facts(it);
    const line = await said(
      it,
      paddock,
      robin,
      '!set front spring 450\n!keep as dry\n!units metric\n!i have 22 and 25 mm rear bars\n!share',
    );
    expect(frontSpring(it)).toBe(450);
    expect(await edited(it, paddock, line, 'lunch')).toBe(
      'Taken back, as your edited line is not for me: front spring rate, setup dry, units, in the box and 1 more.',
    );
    expect(facts(it)).toEqual(before);
    expect(await it.ask(paddock, robin, '!me')).toEqual([expect.stringMatching(/units us\n[\s\S]*turnip(?! \(shared)/)]);
    expect(await it.ask(paddock, robin, '!box')).toEqual([expect.stringMatching(/is empty/)]);
  });
  it('says nothing new where it had changed nothing, or was taken back already', async () => {
    const it = await withCar();
    const question = await said(it, paddock, robin, '!front spring');
    const [answer] = shown(it, paddock, question);
    expect(await edited(it, paddock, question, 'lunch')).toBe(answer);
    const line = await said(it, paddock, robin, '!set front spring 450');
    await it.ask(paddock, robin, '!undo');
    const [done] = shown(it, paddock, line);
    expect(await edited(it, paddock, line, 'lunch')).toBe(done);
    expect(frontSpring(it)).toBe(400);
  });
  it('was for the bot as a reply to it, and its edit is too', async () => {
    const it = await withCar();
    const question = await said(it, paddock, robin, '!front spring');
    const answer = it.replies(paddock, question)[0]?.event_id;
    const line = await said(it, paddock, robin, 'set front spring 450', { 'm.relates_to': { 'm.in_reply_to': { event_id: answer } } });
    await edited(it, paddock, line, 'set front spring 460');
    expect(frontSpring(it)).toBe(460);
  });
  it('a number that picked a change', async () => {
    const it = await withCar();
    await it.ask(paddock, robin, '!front spring 450');
    const number = await said(it, paddock, robin, '1');
    expect(frontSpring(it)).toBe(450);
    await edited(it, paddock, number, '2');
    expect(frontSpring(it)).toBe(400);
    await edited(it, paddock, number, '1', 'one lap');
    expect(frontSpring(it)).toBe(400);
  });
  it("nobody else's edit does", async () => {
    const it = await withCar();
    const line = await said(it, paddock, robin, '!set front spring 450');
    it.server.edit(paddock, sam, line, 'lunch');
    await it.settle();
    expect(frontSpring(it)).toBe(450);
  });
});

it('an edit that says less than the line gives the rest back, and says so', async () => {
  const it = await withCar();
  const line = await said(it, chat, robin, 'set front spring 450, rear spring 350');
  expect((await edited(it, chat, line, 'set front spring 460'))?.replace(/\s+/g, ' ')).toContain(
    'Taken back, as your edited line no longer says it: rear spring rate.',
  );
  expect(frontSpring(it)).toBe(460);
});
