/** The order in which rows begin, as a scripted inbox: what is open, what is under way, what may begin. */
import { beforeEach, describe, expect, it } from 'vitest';
import { type Row, Turns } from '../../../bot/work/turns.js';

const [here, there] = ['!here', '!there'];
let seq = 0;
let turns = new Turns();
beforeEach(() => {
  seq = 0;
  turns = new Turns();
});
const row = (kind: Row['kind'], sender: string, room = here, more: Partial<Row> = {}): Row => ({
  ...{ seq: ++seq, room, sender, kind, content: null, tries: 0, ...more },
});
const says = (sender: string, room = here, more: Partial<Row> = {}): Row => row('message', sender, room, more);
const state = (
  events: readonly { readonly type?: string; readonly of?: string; readonly membership?: unknown }[],
  room = here,
  came?: 'new',
): Row =>
  row('state', '', room, {
    content: JSON.stringify({
      ...(came === undefined ? {} : { came }),
      events: events.map(({ type = 'm.room.member', of = '', membership }) => ({
        type,
        state_key: of,
        sender: '@x',
        content: { membership },
      })),
    }),
  });
const joins = (of: string): Row => state([{ of, membership: 'join' }]);
const leaves = (of: string): Row => state([{ of, membership: 'leave' }]);
const underWay = (it: Row, dear = false) => ({ row: it, dear });
const seqs = (rows: readonly Row[]): readonly number[] => rows.map((one) => one.seq);

/** Everything that is open, one row after another, each done before the next begins; as the store gives it. */
function oneByOne(all: readonly Row[]): readonly Row[] {
  const done: Row[] = [];
  for (let open = all; open.length > 0; open = all.filter((one) => !done.includes(one))) {
    const [next] = turns.next(heads(open), []);
    if (!next) throw new Error(`stuck with ${seqs(open).join()}`);
    turns.begin(next);
    done.push(next);
  }
  return done;
}
const heads = (open: readonly Row[]): readonly Row[] =>
  open.filter(
    (one) =>
      !['message', 'edit'].includes(one.kind) ||
      !open.some(
        (other) =>
          other.seq < one.seq && other.sender === one.sender && other.room === one.room && ['message', 'edit'].includes(other.kind),
      ),
  );

describe('members', () => {
  it('take turns in a room: who sends many lines waits for themselves', () => {
    const script = [...Array.from({ length: 4 }, () => says('robin')), says('sam'), says('jo'), says('sam')];
    expect(oneByOne(script).map(({ sender, seq: at }) => `${sender} ${at}`)).toEqual([
      ...['robin 1', 'sam 5', 'jo 6', 'robin 2', 'sam 7', 'robin 3', 'robin 4'],
    ]);
  });
  it('have one row under way, wherever they speak', () => {
    const first = says('robin', here);
    const second = says('robin', there);
    expect(seqs(turns.next([first, second], []))).toEqual([1]);
    expect(seqs(turns.next([first, second], [underWay(first, true)]))).toEqual([]);
    expect(seqs(turns.next([second], []))).toEqual([2]);
  });
  it('of one room wait for an everyday line, and not for a dear one; those of another room for neither', () => {
    const [robin, sam, jo] = [says('robin'), says('sam'), says('jo', there)];
    expect(seqs(turns.next([robin, sam, jo], []))).toEqual([1, 3]);
    expect(seqs(turns.next([robin, sam, jo], [underWay(robin)]))).toEqual([3]);
    expect(seqs(turns.next([robin, sam, jo], [underWay(robin, true)]))).toEqual([2, 3]);
  });
  it('are handled side by side, so many at a time', () => {
    const many = Array.from({ length: 20 }, (_, n) => says(`member-${n}`, `!room-${n}`));
    expect(turns.next(many, [])).toHaveLength(8);
  });
  it('whose line would show what belongs to another wait for what that one had said before', () => {
    const [flood, asks, unshares] = [says('sam'), says('robin'), says('sam')];
    turns.putBehind(asks, 'sam');
    expect(seqs(turns.next(heads([flood, asks, unshares]), []))).toEqual([1]);
    // What is said after it does not hold it back.
    expect(seqs(turns.next(heads([asks, unshares]), []))).toContain(2);
  });
});

describe('the states of a room', () => {
  it('come before all that waits, after what is under way', () => {
    const [robin, sam, power] = [says('robin'), says('sam'), state([{ type: 'm.room.power_levels' }])];
    expect(seqs(turns.next([robin, sam, power], [underWay(robin, true)]))).toEqual([]);
    expect(seqs(turns.next([sam, power], []))).toEqual([3]);
    expect(seqs(turns.next([sam], []))).toEqual([2]);
  });
  it('hold back their own room alone', () => {
    const [robin, jo, sam] = [says('robin'), joins('jo'), says('sam', there)];
    expect(seqs(turns.next([robin, jo, sam], [underWay(robin)]))).toEqual([3]);
  });
  it("of one kind keep their order, and somebody's leaving comes after what they had said", () => {
    const script = [says('robin'), leaves('robin'), joins('robin'), says('sam'), says('robin')];
    turns.begin(says('robin'));
    const order = seqs(oneByOne(script.slice(0, 5)));
    expect(order.filter((at) => at !== 4)).toEqual([1, 2, 3, 5]);
    // Nobody else waits for it.
    expect(order[0]).toBe(4);
  });
  it('hold back the others where they say more than that one member came back', () => {
    const script = [
      says('robin'),
      leaves('robin'),
      state([
        { of: 'robin', membership: 'join' },
        { of: 'jo', membership: 'join' },
      ]),
      says('sam'),
    ];
    expect(seqs(oneByOne(script))).toEqual([1, 2, 3, 4]);
  });
  it('that cannot be read hold back the others, and are no leaving', () => {
    const [robin, odd] = [says('robin'), state([{ of: 'robin', membership: ['leave'] }])];
    expect(seqs(turns.next([robin, odd], []))).toEqual([2]);
  });
  it('come after the bot itself has left, and that after all that was said before', () => {
    const script = [says('robin'), says('sam'), row('left', ''), state([], here, 'new'), says('robin')];
    expect(seqs(oneByOne(script))).toEqual([1, 2, 3, 4, 5]);
  });
});

describe('redactions and invitations', () => {
  it('wait for nothing', () => {
    const [robin, sam] = [says('robin'), joins('sam')];
    const [redaction, invite] = [row('redaction', 'robin'), row('invite', 'jo')];
    expect(seqs(turns.next([robin, sam, redaction, invite], [underWay(robin)]))).toEqual([3, 4]);
  });
});

describe('a row that was under way when a process ended', () => {
  it('is handled with nothing beside it', () => {
    const [robin, sam, jo] = [says('robin', here), says('sam', there, { tries: 1 }), says('jo', '!yard')];
    expect(seqs(turns.next([robin, sam, jo], [underWay(robin)]))).toEqual([]);
    expect(seqs(turns.next([robin, sam, jo], []))).toEqual([2]);
    expect(seqs(turns.next([robin, sam, jo], [underWay(sam)]))).toEqual([]);
  });
  it('waits for what has to come before it', () => {
    const script = [says('robin', here, { tries: 2 }), joins('jo')];
    expect(seqs(oneByOne(script))).toEqual([2, 1]);
  });
});
