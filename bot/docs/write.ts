/** `npm run docs`: writes the generated pages again. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pages } from './pages.js';

const top = process.cwd();
for (const [path, text] of await pages(top)) {
  writeFileSync(join(top, path), text);
  process.stdout.write(`${path}\n`);
}
