/** Any sum: quantities, and the member's own figures by their words, in an expression; and plain conversions. */
import { isRefusal } from '../../core/catalog.js';
import { pathAt } from '../../core/engine.js';
import { answer, type Row } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { lookAtFirst, numbersOf } from '../looked.js';
import { isStop, type Reading } from '../reading.js';
import { read } from '../resolve.js';
import { type AmountToken, scan } from '../scan.js';
import { settingOf } from '../setting.js';
import { ofResults } from '../show/amount.js';
import { figure, type Told } from '../sums/amounts.js';
import { dimensionInWords, isPlain } from '../sums/base.js';
import { type Ground, readSum, type SumRefused } from '../sums/read.js';
import { asTyped, inUnit, notesOn, type Result, writeResult } from '../sums/result.js';
import { wantedIn } from '../sums/wanted.js';
import { amountsOf, dimensionWords, meaningsOf } from '../units.js';
import { show } from '../verbs/show.js';
import { refused } from './own.js';

const example = 'calc 2 * 450 lb/in * 0.65^2';

/** Words of a sum are read as a question for what they name. */
const onlyShow: readonly Command[] = [show];

/** How many digits the number was typed with; a fraction of an inch is a ruler's. */
const digitsOf = (text: string): number =>
  text.includes('/') ? 0 : (/[\d.,]*\d/.exec(text)?.[0] ?? '').replace(/\D/g, '').replace(/^0+/, '').length;
const isAmount = (token: { readonly is: string }): token is AmountToken => token.is === 'amount';

/** `3/8 in in mm`: the amounts in another unit, each in the unit before it when it has none. */
function convert(reading: Reading, wanted: string, context: Context): Outcome {
  const { preferences } = context.asker;
  const tokens = reading.names.flatMap((name) => scan(name).filter(isAmount));
  let unit: string | undefined;
  const rows: Row[] = [];
  for (const token of tokens) {
    unit = token.unit ?? unit;
    if (unit === undefined) return refused(`${token.text} in what unit?`, `3/8 in in mm`);
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
    const text = writeResult(found.si, found.dimension, preferences, { unit: wanted, digits: Math.max(ofResults, digitsOf(token.text)) });
    const typed = token.unit === undefined ? `${token.text} ${unit}` : token.text;
    rows.push({ label: typed, cells: [{ si: found.si, dimension: found.dimension, text }] });
  }
  const [first] = rows;
  if (!first) return refused('Convert what?', '3/8 in in mm');
  const texts = rows.map(({ cells: [cell] }) => (typeof cell === 'object' ? cell.text : ''));
  const cell = first.cells[0];
  return {
    answer: answer('told', rows.map(({ label }, at) => `${texts[at]} for ${label}`).join(', '), {
      ...(typeof cell === 'object' ? { amount: cell } : {}),
    }),
  };
}

/** Figures of the car in use by their words, each told once among what the sum rests on. */
class Figures {
  readonly #context: Context;
  readonly used = new Set<string>();
  constructor(context: Context) {
    this.#context = context;
  }
  /** Words that name nothing are left to the sum (`sqrt`). */
  find(words: string): readonly Told[] | SumRefused | undefined {
    const reading = read(`show ${words}`, settingOf(this.#context, onlyShow));
    if (isStop(reading) || reading.mended) return undefined;
    const [side] = reading.sides;
    const [item, another] = side?.items ?? [];
    if (!item || another || item.said !== undefined || reading.sides.length > 1 || reading.tried.length > 0) return undefined;
    const looked = lookAtFirst(side?.subjects ?? [], this.#context);
    if ('answer' in looked) return { refused: looked.answer.headline };
    const numbers = numbersOf(looked.situation);
    const values = item.places.map((place) => numbers.number(pathAt(place, item.entry)));
    const known = values.filter((value) => typeof value === 'number');
    const [first] = known;
    if (first === undefined) {
      const [why] = values;
      return why !== undefined && isRefusal(why) ? { refused: why.refused } : undefined;
    }
    if (known.some((value) => value !== first)) {
      const [place = ''] = item.places;
      const where = item.entry.scope === 'gear' ? '2nd' : place;
      return { refused: `Which ${item.entry.name}? They differ from place to place.`, line: `calc ${where} ${words}` };
    }
    this.used.add(looked.current ? item.entry.name : `${item.entry.name} of ${looked.label}`);
    return figure(first, item.entry.dimension ?? 'ratio');
  }
}

async function workOut(reading: Reading, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const whole = reading.rest.replace(/[?=\s]+$/, '').replace(/^[=\s]+/, '');
  if (whole === '') return refused('There is nothing to work out.', example);
  const wanted = wantedIn(whole);
  const expression = wanted?.expression ?? whole;
  const figures = new Figures(context);
  const ground = { preferences, figure: (words: string) => figures.find(words) };
  const sum = readSum(expression, ground);
  if ('refused' in sum) return refused(sum.refused, sum.line ?? example);
  const worked = await context.calculator.calculate(sum);
  if ('refused' in worked) return refused(worked.refused, example);
  const { ways } = worked;
  const [first] = ways;
  const result = wanted
    ? wanted.known
      ? inUnit(ways, sum, wanted.unit, preferences)
      : await inUnits(`(${expression}) / (${wanted.unit})`, wanted.unit, ground, context)
    : asTyped(ways, sum, preferences);
  if (result === undefined)
    return refused(`That comes out as ${dimensionInWords(first.base)}, which ${wanted?.unit ?? ''} is not.`, example);
  return {
    answer: answer('told', `${expression} = ${result.text}`, {
      ...(result.amount ? { amount: result.amount } : {}),
      notes: result.notes,
      assumptions: figures.used.size === 0 ? [] : [`From your car, its ± left out: ${[...figures.used].join(', ')}.`],
    }),
  };
}
/** In a unit that is put together: how many of it the sum is. */
async function inUnits(expression: string, unit: string, ground: Ground, context: Context): Promise<Result | undefined> {
  const sum = readSum(expression, ground);
  const worked = 'refused' in sum ? sum : await context.calculator.calculate(sum);
  const way = 'refused' in worked ? undefined : worked.ways.find(({ base }) => isPlain(base));
  return way && { text: `${writeResult(way.value, 'ratio', ground.preferences)} ${unit}`, notes: notesOn(way) };
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
  verbatim: true,
  changes: false,
  run(reading, context) {
    const amounts = reading.names.map((name) => scan(name));
    const plain = amounts.length > 0 && amounts.every(([token, other]) => token !== undefined && isAmount(token) && other === undefined);
    if (reading.wantedUnit !== undefined && plain) return convert(reading, reading.wantedUnit, context);
    return workOut(reading, context);
  },
};
