/** A sum as a member types it, read from left to right into what the calculator works out: every quantity and figure becomes a name with all its meanings. */
import type { Preferences } from '../context.js';
import { spellingAt } from '../language/spelled.js';
import { meaningsOf } from '../units.js';
import { amount, goesOn, isScale, one, type Told } from './amounts.js';
import { fractionAt, numberAt } from './numbers.js';
import { type Named, Parts, Refused } from './parts.js';
import { constants, functions } from './sum.js';
import { operatorAt, ordinalRun, powerAt, startsOperand, wordRun, wordsOf } from './words.js';

export interface SumRead {
  readonly text: string;
  readonly names: ReadonlyMap<string, Named>;
}
export interface SumRefused {
  readonly refused: string;
  /** A line that works. */
  readonly line?: string;
}
export interface Ground {
  readonly preferences: Preferences;
  /** What words name, if they name a figure of the car; or why it has no one number. */
  readonly figure: (words: string) => readonly Told[] | SumRefused | undefined;
}
/** @returns the sum, or one sentence why it does not read as one. */
export function readSum(text: string, ground: Ground): SumRead | SumRefused {
  try {
    return new Reader(text, ground).read();
  } catch (problem) {
    if (!(problem instanceof Refused)) throw problem;
    return { refused: problem.message, ...(problem.line === undefined ? {} : { line: problem.line }) };
  }
}

/** A quantity that was just read: `5 ft`, which `8 in` may follow. */
interface Quantity {
  readonly name: string;
  readonly unit: string;
  readonly below: boolean;
}
interface UnitRead {
  readonly spelling: string;
  readonly end: number;
}
class Reader {
  readonly #text: string;
  readonly #lower: string;
  readonly #ground: Ground;
  readonly #parts = new Parts();
  #at = 0;
  #last: Quantity | undefined;

  constructor(text: string, ground: Ground) {
    this.#text = text.replaceAll('**', '^').trim();
    // Letter by letter, so that both have the same places.
    this.#lower = [...this.#text].map((c) => (c.toLowerCase().length === c.length ? c.toLowerCase() : c)).join('');
    this.#ground = ground;
  }
  read(): SumRead {
    while (this.#at < this.#text.length) {
      if (this.#text[this.#at] === ' ') this.#at++;
      else if (this.#parts.wants) this.#operand();
      else this.#afterOperand();
    }
    if (this.#text === '') throw new Refused('There is nothing to work out.');
    if (this.#parts.wants) throw new Refused(`Something is missing at the end of ${this.#text}.`);
    if (this.#parts.open > 0) throw new Refused('A bracket is opened and not closed.');
    return { text: this.#parts.text, names: this.#parts.names };
  }

  #put(piece: string, end: number): void {
    this.#parts.operand(piece);
    this.#at = end;
    this.#last = undefined;
  }
  #putName(meant: readonly Told[], end: number): string {
    const name = this.#parts.name(this.#text.slice(this.#at, end).trim(), meant);
    this.#at = end;
    this.#last = undefined;
    return name;
  }
  #bracket(call: string | undefined, end: number): void {
    this.#parts.bracket(call);
    this.#at = end;
  }
  #operator(sign: string, end: number): void {
    this.#parts.operator(sign);
    this.#at = end;
    this.#last = undefined;
  }

  #operand(): void {
    const c = this.#text[this.#at] ?? '';
    if (c === '+' || c === '-') this.#operator(c, this.#at + 1);
    else if (c === '√') {
      this.#parts.root();
      this.#at++;
    } else if (c === '(') this.#bracket(undefined, this.#at + 1);
    else if (!(this.#ordinal() || this.#number() || this.#words() || this.#loneUnit())) throw new Refused(this.#unexpected());
  }
  #afterOperand(): void {
    const c = this.#text[this.#at] ?? '';
    const operator = operatorAt(this.#lower, this.#at);
    const power = powerAt(this.#lower, this.#at);
    if (c === ')') {
      this.#parts.close();
      this.#at++;
      this.#last = undefined;
    } else if (power) {
      this.#parts.operator('^');
      this.#put(power.power, power.end);
    } else if ((c === ',' || c === ';') && this.#parts.call !== undefined) this.#operator(',', this.#at + 1);
    else if (operator) this.#operator(operator.sign, operator.end);
    else if (c === '%' && startsOperand(this.#lower, this.#at + 1)) this.#operator('%', this.#at + 1);
    else if (c === '%') throw new Refused('A % stands right after its number.');
    else if (c === '(') this.#bracket(undefined, this.#at + 1);
    else if (c === '√') this.#parts.wants = true;
    else if (/[\d.]/.test(c)) {
      if (!this.#compound()) throw new Refused(this.#signMissing());
    } else if (!(this.#words() || this.#loneUnit())) throw new Refused(this.#unexpected());
  }
  #signMissing(): string {
    return `Between ${this.#text.slice(0, this.#at).trim().slice(-20)} and what follows a sign is missing, such as + or *.`;
  }
  #unexpected(): string {
    const c = String.fromCodePoint(this.#text.codePointAt(this.#at) ?? 0);
    const word = wordRun(this.#text, this.#at) ?? '';
    if (word !== '') return `"${word}" isn't a number, a unit or a figure that I know.`;
    return this.#parts.wants && /[)*/^%,;]/.test(c) ? `Before "${c}" something is missing.` : `"${c}" isn't part of a sum here.`;
  }

  /** The unit that begins at a place, or a space after it. What is raised to a power must be a plain word: in `lb/in^3` only the inch is. */
  #unitAt(from: number): UnitRead | undefined {
    const start = this.#lower[from] === ' ' ? from + 1 : from;
    const spelling = spellingAt(this.#lower, start, (typed, end) => {
      if (this.#lower[end] === '^' && !/^\p{L}+$/u.test(typed)) return false;
      if (typed === '%' && startsOperand(this.#lower, end)) return false;
      return !(functions.has(typed) && this.#lower[end] === '(');
    });
    return spelling === undefined
      ? undefined
      : { spelling: this.#text.slice(start, start + spelling.length), end: start + spelling.length };
  }
  #number(): boolean {
    const { call, inRoot } = this.#parts;
    const [, most = 1] = functions.get(call ?? '') ?? [];
    const { decimalMark } = this.#ground.preferences;
    if (!inRoot && this.#fraction()) return true;
    const commaParts = call !== undefined && most > 1 && !this.#text.includes(';');
    const number = numberAt(this.#text, this.#at, { decimalMark, commaParts });
    if (!number) return false;
    if (number.unclear)
      throw new Refused('A comma in the brackets of a function parts numbers when a space follows it, and is left out of a number there.');
    if (!Number.isFinite(number.value)) throw new Refused('One of those numbers is too large.');
    // 2^3 in are eight inches, √16 mm four millimetres.
    const unit = inRoot || this.#parts.isPower ? undefined : this.#unitAt(number.end);
    if (unit) this.#quantity(number.value, unit);
    else this.#put(String(number.value), number.end);
    return true;
  }
  #fraction(): boolean {
    const fraction = fractionAt(this.#text, this.#at);
    const unit = fraction && this.#unitAt(fraction.end);
    if (!fraction || (!unit && fraction.onlyBeforeUnit)) return false;
    const before = this.#parts.last();
    if (fraction.onlyBeforeUnit && (before === '/' || before === '^'))
      throw new Refused(
        `What ${this.#text.slice(this.#at, unit?.end)} belongs to can be read in two ways; put it, or what is before it, in brackets.`,
      );
    if (unit) this.#quantity(fraction.value, unit);
    else this.#put(String(fraction.value), fraction.end);
    return true;
  }
  #quantity(value: number, unit: UnitRead): void {
    if (this.#lower[unit.end] === '^') {
      this.#put(String(value), unit.end - unit.spelling.length);
      return;
    }
    // -5 °F is a place of its own, not the opposite of 5 °F.
    const below = isScale(unit.spelling) && this.#parts.takeMinus();
    const name = this.#putName(amount(below ? -value : value, unit.spelling, this.#ground.preferences), unit.end);
    this.#last = { name, unit: unit.spelling, below };
  }
  /** `5 ft 8 in`, `2° 30'`, `1 h 20 min`: a smaller unit of the same kind goes on. */
  #compound(): boolean {
    const last = this.#last;
    const first = last && this.#parts.names.get(last.name);
    const number = fractionAt(this.#text, this.#at) ?? numberAt(this.#text, this.#at, { decimalMark: '.', commaParts: true });
    const unit = number && this.#unitAt(number.end);
    if (!last || !first || !unit || this.#lower[unit.end] === '^') return false;
    const more = amount(last.below ? -number.value : number.value, unit.spelling, this.#ground.preferences);
    const meant = first.meant.flatMap((a): Told[] => {
      const b = more.find((some) => goesOn(a, last.unit, some, unit.spelling));
      return b ? [{ ...a, shown: '', si: a.si + b.si }] : [];
    });
    if (meant.length === 0) return false;
    this.#parts.names.set(last.name, { said: `${first.said} ${this.#text.slice(this.#at, unit.end)}`, meant });
    this.#at = unit.end;
    this.#last = { ...last, unit: unit.spelling };
    return true;
  }

  /** `m` in `30 m / s`, `in` after a bracket. */
  #loneUnit(): boolean {
    const unit = this.#lower[this.#at] === ' ' ? undefined : this.#unitAt(this.#at);
    if (unit) this.#putName(one(unit.spelling, this.#ground.preferences), unit.end);
    return unit !== undefined;
  }
  /** `1st gear ratio`. */
  #ordinal(): boolean {
    const run = ordinalRun(this.#text, this.#at);
    return run !== undefined && wordsOf(run).some((words) => this.#figure(words));
  }
  /** Words: a function, a constant, a unit, or as many as name a figure. */
  #words(): boolean {
    const run = wordRun(this.#text, this.#at);
    for (const words of run === undefined ? [] : wordsOf(run)) {
      const end = this.#at + words.length;
      const lower = words.toLowerCase();
      if (functions.has(lower) && /^ ?\(/.test(this.#text.slice(end))) {
        this.#bracket(lower, this.#text.indexOf('(', end) + 1);
        return true;
      }
      if (end < this.#at + (run?.length ?? 0) && !this.#mayFollow(end + 1)) continue;
      if (constants.has(lower)) this.#put(`(${lower})`, end);
      else if (meaningsOf(words).length > 0) return this.#loneUnit();
      else if (!this.#figure(words)) continue;
      return true;
    }
    return false;
  }
  /** Whether the word at a place is none of a figure's name: an operator, a constant, a function, a unit. */
  #mayFollow(at: number): boolean {
    const [word = ''] = (wordRun(this.#lower, at) ?? '').split(' ');
    const isOwn = constants.has(word) || functions.has(word) || meaningsOf(word).length > 0;
    return isOwn || operatorAt(this.#lower, at) !== undefined || powerAt(this.#lower, at) !== undefined;
  }
  #figure(words: string): boolean {
    const found = this.#ground.figure(words);
    if (found === undefined) return false;
    if ('refused' in found) throw new Refused(found.refused, found.line);
    this.#putName(found, this.#at + words.length);
    return true;
  }
}
