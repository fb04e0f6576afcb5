/**
 * A simple model of who may see whose car, apart from the bot's own: a member's car may be told of to another in a room where it is shared, while both of
 * them and the bot are in it. Where a line may or may not have shared a car (an undo, an edit, a number), that is `perhaps`, and nothing is held against the bot.
 */
import { me } from './homeserver.js';

export type Shared = 'no' | 'perhaps' | 'yes';
interface RoomModel {
  readonly inside: Set<string>;
  /** Everybody but the bot who ever was in it, invited or barred. */
  readonly ever: Set<string>;
  readonly shared: Map<string, Shared>;
}
export class WhoSees {
  readonly #rooms = new Map<string, RoomModel>();

  #of(room: string): RoomModel {
    const found = this.#rooms.get(room) ?? { inside: new Set(), ever: new Set(), shared: new Map() };
    this.#rooms.set(room, found);
    return found;
  }
  enters(room: string, member: string): void {
    const it = this.#of(room);
    it.inside.add(member);
    if (member !== me) it.ever.add(member);
  }
  /** Leaves, is put out, barred or invited; with it ends what was shared. */
  isOut(room: string, member: string): void {
    const it = this.#of(room);
    it.inside.delete(member);
    if (member === me) it.shared.clear();
    else it.ever.add(member);
    it.shared.delete(member);
  }
  shares(room: string, owner: string, how: Shared): void {
    this.#of(room).shared.set(owner, this.isIn(room, owner) && this.isIn(room, me) ? how : 'no');
  }
  /** Something was said that may have shared it, or shared it again. */
  perhapsShares(owner: string, room?: string): void {
    for (const [id, it] of this.#rooms)
      if ((room === undefined || id === room) && this.isIn(id, owner) && this.isIn(id, me)) it.shared.set(owner, 'perhaps');
  }
  /** Where the owner's car is shared, to be put back. */
  sharedBy(owner: string): ReadonlyMap<string, Shared> {
    return new Map([...this.#rooms].map(([room, { shared }]) => [room, shared.get(owner) ?? 'no']));
  }
  isIn(room: string, member: string): boolean {
    return this.#of(room).inside.has(member);
  }
  /** Whether what `owner` keeps may be told to `asker` in the room. */
  maySee(asker: string, owner: string, room: string): Shared {
    if (asker === owner) return 'yes';
    const all = [asker, owner, me].every((one) => this.isIn(room, one));
    return all ? (this.#of(room).shared.get(owner) ?? 'no') : 'no';
  }
  /** In any room: what a member takes along may tell of it. */
  maySeeAnywhere(asker: string, owner: string): Shared {
    const all = [...this.#rooms.keys()].map((room) => this.maySee(asker, owner, room));
    return all.includes('yes') ? 'yes' : all.includes('perhaps') ? 'perhaps' : 'no';
  }
  isAlone(room: string, member: string): boolean {
    const { ever } = this.#of(room);
    return ever.size === 1 && ever.has(member);
  }
}
