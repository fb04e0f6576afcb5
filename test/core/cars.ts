/** Cars drawn at random from a catalog, for tests of the engine and for its bench: nothing here is a car anyone has. */

import type { Fact, Facts } from '../../core/car.js';
import { type Curve, canBeTold, type Entry, type Evidence, halfWidth, isWorkedOut, type Value } from '../../core/catalog.js';
import { type Catalog, evaluate, type Node, type Situation } from '../../core/engine.js';

export type Random = () => number;
/** Mulberry32: small, seeded, good enough to draw cars. From 0 up to 1. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
/** A normal number of mean 0 and standard deviation 1 (Box and Muller). */
export const normal = (random: Random): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
/** A stream of its own for each name, so that a new entry in the catalog leaves the others' draws as they are. */
export function named(name: string, seed: number): Random {
  let hash = 0x811c9dc5 ^ seed;
  for (let n = 0; n < name.length; n++) hash = Math.imul(hash ^ name.charCodeAt(n), 0x01000193);
  const random = seeded(hash);
  random();
  return random;
}
const oneOf = <T>(list: readonly T[], random: Random): T => list[Math.floor(random() * list.length)]!;

/** Texts of designations, by the entry's path. A designation that is not here is told by no random car, and the catalog's test says so. */
export const designationTexts: Readonly<Record<string, readonly string[]>> = {
  'tire.size': [
    '245/40R17',
    '205/50R15',
    'P225/45ZR17 91W',
    '215/65R15 96H',
    'P215/65R15 95S',
    '275/35R18',
    '195/60R14',
    '31x10.50R15LT',
    '23.0x8.0-13',
  ],
  'speedometer.size': ['205/50R15', '225/45R17', '195/60R14'],
  'wheel.size': ['17x8 ET35', '15x7 ET20', '18x9.5 ET35', '14x6'],
};

/** Somewhere in the middle half of what is sane; in equal ratios where that spans more than a factor of 20. */
function within(sane: readonly [number, number], random: Random): number {
  const part = 0.25 + 0.5 * random();
  const [low, high] = sane;
  return low > 0 && high / low > 20 ? low * (high / low) ** part : low + (high - low) * part;
}
const clamped = (value: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, value));

function curveOf(entry: Entry, random: Random): Curve {
  const [low, high] = entry.saneAlong ?? [0, 1];
  const [from, to] = low < 0 ? [0.3 * low, 0.3 * high] : [low, low + 0.4 * (high - low)];
  const start = within(entry.sane ?? [0, 1], random);
  const rise = entry.sane ? 0.2 * random() * (entry.sane[1] - start) : 0;
  const points = 2 + Math.floor(random() * 4);
  // A table of forces starts from none.
  const first = entry.dimension === 'force' ? 0 : start;
  return {
    x: Array.from({ length: points }, (_, n) => from + ((to - from) * n) / (points - 1)),
    y: Array.from({ length: points }, (_, n) => first + ((start + rise - first) * n) / (points - 1)),
    between: entry.dimension !== 'force' && random() < 0.3 ? 'step' : 'line',
  };
}

/** A value for an input; near its estimate, where there is one. */
function drawValue(node: Node, estimate: number | undefined, random: Random): Value | undefined {
  const { entry } = node;
  switch (entry.kind) {
    case 'quantity': {
      const sane = entry.sane ?? [0, 1];
      if (estimate === undefined || !entry.within) return within(sane, random);
      const width = halfWidth(estimate, entry.within);
      // Nothing unless told (a spacer, a passenger): a little of what is sane.
      return clamped(width > 0 ? estimate + (width / 2) * normal(random) : estimate + 0.2 * random() * (sane[1] - estimate), sane);
    }
    case 'choice':
      return oneOf(entry.options ?? [], random);
    case 'curve':
      return curveOf(entry, random);
    case 'designation': {
      const texts = designationTexts[entry.path];
      return texts && oneOf(texts, random);
    }
    default:
      return undefined;
  }
}

function factOf(node: Node, value: Value, source: string, random: Random): Fact {
  const { told } = node.entry;
  const evidence: Evidence = random() < 0.5 ? 'measured' : 'spec';
  const width = told ? halfWidth(typeof value === 'number' ? value : 1, told[evidence === 'measured' ? 'measured' : 'spec']) : 0;
  return { value, within: width, evidence, source };
}

/** Facts of a random car: some inputs told, the others left to be estimated; of those that stand instead of each other, one. */
function draw(catalog: Catalog, seed: number): Facts {
  const estimates = evaluate(catalog, { facts: new Map() });
  const facts = new Map<string, Fact>();
  const taken = new Set<string>();
  // How much is told of what nothing is known of otherwise, and of what could be estimated.
  const ways = named('ways', seed);
  const [needed, spare] = [0.5 + 0.5 * ways(), 0.6 * ways()];
  const order = catalog.nodes.filter((node) => node.input && !node.then).map((node) => ({ node, random: named(node.path, seed) }));
  const shuffled = order.map((one) => ({ ...one, key: one.random() })).sort((a, b) => a.key - b.key);
  for (const { node, random } of shuffled) {
    const { entry, place, path } = node;
    const estimate = estimates.number(path);
    const known = estimates.status(path) === 'estimated';
    if (random() > (known ? spare : needed)) continue;
    const instead = entry.instead && `${place} ${entry.instead}`;
    if (instead && taken.has(instead)) continue;
    const value = drawValue(node, typeof estimate === 'number' ? estimate : undefined, random);
    if (value === undefined) continue;
    if (instead) taken.add(instead);
    facts.set(path, factOf(node, value, path, random));
  }
  return facts;
}

/** Facts of a random car of which some results are told as well, somewhere about what they are worked out to be. */
function drawResults(catalog: Catalog, seed: number, facts: Facts): Facts {
  const told = new Map(facts);
  const it = evaluate(catalog, { facts });
  for (const node of catalog.nodes) {
    const { entry, path, then, layer } = node;
    if (then || layer !== 'best' || !isWorkedOut(entry) || !canBeTold(entry) || !entry.sane || entry.scope === 'question') continue;
    const random = named(`${path}, told`, seed);
    if (random() > resultsTold) continue;
    const worked = it.number(path);
    const value = typeof worked === 'number' ? worked * (1 + 0.05 * normal(random)) : within(entry.sane, random);
    told.set(path, factOf(node, clamped(value, entry.sane), `${path}, told`, random));
  }
  return told;
}
/** This part of all results that can be told, of the cars that tell any. */
const resultsTold = 0.1;

/**
 * A random car, the same for the same seed; in half of them some facts have changed since it was measured.
 * @param results whether it tells results too
 */
export function randomCar(catalog: Catalog, seed: number, results = false): Situation {
  const inputs = draw(catalog, seed);
  const facts = results ? drawResults(catalog, seed, inputs) : inputs;
  if (named('then', seed)() < 0.5) return { facts };
  const then = new Map(facts);
  const changeable = [...facts.keys()].map((path) => ({ node: catalog.node(path), random: named(`${path}, before`, seed) }));
  const able = changeable.filter(({ node: { entry } }) => entry.kind === 'quantity' && !entry.state);
  const changed = able.map((one) => ({ ...one, key: one.random() })).sort((a, b) => a.key - b.key);
  for (const { node, random } of changed.slice(0, 3)) {
    const value = facts.get(node.path)!.value;
    if (typeof value !== 'number' || !node.entry.sane) continue;
    then.set(node.path, factOf(node, clamped(value * (0.9 + 0.2 * random()), node.entry.sane), `${node.path}, before`, random));
  }
  return { facts, then };
}
