import { defineConfig } from 'vite';

/** Builds the bench for Node: `vite build -c test/bench/vite.config.ts`, then `node dist/bench/run.js levelling`. */
export default defineConfig({
  build: {
    ssr: 'test/bench/run.ts',
    outDir: 'dist/bench',
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rolldownOptions: { external: ['minizinc'], output: { entryFileNames: 'run.js' } },
  },
});
