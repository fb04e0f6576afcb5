/** All that an answer can say of a number: how sure it is, how it was worked out, what was assumed for it and what that did, what contradicts it, what is typical. */
import { isRefusal, type Refusal, standing, type Typical } from './catalog.js';
import { type Assumed, type Contradicted, type Evaluation, evaluate, type Situation, type Status } from './engine.js';

/** A number, and how it was worked out. */
export interface Sum {
  readonly value: number;
  /** Half-width that holds 19 in 20. */
  readonly within: number;
  readonly status: Status;
  /** The own way first, then those of what it rests on. */
  readonly basis: readonly string[];
}
export interface Assumption extends Assumed {
  /** Of the half-width, what it makes: 0 for a convention. */
  readonly share: number;
  /**
   * Of a guess: by how much the number moves when this guess alone is made; where nothing is known without a guess, by how much it moves when this
   * one is not made. Undefined where one of the two has no value.
   */
  readonly moved?: number;
}
export interface About {
  readonly path: string;
  /** Without any guess: from what was told, conventions, constants and usual values. */
  readonly plain: Sum | Refusal;
  /** With every honest guess. */
  readonly whole: Sum | Refusal;
  /** What the whole rests on, what makes most of its half-width first. */
  readonly assumed: readonly Assumption[];
  /** Told results that are also known otherwise, as far as this number rests on them. */
  readonly contradicted: readonly Contradicted[];
  readonly typical: readonly (Typical & { readonly stands: 'below' | 'within' | 'above' })[];
}

function sumOf(it: Evaluation, path: string): Sum | Refusal {
  const value = it.number(path);
  return isRefusal(value) ? value : { value, within: it.within(path), status: it.status(path), basis: it.basis(path) };
}

/** For so many guesses, those that make most of the half-width, is worked out what each moves: it is an evaluation each. */
const weighed = 8;

/** What one guess moves; see `Assumption`. */
function movedBy(
  path: string,
  guess: string,
  guesses: readonly string[],
  base: Situation,
  plain: Sum | Refusal,
  whole: Sum | Refusal,
  of: Evaluation,
) {
  const number = (assume: ReadonlySet<string>): number | Refusal => evaluate(of.catalog, { ...base, assume }).number(path);
  if (!isRefusal(plain)) {
    const alone = number(new Set([guess]));
    return isRefusal(alone) ? {} : { moved: alone - plain.value };
  }
  const without = number(new Set(guesses.filter((other) => other !== guess)));
  return isRefusal(without) || isRefusal(whole) ? {} : { moved: whole.value - without };
}

/** Works out what can be said of a number of a car, or of a plain sum: both are looked at, whatever the evaluation may assume. */
export function about(evaluation: Evaluation, path: string): About {
  const { facts, then, assume = 'all' } = evaluation.situation;
  const base: Situation = { facts, ...(then ? { then } : {}) };
  const full = assume === 'all' ? evaluation : evaluate(evaluation.catalog, base);
  const bare = assume !== 'all' && assume.size === 0 ? evaluation : evaluate(evaluation.catalog, { ...base, assume: new Set() });
  const [plain, whole] = [sumOf(bare, path), sumOf(full, path)];
  const shares = full.shares(path).filter(({ evidence }) => evidence === 'rule');
  const found = full.assumed(path).map((one) => {
    const own = shares.filter(({ paths }) => paths.some((at) => one.paths.includes(at)));
    return { ...one, share: Math.hypot(...own.map(({ amount }) => amount)) };
  });
  const ranked = found.sort((a, b) => b.share - a.share);
  const guesses = ranked.filter(({ kind }) => kind === 'guess').map(({ entry }) => entry.path);
  const looked = new Set(guesses.slice(0, weighed));
  const assumed = ranked.map(
    (one): Assumption =>
      looked.has(one.entry.path) ? { ...one, ...movedBy(path, one.entry.path, guesses, base, plain, whole, full) } : one,
  );
  const value = isRefusal(plain) ? (isRefusal(whole) ? undefined : whole.value) : plain.value;
  const { entry } = evaluation.catalog.node(path);
  return {
    path,
    plain,
    whole,
    assumed,
    contradicted: full.contradicted(path),
    typical: value === undefined ? [] : entry.typicals.map((one) => ({ ...one, stands: standing(value, one.range) })),
  };
}
