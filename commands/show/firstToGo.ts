/** Which end of a car lets go first, in words. */
import { type Evaluation, pathAt } from '../../core/engine.js';
import { lateral } from '../../core/subjects/cornering/asked.js';
import { axleLimitThisWay, balanceIndex } from '../../core/subjects/cornering/balance.js';
import { gripMargin } from '../../core/subjects/cornering/turning.js';
import type { Preferences } from '../context.js';
import { bare } from './amount.js';
import { balanceText, percent } from './balance.js';
import { known, plusMinus } from './spoken.js';

export const limitAt = (end: 'front' | 'rear'): string => pathAt(end, axleLimitThisWay);
/** Which end, at what g, and what the other would hold; or that it can't be told apart. */
export function firstToGo(numbers: Evaluation, whose: string, preferences: Preferences): string {
  const index = known(numbers, balanceIndex.path) ?? 0;
  const [first, other] = index >= 0 ? (['front', 'rear'] as const) : (['rear', 'front'] as const);
  const doubt = numbers.within(balanceIndex.path);
  const [at, holds] = [first, other].map((end) => limitText(numbers, end, preferences));
  const The = whose === '' ? 'The' : `${whose}the`;
  // Beyond what the tires hold there is nothing steady to tell of.
  if ((known(numbers, gripMargin.path) ?? 0) < 0) {
    const asked = bare(known(numbers, lateral.path) ?? 0, 'acceleration', preferences).text;
    return `${whose}${whose === '' ? 'It' : 'it'} won't hold ${asked}: the ${first} lets go at ${at}.`;
  }
  if (Math.abs(index) < doubt)
    return `${whose}${whose === '' ? 'A' : 'a'} toss-up, the ${first} lets go at ${at}, the ${other} would at ${holds}.`;
  return `${The} ${first} lets go first, at ${at}. The ${other} would hold ${holds}.`;
}
/** Hundredths tell the ends apart, and no more is known of either. */
const limitText = (numbers: Evaluation, end: 'front' | 'rear', preferences: Preferences): string => {
  const value = known(numbers, limitAt(end));
  return value === undefined ? 'not known' : bare(value, 'acceleration', preferences, hundredth).text;
};
const hundredth = 0.04 * 9.80665;
/** `That's a push of 2.1 % ± 1.7: surely the front, how much is less sure.` */
export function pushText(numbers: Evaluation, preferences: Preferences): string {
  const index = known(numbers, balanceIndex.path) ?? 0;
  const doubt = numbers.within(balanceIndex.path);
  const text = balanceText(index, preferences, doubt);
  if (text === 'even') return `Neither push nor loose, ± ${plusMinus(doubt, percent, preferences)} %.`;
  const [word = '', ...much] = text.split(' ');
  const first = index >= 0 ? 'front' : 'rear';
  const is = word === 'push' ? `a push of ${much.join(' ')}` : `loose by ${much.join(' ')}`;
  const sure =
    doubt > Math.abs(index) ? ', too little to call' : doubt > Math.abs(index) / 3 ? `: surely the ${first}, how much is less sure` : '';
  return `That's ${is}${doubt > 0 ? ` ± ${plusMinus(doubt, percent, preferences)}` : ''}${sure}.`;
}
