/** Where the words of a chart go, and how they are broken. */
import type { Chart } from '../../commands/answer.js';
import { clean } from './clean.js';

/** Pixels of type; nothing in a chart is smaller. */
export const smallestType = 28;
/** DejaVu Sans, of its own metrics: no ordinary letter is much wider than this share of the type's size, on average. */
const letterWidth = 0.61;
export const widthOf = (text: string, size: number): number => [...text].length * size * letterWidth;

/** Words in lines of at most `letters`, the last of at most `most` lines ending in an ellipsis when something is left over. */
export function broken(text: string, letters: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of clean(text).replace(/\s+/g, ' ').trim().split(' ')) {
    const last = lines.at(-1);
    const piece = [...word].length > letters ? `${[...word].slice(0, letters - 1).join('')}…` : word;
    if (last !== undefined && [...last].length + 1 + [...piece].length <= letters) lines[lines.length - 1] = `${last} ${piece}`;
    else lines.push(piece);
  }
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), `${[...(lines[most - 1] ?? '')].slice(0, letters - 1).join('')}…`];
}

/** Labels pushed apart so that none covers another; top to bottom in the order in which they came. */
export function apart(wanted: readonly number[], gap: number, most: number): number[] {
  const order = wanted.map((_, at) => at).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const placed = [...wanted];
  let above = Number.NEGATIVE_INFINITY;
  for (const at of order) {
    placed[at] = Math.max(wanted[at] ?? 0, above + gap);
    above = placed[at] ?? 0;
  }
  const over = Math.max(0, above - most);
  return placed.map((y) => y - over);
}

/** Whether the line that a mark stands on rises there. */
export function slopeAt({ x, y }: { readonly x: number; readonly y: number }, series: Chart['series']): number {
  const near = series.flatMap(({ points }) =>
    points.slice(1).map(([bx, by], at) => {
      const [ax = bx, ay = by] = points[at] ?? [];
      const between = bx === ax ? ay : ay + ((by - ay) * (x - ax)) / (bx - ax);
      const outside = Math.max(0, Math.min(ax, bx) - x, x - Math.max(ax, bx));
      return { off: outside > 0 ? Number.POSITIVE_INFINITY : Math.abs(y - between), slope: (by - ay) * Math.sign(bx - ax) };
    }),
  );
  return near.reduce((best, n) => (n.off < best.off ? n : best), { off: Number.POSITIVE_INFINITY, slope: 0 }).slope;
}
/** Words beside a mark, on the side that its line leaves free: above on the left of a rising line, on the right of a falling one. */
export function beside(text: readonly string[], slope: number, from: number, width: number) {
  const wide = Math.max(...text.map((t) => widthOf(t, smallestType))) + 30;
  const toLeft = { align: 'right', dx: -14 };
  const toRight = { align: 'left', dx: 14 };
  const above = { dy: -30 - (text.length - 1) * 34 };
  const below = { dy: 50 };
  const roomLeft = from > wide;
  const roomRight = width - from > wide;
  if (slope > 0) return roomLeft ? { ...toLeft, ...above } : { ...toRight, ...below };
  return roomRight ? { ...toRight, ...above } : { ...toLeft, ...(slope < 0 ? below : above) };
}
