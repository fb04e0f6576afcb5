/** What to measure next: what the plus-or-minus is made of, and what measuring would leave of it. */
import { isRefusal } from '../../core/catalog.js';
import { measureNext } from '../../core/doubt.js';
import { nameAt, pathAt, placesOf, type Share } from '../../core/engine.js';
import { type Answer, answer, type Row } from '../answer.js';
import type { Breathe } from '../breathing.js';
import { phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Preferences } from '../context.js';
import { noCar } from '../house/own.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import { amount, evidenceText, sentence, writing } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { isAskable } from '../show/lines.js';
import { labelsOfPaths, measureLine, namedShares, toSettle } from '../show/rests.js';
import { sayingAt, turnAt } from '../show/saying.js';
import { askedAlone, pathsOf } from './asked.js';

const most = 6;
/** How it is known, in a word. */
const short = (evidence: Share['evidence']): string =>
  evidence === 'rule' ? 'my guess' : evidence === 'spec' ? 'from the book' : evidence === 'estimated' ? 'your guess' : evidence;
const percent = (part: number): string => `${Math.round(part * 100)} %`;

/** One figure: its errors, largest first, and the best measurement. */
function doubtOf(looked: Looked, path: string, preferences: Preferences): Answer {
  const numbers = numbersOf(looked.situation);
  const { entry } = catalog.node(path);
  const value = numbers.number(path);
  if (isRefusal(value)) {
    const line = lineToTell(numbers, value.because ?? [path]);
    return answer('refused', value.refused, { next: line === undefined ? [] : [{ label: line, line }] });
  }
  const within = numbers.within(path);
  const how = writing(entry);
  const name = sentence(sayingAt(numbers, path));
  const shown = amount(value, entry.dimension ?? 'ratio', preferences, within, how);
  if (!(within > 0)) return answer('told', `${name} ${shown.text}: nothing in it is a guess.`, { amount: shown });
  const shares = numbers.shares(path).slice(0, most);
  const measures = new Map(measureNext(numbers, path, most).map((one) => [one.error, one]));
  const rows = shares.map((share): Row => {
    return { label: `${labelsOfPaths(numbers, share.paths)}, ${short(share.evidence)}`, cells: [percent((share.amount / within) ** 2)] };
  });
  const [best] = [...measures.values()].sort((a, b) => a.after - b.after);
  const advice = best
    ? [
        `${toSettle(numbers, best.paths)} first: it leaves ± ${amount(value, entry.dimension ?? 'ratio', preferences, best.after, how).text.replace(/^.*± /, '')}.`,
      ]
    : [];
  const line = best ? measureLine(numbers, best.paths) : undefined;
  return answer('told', `${name} ${shown.text}${turnAt(numbers, path, preferences)}.`, {
    amount: shown,
    rows: [{ label: 'The ± comes from:', cells: [] }, ...rows],
    assumptions: advice,
    next: line === undefined ? [] : [{ label: 'how to measure it', line }],
  });
}

/** Every figure: which single measurement helps most of them. */
async function doubtOfAll(looked: Looked, breathe: Breathe): Promise<Answer> {
  const numbers = numbersOf(looked.situation);
  const helps = new Map<string, { readonly paths: readonly string[]; readonly evidence: string; gain: number; figures: string[] }>();
  let counted = 0;
  for (const entry of catalog.entries) {
    if (entry.kind !== 'figure' || !isAskable(entry)) continue;
    for (const place of placesOf(entry.scope)) {
      await breathe();
      const path = pathAt(place, entry);
      const within = numbers.within(path);
      if (numbers.status(path) !== 'computed' || !(within > 0) || !Number.isFinite(within)) continue;
      counted++;
      const [first] = namedShares(numbers, numbers.shares(path));
      // What the largest error makes up of the doubt, in parts of the variance: what is gained at most by measuring it.
      if (!first || first.evidence === 'measured') continue;
      const one = helps.get(first.error) ?? { paths: first.paths, evidence: evidenceText(first.evidence), gain: 0, figures: [] };
      one.gain += (first.amount / within) ** 2;
      one.figures.push(nameAt(entry, place));
      helps.set(first.error, one);
    }
  }
  const ranked = [...helps.values()].sort((a, b) => b.gain - a.gain);
  const [best] = ranked;
  if (!best)
    return answer(
      'told',
      counted === 0 ? `I can't work out anything for ${looked.label} yet.` : `All that matters of ${looked.label} is measured.`,
      {},
    );
  const line = measureLine(numbers, best.paths);
  const rows = ranked.slice(0, most).map(({ paths, evidence, figures }) => ({
    label: labelsOfPaths(numbers, paths),
    cells: [`${figures.length}, ${evidence}`],
  }));
  return answer('told', `${toSettle(numbers, best.paths)} first: ${best.figures.length} numbers lean on it most.`, {
    rows: rows.slice(1),
    notes: [`Among them: ${best.figures.slice(0, 3).join(', ')}.`],
    next: [{ label: 'how to measure it', line }],
  });
}

export const doubt: Command = {
  word: 'doubt',
  also: ['how sure', 'how sure are you', 'how sure are you of', 'what should i measure', 'what to measure'],
  group: 'verb',
  summary: 'What the plus-or-minus is made of, and what to measure next.',
  examples: [
    { line: 'doubt rear ride frequency', does: 'of one figure' },
    { line: 'doubt', does: 'of all figures of the car' },
  ],
  takes: 'items',
  changes: false,
  async run(reading, context): Promise<Outcome> {
    const asked = askedAlone(reading, context);
    if ('answer' in asked) return asked;
    const { preferences } = context.asker;
    const paths = asked.items.flatMap(pathsOf);
    const numbers = numbersOf(asked.looked.situation);
    const path = paths.find((one) => !isRefusal(numbers.number(one))) ?? paths[0];
    if (path !== undefined) {
      const one = doubtOf(asked.looked, path, preferences);
      const [item] = asked.items;
      const others = paths.filter((p) => p !== path && catalog.node(p).entry === item?.entry).slice(0, 3);
      const next = others.map((p) => `doubt ${phrase(catalog.node(p).entry, catalog.node(p).place)}`);
      return { answer: { ...one, next: [...one.next, ...next.map((line) => ({ label: line, line }))].slice(0, 3) } };
    }
    if (!asked.looked.car) return noCar();
    return { answer: await doubtOfAll(asked.looked, context.breathe) };
  },
};
