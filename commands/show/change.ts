/** Changes of a number, and how exactly they are written. */
import type { Difference } from '../../core/difference.js';
import type { Dimension } from '../../core/dimensions.js';
import type { Preferences } from '../context.js';
import type { Written } from '../language/quantities.js';
import { bare, changeOf } from './amount.js';

type Changed = Pick<Difference, 'change' | 'within'>;
/** Changes below this, in SI or as a part of the number, are arithmetic and not physics. */
const least = 1e-9;
export const isChange = (from: number, to: number): boolean => Math.abs(to - from) > least * (1 + Math.max(Math.abs(from), Math.abs(to)));

/** Both ends are written to what the change can be told to, and no finer than it needs. */
export const endsWithin = ({ change, within }: Changed): number => Math.max(within, Math.abs(change) / 2);

/** A doubt smaller than this part of the change is not worth its digits. */
const sure = 5e-3;
/** `+0.32 in ± 0.04`; where next to nothing is in doubt, three digits of it. */
export const changeText = ({ change, within }: Changed, dimension: Dimension, preferences: Preferences, how: Written): string =>
  within > sure * Math.abs(change)
    ? changeOf(change, dimension, preferences, within, how).text
    : bare(change, dimension, preferences, Math.abs(change) / 20, { ...how, difference: true, signed: true }).text;
