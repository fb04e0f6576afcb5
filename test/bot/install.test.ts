/** What `npm ci` puts on a machine, read from package.json and its lock: nothing that warns on the Nodes that are promised, and nothing unused. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';

const house = fileURLToPath(new URL('../..', import.meta.url));
const text = (file: string): string => readFileSync(join(house, file), 'utf8');
const versions = z.record(z.string(), z.string());
const program = z
  .object({ engines: versions, scripts: versions, dependencies: versions, devDependencies: versions })
  .parse(JSON.parse(text('package.json')));
const lock = z
  .object({
    packages: z.record(
      z.string(),
      z.looseObject({
        // Very old packages have a list, which npm takes no notice of.
        engines: z
          .union([z.looseObject({ node: z.string().optional() }), z.array(z.string()).transform(() => ({ node: undefined }))])
          .optional(),
        hasInstallScript: z.boolean().optional(),
        deprecated: z.string().optional(),
        link: z.boolean().optional(),
      }),
    ),
  })
  .parse(JSON.parse(text('package-lock.json')));
const installed = Object.entries(lock.packages).filter(([path]) => path !== '');

type Version = readonly [number, number, number];
const compared = (a: Version, b: Version): number => a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
/** Of the ranges that npm has (https://github.com/npm/node-semver#ranges), those that occur in the lock; any other is a failure, not a pass. */
function accepts(range: string, version: Version): boolean {
  const one = (part: string): boolean => {
    const read = /^(>=|>|<=|<|\^|~|=)?v?(\d+)(?:\.(\d+|x))?(?:\.(\d+|x))?$/.exec(part);
    if (part === '*') return true;
    if (!read) throw new Error(`a range of engines that this test can't read: ${range}`);
    const [, sign = '=', major, minor, patch] = read;
    const bound: Version = [Number(major), Number(minor ?? 0) || 0, Number(patch ?? 0) || 0];
    const order = compared(version, bound);
    if (sign === '>=') return order >= 0;
    if (sign === '>') return order > 0;
    if (sign === '<=') return order <= 0;
    if (sign === '<') return order < 0;
    if (sign === '^') return order >= 0 && version[0] === bound[0];
    return order >= 0 && version[0] === bound[0] && (minor === undefined || minor === 'x' || version[1] === bound[1]);
  };
  return range.split('||').some((all) =>
    [
      ...all
        .trim()
        .replace(/(>=|>|<=|<|\^|~|=)\s+/g, '$1')
        .split(/\s+/),
    ].every(one),
  );
}

describe('what is installed', () => {
  it('takes every Node that is promised, from the oldest on', () => {
    expect(program.engines.node).toBe('>=20.19');
    const oldest: Version = [20, 19, 0];
    const current: Version = [24, 16, 0];
    const wrong = installed.filter(
      ([, { engines }]) => engines?.node && !(accepts(engines.node, oldest) && accepts(engines.node, current)),
    );
    expect(wrong.map(([path, { engines }]) => `${path} wants ${engines?.node}`)).toEqual([]);
    expect(installed.length).toBeGreaterThan(100);
    expect(accepts('^18 || >=22', oldest)).toBe(false);
  });
  it('runs one install script, that of the database, and fetches no native encryption', () => {
    expect(installed.filter(([, { hasInstallScript }]) => hasInstallScript).map(([path]) => path)).toEqual(['node_modules/better-sqlite3']);
    const native = installed.filter(([path]) => path.endsWith('matrix-sdk-crypto-nodejs'));
    expect(native).toMatchObject([['node_modules/@matrix-org/matrix-sdk-crypto-nodejs', { link: true }]]);
  });
  it('is not given up by who keeps it', () => {
    expect(installed.filter(([, { deprecated }]) => deprecated !== undefined).map(([path]) => path)).toEqual([]);
    expect(installed.filter(([path]) => path === 'node_modules/har-validator')).toEqual([]);
  });
});

describe('what is depended on', () => {
  const sources = ['bot', 'core', 'commands', 'test'].flatMap((room) =>
    readdirSync(join(house, room), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => text(join(room, name))),
  );
  const used = new Set(
    sources.flatMap((source) =>
      [...source.matchAll(/(?:from|import|import\(|resolve\()\s*(['"`])((?:@[\w.-]+\/)?[\w.-]+)[^'"`]*\1/g)].map(
        ([, , name]) => name ?? '',
      ),
    ),
  );
  const scripts = Object.values(program.scripts).join(' ');
  /** Not imported by name: what is run, what only types are taken from, and what matrix-bot-sdk requires. */
  const elsewhere: Readonly<Record<string, boolean>> = {
    '@biomejs/biome': /\bbiome\b/.test(scripts),
    typescript: /\btsc\b/.test(scripts),
    '@types/better-sqlite3': used.has('better-sqlite3'),
    '@types/node': true,
    '@matrix-org/matrix-sdk-crypto-nodejs': used.has('matrix-bot-sdk'),
  };
  it('is used', () => {
    const names = [...Object.keys(program.dependencies), ...Object.keys(program.devDependencies)];
    expect(names.filter((name) => !used.has(name) && !elsewhere[name])).toEqual([]);
  });
});
