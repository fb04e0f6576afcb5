/** What `find` is to reach, and what could reach it: the inputs of a car that a line did not name. */
import { isRefusal } from '../../core/catalog.js';
import { nameAtAll, pathAt } from '../../core/engine.js';
import { seekInPieces } from '../../core/seek.js';
import { inPieces } from '../breathing.js';
import { lineOf, phrase } from '../canonical.js';
import type { Context } from '../context.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import type { Choice, Reading } from '../reading.js';
import { valueToType } from '../show/amount.js';

export interface Target {
  readonly path: string;
  readonly value: number;
  /** Whose figure it is, when it is another car's. */
  readonly of?: string;
}
export type Paths = readonly [string, ...string[]];

/** Inputs that could reach the goal and that the line did not name: those told or estimated, most telling first. */
export async function candidates(looked: Looked, target: Target, reading: Reading, context: Context): Promise<readonly Choice[]> {
  const numbers = numbersOf(looked.situation);
  const reach: { readonly line: string; readonly label: string; readonly order: number; readonly told: boolean }[] = [];
  for (const { entry, place, path, then, layer } of catalog.nodes) {
    if (
      then ||
      layer !== 'best' ||
      entry.kind !== 'quantity' ||
      entry.scope === 'question' ||
      entry.state ||
      !catalog.dependsOn(target.path, path)
    )
      continue;
    // What can be bought or set, what was told, and what can be put in (none of it is there yet): not what the car simply is.
    const status = numbers.status(path);
    const addable = status === 'estimated' && numbers.number(path) === 0;
    if (status === 'unknown' || !(entry.step || status === 'told' || addable)) continue;
    // The wheels of an end are set alike.
    if (place === 'rf' || place === 'rr') continue;
    const places = entry.scope === 'corner' ? (place === 'lf' ? ['lf', 'rf'] : ['lr', 'rr']) : [place];
    const others = places.slice(1).map((other) => pathAt(other, entry));
    await context.breathe();
    const sought = await inPieces(
      seekInPieces(catalog, looked.situation, { inputs: [path, ...others], figure: target.path, target: target.value }),
      context.breathe,
    );
    if (isRefusal(sought) || sought.roots.length === 0) continue;
    const goal = catalog.node(target.path);
    const value = valueToType(goal.entry, target.value, { units: 'us', decimalMark: '.' }) ?? '';
    const plain = `find ${phrase(entry, ...places)} for ${phrase(goal.entry, goal.place)} ${value}`;
    // What another car has stays said as that.
    const theirs = { ...reading, sides: reading.sides.map((side) => ({ ...side, items: [{ entry, places, placed: true }] })) };
    const line = target.of === undefined ? plain : lineOf(theirs, context);
    const told = status === 'told';
    reach.push({ line, label: nameAtAll(entry, places).join(' and '), order: (entry.step ? 0 : 2) + (told ? 0 : 1), told });
  }
  // What is not there yet is offered only where little else would do.
  const there = reach.filter(({ told }) => told);
  return [...(there.length > 1 ? there : reach)].sort((a, b) => a.order - b.order).slice(0, 4);
}
