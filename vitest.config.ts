import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    exclude: ['test/e2e/**', 'node_modules/**'],
    setupFiles: ['test/seed.ts'],
    testTimeout: 300_000,
    // Every core works: by itself the runner leaves one idle, which on two cores is half of the machine.
    maxWorkers: availableParallelism(),
  },
});
