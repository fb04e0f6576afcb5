/** The rooms of the house: bot reads commands and core, commands read core, core reads nothing of ours outside itself. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const house = fileURLToPath(new URL('../..', import.meta.url));
const mayRead: Readonly<Record<string, readonly string[]>> = {
  core: ['core'],
  commands: ['commands', 'core'],
  bot: ['bot', 'commands', 'core'],
};
/** `import ... from '...'`, `export ... from '...'`, `import '...'`, `import('...')`, with either quote, over several lines. */
const imports = /(?:^\s*(?:import|export)\b[^;'"]*?\bfrom\s*|^\s*import\s*|\bimport\s*\(\s*)(['"])([^'"]+)\1/gm;

const files = (room: string): string[] =>
  readdirSync(join(house, room), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(room, name));

/** What an import of a file leads to: a room, or a package as `package name`. */
function leadsTo(file: string, name: string): string {
  if (!name.startsWith('.')) return `package ${name}`;
  return relative(house, resolve(house, dirname(file), name)).split('/')[0] ?? '';
}
function broken(file: string, text: string): string[] {
  const room = file.split('/')[0]!;
  return [...text.matchAll(imports)].flatMap(([, , name]) => {
    const to = leadsTo(file, name!);
    const outside = to.startsWith('package ');
    const fine = outside ? room === 'bot' || (room === 'commands' && !to.startsWith('package node:')) : mayRead[room]!.includes(to);
    return fine ? [] : [`${file} reads ${name}`];
  });
}

describe('the rooms', () => {
  for (const room of Object.keys(mayRead)) {
    it(`${room} reads only ${mayRead[room]!.join(', ')}`, () => {
      const all = files(room);
      expect(all.length).toBeGreaterThan(2);
      expect(all.flatMap((file) => broken(file, readFileSync(join(house, file), 'utf8')))).toEqual([]);
    });
  }
  it('would be seen broken', () => {
    const lines = [
      `import { a } from '../commands/answer.js';`,
      `export * from "../bot/main.js";`,
      `const b = await import('node:fs');`,
      `import '../commands/x.js';`,
    ];
    for (const line of lines) expect(broken('core/planted.ts', line), line).toHaveLength(1);
    expect(broken('commands/verbs/planted.ts', `import type { a } from '../../bot/main.js';`)).toHaveLength(1);
    expect(broken('commands/planted.ts', `import { a } from '../core/catalog.js';`)).toEqual([]);
  });
});

/** `import type`, and lists of nothing but types, lead to nothing while the program runs. */
const onlyTypes = /^\s*(?:import|export)\s+type\b|^\s*(?:import|export)\s*\{(?:\s*type\s[^,}]*,?)+\s*\}/;
/** Every file that is needed for each, of ours. */
function needs(file: string): string[] {
  const text = readFileSync(join(house, file), 'utf8');
  return [...text.matchAll(imports)].flatMap(([whole, , name = '']) => {
    if (!name.startsWith('.') || onlyTypes.test(whole)) return [];
    return [relative(house, resolve(house, dirname(file), name)).replace(/\.js$/, '.ts')];
  });
}
/** Ways that lead from a file back to it, each once. */
function circles(of: ReadonlyMap<string, readonly string[]>): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const walk = (file: string, way: readonly string[]): void => {
    if (way.includes(file)) found.push([...way.slice(way.indexOf(file)), file].join(' > '));
    if (done.has(file) || way.includes(file)) return;
    for (const next of of.get(file) ?? []) walk(next, [...way, file]);
    done.add(file);
  };
  for (const file of of.keys()) walk(file, []);
  return found;
}
describe('files', () => {
  it('need each other in no circle', () => {
    const all = Object.keys(mayRead).flatMap(files);
    const graph = new Map(all.map((file) => [file, needs(file)]));
    expect([...graph.values()].flat().length).toBeGreaterThan(800);
    expect(circles(graph)).toEqual([]);
  });
  it('would be seen in one', () => {
    expect(
      circles(
        new Map([
          ['a', ['b', 'c']],
          ['b', ['c']],
          ['c', ['d']],
          ['d', ['b']],
        ]),
      ),
    ).toEqual(['b > c > d > b']);
  });
});

describe('the lint rule', () => {
  // Planted outside the house, under the same rules, so that nothing else trips over it.
  const planted = mkdtempSync(join(tmpdir(), 'rooms-'));
  const rules: unknown = JSON.parse(readFileSync(join(house, 'biome.json'), 'utf8'));
  writeFileSync(join(planted, 'biome.json'), JSON.stringify(Object.assign({}, rules, { vcs: { enabled: false } })));
  afterAll(() => rmSync(planted, { recursive: true }));

  /** What Biome says of a file with this line in it. */
  function lint(file: string, line: string): string {
    mkdirSync(dirname(join(planted, file)), { recursive: true });
    writeFileSync(join(planted, file), `${line}\n\nexport const planted = used;\n`);
    const biome = join(house, 'node_modules/@biomejs/biome/bin/biome');
    const { stdout, stderr, status } = spawnSync(process.execPath, [biome, 'lint', '--colors=off', file], {
      cwd: planted,
      encoding: 'utf8',
    });
    expect(stdout + stderr).toContain('Checked 1 file');
    expect(status === 0 || stderr.includes(file)).toBe(true);
    return stdout + stderr;
  }
  it('fires on an import against the arrows, and only on that', () => {
    const [core, verbs] = ['core/planted.ts', 'commands/verbs/planted.ts'] as const;
    expect(lint(core, `import { used } from '../commands/answer.js';`)).toContain('core imports nothing outside itself');
    expect(lint(core, `import { used } from '../bot/main.js';`)).toContain('core imports nothing outside itself');
    expect(lint(core, `import used from 'node:fs';`)).toContain('core imports nothing outside itself');
    expect(lint(core, `import { used } from './catalog.js';`)).not.toContain('outside itself');
    expect(lint(verbs, `import { used } from '../../bot/main.js';`)).toContain('commands never import bot');
    expect(lint(verbs, `import { used } from '../answer.js';`)).not.toContain('commands never import bot');
  });
});
