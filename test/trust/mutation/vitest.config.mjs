import { defineConfig } from 'vitest/config';

/** The tests of one part, in one worker: MUTATION_TESTS holds their paths, one a line. */
export default defineConfig({
  test: {
    include: (process.env.MUTATION_TESTS ?? 'test/core/**/*.test.ts').split('\n'),
    exclude: ['node_modules/**'],
    testTimeout: 60_000,
    pool: 'threads',
    fileParallelism: false,
  },
});
