/** Which command a line asks for: its word or phrase at the beginning, or a natural form that means it. */
import type { Token } from '../scan.js';
import { nearest } from '../spelling.js';
import { between, forWords, stem } from '../words.js';
import { everyday } from './everyday.js';
import type { Setting } from './setting.js';
import { type Verbs, type Vocabulary, verbsOf } from './vocabulary.js';

type CommandWords = Setting['commands'][number];
export interface VerbFound {
  readonly command: CommandWords | undefined;
  /** Where the rest begins, in tokens. */
  readonly from: number;
  readonly echo?: string;
}
const polite: ReadonlySet<string> = new Set([
  'hey',
  'hi',
  'ok',
  'okay',
  'so',
  'please',
  'pls',
  'plz',
  'now',
  'then',
  'and',
  'can',
  'could',
  'you',
  'lets',
  'just',
  'stubaxle',
  'me',
  'id',
  'like',
  'to',
]);
const politeAtMost = 4;
const asking: ReadonlySet<string> = new Set(['what', 'which', 'whats', 'find', 'whatever']);

const word = (tokens: readonly Token[], n: number): string | undefined => {
  const token = tokens[n];
  return token?.is === 'word' ? token.text : undefined;
};
/** Only marks and thanks follow. */
const isLast = (tokens: readonly Token[], from: number): boolean =>
  tokens.slice(from).every((token) => token.is === 'mark' || (token.is === 'word' && polite.has(token.text)));
function phraseAt(tokens: readonly Token[], from: number, verbs: Verbs): VerbFound | undefined {
  const first = word(tokens, from);
  if (first === undefined) return undefined;
  for (const { words, command } of verbs.starting.get(first) ?? [])
    if (words.every((one, k) => word(tokens, from + k) === one) && (command.takes !== 'nothing' || isLast(tokens, from + words.length)))
      return { command, from: from + words.length };
  return undefined;
}
/** A misspelled first word that can only be a verb's; the line's other words say whether it would make sense. */
function mendedVerb(tokens: readonly Token[], verbs: Verbs, vocabulary: Vocabulary): VerbFound | undefined {
  const first = word(tokens, 0);
  if (first === undefined || first.length < 4 || everyday.has(first) || vocabulary.words.has(stem(first))) return undefined;
  const [found, another] = nearest(first, verbs.starting.keys());
  if (found === undefined || another !== undefined) return undefined;
  // A word of the catalogs that is as near keeps its chance.
  const [rival] = nearest(stem(first), vocabulary.words);
  if (rival !== undefined) return undefined;
  const simple = verbs.starting.get(found)?.find(({ words }) => words.length === 1);
  if (simple && simple.command.takes === 'nothing' && tokens.length > 1) return undefined;
  return simple && { command: simple.command, from: 1, echo: `"${first}" read as ${found}` };
}
/** `what front spring for 2.0 Hz`, `which spring gives 2 hz`: something sought, then a word of purpose, then an amount. */
export function asksToFind(tokens: readonly Token[]): boolean {
  const start = tokens.findIndex((token) => token.is === 'word' && asking.has(token.text));
  if (start < 0 || start > 2) return false;
  const purpose = tokens.findIndex((token, n) => n > start + 1 && token.is === 'word' && forWords.has(token.text) && token.text !== 'to');
  if (purpose < 0) return false;
  return (
    !tokens.slice(start, purpose).some((token) => token.is === 'amount' || token.is === 'size') &&
    tokens.slice(purpose).some((token) => token.is === 'amount')
  );
}
/** `what sway bar do i need`: something sought, and nothing to seek it for. */
const asksWhichPart = (tokens: readonly Token[]): boolean =>
  asking.has(word(tokens, 0) ?? '') &&
  tokens.length > 2 &&
  tokens.some((token) => token.is === 'word' && /^needs?$/.test(token.text)) &&
  !tokens.some((token) => token.is === 'amount' || token.is === 'size');
/** `what would mine need to have moths front share`: where the goal begins. */
export function needsToHave(tokens: readonly Token[]): number | undefined {
  if (!asking.has(word(tokens, 0) ?? '')) return undefined;
  const need = tokens.findIndex((token) => token.is === 'word' && /^needs?$/.test(token.text));
  if (need < 0) return undefined;
  const have = tokens.findIndex((token, n) => n > need && token.is === 'word' && /^(?:have|match|reach|get|equal)$/.test(token.text));
  return have < 0 ? undefined : have + 1;
}
/** What somebody else said, or what is doubted: `sam says my front spring is 450` tells nothing of the car by itself. */
const reporting: ReadonlySet<string> = new Set(
  `said says told tells asked asks wondered wonders thought thinks heard hears reckons reckoned claims claimed suggested suggests recommended recommends
  guessed guesses believes believed insists insisted swears swore if whether`.split(/\s+/),
);
/** `my front spring is 450`: a statement, not a question. */
function states(tokens: readonly Token[]): boolean {
  if (tokens.some((token) => token.is === 'mark' && token.text === '?')) return false;
  const first = word(tokens, 0);
  if (first === undefined || asking.has(first) || /^(?:how|is|are|does|do|will|would|can|when|where|who)$/.test(first)) return false;
  const says = tokens.findIndex((token) => token.is === 'word' && /^(?:is|are|weighs|weigh|has|runs)$/.test(token.text));
  return (
    says > 0 &&
    !tokens.slice(0, says).some((token) => token.is === 'word' && reporting.has(token.text)) &&
    tokens.slice(says).some((token) => token.is === 'amount' || token.is === 'size' || token.is === 'rim') &&
    (first === 'my' || says <= 6)
  );
}

export function verbOf(tokens: readonly Token[], setting: Setting, vocabulary: Vocabulary): VerbFound {
  const verbs = verbsOf(setting.commands);
  const named = (name: string): CommandWords | undefined => verbs.named.get(name);
  const [only] = tokens;
  if (tokens.length === 1 && only?.is === 'mark' && only.text === '?') return { command: named('help'), from: 1 };
  if ((asksToFind(tokens) || asksWhichPart(tokens)) && named('find')) {
    const start = tokens.findIndex((token) => token.is === 'word' && asking.has(token.text));
    return { command: named('find'), from: start + 1 };
  }
  for (let from = 0; from <= politeAtMost; from++) {
    const found = from > 0 && between.has(word(tokens, from) ?? '') ? undefined : phraseAt(tokens, from, verbs);
    if (found) return found;
    if (!polite.has(word(tokens, from) ?? '')) break;
  }
  if (states(tokens) && named('set')) return { command: named('set'), from: 0 };
  if (asking.has(word(tokens, 0) ?? '') || word(tokens, 0) === 'how') return { command: named('show'), from: 1 };
  return mendedVerb(tokens, verbs, vocabulary) ?? { command: undefined, from: 0 };
}
