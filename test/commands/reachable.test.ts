/** Every entry of both catalogs can be reached by every verb that is for its kind, by its own words. */
import { describe, expect, it } from 'vitest';
import { phrase } from '../../commands/canonical.js';
import { dispatch } from '../../commands/dispatch.js';
import { writeExactly } from '../../commands/language/quantities.js';
import { isStop } from '../../commands/reading.js';
import { commands } from '../../commands/registry.js';
import { read } from '../../commands/resolve.js';
import { settingOf } from '../../commands/setting.js';
import { type Entry, isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { demoClub } from './demo.js';
import { everything } from './say.js';

const club = await demoClub();
const context = club.context('robin');
const setting = settingOf(context, commands);
const askable = catalog.entries.filter((entry) => (entry.words?.length ?? 0) > 0);
const placeFor = (entry: Entry): string => placesOf(entry.scope)[entry.scope === 'gear' ? 1 : 0] ?? '';
const middle = ([low, high]: readonly [number, number]): number => (low > 0 ? Math.sqrt(low * high) : (low + high) / 2 + (high - low) / 8);
const amountOf = (entry: Entry): string =>
  writeExactly(Number(middle(entry.sane ?? [0, 1]).toPrecision(3)), entry.dimension ?? 'ratio', { units: 'us', decimalMark: '.' });

/** The entry that a line leads to. */
function ledTo(line: string): string {
  const reading = read(line, setting);
  if (isStop(reading)) return `${reading.stop}: ${reading.sentence}`;
  const items = [
    ...reading.sides.flatMap((side) => side.items),
    ...reading.tried,
    ...(reading.goal ? [reading.goal] : []),
    ...(reading.against ? [reading.against] : []),
  ];
  return items.map((item) => item.entry.path).join(', ');
}
/** A question for a fact may lead to the figure or the other fact that people call by the same words, which then tells it. */
const sharesWords = (entry: Entry, path: string): boolean =>
  isInput(entry) && (catalog.entries.find((one) => one.path === path)?.words?.some((word) => entry.words?.includes(word)) ?? false);
function misled(lines: readonly (readonly [Entry, string])[]): string[] {
  return lines.flatMap(([entry, line]) => {
    const found = ledTo(line).split(', ');
    const right = found.includes(entry.path) || (!/^(set|try)/.test(line) && found.some((path) => sharesWords(entry, path)));
    return right ? [] : [`${line} -> ${found.join(', ')}`];
  });
}

describe('every entry with words', () => {
  it('there are many', () => {
    expect(askable.filter(isInput).length).toBeGreaterThan(60);
    expect(askable.filter((entry) => !isInput(entry)).length).toBeGreaterThan(80);
  });
  for (const verb of ['show', 'why', 'doubt'])
    it(`is reached by ${verb}`, () => {
      expect(
        misled(askable.filter((entry) => entry.scope !== 'question').map((entry) => [entry, `${verb} ${phrase(entry, placeFor(entry))}`])),
      ).toEqual([]);
    });
  const quantities = askable.filter((entry) => entry.kind === 'quantity');
  for (const verb of ['set', 'try'])
    it(`is reached by ${verb} when it is an amount`, () => {
      const told = quantities.filter((entry) => entry.scope !== 'question');
      expect(misled(told.map((entry) => [entry, `${verb} ${phrase(entry, placeFor(entry))} ${amountOf(entry)}`]))).toEqual([]);
    });
  const figures = askable.filter((entry) => entry.kind === 'figure' && entry.dimension !== undefined);
  /** An amount that moves a figure, for the verbs that need both. */
  const moverOf = (entry: Entry): Entry | undefined =>
    quantities.find((input) => input.scope !== 'question' && !input.state && catalog.dependsOn(pathFor(entry), pathFor(input)));
  const pathFor = (entry: Entry): string => (placeFor(entry) === '' ? entry.path : `${placeFor(entry)}.${entry.path}`);
  it('is reached by draw when it is a figure that an amount moves', () => {
    const lines = figures.flatMap((entry): (readonly [Entry, string])[] => {
      const mover = moverOf(entry);
      return mover ? [[entry, `draw ${phrase(entry, placeFor(entry))} against ${phrase(mover, placeFor(mover))}`]] : [];
    });
    expect(lines.length).toBeGreaterThan(60);
    expect(misled(lines)).toEqual([]);
  });
  it('is reached by compare', () => {
    const lines = figures
      .filter(({ scope }) => scope !== 'question')
      .map((entry): readonly [Entry, string] => [entry, `compare turnip with moth ${phrase(entry, placeFor(entry))}`]);
    expect(misled(lines)).toEqual([]);
  });
  it('gives an answer or a refusal with its reason, never a mistake, by every verb', async () => {
    for (const entry of askable) {
      const name = phrase(entry, placeFor(entry));
      const lines = [
        `show ${name}`,
        `why ${name}`,
        `doubt ${name}`,
        `draw ${name}`,
        `compare turnip with moth ${name}`,
        ...(entry.kind === 'quantity' ? [`set ${name} ${amountOf(entry)}`, `try ${name} ${amountOf(entry)}`] : []),
      ];
      for (const line of lines) {
        const { answers } = await dispatch(line, context);
        for (const one of answers) expect(everything(one), line).not.toMatch(/NaN|undefined|\[object|Infinity/);
      }
    }
  }, 400_000);
});
