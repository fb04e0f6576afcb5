/**
 * A second way to work out a car, as plainly as can be: one pass, every need looked up anew, with any errors in play at once.
 * For comparing the engine with, and for drawing errors at random (JCGM 101).
 */
import { type Curve, halfWidth, isRefusal } from '../../core/catalog.js';
import type { Catalog, Situation } from '../../core/engine.js';

/** How far each error is off, in its half-widths: `fact SOURCE` or `rule PATH`. */
export type Errors = (error: string) => number;

const isCurve = (value: unknown): value is Curve => typeof value === 'object' && value !== null && 'between' in value;

/** Which node gave each need of each node, by the node's index and the need's place. */
export type Sources = (number | undefined)[][];

/**
 * Values by node; undefined where there is none.
 * @param fixed sources of an earlier run: a figure does not change its ways within a doubt; left out, each need is given by the first that has a value
 * @param found filled with the sources that were used
 */
export function workOut(catalog: Catalog, situation: Situation, errors: Errors, fixed?: Sources, found: Sources = []): unknown[] {
  const values: unknown[] = [];
  for (const node of catalog.nodes) {
    const { entry } = node;
    const told = node.then ? (situation.then ?? situation.facts) : situation.facts;
    const path = node.then ? node.path.slice('then.'.length) : node.path;
    const fact = node.input ? told.get(path) : undefined;
    values.push(fact ? ofFact() : entry.kind === 'place' ? ofPlace() : ofNeeds());

    function ofFact(): unknown {
      const { value, within, source } = fact!;
      if (typeof value === 'number') return within > 0 ? value + errors(`fact ${source}`) * within : value;
      if (isCurve(value)) return within > 0 ? { ...value, y: value.y.map((y) => y * (1 + errors(`fact ${source}`) * within)) } : value;
      if (!entry.parse) return value;
      const parsed = entry.parse(value);
      return isRefusal(parsed) ? undefined : parsed;
    }
    function ofPlace(): string {
      if (entry.path === 'axle') return node.place;
      return node.place === 'lf' || node.place === 'lr' ? 'left' : 'right';
    }
    function ofNeeds(): unknown {
      if (!entry.compute) return undefined;
      const given: Record<string, unknown> = {};
      const used: (number | undefined)[] = [];
      found[node.index] = used;
      for (const [k, key] of node.keys.entries()) {
        const source = fixed ? fixed[node.index]?.[k] : node.from[k]!.find((index) => values[index] !== undefined);
        used[k] = source;
        if (fixed && source !== undefined && values[source] === undefined) return undefined;
        if (source === undefined && !node.spare[k]) return undefined;
        given[key] = source === undefined ? undefined : values[source];
      }
      const out = entry.compute(given);
      if (isRefusal(out) || (typeof out === 'number' && !Number.isFinite(out))) return undefined;
      if (typeof out !== 'number' || !node.input || !entry.within) return out;
      const width = halfWidth(out, entry.within);
      return width > 0 ? out + errors(ruleOf(entry.error === 'common' ? entry.path : path)) * width : out;
    }
  }
  return values;
}
const ruleOf = (path: string): string => `rule ${path}`;
