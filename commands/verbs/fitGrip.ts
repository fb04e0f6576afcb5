/** What the tires grip with, from what was measured: pairs of load and force, or steady laps of a skidpad with the car in use. */
import { isRefusal } from '../../core/catalog.js';
import { fitCoefficient, fitPairs, type GripPair, type Lap, lapAcceleration } from '../../core/subjects/grip/fit.js';
import { gripExponent } from '../../core/subjects/grip/told.js';
import { answer } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { refused } from '../house/own.js';
import { lookAtCar, nothing, numbersOf } from '../looked.js';
import { type AmountToken, scan } from '../scan.js';
import { amount, bare } from '../show/amount.js';
import { amountsOf, homeUnit } from '../units.js';

const example = 'fit grip 400 lb 460 lb, 800 lb 760 lb, 1200 lb 900 lb';

/** The forces of a line in their order, N: one without a unit has that of the others, or the member's own. */
function forcesIn(text: string, context: Context): readonly number[] | Outcome {
  const { preferences } = context.asker;
  const tokens = scan(text).filter((token): token is AmountToken => token.is === 'amount');
  const common = tokens.find(({ unit }) => unit !== undefined)?.unit ?? homeUnit('force', preferences).shown;
  const forces: number[] = [];
  for (const token of tokens) {
    const force = amountsOf(token.value, token.unit ?? common, preferences).find(({ dimension }) => dimension === 'force');
    if (!force) return refused(`${token.text} is no load and no force.`, example);
    forces.push(force.si);
  }
  return forces;
}

const g = 9.80665;
/** How far off a lap's lateral g may be: radius by 1 %, time by half a per cent, which counts twice. Common practice, no source. */
const lapWithin = 0.015;
const lapExample = 'fit grip skidpad 50 ft 7.9 s, 8.0 s';

/** Laps of a line: a radius, and the times on it. */
function lapsIn(text: string, context: Context): readonly number[] | Outcome {
  const { preferences } = context.asker;
  let radius: number | undefined;
  const found: number[] = [];
  for (const token of scan(text)) {
    if (token.is !== 'amount') continue;
    const meanings = token.unit === undefined ? [] : amountsOf(token.value, token.unit, preferences);
    const length = meanings.find(({ dimension }) => dimension === 'length');
    const time = meanings.find(({ dimension }) => dimension === 'time');
    if (length) radius = length.si;
    else if (time && radius !== undefined) {
      if (!(radius > 0 && time.si > 0)) return refused('The radius and the time have to be above zero.', lapExample);
      found.push(lapAcceleration(radius, time.si) / g);
    } else return refused(`${token.text} is neither the radius of the circle nor, after it, the time of a lap.`, lapExample);
  }
  return found.length === 0 ? refused('I need the radius of the circle and the time of a lap.', lapExample) : found;
}

/** The coefficient at which the car in use, as it is, has its limit where the laps were. */
function fromLaps(text: string, context: Context): Outcome {
  const { preferences } = context.asker;
  const car = context.garage.chosen;
  if (!car) return refused('Laps are of a car: save one first.', 'save my car turnip 2640 lb 52.5% front');
  const laterals = lapsIn(text, context);
  if ('answer' in laterals) return laterals;
  const { situation } = lookAtCar(car, context);
  const now = numbersOf(situation);
  const [exponent, start] = [now.number('front.grip.exponent'), now.number('front.grip.mu')];
  for (const known of [exponent, start, now.number('limit.car')]) if (isRefusal(known)) return refused(known.refused, lapExample);
  if (isRefusal(exponent) || isRefusal(start)) throw new Error('looked at just before');
  const supposed = (value: number) => ({ value, within: 0, evidence: 'estimated', source: 'tried' }) as const;
  const limit = (coefficient: number, fall: number) => {
    const facts = new Map(situation.facts);
    for (const end of ['front', 'rear']) {
      facts.set(`${end}.grip.mu`, supposed(coefficient));
      facts.set(`${end}.grip.exponent`, supposed(fall));
    }
    const reached = numbersOf({ ...situation, facts }).number('limit.car');
    return isRefusal(reached) ? reached : Math.abs(reached) / g;
  };
  const laps = laterals.map((lateral): Lap => ({ lateral, within: lapWithin * lateral, limit }));
  const fit = fitCoefficient(laps, exponent, start);
  if (isRefusal(fit)) return refused(fit.refused, lapExample);
  const mu = amount(fit.coefficient, 'ratio', preferences, fit.within);
  const line = `set grip ${Number(fit.coefficient.toPrecision(3))} ± ${Number(fit.within.toPrecision(2))}`;
  const usable = fit.coefficient >= 0.2 && fit.coefficient <= 2.2;
  return {
    answer: answer('told', `Grip coefficient ${mu.text} at both ends, from ${laps.length === 1 ? 'one lap' : `${laps.length} laps`}.`, {
      amount: mu,
      rows: laterals.map((lateral, n) => ({
        label: `lap ${n + 1}, lateral g`,
        cells: [bare(lateral * g, 'acceleration', preferences, lateral * g * lapWithin)],
      })),
      notes: [
        `With its fall of grip as ${Number(exponent.toPrecision(2))}, ${car.name} then has its limit where the laps were. The ± is that of the laps.`,
        ...(usable ? [] : ['That is outside what tires do: look at the radius and the times again.']),
      ],
      assumptions: ['The radius is that of the path of the middle of the car; both ends are taken to have the same tires.'],
      cautions: ['A closed course only; tires near their limit let go without notice.'],
      next: usable ? [{ label: line, line }] : [],
    }),
  };
}

export const fitGrip: Command = {
  word: 'fit grip',
  also: ['grip from', 'fit the grip', 'fit tire grip'],
  group: 'verb',
  summary: "A tire's grip: from pairs of load and the force it gave there, or from steady laps of a skidpad.",
  examples: [
    { line: example, does: 'three pairs: the grip and how sure it is' },
    { line: lapExample, does: 'laps of a circle of that radius, with the car in use' },
  ],
  takes: 'text',
  changes: false,
  run(reading, context) {
    const { preferences } = context.asker;
    if (/\b(?:skid ?pad|circle|laps?)\b/i.test(reading.rest)) return fromLaps(reading.rest, context);
    const forces = forcesIn(reading.rest, context);
    if ('answer' in forces) return forces;
    if (forces.length % 2 !== 0)
      return refused('I need pairs: a load, and the side force it gave there; one of them stands alone.', example);
    const pairs: GripPair[] = [];
    for (let k = 0; k < forces.length; k += 2) pairs.push({ load: forces[k] ?? 0, force: forces[k + 1] ?? 0 });
    const looked = context.garage.chosen ? lookAtCar(context.garage.chosen, context) : nothing;
    const reference = numbersOf(looked.situation).number('front.grip.load');
    if (isRefusal(reference)) return refused(reference.refused, example);
    const fit = fitPairs(pairs, reference);
    if (isRefusal(fit)) return refused(fit.refused, example);
    const load = bare(reference, 'force', preferences, reference / 100).text;
    const toType = `${Number(reference.toPrecision(6))} N`;
    const [mu, fall] = [
      amount(fit.coefficient, 'ratio', preferences, fit.within?.coefficient ?? 0),
      amount(fit.exponent, 'ratio', preferences, fit.within?.exponent ?? 0),
    ];
    const rows = pairs.map((pair, n) => {
      const fitted = fit.coefficient * (pair.load / reference) ** -fit.exponent * pair.load;
      return {
        label: `pair ${n + 1}, off by`,
        cells: [amount(pair.force - fitted, 'force', preferences, Math.abs(fitted) / 50, { signed: true }).text.replace(/ ?±.*$/, '')],
      };
    });
    const [sane, saneFall] = [[0.2, 2.2], gripExponent.sane ?? [0, 1]] as const;
    const usable = fit.coefficient >= sane[0] && fit.coefficient <= sane[1] && fit.exponent >= saneFall[0] && fit.exponent <= saneFall[1];
    const told = (one: typeof mu): string =>
      `${Number(one.si.toPrecision(4))}${one.within === undefined ? '' : ` ± ${Number(one.within.toPrecision(2))}`}`;
    const line = `set grip ${told(mu)}, grip exponent ${told(fall)}, grip load ${toType}`;
    return {
      answer: answer('told', `Grip coefficient ${mu.text} at ${load}, and it falls with load by the power ${fall.text}.`, {
        amount: mu,
        rows,
        notes: [
          `mu = ${Number(fit.coefficient.toPrecision(3))} (N/${load})^-${Number(fit.exponent.toPrecision(3))}, by least squares of the logarithms.`,
          ...(fit.within === undefined ? ['Two pairs fit exactly: a third would tell how sure it is.'] : []),
          ...(usable ? [] : ['That is outside what tires do: look at the pairs again.']),
        ],
        cautions: ['A closed course only; tires near their limit let go without notice.'],
        next: usable && looked.car ? [{ label: line, line }] : [],
      }),
    };
  },
};
