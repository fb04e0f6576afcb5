import { describe, expect, it } from 'vitest';
import { markerKey } from '../../bot/work/content.js';
import { me } from '../simulation/homeserver.js';
import { type Club, chat, club, isBot, paddock, robin, sam } from './club.js';

const inbox = ({ bot }: Club, event: string): { readonly state: string; readonly content: string | null } | undefined =>
  bot.store.database
    .prepare<[string], { state: string; content: string | null }>('SELECT state, content FROM inbox WHERE event = ?')
    .get(event);
const revisions = ({ bot }: Club): readonly { readonly cause: string; readonly why: string; readonly parent: number | null }[] =>
  bot.store.database
    .prepare<[], { cause: string; why: string; parent: number | null }>('SELECT cause, why, parent FROM revisions ORDER BY id')
    .all();

describe('which lines are for the bot', () => {
  it.each([
    ['!show a', 'ok show a'],
    ['! show a', 'ok show a'],
    ['!show a\n!show b', 'ok show a\nshow b'],
    ['Stubaxle: show a', 'ok show a'],
    ['stubaxle, show a', 'ok show a'],
    ['@stubaxle show a', 'ok show a'],
    [`${me} show a`, 'ok show a'],
    ['> <@sam:lane.test> earlier\n\n!show a', 'ok show a'],
  ])('in a room: %j', async (body, reply) => {
    expect(await (await club()).ask(paddock, robin, body)).toEqual([reply]);
  });
  it.each(['show a', 'see you !show a', '!!!', '!', 'stubaxles: show a', 'the stubaxle knows', '1', ''])(
    'and in a room it keeps silent on %j, and keeps none of it',
    async (body) => {
      const it = await club();
      const event = it.server.say(paddock, robin, body);
      await it.settle();
      expect(it.replies(paddock, event)).toEqual([]);
      expect(inbox(it, event)).toEqual({ state: 'silent', content: null });
    },
  );
  it('a mention that the client marks, wherever the name stands', async () => {
    const it = await club();
    expect(await it.ask(paddock, robin, 'show a, Stubaxle', { 'm.mentions': { user_ids: [me] } })).toEqual(['ok show a,']);
  });
  it('any line in a direct chat, with or without prefix', async () => {
    const it = await club();
    expect(await it.ask(chat, robin, 'show a')).toEqual(['ok show a']);
    expect(await it.ask(chat, robin, '!show a')).toEqual(['ok show a']);
  });
  it('a reply to one of its messages', async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, '!show a');
    await it.settle();
    const reply = it.replies(paddock, event)[0]?.event_id;
    expect(await it.ask(paddock, sam, 'show b', { 'm.relates_to': { 'm.in_reply_to': { event_id: reply } } })).toEqual(['ok show b']);
    expect(await it.ask(paddock, sam, 'show c', { 'm.relates_to': { 'm.in_reply_to': { event_id: event } } })).toEqual([]);
  });
  it('never a notice, an emote, or its own words', async () => {
    const it = await club();
    for (const msgtype of ['m.notice', 'm.emote', 'm.image']) expect(await it.ask(chat, robin, '!show a', { msgtype })).toEqual([]);
    expect(it.server.said(chat).every((e) => e.content.msgtype === 'm.notice')).toBe(true);
  });
});

describe('a reply', () => {
  it('is a notice to the asker alone, that answers the line and carries its mark', async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, '!show a');
    await it.settle();
    expect(it.replies(paddock, event).map(({ content }) => content)).toEqual([
      {
        ...{ msgtype: 'm.notice', body: 'ok show a', format: 'org.matrix.custom.html', formatted_body: '<p>ok show a</p>' },
        'm.mentions': { user_ids: [robin] },
        'm.relates_to': { 'm.in_reply_to': { event_id: event } },
        [markerKey]: { command: event, key: expect.stringMatching(/^[0-9a-f]{32}$/) },
      },
    ]);
  });
  it('stands in the thread where it was asked', async () => {
    const it = await club();
    const root = it.server.say(paddock, sam, 'springs');
    const event = it.server.say(paddock, robin, '!show a', {
      'm.relates_to': { rel_type: 'm.thread', event_id: root, is_falling_back: true, 'm.in_reply_to': { event_id: root } },
    });
    await it.settle();
    expect(it.replies(paddock, event)[0]?.content['m.relates_to']).toEqual({
      rel_type: 'm.thread',
      event_id: root,
      is_falling_back: false,
      'm.in_reply_to': { event_id: event },
    });
  });
  it('with a chart is one picture with its caption', async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, '!draw a');
    await it.settle();
    expect(it.replies(paddock, event).map(({ content }) => content)).toMatchObject([
      {
        msgtype: 'm.image',
        body: 'drawn a',
        filename: 'chart.png',
        url: 'mxc://lane.test/1',
        info: { w: 1080, h: 810, size: 4, mimetype: 'image/png' },
      },
    ]);
    expect(it.bot.store.database.prepare('SELECT count(*) AS n FROM outbox WHERE file IS NOT NULL').get()).toEqual({ n: 0 });
  });
  it('is the words alone where the homeserver takes no pictures', async () => {
    const it = await club();
    it.server.refusesUploads = true;
    expect(await it.ask(paddock, robin, '!draw a')).toEqual(['drawn a']);
    expect(it.server.said(paddock).at(-1)?.content.msgtype).toBe('m.notice');
  });
  it('is none where the command has nothing to say', async () => {
    expect(await (await club()).ask(chat, robin, 'hush')).toEqual([]);
  });
  it('says that something broke, with a reference, and changes nothing', async () => {
    const [reply] = await (await club()).ask(chat, robin, 'break');
    expect(reply).toMatch(/^Something broke on my side, and nothing was changed\. Please tell whoever runs me: [0-9A-F]{8}$/);
  });
  it('is what was asked for however often the process ended before it could handle any line', async () => {
    const it = await club();
    const event = it.server.say(chat, robin, 'show a');
    it.bot.loads = false;
    for (let k = 0; k < 12; k++) expect(await it.bot.round()).toBe(false);
    it.bot.loads = true;
    await it.settle();
    expect(it.replies(chat, event).map((reply) => it.server.shown(chat, reply))).toEqual(['ok show a']);
  });
  it('is that it is given up where the line itself has ended the process again and again', async () => {
    const it = await club();
    const event = it.server.say(chat, robin, 'poison');
    let deaths = 0;
    for (let k = 0; k < 20; k++) if (!(await it.bot.round())) deaths++;
    await it.settle();
    expect(deaths).toBe(5);
    expect(it.replies(chat, event).map((reply) => it.server.shown(chat, reply))).toEqual([
      expect.stringMatching(/^I can't answer this one: it stops me each time\./),
    ]);
  });
});

describe('choices by number', () => {
  it("the asker's next line picks one, also in a room and without prefix", async () => {
    const it = await club();
    await it.ask(paddock, robin, '!ask a');
    expect(await it.ask(paddock, robin, '1')).toEqual(['ok show picked-a']);
  });
  it('nobody else picks, and not after the asker said something else', async () => {
    const it = await club();
    await it.ask(paddock, robin, '!ask a');
    expect(await it.ask(paddock, sam, '1')).toEqual([]);
    await it.ask(paddock, robin, 'lunch?');
    expect(await it.ask(paddock, robin, '1')).toEqual([]);
  });
  it('a reply to the question picks, by its asker, at any time', async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, '!ask a');
    await it.settle();
    await it.ask(paddock, robin, 'lunch?');
    it.server.clock += 3_600_000;
    const relates = { 'm.relates_to': { 'm.in_reply_to': { event_id: it.replies(paddock, event)[0]?.event_id } } };
    expect(await it.ask(paddock, sam, '1', relates)).toEqual([]);
    expect(await it.ask(paddock, robin, '1', relates)).toEqual(['ok show picked-a']);
  });
  it('in its thread, not outside', async () => {
    const it = await club();
    const root = it.server.say(paddock, sam, 'springs');
    const thread = { 'm.relates_to': { rel_type: 'm.thread', event_id: root } };
    await it.ask(paddock, robin, '!ask a', thread);
    expect(await it.ask(paddock, robin, '1')).toEqual([]);
    expect(await it.ask(paddock, robin, '1', thread)).toEqual(['ok show picked-a']);
  });
  it('for ten minutes', async () => {
    const it = await club();
    await it.ask(paddock, robin, '!ask a');
    it.server.clock += 11 * 60_000;
    expect(await it.ask(paddock, robin, '1')).toEqual([]);
  });
  it('and a number that is not offered is told so', async () => {
    const it = await club();
    await it.ask(paddock, robin, '!ask a');
    expect(await it.ask(paddock, robin, '3')).toEqual(['There is no 3: choose 1 to 2.']);
  });
  it('a change that was offered for a car that has changed since is not made', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    await it.ask(paddock, robin, '!ask 200');
    // The question has read no car: what it offers is as good as before.
    expect(await it.ask(paddock, robin, '2')).toEqual(['ok set 200']);
    it.bot.store.database.prepare('UPDATE conversations SET heads = \'[{"car":1,"head":1}]\'').run();
    const event = it.server.say(paddock, robin, '!ask 300');
    await it.settle();
    it.bot.store.database.prepare('UPDATE conversations SET heads = \'[{"car":1,"head":1}]\'').run();
    expect(await it.ask(paddock, robin, '2')).toEqual([
      'Your car has changed since that was offered. To do it all the same, type: !set 300',
    ]);
    expect(inbox(it, event)?.state).toBe('answered');
    expect(revisions(it)).toHaveLength(2);
  });
});

describe('edits', () => {
  it('an edited question edits its reply, and notifies nobody', async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, '!show a');
    await it.settle();
    it.server.edit(paddock, robin, event, '!show b');
    await it.settle();
    const [reply] = it.replies(paddock, event);
    expect(it.replies(paddock, event)).toHaveLength(1);
    expect(it.server.shown(paddock, reply!)).toBe('ok show b');
    expect(it.server.events(paddock).at(-1)?.content).toMatchObject({
      body: '* ok show b',
      'm.mentions': {},
      'm.relates_to': { rel_type: 'm.replace', event_id: reply?.event_id },
    });
  });
  it('an edited change becomes one revision that takes the first back and makes the new one, edit after edit', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    const event = it.server.say(chat, robin, 'set 200');
    await it.settle();
    const made: string[] = [];
    for (const text of ['set 300', 'show a', 'set 400']) {
      made.push(it.server.edit(chat, robin, event, text));
      await it.settle();
      expect(it.server.shown(chat, it.replies(chat, event)[0]!)).toBe(`ok ${text}`);
    }
    expect(revisions(it).map(({ cause }) => cause)).toEqual([expect.any(String), event, ...made]);
    const values = it.bot.store.database
      .prepare<[], { value: number }>("SELECT json_extract(facts, '$.wheelbase[0]') AS value FROM revisions ORDER BY id")
      .all();
    // 2 m and a hundredth of a millimetre for each 1 that was set; the question leaves what was there before the line.
    expect(values.map(({ value }) => Math.round((value - 2) * 1e5))).toEqual([100, 200, 300, 100, 400]);
  });
  it('an edited change is not applied when those facts were changed since', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    const event = it.server.say(chat, robin, 'set 200');
    await it.settle();
    await it.ask(chat, robin, 'set 300');
    it.server.edit(chat, robin, event, 'set 400');
    await it.settle();
    expect(it.server.shown(chat, it.replies(chat, event)[0]!)).toMatch(
      /^Your edit was not applied\. What it changed was changed again since/,
    );
    expect(revisions(it)).toHaveLength(3);
  });
  it('an edited line that made a car makes it anew, and nothing of the first is left', async () => {
    const it = await club();
    const event = it.server.say(chat, robin, 'set 100');
    await it.settle();
    const edit = it.server.edit(chat, robin, event, 'set 200');
    await it.settle();
    expect(it.server.shown(chat, it.replies(chat, event)[0]!)).toBe('ok set 200');
    expect(revisions(it).map(({ cause }) => cause)).toEqual([edit]);
  });
  it('an edited line that did what can not be taken back is not applied', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    const event = it.server.say(chat, robin, 'export');
    await it.settle();
    it.server.edit(chat, robin, event, 'set 200');
    await it.settle();
    expect(it.server.shown(chat, it.replies(chat, event)[0]!)).toMatch(
      /^Your edit was not applied\. The export of your data can't be taken back/,
    );
    expect(revisions(it)).toHaveLength(1);
  });
  it('a line that was not for the bot becomes a question', async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, 'show a');
    await it.settle();
    it.server.edit(paddock, robin, event, '!show a');
    await it.settle();
    expect(it.replies(paddock, event).map(({ content }) => content.body)).toEqual(['ok show a']);
  });
  it("of somebody else's line, or of one that is redacted, are nothing", async () => {
    const it = await club();
    const event = it.server.say(paddock, robin, '!show a');
    const edit = it.server.edit(paddock, sam, event, '!show b');
    await it.settle();
    expect(it.server.shown(paddock, it.replies(paddock, event)[0]!)).toBe('ok show a');
    expect(inbox(it, edit)).toEqual({ state: 'silent', content: null });
    it.server.redact(paddock, robin, event);
    it.server.edit(paddock, robin, event, '!show c');
    await it.settle();
    expect(it.server.events(paddock).filter((e) => isBot(e) && JSON.stringify(e.content).includes('show c'))).toEqual([]);
  });
});

describe('a redaction', () => {
  it('erases the text and its reply, edits included, and keeps the change', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    const event = it.server.say(chat, robin, 'set 200');
    await it.settle();
    const edit = it.server.edit(chat, robin, event, 'set 300');
    await it.settle();
    it.server.redact(chat, robin, event);
    await it.settle();
    expect(revisions(it).map(({ cause, why }) => [cause, why])).toEqual([
      [expect.any(String), 'set 100'],
      [event, ''],
      [edit, ''],
    ]);
    expect([inbox(it, event)?.content, inbox(it, edit)?.content]).toEqual([null, null]);
    const outbox = it.bot.store.database.prepare('SELECT action, state, content FROM outbox WHERE command = ? ORDER BY seq').all(event);
    expect(outbox).toEqual([
      { action: 'send', state: 'sent', content: null },
      { action: 'edit', state: 'sent', content: null },
      { action: 'redact', state: 'sent', content: null },
      { action: 'redact', state: 'sent', content: null },
    ]);
    expect(it.server.events(chat).filter((e) => isBot(e) && JSON.stringify(e.content).includes(event))).toEqual([]);
    expect(it.bot.store.database.prepare('SELECT count(*) AS n FROM conversations WHERE command = ?').get(event)).toEqual({ n: 0 });
  });
  it('of a line that waits leaves it unanswered', async () => {
    const it = await club();
    const event = it.server.say(chat, robin, 'set 100');
    it.server.redact(chat, robin, event);
    await it.settle();
    expect(it.replies(chat, event)).toEqual([]);
    expect(revisions(it)).toEqual([]);
  });
  it("of the bot's own words erases what it keeps of them", async () => {
    const it = await club();
    const event = it.server.say(chat, robin, 'show a');
    await it.settle();
    it.server.redact(chat, robin, it.replies(chat, event)[0]!.event_id);
    await it.settle();
    expect(it.bot.store.database.prepare('SELECT state, content FROM outbox WHERE command = ?').all(event)).toEqual([
      { state: 'sent', content: null },
    ]);
  });
});

describe('members', () => {
  it('who are forgotten get their last answer, and leave no text and no name', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    expect(await it.ask(chat, robin, 'forget-me')).toEqual(['forgotten']);
    const database = it.bot.store.database;
    const dump = ['inbox', 'outbox', 'conversations', 'members', 'memberships', 'cars', 'revisions', 'timelines'].flatMap((table) =>
      database.prepare(`SELECT * FROM ${table}`).all(),
    );
    const texts = JSON.stringify(dump).replaceAll(chat, '');
    expect(texts).not.toContain('robin');
    expect(texts).not.toContain('forgotten');
    expect(database.prepare('SELECT count(*) AS n FROM members').get()).toEqual({ n: 0 });
  });
});
