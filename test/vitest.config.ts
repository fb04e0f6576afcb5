import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/{core,commands,bot,references,simulation}/**/*.test.ts'],
    testTimeout: 30_000,
  },
});
