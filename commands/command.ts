/** A command is plain data in one file: words, help, examples, and what it does. Help, usage and errors derive from it. */
import type { Answer } from './answer.js';
import type { Change, Context, Conversation, Sight } from './context.js';
import type { Reading } from './reading.js';

export interface Example {
  /** A line that works as it stands, on the demo club's cars. */
  readonly line: string;
  /** What it does, in a few words. */
  readonly does: string;
}
export interface Outcome {
  readonly answer: Answer;
  readonly changes?: readonly Change[];
  /** For `save that`. */
  readonly trial?: Conversation['trial'];
}
export interface Command {
  /** Its word in the canonical form. */
  readonly word: string;
  /** Other words and phrases that mean it, longest match first: `what if`, `how come`. */
  readonly also: readonly string[];
  /** `verb` works over the catalogs, `topic` answers a subject with or without a saved car, `house` looks after cars, rooms and members. */
  readonly group: 'verb' | 'topic' | 'house';
  readonly summary: string;
  readonly examples: readonly [Example, ...Example[]];
  /** Whether what follows the word is read as items of the catalogs, as names, or left as text. */
  readonly takes: 'items' | 'names' | 'text' | 'nothing';
  /** Whether its text is taken as it stands, without turns of phrase being put in plainer words. */
  readonly verbatim?: true;
  /** Whether a line that does not begin with its word is for it all the same (`pushes going in`); asked of every line, so it is quick. Takes text. */
  readonly hears?: (line: string) => boolean;
  /** Whether it may change anything: a mended line is then offered instead of run. */
  readonly changes: boolean;
  run(reading: Reading, context: Context): Outcome | Promise<Outcome>;
}
/** What one message of a member leads to. */
export interface Reply {
  /** One a line, in order. Empty: silence. */
  readonly answers: readonly Answer[];
  readonly changes: readonly Change[];
  readonly trial?: Conversation['trial'];
  /** Heads of the cars that were read: when one has moved before the reply is committed, the message is worked out again. */
  readonly read: readonly { readonly car: number; readonly head: number }[];
  /** Clubmates' cars that its answers or changes rest on in any way: it is given, and given again, only as long as they may be seen. */
  readonly seen: readonly Sight[];
}
