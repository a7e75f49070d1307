import { defineConfig } from 'vite';

/** Builds the legs and the programs they kill for Node. */
export default defineConfig({
  build: {
    ssr: true,
    outDir: 'dist/trust',
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rolldownOptions: {
      input: {
        run: 'test/trust/run.ts',
        saver: 'test/trust/saver.ts',
        zone: 'test/trust/zone.ts',
      },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
