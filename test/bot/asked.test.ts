/** Only what the asker asked: whose words a number, a reply, a mention and a `more` answer. */
import { describe, expect, it } from 'vitest';
import { me } from '../simulation/homeserver.js';
import { type Club, chat, club, paddock, robin, sam } from './club.js';
import { frontSpring, inReplyTo, inThread, realClub, said, withCar } from './realClub.js';

const values = ({ bot }: Club): number =>
  bot.store.database.prepare<[], { n: number }>('SELECT count(*) AS n FROM revisions').get()?.n ?? 0;
/** Robin asks, with a change as the second choice. */
async function asking(
  more: Record<string, unknown> = {},
): Promise<{ readonly it: Club; readonly question: string; readonly answer: string | undefined }> {
  const it = await club();
  await it.ask(chat, robin, 'set 100');
  const question = await said(it, paddock, robin, '!ask 200', more);
  return { it, question, answer: it.replies(paddock, question)[0]?.event_id };
}

describe('a bare number answers', () => {
  it("the asker's own question, as the next line", async () => {
    const { it } = await asking();
    expect(await it.ask(paddock, robin, '2')).toEqual(['ok set 200']);
  });
  it.each(['２', '2.', ' 2 '])('typed as %j', async (number) => {
    expect(await (await asking()).it.ask(paddock, robin, number)).toEqual(['ok set 200']);
  });
  it.each([
    ['a line of somebody else', (it: Club) => it.server.say(paddock, sam, 'how many springs have you?')],
    ['a picture of somebody else', (it: Club) => it.server.say(paddock, sam, 'car.jpg', { msgtype: 'm.image' })],
    ['a command of somebody else', (it: Club) => it.server.say(paddock, sam, '!show a')],
    ['a line of their own', (it: Club) => it.server.say(paddock, robin, 'lunch?')],
    ['what can not be read', (it: Club) => it.server.add(paddock, sam, 'm.room.encrypted', { algorithm: 'm.megolm.v1.aes-sha2' }).event_id],
  ])('nothing with %s between, before and after a restart', async (_, between) => {
    for (const restarts of [false, true]) {
      const { it } = await asking();
      between(it);
      if (restarts) {
        await it.settle();
        it.bot.restart();
      }
      expect(await it.ask(paddock, robin, '2')).toEqual([]);
      expect(values(it)).toBe(1);
    }
  });
  it('nothing with a line between that is gone again', async () => {
    const { it } = await asking();
    it.server.redact(paddock, sam, await said(it, paddock, sam, 'oops'));
    expect(await it.ask(paddock, robin, '2')).toEqual([]);
  });
  it('all the same with an edit of an earlier line, a thread, or another room between', async () => {
    const { it } = await asking();
    const earlier = it.server.events(paddock).find(({ sender }) => sender === sam);
    it.server.edit(paddock, sam, earlier?.event_id ?? '', 'what I meant');
    it.server.say(paddock, sam, 'elsewhere', inThread(it.server.say(chat, robin, 'show b')));
    expect(await it.ask(paddock, robin, '2')).toEqual(['ok set 200']);
  });
  it('nothing as a reply to somebody else, and the question stays open to a reply', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    const sams = await said(it, paddock, sam, 'how many springs?');
    const question = await said(it, paddock, robin, '!ask 200');
    expect(await it.ask(paddock, robin, '2', inReplyTo(sams, [sam]))).toEqual([]);
    expect(await it.ask(paddock, robin, '2', inReplyTo(sams, [sam, me]))).toEqual([]);
    expect(await it.ask(paddock, robin, '> <@sam:lane.test> how many springs?\n\n2', inReplyTo(sams))).toEqual([]);
    expect(values(it)).toBe(1);
    expect(await it.ask(paddock, robin, '2', inReplyTo(it.replies(paddock, question)[0]?.event_id, [me]))).toEqual(['ok set 200']);
  });
  it('nothing under quoted words of somebody', async () => {
    const { it } = await asking();
    expect(await it.ask(paddock, robin, '> how many springs?\n\n2')).toEqual([]);
  });
  it('nothing as a reply to an answer to somebody else, in silence', async () => {
    const { it, answer } = await asking();
    expect(await it.ask(paddock, sam, '2', inReplyTo(answer, [me]))).toEqual([]);
    expect(await it.ask(paddock, sam, '2', inThread(answer))).toEqual([]);
    expect(values(it)).toBe(1);
  });
  it('when the asker calls the bot with it, also with others between; never with another line of their own', async () => {
    const { it } = await asking();
    await it.ask(paddock, sam, 'lunch?');
    expect(await it.ask(paddock, robin, '!2')).toEqual(['ok set 200']);
    await it.ask(paddock, robin, '!ask 300');
    await it.ask(paddock, robin, 'lunch!');
    expect(await it.ask(paddock, robin, '!2')).toEqual(['ok 2']);
    expect(values(it)).toBe(2);
  });
  it.each(['answer', 'question'] as const)("in a thread that is opened on the bot's reply or the asker's line: the %s", async (root) => {
    const made = await asking();
    const { it } = made;
    await it.ask(paddock, sam, 'lunch?');
    expect(await it.ask(paddock, robin, '2', inThread(made[root]))).toEqual(['ok set 200']);
  });
  it('nothing in such a thread once somebody has spoken there', async () => {
    const { it, answer } = await asking();
    await it.ask(paddock, sam, 'take the second', inThread(answer));
    expect(await it.ask(paddock, robin, '2', inThread(answer))).toEqual([]);
    expect(values(it)).toBe(1);
  });
  it('nothing when the question itself is gone: taken back by its asker, or by a moderator', async () => {
    for (const which of ['question', 'answer'] as const) {
      const made = await asking();
      const event = made[which];
      made.it.server.redact(paddock, which === 'question' ? robin : sam, event ?? '');
      await made.it.settle();
      expect(await made.it.ask(paddock, robin, '2')).toEqual([]);
      expect(values(made.it)).toBe(1);
    }
  });
  it('the new question of an edited line', async () => {
    const { it, question } = await asking();
    it.server.edit(paddock, robin, question, '!ask 300');
    await it.settle();
    expect(await it.ask(paddock, robin, '2')).toEqual(['ok set 300']);
  });
  it('nothing when the question was edited into chat', async () => {
    const { it, question } = await asking();
    it.server.edit(paddock, robin, question, 'never mind');
    await it.settle();
    expect(await it.ask(paddock, robin, '2')).toEqual([]);
    expect(values(it)).toBe(1);
  });
  it('nothing when the edited question stands above what was said since', async () => {
    const { it, question } = await asking();
    await it.ask(paddock, sam, 'lunch?');
    it.server.edit(paddock, robin, question, '!ask 300');
    await it.settle();
    expect(await it.ask(paddock, robin, '2')).toEqual([]);
  });
  it('a line that was edited into a question, from there on', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    const line = await said(it, paddock, robin, 'ask 200');
    await it.ask(paddock, sam, 'what?');
    it.server.edit(paddock, robin, line, '!ask 200');
    await it.settle();
    expect(await it.ask(paddock, robin, '2')).toEqual(['ok set 200']);
  });
});

describe('an edited number', () => {
  it('answers the question that it was said to', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    await it.ask(paddock, robin, '!ask 200');
    const number = await said(it, paddock, robin, '2');
    it.server.edit(paddock, robin, number, '1');
    await it.settle();
    expect(it.server.shown(paddock, it.replies(paddock, number)[0]!)).toBe('ok show picked-200');
    it.server.edit(paddock, robin, number, '2');
    await it.settle();
    expect(it.server.shown(paddock, it.replies(paddock, number)[0]!)).toBe('ok set 200');
  });
  it('is none where the line was said to somebody, or later questions came', async () => {
    const { it } = await asking();
    const sams = await said(it, paddock, sam, 'how many?');
    const line = await said(it, paddock, robin, 'two', inReplyTo(sams));
    await it.ask(paddock, robin, '!ask 300');
    it.server.edit(paddock, robin, line, '2');
    await it.settle();
    expect(it.replies(paddock, line)).toEqual([]);
    expect(values(it)).toBe(1);
  });
});

describe('a mention', () => {
  it('in the middle of a line calls the bot where the client says so', async () => {
    const it = await club();
    const mentions = { 'm.mentions': { user_ids: [me] } };
    expect(await it.ask(paddock, robin, 'could you, Stubaxle, show a')).toEqual([]);
    expect(await it.ask(paddock, robin, 'could you, Stubaxle, show a', mentions)).toEqual(['ok could you, show a']);
  });
  it('that a reply has only from the line that it replies to calls nobody', async () => {
    const it = await club();
    const sams = await said(it, paddock, sam, 'Stubaxle: show a', { 'm.mentions': { user_ids: [me] } });
    expect(await it.ask(paddock, robin, 'set 300', inReplyTo(sams, [sam, me]))).toEqual([]);
    expect(await it.ask(paddock, robin, '!show b', inReplyTo(sams, [sam, me]))).toEqual(['ok show b']);
  });
  it.each(['hey Stubaxle show a', 'ok stubaxle, show a', '@stubaxle: show a', `${me}: show a`])('that begins a line: %s', async (line) => {
    expect(await (await club()).ask(paddock, robin, line)).toEqual(['ok show a']);
  });
  it.each(['Stubaxle?', '@stubaxle', 'stubaxle', me, 'hey stubaxle!'])('alone is greeted, with a line to type: %s', async (line) => {
    const [reply] = await (await realClub()).ask(paddock, robin, line);
    expect(reply).toMatch(/^Hello robin\./);
    expect(reply).toMatch(/^1 !tire 245\/40R17 vs 255\/40R17$/m);
  });
});

describe('a remark about the bot changes nothing', () => {
  const remarks = [
    'stubaxle said my front spring is 480',
    'Stubaxle says front spring 480',
    'stubaxle thinks my front spring is 480',
    'stubaxle is sure my front spring is 480',
    "stubaxle's front spring is 480",
    'hey stubaxle told me my front spring is 480',
    'I asked stubaxle yesterday, my front spring is 480',
    'I asked stubaxle yesterday if my front spring is 480',
    'thanks stubaxle, my front spring is 480',
    'thanks stubaxle undo',
    'my front spring is 480 says stubaxle',
  ];
  it.each(remarks)('in a room, in silence: %s', async (line) => {
    const it = await withCar();
    expect(await it.ask(paddock, robin, line)).toEqual([]);
    expect(frontSpring(it)).toBe(400);
  });
  it.each(remarks)('in a direct chat, and where the client marks the name: %s', async (line) => {
    const it = await withCar();
    await it.ask(chat, robin, line);
    await it.ask(paddock, robin, line, { 'm.mentions': { user_ids: [me] } });
    expect(frontSpring(it)).toBe(400);
  });
  it('is answered where it asks', async () => {
    const it = await withCar();
    expect(await it.ask(paddock, robin, 'stubaxle said my front spring is 480, set front spring 480?')).toHaveLength(1);
    expect(frontSpring(it)).toBe(400);
  });
  it('offers the change where it was said to the bot', async () => {
    const it = await withCar();
    expect(await it.ask(chat, robin, 'set front spring 480, as stubaxle said')).toEqual([
      expect.stringMatching(/^Did you mean: set front spring 480 lb\/in\?/),
    ]);
    expect(frontSpring(it)).toBe(400);
    await it.ask(chat, robin, '1');
    expect(frontSpring(it)).toBe(480);
  });
  it.each([
    'stubaxle set front spring 480',
    'stubaxle my front spring is 480',
    'hey stubaxle, front spring is 480',
    'Stubaxle: set front spring 480',
  ])('and a call does: %s', async (line) => {
    const it = await withCar();
    await it.ask(paddock, robin, line);
    expect(frontSpring(it)).toBe(480);
  });
  it('what somebody else said is offered, not taken', async () => {
    const it = await withCar();
    expect(await it.ask(paddock, robin, '!sam said my front spring is 480')).toEqual([
      expect.stringMatching(/record it .*or only try it\?/),
    ]);
    expect(frontSpring(it)).toBe(400);
  });
});

describe('more', () => {
  const longer = '!show everything';
  it.each(['more', 'More', 'more?', 'the rest'])("needs no prefix as the asker's next line: %s", async (line) => {
    const it = await withCar();
    await it.ask(paddock, robin, longer);
    expect(await it.ask(paddock, robin, line)).toEqual([expect.stringMatching(/^The rest:\n/)]);
    expect(await it.ask(paddock, robin, line)).toEqual([expect.stringMatching(/^The rest:\n/)]);
  });
  it('is not for the bot after somebody spoke, of somebody else, to somebody else, or with nothing left', async () => {
    const it = await withCar();
    await it.ask(paddock, robin, longer);
    const sams = await said(it, paddock, sam, 'nice');
    expect(await it.ask(paddock, robin, 'more')).toEqual([]);
    await it.ask(paddock, robin, longer);
    expect(await it.ask(paddock, robin, 'more', inReplyTo(sams, [sam]))).toEqual([]);
    await it.ask(paddock, robin, longer);
    expect(await it.ask(paddock, sam, 'more')).toEqual([]);
    await it.ask(paddock, robin, '!units');
    expect(await it.ask(paddock, robin, 'more')).toEqual([]);
  });
  it('in a thread that is opened on the reply, and as a reply to it, goes on from that one', async () => {
    const it = await withCar();
    const first = await said(it, paddock, robin, longer);
    const answer = it.replies(paddock, first)[0]?.event_id;
    await it.ask(paddock, robin, '!units');
    await it.ask(paddock, sam, 'nice');
    expect(await it.ask(paddock, robin, 'more', inThread(answer))).toEqual([expect.stringMatching(/^The rest:\n/)]);
    expect(await it.ask(paddock, robin, 'more', inReplyTo(answer))).toEqual([expect.stringMatching(/^The rest:\n/)]);
    // Of somebody else's answer nobody is shown the rest.
    expect(await it.ask(paddock, sam, 'more', inReplyTo(answer))).toEqual([expect.stringMatching(/^There is nothing more/)]);
    expect(await it.ask(paddock, sam, 'more', inThread(answer))).toEqual([]);
  });
});
