/** What a page left out, as lines that are stored for `more`: parts with names, of which the fixed ones keep their columns. */

/** A part of an answer that was kept back. */
export interface Kept {
  /** Empty: what an earlier version kept, which named nothing. */
  readonly name: string;
  readonly fixed: boolean;
  readonly lines: readonly string[];
}
/** Lines of the two sorts begin with marks that no line of an answer begins with; a line without is of an earlier version. */
const named = '\u00a7 ';
const prose = '\u00b6 ';

/** A paragraph is one line again: it is broken to the width of whoever reads on. */
const unwrapped = (lines: readonly string[]): string => lines.map((line) => line.trim()).join(' ');

export function asRest(parts: readonly Kept[]): string[] {
  const out: string[] = [];
  let before: string | undefined;
  for (const { name, fixed, lines } of parts) {
    if (lines.length === 0) continue;
    if (name !== before) out.push(named + name);
    before = name;
    out.push(...(fixed ? lines : [prose + unwrapped(lines)]));
  }
  return out;
}
/** The parts again. */
export function keptOf(lines: readonly string[]): Kept[] {
  const parts: { name: string; fixed: boolean; lines: string[] }[] = [];
  let name = '';
  for (const line of lines) {
    if (line.startsWith(named)) {
      name = line.slice(named.length);
      continue;
    }
    const fixed = !line.startsWith(prose);
    const last = parts.at(-1);
    const text = fixed ? line : line.slice(prose.length);
    if (last && last.name === name && last.fixed === fixed) last.lines.push(text);
    else parts.push({ name, fixed, lines: [text] });
  }
  return parts;
}
/** What the parts are called, each once. */
export const namesOf = (lines: readonly string[]): readonly string[] => [
  ...new Set(keptOf(lines).flatMap(({ name }) => (name === '' ? [] : [name]))),
];
