/** Whatever two members say in between: a number answers only its asker's own open question, and one undo takes back a line with all its edits. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Club, chat, club, paddock, robin, sam } from './club.js';
import { facts, inReplyTo, inThread, said, withCar } from './realClub.js';

const members = [robin, sam] as const;
/** Picks among what is there so far. */
const pick = fc.nat(1000);
const text = fc.constantFrom('chat', 'chat', 'ask', 'ask', '1', '2', '2', '2');
const step = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      does: fc.constant('say' as const),
      by: fc.nat(1),
      text,
      how: fc.constantFrom('plain', 'plain', 'plain', 'reply', 'thread'),
      pick,
    }),
  },
  { weight: 2, arbitrary: fc.record({ does: fc.constant('edit' as const), text, pick }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('redact' as const), pick, answer: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('restart' as const) }) },
);
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

interface Message {
  readonly event: string;
  readonly by: string;
  readonly thread: string | undefined;
  readonly repliesTo: string | undefined;
  /** Place in the order of all that happened. */
  readonly at: number;
  /** The number of the question that it asks, and where the bot answered it first. */
  question: number | undefined;
  answeredAt: number | undefined;
  /** Whether its reply, or a question, made it a line for the bot. */
  wasFor: boolean;
  gone: boolean;
}
/** What is said, and what the rule makes of it; it knows nothing of the bot but the events of its replies. */
class Model {
  readonly messages: Message[] = [];
  #now = 0;
  readonly #it: Club;
  constructor(it: Club) {
    this.#it = it;
  }
  next(): number {
    return ++this.#now;
  }
  answerOf(message: Message): string | undefined {
    return this.#it.replies(paddock, message.event)[0]?.event_id;
  }
  /** The question that a number would answer, said as this message was. */
  questionFor({ by, thread, repliesTo, at }: Message): Message | undefined {
    const open = (one: Message): boolean => one.by === by && one.question !== undefined && !one.gone && one.answeredAt !== undefined;
    if (repliesTo !== undefined) return this.messages.find((one) => open(one) && this.answerOf(one) === repliesTo);
    const here = this.messages.filter((one) => one.thread === thread);
    const last = here
      .filter((one) => open(one) && (one.answeredAt ?? 0) < at)
      .sort((a, b) => (a.answeredAt ?? 0) - (b.answeredAt ?? 0))
      .at(-1);
    const root =
      thread === undefined ? undefined : this.messages.find((one) => open(one) && (one.event === thread || this.answerOf(one) === thread));
    const found = last ?? root;
    const since = last?.answeredAt ?? 0;
    return here.some((one) => one.at > since && one.at < at) ? undefined : found;
  }
}
const changes = ({ bot }: Club): readonly { readonly cause: string; readonly why: string }[] =>
  bot.store.database.prepare<[], { cause: string; why: string }>('SELECT cause, why FROM revisions ORDER BY id').all();

async function play(it: Club, steps: readonly Step[]): Promise<{ readonly chosen: number; readonly numbers: number }> {
  const model = new Model(it);
  let [chosen, numbers, asked] = [0, 0, 0];
  const body = (what: string): string => (what === 'ask' ? `!ask ${1000 + ++asked}` : what === 'chat' ? `lunch ${model.next()}` : what);
  /** What happened in the store must be what the rule says of the message as it now stands. */
  const check = async (message: Message, event: string, words: string, before: number): Promise<void> => {
    await it.settle();
    const made = changes(it).slice(before);
    const number = /^\d$/.test(words) ? Number(words) : undefined;
    const question = number === undefined ? undefined : model.questionFor(message);
    if (number !== undefined) numbers++;
    // A choice that was picked before is picked again only on the car as it was then.
    if (made.length > 0 && message.event === event) {
      expect(number).toBe(2);
      expect(question).toBeDefined();
      expect(made).toEqual([{ cause: event, why: `set ${question?.question}` }]);
      chosen++;
    }
    // Edits may take back; what they set is the question's that the line was said to.
    if (message.event !== event)
      for (const { why } of made)
        if (why.startsWith('set ')) {
          expect([number, why]).toEqual([2, `set ${question?.question}`]);
          chosen++;
        }
    const heard = words.startsWith('!ask') || question !== undefined;
    message.question = words.startsWith('!ask') ? 1000 + asked : undefined;
    message.wasFor = message.wasFor || heard;
  };
  for (const one of steps) {
    const before = changes(it).length;
    if (one.does === 'restart') it.bot.restart();
    else if (one.does === 'say') {
      const by = members[one.by] ?? robin;
      const other = model.messages.length === 0 ? undefined : model.messages[one.pick % model.messages.length];
      // To a message, or to the bot's answer to it.
      const target = other && ((one.pick & 1) === 1 ? (model.answerOf(other) ?? other.event) : other.event);
      const root = other?.thread ?? target;
      const words = body(one.text);
      const more = one.how === 'reply' && target ? inReplyTo(target) : one.how === 'thread' && root ? inThread(root) : {};
      const event = it.server.say(paddock, by, words, more);
      const at = model.next();
      const message: Message = {
        ...{ event, by, at, question: undefined, answeredAt: undefined, wasFor: false, gone: false },
        thread: one.how === 'thread' ? root : undefined,
        repliesTo: one.how === 'reply' ? target : undefined,
      };
      model.messages.push(message);
      if (words.startsWith('!ask')) message.answeredAt = at;
      await check(message, event, words, before);
    } else if (model.messages.length > 0) {
      const message = model.messages[one.pick % model.messages.length];
      if (message === undefined || message.gone) continue;
      if (one.does === 'edit') {
        const words = body(one.text);
        // Of a line that was not for the bot it is not kept what it replied to, so that a number in its place answers nothing.
        const kept = message.wasFor;
        const event = it.server.edit(paddock, message.by, message.event, words);
        // The reply to what was answered before is edited in its place.
        if (words.startsWith('!ask')) message.answeredAt ??= message.wasFor ? message.at : model.next();
        if (!kept && /^\d$/.test(words)) {
          await it.settle();
          expect(changes(it)).toHaveLength(before);
        } else await check(message, event, words, before);
      } else {
        const answer = one.answer ? model.answerOf(message) : undefined;
        it.server.redact(paddock, message.by, answer ?? message.event);
        message.gone = true;
        await it.settle();
        expect(changes(it)).toHaveLength(before);
      }
    }
  }
  return { chosen, numbers };
}

it('a number changes nothing unless it answers its own open question', { timeout: 240_000 }, async () => {
  let [chosen, numbers] = [0, 0];
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 8, maxLength: 24 }), async (steps) => {
      const it = await club();
      for (const [member, room] of [
        [robin, chat],
        [sam, paddock],
      ] as const)
        await it.ask(room, member, room === chat ? 'set 1' : '!set 1');
      const told = await play(it, steps);
      chosen += told.chosen;
      numbers += told.numbers;
    }),
    { numRuns: 60, seed: 7 },
  );
  // So that lines which nobody answers cannot pass.
  expect(numbers).toBeGreaterThan(200);
  expect(chosen).toBeGreaterThan(20);
});

it('the next line picks a choice, wherever nobody spoke in between', { timeout: 60_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 10 }), fc.boolean(), async (steps, edits) => {
      const it = await club();
      await it.ask(chat, robin, 'set 1');
      await play(it, steps);
      await it.ask(paddock, robin, '!ask 9000');
      const earlier = it.server.events(paddock).find(({ sender, type }) => sender === sam && type === 'm.room.message');
      if (edits && earlier) it.server.edit(paddock, sam, earlier.event_id, 'something else');
      expect(await it.ask(paddock, robin, '2')).toEqual(['ok set 9000']);
    }),
    { numRuns: 15, seed: 11 },
  );
});

const edit = fc.oneof(
  fc.record({ front: fc.integer({ min: 300, max: 600 }), rear: fc.option(fc.integer({ min: 200, max: 500 })) }),
  fc.constantFrom('front spring', 'oh well', 'undo 99999999999'),
);
const wordsOf = (one: typeof edit extends fc.Arbitrary<infer E> ? E : never): string =>
  typeof one === 'string' ? one : `set front spring ${one.front}${one.rear === null ? '' : `, rear spring ${one.rear}`}`;
const springs = (it: Club): unknown => [facts(it)['front.spring.rate'], facts(it)['rear.spring.rate']];

it('one undo after a line with any edits restores the car as before the line', { timeout: 240_000 }, async () => {
  let counted = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.array(edit, { minLength: 1, maxLength: 5 }),
      fc.array(fc.integer({ min: 90, max: 110 }), { maxLength: 3 }),
      fc.boolean(),
      async (edits, others, inRoom) => {
        const it = await withCar();
        await it.ask(chat, robin, 'set rear spring 310');
        const before = springs(it);
        const [room, prefix] = inRoom ? [paddock, '!'] : [chat, ''];
        const line = await said(it, room, robin, `${prefix}set front spring 425`);
        for (const [k, one] of edits.entries()) {
          const inches = others[k];
          if (inches !== undefined) await it.ask(chat, robin, `set wheelbase ${inches} in`);
          it.server.edit(room, robin, line, `${one === 'oh well' ? '' : prefix}${wordsOf(one)}`);
          await it.settle();
        }
        const wheelbase = facts(it).wheelbase;
        const stands = JSON.stringify(springs(it)) !== JSON.stringify(before);
        await it.ask(chat, robin, 'undo');
        if (stands) {
          counted++;
          expect(springs(it)).toEqual(before);
          expect(facts(it).wheelbase).toEqual(wheelbase);
        } else if (others.length === 0) expect((springs(it) as readonly unknown[])[0]).toEqual((before as readonly unknown[])[0]);
      },
    ),
    { numRuns: 40, seed: 3 },
  );
  expect(counted).toBeGreaterThan(15);
});
