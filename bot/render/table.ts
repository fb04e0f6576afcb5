/** Rows of an answer as lines of a fixed-width type, narrow enough for a phone. */
import type { Cell, Row } from '../../commands/answer.js';
import { clean, columnsOf, padded, wrapped } from './clean.js';

const gap = '  ';
const textOf = (cell: Cell): string =>
  clean(typeof cell === 'string' ? cell : cell.text)
    .replace(/\s+/g, ' ')
    .trim();
const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map(columnsOf));
const indented = (lines: readonly string[], by: number): string[] => lines.map((l) => ' '.repeat(by) + l);

/** `1.93 Hz ± 0.11`: number, unit, plus-or-minus. */
const amountText = /^([-−+]?[\d.,' ]*\d)(?: ?([^\d±\s][^±]*?))?(?: ?(± ?[\d.,]+))?$/u;
/** Plain numbers of one unit stand with their ends under one another; anything else begins there. */
function aligned(values: readonly string[]): string[] {
  const parts = values.map((v) => amountText.exec(v));
  const alike = parts.every((p) => p !== null && p[3] === undefined && p[2] === parts[0]?.[2]);
  const width = widest(values);
  return alike ? values.map((v) => v.padStart(width)) : [...values];
}

/**
 * Labels on the left, values in a column: `spring at this height  576 lb/in`. The column stands where the fewest lines result; a row that
 * is too long for it has its value on the next line.
 */
function single(rows: readonly Row[], width: number): string[][] {
  const labels = rows.map(({ label }) => clean(label));
  const values = aligned(rows.map(({ cells }) => cells.map(textOf).join(gap)));
  const fits = (at: number, column: number): boolean =>
    columnsOf(labels[at] ?? '') <= column && column + gap.length + columnsOf(values[at] ?? '') <= width;
  const fitting = (column: number): number => rows.filter((_, at) => fits(at, column)).length;
  const [best = 0] = [...new Set(labels.map(columnsOf))].sort((a, b) => fitting(b) - fitting(a) || a - b);
  const used = Math.max(0, ...rows.map((_, at) => (fits(at, best) ? best + gap.length + columnsOf(values[at] ?? '') : 0)));
  const indent = used === 0 || width - used < 2 ? 0 : 2;
  return rows.map((_, at) => {
    const label = labels[at] ?? '';
    const value = values[at] ?? '';
    if (fits(at, best)) return indented([`${padded(label, best)}${gap}${value}`.trimEnd()], indent);
    const own = label === '' ? [] : wrapped(' '.repeat(indent) + label, width, ' '.repeat(indent + 1));
    const start = Math.max(2, Math.min(indent + best + gap.length, width - columnsOf(value)));
    return [
      ...indented(own, own.some((l) => columnsOf(l) + indent > width) ? 0 : indent),
      ...indented(wrapped(value.trim(), width - start), start),
    ];
  });
}

interface Line {
  readonly label: string;
  readonly cells: readonly string[];
}
/** The unit moved from every cell to the label, where all cells have the same one: `rear ride frequency, Hz`. */
function unitInLabel({ label, cells }: Line): Line {
  const parts = cells.map((text) => amountText.exec(text));
  const units = new Set(parts.flatMap((p, at) => (cells[at] === '' ? [] : [p?.[2]])));
  const [unit] = units;
  if (units.size !== 1 || unit === undefined) return { label, cells };
  return {
    label: `${label}, ${unit}`,
    cells: parts.map((p) => (p === null ? '' : [p[1], p[3]?.replace(' ', '')].filter((t) => t !== undefined).join(' '))),
  };
}
function columnWidths(lines: readonly Line[], heads: readonly string[]): number[] {
  const count = Math.max(heads.length, ...lines.map(({ cells }) => cells.length));
  return Array.from({ length: count }, (_, at) => widest([heads[at] ?? '', ...lines.map(({ cells }) => cells[at] ?? '')]));
}
const inColumns = (cells: readonly string[], widths: readonly number[]): string =>
  widths
    .map((w, at) => padded(cells[at] ?? '', w))
    .join(gap)
    .trimEnd();
const total = (widths: readonly number[]): number => widths.reduce((sum, w) => sum + w + gap.length, -gap.length);
const headLine = (heads: readonly string[], widths: readonly number[], before: number): string[] =>
  heads.some((h) => h !== '') ? [' '.repeat(before) + inColumns(heads, widths)] : [];

/** The heads stay with the first row. */
const headed = (head: readonly string[], [first = [], ...others]: readonly (readonly string[])[]): string[][] => [
  [...head, ...first],
  ...others.map((o) => [...o]),
];

/** Label and values in one line; a label may go on below, but no word of it is cut. */
function beside(lines: readonly Line[], heads: readonly string[], width: number): string[][] | undefined {
  const widths = columnWidths(lines, heads);
  const labels = Math.min(width - total(widths) - gap.length, widest(lines.map((l) => l.label)));
  if (labels < widest(lines.flatMap((l) => l.label.split(' ').map((word) => ` ${word}`)))) return undefined;
  return headed(
    headLine(heads, widths, labels + gap.length),
    lines.map(({ label, cells }) => {
      const [first = '', ...others] = wrapped(label, labels, ' ');
      return [`${padded(first, labels)}${gap}${inColumns(cells, widths)}`.trimEnd(), ...others];
    }),
  );
}
/** A line for the label, and one for each value, led by its head. */
function listed({ label, cells }: Line, heads: readonly string[], width: number): string[] {
  const each = cells.flatMap((cell, at) => (cell === '' ? [] : [{ label: heads[at] ?? '', cells: [cell] }]));
  return [...wrapped(label, width, ' '), ...single(each, width).flat()];
}
/** A line for the label, and one for the values; a row that is too long for the columns of those before it is listed. */
function below(lines: readonly Line[], whole: readonly Line[], heads: readonly string[], width: number): string[][] {
  let widths = columnWidths([], heads);
  const fitting = lines.map(({ cells }) => {
    // A row may have more cells than those before it had, or fewer.
    const count = Math.max(widths.length, cells.length);
    const wider = Array.from({ length: count }, (_, at) => Math.max(widths[at] ?? 0, columnsOf(cells[at] ?? '')));
    const fits = total(wider) + 2 <= width;
    if (fits) widths = wider;
    return fits;
  });
  const rows = lines.map(({ label, cells }, at) =>
    fitting[at]
      ? [...wrapped(label, width, ' '), ...indented([inColumns(cells, widths)], 2)]
      : listed(whole[at] ?? { label, cells }, heads, width),
  );
  // Listed rows name their heads themselves.
  const first = fitting.indexOf(true);
  return rows.map((row, at) => (at === first ? [...headLine(heads, widths, 2), ...row] : row));
}

/** Several values a row under heads, in the form that takes the fewest lines. */
function several(rows: readonly Row[], heads: readonly string[], width: number): string[][] {
  const full = rows.map(({ label, cells }) => ({ label: clean(label), cells: cells.map(textOf) }));
  const short = full.map(unitInLabel);
  const names = heads.map(clean);
  const forms = [
    beside(full, names, width),
    beside(short, names, width),
    below(full, full, names, width),
    below(short, full, names, width),
  ];
  return forms
    .filter((f) => f !== undefined)
    .reduce(
      (best, form) => (form.flat().length < best.flat().length ? form : best),
      full.map((l) => listed(l, names, width)),
    );
}

/** Each row as lines of at most `width` columns. */
export function tableLines(rows: readonly Row[], heads: readonly string[] | undefined, width: number): string[][] {
  const many = rows.some(({ cells }) => cells.length > 1);
  return many || (heads !== undefined && heads.length > 1) ? several(rows, heads ?? [], width) : single(rows, width);
}
