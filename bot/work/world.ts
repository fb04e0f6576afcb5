/** What handling needs of the world, as narrow as it can be: so the same handling serves the console, a homeserver and a simulation. */
import type { Reply } from '../../commands/command.js';
import type { Context } from '../../commands/context.js';
import type { Choice } from '../../commands/reading.js';
import type { Log } from '../log.js';
import type { Store } from '../records/database.js';

export type { Log } from '../log.js';

/** What commands get, but for the calculator, which whoever starts the bot adds. */
export type Situation = Omit<Context, 'calculator'>;
export type Dispatch = (text: string, situation: Situation) => Promise<Reply>;
export interface Picture {
  readonly png: Uint8Array;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}
export interface Rendered {
  /** Plain text, complete alone. Empty: silence. */
  readonly body: string;
  readonly html: string;
  /** Lines for `more`. */
  readonly rest: readonly string[];
  /** What the numbers in the text stand for. */
  readonly choices: readonly Choice[];
  readonly chart?: Picture;
}
export type Render = (reply: Reply, situation: Pick<Situation, 'asker' | 'room'>) => Rendered | Promise<Rendered>;
export interface World {
  readonly store: Store;
  readonly dispatch: Dispatch;
  readonly render: Render;
  /** Loads what the first line needs. A row is not tried before: a process that ends while it loads says nothing against the row. */
  readonly warm?: () => Promise<void>;
  readonly log: Log;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** The bot's own account; its name is what people call it by. */
  readonly me: { readonly id: string; readonly name: string | undefined };
  /** Where a room has none of its own. */
  readonly prefix: string;
  /** Whether this member may invite the bot. */
  readonly mayInvite: (member: string) => boolean;
  /** `queue`: replies are sent by a sender. `hand over`: whoever asked gets the reply, and nothing else is sent. */
  readonly delivery: 'queue' | 'hand over';
  /** Why encrypted rooms can't be served: one sentence for the room. */
  readonly whyNotEncrypted: string;
}
