/** The kinds of catalog entry, and the ways in which one entry may read another. */
import type { Dimension } from './dimensions.js';

/**
 * Where an entry is read: once a question (a condition, never saved), once a car, or at each axle, corner or gear.
 * Paths are a place, a dot and the entry's path: `front.spring.rate`, `lf.camber`, `2.gear.ratio`, `mass`.
 */
export type Scope = 'question' | 'car' | 'axle' | 'corner' | 'gear';

/** What an entry of scope S may read without saying where: its own place and the places that contain it. */
type Around<S extends Scope> = {
  question: 'question';
  car: 'question' | 'car';
  axle: 'question' | 'car' | 'axle';
  corner: 'question' | 'car' | 'axle' | 'corner';
  gear: 'question' | 'car' | 'gear';
}[S];

/** A table that rises in x; `between` says what holds from one point to the next. */
export interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly between: 'line' | 'step';
}
/** What a member can record. A designation is recorded as its text. */
export type Value = number | string | Curve;

/** A calculation that has no answer says which rule stopped it, and which paths would put it right. */
export interface Refusal {
  readonly refused: string;
  readonly because?: readonly string[];
}
export const refuse = (refused: string, ...because: string[]): Refusal => ({ refused, because });
export const isRefusal = (v: unknown): v is Refusal => typeof v === 'object' && v !== null && 'refused' in v;

/** The half-width that holds 19 in 20, of the value or in its own SI unit (where the value may be near zero). */
export type Within = { readonly relative: number } | { readonly absolute: number };
export const halfWidth = (value: number, within: Within): number =>
  'relative' in within ? Math.abs(value) * within.relative : within.absolute;

/** How a fact came to be known. */
export type Evidence = 'measured' | 'spec' | 'estimated';

/** Something that a compute function may ask for: V is what it will be given, S the places where it can be asked. */
export interface Need<S extends Scope, V> {
  readonly scope: S;
  /** Tried in order; the first that has a value is given. */
  readonly terms: readonly Term[];
  /** Present, as `undefined`, when the need may be missing (only `maybe` makes it so). */
  readonly absent?: V;
}
export interface Term {
  readonly entry: Entry;
  readonly at: readonly Turn[];
}
/** A step from the asker's place to another. `higher` is the next gear up; `then` is the car as it was when it was last measured. */
export type Turn = 'front' | 'rear' | 'left' | 'right' | 'higher' | 'then';

export type Needs<S extends Scope> = Readonly<Record<string, Need<Around<S>, unknown>>>;
type Given<N> = { readonly [K in keyof N]: N[K] extends Need<Scope, infer V> ? V : never };
/** `near` is what the same structure of the same car is when no error is in play: somewhere to start from, where a search has one. What it ends at must not depend on it. */
type Compute<N, V> = (given: Given<N>, near?: V) => V | Refusal;

/** How to estimate an input that the member has not told. */
export interface Rule<S extends Scope, V, N extends Needs<S>> {
  readonly needs: N;
  compute(given: Given<N>): V | Refusal;
  readonly within: Within;
  /** One error for all places (the same tire, the same modulus), or a separate one for each (the default). */
  readonly error?: 'common' | 'each';
  readonly source: string;
}

interface InputSpec<P extends string, S extends Scope> {
  readonly path: P;
  readonly scope: S;
  readonly name: string;
  /** The name in a row of a phone's screen, where `name` is longer than 21 characters. */
  readonly label?: string;
  /** What people type for it, the plainest first; lower case, singular, American spelling; the reader knows plurals, tyre, centre. */
  readonly words: readonly string[];
  /** How to measure it, in a sentence or two. */
  readonly measure: string;
  /** A short, usual caution where the work or the number can hurt somebody. */
  readonly caution?: string;
  /** An amount that a whole shares out (a weight), so that naming an axle does not tell each corner's. */
  readonly extensive?: true;
  /** Usually the same all round: told without a place it holds for every place (a tire size, a pressure), instead of being asked. */
  readonly alike?: true;
  /** Inputs of one such name and place say the same thing in different ways: recording one forgets the others. */
  readonly instead?: string;
  /** What the car was found to be, rather than what it is made of (a ride height, a scale reading): true only of the moment it was taken. */
  readonly state?: true;
}
/** What tolerance a told value has, by how it is known, and which of the two is usual when the member does not say. */
export interface Told {
  readonly usually: 'measured' | 'spec';
  readonly measured: Within;
  readonly spec: Within;
}
export interface QuantitySpec<P extends string, S extends Scope> extends InputSpec<P, S> {
  readonly dimension: Dimension;
  readonly symbol?: string;
  /** SI; outside it an amount is refused, and a bare number is read in another unit. */
  readonly sane: readonly [number, number];
  /** The step in which it is bought or set, where inches or millimetres are the trade; SI. */
  readonly step?: { readonly inch: number; readonly metric: number };
  readonly told: Told;
  /** People also count what has this length (`hole 2`): how to measure it instead. */
  readonly counted?: string;
}
export interface ChoiceSpec<P extends string, S extends Scope, O extends string> extends InputSpec<P, S> {
  readonly options: readonly O[];
  /** Other words for an option. */
  readonly optionWords?: Readonly<Partial<Record<NoInfer<O>, readonly string[]>>>;
  /** Of these, words that need no noun: `lsd`. */
  readonly alone?: readonly string[];
}
export interface CurveSpec<P extends string, S extends Scope> extends InputSpec<P, S> {
  readonly dimension: Dimension;
  readonly along: Dimension;
  readonly sane: readonly [number, number];
  readonly saneAlong: readonly [number, number];
  readonly told: Told;
}
export interface DesignationSpec<P extends string, S extends Scope, V extends object> extends InputSpec<P, S> {
  /** Reads the text into what it stands for, or says what is wrong with it. */
  parse(text: string): V | Refusal;
  /** The one way to write it. */
  write(value: V): string;
}
export interface FigureSpec<P extends string, S extends Scope, V, N extends Needs<S>> {
  readonly path: P;
  readonly scope: S;
  readonly name: string;
  readonly label?: string;
  /** What members talk of: shown before the steps on the way, where many figures move or differ. */
  readonly main?: true;
  readonly symbol: string;
  /** What people type for it; a figure without words is a step on the way, and is shown by `why`. */
  readonly words?: readonly string[];
  readonly dimension: Dimension;
  readonly typical?: { readonly range: readonly [number, number]; readonly of: string };
  readonly needs: N;
  readonly compute: Compute<N, V>;
  /** The formula in the names of `needs`, in mathjs's syntax, `g` being standard gravity; a test computes it and its dimension, and compares. */
  readonly formula?: string;
  readonly source: string;
  readonly caution?: string;
  /** The state input that this figure is, worked out: what the input becomes when the car has changed since it was taken. */
  readonly carriesOn?: Entry;
  /** Known to be far from linear in its errors within their widths; how it is treated is said here. */
  readonly nonlinear?: string;
}

/** An entry with its types forgotten: what the engine and the verbs see. */
export interface Entry {
  readonly kind: 'quantity' | 'choice' | 'curve' | 'designation' | 'figure' | 'structure' | 'place';
  readonly path: string;
  readonly scope: Scope;
  readonly name: string;
  readonly label?: string;
  readonly main?: true;
  /** Order of making, which is the order of the file: for display. */
  readonly order: number;
  readonly words?: readonly string[];
  readonly symbol?: string;
  readonly dimension?: Dimension;
  readonly along?: Dimension;
  readonly sane?: readonly [number, number];
  readonly saneAlong?: readonly [number, number];
  readonly step?: { readonly inch: number; readonly metric: number };
  readonly told?: Told;
  readonly options?: readonly string[];
  readonly optionWords?: Readonly<Partial<Record<string, readonly string[]>>>;
  readonly alone?: readonly string[];
  readonly counted?: string;
  readonly measure?: string;
  readonly caution?: string;
  readonly extensive?: true;
  readonly alike?: true;
  readonly instead?: string;
  readonly state?: true;
  readonly typical?: { readonly range: readonly [number, number]; readonly of: string };
  readonly formula?: string;
  readonly source?: string;
  readonly nonlinear?: string;
  readonly carriesOn?: Entry;
  /** Of the rule by which an input is estimated. */
  readonly within?: Within;
  readonly error?: 'common' | 'each';
  readonly needs?: Readonly<Record<string, Need<Scope, unknown>>>;
  // Method syntax on purpose: the engine gives exactly what `needs` lists, which is what the typed function asked for.
  compute?(given: Readonly<Record<string, unknown>>, near?: unknown): unknown;
  parse?(text: string): object | Refusal;
  write?(value: object): string;
}
export type Made<P extends string, S extends Scope, V> = Entry & Need<S, V> & { readonly path: P; readonly scope: S };

const inputKinds: ReadonlySet<string> = new Set(['quantity', 'choice', 'curve', 'designation']);
export const isInput = (entry: Entry): boolean => inputKinds.has(entry.kind);
export const isEntry = (v: unknown): v is Entry => typeof v === 'object' && v !== null && 'kind' in v && 'path' in v && 'terms' in v;

let made = 0;
function make<P extends string, S extends Scope>(
  spec: Omit<Entry, 'order'> & { path: P; scope: S },
): Entry & { path: P; scope: S; terms: readonly Term[] } {
  const it = { ...spec, order: made++, terms: [] as Term[] };
  it.terms.push({ entry: it, at: [] });
  return it;
}

/** A fact that can be told as an amount. */
export function quantity<const P extends string, S extends Scope, const N extends Needs<S> = Record<never, never>>(
  spec: QuantitySpec<P, S> & { readonly estimate?: Rule<S, number, N> },
): Made<P, S, number> {
  const { estimate, ...rest } = spec;
  return make({ ...rest, ...estimate, kind: 'quantity' });
}
/** A fact that is one of a few words. */
export function choice<const P extends string, S extends Scope, const O extends string, const N extends Needs<S> = Record<never, never>>(
  spec: ChoiceSpec<P, S, O> & { readonly estimate?: Omit<Rule<S, NoInfer<O>, N>, 'within' | 'error'> },
): Made<P, S, O> {
  const { estimate, ...rest } = spec;
  return make({ ...rest, ...estimate, kind: 'choice' });
}
/** A fact that is a table: a spring's rates over its travel, torque over engine speed. Its error scales the whole table. */
export function curve<const P extends string, S extends Scope>(spec: CurveSpec<P, S>): Made<P, S, Curve> {
  return make({ ...spec, kind: 'curve' });
}
/** A fact that is a text which stands for several quantities: a tire size. Computes are given what it stands for. */
export function designation<const P extends string, S extends Scope, V extends object>(spec: DesignationSpec<P, S, V>): Made<P, S, V> {
  // The engine writes only what it has parsed, so a `write` of V is never given anything else.
  return make({ ...(spec as Omit<typeof spec, 'write'> & Pick<Entry, 'write'>), kind: 'designation' });
}
/** A number that the core works out. */
export function figure<const P extends string, S extends Scope, const N extends Needs<S>>(
  spec: FigureSpec<P, S, number, N>,
): Made<P, S, number> {
  return make({ ...spec, kind: 'figure' });
}
/** A structure that figures read (an equilibrium, a force law): computed once for a car and a condition; only numbers have a plus-or-minus. */
export function structure<const P extends string, S extends Scope, V extends object, const N extends Needs<S>>(
  spec: Pick<FigureSpec<P, S, V, N>, 'path' | 'scope' | 'name' | 'needs' | 'compute' | 'source'>,
): Made<P, S, V> {
  return make({ ...spec, kind: 'structure' });
}

const turn =
  (t: Turn) =>
  <S extends Scope, V>(need: Need<Scope, V>, scope: S): Need<S, V> => ({
    ...('absent' in need ? { absent: need.absent as V } : {}),
    scope,
    terms: need.terms.map(({ entry, at }) => ({ entry, at: [t, ...at] })),
  });
export const front = <V>(n: Need<'axle', V>): Need<'car', V> => turn('front')(n, 'car');
export const rear = <V>(n: Need<'axle', V>): Need<'car', V> => turn('rear')(n, 'car');
export const left = <V>(n: Need<'corner', V>): Need<'axle', V> => turn('left')(n, 'axle');
export const right = <V>(n: Need<'corner', V>): Need<'axle', V> => turn('right')(n, 'axle');
/** The same of the next gear up; missing in the top gear. */
export const higher = <V>(n: Need<'gear', V>): Need<'gear', V> => turn('higher')(n, 'gear');
/** The same, of the car as it was when its ride heights and scale readings were taken. Facts that have not changed since share their errors. */
export const asMeasured = <S extends Scope, V>(n: Need<S, V>): Need<S, V> => turn('then')(n, n.scope);
/** The first of these that is known, most direct first. */
export const firstOf = <S extends Scope, V>(first: Need<S, V>, ...others: readonly Need<S, V>[]): Need<S, V> => ({
  scope: first.scope,
  terms: [first, ...others].flatMap((n) => n.terms),
});
/** Given as undefined when it is not known, instead of refusing the figure. */
export const maybe = <S extends Scope, V>(n: Need<S, V>): Need<S, V | undefined> => ({ ...n, absent: undefined });

/** Which end a compute function is working for: for the few formulas that differ by it. */
export const thisAxle: Made<'axle', 'axle', 'front' | 'rear'> = make({ kind: 'place', path: 'axle', scope: 'axle', name: 'axle' });
/** Which side. */
export const thisSide: Made<'side', 'corner', 'left' | 'right'> = make({ kind: 'place', path: 'side', scope: 'corner', name: 'side' });
