/** The whole job, by two members on a client library of their own, in a real room. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bodyOf, Club } from './club.js';
import type { Heard } from './member.js';

let club: Club;
let room: string;
beforeAll(async () => {
  club = await Club.open();
  room = await club.room('paddock');
});
afterAll(() => club?.close());

const first = (h: Heard | string): string => (typeof h === 'string' ? h : bodyOf(h)).split('\n')[0] ?? '';

describe('in the room', () => {
  it('welcomes once, and keeps silent on what is not for it', async () => {
    const { robin, sam, bot } = club;
    await sam.say(room, 'anyone got a spare set of 375s?');
    await sam.send(room, 'm.room.message', { msgtype: 'm.notice', body: '!help' });
    const reply = await robin.ask(room, '!help', bot.id);
    expect(reply.content.msgtype).toBe('m.notice');
    expect(reply.content['m.mentions']).toEqual({ user_ids: [robin.id] });
    const spoken = robin.heard.filter((h) => h.room === room && h.sender === bot.id && h.type === 'm.room.message');
    expect(spoken).toHaveLength(2);
  });
  it('is asked by its prefix and by a mention', async () => {
    const { robin, bot } = club;
    // 17 * 25.4 + 2 * 0.40 * 245 = 627.8 mm = 24.72 in: exact arithmetic of the size.
    const size = first(await club.ask(robin, room, '!tire 245/40R17'));
    expect(size).toMatch(/24\.7|628/);
    const mentioned = await robin.say(room, 'stubaxle: 3/8 in in mm', { 'm.mentions': { user_ids: [bot.id] } });
    expect(first(await robin.reply(mentioned, bot.id))).toContain('9.525 mm');
  });
  it('saves a car, which nobody else sees until it is shared here', async () => {
    const { robin, sam } = club;
    await club.ask(robin, room, '!save moth 2480 lb, 52.5% front, wheelbase 98.5 in');
    expect(await club.ask(robin, room, '!set front springs 450')).toContain('450 lb/in');
    await club.ask(robin, room, '!set rear springs 375, front motion ratio 0.71, rear motion ratio 0.92');
    await club.ask(sam, room, '!save turnip 2640lb 52.5% front wb 99');
    await club.ask(sam, room, '!set springs front 350 rear 300, motion ratio front 0.71 rear 0.92');
    expect(await club.ask(sam, room, '!compare me @robin')).not.toMatch(/moth.*\d/);
    await club.ask(robin, room, '!share');
    const compared = await club.ask(sam, room, '!compare turnip with moth');
    expect(compared).toMatch(/moth/);
    expect(compared).toMatch(/375|450/);
  });
  it('tries without saving, saves that, and takes it back', async () => {
    const { robin } = club;
    expect(await club.ask(robin, room, '!try front spring 500')).toMatch(/500/);
    expect(await club.ask(robin, room, '!show front spring')).toContain('450 lb/in');
    await club.ask(robin, room, '!save that');
    expect(await club.ask(robin, room, '!show front spring')).toContain('500 lb/in');
    await club.ask(robin, room, '!undo');
    expect(await club.ask(robin, room, '!show front spring')).toContain('450 lb/in');
  });
  it('finds what reaches a wanted figure', async () => {
    expect(await club.ask(club.robin, room, '!what front spring for 2.0 Hz')).toMatch(/lb\/in/);
  });
  it('asks between two readings, and a bare number chooses', async () => {
    const { robin, bot } = club;
    const question = await club.ask(robin, room, '!set camber -2');
    expect(question).toMatch(/1\s/);
    const chosen = await robin.say(room, '1');
    expect(bodyOf(await robin.reply(chosen, bot.id))).toMatch(/-2|−2/);
  });
  it('draws a chart as one image with a caption and its words', async () => {
    const { robin, bot } = club;
    const chart = await robin.ask(room, '!draw front ride frequency against front spring 300 to 800', bot.id);
    expect(chart.content.msgtype).toBe('m.image');
    const { url, info, filename } = chart.content;
    expect(url).toMatch(/^mxc:/);
    expect(filename).toMatch(/\.png$/);
    expect(info).toMatchObject({ w: 1080, mimetype: 'image/png' });
    expect(bodyOf(chart)).toMatch(/Hz/);
    const at = robin.client.mxcUrlToHttp(url, undefined, undefined, undefined, false, true, true);
    const picture = await fetch(at ?? '', { headers: { authorization: `Bearer ${robin.client.getAccessToken()}` } });
    const bytes = Buffer.from(await picture.arrayBuffer());
    expect(bytes.subarray(1, 4).toString()).toBe('PNG');
    expect(bytes.length).toBe(info?.size);
  });
  it('edits its reply when the question is edited', async () => {
    const { robin, bot } = club;
    const asked = await robin.say(room, '!3/8 in in mm');
    const reply = await robin.reply(asked, bot.id);
    await robin.edit(room, asked, '!5/8 in in mm');
    const edit = await robin.hear(
      (h) => h.content['m.relates_to']?.rel_type === 'm.replace' && h.content['m.relates_to']?.event_id === reply.id,
      'the edited reply',
    );
    expect(edit.content['m.new_content']?.body).toContain('15.875 mm');
  });
  it('reverts and applies again when a change is edited', async () => {
    const { robin, bot } = club;
    const asked = await robin.say(room, '!set wheelbase 98 in');
    const reply = await robin.reply(asked, bot.id);
    await robin.edit(room, asked, '!set wheelbase 99.5 in');
    await robin.hear(
      (h) => h.content['m.relates_to']?.rel_type === 'm.replace' && h.content['m.relates_to']?.event_id === reply.id,
      'the edited reply',
    );
    expect(await club.ask(robin, room, '!show wheelbase')).toMatch(/99\.50? in/);
    // A clubmate's edit of it is nobody's command.
    await club.sam.edit(room, asked, '!set wheelbase 60 in');
    expect(await club.ask(robin, room, '!show wheelbase')).toMatch(/99\.50? in/);
  });
  it('takes its reply away when the question is redacted, and keeps the change', async () => {
    const { robin, bot } = club;
    const asked = await robin.say(room, '!set wheelbase 100 in');
    const reply = await robin.reply(asked, bot.id);
    await robin.redact(room, asked);
    await robin.hear(
      (h) => h.type === 'm.room.redaction' && h.sender === bot.id && h.content.redacts === reply.id,
      'the redaction of the reply',
    );
    expect(await club.ask(robin, room, '!show wheelbase')).toMatch(/100(\.00)? in/);
  });
  it('answers in the thread where it was asked', async () => {
    const { robin, bot } = club;
    const root = await robin.say(room, 'springs again');
    const asked = await robin.inThread(room, root, '!front ride frequency?');
    const reply = await robin.hear(
      (h) => h.sender === bot.id && h.content['m.relates_to']?.rel_type === 'm.thread' && h.content['m.relates_to']?.event_id === root,
      'a reply in the thread',
    );
    expect(reply.content['m.relates_to']?.['m.in_reply_to']?.event_id).toBe(asked);
    expect(first(reply)).toMatch(/Hz/);
  });
});

describe('in a direct chat', () => {
  it('needs no prefix, loses not the first line, and knows nothing of what others keep', async () => {
    const { sam, bot } = club;
    const direct = await sam.makeRoom({ direct: true, invite: [bot.id] });
    const asked = await sam.say(direct, 'what is my weight');
    expect(first(await sam.reply(asked, bot.id))).toMatch(/2,640 lb/);
    expect(await club.ask(sam, direct, 'compare turnip with moth')).not.toMatch(/450/);
  });
});

describe('an encrypted room', () => {
  it('gets one plain sentence, and nothing else in clear, where the bot has no encryption', async () => {
    const { robin, bot } = club;
    const sealed = await robin.makeRoom({ name: 'sealed', encrypted: true, invite: [bot.id] });
    const said = await robin.hear((h) => h.room === sealed && h.sender === bot.id && h.type === 'm.room.message', 'the sentence');
    expect(bodyOf(said)).toMatch(/encrypt/i);
    await robin.say(sealed, '!help');
    await robin.say(sealed, '!what is my weight');
    await club.ask(robin, room, '!help');
    expect(robin.heard.filter((h) => h.room === sealed && h.sender === bot.id && h.type === 'm.room.message')).toHaveLength(1);
  });
});

describe('leaving', () => {
  it('leaves the room that it is told to leave', async () => {
    const { robin, sam, bot } = club;
    const other = await sam.makeRoom({ name: 'yard' });
    await robin.client.joinRoom(other);
    await sam.client.invite(other, bot.id);
    await sam.hear((h) => h.room === other && h.sender === bot.id && h.type === 'm.room.message', 'the welcome');
    const asked = await sam.ask(other, '!leave', bot.id);
    expect(bodyOf(asked)).toMatch(/1 leave/);
    await sam.say(other, '1');
    await sam.hear((h) => h.room === other && h.type === 'm.room.member' && h.content.membership === 'leave', 'the bot leave');
  });
});
