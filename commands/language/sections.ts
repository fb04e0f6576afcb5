/** Where a line's parts begin: sides, what is tried, conditions, a goal, what to draw against. */
import type { Subject } from '../reading.js';
import { changeWords } from '../words.js';
import type { Atom } from './atom.js';
import type { AmountAtom } from './values.js';

export interface Side {
  atoms: Atom[];
  readonly subjects: { readonly subject: Subject; readonly name: string }[];
}
export interface Sections {
  readonly sides: readonly Side[];
  readonly tried: readonly (readonly Atom[])[];
  /** `without driver`. */
  readonly without: readonly (readonly Atom[])[];
  readonly conditions: readonly (readonly Atom[])[];
  readonly goal?: readonly Atom[];
  readonly against?: readonly Atom[];
  readonly everything: boolean;
  /** Whether a word parted the sides, or only that there are two subjects or sizes. */
  readonly parted: boolean;
}
export interface Manners {
  readonly find: boolean;
  readonly draw: boolean;
  readonly compare: boolean;
  /** Whether a word alone names a condition: `at 1 in bump`. */
  isCondition(word: string): boolean;
}
const isAmount = (atom: Atom | undefined): atom is AmountAtom => atom?.is === 'amount';

/** Where two alternatives stand in a line, and what stands for each. */
interface Alternatives {
  readonly start: number;
  readonly end: number;
  readonly ways: readonly (readonly Atom[])[];
}
const isComparing = (atom: Atom): boolean => atom.is === 'word' && changeWords.has(atom.word);
const longestWay = 5;
/**
 * `from 350s to 450s`, `from the 9 in hole to the 8 in hole`, `22 to 25 mm bar how much stiffer`: amounts of two sides that share all else.
 * A range is two sides only where the line asks how much more the one is.
 */
function alternatives(atoms: readonly Atom[]): Alternatives | undefined {
  const asksMore = atoms.some(isComparing);
  for (let n = 0; n < atoms.length; n++) {
    const a = atoms[n]!;
    if (a.is === 'from') {
      const first = atoms[n + 1];
      if (isAmount(first) && first.to) return { start: n, end: n + 2, ways: endsOf(first) };
      const to = atoms.findIndex((one, k) => k > n && k <= n + longestWay && one.is === 'to' && !one.colon);
      const end = atoms.findIndex((one, k) => k > to && k <= to + longestWay && isTold(one));
      const from = atoms.slice(n + 1, to);
      if (to < 0 || end < 0 || from.filter(isTold).length !== 1 || !from.every(isPlain)) continue;
      // The noun may be said twice, or once at the end.
      const noun = from.filter((one) => one.is === 'word');
      const after = atoms.slice(end + 1, end + 1 + noun.length);
      const twice = noun.length > 0 && noun.every((one, k) => after[k]?.is === 'word' && one.is === 'word' && after[k].word === one.word);
      return {
        start: n,
        end: end + 1 + (twice ? noun.length : 0),
        ways: [from, [...atoms.slice(to + 1, end + 1), ...(twice ? noun : [])]],
      };
    }
    if (asksMore && isAmount(a) && a.to && a.change === undefined) return { start: n, end: n + 1, ways: endsOf(a) };
  }
  return undefined;
}
const isTold = (atom: Atom): boolean => atom.is === 'amount' || atom.is === 'text';
const isPlain = (atom: Atom): boolean => atom.is === 'word' || atom.is === 'place' || isTold(atom);
/** The two ends of a range; a unit said once is of both. */
function endsOf(range: AmountAtom): readonly (readonly Atom[])[] {
  const { to, ...first } = range;
  if (!to) return [[first]];
  const { unit } = to;
  const from = first.token.unit === undefined && unit !== undefined ? { ...first, token: { ...first.token, unit } } : first;
  return [[from], [{ is: 'amount', token: to }]];
}
class Cutter {
  readonly sides: Side[] = [{ atoms: [], subjects: [] }];
  readonly tried: Atom[][] = [];
  readonly without: Atom[][] = [];
  readonly conditions: Atom[][] = [];
  goal: Atom[] | undefined;
  against: Atom[] | undefined;
  everything = false;
  parted = false;
  #target: Atom[] = this.sides[0]!.atoms;
  readonly #manners: Manners;

  constructor(manners: Manners) {
    this.#manners = manners;
  }
  get #side(): Side {
    return this.sides.at(-1)!;
  }
  #open(target: Atom[]): void {
    this.#target = target;
  }
  #newSide(): void {
    const side: Side = { atoms: [], subjects: [] };
    this.sides.push(side);
    this.#open(side.atoms);
  }
  #holdsSomething(side: Side): boolean {
    return side.subjects.length > 0 || side.atoms.some((atom) => atom.is !== 'break');
  }
  take(atoms: readonly Atom[]): void {
    for (let n = 0; n < atoms.length; n++) n = this.#one(atoms, n);
  }
  #one(atoms: readonly Atom[], n: number): number {
    const atom = atoms[n]!;
    switch (atom.is) {
      case 'subject':
        this.#subject(atom, atoms, n);
        return n;
      case 'between':
        if (this.#manners.draw) {
          this.against = [];
          this.#open(this.against);
        } else if (this.#holdsSomething(this.#side)) {
          this.parted = true;
          this.#newSide();
        }
        return n;
      case 'with':
        return this.#with(atom.without, atoms, n);
      case 'from':
        if (isAmount(atoms[n + 1]) || atoms.slice(n + 1).some(isAmount)) {
          const segment: Atom[] = [];
          this.tried.push(segment);
          this.#open(segment);
        }
        return n;
      case 'at': {
        const end = atoms.findIndex((one, k) => k > n && one.is === 'amount');
        // `at this height` is part of a name.
        const plain =
          end > n && end <= n + 4 && atoms.slice(n + 1, end).every((one) => one.is === 'word' || one.is === 'place' || one.is === 'break');
        if (!plain) return n;
        const after = atoms[end + 1];
        // `at 0.9 g braking 0.3 g`: the word is the next amount's.
        const last = after?.is === 'word' && this.#manners.isCondition(after.word) && !isAmount(atoms[end + 2]) ? end + 1 : end;
        this.conditions.push(atoms.slice(n + 1, last + 1).filter((one) => one.is !== 'break'));
        return last;
      }
      case 'for':
        if (this.goal === undefined && this.#manners.find && atoms.slice(n + 1).some((one) => one.is === 'amount')) {
          this.goal = [];
          this.#open(this.goal);
        }
        return n;
      case 'everything':
        this.everything = true;
        return n;
      case 'over':
      case 'to':
        return n;
      case 'break':
        if (this.#manners.compare && this.#target === this.#side.atoms && this.#isSized(atoms[n - 1]) && this.#isSized(atoms[n + 1])) {
          this.#newSide();
          return n;
        }
        this.#target.push(atom);
        return n;
      default:
        this.#target.push(atom);
        return n;
    }
  }
  #isSized(atom: Atom | undefined): boolean {
    return atom?.is === 'subject' || (atom?.is === 'text' && atom.kind === 'size');
  }
  #with(without: boolean, atoms: readonly Atom[], n: number): number {
    const next = atoms[n + 1];
    if (
      this.#manners.compare &&
      !without &&
      (next?.is === 'subject' || next?.is === 'text') &&
      this.#holdsSomething(this.#side) &&
      this.tried.length === 0
    ) {
      this.parted = true;
      this.#newSide();
      return n;
    }
    const segment: Atom[] = [];
    (without ? this.without : this.tried).push(segment);
    this.#open(segment);
    return n;
  }
  #subject(atom: Extract<Atom, { is: 'subject' }>, atoms: readonly Atom[], n: number): void {
    // compare me @robin: two names side by side are two sides.
    const second =
      this.#manners.compare &&
      !atom.on &&
      this.#side.subjects.length > 0 &&
      this.#target === this.#side.atoms &&
      atoms[n - 1]?.is === 'subject';
    if (second) this.#newSide();
    this.#side.subjects.push({ subject: atom.subject, name: atom.name });
  }
}
export function cut(atoms: readonly Atom[], manners: Manners, within = false): Sections {
  // One pair of alternatives a line: two would be four sides.
  const two = within ? undefined : alternatives(atoms);
  if (two) {
    // What was asked is the difference, which two sides show: `how much stiffer` says nothing more than `how stiff`.
    const around = (part: readonly Atom[]) =>
      part.map((one): Atom => (one.is === 'word' && /^(?:stiffer|softer)$/.test(one.word) ? { ...one, word: 'stiff' } : one));
    const [a, b] = two.ways.map((way) =>
      cut([...around(atoms.slice(0, two.start)), ...way, ...around(atoms.slice(two.end))], manners, true),
    );
    if (!a || !b) throw new Error('alternatives are two');
    // What is tried differs between the sides, so it belongs to them.
    const side = (one: Sections): Side => ({
      atoms: [...(one.sides[0]?.atoms ?? []), ...one.tried.flatMap((segment) => [{ is: 'break', joint: ',' } as const, ...segment])],
      subjects: one.sides[0]?.subjects ?? [],
    });
    return { ...a, sides: [side(a), side(b)], tried: [], parted: true };
  }
  const cutter = new Cutter(manners);
  cutter.take(atoms);
  return {
    sides: cutter.sides,
    tried: cutter.tried,
    without: cutter.without,
    conditions: cutter.conditions,
    everything: cutter.everything,
    parted: cutter.parted,
    ...(cutter.goal ? { goal: cutter.goal } : {}),
    ...(cutter.against ? { against: cutter.against } : {}),
  };
}
