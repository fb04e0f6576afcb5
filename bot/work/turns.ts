/**
 * Who is next. Members take turns: one row of each member is under way at a time, and who has waited longest since their last begins first. What must
 * stay in order stays so, whoever's turn it is; DEVELOPERS.md has the rules and their reasons.
 */
import type { InboxRow } from '../records/inbox.js';
import { stateContent } from './rooms.js';

export type Row = Pick<InboxRow, 'seq' | 'room' | 'sender' | 'kind' | 'content' | 'tries'>;
/** A row that is being handled, and whether it has turned out to be dear. */
export interface UnderWay {
  readonly row: Row;
  readonly dear: boolean;
}
/** So many members' rows are handled side by side. */
const membersAtOnce = 8;
/** Only what surely is one: whatever else is said of a member may make a room less private. */
const leaving: readonly unknown[] = ['leave', 'ban'];

/** What a state row speaks of. */
interface Spoken {
  /** Which states of the room; undefined: all of them. */
  readonly of: ReadonlySet<string> | undefined;
  /** The member of whose membership it speaks, and of nothing else. */
  readonly member?: string;
  readonly leaves: boolean;
}
/** A row that cannot be read speaks of everything, and so does one that tells of more than its events: the room's whole state, say. */
function spokenOf({ content }: Row): Spoken {
  const read = stateContent.safeParse(content === null ? undefined : JSON.parse(content));
  if (!read.success || Object.keys(read.data).some((key) => key !== 'events')) return { of: undefined, leaves: false };
  const { events } = read.data;
  const of = new Set(events.map(({ type, state_key }) => `${type} ${state_key}`));
  const [only] = events;
  if (of.size !== 1 || only?.type !== 'm.room.member') return { of, leaves: false };
  return { of, member: only.state_key, leaves: events.every((event) => leaving.includes(event.content.membership)) };
}
const overlap = (a: Spoken, b: Spoken): boolean => a.of === undefined || b.of === undefined || [...a.of].some((one) => b.of?.has(one));
const isSuspect = ({ tries }: Row): boolean => tries > 0;
const isSaid = ({ kind }: Row): boolean => kind === 'message' || kind === 'edit';

export class Turns {
  /** When each member's last row began, counted in rows. */
  readonly #last = new Map<string, number>();
  #begun = 0;
  readonly #spoken = new Map<number, Spoken>();
  /** Rows that wait until all is done that this member had said before in the room. */
  readonly #behind = new Map<number, string>();

  /**
   * @param open by `seq`, those under way included: the oldest message or edit of each member of each room, and every row of another kind
   * @returns the rows to begin now, in this order
   */
  next<R extends Row>(open: readonly R[], underWay: readonly UnderWay[]): readonly R[] {
    this.#forget(open);
    const waiting = this.#ordered(
      open.filter(({ seq }) => !underWay.some(({ row }) => row.seq === seq)),
      open,
    );
    // What was under way when a process ended is handled alone, so that only the row that ends it is counted up.
    if (underWay.some(({ row }) => isSuspect(row))) return [];
    if (waiting.some(isSuspect)) {
      const free = underWay.length > 0 ? [] : waiting.filter((row) => this.#may(row, open, []));
      return [free.find(isSuspect) ?? free[0]].filter((row) => row !== undefined);
    }
    const began = [...underWay];
    return waiting.filter((row) => {
      const may = this.#may(row, open, began);
      if (may) began.push({ row, dear: false });
      return may;
    });
  }
  /** Its turn is taken. */
  begin(row: Row): void {
    if (isSaid(row)) this.#last.set(row.sender, ++this.#begun);
  }
  /** Whether something that the member said in the room, or their leaving it, comes before the row and is not handled yet. */
  isAfter({ room, seq }: Row, member: string, open: readonly Row[]): boolean {
    return open.some((one) => one.room === room && one.seq < seq && this.#whose(one, open) === member);
  }
  /** The row was to show what belongs to this member, and is after something of theirs: it begins when that is done. */
  putBehind(row: Row, member: string): void {
    this.#behind.set(row.seq, member);
  }

  /** Members alone take turns; what is no member's goes first. */
  #ordered<R extends Row>(waiting: readonly R[], open: readonly Row[]): readonly R[] {
    const turn = (row: Row): number => {
      const who = this.#whose(row, open);
      return who === undefined ? -1 : (this.#last.get(who) ?? 0);
    };
    return waiting.toSorted((a, b) => turn(a) - turn(b) || a.seq - b.seq);
  }
  #may(row: Row, open: readonly Row[], began: readonly UnderWay[]): boolean {
    if (row.kind === 'redaction' || row.kind === 'invite') return true;
    const here = open.filter(({ room, seq, kind }) => room === row.room && seq !== row.seq && kind !== 'redaction' && kind !== 'invite');
    const earlier = here.filter(({ seq }) => seq < row.seq);
    if (row.kind === 'left') return earlier.length === 0;
    if (this.#isBehindState(row, open)) return false;
    const who = this.#whose(row, open);
    const beside = began.filter((one) => one.row.room === row.room && one.row.kind !== 'redaction');
    if (who === undefined) return beside.length === 0;
    if (earlier.some((one) => this.#whose(one, open) === who)) return false;
    // The states of the room first; one that has to wait itself holds back only what came after it.
    const states = here.filter((one) => one.kind === 'state' && this.#whose(one, open) === undefined);
    if (states.some((one) => one.seq < row.seq || !this.#isBehindState(one, open))) return false;
    const behind = this.#behind.get(row.seq);
    if (behind !== undefined && this.isAfter(row, behind, open)) return false;
    const members = began.filter((one) => isSaid(one.row));
    if (members.length >= membersAtOnce || members.some((one) => one.row.sender === who)) return false;
    return beside.every(({ dear }) => dear);
  }
  /** What comes after the bot's own leaving, and a state after another that speaks of the same. */
  #isBehindState(row: Row, open: readonly Row[]): boolean {
    return open.some((one) => {
      if (one.room !== row.room || one.seq >= row.seq) return false;
      return one.kind === 'left' || (one.kind === 'state' && row.kind === 'state' && overlap(this.#speaks(one), this.#speaks(row)));
    });
  }
  /**
   * The member whose row it is: what they say, and their leaving (with a coming back after it), which ends what they have shared before.
   * Nobody's: the other states of a room, which hold back what waits.
   */
  #whose(row: Row, open: readonly Row[]): string | undefined {
    if (isSaid(row)) return row.sender;
    if (row.kind !== 'state') return undefined;
    const { member, leaves } = this.#speaks(row);
    if (member === undefined || leaves) return member;
    const left = (one: Row): boolean => {
      const before = one.kind === 'state' && one.room === row.room && one.seq < row.seq ? this.#speaks(one) : undefined;
      return before?.leaves === true && before.member === member;
    };
    return open.some(left) ? member : undefined;
  }
  #speaks(row: Row): Spoken {
    const known = this.#spoken.get(row.seq) ?? spokenOf(row);
    this.#spoken.set(row.seq, known);
    return known;
  }
  #forget(open: readonly Row[]): void {
    const seqs = new Set(open.map(({ seq }) => seq));
    for (const map of [this.#spoken, this.#behind]) for (const seq of map.keys()) if (!seqs.has(seq)) map.delete(seq);
    if (open.length === 0) this.#last.clear();
  }
}
