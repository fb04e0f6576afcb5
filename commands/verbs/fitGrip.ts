/** What the tires grip with, from what was measured: pairs of load and force. */
import { isRefusal } from '../../core/catalog.js';
import { gripExponent } from '../../core/inputs/grip.js';
import { fitPairs, type GripPair } from '../../core/traction/gripFit.js';
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

export const fitGrip: Command = {
  word: 'fit grip',
  also: ['grip from', 'fit the grip', 'fit tire grip'],
  group: 'verb',
  summary: "A tire's grip and its fall with load, from pairs: load, then the most force it gave there.",
  examples: [{ line: example, does: 'three pairs: the grip and how sure it is' }],
  takes: 'text',
  changes: false,
  run(reading, context) {
    const { preferences } = context.asker;
    const forces = forcesIn(reading.rest, context);
    if ('answer' in forces) return forces;
    if (forces.length % 2 !== 0)
      return refused('A load and the force it gave there, in pairs, are wanted; one of them stands alone.', example);
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
      answer: answer('told', `Grip coefficient ${mu.text} at ${load}, fall of grip ${fall.text}`, {
        amount: mu,
        rows,
        notes: [
          `mu = ${Number(fit.coefficient.toPrecision(3))} (N/${load})^-${Number(fit.exponent.toPrecision(3))}, by least squares of the logarithms.`,
          ...(fit.within === undefined ? ['Two pairs fit exactly: a third would tell how sure it is.'] : []),
          ...(usable ? [] : ['That is outside what tires do: look at the pairs again.']),
          'From steady laps: skidpad with their radius and time gives the lateral g, and what grip for that limit finds the coefficient.',
        ],
        cautions: ['A closed course only; tires near their limit let go without notice.'],
        next: usable && looked.car ? [{ label: line, line }] : [],
      }),
    };
  },
};
