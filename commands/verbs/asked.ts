/** What a question is about: the car that is meant with everything that the line supposes, and the paths that were asked for. */

import { canBeTold } from '../../core/catalog.js';
import { pathAt } from '../../core/engine.js';
import type { Outcome } from '../command.js';
import type { Context } from '../context.js';
import { isNotLaid, lay } from '../facts.js';
import { refused } from '../house/own.js';
import { type Looked, lookAtFirst } from '../looked.js';
import type { Clause, Item, Reading } from '../reading.js';

export interface Asked {
  readonly looked: Looked;
  /** The same without what the line supposes. */
  readonly base: Looked;
  /** Items that were asked for: those without an amount. */
  readonly items: readonly Item[];
}

/** A car with facts supposed for one answer. A range (`250-300 lb/in`) is taken at its middle, and told so by the caller. */
export function supposing(looked: Looked, items: readonly Item[]): Looked | Outcome {
  const said = items.filter((item) => item.said !== undefined && canBeTold(item.entry));
  if (said.length === 0) return looked;
  const laid = lay(looked.situation, said, { is: 'tried' });
  if (isNotLaid(laid)) return refused(laid.refused, laid.line);
  return { ...looked, situation: laid.situation };
}
/** The car of a clause, with the clause's own facts and those of the whole line. */
export function askedOf(clause: Clause | undefined, reading: Reading, context: Context): Asked | Outcome {
  const base = lookAtFirst(clause?.subjects ?? [], context);
  if ('answer' in base) return base;
  const items = clause?.items ?? [];
  const looked = supposing(base, [...items, ...reading.tried]);
  if ('answer' in looked) return looked;
  return { looked, base, items: items.filter((item) => item.said === undefined || !canBeTold(item.entry)) };
}
/** The same where one thing alone was named, and it was read as supposed: `show driver` asks whether the driver is in. */
export function askedAlone(reading: Reading, context: Context): Asked | Outcome {
  const [clause] = reading.sides;
  const [only, another] = reading.tried;
  const alone = only !== undefined && another === undefined && only.entry.kind === 'choice' && !reading.everything;
  if (!alone || (clause && clause.items.length + clause.subjects.length > 0)) return askedOf(clause, reading, context);
  const { said: _, ...item } = only;
  return askedOf({ items: [item], subjects: [] }, { ...reading, tried: [] }, context);
}
/** Paths of an item that may be known, or all of them when none is. */
export const pathsOf = (item: Item): readonly string[] => item.places.map((place) => pathAt(place, item.entry));
