/** One line of a member, or an edit of one: worked out on a snapshot, then committed in one transaction with its reply. */
import { answer } from '../../commands/answer.js';
import type { Breathe } from '../../commands/breathing.js';
import type { Reply } from '../../commands/command.js';
import type { Change, Sight } from '../../commands/context.js';
import { type Edited, givenBack, withoutLine } from '../../commands/records/edited.js';
import { FactsRefused } from '../../commands/records/facts.js';
import { type Applied, applyChanges, ChangeRefused, Moved } from '../records/apply.js';
import { headOf } from '../records/cars.js';
import { eraseTalk, type Head, type LeftTalk, leaveTalk } from '../records/conversation.js';
import type { MemberExport } from '../records/export.js';
import { garageFor } from '../records/garage.js';
import { eraseIncoming, findIncoming, finishIncoming, type InboxRow, type InboxState, isRedacted } from '../records/inbox.js';
import { meetMember } from '../records/members.js';
import { nameIn, speaks } from '../records/memberships.js';
import type { StoredRoom } from '../records/rooms.js';
import { seenStill } from '../records/shares.js';
import type { Line } from './addressed.js';
import { asking, plain, tellGivenBack } from './asking.js';
import { isPrivate } from './privacy.js';
import { asItStands } from './question.js';
import { referenceOf } from './reference.js';
import { queueExport, queueLeave, queueReply } from './replies.js';
import { Stopped } from './turnstile.js';
import type { Rendered, Situation, World } from './world.js';

export interface Asked {
  readonly row: InboxRow;
  readonly room: StoredRoom;
  readonly line: Line;
  readonly thread: string | undefined;
  /** The event whose reply this is: the line itself, or the line that was edited. */
  readonly command: string;
  /** Of an edit: the line and its earlier edits, whose changes are taken back first. */
  readonly takesBack: readonly string[];
  readonly breathe: Breathe;
  /** Whether something that this member said in the room before the line is not handled yet. */
  readonly isAfter: (member: string) => boolean;
}
/** The answer would show a car of this member, who has said something before it that is not handled yet: that they share it no longer, perhaps. */
export class Behind extends Error {
  override readonly name = 'Behind';
  readonly member: string;
  constructor(member: string) {
    super('a line is to be handled after those of another member');
    this.member = member;
  }
}
/** What came of it, for whoever waits for the reply. */
export interface Handled {
  readonly state: InboxState;
  readonly reply: Reply | undefined;
  readonly rendered: Rendered | undefined;
  /** The data that the member asked for, where replies are handed over. */
  readonly exported?: MemberExport | undefined;
}
interface Computed {
  readonly situation: Situation;
  readonly reply: Reply;
  readonly changes: readonly Change[];
  readonly read: readonly Head[];
  readonly seen: readonly Sight[];
  readonly rendered: Rendered;
  readonly state: 'answered' | 'failed';
  readonly reason?: string;
}
const mostAttempts = 20;

/** @throws Behind, Stopped: nothing was done, and the row is as it was. */
export async function answerLine(world: World, asked: Asked): Promise<Handled> {
  try {
    for (let attempt = 0; attempt < mostAttempts; attempt++) {
      const computed = await compute(world, asked);
      try {
        return commit(world, asked, computed);
      } catch (problem) {
        if (problem instanceof Moved) continue;
        if (!(problem instanceof ChangeRefused || problem instanceof FactsRefused)) throw problem;
        // What can't be done is told of the asker's own alone.
        const refused = await rendering(world, computed.situation, plain(answer('refused', problem.message), []));
        return commit(world, asked, { ...computed, ...refused, changes: [], read: [], seen: [] });
      }
    }
    throw new Error(`the cars moved ${mostAttempts} times while the line was worked out`);
  } catch (problem) {
    if (problem instanceof Stopped || problem instanceof Behind) throw problem;
    const reference = referenceOf(asked.row.event);
    world.log.error({ reference, room: asked.room.id, err: problem }, 'a line could not be answered');
    return commit(
      world,
      asked,
      broken(world, asked, `Something broke on my side, and nothing was changed. Please tell whoever runs me: ${reference}`),
    );
  }
}
/** A row that has ended the process again and again is answered without being worked out. */
export const giveUp = (world: World, asked: Asked): Handled => {
  const reference = referenceOf(asked.row.event);
  world.log.error(
    { reference, room: asked.room.id, tries: asked.row.tries },
    'a line was given up: the process ended each time it was handled',
  );
  return commit(
    world,
    asked,
    broken(world, asked, `I can't answer this one: it stops me each time. Nothing was changed. Please tell whoever runs me: ${reference}`),
  );
};
/** Rendered by hand: what broke may be the renderer. */
function broken(world: World, asked: Asked, sentence: string): Computed {
  const reference = referenceOf(asked.row.event);
  const reply = plain(answer('refused', sentence, { reference }), []);
  const rendered = { body: sentence, html: '', rest: [], choices: [] };
  return { situation: situationOf(world, asked), reply, changes: [], read: [], seen: [], rendered, state: 'failed', reason: reference };
}

function situationOf(world: World, { row, room, line, thread, command, breathe }: Asked): Situation {
  const { store } = world;
  const name = nameIn(store, room.id, row.sender) ?? /^@([^:]+):/.exec(row.sender)?.[1] ?? row.sender;
  const asker = store.transaction(() => {
    speaks(store, room.id, row.sender, name);
    return meetMember(store, row.sender, name);
  });
  // In the console every line is for the bot.
  const prefix = room.direct || world.delivery === 'hand over' ? undefined : (room.prefix ?? world.prefix);
  return {
    event: { id: row.event, line: command, nth: 0 },
    asker,
    room: {
      ...{ id: room.id, direct: room.direct, ...(thread === undefined ? {} : { thread }), ...(prefix === undefined ? {} : { prefix }) },
      // What is handed over goes to whoever typed.
      private: world.delivery === 'hand over' || isPrivate(store, room.id, row.sender),
    },
    now: world.now(),
    breathe,
    garage: garageFor(store, row.sender, room.id),
    conversation: line.after ?? { rest: [], choices: [] },
    ...(line.remark ? { remark: line.remark } : {}),
  };
}
async function rendering(world: World, situation: Situation, reply: Reply): Promise<Pick<Computed, 'reply' | 'rendered' | 'state'>> {
  return { reply, rendered: await world.render(reply, situation), state: 'answered' };
}
async function compute(world: World, asked: Asked): Promise<Computed> {
  const { takesBack } = asked;
  const line = asItStands(world, asked.line);
  const situation = situationOf(world, { ...asked, line });
  const refused = async (sentence: string): Promise<Computed> => ({
    ...{ situation, changes: [], read: [], seen: [] },
    ...(await rendering(world, situation, plain(answer('refused', sentence), []))),
  });
  const { kinds } = world.store;
  let before: Edited = { garage: situation.garage, changes: [], read: [], undone: false, entries: [] };
  try {
    if (takesBack.length > 0) before = withoutLine(situation, line.unsaid ? 'edited: no longer for me' : `edited: ${line.text}`, kinds);
  } catch (problem) {
    if (!(problem instanceof ChangeRefused)) throw problem;
    return refused(`Your edit was not applied. ${problem.message} The line as first sent stands; send a new one to change more.`);
  }
  const reply = await asking(world, line, { ...situation, garage: before.garage });
  if (reply.changes.length > 0 && before.undone)
    return refused('Your edit was not applied: undo has taken that line back. To change it all the same, send a new line.');
  const told = tellGivenBack(reply, givenBack(before, reply.changes, situation, kinds), line.unsaid === true);
  return {
    ...{ situation, changes: [...before.changes, ...reply.changes], read: [...reply.read, ...before.read], seen: reply.seen },
    ...(await rendering(world, situation, told)),
  };
}

/**
 * What the answer rests on is as it was read, and what it shows of others' cars may be shown now: other lines were handled meanwhile.
 * @throws Moved, Behind
 */
function mayStillShow({ store }: World, { row, room, isAfter }: Asked, { read, seen, situation }: Computed): void {
  for (const { car, head } of read)
    if (headOf(store, car) !== head) throw new Moved(`Car ${car} has changed since the message was worked out.`);
  if (!seenStill(store, row.sender, room.id, seen)) throw new Moved('A car that the message tells of is not seen any more.');
  for (const owner of new Set(situation.garage.others.filter(({ id }) => seen.some(({ car }) => car === id)).map((other) => other.owner)))
    if (isAfter(owner)) throw new Behind(owner);
}
/** @throws Moved when a car that was read stands elsewhere by now, or may not be shown any more; Behind, ChangeRefused, FactsRefused */
function commit(world: World, asked: Asked, computed: Computed): Handled {
  const { store } = world;
  const { row, room, thread, command } = asked;
  const { situation, reply, changes, rendered, state } = computed;
  const silent: Handled = { state: 'silent', reply: undefined, rendered: undefined };
  const done = store.transaction((): Handled & { readonly forgot: boolean } => {
    if (findIncoming(store, row.event)?.state !== 'new') return { ...silent, forgot: false };
    if (isRedacted(store, row.event) || isRedacted(store, command)) {
      finishIncoming(store, row.seq, 'withdrawn');
      eraseIncoming(store, row.event);
      return { ...silent, state: 'withdrawn', forgot: false };
    }
    mayStillShow(world, asked, computed);
    const at = world.now();
    const applied = applyChanges(store, { asker: situation.asker, room: room.id, changes, at, cause: row.event, line: command });
    const says = rendered.body !== '';
    const to = { row, room: room.id, command, thread, brief: applied.forgot, at };
    if (says) queueReply(world, to, rendered, computed.seen);
    if (applied.exported !== undefined && world.delivery === 'queue') queueExport(world, to, applied.exported);
    for (const left of applied.leave) queueLeave(world, row.event, left, at);
    if (asked.line.unsaid) eraseTalk(store, command);
    if (says && !applied.forgot) leaveTalk(store, talkAfter(world, asked, computed, applied));
    const ended: InboxState = says ? state : 'silent';
    finishIncoming(store, row.seq, ended, computed.reason);
    // What was not for the bot is not kept.
    if (!says || asked.line.unsaid) eraseIncoming(store, row.event);
    return { state: ended, reply, rendered, exported: applied.exported, forgot: applied.forgot };
  });
  if (done.forgot) store.checkpoint();
  return { state: done.state, reply: done.reply, rendered: done.rendered, exported: done.exported };
}

/** What the answer leaves for the next line. A trial stays until there is a newer one. */
function talkAfter(
  world: World,
  { row, room, thread, command }: Asked,
  { situation, reply, rendered, read, seen, changes }: Computed,
  applied: Applied,
): LeftTalk {
  const trial = reply.trial && {
    ...reply.trial,
    car: applied.cars.get(reply.trial.car) ?? reply.trial.car,
    head: applied.revisions.get(reply.trial.head) ?? reply.trial.head,
    seen,
  };
  const kept = trial ?? situation.conversation.trial;
  const cars = [...read.map(({ car }) => car), ...changes.flatMap((change) => ('car' in change ? [change.car] : []))];
  const stored = [...new Set(cars.map((car) => applied.cars.get(car) ?? car))];
  return {
    ...{ command, asker: row.sender, room: room.id, thread: thread ?? '', at: world.now() },
    rest: rendered.rest,
    ...(kept ? { trial: kept } : {}),
    choices: rendered.choices,
    seen,
    heads: stored.flatMap((car) => {
      const head = headOf(world.store, car);
      return head === undefined ? [] : [{ car, head }];
    }),
  };
}
