/** Ranks the options of a box piece by piece: a full box has hundreds, and whoever else asks need not wait for all of them. */
import { type Goal, perMinute, type Ranked, type Ranking, rankCandidates } from '../../core/advice/rank.js';
import { isRefusal, type Refusal } from '../../core/catalog.js';
import type { Situation } from '../../core/engine.js';
import { type Breathe, inPieces } from '../breathing.js';
import { catalog } from '../looked.js';
import type { Choice, Option } from './options.js';

/** So many are worked out between two breaths. */
const pieceOf = 8;
/** So many of the best are weighed against the doubt of what they shift. */
const weighed = 8;

/** Settings of one adjuster stay together: only the best of them is ranked. */
function pieces(choices: readonly Choice[]): readonly (readonly Choice[])[] {
  const all: Choice[][] = [];
  for (const choice of choices) {
    const last = all.at(-1);
    const same = choice.group !== undefined && last?.at(-1)?.group === choice.group;
    if (last && (same || last.length < pieceOf)) last.push(choice);
    else all.push([choice]);
  }
  return all;
}
/** As within one verdict: best for its work first, then what has no work told. */
function byGain(a: Ranked<Option>, b: Ranked<Option>): number {
  const [p, q] = [perMinute(a), perMinute(b)];
  if (p === undefined || q === undefined || a.verdict === 'away')
    return Number(p === undefined) - Number(q === undefined) || b.gain - a.gain;
  return q - p;
}
/** What `rank` makes of all of them at once. */
export async function rankInPieces(
  from: Situation,
  choices: readonly Choice[],
  goal: Goal,
  breathe: Breathe,
): Promise<Ranking<Option> | Refusal> {
  const found: Ranked<Option>[] = [];
  const impossible: Ranking<Option>['impossible'][number][] = [];
  for (const piece of pieces(choices)) {
    await breathe();
    const ranking = await inPieces(rankCandidates(catalog, from, piece, goal, 0), breathe);
    if (isRefusal(ranking)) return ranking;
    found.push(...ranking.ranked);
    impossible.push(...ranking.impossible);
  }
  const toward = found.filter(({ verdict }) => verdict === 'unweighed').sort(byGain);
  const away = found.filter(({ verdict }) => verdict === 'away').sort(byGain);
  await breathe();
  const best = await inPieces(rankCandidates(catalog, from, toward.slice(0, weighed), goal, weighed), breathe);
  if (isRefusal(best)) return best;
  return { before: best.before, ranked: [...best.ranked, ...toward.slice(weighed), ...away], impossible };
}
