/** A row of tiles as what it tells and asks, each with the part that the relation before it gives: the same for every kind of request. */
import type { Evidence } from '../../core/catalog.js';
import type { Item, Subject } from '../reading.js';
import type { Row } from './chart.js';
import type { Relation } from './lexicon.js';
import type { Edge, Fact, Where } from './sems.js';

export type Role = 'main' | 'with' | 'at' | 'goal' | 'from' | 'to' | 'along';
export interface ToldAs {
  readonly fact: Fact;
  readonly role: Role;
  readonly side: number;
}
export interface AskedAs {
  readonly items: readonly Item[];
  readonly role: Role;
  readonly side: number;
  readonly alternatives: boolean;
}
export interface Gathered {
  readonly told: readonly ToldAs[];
  readonly asked: readonly AskedAs[];
  /** One list for each side. */
  readonly subjects: readonly (readonly Subject[])[];
  readonly self: boolean;
  readonly sides: number;
  readonly replacing: boolean;
  readonly unit?: string;
  readonly evidence?: Evidence;
  readonly everything: boolean;
  /** Places that stand alone. */
  readonly floating: readonly Where[];
  readonly price: number;
  /** Tokens that nothing explains. */
  readonly left: readonly number[];
}
const isTile = <C extends Edge['category']>(edge: Edge, category: C): edge is Edge<C> => edge.category === category;
const roles: Partial<Record<Relation, Role>> = { with: 'with', at: 'at', for: 'goal', from: 'from', along: 'along', without: 'with' };

export function gather(row: Row): Gathered {
  const told: ToldAs[] = [];
  const asked: AskedAs[] = [];
  const subjects: Subject[][] = [[]];
  const floating: Where[] = [];
  let role: Role = 'main';
  let side = 0;
  let self = false;
  let replacing = false;
  let everything = false;
  let unit: string | undefined;
  let evidence: Evidence | undefined;
  const newSide = (): void => {
    side++;
    role = 'main';
    subjects[side] = [];
  };
  const holds = (): boolean =>
    told.some((one) => one.side === side) || asked.some((one) => one.side === side) || (subjects[side]?.length ?? 0) > 0;
  for (const tile of row.tiles) {
    if (isTile(tile, 'fact')) {
      told.push({ fact: tile.sem, role, side });
      if (role === 'at') role = 'main';
      if (tile.sem.evidence) evidence = tile.sem.evidence;
    } else if (isTile(tile, 'asked')) {
      asked.push({ items: tile.sem.items, role, side, alternatives: tile.sem.alternatives === true });
      if (role === 'at') role = 'main';
    } else if (isTile(tile, 'subject')) {
      if (tile.sem.self) self = true;
      else subjects[side]?.push(tile.sem.subject);
    } else if (isTile(tile, 'relation')) {
      const { relation } = tile.sem;
      if ((relation === 'versus' || relation === 'instead') && holds()) {
        if (relation === 'instead') replacing = true;
        newSide();
      } else if (relation === 'to') {
        if (told.some((one) => one.role === 'from' && one.side === side)) newSide();
        else role = 'main';
      } else role = roles[relation] ?? role;
    } else if (isTile(tile, 'where')) floating.push(tile.sem);
    else if (isTile(tile, 'unit')) unit = tile.sem.unit;
    else if (isTile(tile, 'evidence')) evidence = tile.sem.evidence;
    else if (isTile(tile, 'everything')) everything = true;
  }
  return {
    told,
    asked,
    subjects,
    self,
    sides: side + 1,
    replacing,
    ...(unit === undefined ? {} : { unit }),
    ...(evidence === undefined ? {} : { evidence }),
    everything,
    floating,
    price: row.price,
    left: row.left,
  };
}
