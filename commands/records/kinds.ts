/** All kinds of record. Export, forgetting, redaction, undo, the draft and the store derive from this list. */
import type { Kind } from './kind.js';
import { cars } from './kinds/car.js';
import { members } from './kinds/member.js';
import { parts } from './kinds/part.js';
import { revisions } from './kinds/revision.js';
import { setups } from './kinds/setup.js';
import { shares } from './kinds/share.js';

export class Kinds {
  readonly all: readonly Kind[];
  readonly #named: ReadonlyMap<string, Kind>;

  constructor(all: readonly Kind[]) {
    this.all = all;
    this.#named = new Map(all.map((kind) => [kind.name, kind]));
    if (this.#named.size < all.length) throw new Error('two kinds of record have one name');
  }
  /** @throws for a kind that this program does not have */
  named(name: string): Kind {
    const kind = this.#named.get(name);
    if (kind === undefined) throw new Error(`there is no kind of record called ${name}`);
    return kind;
  }
  /** One whose records are counted: what has no change of its own. */
  numbered(name: string): Kind<unknown, number> {
    return this.named(name);
  }
}
export const kinds = new Kinds([members, cars, revisions, setups, shares, parts]);
