/** Files that the console writes: numbered, never over another. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const exists = (problem: unknown): boolean => problem instanceof Error && 'code' in problem && problem.code === 'EEXIST';

/** Writes `NAME-1.ENDING`, or the next number that is free, readable by this user only. Gives its path. */
export function writeFile(folder: string, name: string, ending: string, data: string | Uint8Array): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (let number = 1; ; number++) {
    const path = join(folder, `${name}-${number}.${ending}`);
    try {
      writeFileSync(path, data, { flag: 'wx', mode: 0o600 });
      return path;
    } catch (problem) {
      if (!exists(problem)) throw problem;
    }
  }
}
