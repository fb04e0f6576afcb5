/** Follows DEVELOPERS.md: an input, a figure and a command, added as its ten lines say, are picked up by what they promise. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { answer } from '../../commands/answer.js';
import type { Command } from '../../commands/command.js';
import { isStop } from '../../commands/reading.js';
import { commands, registryProblems } from '../../commands/registry.js';
import { read } from '../../commands/resolve.js';
import { figure, isRefusal, quantity, refuse } from '../../core/catalog.js';
import { compile, evaluate } from '../../core/engine.js';
import { entries } from '../../core/entries.js';
import { mass } from '../../core/subjects/mass/told.js';
import { setting } from './setting.js';

const page = readFileSync(join(import.meta.dirname, '../../DEVELOPERS.md'), 'utf8');
const recipe = (title: string): string[] => {
  const from = page.indexOf(`## ${title}\n`);
  const section = page.slice(from, page.indexOf('\n## ', from + 1));
  return [...section.matchAll(/^\d+\. /gm)].map(([line]) => line);
};

// Lines 2 to 8 of "Add a quantity".
const trunkLoad = quantity({
  path: 'trial.load',
  scope: 'axle',
  name: 'sandbag over the axle',
  words: ['sandbag'],
  dimension: 'mass',
  sane: [0, 200],
  told: { usually: 'measured', measured: { absolute: 0.5 }, spec: { absolute: 1 } },
  measure: 'On a bathroom scale.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'none unless told' },
});
// Lines 2 to 5 of "Add a way".
const sandShare = figure({
  path: 'trial.share',
  scope: 'axle',
  name: 'sand over the weight of the car',
  symbol: 's',
  words: ['sand share'],
  dimension: 'ratio',
  needs: { load: trunkLoad, car: mass },
  compute: ({ load, car }) => (load > car ? refuse('More sand than car.', 'trial.load') : load / car),
  formula: 'load / car',
  source: 'by definition',
});
const catalog = compile([...entries, trunkLoad, sandShare]);

describe('the recipes of DEVELOPERS.md', () => {
  it('are ten lines each', () => {
    for (const title of ['Add a quantity', 'Add a way', 'Adding a command']) expect(recipe(title), title).toHaveLength(10);
  });
  it('make an input that the reader reads at once, at its place, in its dimension', () => {
    const reading = read('set rear sandbag 60 lb', { ...setting, catalog });
    if (isStop(reading)) throw new Error(reading.sentence);
    const [item] = reading.sides[0]?.items ?? [];
    expect(item?.entry.path).toBe('trial.load');
    expect(item?.places).toEqual(['rear']);
    expect(item?.said?.value).toBeCloseTo(60 * 0.45359237, 9);
    const wrong = read('set rear sandbag 60 psi', { ...setting, catalog });
    expect(isStop(wrong) && wrong.sentence).toMatch(/pressure/);
  });
  it('make a figure with its plus-or-minus, and a refusal that names what is missing', () => {
    const fact = (value: number, within: number, source: string) => ({ value, within, evidence: 'measured', source }) as const;
    const numbers = evaluate(catalog, {
      facts: new Map([
        ['rear.trial.load', fact(30, 0.5, 'a')],
        ['mass', fact(1200, 6, 'b')],
      ]),
    });
    expect(numbers.number('rear.trial.share')).toBeCloseTo(0.025, 12);
    expect(numbers.within('rear.trial.share')).toBeCloseTo(Math.hypot(0.5 / 1200, (30 / 1200 ** 2) * 6), 8);
    const none = evaluate(catalog, { facts: new Map() }).number('front.trial.share');
    expect(isRefusal(none) && none.refused).toMatch(/weight of the car/);
    const asked = read('rear sand share?', { ...setting, catalog });
    expect(!isStop(asked) && asked.sides[0]?.items[0]?.entry.path).toBe('trial.share');
  });
  it('make a command that the registry accepts and the reader finds', () => {
    const wave: Command = {
      word: 'wave',
      also: ['say hello'],
      group: 'house',
      summary: 'Waves.',
      examples: [{ line: 'wave', does: 'waves' }],
      takes: 'nothing',
      changes: false,
      run: () => ({ answer: answer('told', 'Hello.') }),
    };
    const all = [...commands, wave];
    expect(registryProblems(all)).toEqual([]);
    const reading = read('say hello', { ...setting, commands: all });
    expect(!isStop(reading) && reading.verb).toBe('wave');
    expect(registryProblems([...all, { ...wave, word: 'wave again' }])).toContain('"say hello" means wave and wave again');
  });
});
