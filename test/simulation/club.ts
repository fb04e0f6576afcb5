/** Thousands of lines said by members in several rooms while the homeserver fails and the bot dies; and what must be true afterwards, whatever happened. */

import type { Wire } from '../../bot/matrix/wire.js';
import { markerKey } from '../../bot/work/content.js';
import { SimulatedBot } from './bot.js';
import { FakeHomeserver, type Faults, inReplyTo, me } from './homeserver.js';
import { randomNumbers } from './random.js';

export interface Scenario {
  readonly seed: number;
  readonly commands: number;
  readonly deadly: number;
  readonly faults: Faults;
  /** A bot that is wrong on purpose. */
  readonly between?: (wire: Wire, random: () => number) => Wire;
}
type Kind = 'question' | 'change' | 'poison' | 'broken' | 'big' | 'picture' | 'number' | 'chatter';
interface Said {
  readonly event: string;
  readonly room: string;
  readonly sender: string;
  readonly kind: Kind;
  readonly body: string;
  redacted: boolean;
  /** Newest last. */
  readonly edits: { readonly event: string; readonly text: string }[];
}
export interface Outcome {
  /** What was broken, each in a sentence; none for a bot that is right. */
  readonly violations: readonly string[];
  readonly said: Readonly<Record<Kind | 'edits' | 'redactions' | 'devices', number>>;
  readonly happened: FakeHomeserver['counts'] & { readonly deaths: number };
}
const members = ['@robin:lane.test', '@sam:lane.test', '@alex:lane.test'];
const rooms = ['!paddock', '!grid', '!tires', '!lunch', '!gate'].map((name) => `${name}:lane.test`);
const forbidden = '!closed:lane.test';
const direct = members.map((member) => ({ member, room: `!with-${member.slice(1)}` }));
const replied: readonly Kind[] = ['question', 'change', 'poison', 'broken', 'big', 'picture', 'number'];

export async function simulate({ seed, commands, deadly, faults, between }: Scenario): Promise<Outcome> {
  const random = randomNumbers(seed);
  // What is said does not hang on what happens.
  const chance = randomNumbers(seed + 1);
  const server = new FakeHomeserver(random);
  const bot = new SimulatedBot({ server, random, ...(between ? { between: (wire) => between(wire, random) } : {}) });
  try {
    // A first start in an empty world, then the rooms that invite the bot.
    await bot.round();
    for (const room of [...rooms, forbidden]) server.makeRoom(room, ...members);
    for (const { member, room } of direct) server.makeRoom(room, member);
    for (const room of server.rooms.keys()) server.invite(room, members.find((m) => room.endsWith(m.slice(1))) ?? members[0] ?? '');
    for (let k = 0; k < 3; k++) await bot.round();
    server.forbidden.add(forbidden);

    server.faults = faults;
    bot.deadly = deadly;
    const said: Said[] = [];
    const counts = {
      question: 0,
      change: 0,
      poison: 0,
      broken: 0,
      big: 0,
      picture: 0,
      number: 0,
      chatter: 0,
      edits: 0,
      redactions: 0,
      devices: 0,
    };
    const say = (room: string, sender: string, kind: Kind, body: string): Said => {
      const prefix = room.startsWith('!with-') || kind === 'number' || kind === 'chatter' ? '' : '!';
      const it: Said = { event: server.say(room, sender, prefix + body), room, sender, kind, body, redacted: false, edits: [] };
      said.push(it);
      counts[kind]++;
      return it;
    };
    const round = async (): Promise<void> => {
      server.clock += 1000;
      if (await bot.round()) return;
      if (random() < 0.1) {
        bot.device = `D${++counts.devices + 1}`;
        bot.restart();
      }
      if (random() < 0.2) server.clock += 30 * 3_600_000;
    };
    for (let k = 0; k < commands; k++) {
      const member = members[k % members.length] ?? '';
      const room = k % 29 === 0 ? forbidden : k % 11 === 0 ? (direct[k % direct.length]?.room ?? '') : (rooms[k % rooms.length] ?? '');
      const sender = direct.find((d) => d.room === room)?.member ?? member;
      if (k % 97 === 0) say(room, sender, 'poison', `poison ${k}`);
      else if (k % 89 === 0) say(room, sender, 'broken', `break ${k}`);
      else if (k % 83 === 0) say(room, sender, 'big', `big ${k}`);
      else if (k % 79 === 0) say(room, sender, 'picture', `draw ${k}`);
      else if (k % 13 === 0) {
        say(room, sender, 'question', `ask ${k}`);
        say(room, sender, 'number', k % 2 === 0 ? '1' : '2');
      } else {
        const it = say(room, sender, k % 2 === 0 ? 'change' : 'question', k % 2 === 0 ? `set ${k}` : `show ${k}`);
        const edits = chance() < 0.1 ? (chance() < 0.3 ? 2 : 1) : 0;
        for (let n = 0; n < edits; n++) {
          if (random() < 0.3) await round();
          const text = it.kind === 'change' ? `set ${50_000 + 2 * k + n}` : `show edited-${k}-${n}`;
          it.edits.push({ event: server.edit(room, sender, it.event, (room.startsWith('!with-') ? '' : '!') + text), text });
          counts.edits++;
        }
        if (chance() < 0.05) {
          if (random() < 0.5) await round();
          server.redact(room, sender, it.event);
          it.redacted = true;
          counts.redactions++;
        }
      }
      if (k % 7 === 0 && !room.startsWith('!with-')) say(room, sender, 'chatter', `see you at ${k}`);
      if (random() < 0.4) await round();
    }
    for (let k = 0; k < 20_000; k++) {
      const open = bot.store.database
        .prepare<[], { n: number }>(
          "SELECT (SELECT count(*) FROM inbox WHERE state = 'new') + (SELECT count(*) FROM outbox WHERE state IN ('ready', 'trying')) AS n",
        )
        .get()?.n;
      if (k > 5 && open === 0) break;
      server.clock = Math.max(server.clock, bot.sender.nextDue() ?? 0);
      await round();
    }
    return { violations: [...violations(server, bot, said)], said: counts, happened: { ...server.counts, deaths: bot.deaths } };
  } finally {
    bot.close();
  }
}

function* violations(server: FakeHomeserver, bot: SimulatedBot, said: readonly Said[]): Generator<string> {
  const database = bot.store.database;
  const known = new Set(
    database
      .prepare<[], { event: string }>('SELECT event FROM inbox')
      .all()
      .map(({ event }) => event),
  );
  const open = database.prepare<[], { n: number }>("SELECT count(*) AS n FROM outbox WHERE state IN ('ready', 'trying')").get()?.n;
  if (open !== 0) yield `${open} rows are still to be sent`;
  const changes = new Map(
    database
      .prepare<[], { cause: string; n: number }>('SELECT cause, count(*) AS n FROM revisions GROUP BY cause')
      .all()
      .map(({ cause, n }) => [cause, n]),
  );
  for (const it of said) {
    const { event, room, kind, redacted, edits, body } = it;
    if (!known.has(event)) yield `${body} was never taken in`;
    const replies = server.repliesTo(room, event);
    const wanted = room === forbidden || redacted || !replied.includes(kind) ? 0 : 1;
    if (replies.length !== wanted) yield `${body} has ${replies.length} replies instead of ${wanted}`;
    const made = changes.get(event) ?? 0;
    if (kind === 'change' && (redacted ? made > 1 : made !== 1))
      yield `${body} was made ${made} times; it shows "${replies[0] ? server.shown(room, replies[0]) : ''}"`;
    if (kind !== 'change' && kind !== 'number' && made !== 0) yield `${body} changed something`;
    const [reply] = replies;
    if (redacted) {
      if (server.events(room).some((e) => e.sender === me && JSON.stringify(e.content).includes(`"${event}"`)))
        yield `${body} was redacted, and an answer to it still stands`;
    } else if (reply && wanted === 1) yield* shown(server.shown(room, reply), it, changes);
    for (const edit of edits) {
      if (!known.has(edit.event)) yield `an edit of ${body} was never taken in`;
      if ((changes.get(edit.event) ?? 0) > 1) yield `an edit of ${body} was made more than once`;
    }
  }
  for (const room of server.rooms.keys()) {
    // Members take turns: each one's own replies come in their order.
    for (const member of members) {
      const order = new Map(said.filter((it) => it.room === room && it.sender === member).map(({ event }, at) => [event, at]));
      const places = server.said(room).flatMap(({ content }) => order.get(String(inReplyTo(content))) ?? []);
      if (places.some((at, k) => k > 0 && at <= (places[k - 1] ?? -1))) yield `replies to ${member} in ${room} are out of order`;
    }
    const keys = server
      .events(room)
      .flatMap(({ sender, content }) => (sender === me && markerKey in content ? [JSON.stringify(content[markerKey])] : []));
    if (new Set(keys).size !== keys.length) yield `something was sent twice in ${room}`;
  }
  const forks = database
    .prepare<[], { n: number }>(
      'SELECT count(*) AS n FROM (SELECT parent FROM revisions WHERE parent IS NOT NULL GROUP BY parent HAVING count(*) > 1)',
    )
    .get()?.n;
  if (forks !== 0) yield `${forks} revisions have two successors`;
  const texts = database
    .prepare<[], { n: number }>("SELECT count(*) AS n FROM inbox WHERE content IS NOT NULL AND state = 'silent' AND kind = 'message'")
    .get()?.n;
  if (texts !== 0) yield `${texts} lines that were not for the bot are kept`;
}
function* shown(text: string, { kind, body, edits }: Said, changes: ReadonlyMap<string, number>): Generator<string> {
  const last = edits.at(-1);
  const wrong = (wanted: string): string => `${body} shows "${text}" instead of ${wanted}`;
  if (kind === 'poison' && !text.startsWith("I can't answer this one")) yield wrong('that it is given up');
  if (kind === 'broken' && !text.startsWith('Something broke')) yield wrong('that something broke');
  if (kind === 'big' && !/\bcould not be sent here/.test(text)) yield wrong('the short form');
  if (kind === 'question' && last && text !== `ok ${last.text}`) yield wrong(`the answer to ${last.text}`);
  if (kind === 'question' && !last && !body.startsWith('ask') && text !== `ok ${body}`) yield wrong('its answer');
  if (kind === 'number' && !/^(ok (show picked-|set )|Your car has changed)/.test(text)) yield wrong('the choice');
  if (kind === 'change' && last) {
    const applied = (changes.get(last.event) ?? 0) === 1;
    if (text !== (applied ? `ok ${last.text}` : text.startsWith('Your edit was not applied') ? text : ''))
      yield wrong('what became of the edit');
  }
}
