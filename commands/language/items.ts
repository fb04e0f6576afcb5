/** A line that speaks of the catalogs: its sections read, what is still open settled by what depends on what, and put together as a reading. */
import { isInput } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import { beyondStop, findBeyond } from '../beyond.js';
import type { Choice, Clause, Item, Reading, Stop } from '../reading.js';
import type { Token } from '../scan.js';
import { dimensionWords, everydayUnits, fromSI, meaningsOf } from '../units.js';
import { askOne, nearestLine, sentence } from './asking.js';
import type { Atom } from './atom.js';
import { type Atoms, atomsOf } from './atoms.js';
import { plainest } from './likeliest.js';
import { Names } from './names.js';
import { cut, type Sections } from './sections.js';
import type { Setting } from './setting.js';
import type { Candidate, Ground, Mode, Slot, Trouble } from './slots.js';
import { readings } from './spans.js';
import { atomText } from './values.js';
import { keyOf, type Vocabulary, vocabularyOf } from './vocabulary.js';
import { writeReading } from './write.js';

export interface Asked {
  readonly verb: string | undefined;
  readonly changes: boolean;
  readonly topic: boolean;
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly names: readonly string[];
  readonly echo?: string;
  /** `what would mine need to have moths front share`: the line is a goal. */
  readonly goalOnly?: boolean;
  /** The topic's word, where the line begins with it. */
  readonly about?: string;
}
type Draft = Omit<Reading, 'rest' | 'echoes' | 'mended'>;
/** A run of spans with its part in the line. */
interface Part {
  readonly part: 'side' | 'tried' | 'without' | 'condition' | 'goal' | 'against';
  readonly side: number;
  readonly slots: readonly Slot[];
}
const mostSides = 6;
const recordVerbs: ReadonlySet<string> = new Set(['set', 'save', 'forget', 'find', 'try']);

class ItemsReader {
  readonly #asked: Asked;
  readonly #setting: Setting;
  readonly #vocabulary: Vocabulary;
  readonly #ground: Ground;
  readonly #atoms: Atoms;
  readonly #echoes: string[];
  #sections: Sections;
  #parts: Part[] = [];

  constructor(asked: Asked, setting: Setting) {
    this.#asked = asked;
    this.#setting = setting;
    this.#vocabulary = vocabularyOf(setting.catalog);
    this.#ground = { vocabulary: this.#vocabulary, preferences: setting.preferences, ...(asked.about ? { topic: asked.about } : {}) };
    const { phrases } = this.#vocabulary;
    const isCondition = (word: string) =>
      phrases.get(word)?.some(({ entry }) => entry.scope === 'question' && entry.kind === 'quantity') ?? false;
    const manners = {
      find: asked.verb === 'find' && !asked.goalOnly,
      draw: asked.verb === 'draw',
      compare: asked.verb === 'compare',
      isCondition,
    };
    const names = new Names(setting, this.#vocabulary);
    const atoms = atomsOf(asked.tokens, this.#vocabulary, names, manners);
    this.#atoms = this.#withMe(atoms, names, manners.compare);
    this.#echoes = [...(asked.echo ? [asked.echo] : []), ...this.#atoms.echoes];
    this.#sections = sharedUnit(
      cut(this.#atoms.atoms, {
        ...manners,
        compare: manners.compare || this.#atoms.atoms.some((atom) => atom.is === 'between'),
      }),
    );
  }
  /** `me`, `mine` and `now` are sides of a comparison only. */
  #withMe(atoms: Atoms, names: Names, compare: boolean): Atoms {
    const [first] = this.#asked.tokens;
    const word = first?.is === 'word' ? first.text : '';
    if (!compare && !atoms.atoms.some((atom) => atom.is === 'between')) return atoms;
    const out: Atom[] = [];
    if (word === 'me' || word === 'mine') out.push({ is: 'subject', subject: names.me, name: 'me', on: false, possessive: false });
    if (word === 'now') out.push({ is: 'subject', subject: { is: 'now' }, name: 'now', on: false, possessive: false });
    const last = this.#asked.tokens.at(-1);
    const end = last?.is === 'word' && this.#asked.tokens.length > 1 ? last.text : '';
    const tail: Atom[] =
      end === 'me' || end === 'mine'
        ? [{ is: 'subject', subject: names.me, name: 'me', on: false, possessive: false }]
        : end === 'now'
          ? [{ is: 'subject', subject: { is: 'now' }, name: 'now', on: false, possessive: false }]
          : [];
    return { ...atoms, atoms: [...out, ...atoms.atoms, ...tail] };
  }
  read(): Reading | Stop {
    const conversion = this.#conversion();
    if (conversion) return conversion;
    const beyond = findBeyond(this.#atoms.stems, this.#vocabulary);
    if (beyond) return this.#plainlyWrong() ?? beyondStop(beyond.subject);
    if (this.#atoms.unknown.length > 0) return this.#unknown(this.#atoms.unknown);

    const empty = this.#nothingNamed();
    if (empty) return empty;
    if (this.#sections.sides.length > mostSides)
      return {
        stop: 'refused',
        sentence: `That is ${this.#sections.sides.length} sides; I put up to ${mostSides} side by side.`,
        line: 'compare 205/50R15 vs 225/45R15',
      };
    const twice = this.#readParts();
    if (twice) return twice;
    const trouble = this.#trouble();
    if (trouble) return trouble;
    const open = this.#goalless() ?? this.#settle() ?? this.#orders();
    if (open) return open;
    const draft = this.#draft();
    return this.#check(draft) ?? this.#finish(draft);
  }

  // -- reading the parts

  #mode(part: Part['part']): Mode {
    const { verb, goalOnly } = this.#asked;
    if (part === 'goal') return 'goal';
    if (part === 'condition') return 'condition';
    if (part === 'against') return 'record';
    if (goalOnly) return 'ask';
    return verb !== undefined && recordVerbs.has(verb) && part === 'side' ? 'record' : 'ask';
  }
  #readParts(): Stop | undefined {
    const { sides, tried, without, conditions, goal, against } = this.#sections;
    const all: { part: Part['part']; side: number; atoms: readonly Atom[] }[] = [
      ...sides.map((side, n) => ({ part: 'side' as const, side: n, atoms: side.atoms })),
      ...tried.map((atoms) => ({ part: 'tried' as const, side: 0, atoms })),
      ...without.map((atoms) => ({ part: 'without' as const, side: 0, atoms })),
      ...conditions.map((atoms) => ({ part: 'condition' as const, side: 0, atoms })),
      ...(goal ? [{ part: 'goal' as const, side: 0, atoms: goal }] : []),
      ...(against ? [{ part: 'against' as const, side: 0, atoms: against }] : []),
    ];
    this.#parts = [];
    let open: { readonly at: number; readonly ways: readonly (readonly Slot[])[] } | undefined;
    for (const { part, side, atoms } of all) {
      const ways = readings(this.#shared(part, side, atoms), this.#mode(part), this.#ground);
      const [first, second] = ways;
      if (first === undefined) {
        if (atoms.every((atom) => atom.is === 'break')) continue;
        return {
          stop: 'refused',
          sentence: `I can't tell what "${this.#asked.text}" names.`,
          line: nearestLine(this.#atoms, this.#vocabulary),
        };
      }
      if (second && !first.some((slot) => slot.trouble)) open ??= { at: this.#parts.length, ways };
      this.#parts.push({ part, side, slots: first });
    }
    return open && this.#eitherWay(open.at, open.ways);
  }
  /** A side that has an amount but no words takes them from the side before it: `front spring 450 vs 500`. */
  #shared(part: Part['part'], side: number, atoms: readonly Atom[]): readonly Atom[] {
    if (part !== 'side' || this.#sections.sides.length < 2 || atoms.some((atom) => atom.is === 'word')) return atoms;
    if (!atoms.some((atom) => atom.is === 'amount')) return atoms;
    const other = this.#sections.sides.find(
      (one, n) =>
        n !== side && one.atoms.some((atom) => atom.is === 'word') && one.atoms.filter((atom) => atom.is === 'amount').length === 1,
    );
    if (!other) return atoms;
    const placed = atoms.some((atom) => atom.is === 'place');
    return [...other.atoms.filter((atom) => atom.is === 'word' || (atom.is === 'place' && !placed)), ...atoms];
  }
  #eitherWay(at: number, ways: readonly (readonly Slot[])[]): Stop | undefined {
    const choices: Choice[] = [];
    const before = this.#parts;
    for (const slots of ways.slice(0, 4)) {
      this.#parts = before.map((part, n) => (n === at ? { ...part, slots } : part));
      const line = writeReading(this.#draft(), this.#setting);
      if (!choices.some((choice) => choice.line === line)) choices.push({ label: line, line });
    }
    this.#parts = before;
    return choices.length < 2
      ? undefined
      : { stop: 'asked', sentence: `"${this.#asked.text}" can be read in ${choices.length} ways.`, choices };
  }

  // -- what stops a line

  /** No word at all, or amounts alone: nothing says what of. */
  #nothingNamed(): Stop | undefined {
    const { atoms } = this.#atoms;
    const { verb } = this.#asked;
    if (atoms.every((atom) => atom.is === 'break' || atom.is === 'to') && verb === undefined)
      return { stop: 'refused', sentence: 'I find no words to go by in that.', line: 'help' };
    const sum = this.#sum();
    if (sum) return sum;
    if (verb !== undefined || atoms.some((atom) => atom.is !== 'amount' && atom.is !== 'place' && atom.is !== 'break')) return undefined;
    const words = atoms.flatMap((atom) => (atom.is === 'amount' ? [atomText(atom)] : atom.is === 'place' ? [atom.word] : []));
    const amount = atoms.find((atom) => atom.is === 'amount');
    return this.#ofWhat({ kind: 'alone', why: () => words.join(' '), ...(amount?.is === 'amount' ? { amount } : {}) });
  }
  /** `450 lb/in + 8 kg`: amounts of two kinds can't be added. */
  #sum(): Stop | undefined {
    const { atoms } = this.#atoms;
    for (let n = 1; n + 1 < atoms.length; n++) {
      const [a, plus, b] = [atoms[n - 1], atoms[n], atoms[n + 1]];
      if (a?.is !== 'amount' || plus?.is !== 'break' || plus.joint !== '+' || b?.is !== 'amount' || !a.token.unit || !b.token.unit)
        continue;
      const [one, other] = [meaningsOf(a.token.unit), meaningsOf(b.token.unit)];
      if (one.some(({ dimension }) => other.some((second) => second.dimension === dimension))) continue;
      const first = one[0]!.dimension;
      const like =
        first === 'rate' && /^kgs?$/.test(b.token.unit) ? 'kg/mm' : (everydayUnits(first, this.#setting.preferences)[0]?.shown ?? '');
      const words = (list: typeof one) => list.map(({ dimension }) => dimensionWords[dimension])[0] ?? 'a number';
      return {
        stop: 'refused',
        sentence: `${b.token.text} is ${words(other)} and can't be added to ${words(one)}.`,
        line: `calc ${a.token.text} + ${b.token.value} ${like}`,
      };
    }
    return undefined;
  }

  #unknown(unknown: readonly string[]): Stop {
    const [typed, more] = unknown;
    const near = typed === undefined || more !== undefined ? undefined : this.#atoms.near.get(typed);
    if (typed !== undefined && near !== undefined && near.length <= 4) {
      // It could be either: offered, never guessed.
      const choices = near.map((word) => {
        const line = `${this.#asked.verb ?? ''} ${this.#asked.text.replace(typed, word)}`.trim();
        return { label: line, line };
      });
      return { stop: 'asked', sentence: `I don't know "${typed}". Did you mean:`, choices };
    }
    const named = [...new Set(unknown)].slice(0, 4).map((word) => `"${word}"`);
    const list = named.length > 1 ? `${named.slice(0, -1).join(', ')} or ${named.at(-1)}` : named[0];
    return { stop: 'refused', sentence: `I don't know ${list}.`, line: nearestLine(this.#atoms, this.#vocabulary) };
  }
  /** In a line about what is not built, a fact that is wrong whatever it is for: `wheelbase 0`, `track 58 lb, what's my roll stiffness`. */
  #plainlyWrong(): Stop | undefined {
    for (const segment of segments(this.#atoms.atoms)) {
      const [slots = []] = readings(segment, 'ask', this.#ground, false);
      const apart = slots.length === 1;
      for (const { trouble } of slots)
        if (
          trouble?.entry &&
          (trouble.kind === 'negative' || (trouble.kind === 'dimension' && apart && trouble.amount?.token.unit !== '%'))
        ) {
          this.#parts = [{ part: 'side', side: 0, slots }];
          return this.#refusal(trouble);
        }
    }
    return undefined;
  }
  #slots(): readonly Slot[] {
    return this.#parts.flatMap((part) => part.slots);
  }
  #trouble(): Stop | undefined {
    const all = this.#slots().flatMap((slot) => (slot.trouble ? [{ slot, trouble: slot.trouble }] : []));
    const troubles = this.#sections.everything ? all.filter(({ trouble }) => trouble.kind !== 'alone') : all;
    // The worst first: what can't be at all, then what is not understood, then what is only not enough.
    const order: readonly Trouble['kind'][] = ['negative', 'dimension', 'range', 'unit', 'word', 'place', 'kind', 'alone'];
    const below = ({ trouble }: (typeof troubles)[number]) => ((trouble.amount?.token.value ?? 0) < 0 ? 0 : 1);
    const [worst] = troubles.sort((a, b) => order.indexOf(a.trouble.kind) - order.indexOf(b.trouble.kind) || below(a) - below(b));
    return worst && this.#refusal(worst.trouble, worst.slot.text());
  }
  #refusal(trouble: Trouble, text = ''): Stop {
    const line = this.#lineInstead(trouble);
    const { entry } = trouble;
    switch (trouble.kind) {
      case 'unit':
        return this.#whichUnit(trouble);
      case 'word':
        return {
          stop: 'refused',
          sentence: `I can't tell what "${text}" is about here.`,
          line: nearestLine(this.#atoms, this.#vocabulary),
        };
      case 'alone':
        return this.#ofWhat(trouble);
      case 'place':
        return { stop: 'refused', sentence: `${sentence(trouble.why())}.`, ...(line ? { line } : {}) };
      case 'negative':
        return { stop: 'refused', sentence: `${text === '' ? '' : `"${text}": `}${trouble.why()}.`, ...(line ? { line } : {}) };
      default:
        return {
          stop: 'refused',
          sentence: `${sentence(trouble.why())}.`,
          ...(line ? { line } : entry ? { line: `show ${this.#vocabulary.nameOf(entry)}` } : {}),
        };
    }
  }
  #ofWhat(trouble: Trouble): Stop {
    const say = /\d/.test(trouble.why()) ? `${trouble.why()} of what?` : `${sentence(trouble.why())}: of what?`;
    const example = /^(?:front|rear|left|right)$/.test(trouble.why()) ? `show everything ${trouble.why()}` : 'set front spring 450 lb/in';
    return { stop: 'asked', sentence: `${say} Say it with a word: ${example}`, choices: [] };
  }
  #whichUnit(trouble: Trouble): Stop {
    const { entry, amount, units = [] } = trouble;
    if (!entry?.dimension || !amount || units.length === 0) return { stop: 'asked', sentence: `${sentence(trouble.why())}.`, choices: [] };
    const choices = units.slice(0, 4).map((unit): Choice => {
      const one = meaningsOf(unit.toLowerCase()).find((meaning) => meaning.dimension === entry.dimension)?.unit;
      const value = one ? amount.token.value * one.factor + (one.offset ?? 0) : amount.token.value;
      const line = this.#lineWith(trouble, value);
      return { label: `${amount.token.value} ${unit}`, line: line ?? '' };
    });
    return { stop: 'asked', sentence: `${sentence(trouble.why())}`, choices: choices.filter((choice) => choice.line !== '') };
  }
  /** The line with the span in trouble put right: the same number in the unit that was wanted, or a usual amount. */
  #lineInstead(trouble: Trouble): string | undefined {
    const { entry, amount } = trouble;
    if (!entry?.dimension || !isInput(entry) || !entry.sane) return undefined;
    const [low, high] = entry.sane;
    const { preferences } = this.#setting;
    const unit = everydayUnits(entry.dimension, preferences)[0]!;
    const same = amount ? Math.abs(amount.token.value) * unit.factor + (unit.offset ?? 0) : Number.NaN;
    const fits = same >= low && same <= high && (low < 0 || same > 0);
    const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
    const shown = Number(fromSI(middle, unit).toPrecision(2)) * unit.factor + (unit.offset ?? 0);
    return this.#lineWith(trouble, fits ? same : shown);
  }
  #lineWith(trouble: Trouble, value: number): string | undefined {
    const { entry, places = [] } = trouble;
    if (!entry) return undefined;
    const all = placesOf(entry.scope);
    const some = places.length === all.length && !entry.alike && all.length > 1 ? [all[0] ?? ''] : places;
    const item: Item = { entry, places: some, placed: all.length === 1 || some.length < all.length, said: { value, text: '' } };
    const draft = this.#draft(new Map([[trouble, item]]));
    return writeReading(draft, this.#setting);
  }
  #conversion(): Reading | undefined {
    const { wantedUnit, atoms } = this.#atoms;
    const { verb, changes } = this.#asked;
    if (wantedUnit === undefined || changes || (verb !== undefined && verb !== 'calc' && verb !== 'show' && verb !== 'spring'))
      return undefined;
    const amounts = atoms.flatMap((atom) => (atom.is === 'amount' ? (atom.list ?? [atom.token, ...(atom.to ? [atom.to] : [])]) : []));
    if (amounts.length === 0 || !this.#setting.commands.some(({ word }) => word === 'calc')) return undefined;
    const wanted = meaningsOf(wantedUnit).map((one) => one.dimension);
    if (!amounts.every((token) => token.unit === undefined || meaningsOf(token.unit).some((one) => wanted.includes(one.dimension))))
      return undefined;
    // A figure is asked for, or a place is spoken of: then it is no plain conversion.
    const words = atoms.flatMap((atom) => (atom.is === 'word' ? [atom.word] : []));
    if (words.length > 1 || atoms.some((atom) => atom.is === 'subject' || atom.is === 'place' || atom.is === 'at' || atom.is === 'with'))
      return undefined;
    const names = amounts.map((token) => token.text);
    return { verb: 'calc', sides: [], tried: [], wantedUnit, names, rest: this.#asked.text, echoes: this.#echoes, mended: false };
  }

  // -- settling what is still open

  /** Entries that several candidates leave open: those that a figure of the line depends on come first; what stays open is asked. */
  /** `22 mm bar, how stiff`: a figure that nothing told can move is meant of what was told, if its words and those name one that can be. */
  #ofTheTold(): void {
    const told = this.#slots().filter((slot) => slot.candidates.some(({ item }) => item.said !== undefined && isInput(item.entry)));
    if (told.length === 0) return;
    const reached = (item: Item) =>
      told.some((slot) => slot.candidates.some((one) => one.item.entry.scope !== 'question' && this.#reaches(item, one.item)));
    const instead = (slot: Slot): Slot => {
      const { candidates, words } = slot;
      if (!words?.length || candidates.length === 0 || candidates.some(({ item }) => isInput(item.entry) || reached(item))) return slot;
      for (const other of told) {
        const found = this.#vocabulary.phrases.get(keyOf([...new Set([...words, ...(other.words ?? [])])])) ?? [];
        for (const { entry } of found) {
          if (isInput(entry)) continue;
          const places = placesOf(entry.scope);
          const item: Item = { entry, places, placed: places.length === 1 };
          if (reached(item)) return { ...slot, candidates: [{ item, unlikely: false }] };
        }
      }
      return slot;
    };
    this.#parts = this.#parts.map((part) => ({ ...part, slots: part.slots.map(instead) }));
  }
  #settle(): Stop | undefined {
    this.#ofTheTold();
    const figures = this.#slots().flatMap((slot) =>
      slot.candidates.length === 1 && !isInput(slot.candidates[0]!.item.entry) ? [slot.candidates[0]!.item] : [],
    );
    const inputs = this.#slots().flatMap((slot) =>
      slot.candidates.length === 1 && isInput(slot.candidates[0]!.item.entry) ? [slot.candidates[0]!.item] : [],
    );
    this.#parts = this.#parts.map((part) => ({
      ...part,
      slots: part.slots.map((slot) =>
        slot.candidates.length < 2 ? slot : { ...slot, candidates: this.#narrow(slot, part, figures, inputs) },
      ),
    }));
    const slot = this.#slots().find((one) => one.candidates.length > 1);
    return slot && this.#askOf(slot);
  }
  #askOf(slot: Slot): Stop {
    const choices = slot.candidates.slice(0, 4).map((candidate): Choice => {
      const line = writeReading(this.#draftWith(slot, candidate), this.#setting);
      return { label: line, line };
    });
    return askOne(slot, slot.candidates.length, choices);
  }
  /** A pair with a stroke, or four readings told in a row: which is which is asked of a change. */
  #orders(): Stop | undefined {
    const changes =
      this.#asked.verb === 'set' || this.#asked.verb === 'try' || this.#asked.verb === 'save' || this.#asked.verb === undefined;
    for (const slot of this.#slots()) {
      const [candidate] = slot.candidates;
      const each = candidate?.each;
      if (!candidate || !each || candidate.item.entry.scope === 'gear') continue;
      if (each.length !== 2 && !(changes && this.#asked.verb !== undefined)) continue;
      const swapped = each.length === 2 ? [1, 0] : [0, 2, 1, 3].map((n) => n);
      const lines = [each, swapped.map((n) => each[n]!)].map((said) =>
        writeReading(this.#draftWith(slot, { ...candidate, each: said }), this.#setting),
      );
      const which = each.length === 2 ? 'Front and rear: which is which?' : 'Which reading is of which wheel?';
      return { stop: 'asked', sentence: which, choices: lines.map((line) => ({ label: line, line })) };
    }
    return undefined;
  }
  #reaches(figure: Item, input: Item): boolean {
    return figure.places.some((f) =>
      input.places.some((i) => this.#setting.catalog.dependsOn(pathAt(f, figure.entry), pathAt(i, input.entry))),
    );
  }
  #narrow(slot: Slot, part: Part, figures: readonly Item[], inputs: readonly Item[]): readonly Candidate[] {
    let left = slot.candidates;
    const keep = (test: (one: Candidate) => boolean) => {
      const some = left.filter(test);
      if (some.length > 0) left = some;
    };
    const told = (one: Candidate) => one.item.said !== undefined && isInput(one.item.entry);
    const reached = (one: Candidate) => figures.some((figure) => this.#reaches(figure, one.item));
    // What would change nothing of what is asked is not what was meant.
    if (!slot.words?.length && left.some(told) && figures.length > 0 && !left.some(reached)) return left;
    if (left.some(told)) keep(reached);
    else if (inputs.length > 0) keep((one) => inputs.every((input) => input.entry.scope === 'question' || this.#reaches(one.item, input)));
    // A bare fraction that needs no unit to be sane is the ratio that it looks like: at .65.
    keep(
      (one) =>
        part.part === 'condition' &&
        one.item.entry.dimension === 'ratio' &&
        typeof one.item.said?.value === 'number' &&
        !Number.isInteger(one.item.said.value),
    );
    // What is said with a bare amount at `at` is a condition, if it can be one.
    if (part.part === 'condition' || this.#asked.topic || this.#asked.verb === undefined || this.#asked.verb === 'show')
      keep((one) => one.item.entry.scope === 'question');
    // at .65, said of a spring, is the spring's.
    if (left.length > 1 && part.part === 'condition')
      keep((one) =>
        inputs.some((input) => input.entry !== one.item.entry && input.entry.path.split('.')[0] === one.item.entry.path.split('.')[0]),
      );
    if (left.length > 1) left = plainest(left, this.#asked.changes || this.#asked.verb === 'try', this.#vocabulary);
    // A weight of a new car is the car's.
    if (this.#asked.verb === 'save' || this.#asked.verb === 'set')
      keep((one) => one.item.entry.words?.[0] === 'weight' && one.item.entry.scope === 'car');
    return left;
  }
  #draftWith(slot: Slot, candidate: Candidate): Draft {
    const before = this.#parts;
    this.#parts = before.map((part) => ({
      ...part,
      slots: part.slots.map((one) =>
        one === slot
          ? { ...one, candidates: [candidate] }
          : one.candidates.length > 1
            ? { ...one, candidates: one.candidates.slice(0, 1) }
            : one,
      ),
    }));
    const draft = this.#draft();
    this.#parts = before;
    return draft;
  }

  // -- putting it together

  #itemsOf(part: Part, instead: ReadonlyMap<Trouble, Item>): Item[] {
    return part.slots.flatMap((slot) => {
      const other = slot.trouble && instead.get(slot.trouble);
      if (other) return [other];
      const [candidate] = slot.candidates;
      if (!candidate) return [];
      const { item, each } = candidate;
      if (!each) return [item];
      return each.map((said, n): Item => ({ entry: item.entry, places: [placesOf(item.entry.scope)[n] ?? ''], placed: true, said }));
    });
  }
  #draft(instead: ReadonlyMap<Trouble, Item> = new Map()): Draft {
    const { verb, topic, goalOnly } = this.#asked;
    const sections = this.#sections;
    const sides = sections.sides.map((side, n) => ({
      subjects: side.subjects.map(({ subject }) => subject),
      items: this.#parts.filter((part) => part.part === 'side' && part.side === n).flatMap((part) => this.#itemsOf(part, instead)),
    }));
    const of = (which: Part['part']) => this.#parts.filter((part) => part.part === which).flatMap((part) => this.#itemsOf(part, instead));
    const tried: Item[] = [...of('condition')];
    const asked: Item[] = [];
    const present = (item: Item, word: string): Item => {
      if (item.said !== undefined || item.entry.kind !== 'choice') return item;
      const option = item.entry.options?.find((one) => item.entry.optionWords?.[one]?.includes(word));
      return option === undefined ? item : { ...item, said: { value: option, text: option } };
    };
    for (const item of [...of('tried').map((one) => present(one, 'with')), ...of('without').map((one) => present(one, 'without'))]) {
      if (isInput(item.entry) && item.said !== undefined) tried.push(item);
      else asked.push(item);
    }
    let goal = of('goal')[0];
    if (goal && isInput(goal.entry)) {
      tried.push(goal);
      goal = undefined;
    }
    const against = of('against')[0];
    let made: Clause[] = sides;
    const factsStay =
      verb === 'set' || verb === 'save' || verb === 'try' || verb === 'compare' || verb === 'forget' || topic || made.length > 1;
    const figureAsked = made.some((side) => side.items.some((item) => item.said === undefined)) || asked.length > 0;
    if (!factsStay && (figureAsked || verb !== undefined)) {
      // A question with facts: they are for this answer.
      tried.unshift(...made.flatMap((side) => side.items.filter((item) => item.said !== undefined)));
      made = made.map((side) => ({ ...side, items: side.items.filter((item) => item.said === undefined) }));
    } else {
      const conditions = made.flatMap((side) => side.items.filter((item) => item.said !== undefined && item.entry.scope === 'question'));
      tried.push(...conditions);
      if (conditions.length > 0) made = made.map((side) => ({ ...side, items: side.items.filter((item) => !conditions.includes(item)) }));
    }
    if (made.length > 1) made = this.#sharedFigures(made);
    if (asked.length > 0) made = made.map((side) => ({ ...side, items: [...asked, ...side.items] }));
    if (goalOnly) {
      goal = made[0]?.items[0];
      made = made.map((side) => ({ ...side, items: [] }));
    }
    const placed = this.#placed({ sides: made, tried, ...(goal ? { goal } : {}), ...(against ? { against } : {}) });
    const twoSided = made.length > 1 && sections.parted;
    const verbNow = this.#verbFor(verb, placed, twoSided, goal);
    const places = this.#placesAlone();
    return {
      verb: verbNow,
      sides: placed.sides,
      tried: placed.tried,
      names: this.#asked.names,
      ...(placed.goal ? { goal: placed.goal } : {}),
      ...(placed.against ? { against: placed.against } : {}),
      ...(this.#atoms.wantedUnit ? { wantedUnit: this.#atoms.wantedUnit } : {}),
      ...(this.#atoms.evidence ? { evidence: this.#atoms.evidence } : {}),
      ...(sections.everything ? { everything: { places } } : {}),
    };
  }
  #verbFor(verb: string | undefined, placed: Pick<Draft, 'sides'>, two: boolean, goal: Item | undefined): string | undefined {
    if (verb === 'find' && !goal) {
      const figure = placed.sides.some((side) => side.items.some((item) => !isInput(item.entry)));
      if (figure) return 'show';
    }
    if (two && (verb === undefined || verb === 'show' || verb === 'try')) return 'compare';
    return verb;
  }
  /** Figures that were named on one side are asked of all. */
  #sharedFigures(sides: readonly Clause[]): Clause[] {
    const figures: Item[] = [];
    for (const item of sides.flatMap((side) => side.items))
      if (item.said === undefined && !figures.some((one) => one.entry === item.entry && one.places.join() === item.places.join()))
        figures.push(item);
    return sides.map((side) => ({ ...side, items: [...figures, ...side.items.filter((item) => item.said !== undefined)] }));
  }
  #placesAlone(): readonly string[] {
    const places = this.#atoms.atoms.flatMap((atom) => (atom.is === 'place' && !atom.all ? [atom] : []));
    const [only] = places;
    if (!only) return [];
    const [axle] = only.places.filter((place) => place === 'front' || place === 'rear');
    return axle === undefined ? only.places : [axle];
  }
  /** Places that one part of the line says and another leaves open: the gear, the axle of the figure or of what is tried. */
  #placed(draft: Pick<Draft, 'sides' | 'tried' | 'goal' | 'against'>): Pick<Draft, 'sides' | 'tried' | 'goal' | 'against'> {
    const { verb } = this.#asked;
    const items = [...draft.sides.flatMap((side) => side.items), ...draft.tried, ...(draft.goal ? [draft.goal] : [])];
    const gears = new Set(this.#atoms.atoms.flatMap((atom) => (atom.is === 'gear' ? [atom.gear] : [])));
    const [gear] = gears.size === 1 ? [...gears] : [];
    const ends = (item: Item): string | undefined => {
      if (!item.placed || (item.entry.scope !== 'axle' && item.entry.scope !== 'corner')) return undefined;
      const axles = new Set(item.places.map((place) => (place === 'front' || place === 'lf' || place === 'rf' ? 'front' : 'rear')));
      return axles.size === 1 ? [...axles][0] : 'both';
    };
    const said = new Set(items.map(ends).filter((end) => end !== undefined));
    const [end] = said.size === 1 && !said.has('both') ? [...said] : [];
    const question =
      verb !== 'set' &&
      verb !== 'save' &&
      verb !== 'try' &&
      verb !== 'forget' &&
      (verb !== undefined || items.some((item) => item.said === undefined)) &&
      !this.#asked.topic;
    const kinds = items.filter(
      (item) => item.placed && item.entry.scope === 'axle' && item.entry.kind === 'choice' && item.said !== undefined,
    );
    const [kindAt] = kinds.length === 1 && kinds[0]?.places.length === 1 ? kinds[0].places : [];
    const place = (item: Item): Item => {
      if (item.placed) return item;
      if (item.entry.scope === 'gear' && gear !== undefined) return { ...item, places: [gear], placed: true };
      // `rear axle beam, spring base 40 in`: what is said of an axle's kind is of that axle.
      if (kindAt !== undefined && item.entry.scope === 'axle' && item.said !== undefined)
        return { ...item, places: [kindAt], placed: true };
      if (!question || end === undefined || item.entry.alike) return item;
      if (item.entry.scope === 'axle') return { ...item, places: [end], placed: true };
      if (item.entry.scope === 'corner') return { ...item, places: end === 'front' ? ['lf', 'rf'] : ['lr', 'rr'], placed: true };
      return item;
    };
    return {
      sides: draft.sides.map((side) => ({ ...side, items: side.items.map(place) })),
      tried: draft.tried.map(place),
      ...(draft.goal ? { goal: place(draft.goal) } : {}),
      ...(draft.against ? { against: place(draft.against) } : {}),
    };
  }

  // -- is it enough, and is it one thing?

  #check(draft: Draft): Stop | undefined {
    return this.#amountless(draft) ?? this.#places(draft) ?? this.#twice(draft);
  }
  #amountless(draft: Draft): Stop | undefined {
    const { verb } = draft;
    const items = draft.sides.flatMap((side) => side.items);
    if (verb === 'set' || verb === 'save') {
      const bare = items.find((item) => item.said === undefined);
      if (bare && !isInput(bare.entry))
        return {
          stop: 'refused',
          sentence: `${sentence(bare.entry.name)} is worked out, not told.`,
          line: `why ${this.#vocabulary.nameOf(bare.entry)}`,
        };
      if (bare) return this.#howMuch(draft, bare);
      if (items.length === 0 && verb === 'set')
        return { stop: 'refused', sentence: 'Set what, to how much?', line: 'set front spring 450 lb/in' };
    }
    if (verb === 'find' && !draft.goal && !this.#asked.goalOnly) {
      return { stop: 'refused', sentence: 'Find it for how much of what?', line: this.#exampleGoal(items[0]) };
    }
    if (verb === 'compare' && draft.sides.every((side) => side.items.length === 0 && side.subjects.length === 0))
      return { stop: 'refused', sentence: 'Compare what with what?', line: 'compare 245/40R17 vs 255/40R17' };
    return undefined;
  }
  /** Something sought and no purpose: which of several it may be does not matter yet. */
  #goalless(): Stop | undefined {
    if (this.#asked.verb !== 'find' || this.#asked.goalOnly || this.#sections.goal) return undefined;
    const candidates = this.#slots().flatMap((slot) => slot.candidates.map(({ item }) => item));
    if (candidates.length === 0 || candidates.some((item) => !isInput(item.entry))) return undefined;
    return { stop: 'refused', sentence: 'Find it for how much of what?', line: this.#exampleGoal(candidates[0]) };
  }
  /** A line that seeks the same input for a usual amount of a figure that it moves. */
  #exampleGoal(sought: Item | undefined): string {
    const fallback = 'find front spring for front ride frequency 2 Hz';
    if (!sought || !isInput(sought.entry)) return fallback;
    const all = placesOf(sought.entry.scope);
    const input: Item = sought.placed || all.length === 1 ? sought : { ...sought, places: [all[0] ?? ''], placed: true };
    // A figure of the same kind of place is the nearest.
    const figures = this.#setting.catalog.entries.filter((entry) => entry.kind === 'figure' && entry.words && entry.typical);
    for (const entry of [...figures].sort((a, b) => Number(b.scope === sought.entry.scope) - Number(a.scope === sought.entry.scope))) {
      if (!entry.typical) continue;
      for (const place of placesOf(entry.scope)) {
        const goal: Item = { entry, places: [place], placed: true };
        if (!this.#reaches(goal, input)) continue;
        const [low, high] = entry.typical.range;
        const unit = everydayUnits(entry.dimension ?? 'ratio', this.#setting.preferences)[0]!;
        const value = Number(fromSI((low + high) / 2, unit).toPrecision(2)) * unit.factor + (unit.offset ?? 0);
        return writeReading(
          { verb: 'find', sides: [{ items: [input], subjects: [] }], goal: { ...goal, said: { value, text: '' } }, tried: [], names: [] },
          this.#setting,
        );
      }
    }
    return fallback;
  }
  #howMuch(draft: Draft, bare: Item): Stop {
    const example = this.#exampleFor(bare);
    const line = writeReading({ ...draft, sides: [{ subjects: draft.sides[0]?.subjects ?? [], items: [example] }] }, this.#setting);
    return { stop: 'refused', sentence: `${sentence(bare.entry.name)}: how much?`, line };
  }
  #exampleFor(item: Item): Item {
    const { entry } = item;
    const all = placesOf(entry.scope);
    const where = item.placed || entry.alike ? item : { ...item, places: [all[0] ?? ''], placed: true };
    const { preferences } = this.#setting;
    if (entry.dimension && entry.sane && entry.kind === 'quantity') {
      const [low, high] = entry.sane;
      const unit = everydayUnits(entry.dimension, preferences)[0]!;
      const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
      const value = Number(fromSI(middle, unit).toPrecision(2)) * unit.factor + (unit.offset ?? 0);
      return { ...where, said: { value, text: '' } };
    }
    const value = entry.options?.[0] ?? '245/40R17';
    return { ...where, said: { value, text: value } };
  }
  /** A change, or a trial, says where. */
  #places(draft: Draft): Stop | undefined {
    const { verb } = draft;
    if (verb === 'find') return this.#whichEnd(draft);
    if (verb !== 'set' && verb !== 'save' && verb !== 'try') return undefined;
    for (const side of draft.sides)
      for (const item of side.items) {
        if (item.placed || item.entry.alike || item.said === undefined) continue;
        const groups = placeGroups(item);
        const choices = groups.map((places): Choice => {
          const line = writeReading(replaced(draft, item, { ...item, places, placed: true }), this.#setting);
          return { label: line, line };
        });
        const which = item.entry.scope === 'gear' ? 'Which gear' : item.entry.scope === 'axle' ? 'Front or rear' : 'Which wheels';
        return { stop: 'asked', sentence: `${which}? ${sentence(item.entry.name)} ${item.said.text}`.trim(), choices };
      }
    return undefined;
  }
  #whichEnd(draft: Draft): Stop | undefined {
    const { goal } = draft;
    const sought = draft.sides.flatMap((side) => side.items);
    const [first] = sought;
    if (!goal || !first || this.#asked.goalOnly) return undefined;
    if (first.placed || first.entry.alike || placesOf(first.entry.scope).length === 1) {
      // The goal is where the input reaches.
      return undefined;
    }
    const axles = first.entry.scope === 'axle' || first.entry.scope === 'corner' ? ['front', 'rear'] : [];
    if (axles.length === 0) return undefined;
    const choices = axles.map((end): Choice => {
      const places = first.entry.scope === 'axle' ? [end] : end === 'front' ? ['lf', 'rf'] : ['lr', 'rr'];
      const atEnd = goal.entry.scope === 'axle' && !goal.placed ? { ...goal, places: [end], placed: true } : goal;
      const line = writeReading({ ...replaced(draft, first, { ...first, places, placed: true }), goal: atEnd }, this.#setting);
      return { label: line, line };
    });
    return { stop: 'asked', sentence: 'Front or rear?', choices };
  }
  /** One path told twice in a line is never taken for one of them. */
  #twice(draft: Draft): Stop | undefined {
    for (const side of [...draft.sides, { items: draft.tried, subjects: [] }]) {
      const seen = new Map<string, Item>();
      for (const item of side.items) {
        if (item.said === undefined) continue;
        for (const place of item.places) {
          const path = pathAt(place, item.entry);
          const before = seen.get(path);
          if (before && before !== item) {
            const choices = [before, item].map((one): Choice => {
              const line = writeReading(without(draft, one === before ? item : before), this.#setting);
              return { label: line, line };
            });
            return { stop: 'asked', sentence: `${sentence(item.entry.name)} is told twice: which?`, choices };
          }
          seen.set(path, item);
        }
      }
    }
    return undefined;
  }
  #finish(draft: Draft): Reading {
    const notes = this.#slots().flatMap((slot) => slot.candidates.slice(0, 1).flatMap((one) => (one.note ? [one.note] : [])));
    const lists = this.#slots().flatMap((slot) =>
      slot.candidates[0]?.each && slot.candidates[0].item.entry.scope === 'corner' ? ['read in the order lf, rf, lr, rr'] : [],
    );
    const echoes = [...new Set([...this.#echoes, ...notes, ...lists])];
    return { ...draft, rest: this.#asked.text, echoes, mended: this.#atoms.mended || this.#asked.echo !== undefined };
  }
}
/** `22 vs 25 mm`: one unit of two sides that have an amount each. */
function sharedUnit(sections: Sections): Sections {
  const amounts = sections.sides.map(({ atoms }) => atoms.filter((atom) => atom.is === 'amount'));
  const units = new Set(amounts.flat().flatMap(({ token }) => token.unit ?? []));
  const [unit] = units;
  if (unit === undefined || units.size > 1 || amounts.length < 2 || amounts.some((all) => all.length !== 1)) return sections;
  const withUnit = (atom: Atom): Atom =>
    atom.is === 'amount' && atom.token.unit === undefined ? { ...atom, token: { ...atom.token, unit } } : atom;
  return { ...sections, sides: sections.sides.map((side) => ({ ...side, atoms: side.atoms.map(withUnit) })) };
}
/** The runs of atoms between commas. */
function segments(atoms: readonly Atom[]): readonly (readonly Atom[])[] {
  const out: Atom[][] = [[]];
  for (const atom of atoms) {
    if (atom.is === 'break') out.push([]);
    else if (atom.is === 'word' || atom.is === 'place' || atom.is === 'amount' || atom.is === 'text' || atom.is === 'gear')
      out.at(-1)!.push(atom);
  }
  return out.filter((segment) => segment.length > 0);
}
/** Groups of places that a member may have meant, at most four. */
function placeGroups(item: Item): readonly (readonly string[])[] {
  switch (item.entry.scope) {
    case 'axle':
      return item.entry.extensive ? [['front'], ['rear']] : [['front'], ['rear'], ['front', 'rear']];
    case 'corner':
      return item.entry.extensive
        ? [['lf'], ['rf'], ['lr'], ['rr']]
        : [
            ['lf', 'rf'],
            ['lr', 'rr'],
            ['lf', 'rf', 'lr', 'rr'],
          ];
    case 'gear':
      return [['1'], ['2'], ['3'], ['4']];
    default:
      return [['']];
  }
}
const replaced = (draft: Draft, item: Item, by: Item): Draft => ({
  ...draft,
  sides: draft.sides.map((side) => ({ ...side, items: side.items.map((one) => (one === item ? by : one)) })),
});
const without = (draft: Draft, item: Item): Draft => ({
  ...draft,
  sides: draft.sides.map((side) => ({ ...side, items: side.items.filter((one) => one !== item) })),
  tried: draft.tried.filter((one) => one !== item),
});

export const readItems = (asked: Asked, setting: Setting): Reading | Stop => new ItemsReader(asked, setting).read();
