/** Any sum: quantities, and the member's own figures by their words, in an expression; and plain conversions. */
import { isRefusal } from '../../core/catalog.js';
import { type Dimension, dimensions } from '../../core/dimensions.js';
import { pathAt } from '../../core/engine.js';
import { answer, type Row } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { lookAtCar, nothing, numbersOf } from '../looked.js';
import { isStop, type Reading } from '../reading.js';
import { read } from '../resolve.js';
import { type AmountToken, scan } from '../scan.js';
import { settingOf } from '../setting.js';
import { amountsOf, dimensionWords, meaningsOf, writeQuantity } from '../units.js';
import { show } from '../verbs/show.js';
import { refused } from './own.js';

const example = 'calc 2 * 450 lb/in * 0.65^2';
const dimensionNames = Object.keys(dimensions).filter((name): name is Dimension => name in dimensions);

/** Words of a sum are read as a question for what they name. */
const onlyShow: readonly Command[] = [show];

const isAmount = (token: { readonly is: string }): token is AmountToken => token.is === 'amount';

/** `3/8 in in mm`: the amounts in another unit, each in the unit before it when it has none. */
function convert(reading: Reading, wanted: string, context: Context): Outcome {
  const { preferences } = context.asker;
  const tokens = reading.names.flatMap((name) => scan(name).filter(isAmount));
  let unit: string | undefined;
  const rows: Row[] = [];
  for (const token of tokens) {
    unit = token.unit ?? unit;
    if (unit === undefined) return refused(`${token.text} of what? A unit is missing.`, `3/8 in in mm`);
    const meanings = amountsOf(token.value, unit, preferences);
    const found = meanings.find(({ dimension }) => meaningsOf(wanted).some((one) => one.dimension === dimension));
    if (!found) {
      const [is] = meanings;
      const [want] = meaningsOf(wanted);
      const sort =
        is && want
          ? `${token.text} is ${dimensionWords[is.dimension]}, ${wanted} ${dimensionWords[want.dimension]}.`
          : `${wanted} is no unit that I know.`;
      return refused(sort, '3/8 in in mm');
    }
    const text = writeQuantity(found.si, found.dimension, preferences, undefined, { unit: wanted });
    const typed = token.unit === undefined ? `${token.text} ${unit}` : token.text;
    rows.push({ label: typed, cells: [{ si: found.si, dimension: found.dimension, text }] });
  }
  const [first] = rows;
  if (!first) return refused('Convert what?', '3/8 in in mm');
  const texts = rows.map(({ cells: [cell] }) => (typeof cell === 'object' ? cell.text : ''));
  const cell = first.cells[0];
  return {
    answer: answer('told', rows.length === 1 ? `${first.label} = ${texts[0]}` : texts.join(', '), {
      ...(typeof cell === 'object' ? { amount: cell } : {}),
      rows: rows.length === 1 ? [] : rows,
    }),
  };
}

type Names = Map<string, { readonly si: number; readonly unit: string }>;
interface Gathered {
  readonly names: Names;
  readonly used: Dimension[];
  readonly figures: string[];
}
/** Quantities with units, and runs of words that name a figure or a fact of the car in use. */
function gather(expression: string, context: Context): Gathered | Outcome {
  const gathered: Gathered = { names: new Map(), used: [], figures: [] };
  const tokens = scan(expression);
  let run: string[] = [];
  for (const token of [...tokens, { is: 'mark', at: 0, text: '' } as const]) {
    if (token.is === 'word') {
      run.push(token.typed);
      continue;
    }
    const named = run.length > 0 ? figureOf(run.join(' '), gathered, context) : undefined;
    if (named) return named;
    run = [];
    if (!isAmount(token) || token.unit === undefined) continue;
    const [meaning] = amountsOf(token.value, token.unit, context.asker.preferences);
    if (!meaning) continue;
    gathered.names.set(token.text, { si: meaning.si, unit: dimensions[meaning.dimension].unit });
    gathered.used.push(meaning.dimension);
  }
  return gathered;
}
/** Adds what a run of words names; an Outcome is the refusal. Words that name nothing are left to the calculator (`sqrt`). */
function figureOf(words: string, gathered: Gathered, context: Context): Outcome | undefined {
  const reading = read(`show ${words}`, settingOf(context, onlyShow));
  const items = isStop(reading) || reading.mended ? [] : (reading.sides[0]?.items ?? []);
  const [item] = items;
  if (!item || items.length > 1 || item.said !== undefined) return undefined;
  const looked = context.garage.chosen ? lookAtCar(context.garage.chosen, context) : nothing;
  const numbers = numbersOf(looked.situation);
  const values = item.places.map((place) => numbers.number(pathAt(place, item.entry)));
  const known = values.filter((value) => typeof value === 'number');
  const [first] = known;
  if (first === undefined) {
    const [why] = values;
    return why !== undefined && isRefusal(why) ? refused(why.refused, example) : undefined;
  }
  if (known.some((value) => value !== first))
    return refused(`Which ${item.entry.name}? They differ from place to place.`, `calc front ${words}`);
  const { dimension = 'ratio' } = item.entry;
  gathered.names.set(words, { si: first, unit: dimensions[dimension].unit });
  gathered.used.push(dimension);
  gathered.figures.push(item.entry.name);
  return undefined;
}

/** The dimension of a result: one that was used, where several have its exponents. */
function dimensionOf(unit: string, base: readonly number[], used: readonly Dimension[]): Dimension | undefined {
  const alike = dimensionNames.filter((name) => dimensions[name].base.every((n, at) => n === base[at]));
  return used.find((name) => alike.includes(name)) ?? alike.find((name) => dimensions[name].unit === unit) ?? alike[0];
}

async function workOut(reading: Reading, context: Context): Promise<Outcome> {
  const { wantedUnit } = reading;
  const whole = reading.rest
    .trim()
    .replace(/[?=]+$/, '')
    .trim();
  const expression = wantedUnit === undefined ? whole : whole.replace(/\s+(?:in|to|into|as)\s+\S+(?:\s\S+)?$/iu, '');
  if (expression === '') return refused('There is nothing to work out.', example);
  const gathered = gather(expression, context);
  if ('answer' in gathered) return gathered;
  const result = await context.calculator.calculate(expression, gathered.names);
  if ('refused' in result) return refused(result.refused, example);
  const { preferences } = context.asker;
  const dimension = dimensionOf(result.unit, result.base, gathered.used);
  const fits =
    wantedUnit !== undefined &&
    meaningsOf(wantedUnit).find((one) => dimensions[one.dimension].base.every((n, at) => n === result.base[at]));
  if (wantedUnit !== undefined && !fits)
    return refused(`That comes out as ${dimension ? dimensionWords[dimension] : result.unit}, which ${wantedUnit} is not.`, example);
  const shown = fits ? fits.dimension : dimension;
  const text = shown
    ? writeQuantity(result.value, shown, preferences, undefined, fits ? { unit: wantedUnit } : {})
    : `${Number(result.value.toPrecision(6))} ${result.unit}`;
  const figures = [...new Set(gathered.figures)];
  return {
    answer: answer('told', `${expression} = ${text}`, {
      ...(shown ? { amount: { si: result.value, dimension: shown, text } } : {}),
      assumptions: figures.length === 0 ? [] : [`Of your car, without the ±: ${figures.join(', ')}.`],
    }),
  };
}

export const calc: Command = {
  word: 'calc',
  also: ['calculate', 'work out'],
  group: 'house',
  summary: 'Any sum, with units and your own figures; and conversions: 3/8 in in mm.',
  examples: [
    { line: example, does: 'with units' },
    { line: 'calc rear spring * 0.65^2', does: "with your car's numbers" },
    { line: '3/8 in in mm', does: 'a conversion, no verb needed' },
  ],
  takes: 'text',
  changes: false,
  run(reading, context) {
    const amounts = reading.names.map((name) => scan(name));
    const plain = amounts.length > 0 && amounts.every(([token, other]) => token !== undefined && isAmount(token) && other === undefined);
    if (reading.wantedUnit !== undefined && plain) return convert(reading, reading.wantedUnit, context);
    return workOut(reading, context);
  },
};
