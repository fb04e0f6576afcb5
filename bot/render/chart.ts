/** What a chart looks like: a drawing specification for vega, with every place and colour decided here. */
import type { Spec } from 'vega';
import type { Chart } from '../../commands/answer.js';
import { apart, beside, broken, slopeAt, smallestType, widthOf } from './placing.js';

/** Pixels. 9:7, between 4:3 and 5:4: a phone shows it whole at the width of the screen. */
export const chartWidth = 1080;
export const chartHeight = 840;
export const lineWidth = 6;
export const fontFamily = 'DejaVu Sans';

/**
 * Our own, and told apart by lightness too: each is readable on white (3:1 at least, WCAG 2.2, 1.4.11) and differs in luminance from the others,
 * so that they hold up without colour. Dashes and direct labels say the same again.
 */
export const seriesColours = ['#10375c', '#b3541e', '#1f8a70', '#8c7bd1'] as const;
const dashes: readonly (readonly number[])[] = [[], [26, 12], [8, 12], [40, 12, 8, 12]];
const ink = '#1c1f24';
const faint = '#c9ced6';

/** Left of the axis: its title, and numbers of up to four characters. */
const leastLeft = 150;
/** The rest of the margin, for longer numbers. */
const leftOf = ({ low, high }: Extent): number => {
  const longest = Math.max(...[low, high].map((value) => Math.round(value).toLocaleString('en-US').length));
  return leastLeft + Math.max(0, longest - 4) * widthOf('0', smallestType) + (longest > 4 ? 12 : 0);
};
const bottom = 120;
interface Extent {
  readonly low: number;
  readonly high: number;
}
/** Of what is drawn, with a little room; a flat line gets room above and below. */
function extent(values: readonly number[], room: number): Extent {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const span = high - low || Math.abs(high) || 1;
  return { low: low - span * room, high: high + span * room };
}
const within = (v: number, { low, high }: Extent): number => (v - low) / (high - low);

const axisTitle = ({ label, unit }: Chart['x']): string => broken(unit === '' ? label : `${label}, ${unit}`, 46, 1).join('');

/** The specification. Numbers are in the asker's units; texts go in as data, never as expressions. */
export function chartSpec(chart: Chart): Spec {
  const { series, marks } = chart;
  if (series.length === 0 || series.length > seriesColours.length)
    throw new Error(`a chart has 1 to ${seriesColours.length} series, not ${series.length}`);
  const points = series.flatMap((s) => s.points);
  const numbers = [...points.flat(), ...series.flatMap((s) => s.band ?? []).flat(), ...marks.flatMap((m) => [m.x, m.y])];
  if (points.length === 0 || !numbers.every(Number.isFinite)) throw new Error('a chart needs points, all of finite numbers');

  const y = extent(
    [...points.map(([, b]) => b), ...series.flatMap((s) => s.band?.flatMap(([, a, b]) => [a, b]) ?? []), ...marks.map((m) => m.y)],
    0.08,
  );
  const left = leftOf(y);
  const title = broken(chart.title, 44, 3);
  const names = series.map((s) => broken(s.name, 13, 2));
  const labelled = series.length > 1;
  const top = 40 + title.length * 44 + 40;
  const right = labelled ? 40 + Math.max(...names.flat().map((n) => widthOf(n, smallestType))) : 50;
  const width = chartWidth - left - right;
  const height = chartHeight - top - bottom;
  const x = extent([...points.map(([a]) => a), ...marks.map((m) => m.x)], 0);
  const ends = series.map((s) => (1 - within(s.points.at(-1)?.[1] ?? 0, y)) * height);
  const labelAt = apart(ends, names.some((n) => n.length > 1) ? 84 : 50, height - 20);

  return {
    width,
    height,
    padding: { left, right, top, bottom },
    autosize: 'none',
    background: '#ffffff',
    data: [
      ...series.flatMap((s, at) => [
        { name: `points${at}`, values: s.points.map(([a, b]) => ({ x: a, y: b })) },
        { name: `band${at}`, values: (s.band ?? []).map(([a, low, high]) => ({ x: a, low, high })) },
      ]),
      {
        name: 'labels',
        values: series.map((_, at) => ({
          text: names[at],
          y: (labelAt[at] ?? 0) - (((names[at]?.length ?? 1) - 1) * 34) / 2,
          colour: seriesColours[at],
        })),
      },
      {
        name: 'marks',
        values: marks.map((m) => {
          const text = broken(m.label, 22, 2);
          return { x: m.x, y: m.y, text, ...beside(text, slopeAt(m, series), within(m.x, x) * width, width) };
        }),
      },
    ],
    scales: [
      { name: 'x', type: 'linear', domain: [x.low, x.high], range: 'width', nice: false, zero: false },
      { name: 'y', type: 'linear', domain: [y.low, y.high], range: 'height', nice: false, zero: false },
    ],
    title: {
      text: title,
      anchor: 'start',
      frame: 'group',
      offset: 34,
      font: fontFamily,
      fontSize: 34,
      fontWeight: 'bold',
      color: ink,
      lineHeight: 44,
      limit: 0,
      dx: 60 - left,
    },
    axes: [
      { ...axis, scale: 'x', orient: 'bottom', title: axisTitle(chart.x), titlePadding: 18, tickCount: 5 },
      { ...axis, scale: 'y', orient: 'left', title: axisTitle(chart.y), titlePadding: 16, tickCount: 5 },
    ],
    marks: [
      ...series.map((_, at) => ({
        type: 'area' as const,
        from: { data: `band${at}` },
        encode: {
          enter: {
            x: { scale: 'x', field: 'x' },
            y: { scale: 'y', field: 'low' },
            y2: { scale: 'y', field: 'high' },
            fill: { value: seriesColours[at] ?? ink },
            fillOpacity: { value: 0.16 },
          },
        },
      })),
      ...series.map((_, at) => ({
        type: 'line' as const,
        from: { data: `points${at}` },
        encode: {
          enter: {
            x: { scale: 'x', field: 'x' },
            y: { scale: 'y', field: 'y' },
            stroke: { value: seriesColours[at] ?? ink },
            strokeWidth: { value: lineWidth },
            strokeDash: { value: [...(dashes[at] ?? [])] },
            strokeJoin: { value: 'round' as const },
          },
        },
      })),
      ...(labelled ? [seriesLabels(width)] : []),
      {
        type: 'symbol',
        from: { data: 'marks' },
        encode: {
          enter: {
            x: { scale: 'x', field: 'x' },
            y: { scale: 'y', field: 'y' },
            size: { value: 700 },
            fill: { value: '#ffffff' },
            stroke: { value: ink },
            strokeWidth: { value: lineWidth },
          },
        },
      },
      // Twice: white behind, so that a line under the words does not cross them out.
      markLabels('#ffffff', 12),
      markLabels(undefined, 0),
    ],
  };
}

const axis = {
  grid: true,
  gridColor: faint,
  gridWidth: 2,
  domainColor: ink,
  domainWidth: 3,
  ticks: false,
  labelFont: fontFamily,
  labelFontSize: smallestType,
  labelColor: ink,
  labelPadding: 16,
  // Without a canvas vega guesses widths, and would cut or drop labels by its guess.
  labelLimit: 0,
  labelOverlap: false,
  titleFont: fontFamily,
  titleFontSize: 30,
  titleFontWeight: 'normal' as const,
  titleColor: ink,
  titleLimit: 0,
};
const words = { font: { value: fontFamily }, fontSize: { value: smallestType }, lineHeight: { value: 34 }, limit: { value: 0 } };
const seriesLabels = (width: number) => ({
  type: 'text' as const,
  from: { data: 'labels' },
  encode: {
    enter: {
      ...words,
      x: { value: width + 16 },
      y: { field: 'y' },
      text: { field: 'text' },
      fill: { field: 'colour' },
      baseline: { value: 'middle' as const },
      fontWeight: { value: 'bold' as const },
    },
  },
});
const markLabels = (halo: string | undefined, wide: number) => ({
  type: 'text' as const,
  from: { data: 'marks' },
  encode: {
    enter: {
      ...words,
      x: { scale: 'x', field: 'x' },
      y: { scale: 'y', field: 'y' },
      dx: { field: 'dx' },
      dy: { field: 'dy' },
      align: { field: 'align' },
      text: { field: 'text' },
      fill: { value: ink },
      ...(halo === undefined ? {} : { stroke: { value: halo }, strokeWidth: { value: wide }, strokeJoin: { value: 'round' as const } }),
    },
  },
});
