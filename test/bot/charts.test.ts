import { inflateSync } from 'node:zlib';
import { parse, View } from 'vega';
import { afterAll, describe, expect, test } from 'vitest';
import { chartHeight, chartSpec, chartWidth, lineWidth, seriesColours } from '../../bot/render/chart.js';
import { createDraughtsman } from '../../bot/render/picture.js';
import { smallestType } from '../../bot/render/placing.js';
import type { Chart } from '../../commands/answer.js';

const line = (at: number): [number, number][] => Array.from({ length: 26 }, (_, i) => [300 + 20 * i, at + Math.sqrt(300 + 20 * i) / 12]);
const chart = (parts: Partial<Chart> = {}): Chart => ({
  title: 'Rear ride frequency against spring',
  x: { label: 'rear spring', unit: 'lb/in' },
  y: { label: 'ride frequency', unit: 'Hz' },
  series: [{ name: 'turnip', points: line(0), band: line(0).map(([x, y]) => [x, y * 0.95, y * 1.05]) }],
  marks: [{ x: 560, y: Math.sqrt(560) / 12, label: 'turnip now' }],
  words: 'from 1.44 Hz at 300 lb/in to 2.36 Hz at 800 lb/in',
  ...parts,
});
const svg = (of: Chart): Promise<string> => new View(parse(chartSpec(of)), { renderer: 'none' }).toSVG();

/** Pixels of a PNG of 8 bits a sample, RGBA or RGB, as red, green, blue, alpha. After the PNG specification (ISO/IEC 15948), clauses 9 and 11. */
function pixelsOf(png: Buffer): { width: number; height: number; at(x: number, y: number): number[] } {
  const [width, height, depth, kind] = [png.readUInt32BE(16), png.readUInt32BE(20), png[24], png[25]];
  if (depth !== 8 || (kind !== 6 && kind !== 2)) throw new Error(`a PNG of depth ${depth}, kind ${kind}`);
  const data: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at))
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') data.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  const raw = inflateSync(Buffer.concat(data));
  const each = kind === 6 ? 4 : 3;
  const stride = width * each;
  const out = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)] ?? 0;
    for (let i = 0; i < stride; i++) {
      const left = i >= each ? (out[y * stride + i - each] ?? 0) : 0;
      const up = y > 0 ? (out[(y - 1) * stride + i] ?? 0) : 0;
      const corner = i >= each && y > 0 ? (out[(y - 1) * stride + i - each] ?? 0) : 0;
      const guess = left + up - corner;
      const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
      const paeth = a <= b && a <= c ? left : b <= c ? up : corner;
      const predicted = [0, left, up, (left + up) >> 1, paeth][filter] ?? 0;
      out[y * stride + i] = ((raw[y * (stride + 1) + 1 + i] ?? 0) + predicted) & 255;
    }
  }
  return { width, height, at: (x, y) => [0, 1, 2, 3].map((s) => (s < each ? (out[y * stride + x * each + s] ?? 0) : 255)) };
}
const dark = ([r = 255, g = 255, b = 255]: number[]): boolean => r + g + b < 200;
function darkIn(picture: ReturnType<typeof pixelsOf>, x0: number, y0: number, x1: number, y1: number): number {
  let count = 0;
  for (let y = y0; y < y1; y++) for (let x = x0; x < x1; x++) if (dark(picture.at(x, y))) count++;
  return count;
}

const draughtsman = createDraughtsman({ idleMs: 200 });
afterAll(() => draughtsman.close());

describe('the picture', () => {
  test('has its size, an opaque white ground, and letters where words belong', async () => {
    const drawn = await draughtsman.draw(chart());
    expect(drawn).toMatchObject({ width: 1080, height: 840, words: chart().words });
    const picture = pixelsOf(drawn.png);
    expect([picture.width, picture.height]).toEqual([chartWidth, chartHeight]);
    expect(picture.width / picture.height).toBeGreaterThanOrEqual(5 / 4);
    expect(picture.width / picture.height).toBeLessThanOrEqual(4 / 3);
    for (const [x, y] of [
      [0, 0],
      [1079, 0],
      [0, 839],
      [1079, 839],
    ] as const)
      expect(picture.at(x, y)).toEqual([255, 255, 255, 255]);
    // Without a font there would be no error and no letters: title, numbers of both axes, both axes' names.
    expect(darkIn(picture, 60, 40, 1000, 100)).toBeGreaterThan(1500);
    expect(darkIn(picture, 80, 140, 140, 700)).toBeGreaterThan(300);
    expect(darkIn(picture, 150, 735, 1050, 770)).toBeGreaterThan(300);
    expect(darkIn(picture, 200, 780, 1050, 830)).toBeGreaterThan(300);
    expect(darkIn(picture, 10, 140, 60, 700)).toBeGreaterThan(300);
  });
  test('needs no thread once it is drawn', async () => {
    await draughtsman.draw(chart());
    while (draughtsman.running) await new Promise((resolve) => setTimeout(resolve, 20));
    expect((await draughtsman.draw(chart())).png.length).toBeGreaterThan(10_000);
  });
  test('of what cannot be drawn is refused, and the next is drawn', async () => {
    await expect(draughtsman.draw(chart({ series: [] }))).rejects.toMatchObject({ why: 'broken' });
    await expect(draughtsman.draw(chart({ series: [{ name: 'x', points: [[0, Number.NaN]] }] }))).rejects.toMatchObject({ why: 'broken' });
    expect((await draughtsman.draw(chart())).png.length).toBeGreaterThan(10_000);
  });
});

describe('the drawing', () => {
  test('marks the own point, has the doubt band behind the line, and names series at their ends when there are several', async () => {
    const one = await svg(chart());
    expect(one).toContain('turnip now');
    expect(one.indexOf('fill-opacity="0.16"')).toBeGreaterThan(0);
    expect(one.indexOf('fill-opacity="0.16"')).toBeLessThan(one.indexOf(`stroke-width="${lineWidth}"`));
    const four = await svg(chart({ series: ['turnip', 'moth', 'pickle', 'old blue'].map((name, at) => ({ name, points: line(at / 3) })) }));
    for (const name of ['turnip', 'moth', 'pickle', 'old blue']) expect(four).toContain(`>${name}<`);
  });
  test('has no type under 28 px', async () => {
    const sizes = [...(await svg(chart())).matchAll(/font-size="([\d.]+)px"/g)].map(([, size]) => Number(size));
    expect(sizes.length).toBeGreaterThan(10);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(smallestType);
    expect(lineWidth).toBeGreaterThanOrEqual(5);
  });
  test('takes every text as text: no markup, no expression, no control character', async () => {
    const nasty = '<img onerror="x">&{signal: 1}\u0000\u202e';
    const drawn = await svg(
      chart({
        title: nasty,
        x: { label: nasty, unit: nasty },
        series: [nasty, 'b'].map((name) => ({ name, points: line(0) })),
        marks: [{ x: 400, y: 2, label: nasty }],
      }),
    );
    expect(drawn).not.toContain('<img');
    expect(drawn).toContain('&lt;img');
    expect(drawn).not.toMatch(/[\u0000\u202e]/);
  });
  test('does not cut long numbers, and labels of ends that meet stand apart', async () => {
    const huge = await svg(
      chart({
        series: [
          {
            name: 'x',
            points: [
              [0, 12_345_678],
              [1, 12_345_679],
            ],
          },
        ],
        marks: [],
      }),
    );
    expect(huge).not.toContain('…');
    const close = await svg(chart({ series: ['a', 'b', 'c'].map((name, at) => ({ name, points: line(at / 1000) })) }));
    const ys = ['a', 'b', 'c'].map((name) => Number(new RegExp(`translate\\([\\d.]+,([\\d.]+)\\)"[^>]*>${name}<`).exec(close)?.[1]));
    expect(ys.every(Number.isFinite)).toBe(true);
    const sorted = ys.sort((p, q) => p - q);
    expect(Math.min(...sorted.slice(1).map((y, at) => y - (sorted[at] ?? 0)))).toBeGreaterThanOrEqual(45);
  });
});

/** Relative luminance and contrast, as WCAG 2.2 defines them (sRGB). */
const luminance = (colour: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [light = 0, low = 0] = [luminance(a), luminance(b)].sort((p, q) => q - p);
  return (light + 0.05) / (low + 0.05);
};
test('colours are seen on white (3:1, WCAG 2.2, 1.4.11) and differ in lightness from one another', () => {
  for (const colour of seriesColours) expect(contrast(colour, '#ffffff'), colour).toBeGreaterThanOrEqual(3);
  const sorted = seriesColours.map(luminance).sort((a, b) => a - b);
  for (let at = 1; at < sorted.length; at++) expect(((sorted[at] ?? 0) + 0.05) / ((sorted[at - 1] ?? 0) + 0.05)).toBeGreaterThan(1.15);
});
