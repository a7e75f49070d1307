import { defineConfig } from 'vitest/config';

/** One worker that asks the tests of one part about one change after another. */
export default defineConfig({
  test: {
    include: ['test/trust/mutation/ask.mjs'],
    exclude: ['node_modules/**'],
    testTimeout: 0,
    pool: 'threads',
    fileParallelism: false,
    reporters: ['dot'],
  },
});
