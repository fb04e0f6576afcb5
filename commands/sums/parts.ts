/** The parts of a sum as they are read: what the calculator is given, and what may come next. */
import type { Told } from './amounts.js';
import { deepestBrackets } from './sum.js';

/** The sum does not read as one: a sentence, and perhaps a line that works. */
export class Refused extends Error {
  readonly line: string | undefined;
  constructor(sentence: string, line?: string) {
    super(sentence);
    this.line = line;
  }
}
export interface Named {
  readonly said: string;
  readonly meant: readonly Told[];
}
interface Bracket {
  /** The function whose brackets they are. */
  readonly call: string | undefined;
  /** Roots that end with it. */
  readonly roots: number;
}
export class Parts {
  readonly names = new Map<string, Named>();
  readonly #pieces: string[] = [];
  readonly #brackets: Bracket[] = [];
  /** Roots that the next operand ends. */
  #roots = 0;
  /** Whether a number, a name or an opening bracket comes next. */
  wants = true;

  get text(): string {
    return this.#pieces.join(' ');
  }
  /** The function in whose brackets we are. */
  get call(): string | undefined {
    return this.#brackets.at(-1)?.call;
  }
  get open(): number {
    return this.#brackets.length;
  }
  get inRoot(): boolean {
    return this.#roots > 0;
  }
  /** The last part, or one before it. */
  last(back = 1): string | undefined {
    return this.#pieces.at(-back);
  }
  get isPower(): boolean {
    return this.last() === '^' || this.last(2) === '^';
  }

  /** An operand; it ends the roots in front of it. */
  operand(piece: string): void {
    this.#pieces.push(piece, ...Array.from({ length: this.#roots }, () => ')'));
    this.#roots = 0;
    this.wants = false;
  }
  name(said: string, meant: readonly Told[]): string {
    if (meant.length === 0) throw new Refused(`${said} counts from a zero of its own, and needs a number right before it.`);
    const name = `q${this.names.size}`;
    this.names.set(name, { said, meant });
    // In brackets, so that it is never taken for a function.
    this.operand(`(${name})`);
    return name;
  }
  operator(sign: string): void {
    this.#pieces.push(sign);
    this.wants = true;
  }
  root(): void {
    this.#pieces.push('sqrt(');
    this.#roots++;
    this.wants = true;
  }
  bracket(call?: string): void {
    if (this.open >= deepestBrackets) throw new Refused(`Those brackets are nested more than ${deepestBrackets} deep.`);
    this.#pieces.push(`${call ?? ''}(`);
    this.#brackets.push({ call, roots: this.#roots });
    this.#roots = 0;
    this.wants = true;
  }
  close(): void {
    const bracket = this.#brackets.pop();
    if (!bracket) throw new Refused('A bracket is closed that was not opened.');
    this.#roots = bracket.roots;
    this.operand(')');
  }
  /** Takes back a minus that is the sign of what comes next, and says whether there was one. */
  takeMinus(): boolean {
    const before = this.last(2);
    const isSign = before === undefined || (/^[-+*/%,]$/.test(before) && before !== '^') || before.endsWith('(');
    if (this.last() !== '-' || !isSign || this.inRoot) return false;
    this.#pieces.pop();
    return true;
  }
}
