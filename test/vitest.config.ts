import { defineConfig } from 'vitest/config';

const report = process.env.STUBAXLE_TEST_REPORT;

export default defineConfig({
  test: {
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    root: new URL('..', import.meta.url).pathname,
    include: ['test/{core,commands,bot,references,simulation}/**/*.test.ts'],
    testTimeout: 30_000,
    // One worker a core: by default one core is left idle.
    maxWorkers: '100%',
  },
});
