/** Random rows of several members in two rooms, dear and everyday, handled while the process dies at random: what must stay in order does. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Store } from '../../../bot/records/database.js';
import { receive } from '../../../bot/records/inbox.js';
import { recordMembership } from '../../../bot/records/memberships.js';
import { enterRoom } from '../../../bot/records/rooms.js';
import type { Dispatch, World } from '../../../bot/work/world.js';
import { Work } from '../../../bot/work.js';
import { answer } from '../../../commands/answer.js';
import type { Change } from '../../../commands/context.js';
import { Draft } from '../../../commands/records/draft.js';
import { quiet } from '../../simulation/bot.js';
import { randomNumbers } from '../../simulation/random.js';
import { newCar } from '../records/club.js';
import { opened } from '../records/fresh.js';

const members = ['@robin:lane.test', '@sam:lane.test', '@jo:lane.test'] as const;
const rooms = ['!paddock:lane.test', '!grid:lane.test'] as const;
type Word = 'see' | 'share' | 'unshare' | 'leave' | 'join' | 'power' | 'edit' | 'redact';
interface Script {
  readonly word: Word;
  readonly member: number;
  readonly room: number;
  /** Breaths that it takes: what is dear is overtaken. */
  readonly breaths: number;
  /** Of an edit and a redaction: which of the member's rows so far. */
  readonly target: number;
}
const scripts = fc.array(
  fc.record<Script>({
    word: fc.constantFrom('see', 'see', 'see', 'share', 'share', 'unshare', 'unshare', 'leave', 'join', 'power', 'edit', 'redact'),
    // One of them says most, and waits for themselves.
    member: fc.constantFrom(0, 1, 1, 1, 1, 2),
    room: fc.constantFrom(0, 0, 0, 1),
    breaths: fc.constantFrom(0, 0, 1, 20),
    target: fc.nat(20),
  }),
  { minLength: 1, maxLength: 40, size: 'max' },
);
const withdrawing: ReadonlySet<Word> = new Set(['unshare', 'leave']);
interface Sent extends Script {
  readonly event: string;
  readonly who: string;
  readonly where: string;
  readonly of?: string;
}
class Death extends Error {}

function club(): { readonly store: Store; readonly cars: ReadonlyMap<number, string> } {
  const store = opened(':memory:');
  store.transaction(() => {
    for (const room of rooms) {
      enterRoom(store, room, false);
      for (const member of members) recordMembership(store, room, member, 'join');
    }
  });
  return { store, cars: new Map(members.map((member) => [newCar(store, member, 'turnip'), member])) };
}
/** Puts the script into the inbox, as a homeserver would have sent it. */
function send(store: Store, script: readonly Script[]): readonly Sent[] {
  const sent: Sent[] = [];
  for (const [at, it] of script.entries()) {
    const [who, where] = [members[it.member] ?? '', rooms[it.room] ?? ''];
    const own = sent.filter((one) => one.who === who && one.where === where && ['see', 'share', 'unshare'].includes(one.word));
    const of = own[it.target % Math.max(1, own.length)]?.event;
    if (of === undefined && (it.word === 'edit' || it.word === 'redact')) continue;
    const event = `$${at}`;
    const base = { event, room: where, sender: who, at };
    const body = { msgtype: 'm.text', body: `!${it.word === 'edit' ? 'see' : it.word} ${it.breaths}` };
    const state = (type: string, key: string, content: object): void => {
      const events = [{ type, state_key: key, sender: who, content }];
      receive(store, { ...base, sender: '', kind: 'state', content: JSON.stringify({ events }) });
    };
    if (it.word === 'leave' || it.word === 'join') state('m.room.member', who, { membership: it.word });
    else if (it.word === 'power') state('m.room.power_levels', '', { users: { [who]: 100 } });
    else if (it.word === 'redact') receive(store, { ...base, kind: 'redaction', target: of ?? '' });
    else if (it.word === 'edit')
      receive(store, { ...base, kind: 'edit', target: of ?? '', content: JSON.stringify({ 'm.new_content': body }) });
    else receive(store, { ...base, kind: 'message', content: JSON.stringify(body) });
    sent.push({ ...it, event, who, where, ...(of === undefined ? {} : { of }) });
  }
  return sent;
}
/** `see` names the owners of the cars that it was shown; `share` and `unshare` do so with the asker's car. */
const dispatch =
  (cars: ReadonlyMap<number, string>, step: () => void): Dispatch =>
  async (text, situation) => {
    const [word = '', breaths = '0'] = text.split(' ');
    const draft = new Draft(situation);
    const own = situation.garage.mine[0]?.id ?? 0;
    const seen = word === 'see' ? draft.garage.others.map(({ id, head }) => `${cars.get(id)}${head.id > 0 ? '' : '?'}`) : [];
    for (let k = 0; k < Number(breaths); k++) {
      await situation.breathe();
      step();
    }
    const changes: readonly Change[] = word === 'share' || word === 'unshare' ? [{ change: word, car: own, room: situation.room.id }] : [];
    return { answers: [answer('told', `${word} ${seen.join(' ')}`.trim())], changes, read: draft.read, seen: draft.seen };
  };

interface Reply {
  readonly command: string;
  readonly version: number;
  readonly body: string;
}
/** Handles all of it, and dies with the given chance at each step; every start is a new process on the same store. */
async function handle(store: Store, cars: ReadonlyMap<number, string>, random: () => number, deadly: number): Promise<void> {
  let worked = 0;
  for (let deaths = 0; ; ) {
    let dead = false;
    const step = (): void => {
      if (!dead && deaths < 4 && random() < deadly) dead = true;
      if (dead) throw new Death();
    };
    const alive: Store = {
      ...store,
      transaction: (work) => {
        step();
        const done = store.transaction(() => {
          const inside = work();
          step();
          return inside;
        });
        step();
        return done;
      },
    };
    const world: World = {
      ...{ store: alive, dispatch: dispatch(cars, step), log: quiet, now: () => 1e12, prefix: '!', delivery: 'queue' },
      render: ({ answers }) => ({ body: answers[0]?.headline ?? '', html: '', rest: [], choices: [] }),
      me: { id: '@bot:lane.test', name: 'stubaxle' },
      mayInvite: () => true,
      whyNotEncrypted: '',
      // A dead process begins nothing.
      warm: async () => {
        if (dead) throw new Death();
      },
    };
    // Each look at the clock finds that a little was worked.
    const work = new Work(world, undefined, { worked: () => (worked += 4 * random()), later: (go) => void setImmediate(go) });
    try {
      await work.run();
      return;
    } catch (problem) {
      if (!(problem instanceof Death)) throw problem;
      deaths++;
    }
  }
}
const rowsOf = (store: Store) =>
  store.database.prepare<[], { event: string; seq: number; state: string }>('SELECT event, seq, state FROM inbox ORDER BY seq').all();
const repliesOf = (store: Store): readonly Reply[] =>
  store.database
    .prepare<[], { command: string; version: number; content: string | null }>(
      "SELECT command, version, content FROM outbox WHERE action IN ('send', 'edit') ORDER BY seq",
    )
    .all()
    .map(({ command, version, content }) => {
      const said: { body?: string; 'm.new_content'?: { body: string } } = content === null ? {} : JSON.parse(content);
      return { command, version, body: said['m.new_content']?.body ?? said.body ?? '' };
    });

/** What is wrong with what came of it. */
function* faults(store: Store, sent: readonly Sent[]): Generator<string> {
  const replies = repliesOf(store);
  const at = new Map(sent.map(({ event }, n) => [event, n]));
  const redacted = new Set(sent.flatMap(({ word, of }) => (word === 'redact' && of !== undefined ? [of] : [])));
  for (const { event, state } of rowsOf(store)) if (state === 'new' || state === 'failed') yield `${event} is ${state}`;
  for (const it of sent) {
    if (!['see', 'share', 'unshare'].includes(it.word)) continue;
    const edits = sent.filter(({ word, of }) => word === 'edit' && of === it.event).length;
    const own = replies.filter(({ command }) => command === it.event);
    if (!redacted.has(it.event) && own.length !== 1 + edits) yield `${it.event} has ${own.length} replies instead of ${1 + edits}`;
    if (own.some(({ version }, n) => version !== n)) yield `${it.event} was not edited in order`;
    // Withdrawn before it was asked, and not shared again before it was answered: nobody sees it.
    for (const reply of own)
      for (const owner of members.filter((member) => member !== it.who && reply.body.includes(member))) {
        const theirs = sent.filter(({ event, who, where }) => who === owner && where === it.where && !redacted.has(event));
        const place = (event: string): number => at.get(event) ?? 0;
        const last = theirs.findLast(({ event, word }) => place(event) < place(it.event) && withdrawing.has(word));
        const shared = theirs.some(
          ({ event, word }) =>
            word === 'share' &&
            (last === undefined || place(event) > place(last.event)) &&
            replies.findIndex(({ command }) => command === event) < replies.indexOf(reply),
        );
        if (!shared) yield `${it.event} shows the car of ${owner}`;
      }
  }
  for (const who of members)
    for (const where of rooms) {
      const order = replies
        .filter(
          ({ version, command }) => version === 0 && sent.some((one) => one.event === command && one.who === who && one.where === where),
        )
        .map(({ command }) => at.get(command) ?? 0);
      if (order.some((n, k) => k > 0 && n < (order[k - 1] ?? 0))) yield `replies to ${who} in ${where} are out of order`;
    }
}

describe('random rows, dear and everyday, and a process that dies', () => {
  it('are each answered once, each member in order, edits after what they edit, and nobody sees what was withdrawn before they asked', async () => {
    let shown = 0;
    await fc.assert(
      fc.asyncProperty(scripts, fc.nat(), fc.constantFrom(0, 0.02, 0.05), async (script, seed, deadly) => {
        const { store, cars } = club();
        const sent = send(store, script);
        await handle(store, cars, randomNumbers(seed), deadly);
        expect([...faults(store, sent)]).toEqual([]);
        shown += repliesOf(store).filter(({ body }) => body.includes('@')).length;
      }),
      { numRuns: 60, seed: 20_261_127 },
    );
    // Cars were shown: a bot that shows none keeps every secret.
    expect(shown).toBeGreaterThan(20);
  });
});

describe('what a member has shared', () => {
  const row = (member: number, word: Word, breaths = 0): Script => ({ member, word, breaths, room: 0, target: 0 });
  const [robin, sam] = [0, 1];
  /** What the last row is answered. */
  const answerTo = async (script: readonly Script[]): Promise<string | undefined> => {
    const { store, cars } = club();
    const sent = send(store, script);
    await handle(store, cars, () => 0.999, 0);
    expect([...faults(store, sent)]).toEqual([]);
    return repliesOf(store).find(({ command }) => command === sent.at(-1)?.event)?.body;
  };
  it('is seen by who asks after it, once the bot has got to it', async () => {
    expect(await answerTo([row(sam, 'see', 30), row(sam, 'share'), row(robin, 'see')])).toBe('see');
    expect(await answerTo([row(sam, 'share'), row(robin, 'see')])).toBe(`see ${members[sam]}`);
  });
  it('is not seen by who asks after it was withdrawn, although that waits behind dear lines', async () => {
    expect(await answerTo([row(sam, 'share'), row(sam, 'see', 30), row(sam, 'unshare'), row(robin, 'see')])).toBe('see');
  });
  it('is not seen where it was withdrawn while the answer was worked out', async () => {
    expect(await answerTo([row(sam, 'share'), row(sam, 'unshare', 30), row(robin, 'see', 60)])).toBe('see');
  });
  it('ends with their leaving, also when they are back before the bot gets to it', async () => {
    const comesBack = [row(sam, 'see', 5), row(sam, 'share'), row(sam, 'leave'), row(sam, 'join')];
    expect(await answerTo([...comesBack, row(robin, 'see', 60), row(robin, 'see', 60), row(robin, 'see')])).toBe('see');
  });
});
