/**
 * Puts the built program into few files (`dist/program`): Node spends longer on finding and linking four hundred small ones than on running them, and
 * whoever restarts the bot waits for it. What comes from the registries stays where it is, but for zod, which is many small files too.
 */
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const built = (file: string): string => fileURLToPath(new URL(file, import.meta.url));
/** Threads are started by their file, beside the program's. */
const input = {
  main: built('./main.js'),
  worker: built('./expressions/worker.js'),
  'picture.worker': built('./render/picture.worker.js'),
};
const bundle = await rolldown({ input, platform: 'node', external: /^(?!zod\b)[^./]/ });
await bundle.write({ dir: built('../program'), format: 'esm', sourcemap: true, chunkFileNames: '[name].js' });
await bundle.close();
