/** What an amount is worth to an entry, as an item and its price: dimension, sane range and place are prices here, never gates. */
import { canBeTold, type Entry, isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Preferences } from '../context.js';
import { type AmountAtom, textWorth, worth } from '../language/values.js';
import type { Item, Said } from '../reading.js';
import type { AmountToken } from '../scan.js';
import { prices } from './prices.js';
import type { Amount, Value, Where } from './sems.js';

export interface Typed {
  readonly said: Said;
  readonly price: number;
  /** The other end of a range, where the entry has two ends said of it. */
}
/** Units that people say for a rate: `450 lb springs`. */
const shortRates: Readonly<Record<string, string>> = {
  lb: 'lb/in',
  lbs: 'lb/in',
  pound: 'lb/in',
  pounds: 'lb/in',
  '#': 'lb/in',
  kg: 'kg/mm',
  kgs: 'kg/mm',
  kilo: 'kg/mm',
  kilos: 'kg/mm',
  n: 'n/mm',
};
const shortened = (token: AmountToken, entry: Entry): AmountToken | undefined => {
  if (token.unit === undefined) return undefined;
  const unit =
    entry.dimension === 'rate'
      ? shortRates[token.unit]
      : entry.dimension === 'torque' && /^(?:lbs?|pounds?)$/.test(token.unit)
        ? 'lb-ft'
        : undefined;
  return unit === undefined ? undefined : { ...token, unit };
};
function atomOf(token: AmountToken, value: Value): AmountAtom {
  const negative = value.negative ? { ...token, value: -Math.abs(token.value) } : token;
  return {
    is: 'amount',
    token: negative,
    ...(value.change === undefined ? {} : { change: value.change }),
    ...(value.within ? { within: value.within } : {}),
  };
}
/** An amount as said of an entry; nothing where its dimension forbids it. */
export function typed(entry: Entry, amount: Amount, value: Value, preferences: Preferences): Typed | undefined {
  const { token } = amount;
  if (token.is !== 'amount') {
    if (entry.kind !== 'designation' || (token.is === 'rim') !== entry.path.startsWith('wheel')) return undefined;
    const got = textWorth(entry, { is: 'text', text: token.text, kind: token.is });
    return 'said' in got ? { said: got.said, price: 0 } : undefined;
  }
  if (entry.kind === 'designation' || entry.kind === 'choice') return undefined;
  if (amount.wordy && entry.dimension !== 'ratio' && token.value !== 0) return undefined;
  if (entry.kind === 'curve') return curveTyped(entry, token, value, preferences);
  if (value.over) return undefined;
  const extra = amount.wordy ? prices.value.wordy : 0;
  const got = worth(entry, atomOf(token, value), preferences);
  if ('said' in got) return { said: got.said, price: extra + (got.unlikely ? prices.value.otherUnit : 0) };
  const short = got.bad === 'dimension' ? shortened(token, entry) : undefined;
  const again = short && worth(entry, atomOf(short, value), preferences);
  return again && 'said' in again
    ? { said: again.said, price: extra + prices.value.near + (again.unlikely ? prices.value.otherUnit : 0) }
    : undefined;
}
/** `300-500 over 3 in`, `300 to 500 over 3`: a rate that rises evenly. */
function curveTyped(entry: Entry, token: AmountToken, value: Value, preferences: Preferences): Typed | undefined {
  const other = value.others?.[0]?.token;
  const end: AmountToken | undefined = other?.is === 'amount' ? other : token.to === undefined ? undefined : { ...token, value: token.to };
  if (!end || !value.over) return undefined;
  const { to: _, ...start } = token;
  const unit = start.unit ?? end.unit;
  const rate = (one: AmountToken): AmountToken => {
    const withUnit = unit === undefined ? one : { ...one, unit };
    const { to: __, ...alone } = withUnit;
    return shortened(alone, entry) ?? alone;
  };
  const zero: AmountToken = {
    is: 'amount',
    at: token.at,
    text: '0',
    value: 0,
    ...(value.over.unit === undefined ? {} : { unit: value.over.unit }),
  };
  const got = worth(
    entry,
    {
      is: 'amount',
      token,
      curve: {
        points: [
          [zero, rate(start)],
          [value.over, rate(end)],
        ],
        between: 'line',
        sure: true,
      },
    },
    preferences,
  );
  return 'said' in got ? { said: got.said, price: 0 } : undefined;
}
export interface Placed {
  readonly places: readonly string[];
  readonly placed: boolean;
  readonly price: number;
}
/** The places of an entry that words for a place mean. */
export function placedAt(entry: Entry, where: Where | undefined): Placed | undefined {
  const all = placesOf(entry.scope);
  if (all.length === 1) return { places: all, placed: true, price: where && !where.all ? unusedPlace(entry, where) : 0 };
  if (!where) return { places: all, placed: false, price: entry.alike ? 0 : prices.place.unsaid };
  const isGear = entry.scope === 'gear';
  if (isGear !== (where.gear === true)) return where.all && !isGear ? { places: all, placed: true, price: 0 } : undefined;
  const places = all.filter((place) => where.places.includes(place));
  if (places.length === 0) return undefined;
  // An extensive reading of one wheel is not told of an end.
  const spread = entry.extensive && places.length > 1 && entry.scope === 'corner' ? prices.place.unused : 0;
  return { places, placed: true, price: spread };
}
/** A place beside an entry of the whole car: part of its name (`front share`), or of no use. */
function unusedPlace(entry: Entry, where: Where): number {
  const own = [entry.name, ...(entry.words ?? [])].join(' ');
  const inName = (['front', 'rear', 'left', 'right'] as const).some(
    (word) => own.includes(word) && where.places.includes(word === 'left' ? 'lf' : word === 'right' ? 'rf' : word),
  );
  return inName ? 0 : prices.place.unused;
}
/** What it costs to tell an entry, beside its name. */
export const toldPrice = (entry: Entry): number | undefined => (isInput(entry) ? 0 : canBeTold(entry) ? prices.role.resultTold : undefined);
export const askedPrice = (entry: Entry): number =>
  entry.kind === 'choice' || entry.kind === 'designation' || entry.kind === 'curve'
    ? prices.role.nonNumber
    : isInput(entry)
      ? prices.role.inputAsked
      : entry.main
        ? 0
        : prices.role.smallFigure;
export const itemOf = (entry: Entry, at: Placed, said?: Said): Item => ({
  entry,
  places: at.places,
  placed: at.placed,
  ...(said ? { said } : {}),
});
