import { defineConfig } from 'vitest/config';

const report = process.env.STUBAXLE_TEST_REPORT;

export default defineConfig({
  test: {
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    root: new URL('../..', import.meta.url).pathname,
    include: ['test/homeserver/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // One homeserver and one bot at a time: the suite measures behaviour, not luck with two cores.
    fileParallelism: false,
  },
});
