/** Lines in which nothing is named: no words at all, or amounts alone. */
import type { Stop } from '../reading.js';
import { dimensionWords, everydayUnits, meaningsOf } from '../units.js';
import { ofWhat } from './refusals.js';
import type { Spoken } from './spoken.js';
import { atomText } from './values.js';

/** No word at all, or amounts alone: nothing says what of. */
export function nothingNamed(spoken: Spoken): Stop | undefined {
  const { atoms } = spoken.atoms;
  const { verb } = spoken.asked;
  if (atoms.every((atom) => atom.is === 'break' || atom.is === 'to') && verb === undefined)
    return { stop: 'refused', sentence: 'I find no words to go by in that.', line: 'help' };
  const sum = sumOfTwoKinds(spoken);
  if (sum) return sum;
  if (verb !== undefined || atoms.some((atom) => atom.is !== 'amount' && atom.is !== 'place' && atom.is !== 'break')) return undefined;
  // `425 rears`, `375s front`: the plural names springs.
  if (atoms.some((atom) => (atom.is === 'amount' && atom.token.plural) || (atom.is === 'place' && atom.plural))) return undefined;
  const words = atoms.flatMap((atom) => (atom.is === 'amount' ? [atomText(atom)] : atom.is === 'place' ? [atom.word] : []));
  const amount = atoms.find((atom) => atom.is === 'amount');
  return ofWhat({ kind: 'alone', why: () => words.join(' '), ...(amount?.is === 'amount' ? { amount } : {}) });
}
/** `450 lb/in + 8 kg`: amounts of two kinds can't be added. */
function sumOfTwoKinds(spoken: Spoken): Stop | undefined {
  const { atoms } = spoken.atoms;
  for (let n = 1; n + 1 < atoms.length; n++) {
    const [a, plus, b] = [atoms[n - 1], atoms[n], atoms[n + 1]];
    if (a?.is !== 'amount' || plus?.is !== 'break' || plus.joint !== '+' || b?.is !== 'amount' || !a.token.unit || !b.token.unit) continue;
    const [one, other] = [meaningsOf(a.token.unit), meaningsOf(b.token.unit)];
    if (one.some(({ dimension }) => other.some((second) => second.dimension === dimension))) continue;
    const first = one[0]!.dimension;
    const like =
      first === 'rate' && /^kgs?$/.test(b.token.unit) ? 'kg/mm' : (everydayUnits(first, spoken.setting.preferences)[0]?.shown ?? '');
    const words = (list: typeof one) => list.map(({ dimension }) => dimensionWords[dimension])[0] ?? 'a number';
    return {
      stop: 'refused',
      sentence: `${b.token.text} is ${words(other)} and can't be added to ${words(one)}.`,
      line: `calc ${a.token.text} + ${b.token.value} ${like}`,
    };
  }
  return undefined;
}
