/** A figure against an input: the values in words, and a chart with the car's own point. */
import { isInput, isRefusal } from '../../core/catalog.js';
import { nameAt, pathAt, probe, type Situation } from '../../core/engine.js';
import { answer, type Chart, type Row } from '../answer.js';
import { type Breathe, oneByOne } from '../breathing.js';
import { phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { refused } from '../house/own.js';
import { unitFor } from '../language/quantities.js';
import { catalog, numbersOf } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { bare, ofResults, sentence, writing } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { labelAt, labelAtAll, labelOf } from '../show/label.js';
import { restsOn } from '../show/rests.js';
import { basisOfCar, sayingAt } from '../show/saying.js';
import { fromSI } from '../units.js';
import { type Asked, askedOf, pathsOf } from './asked.js';

const points = 41;
const mostSeries = 4;
/** How far around the car's own point the axis goes when no range was said, as factors of it. */
const around = [0.6, 1.6] as const;
const tableRows = 6;

/** Where the axis begins and ends, SI. */
function rangeOf(against: Item, own: number | undefined): readonly [number, number] {
  const { entry, said } = against;
  const [low, high] = entry.sane ?? [0, 1];
  if (typeof said?.value === 'number' && said.to !== undefined) return said.value < said.to ? [said.value, said.to] : [said.to, said.value];
  if (own === undefined) return [low, high];
  const [a, b] = own > 0 ? [own * around[0], own * around[1]] : [own - (high - low) / 8, own + (high - low) / 8];
  return [Math.max(low, a), Math.min(high, b)];
}

/** The inputs that move together for a figure: those of the axis that can reach it. */
function inputsFor(figure: string, against: Item): readonly string[] {
  const all = against.places.map((place) => pathAt(place, against.entry));
  return all.filter((path) => catalog.dependsOn(figure, path));
}

async function drawing(figures: readonly string[], against: Item, asked: Asked, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const { situation } = asked.looked;
  const numbers = numbersOf(situation);
  const { entry } = against;
  const usable = figures.filter((figure) => inputsFor(figure, against).length > 0).slice(0, mostSeries);
  const [main] = usable;
  if (main === undefined) {
    const [figure] = figures;
    const name = figure === undefined ? 'That' : sentence(nameAt(catalog.node(figure).entry, catalog.node(figure).place));
    return refused(`${name} does not depend on the ${entry.name}.`, 'draw rear ride frequency against rear spring');
  }
  const inputs = inputsFor(main, against);
  const present = inputs[0] === undefined ? undefined : numbers.number(inputs[0]);
  const own = present === undefined || isRefusal(present) ? undefined : present;
  const [low, high] = rangeOf(against, own);
  const xs = Array.from({ length: points }, (_, at) => low + ((high - low) * at) / (points - 1));
  const all: Sampled[number][] = [];
  for (const figure of usable) {
    const ask = probe(catalog, situation, inputsFor(figure, against), [figure]);
    all.push({ figure, values: await oneByOne(xs, context.breathe, (x) => ask(x)[0]) });
  }
  // A figure that these inputs can reach and do not move (the other end's) is not worth a line beside one that they do.
  const moving = all.filter(({ values }) => values.some((y) => y !== values[0]));
  const sampled = moving.length > 0 ? moving : all;
  if (sampled.every(({ values }) => values.every((y) => y === undefined))) {
    const reason = numbers.number(main);
    const line = isRefusal(reason) ? lineToTell(numbers, reason.because ?? []) : undefined;
    return refused(isRefusal(reason) ? reason.refused : `No value of the ${entry.name} in that range gives one.`, line ?? 'help draw');
  }
  const chart = chartOf(sampled, xs, against, inputs, own, numbers, preferences);
  const rows = tableOf(sampled, xs, entry, preferences);
  const { entry: mainEntry, place } = catalog.node(main);
  const x = (si: number) => bare(si, entry.dimension ?? 'ratio', preferences, 0, { ...writing(entry), digits: ofResults }).text;
  const known = sampled[0]?.values.flatMap((value) => (value === undefined ? [] : [value])) ?? [];
  const spread = Math.max(...known) - Math.min(...known);
  const y = (si: number) => bare(si, mainEntry.dimension ?? 'ratio', preferences, spread / 25, writing(mainEntry)).text;
  const [first, last] = [known[0] ?? 0, known.at(-1) ?? 0];
  const way = last === first ? 'and still' : last > first ? 'up to' : 'down to';
  const yours = chart.marks[0]?.label ? ` You: ${chart.marks[0].label}.` : '';
  const headline = `${sentence(sayingAt(numbers, main))} ${y(first)} at ${x(low)}, ${way} ${y(last)} at ${x(high)}.${yours}`;
  return {
    answer: answer('told', headline, {
      columns: sampled.map(({ figure }) => labelAt(catalog.node(figure).entry, catalog.node(figure).place)),
      rows,
      notes: basisOfCar(numbers, main) === undefined ? [] : [`${sentence(basisOfCar(numbers, main) ?? '')}.`],
      assumptions: isRefusal(numbers.number(main)) ? [] : restsOn(numbers, main, context),
      chart,
      next: [{ label: 'why', line: `why ${phrase(mainEntry, place)}` }],
    }),
  };
}

type Sampled = readonly { readonly figure: string; readonly values: readonly (number | undefined)[] }[];
function tableOf(sampled: Sampled, xs: readonly number[], entry: Item['entry'], preferences: Preferences): readonly Row[] {
  const step = (xs.length - 1) / (tableRows - 1);
  return Array.from({ length: tableRows }, (_, at): Row => {
    const n = Math.round(at * step);
    return {
      label: bare(xs[n] ?? 0, entry.dimension ?? 'ratio', preferences, 0, { ...writing(entry), digits: ofResults }).text,
      cells: sampled.map(({ figure, values }) => {
        const value = values[n];
        const { entry: shown } = catalog.node(figure);
        return value === undefined
          ? 'none'
          : bare(value, shown.dimension ?? 'ratio', preferences, 0, { ...writing(shown), digits: ofResults });
      }),
    };
  });
}

/** Points of the car as it stands are labelled where the labels have room: with more lines the values stand in the words. */
const mostMarkLabels = 2;
const wherever: Readonly<Record<string, string>> = { lf: 'left front', rf: 'right front', lr: 'left rear', rr: 'right rear' };

function chartOf(
  sampled: Sampled,
  xs: readonly number[],
  against: Item,
  inputs: readonly string[],
  own: number | undefined,
  numbers: ReturnType<typeof numbersOf>,
  preferences: Preferences,
): Chart {
  const { entry } = against;
  const xUnit = unitFor(entry.dimension ?? 'ratio', preferences, writing(entry));
  const first = catalog.node(sampled[0]?.figure ?? '').entry;
  const yUnit = unitFor(first.dimension ?? 'ratio', preferences, writing(first));
  // One axis for all: figures of another dimension are left to the table.
  const drawn = sampled.filter(({ figure }) => catalog.node(figure).entry.dimension === first.dimension);
  const toX = (si: number) => fromSI(si, xUnit);
  const toY = (si: number) => fromSI(si, yUnit);
  // Lines of one figure are told apart by their place alone; there is little room beside them.
  const oneFigure = drawn.length > 1 && drawn.every(({ figure }) => catalog.node(figure).entry === first);
  const shortName = (figure: string) => {
    const { entry: of, place } = catalog.node(figure);
    return oneFigure ? (wherever[place] ?? place) : labelAt(of, place);
  };
  const series = drawn.map(({ figure, values }) => ({
    name: shortName(figure),
    points: xs.flatMap((x, at): (readonly [number, number])[] => {
      const y = values[at];
      return y === undefined ? [] : [[toX(x), toY(y)]];
    }),
  }));
  const marks = drawn.flatMap(({ figure }) => {
    const y = numbers.number(figure);
    if (own === undefined || isRefusal(y) || own < (xs[0] ?? 0) || own > (xs.at(-1) ?? 0)) return [];
    if (drawn.length > mostMarkLabels) return [{ x: toX(own), y: toY(y), label: '' }];
    const at = bare(own, entry.dimension ?? 'ratio', preferences, 0, writing(entry)).text;
    const shown = catalog.node(figure).entry;
    return [
      {
        x: toX(own),
        y: toY(y),
        label: `${at}, ${bare(y, shown.dimension ?? 'ratio', preferences, numbers.within(figure), writing(shown)).text}`,
      },
    ];
  });
  const places = inputs.map((path) => catalog.node(path).place);
  const what = oneFigure ? labelOf(first) : drawn.map(({ figure }) => shortName(figure)).join(', ');
  const title = `${what} against ${labelAtAll(entry, places)}`;
  const words = series
    .map(({ name: line, points: all }) => {
      const [from, to] = [all[0], all.at(-1)];
      return from && to
        ? `${line} goes from ${write(from[1])} to ${write(to[1])} ${yUnit.shown} as it goes from ${write(from[0])} to ${write(to[0])} ${xUnit.shown}`
        : line;
    })
    .join('; ');
  const mark = !marks[0]?.label ? '' : ` Your car: ${marks[0].label}.`;
  return {
    title: sentence(title),
    x: { label: labelAtAll(entry, places), unit: xUnit.shown },
    y: { label: drawn.length === 1 ? shortName(drawn[0]?.figure ?? '') : labelOf(first), unit: yUnit.shown },
    series,
    marks,
    words: `${sentence(title)}: ${words}.${mark}`,
  };
}
const write = (value: number): string => String(Number(value.toPrecision(4)));

export async function drawFigures(reading: Reading, context: Context): Promise<Outcome> {
  const { against } = reading;
  const asked = askedOf(reading.sides[0], reading, context);
  if ('answer' in asked) return asked;
  const figures = asked.items.filter(({ entry }) => entry.kind === 'figure').flatMap(pathsOf);
  if (figures.length === 0) return refused('Draw which figure?', 'draw rear ride frequency against rear spring');
  if (!against) {
    let input: Item | undefined;
    for (const figure of figures) input ??= await mainInput(figure, asked.looked.situation, context.breathe);
    if (input === undefined) return refused('Draw it against what?', 'draw rear ride frequency against rear spring');
    return drawing(figures, input, asked, context);
  }
  if (against.entry.kind !== 'quantity' || !isInput(against.entry)) {
    return refused(
      `I can only draw it against an amount that you can set: the ${against.entry.name} is ${against.entry.kind === 'figure' ? 'one that I work out' : 'no amount'}.`,
      'draw rear ride frequency against rear spring',
    );
  }
  return drawing(figures, against, asked, context);
}
/** The told amount that the figure moves most with. */
async function mainInput(figure: string, situation: Situation, breathe: Breathe): Promise<Item | undefined> {
  const numbers = numbersOf(situation);
  let best: { readonly item: Item; readonly moved: number } | undefined;
  for (const { entry, place, path, then, layer } of catalog.nodes) {
    if (then || layer !== 'best' || entry.kind !== 'quantity' || !catalog.dependsOn(figure, path)) continue;
    await breathe();
    const value = numbers.number(path);
    if (isRefusal(value) || value === 0) continue;
    const ask = probe(catalog, situation, [path], [figure]);
    const [low, high] = [ask(value * 0.99)[0], ask(value * 1.01)[0]];
    if (low === undefined || high === undefined) continue;
    // What can be bought or set before what the car simply is.
    const rank = (entry.step ? 100 : 1) * (numbers.status(path) === 'told' && !entry.state ? 10 : 1);
    const moved = rank * Math.abs(high - low);
    if (!best || moved > best.moved) best = { item: { entry, places: [place], placed: true }, moved };
  }
  return best?.item;
}

export const draw: Command = {
  word: 'draw',
  also: ['plot', 'chart', 'graph'],
  group: 'verb',
  summary: 'A figure against an input, as a chart and in numbers, your own point marked.',
  examples: [
    { line: 'draw rear ride frequency against rear spring 300 to 800', does: 'over a range' },
    { line: 'draw front wheel rate against front spring', does: 'around the car as it is' },
  ],
  takes: 'items',
  changes: false,
  run: drawFigures,
};
