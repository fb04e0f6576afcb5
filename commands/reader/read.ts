/**
 * A line as requests: tokens, leaves, chart, rows, requests, priced by one list and by the calculation graph. What it comes to is decided in decide.ts.
 * A message of several questions is cut by the same prices.
 */
import type { Setting } from '../language/setting.js';
import { tidy } from '../language/tidy.js';
import { writeReading } from '../language/write.js';
import { type Chart, parse } from './chart.js';
import { cuesOf } from './cues.js';
import { gather } from './gather.js';
import { graphPrice, implied } from './graph.js';
import { leavesOf } from './leaves.js';
import { nameIndexOf } from './names.js';
import { withPlaces } from './places.js';
import { prices } from './prices.js';
import { type Candidate, candidatesOf } from './requests.js';
import { type ReadToken, tokensOf } from './tokens.js';

/** A line, or a part of it, with what it may ask for, the cheapest first; one for each request that differs. */
export interface Considered {
  readonly text: string;
  readonly tokens: readonly ReadToken[];
  readonly candidates: readonly Candidate[];
  readonly chart: Chart;
}
/** So many of the cheapest are checked against the calculation graph. */
const mostChecked = 24;
/** Kept after the check. */
const mostKept = 6;
const longest = 72;

export function consider(text: string, setting: Setting): Considered {
  const tokens = tokensOf(text, setting);
  if (tokens.length > longest) return { text, tokens, candidates: [], chart: { rows: [], edges: 0 } };
  const ground = { index: nameIndexOf(setting.catalog), preferences: setting.preferences };
  const chart = parse(tokens, leavesOf(tokens, text, setting), ground);
  const cues = cuesOf(tokens);
  const line = { cues, text, hasCar: setting.chosen !== undefined, ownCar: setting.chosen };
  const all = chart.rows.flatMap((row) => candidatesOf({ ...line, gathered: gather(row) })).flatMap(withPlaces);
  const cheapest = distinct(all, setting).slice(0, mostChecked);
  const asking = cues.question || cues.for.ask > 0.5 || setting.chosen === undefined;
  const guessed = cheapest
    .filter(({ kind, reading }) => kind === 'tell' && (asking || reading.tried.length > 0))
    .slice(0, 3)
    .flatMap((one) => implied(one, setting));
  const checked = [...cheapest, ...guessed].map((one) => ({ ...one, price: one.price + graphPrice(one.reading, setting) }));
  return { text, tokens, chart, candidates: distinct(checked, setting).slice(0, mostKept) };
}
function distinct(all: readonly Candidate[], setting: Setting): readonly Candidate[] {
  const seen = new Set<string>();
  return [...all]
    .sort((a, b) => a.price - b.price)
    .filter(({ reading }) => {
      const key = writeReading(reading, setting);
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}
/** Where a message may be cut: behind a mark that ends a sentence, before a word that begins a question. */
const ends: ReadonlySet<string> = new Set(['?', ';', '!', '.']);
const openers: ReadonlySet<string> = new Set([
  'what',
  'whats',
  'how',
  'which',
  'why',
  'does',
  'is',
  'will',
  'can',
  'should',
  'would',
  'who',
  'whos',
  'hows',
  'also',
]);
const joints: ReadonlySet<string> = new Set(['and', 'n', '&', ',', 'also', 'then', 'plus']);
const mostCuts = 4;
function cutsOf(tokens: readonly ReadToken[]): readonly number[] {
  const at: number[] = [];
  for (let n = 1; n < tokens.length; n++) {
    const before = tokens[n - 1]!;
    const token = tokens[n]!;
    if (ends.has(before.text) && !ends.has(token.text)) at.push(token.token.at);
    else if (joints.has(before.text) && openers.has(token.text)) at.push(token.token.at);
  }
  return at.slice(0, mostCuts);
}
/** The requests of a message: the whole as one, or cut where that explains it cheaper. */
export function requestsOf(line: string, setting: Setting): readonly Considered[] {
  const text = tidy(line) ?? '';
  const whole = consider(text, setting);
  const cuts = cutsOf(whole.tokens);
  const [best] = whole.candidates;
  if (cuts.length === 0) return [whole];
  const bounds = [0, ...cuts, text.length];
  const parts = bounds.slice(0, -1).map((from, n) => text.slice(from, bounds[n + 1]).trim());
  const apart = parts.map((part) => consider(part, setting));
  // A part of filler only is no request.
  const real = apart.filter(
    ({ tokens, candidates }) => candidates.length > 0 || tokens.some(({ className }) => className === 'amount' || className === 'catalog'),
  );
  if (real.length < 2) return [whole];
  const total =
    real.reduce((sum, { candidates }) => sum + (candidates[0]?.price ?? prices.left.amount), 0) + prices.request.cut * (real.length - 1);
  return best && best.price <= total ? [whole] : real;
}
