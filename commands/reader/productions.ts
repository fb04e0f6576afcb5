/** The productions of the chart, as data: what each takes, what it makes, how. They are loose on purpose: the price list ranks what they make. */
import type { Entry } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Preferences } from '../context.js';
import type { Item } from '../reading.js';
import type { AmountToken } from '../scan.js';
import { meaningsOf } from '../units.js';
import { bare, byDimension, type Relation } from './lexicon.js';
import type { Named, NameIndex } from './names.js';
import { prices } from './prices.js';
import type { Amount, Category, Fact, Name, PlacedValue, Sems, Value, Where } from './sems.js';
import { askedPrice, itemOf, placedAt, toldPrice, typed } from './typing.js';

export interface Ground {
  readonly index: NameIndex;
  readonly preferences: Preferences;
}
export interface Made<C extends Category> {
  readonly sem: Sems[C];
  readonly price: number;
}
export interface Production {
  readonly name: string;
  readonly takes: readonly Category[];
  readonly makes: Category;
  /** How many tokens may stand unexplained between two of its parts. */
  readonly apart: number;
  make(ground: Ground, sems: readonly Sems[Category][]): readonly Made<Category>[];
}
type Taken<T extends readonly Category[]> = { readonly [K in keyof T]: Sems[T[K]] };
const production = <const T extends readonly Category[], M extends Category>(
  name: string,
  takes: T,
  makes: M,
  make: (ground: Ground, ...sems: Taken<T>) => readonly Made<M>[],
  apart = 1,
): Production => ({ name, takes, makes, apart, make: (ground, sems) => make(ground, ...(sems as unknown as Taken<T>)) });
/** A production that makes one thing, at no price of its own; or none. */
const plain = <const T extends readonly Category[], M extends Category>(
  name: string,
  takes: T,
  makes: M,
  make: (...sems: Taken<T>) => Sems[M] | undefined,
  apart = 1,
): Production =>
  production(
    name,
    takes,
    makes,
    (_, ...sems) => {
      const sem = make(...sems);
      return sem === undefined ? [] : [{ sem, price: 0 }];
    },
    apart,
  );

const isAmount = (amount: Amount): boolean => amount.token.is === 'amount';
const sameKind = (a: Amount, b: Amount): boolean => a.token.is === b.token.is;
/** The unit said of the last amount is of those before it. */
function withUnit(amount: Amount, like: Amount): Amount {
  const { token } = amount;
  const other = like.token;
  return token.is === 'amount' && other.is === 'amount' && token.unit === undefined && other.unit !== undefined
    ? { ...amount, token: { ...token, unit: other.unit } }
    : amount;
}
const together = (first: Amount, second: Amount, joined: NonNullable<Value['joined']>): Value | undefined =>
  sameKind(first, second) ? { first: withUnit(first, second), others: [withUnit(second, first)], joined } : undefined;
const common = (a: Where, b: Where): Where | undefined => {
  if (Boolean(a.gear) !== Boolean(b.gear)) return a.all ? b : b.all ? a : undefined;
  if (a.all) return b;
  if (b.all) return a;
  const places = a.places.filter((place) => b.places.includes(place));
  return places.length > 0 ? { ...a, places } : undefined;
};
const both = (a: Where, b: Where): Where | undefined =>
  Boolean(a.gear) === Boolean(b.gear) ? { ...a, ...b, places: [...new Set([...a.places, ...b.places])] } : undefined;
const apartFrom = (a: Where, b: Where): boolean => !a.places.some((place) => b.places.includes(place));

interface Told {
  readonly where: Where | undefined;
  readonly value: Value;
}
/** What is told of one entry: an item for each placed value, those of other sides beside them. */
function toldOf(ground: Ground, entry: Entry, told: readonly Told[]): Made<'fact'> | undefined {
  const role = toldPrice(entry);
  if (role === undefined) return undefined;
  let price: number = role;
  const items: Item[] = [];
  const others: Item[][] = [];
  const range: Item[] = [];
  for (const { where, value } of told) {
    const at = placedAt(entry, where);
    const first = typed(entry, value.first, value, ground.preferences);
    if (!at || !first) return undefined;
    price += at.price + first.price;
    const item = itemOf(entry, at, first.said);
    items.push(item);
    const isCurve = value.over !== undefined;
    for (const [n, other] of (isCurve ? [] : (value.others ?? [])).entries()) {
      const said = typed(entry, other, value, ground.preferences);
      if (!said) return undefined;
      price += said.price;
      others[n] = [...(others[n] ?? []), itemOf(entry, at, said.said)];
      if (typeof said.said.value === 'number') range.push({ ...item, said: { ...first.said, to: said.said.value } });
    }
    if (value.first.token.is === 'amount' && value.first.token.to !== undefined) range.push(item);
  }
  const joined = told.find(({ value }) => value.joined)?.value.joined;
  const evidence = told.find(({ value }) => value.evidence)?.value.evidence;
  return {
    price,
    sem: {
      items,
      named: true,
      ...(others.length > 0 ? { others } : {}),
      ...(joined ? { joined } : {}),
      ...(evidence ? { evidence } : {}),
      ...(range.length > 0 ? { range } : {}),
    },
  };
}
const namedFacts = (ground: Ground, { leaf }: Name, told: readonly Told[]): readonly Made<'fact'>[] =>
  leaf.named.flatMap(({ entry, price }) => {
    const made = toldOf(ground, entry, told);
    return made ? [{ ...made, price: made.price + price }] : [];
  });
/** What an amount without a name may be told of, by its unit; with what it costs. */
function likelyOf(ground: Ground, { where, value }: Told): readonly (readonly [Entry, number])[] {
  const { token } = value.first;
  const entries = (rows: readonly (readonly [string, number])[]): readonly (readonly [Entry, number])[] =>
    rows.flatMap(([path, price]) => {
      const entry = ground.index.byPath.get(path);
      return entry ? [[entry, price] as const] : [];
    });
  if (token.is !== 'amount') return entries([[token.is === 'size' ? 'tire.size' : 'wheel.size', prices.nameless.size]]);
  if (value.first.wordy) return [];
  if (value.over) return entries([['spring.rates', prices.nameless.unit]]);
  if (token.unit === undefined)
    return where?.gear
      ? entries([['gear.ratio', 0.6]])
      : entries(
          token.plural
            ? [
                ['spring.rate', 0.5],
                ['final', 0.8],
                ['tire.pressure', 1.2],
              ]
            : bare,
        );
  if (/^w?hp$/.test(token.unit)) return entries([[token.unit === 'whp' ? 'engine.wheelPower' : 'engine.peakPower', prices.nameless.unit]]);
  const dimensions = new Set(meaningsOf(token.unit).map(({ dimension }) => dimension));
  return entries(
    [...dimensions].flatMap((dimension, k) =>
      (byDimension.get(dimension) ?? []).map((path, n) => [path, prices.nameless.unit + prices.nameless.step * (n + k)] as const),
    ),
  );
}
function namelessFacts(ground: Ground, told: readonly Told[]): readonly Made<'fact'>[] {
  const [first] = told;
  if (!first) return [];
  return likelyOf(ground, first).flatMap(([entry, price]) => {
    const made = toldOf(ground, entry, told);
    // Nothing is given to a thing only because its unit fits: what is out of range for it is none of it.
    return made ? [{ price: made.price + price, sem: { ...made.sem, named: false } }] : [];
  });
}
const value = (amount: Amount, more: Partial<Value> = {}): Value => ({ first: amount, ...more });
const zero: Value = { first: { token: { is: 'amount', at: 0, text: '0', value: 0 } } };
const one = (where: Where | undefined, of: Value): readonly Told[] => [{ where, value: of }];
const eachOf = (all: readonly PlacedValue[]): readonly Told[] => all.map(({ where, value }) => ({ where, value }));

const corners = ['lf', 'rf', 'lr', 'rr'];
const endsOfCar: readonly (readonly string[])[] = [
  ['front', 'lf', 'rf'],
  ['rear', 'lr', 'rr'],
];
/** A list of amounts dealt out: four to the corners, two to the ends, three and more to the gears. */
function dealt(where: Where | undefined, { tokens }: Sems['list']): readonly (readonly Told[])[] {
  const at = (places: readonly (readonly string[])[], gear?: true): readonly Told[] =>
    places.map((some, n) => ({ where: { places: some, ...(gear ? { gear } : {}) }, value: value({ token: tokens[n]! }) }));
  const made: (readonly Told[])[] = [];
  const count = tokens.length;
  const wide = where === undefined || where.all === true;
  if (count === 4 && wide) made.push(at(corners.map((corner) => [corner])));
  if (count === 2 && wide) made.push(at(endsOfCar));
  if (count === 2 && where && !where.gear && !where.all) {
    const wheels = where.places.filter((place) => corners.includes(place));
    if (wheels.length === 2) made.push(at(wheels.map((wheel) => [wheel])));
  }
  if (count >= 3 && count <= 7 && wide)
    made.push(
      at(
        tokens.map((_, n) => [String(n + 1)]),
        true,
      ),
    );
  return made;
}
const listFacts = (ground: Ground, name: Name, list: Sems['list']): readonly Made<'fact'>[] =>
  dealt(name.where, list).flatMap((told) => namedFacts(ground, name, told));
const asksOf = (named: readonly Named[], where: Where | undefined): readonly Made<'asked'>[] =>
  named.flatMap(({ entry, price }) => {
    const at = placedAt(entry, where);
    return at ? [{ sem: { items: [itemOf(entry, at)] }, price: price + askedPrice(entry) + (at.placed ? at.price : 0) }] : [];
  });
const optionFacts = ({ entry, option, alone }: Sems['option'], where: Where | undefined, isNamed: boolean): readonly Made<'fact'>[] => {
  const at = placedAt(entry, where);
  if (!at) return [];
  const price = at.price + (alone || isNamed ? 0.2 : 1.6);
  return [{ sem: { items: [itemOf(entry, at, { value: option, text: option })], named: true }, price }];
};
const optionNamed = (name: Name, option: Sems['option']): readonly Made<'fact'>[] =>
  name.leaf.named.some(({ entry }) => entry === option.entry) ? optionFacts(option, name.where, true) : [];
/** The engine speed of a peak: `190 hp at 5600`. */
const peakSpeeds: Readonly<Record<string, string>> = {
  'engine.peakPower': 'engine.peakPowerSpeed',
  'engine.peakTorque': 'engine.peakTorqueSpeed',
  'engine.wheelPower': 'engine.peakPowerSpeed',
};
function peakAt(ground: Ground, fact: Fact, relation: Relation, of: Value): readonly Made<'fact'>[] {
  const [item, another] = fact.items;
  const path = item && !another && relation === 'at' ? peakSpeeds[item.entry.path] : undefined;
  const entry = path === undefined ? undefined : ground.index.byPath.get(path);
  const speed = entry && toldOf(ground, entry, one(undefined, of));
  return speed ? [{ sem: { ...fact, items: [...fact.items, ...speed.sem.items] }, price: speed.price }] : [];
}
const changeable = (of: Value): boolean => of.change === undefined && !of.others && !of.over && isAmount(of.first);

export const productions: readonly Production[] = [
  // Where
  plain('where, narrower', ['where', 'where'], 'where', common, 2),
  plain('where, joined', ['where', 'joint', 'where'], 'where', (a, _, b) => both(a, b), 2),
  plain('where, both', ['where', 'where'], 'where', (a, b) => (apartFrom(a, b) ? both(a, b) : undefined), 1),
  // Values
  plain('value', ['amount'], 'value', (amount) => value(amount)),
  plain('value changed', ['amount', 'change'], 'value', (amount, { sign }) =>
    isAmount(amount) ? value(amount, { change: sign }) : undefined,
  ),
  plain(
    'change of value',
    ['change', 'amount'],
    'value',
    ({ sign }, amount) => (isAmount(amount) ? value(amount, { change: sign }) : undefined),
    2,
  ),
  plain('negative value', ['negative', 'amount'], 'value', (_, amount) =>
    isAmount(amount) ? value(amount, { negative: true }) : undefined,
  ),
  plain('value negative', ['amount', 'negative'], 'value', (amount) => (isAmount(amount) ? value(amount, { negative: true }) : undefined)),
  plain('known how', ['evidence', 'value'], 'value', ({ evidence }, of) => (of.evidence ? undefined : { ...of, evidence })),
  plain('value known how', ['value', 'evidence'], 'value', (of, { evidence }) => (of.evidence ? undefined : { ...of, evidence })),
  plain('value within', ['value', 'plusMinus', 'amount'], 'value', (of, _, { token }) =>
    of.others || of.within || token.is !== 'amount' ? undefined : { ...of, within: token },
  ),
  plain('one to another', ['amount', 'relation', 'amount'], 'value', (a, { relation }, b) =>
    relation === 'to' || relation === 'versus' || relation === 'instead' ? together(a, b, relation) : undefined,
  ),
  plain('from one to another', ['relation', 'amount', 'relation', 'amount'], 'value', (from, a, to, b) =>
    from.relation === 'from' && to.relation === 'to' ? together(a, b, 'from to') : undefined,
  ),
  plain('one more', ['value', 'relation', 'amount'], 'value', (of, { relation }, amount) =>
    of.joined === 'versus' && relation === 'versus' && sameKind(of.first, amount)
      ? { ...of, others: [...(of.others ?? []), withUnit(amount, of.first)] }
      : undefined,
  ),
  plain('one, another or a third', ['amount', 'joint', 'value'], 'value', (a, _, of) =>
    of.joined === 'versus' && sameKind(a, of.first) && !of.change
      ? { ...of, first: withUnit(a, of.first), others: [of.first, ...(of.others ?? [])] }
      : undefined,
  ),
  plain('value over travel', ['value', 'relation', 'amount'], 'value', (of, { word }, { token }) =>
    (word === 'over' || word === 'in') &&
    token.is === 'amount' &&
    (of.others || (of.first.token.is === 'amount' && of.first.token.to !== undefined))
      ? { ...of, over: token }
      : undefined,
  ),
  // Lists
  plain('list', ['amount', 'amount'], 'list', (a, b) => listOf([], a, b), 0),
  plain('list, joined', ['amount', 'joint', 'amount'], 'list', (a, _, b) => listOf([], a, b), 0),
  plain('longer list', ['list', 'amount'], 'list', (list, b) => (list.slashed ? undefined : listOf(list.tokens, undefined, b)), 0),
  plain(
    'longer list, joined',
    ['list', 'joint', 'amount'],
    'list',
    (list, _, b) => (list.slashed ? undefined : listOf(list.tokens, undefined, b)),
    0,
  ),
  // A value and where
  plain('place and value', ['where', 'value'], 'placed', (where, of) => ({ where, value: of, order: 'place first' }), 2),
  plain('value and place', ['value', 'where'], 'placed', (of, where) => ({ where, value: of, order: 'value first' }), 2),
  plain('two placed', ['placed', 'placed'], 'placeds', (a, b) => (a.order === b.order ? { all: [a, b], order: a.order } : undefined), 2),
  plain(
    'two placed, joined',
    ['placed', 'joint', 'placed'],
    'placeds',
    (a, _, b) => (a.order === b.order ? { all: [a, b], order: a.order } : undefined),
    2,
  ),
  plain(
    'more placed',
    ['placeds', 'placed'],
    'placeds',
    (some, b) => (some.order === b.order ? { all: [...some.all, b], order: some.order } : undefined),
    2,
  ),
  plain(
    'more placed, joined',
    ['placeds', 'joint', 'placed'],
    'placeds',
    (some, _, b) => (some.order === b.order ? { all: [...some.all, b], order: some.order } : undefined),
    2,
  ),
  // A name and where
  plain('name alone', ['name'], 'namedAt', (name) => name),
  plain('place and name', ['where', 'name'], 'namedAt', (where, name) => ({ ...name, where }), 2),
  plain('name and place', ['name', 'where'], 'namedAt', (name, where) => ({ ...name, where }), 2),
  // Facts
  production('name, value', ['namedAt', 'value'], 'fact', (ground, name, of) => namedFacts(ground, name, one(name.where, of)), 3),
  production('value, name', ['value', 'namedAt'], 'fact', (ground, of, name) => namedFacts(ground, name, one(name.where, of)), 2),
  production('name, placed value', ['name', 'placed'], 'fact', (ground, name, placed) => namedFacts(ground, name, eachOf([placed])), 3),
  production('placed value, name', ['placed', 'name'], 'fact', (ground, placed, name) => namedFacts(ground, name, eachOf([placed])), 2),
  production('name, placed values', ['name', 'placeds'], 'fact', (ground, name, { all }) => namedFacts(ground, name, eachOf(all)), 3),
  production('placed values, name', ['placeds', 'name'], 'fact', (ground, { all }, name) => namedFacts(ground, name, eachOf(all)), 2),
  production(
    'placed name, value, placed',
    ['namedAt', 'value', 'placed'],
    'fact',
    (ground, name, of, next) =>
      name.where && next.order === 'place first' ? namedFacts(ground, name, [{ where: name.where, value: of }, next]) : [],
    2,
  ),
  production(
    'placed name, value, joined',
    ['namedAt', 'value', 'joint', 'placed'],
    'fact',
    (ground, name, of, _, next) =>
      name.where && next.order === 'place first' ? namedFacts(ground, name, [{ where: name.where, value: of }, next]) : [],
    2,
  ),
  production(
    'placed value, name, placed value',
    ['placed', 'name', 'placed'],
    'fact',
    (ground, a, name, b) => (a.order === 'value first' && b.order === 'value first' ? namedFacts(ground, name, eachOf([a, b])) : []),
    2,
  ),
  production(
    'placed value, name, joined',
    ['placed', 'name', 'joint', 'placed'],
    'fact',
    (ground, a, name, _, b) => namedFacts(ground, name, eachOf([a, b])),
    2,
  ),
  production(
    'change, name, value',
    ['change', 'namedAt', 'value'],
    'fact',
    (ground, { sign }, name, of) => (changeable(of) ? namedFacts(ground, name, one(name.where, { ...of, change: sign })) : []),
    3,
  ),
  production(
    'value, name, change',
    ['value', 'namedAt', 'change'],
    'fact',
    (ground, of, name, { sign }) => (changeable(of) ? namedFacts(ground, name, one(name.where, { ...of, change: sign })) : []),
    2,
  ),
  production(
    'change, placed value, name',
    ['change', 'placed', 'name'],
    'fact',
    (ground, { sign }, placed, name) =>
      changeable(placed.value) ? namedFacts(ground, name, one(placed.where, { ...placed.value, change: sign })) : [],
    2,
  ),
  production('name, list', ['namedAt', 'list'], 'fact', listFacts, 3),
  production('list, name', ['list', 'namedAt'], 'fact', (ground, list, name) => listFacts(ground, name, list), 2),
  production('none of it', ['none', 'namedAt'], 'fact', (ground, _, name) => namedFacts(ground, name, one(name.where, zero)), 2),
  production('it off', ['namedAt', 'none'], 'fact', (ground, name) => namedFacts(ground, name, one(name.where, zero)), 2),
  production('value alone', ['value'], 'fact', (ground, of) => namelessFacts(ground, one(undefined, of))),
  production('placed value alone', ['placed'], 'fact', (ground, placed) => namelessFacts(ground, eachOf([placed]))),
  production('placed values alone', ['placeds'], 'fact', (ground, { all }) => namelessFacts(ground, eachOf(all))),
  production('list alone', ['list'], 'fact', (ground, list) =>
    list.slashed || list.tokens.length > 2 ? dealt(undefined, list).flatMap((told) => namelessFacts(ground, told)) : [],
  ),
  production('peak at', ['fact', 'relation', 'value'], 'fact', (ground, fact, { relation }, of) => peakAt(ground, fact, relation, of)),
  production('option', ['option'], 'fact', (_, option) => optionFacts(option, undefined, false)),
  production('name, option', ['namedAt', 'option'], 'fact', (_, name, option) => optionNamed(name, option), 2),
  production('option, name', ['option', 'namedAt'], 'fact', (_, option, name) => optionNamed(name, option), 2),
  production('place, option', ['where', 'option'], 'fact', (_, where, option) => optionFacts(option, where, false), 2),
  production('option, place', ['option', 'where'], 'fact', (_, option, where) => optionFacts(option, where, false), 2),
  // What is asked
  production('asked', ['namedAt'], 'asked', (_, name) => asksOf(name.leaf.named, name.where)),
  production('asked at either', ['name', 'where', 'relation', 'where'], 'asked', (_, { leaf }, a, { relation }, b) =>
    relation === 'versus' ? asksAtEither(leaf.named, a, b) : [],
  ),
  production('asked at either place', ['where', 'relation', 'where', 'name'], 'asked', (_, a, { relation }, b, { leaf }) =>
    relation === 'versus' ? asksAtEither(leaf.named, a, b) : [],
  ),
];
function listOf(before: readonly AmountToken[], first: Amount | undefined, last: Amount): Sems['list'] | undefined {
  const tokens = [...(first ? [first.token] : before), last.token];
  const amounts = tokens.filter((token): token is AmountToken => token.is === 'amount');
  if (amounts.length !== tokens.length || amounts.some(({ slashed, to }) => slashed !== undefined || to !== undefined)) return undefined;
  const unit = amounts.findLast((token) => token.unit !== undefined)?.unit;
  // A unit said once, at the end or the beginning, is of all.
  const units = new Set(amounts.flatMap((token) => token.unit ?? []));
  if (units.size > 1) return undefined;
  return { tokens: unit === undefined ? amounts : amounts.map((token) => ({ ...token, unit })), slashed: false };
}
function asksAtEither(named: readonly Named[], a: Where, b: Where): readonly Made<'asked'>[] {
  return asksOf(named, a).flatMap(({ sem, price }) =>
    asksOf(named, b)
      .filter((other) => other.sem.items[0]?.entry === sem.items[0]?.entry)
      .map((other) => ({ sem: { items: [...sem.items, ...other.sem.items], alternatives: true as const }, price })),
  );
}
export const allPlaces = (entry: Entry): readonly string[] => placesOf(entry.scope);
