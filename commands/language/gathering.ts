/** Atoms that belong together made one: ranges, curves, lists, changes, places side by side. */
import type { AmountToken } from '../scan.js';
import { meaningsOf } from '../units.js';
import { changeWords, comparedIn, leadingChanges } from '../words.js';
import { type Atom, isAmount } from './atom.js';
import type { AmountAtom } from './values.js';

/** The passes in their order: each sees what those before it have joined. */
export function gathered(atoms: readonly Atom[]): Atom[] {
  let out = [...atoms];
  for (const pass of [joinCurves, joinRanges, joinChanges, joinPlaces, joinLists]) out = pass(out);
  return out;
}

/** `500-700 over 4in`, `500 then 700 after 4in`, `0: 500, 4: 700`. */
function joinCurves(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  const zero = (at: number): AmountToken => ({ is: 'amount', at, text: '0', value: 0 });
  for (let n = 0; n < atoms.length; n++) {
    const [a, b, c, d, e] = atoms.slice(n, n + 5);
    const pairs = pairsFrom(atoms, n);
    if (pairs && isAmount(a)) {
      const steps = atoms[pairs.end];
      const between = steps?.is === 'word' && steps.word === 'step' ? 'step' : 'line';
      out.push({ ...a, curve: { points: pairs.points, between, sure: true } });
      n = pairs.end - 1 + (between === 'step' ? 1 : 0);
    } else if (isAmount(a) && a.token.to !== undefined && b?.is === 'over' && isAmount(c)) {
      const { to, ...token } = a.token;
      out.push({
        ...a,
        curve: {
          points: [
            [zero(token.at), token],
            [c.token, { ...token, value: to }],
          ],
          between: 'line',
          sure: false,
        },
      });
      n += 2;
    } else if (
      isAmount(a) &&
      ((b?.is === 'to' && !b.colon) || (b?.is === 'break' && b.joint === 'and')) &&
      isAmount(c) &&
      d?.is === 'over' &&
      isAmount(e)
    ) {
      const between = b.is === 'to' ? 'line' : 'step';
      out.push({
        ...a,
        curve: {
          points: [
            [zero(a.token.at), a.token],
            [e.token, c.token],
          ],
          between,
          sure: true,
        },
      });
      n += 4;
    } else out.push(a!);
  }
  return out;
}
/** Pairs `at: value`, two or more. */
function pairsFrom(atoms: readonly Atom[], from: number) {
  const points: [AmountToken, AmountToken][] = [];
  let n = from;
  for (;;) {
    const [a, b, c] = atoms.slice(n, n + 3);
    if (!isAmount(a) || b?.is !== 'to' || !b.colon || !isAmount(c)) break;
    points.push([a.token, c.token]);
    n += 3;
    const comma = atoms[n];
    if (comma?.is === 'break' && isAmount(atoms[n + 1])) n++;
  }
  return points.length >= 2 ? { points, end: n } : undefined;
}
function joinRanges(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const [a, b, c] = atoms.slice(n, n + 3);
    // `from 350s to 450s` is two sides, not a range.
    const before = out.at(-1);
    if (isAmount(a) && b?.is === 'to' && !b.colon && isAmount(c) && before?.is !== 'from' && !a.curve) {
      out.push({ ...a, to: c.token });
      n += 2;
    } else out.push(a!);
  }
  return out;
}
/** Whether the comparative can be a change by an amount of that unit; a share and a bare number can be of anything. */
function isSaidOf(word: string, unit: string | undefined): boolean {
  const dimensions = comparedIn.get(word);
  if (dimensions === undefined || unit === undefined) return true;
  return meaningsOf(unit).some(({ dimension }) => dimension === 'ratio' || dimensions.includes(dimension));
}
function joinChanges(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const [a, b] = [atoms[n]!, atoms[n + 1]];
    const way = (atom: Atom | undefined) => (atom?.is === 'word' ? changeWords.get(atom.word) : undefined);
    const after = way(b);
    const first = way(a);
    if (isAmount(a) && after !== undefined && b?.is === 'word') {
      out.push(isSaidOf(b.word, a.token.unit) ? { ...a, change: after } : a);
      n++;
    } else if (first !== undefined && isAmount(b) && a.is === 'word' && leadingChanges.has(a.word)) {
      out.push({ ...b, change: first });
      n++;
    } else out.push(a);
  }
  return out;
}
const union = (a: readonly string[], b: readonly string[]): string[] => [...new Set([...a, ...b])];
function joinPlaces(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const a = atoms[n]!;
    const last = out.at(-1);
    if (a.is === 'place' && last?.is === 'place') {
      const shared = a.places.filter((place) => last.places.includes(place));
      if (shared.length > 0) {
        out[out.length - 1] = {
          ...a,
          word: a.all ? last.word : a.word,
          places: shared,
          plural: a.plural || last.plural,
          all: a.all && last.all,
        };
        continue;
      }
    }
    const [, b, c] = atoms.slice(n, n + 3);
    if (a.is === 'place' && b?.is === 'break' && b.joint === 'and' && c?.is === 'place' && !isAmount(atoms[n - 1])) {
      out.push({ ...a, word: 'both', places: union(a.places, c.places) });
      n += 2;
    } else out.push(a);
  }
  return out;
}
/** Four or more amounts in a row, nothing between them but commas: one for each wheel, or for each gear. */
function joinLists(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const a = atoms[n]!;
    if (isAmount(a) && a.token.slashed) {
      const rest = a.token.slashed.map((value): AmountToken => ({ ...a.token, value, text: String(value) }));
      const { slashed: _, ...first } = a.token;
      out.push({ ...a, token: { ...first, text: String(first.value) }, list: [{ ...first, text: String(first.value) }, ...rest] });
      continue;
    }
    const row: AmountAtom[] = [];
    let at = n;
    for (let next = atoms[at]; isAmount(next) && !next.curve && !next.to; next = atoms[at]) {
      row.push(next);
      at++;
      if (atoms[at]?.is === 'break' && isAmount(atoms[at + 1])) at++;
    }
    // Four are wheels; four and more may be gears.
    if (row.length >= 4 && isAmount(a)) {
      const unit = row.find((one) => one.token.unit !== undefined)?.token.unit;
      const tokens = row.map(({ token }): AmountToken => (token.unit === undefined && unit !== undefined ? { ...token, unit } : token));
      out.push({ ...a, token: tokens[0]!, list: tokens });
      n = at - 1;
    } else out.push(a);
  }
  return out;
}
