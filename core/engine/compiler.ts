/** Makes nodes of entries: each after what it needs, with the ways that can run for what may be told. */
import { type AnyWay, type Entry, isInput, isNumeric, isWorkedOut, type Need, type Scope, type Within } from '../catalog.js';
import { type Layer, type Node, type NodeWay, none } from './node.js';
import { afterTurns, type Place, pathAt, placeAround, placeNamed } from './places.js';

/** A rule that guesses or simplifies, and by how much it may be off. */
export interface Rule {
  /** `front.spring.ratio`, or `tire.rate` where it is wrong at all places together. */
  readonly name: string;
  readonly members: readonly number[];
}
type Term = Need<Scope, unknown>['terms'][number];
const asTold = 'as told, and what has changed since';
/** The generated way of a told result: it moves by as much as its own ways do. Where they say nothing, it is taken as unchanged. */
const carried: AnyWay = {
  needs: {},
  compute: ({ told, model, before }) =>
    (told as number) + (model === undefined || before === undefined ? 0 : (model as number) - (before as number)),
  formula: 'told + (model - before)',
  source: asTold,
  basis: asTold,
  sort: 'model',
};
const noSource: readonly number[] = [];

export class Compiler {
  readonly nodes: Node[] = [];
  readonly byPath = new Map<string, Node>();
  readonly rules = new Map<number, { readonly name: string; readonly members: number[] }>();
  picks = 0;
  readonly #told: ReadonlySet<Entry>;
  readonly #open = new Set<string>();
  readonly #mayBeGiven = new Map<Entry, boolean>();
  readonly #carried = new Map<Entry, boolean>();
  readonly #errorOf = new Map<string, number>();
  #errors = 0;

  constructor(told: ReadonlySet<Entry>) {
    this.#told = told;
  }

  visit(entry: Entry, place: string, then: boolean, layer: Layer = 'best'): number {
    const path = `${then ? 'then.' : ''}${layer === 'best' ? '' : `${layer}.`}${pathAt(place, entry)}`;
    const done = this.byPath.get(path);
    if (done) {
      if (done.entry !== entry) throw new Error(`two entries are called ${path}`);
      return done.index;
    }
    if (this.#open.has(path)) throw new Error(`${path} needs itself: ${[...this.#open].join(', ')}`);
    this.#open.add(path);
    // What has not changed since is copied from now, so now comes first.
    const now = then ? this.visit(entry, place, false, layer) : undefined;
    const here: Place = { ...placeNamed(entry.scope, place), ...(then ? { past: true } : {}) };
    const error = this.#errors++;
    const carriedAt = layer === 'best' && !then && this.#isCarried(entry) ? place : undefined;
    const ways = this.#ways(entry, here, layer, carriedAt, now === undefined ? [] : this.nodes[now]!.ways);
    const index = this.nodes.length;
    const isBest = layer === 'best';
    this.nodes.push({
      index,
      path,
      place,
      entry,
      layer,
      then,
      now: now ?? index,
      input: isBest && isInput(entry),
      kind: entry.kind,
      ways,
      moves: this.#isCarried(entry) && (isWorkedOut(entry) || entry.carries.length > 0),
      error,
      doubtful: ways.some((way) => way.error !== none),
      firstPick: this.picks,
    });
    for (const way of ways) if (way.error !== none) this.rules.get(way.error)!.members.push(index);
    this.picks += Math.max(0, ...ways.map(({ keys }) => keys.length));
    this.byPath.set(path, this.nodes[index]!);
    this.#open.delete(path);
    return index;
  }

  /** Whether it may be given otherwise than by its own ways: inputs by being told, results where this car tells them or something above them. */
  #isGiven(entry: Entry): boolean {
    if (isInput(entry) || this.#told.has(entry)) return true;
    let may = this.#mayBeGiven.get(entry);
    if (may === undefined) {
      this.#mayBeGiven.set(entry, false);
      may = entry.ways.some((way) => way.inverse && this.#canRun(way));
      this.#mayBeGiven.set(entry, may);
    }
    return may;
  }
  /** Whether what the way reads as given can be. */
  #canRun(way: AnyWay): boolean {
    return Object.values(way.needs).every(
      (need) => need === undefined || 'absent' in need || need.terms.some((term) => this.#isLive(term)),
    );
  }
  #isLive({ entry, only }: Term): boolean {
    return only === undefined || this.#isGiven(entry);
  }
  /** A told result is true of the car as it was told, and so is what follows from one; a state says itself how it is carried on. */
  #isCarried(entry: Entry): boolean {
    if (entry.carries.length > 0) return true;
    if (isWorkedOut(entry)) return this.#isGiven(entry);
    let is = this.#carried.get(entry);
    if (is === undefined) {
      this.#carried.set(entry, false);
      is = entry.ways.some((way) => way.inverse && this.#canRun(way) && this.#readsCarried(way));
      this.#carried.set(entry, is);
    }
    return is;
  }
  #readsCarried({ needs }: AnyWay): boolean {
    return Object.values(needs).some(({ terms }) => terms.some(({ entry, only }) => only === 'given' && this.#isCarried(entry)));
  }

  #ways(entry: Entry, here: Place, layer: Layer, carriedAt: string | undefined, now: readonly NodeWay[]): NodeWay[] {
    const make = (some: readonly AnyWay[]): NodeWay[] =>
      some.flatMap((way) =>
        this.#canRun(way)
          ? [
              this.#way(
                entry,
                way,
                here,
                now.find(({ of }) => of === way),
              ),
            ]
          : [],
      );
    const up = layer === 'model' ? [] : make(entry.ways.filter((way) => way.inverse));
    const carry = carriedAt !== undefined ? this.#carry(entry, carriedAt, here) : [];
    // A guess says what something is, not how it moves.
    const down = layer === 'given' ? [] : make(entry.ways.filter((way) => !way.inverse && (layer === 'best' || way.sort !== 'estimate')));
    return [...up, ...carry, ...down];
  }
  #carry(entry: Entry, place: string, here: Place): NodeWay[] {
    const [own] = entry.carries;
    if (own) return [this.#way(entry, own, here, undefined)];
    const told = this.visit(entry, place, true, 'given');
    const model = this.visit(entry, place, false, 'model');
    const before = this.visit(entry, place, true, 'model');
    return [
      {
        of: carried,
        compute: carried.compute,
        within: undefined,
        keys: ['told', 'model', 'before'],
        from: [[told], [model], [before]],
        spare: [false, true, true],
        absent: [undefined, undefined, undefined],
        refines: [undefined, undefined, undefined],
        gates: undefined,
        guess: false,
        error: none,
        carries: true,
        now: undefined,
        given: { told: 0.5, model: undefined, before: undefined },
      },
    ];
  }

  #way(entry: Entry, way: AnyWay, here: Place, now: NodeWay | undefined): NodeWay {
    const needs: [string, Need<Scope, unknown>][] = Object.entries(way.needs);
    const from: (readonly number[])[] = needs.map(([key, need]) => this.#sources(entry, key, need, here));
    const spare = needs.map(([, need]) => 'absent' in need);
    const absent = needs.map(([, need]) => need.absent);
    const keys = needs.map(([key]) => key);
    const isNumber = from.map(
      (sources, k) => (!spare[k] || typeof absent[k] === 'number') && sources.every((source) => isNumeric(this.nodes[source]!.entry)),
    );
    const given = entry.kind === 'structure' ? undefined : Object.fromEntries(keys.map((key, k) => [key, isNumber[k] ? 0.5 : undefined]));
    const gates = needs.map(([, need]) => this.#gates(entry, need, here));
    return {
      of: way,
      compute: way.compute,
      within: way.within,
      keys,
      from,
      spare,
      absent,
      refines: needs.map(([, need]) => need.refines),
      gates: gates.some((some) => some.length > 0) ? gates : undefined,
      guess: isGuess(way),
      error: way.within && widthOf(way.within) > 0 ? this.#errorOfWay(entry, way, here) : none,
      carries: false,
      now,
      given,
    };
  }
  /** One number for each rule at each place that it is wrong at by itself. */
  #errorOfWay(entry: Entry, way: AnyWay, here: Place): number {
    const rough = entry.ways.filter(({ within }) => within);
    const name = way.error === 'common' ? entry.path : pathAt(placeAround(entry.scope, here), entry);
    // Of several guesses each is wrong in its own way.
    const full = rough[0] === way ? name : `${name}, way ${rough.indexOf(way) + 1}`;
    const known = this.#errorOf.get(full);
    if (known !== undefined) return known;
    const error = this.#errors++;
    this.#errorOf.set(full, error);
    this.rules.set(error, { name: full, members: [] });
    return error;
  }

  #sources(entry: Entry, key: string, need: Need<Scope, unknown> | undefined, here: Place): readonly number[] {
    if (!need) throw new Error(`${entry.path} needs ${key}, which was not made yet: do two files import each other?`);
    const sources = need.terms.flatMap((term) => {
      const there = this.#isLive(term) ? afterTurns(here, term.at) : undefined;
      if (!there) return [];
      return [this.visit(term.entry, placeAround(term.entry.scope, there), there.past === true, term.only === 'given' ? 'given' : 'best')];
    });
    return sources.length > 0 ? sources : noSource;
  }
  /** What has to be known for a need to be read: that it was told, now or when the car was measured. */
  #gates(entry: Entry, { terms }: Need<Scope, unknown>, here: Place): readonly number[] {
    const told = terms.filter(({ only }) => only === 'told');
    if (told.length > 0 && told.length < terms.length) throw new Error(`${entry.path} reads what was told, or else something that was not`);
    return told.flatMap((term) => {
      const there = this.#isLive(term) ? afterTurns(here, term.at) : undefined;
      if (!there) return [];
      const place = placeAround(term.entry.scope, there);
      return (there.past ? [true] : [false, true]).map((then) => this.visit(term.entry, place, then, 'given'));
    });
  }
}

const widthOf = (within: Within): number => ('relative' in within ? within.relative : within.absolute);
function isGuess({ sort, within, constant, usual, guess }: AnyWay): boolean {
  if (sort !== 'estimate' || constant || usual) return false;
  return guess === true || (within !== undefined && widthOf(within) > 0);
}
