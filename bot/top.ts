/** The top folder of the checkout, for what is read beside the program: found from a source file and from a built one alike. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** @param file - `import.meta.url` of the caller. @throws when no folder above it holds a `package.json`. */
export function topOf(file: string): URL {
  let folder = new URL('.', file);
  while (!existsSync(new URL('package.json', folder))) {
    const up = new URL('..', folder);
    if (up.href === folder.href) throw new Error(`no package.json above ${fileURLToPath(file)}`);
    folder = up;
  }
  return folder;
}
