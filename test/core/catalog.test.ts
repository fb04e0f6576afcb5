/** The sanity of the whole catalog: what every verb counts on. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { canBeTold, type Entry, isEntry, isInput, isNumeric, isRefusal, isWorkedOut } from '../../core/catalog.js';
import { dimensions } from '../../core/dimensions.js';
import { evaluate, placesOf } from '../../core/engine.js';
import { entries } from '../../core/entries.js';
import { catalog } from '../../core/stubaxle.js';
import { designationTexts, randomCar } from './cars.js';

const inputs = entries.filter(isInput);
const figures = entries.filter((entry) => entry.kind === 'figure');
/** Lines that name what is wrong: an empty list is what each test wants. */
const wrong = (of: readonly Entry[], what: (entry: Entry) => string | false | undefined): string[] =>
  of.flatMap((entry) => {
    const words = what(entry);
    return words ? [`${entry.path}: ${words}`] : [];
  });

describe('the catalog', () => {
  it('is whole: what is needed is exported', () => {
    expect(inputs.length).toBeGreaterThan(80);
    expect(figures.length).toBeGreaterThan(120);
    const listed = new Set(entries);
    const needed = catalog.nodes.map((node) => node.entry).filter((entry) => entry.kind !== 'place' && !listed.has(entry));
    expect([...new Set(needed.map((entry) => entry.path))]).toEqual([]);
  });
  it('has every subject file in its list', async () => {
    const files = readdirSync(new URL('../../core/subjects', import.meta.url), { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    );
    expect(files.length).toBeGreaterThan(90);
    const listed = new Set(entries);
    for (const file of files) {
      const subject: Readonly<Record<string, unknown>> = await import(new URL(`../../core/subjects/${file}`, import.meta.url).href);
      const missing = Object.values(subject).filter((one) => isEntry(one) && one.kind !== 'place' && !listed.has(one));
      expect(
        missing.map((one) => isEntry(one) && one.path),
        file,
      ).toEqual([]);
    }
  });
  it('says what an entry is to a member only where that can be so', () => {
    const told = entries.filter(canBeTold);
    expect(entries.filter(({ percent }) => percent).length).toBeGreaterThan(25);
    expect(wrong(entries, ({ percent, dimension }) => percent && dimension !== 'ratio' && 'in per cent, and no ratio')).toEqual([]);
    expect(wrong(entries, ({ work, caution }) => work && !caution && 'work without a caution')).toEqual([]);
    expect(
      wrong(entries, ({ name, dimension, percent }) => dimension === 'ratio' && / share\b/.test(name) && !percent && 'a share'),
    ).toEqual([]);
    for (const nature of ['car', 'piece']) expect(told.filter((entry) => entry.nature === nature).length).toBeGreaterThan(10);
    expect(wrong(entries, (entry) => entry.nature && !isInput(entry) && 'worked out, and put on the car')).toEqual([]);
  });
  it('keeps all ways of a quantity in one file, or the way up again with what it goes up from: others would have no rank that can be seen', () => {
    const root = new URL('../../core/', import.meta.url);
    const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
      (name) => name.endsWith('.ts') && !name.startsWith('catalog/'),
    );
    let stated = 0;
    const elsewhere = files.flatMap((name) => {
      const text = readFileSync(new URL(name, root), 'utf8');
      const made = new Set(
        [...text.matchAll(/^export const (?:(\w+)|\{([^}]*)\}) =/gm)].flatMap(([, one, some]) => one ?? some!.match(/\w+/g)!),
      );
      return [...text.matchAll(/^(inverse|carry)\(\s*([\w.]+)(.*?)^\}\);$/gms)].flatMap(([, kind, of, spec]) => {
        stated++;
        // What is wound, weighed or set stands below what follows from it: only there are both made.
        const from = kind === 'inverse' ? [...spec!.matchAll(/given\((\w+)\)/g)].map(([, one]) => one!) : [];
        return [of!, ...from].some((one) => made.has(one)) ? [] : [`${name}: a way of ${of}`];
      });
    });
    expect(stated).toBeGreaterThan(3);
    expect(elsewhere).toEqual([]);
  });
  it('has inverse ways first, and reads in them what it goes up to only as given', () => {
    const inverses = entries.flatMap((entry) => entry.ways.filter((way) => way.inverse).map((way) => ({ entry, way })));
    expect(inverses.length).toBeGreaterThan(3);
    expect(
      wrong(
        entries,
        ({ ways }) => ways.some((way, n) => way.inverse && ways.slice(0, n).some((one) => !one.inverse)) && 'an inverse after a way down',
      ),
    ).toEqual([]);
    expect(
      inverses
        .filter(({ way }) => !Object.values(way.needs).some(({ terms }) => terms.some(({ only }) => only === 'given')))
        .map(({ entry }) => entry.path),
    ).toEqual([]);
  });
  it('can be compiled with every single result told, and with all of them', () => {
    const results = entries.filter((entry) => isWorkedOut(entry) && canBeTold(entry));
    expect(results.length).toBeGreaterThan(5);
    for (const result of results) expect(catalog.telling([result]).nodes.length).toBeGreaterThan(catalog.nodes.length);
    expect(catalog.telling(results).nodes.length).toBeGreaterThan(catalog.telling([results[0]!]).nodes.length);
  });
  it('has paths of plain words, none of which is a place, a moment or a layer', () => {
    const places = new Set(['then', 'given', 'model', ...(['axle', 'corner', 'gear'] as const).flatMap(placesOf)]);
    expect(wrong(entries, ({ path }) => !/^[a-z][a-zA-Z]*(\.[a-z][a-zA-Z]*)*$/.test(path) && 'not plain words')).toEqual([]);
    expect(wrong(entries, ({ path }) => places.has(path.split('.')[0]!) && 'begins like a place')).toEqual([]);
  });
  it('names everything, each once at a scope', () => {
    expect(wrong(entries, ({ name }) => (name.trim() !== name || name === '' || /[.!?]$/.test(name)) && `a name like "${name}"`)).toEqual(
      [],
    );
    const seen = new Map<string, string>();
    expect(
      wrong(entries, ({ name, scope, path }) => {
        const key = `${scope} ${name}`;
        const other = seen.get(key);
        seen.set(key, path);
        return other && `has the name of ${other}, "${name}"`;
      }),
    ).toEqual([]);
  });
  it('can be typed: inputs have words, figures have words or are steps, words are lower case and once each', () => {
    expect(wrong(inputs, ({ words }) => (words ?? []).length === 0 && 'no words')).toEqual([]);
    expect(
      wrong(
        entries,
        ({ words }) =>
          words?.some((word) => word !== word.toLowerCase() || word.trim() !== word || word === '') && 'words not in lower case',
      ),
    ).toEqual([]);
    expect(wrong(entries, ({ words }) => words && new Set(words).size !== words.length && 'a word twice')).toEqual([]);
    expect(
      wrong(
        entries,
        ({ words }) =>
          words?.some((word) => /\b(tyre|tyres|tires|centre|springs|gears|wheels)\b/.test(word)) &&
          'words that are not singular and American',
      ),
    ).toEqual([]);
  });
  it('has no two inputs, and no two figures, with the same words, scope and dimension', () => {
    const seen = new Map<string, Entry>();
    const clashes: string[] = [];
    for (const entry of entries) {
      // The verb tells an input from a figure: one sets a tire's diameter, and is shown the best that is known of it.
      const kind = entry.kind === 'curve' ? 'curve' : isInput(entry) ? 'input' : 'figure';
      for (const word of entry.words ?? []) {
        const key = [kind, entry.scope, entry.dimension ?? entry.kind, word].join(' ');
        const other = seen.get(key);
        if (other) clashes.push(`${word}: ${other.path} and ${entry.path}`);
        seen.set(key, entry);
      }
    }
    expect(clashes).toEqual([]);
  });
  it('says how to measure each input, and gives a source for each way', () => {
    expect(wrong(inputs, ({ measure }) => (measure ?? '').trim().length < 5 && 'no way to measure it')).toEqual([]);
    expect(
      wrong(entries, ({ kind, source }) => (kind === 'figure' || kind === 'structure') && (source ?? '').trim() === '' && 'no source'),
    ).toEqual([]);
    expect(wrong(entries, ({ ways }) => ways.some(({ source }) => source.trim() === '') && 'a way without a source')).toEqual([]);
  });
  it('has figures that show how they are worked out, or say where', () => {
    expect(wrong(figures, ({ symbol }) => (symbol ?? '') === '' && 'no symbol')).toEqual([]);
  });
});

describe('ranges', () => {
  const quantities = entries.filter((entry) => canBeTold(entry) && entry.kind !== 'choice' && entry.kind !== 'designation');
  it('are in order, finite, and of a dimension that exists', () => {
    expect(
      wrong(
        quantities,
        ({ sane }) => !(sane && Number.isFinite(sane[0]) && Number.isFinite(sane[1]) && sane[0] < sane[1]) && 'its sane range',
      ),
    ).toEqual([]);
    expect(wrong(entries, ({ typical }) => typical && !(typical.range[0] < typical.range[1]) && 'its typical range')).toEqual([]);
    expect(wrong(entries, ({ dimension }) => dimension && !(dimension in dimensions) && 'its dimension')).toEqual([]);
    expect(
      wrong(
        quantities,
        ({ step, sane }) => step && sane && !(step.inch > 0 && step.metric > 0 && step.metric < sane[1] - sane[0]) && 'its step',
      ),
    ).toEqual([]);
  });
  it('say what is typical by kind of car: in order, each kind once, with a source, and not outside what is sane', () => {
    const typicals = entries.flatMap((entry) => entry.typicals.map((one) => ({ entry, ...one })));
    expect(typicals.length).toBeGreaterThan(20);
    expect(
      typicals.flatMap(({ entry, range, for: kind, source }) => {
        const [low, high] = entry.sane ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
        const right = range[0] < range[1] && kind.trim() !== '' && source.trim() !== '' && range[0] >= low && range[1] <= high;
        return right ? [] : [`${entry.path}, ${kind}`];
      }),
    ).toEqual([]);
    expect(wrong(entries, ({ typicals: all }) => new Set(all.map((one) => one.for)).size !== all.length && 'a kind of car twice')).toEqual(
      [],
    );
  });
  it('say what is typical of all that is alike from car to car, or why nothing is', () => {
    // What people ask "is it too much?" of: numbers that can be told and are no size or weight of a car, but how stiff, how much of it, how far turned.
    const comparable = new Set<string | undefined>(['frequency', 'rate', 'rollStiffness', 'dampingRate', 'pressure', 'angle', 'ratio']);
    const judged = entries.filter(
      (entry) => isNumeric(entry) && entry.words && entry.sane && entry.scope !== 'question' && comparable.has(entry.dimension),
    );
    expect(judged.length).toBeGreaterThan(120);
    expect(
      wrong(judged, ({ typicals, untypical }) => typicals.length > 0 === (untypical !== undefined) && 'what is typical of it'),
    ).toEqual([]);
    expect(judged.filter(({ untypical }) => untypical !== undefined).length).toBeLessThan(judged.length / 8);
    for (const { typicals, path } of judged)
      for (const { source } of typicals) expect(source, path).toMatch(/^common practice, no source$|\d|from memory|exact/);
  });
  it('have tolerances above nothing, and no relative ones where the value may be 0', () => {
    const parts = (entry: Entry) => (entry.told ? [entry.told.measured, entry.told.spec] : []);
    expect(
      wrong(
        quantities,
        (entry) =>
          entry.scope !== 'question' &&
          (parts(entry).length !== 2 || parts(entry).some((one) => ('relative' in one ? one.relative : one.absolute) <= 0)) &&
          'a tolerance of nothing',
      ),
    ).toEqual([]);
    expect(
      wrong(
        quantities,
        (entry) =>
          entry.kind !== 'curve' &&
          entry.sane![0] < 0 &&
          entry.sane![1] > 0 &&
          parts(entry).some((one) => 'relative' in one) &&
          'a relative tolerance near zero',
      ),
    ).toEqual([]);
    expect(
      wrong(
        quantities,
        (entry) =>
          entry.kind !== 'curve' &&
          entry.sane![0] < 0 &&
          entry.sane![1] > 0 &&
          entry.within &&
          'relative' in entry.within &&
          'an estimate with a relative doubt near zero',
      ),
    ).toEqual([]);
  });
  it('contain every estimate of random cars, and half of its doubt', () => {
    const outside = new Set<string>();
    let estimates = 0;
    for (let car = 0; car < 60; car++) {
      const it = evaluate(catalog, randomCar(catalog, 300 + car));
      for (const node of catalog.nodes) {
        if (node.entry.kind !== 'quantity' || it.status(node.path) !== 'estimated' || node.then) continue;
        estimates++;
        const value = it.get(node.path);
        const [low, high] = node.entry.sane!;
        if (typeof value !== 'number' || value < low || value > high) outside.add(`${node.path} ${value} is outside ${low} to ${high}`);
      }
    }
    expect(estimates).toBeGreaterThan(1000);
    expect([...outside]).toEqual([]);
  });
});

describe('kinds of input', () => {
  it('choices have options, each once, and their other words belong to one option', () => {
    const choices = inputs.filter((entry) => entry.kind === 'choice');
    expect(
      wrong(choices, ({ options }) => ((options ?? []).length < 2 || new Set(options).size !== options!.length) && 'its options'),
    ).toEqual([]);
    expect(
      wrong(choices, ({ options, optionWords }) => {
        const all = (options ?? []).flatMap((option) => [...new Set([option, ...(optionWords?.[option] ?? [])])]);
        return new Set(all).size !== all.length && 'a word for two options';
      }),
    ).toEqual([]);
  });
  it('designations come back as they are written', () => {
    const designations = inputs.filter((entry) => entry.kind === 'designation');
    expect(designations.length).toBeGreaterThan(0);
    expect(
      wrong(designations, ({ path }) => !designationTexts[path] && 'no texts in test/core/cars.ts, so that no random car tells it'),
    ).toEqual([]);
    for (const entry of designations) {
      for (const text of designationTexts[entry.path] ?? []) {
        const value = entry.parse!(text);
        if (isRefusal(value)) throw new Error(`${entry.path} ${text}: ${value.refused}`);
        const written = entry.write!(value);
        const again = entry.parse!(written);
        expect(isRefusal(again) ? again : entry.write!(again), text).toBe(written);
      }
    }
  });
  it('what stands instead of each other is at one scope', () => {
    const scopes = new Map<string, Set<string>>();
    for (const { instead, scope } of inputs) if (instead) scopes.set(instead, (scopes.get(instead) ?? new Set()).add(scope));
    expect([...scopes].filter(([, at]) => at.size > 1)).toEqual([]);
  });
  it('state is carried on by a figure, or is the only thing that says so', () => {
    const carried = figures.filter((entry) => entry.carriesOn);
    expect(
      wrong(
        carried,
        ({ carriesOn, scope, dimension }) =>
          (carriesOn!.state !== true || carriesOn!.scope !== scope || carriesOn!.dimension !== dimension) && 'carries on something else',
      ),
    ).toEqual([]);
    expect(new Set(carried.map((entry) => entry.carriesOn)).size).toBe(carried.length);
  });
});

describe('every figure', () => {
  it('has a value for some random car', () => {
    const known = new Set<string>();
    for (let car = 0; car < 300; car++) {
      const it = evaluate(catalog, randomCar(catalog, car));
      for (const node of catalog.nodes) if (it.status(node.path) !== 'unknown') known.add(node.entry.path);
    }
    // No random car tells that it has no bar.
    const without = evaluate(catalog, {
      facts: new Map([['front.bar.diameter', { value: 0, within: 0, evidence: 'measured', source: 'no bar' }]]),
    });
    for (const node of catalog.nodes) if (without.status(node.path) !== 'unknown') known.add(node.entry.path);
    expect(entries.filter((entry) => !known.has(entry.path)).map((entry) => entry.path)).toEqual([]);
  });
  it('says in a sentence why it has none, and names what can be told', () => {
    for (const situation of [{ facts: new Map() }, randomCar(catalog, 1), randomCar(catalog, 2), randomCar(catalog, 3)]) {
      const it = evaluate(catalog, situation);
      for (const { path, then, layer } of catalog.nodes) {
        const value = then || layer !== 'best' ? undefined : it.get(path);
        if (!isRefusal(value)) continue;
        expect(value.refused, path).toMatch(/^[A-Z0-9].*[.!]$/s);
        for (const lacking of value.because ?? []) expect(catalog.byPath.has(lacking), `${path} for ${lacking}`).toBe(true);
      }
    }
  });
});
