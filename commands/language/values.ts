/** What an amount of a line is worth to an entry: its dimension speaks first, then its sane range, then the member's units. */
import { type Curve, canBeTold, type Entry, isInput, isRefusal } from '../../core/catalog.js';
import type { Dimension } from '../../core/dimensions.js';
import type { Preferences } from '../context.js';
import type { Said } from '../reading.js';
import type { AmountToken } from '../scan.js';
import { dimensionWords, everydayUnits, type Meaning, meaningsOf, toSI, unitShown } from '../units.js';
import { writeExactly, writeQuantity } from './quantities.js';

/** An amount as the line has it, with what stands around it. */
export interface AmountAtom {
  readonly is: 'amount';
  readonly token: AmountToken;
  /** The other end, where words made the range: `300 to 800`. */
  readonly to?: AmountToken;
  /** `more`, `less`, `stiffer`: a change of what is there. */
  readonly change?: 1 | -1;
  /** `± 10`. */
  readonly within?: AmountToken;
  /** `500-700 over 4in`, `500 then 700 after 4in`, `0:500 4:700`. */
  readonly curve?: {
    readonly points: readonly (readonly [AmountToken, AmountToken])[];
    readonly between: 'line' | 'step';
    readonly sure: boolean;
  };
  /** Four readings in a row, or a pair with a stroke between. */
  readonly list?: readonly AmountToken[];
}
/** A size of a tire or wheel. */
export interface TextAtom {
  readonly is: 'text';
  readonly text: string;
  readonly kind: 'size' | 'rim';
}
export type Worth =
  | {
      readonly said: Said;
      readonly note?: string /** Read in another unit than the member's own, or not sane: less likely. */;
      readonly unlikely: boolean;
    }
  | { readonly bad: 'dimension' | 'range' | 'negative' | 'kind' | 'unit'; readonly why: () => string; readonly units?: readonly string[] };

const article = (text: string): string => text.replace(/^an? /, '');
/** What is shown of an entry: a limit, an example. */
export const shown = (si: number, entry: Entry, preferences: Preferences): string =>
  entry.dimension ? writeQuantity(si, entry.dimension, preferences, undefined, { percent: entry.percent === true }) : String(si);

/** 1.300 and 1,300: the mark that the member uses for decimals is taken for one first, the other for one between thousands. */
function readings(token: AmountToken, preferences: Preferences): readonly number[] {
  if (token.other === undefined) return [token.value];
  const [small, large] = Math.abs(token.value) < Math.abs(token.other) ? [token.value, token.other] : [token.other, token.value];
  return token.text.includes(preferences.decimalMark) ? [small, large] : [large, small];
}
/** Whether a bare number can be an amount of an entry at all: a quick look before the careful one. */
export function canBe(entry: Entry, token: AmountToken, preferences: Preferences): boolean {
  const { sane, dimension } = entry;
  if (!sane || !dimension || entry.kind !== 'quantity') return entry.kind !== 'choice' && entry.kind !== 'designation';
  if (token.unit !== undefined && !token.soft)
    return meaningsOf(token.unit).some((one) => one.dimension === dimension) || percentChange(token);
  if (token.sign === '+' || token.apart || token.soft) return true;
  const [low, high] = sane;
  const slack = 1e-9 * (high - low);
  const fits = (value: number) =>
    everydayUnits(dimension, preferences).some(
      (unit) => value * unit.factor + (unit.offset ?? 0) >= low - slack && value * unit.factor + (unit.offset ?? 0) <= high + slack,
    );
  return fits(token.value) || (token.other !== undefined && fits(token.other));
}
const percentChange = (token: AmountToken): boolean => token.unit === '%' || token.unit === 'percent';
function meaningFor(token: AmountToken, dimension: Dimension): Meaning | 'bare' | undefined {
  if (token.unit === undefined) return 'bare';
  const found = meaningsOf(token.unit).find((one) => one.dimension === dimension);
  return found ?? (token.soft ? 'bare' : undefined);
}
/** A token's SI value in a dimension, without a look at what is sane; the unit of `like` where it has none of its own. */
function plainValue(
  token: AmountToken,
  dimension: Dimension,
  preferences: Preferences,
  like: AmountToken | undefined,
  difference: boolean,
): number | undefined {
  const meaning = meaningFor(token, dimension);
  if (meaning === undefined) return undefined;
  const [value = token.value] = readings(token, preferences);
  if (meaning !== 'bare') return toSI(value, meaning.unit, preferences, difference);
  const other = like && meaningFor(like, dimension);
  const unit = other && other !== 'bare' ? other.unit : everydayUnits(dimension, preferences)[0]!;
  return toSI(value, unit, preferences, difference);
}
const dimensionOf = (token: AmountToken): string => {
  const [first] = token.unit === undefined ? [] : meaningsOf(token.unit);
  return first ? dimensionWords[first.dimension] : 'a plain number';
};
export function worth(entry: Entry, atom: AmountAtom, preferences: Preferences): Worth {
  if (entry.kind === 'curve')
    return atom.curve ? curveWorth(entry, atom.curve, atom.token, preferences) : { bad: 'kind', why: () => `${entry.name} is a table` };
  if (atom.curve) return { bad: 'kind', why: () => `${entry.name} is one number, not a table` };
  if (!entry.dimension || (entry.kind !== 'quantity' && entry.kind !== 'figure'))
    return { bad: 'kind', why: () => `${entry.name} is no amount` };
  return quantityWorth(entry, entry.dimension, atom, preferences);
}
function quantityWorth(entry: Entry, dimension: Dimension, atom: AmountAtom, preferences: Preferences): Worth {
  const { token } = atom;
  const end = atom.to;
  // 15 to 28 mm: the unit of the other end is of both.
  if (token.unit === undefined && end?.unit !== undefined && meaningFor(end, dimension) === undefined)
    return { bad: 'dimension', why: () => wrongDimension(end, entry, dimension, preferences) };
  const { sane } = entry;
  const positive = sane !== undefined && sane[0] >= 0;
  const plus = token.sign === '+' && positive && dimension !== 'ratio' ? 1 : token.apart && positive ? -1 : undefined;
  const change = atom.change ?? plus;
  const percent = token.unit !== undefined && meaningsOf(token.unit).some((one) => one.dimension === 'ratio');
  if (change !== undefined && percent && (dimension !== 'ratio' || !entry.percent))
    return { said: { value: 1 + (change * Math.abs(token.value)) / 100, change: 'times', text: atomText(atom) }, unlikely: false };

  const isCount = token.unit === undefined && Number.isInteger(token.value) && token.value >= 0 && token.value <= mostCounted;
  if (entry.counted !== undefined && isCount)
    return { bad: 'dimension', why: () => `${token.text} counts them; ${entry.name} is wanted as a length: ${entry.counted}` };
  const meaning = meaningFor(token, dimension);
  if (meaning === undefined) {
    return { bad: 'dimension', why: () => wrongDimension(token, entry, dimension, preferences) };
  }
  if (change !== undefined) {
    const si = plainValue(token, dimension, preferences, undefined, true);
    if (si !== undefined) {
      const unit = meaning === 'bare' ? everydayUnits(dimension, preferences)[0]! : meaning.unit;
      const note = meaning === 'bare' && unit.shown !== '' ? `${token.text} read as ${unit.shown}` : undefined;
      return { said: { value: change * Math.abs(si), change: 'plus', text: atomText(atom) }, unlikely: false, ...(note ? { note } : {}) };
    }
  }
  const second = atom.to ?? (token.to === undefined ? undefined : { ...token, value: token.to });
  const isSane = (si: number) =>
    sane === undefined || (si >= sane[0] * (sane[0] > 0 ? 1 - 1e-9 : 1) && si <= sane[1] * (sane[1] > 0 ? 1 + 1e-9 : 1));
  const finish = (si: number, text: string, note: string | undefined, unlikely: boolean, unit: Meaning['unit']): Worth => {
    // Both ends of a range are in the unit that was said or found for one of them.
    const secondMeaning = second && meaningFor(second, dimension);
    const to =
      second === undefined || secondMeaning === undefined
        ? undefined
        : toSI(second.value, secondMeaning === 'bare' ? unit : secondMeaning.unit, preferences);
    const within = atom.within && plainValueIn(atom.within, dimension, unit, si, preferences);
    const notes = [note, token.comma ? `${token.text} read with a decimal comma` : undefined].filter((one) => one !== undefined);
    return {
      said: { value: si, text, ...(to === undefined ? {} : { to }), ...(within === undefined ? {} : { within }) },
      unlikely,
      ...(notes.length > 0 ? { note: notes.join('; ') } : {}),
    };
  };
  const secondUnit = second && meaningFor(second, dimension);
  if (meaning === 'bare' && secondUnit !== undefined && secondUnit !== 'bare' && token.unit === undefined) {
    const si = toSI(token.value, secondUnit.unit, preferences);
    return isSane(si) || !canBeTold(entry)
      ? finish(si, atomText(atom), undefined, false, secondUnit.unit)
      : outside(entry, si, token, preferences);
  }
  if (meaning !== 'bare') {
    for (const value of readings(token, preferences)) {
      const si = toSI(value, meaning.unit, preferences);
      if (isSane(si))
        return finish(
          si,
          atomText(atom),
          value === token.value ? undefined : `${token.text} read as ${value} ${meaning.unit.shown}`,
          false,
          meaning.unit,
        );
    }
    return outside(entry, toSI(token.value, meaning.unit, preferences), token, preferences);
  }
  if (dimension === 'angle' && token.text.includes('/') && !token.slashed)
    return { bad: 'dimension', why: () => `${bareText(token)} reads as inches; ${entry.name} is wanted as an angle (deg)` };
  const own = shares(entry, token, everydayUnits(dimension, preferences));
  const fits = own.flatMap((unit, n) => {
    const value = readings(token, preferences).find((one) => isSane(toSI(one, unit, preferences)));
    return value === undefined ? [] : [{ unit, value, own: n === 0 }];
  });
  const home = fits.find((one) => one.own);
  const chosen = home ?? (fits.length === 1 ? fits[0] : undefined);
  if (chosen) {
    const number = chosen.value === token.value ? bareText(token) : String(chosen.value);
    const unit = chosen.unit.shown;
    const note =
      unit === '' && chosen.value === token.value
        ? undefined
        : `${bareText(token)} read as ${unit === '' ? chosen.value : `${number}${unit === '%' || unit === '°' ? unit : ` ${unit}`}`}`;
    const text = unit === '' ? number : unit === '%' || unit === '°' ? `${number}${unit}` : `${number} ${unit}`;
    return finish(
      toSI(chosen.value, chosen.unit, preferences),
      second ? atomText(atom) : text,
      note,
      !home || token.soft === true,
      chosen.unit,
    );
  }
  if (fits.length > 1) return { bad: 'unit', why: () => `${token.text} of which unit?`, units: fits.map((one) => one.unit.shown) };
  return outside(entry, toSI(token.value, own[0]!, preferences), token, preferences);
}
/** People count holes, not wheels: up to here a bare whole number is which, not how far. */
const mostCounted = 6;
/** A figure told in percent is sought in percent: `cross 50` is no fifty times. */
function shares(entry: Entry, token: AmountToken, units: readonly Meaning['unit'][]): readonly Meaning['unit'][] {
  if (!entry.percent) return units.filter((unit) => unit.shown !== '%');
  const percents = !isInput(entry) && Math.abs(token.value) > 1;
  return percents ? [...units].sort((a, b) => Number(b.shown === '%') - Number(a.shown === '%')) : units;
}
function wrongDimension(token: AmountToken, entry: Entry, dimension: Dimension, preferences: Preferences): string {
  const wanted = everydayUnits(dimension, preferences)
    .map((unit) => unit.shown)
    .filter((unit) => unit !== '');
  const like = wanted.length > 0 ? ` (${wanted.slice(0, 3).join(', ')})` : '';
  return `${token.text} is ${dimensionOf(token)}; ${entry.name} is wanted as ${dimensionWords[dimension]}${like}`;
}
function plainValueIn(
  token: AmountToken,
  dimension: Dimension,
  unit: Meaning['unit'],
  of: number,
  preferences: Preferences,
): number | undefined {
  const meaning = meaningFor(token, dimension);
  if (meaning === 'bare') return Math.abs(toSI(token.value, unit, preferences, true));
  if (meaning) return Math.abs(toSI(token.value, meaning.unit, preferences, true));
  // ± 5 % of the amount.
  const percent = token.unit === undefined ? undefined : meaningsOf(token.unit).find((one) => one.dimension === 'ratio');
  return percent ? Math.abs(token.value * percent.unit.factor * of) : undefined;
}
function outside(entry: Entry, si: number, token: AmountToken, preferences: Preferences): Worth {
  const [low, high] = entry.sane ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const negative = low >= 0 && (si < 0 || (si === 0 && low > 0));
  if (negative) {
    const scale = entry.extensive && entry.scope === 'corner' ? 'a scale cannot read below zero; ' : '';
    return { bad: 'negative', why: () => `${scale}${entry.name} must be above 0, and ${token.text} is not` };
  }
  return {
    bad: 'range',
    why: () => `${token.text} is out of range for ${entry.name}: ${shown(low, entry, preferences)} to ${shown(high, entry, preferences)}`,
  };
}
const bareText = (token: AmountToken): string =>
  token.end ? token.text.replace(/\s?[fr]$/i, '') : token.soft ? token.text.replace(/\s?in$/i, '') : token.text.replace(/'?s$/, '');
/** The amount as typed. */
export function atomText(atom: AmountAtom): string {
  const second = atom.to ? ` to ${atom.to.text}` : '';
  const change = atom.change === undefined ? '' : atom.change > 0 ? ' more' : ' less';
  return `${atom.token.text}${second}${change}`;
}

function curveWorth(entry: Entry, curve: NonNullable<AmountAtom['curve']>, token: AmountToken, preferences: Preferences): Worth {
  const { dimension, along } = entry;
  if (!dimension || !along) return { bad: 'kind', why: () => `${entry.name} is no table` };
  const x: number[] = [];
  const y: number[] = [];
  const unitsOf = (n: 0 | 1) => curve.points.map((point) => point[n]).find((one) => one.unit !== undefined);
  for (const [first, second] of curve.points) {
    const at = plainValue(first, along, preferences, unitsOf(0), false);
    const value = plainValue(second, dimension, preferences, unitsOf(1), false);
    if (at === undefined)
      return {
        bad: 'dimension',
        why: () => `${first.text} is ${dimensionOf(first)}; ${article(dimensionWords[along])} is wanted along ${entry.name}`,
      };
    if (value === undefined)
      return { bad: 'dimension', why: () => `${second.text} is ${dimensionOf(second)}; ${entry.name} is ${dimensionWords[dimension]}` };
    x.push(at);
    y.push(value);
  }
  if (x.length < 2 || x.some((value, n) => n > 0 && value <= x[n - 1]!))
    return { bad: 'range', why: () => `the points of ${entry.name} must rise, from the first to the last` };
  const off = y.findIndex((value) => entry.sane !== undefined && (value < entry.sane[0] || value > entry.sane[1]));
  if (off >= 0) return outside(entry, y[off]!, curve.points[off]![1], preferences);
  const [low, high] = entry.saneAlong ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const far = x.findIndex((value) => value < low || value > high);
  if (far >= 0) return { bad: 'range', why: () => `${curve.points[far]![0].text} is out of range along ${entry.name}` };
  const value: Curve = { x, y, between: curve.between };
  const said = { value, text: curveText(value, entry, preferences) };
  return {
    said,
    unlikely: false,
    ...(curve.sure ? {} : { note: `${token.text} read as rising evenly over ${writeQuantity(x[1]! - x[0]!, along, preferences)}` }),
  };
}
/** A curve as a line that reads back as the same curve. */
export function curveText(curve: Curve, entry: Entry, preferences: Preferences): string {
  const { dimension = 'ratio', along = 'ratio' } = entry;
  const at = (n: number) => writeExactly(curve.x[n]!, along, preferences);
  const value = (n: number) => writeExactly(curve.y[n]!, dimension, preferences);
  if (curve.x.length === 2 && curve.x[0] === 0 && curve.y[0]! >= 0 && curve.y[1]! >= 0)
    return curve.between === 'line' ? `${value(0)} rising to ${value(1)} over ${at(1)}` : `${value(0)} then ${value(1)} after ${at(1)}`;
  const points = curve.x.map((_, n) => `${at(n)}: ${value(n)}`).join(', ');
  return curve.between === 'line' ? points : `${points} in steps`;
}
/** A size against the designation that reads it. */
export function textWorth(entry: Entry, atom: TextAtom): Worth {
  if (entry.kind !== 'designation' || !entry.parse || !entry.write) return { bad: 'kind', why: () => `${entry.name} is no size` };
  const parsed = entry.parse(atom.text);
  if (isRefusal(parsed)) return { bad: 'range', why: () => parsed.refused };
  return { said: { value: entry.write(parsed), text: entry.write(parsed) }, unlikely: false };
}
/** What an entry's value is as text that reads back as the same value. */
export function valueText(value: Said['value'], entry: Entry, preferences: Preferences, unit?: string): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'object') return curveText(value, entry, preferences);
  if (!entry.dimension) return String(value);
  const usable =
    unit !== undefined && (unitShown(entry.dimension, unit) ?? meaningsOf(unit).find((one) => one.dimension === entry.dimension))
      ? unit
      : undefined;
  return writeExactly(value, entry.dimension, preferences, { percent: entry.percent === true, unit: usable });
}
