import { defineConfig } from 'vitest/config';

const report = process.env.STUBAXLE_TEST_REPORT;

export default defineConfig({
  test: {
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    root: new URL('..', import.meta.url).pathname,
    include: ['test/{core,commands,bot,references,simulation}/**/*.test.ts'],
    testTimeout: 30_000,
    // All files of a worker share what they import: compiling the catalog anew for each of them is a third of the time.
    isolate: false,
    // One worker a core: by default one core is left idle.
    maxWorkers: '100%',
  },
});
