import { defineConfig } from 'vite';

/** The command line and its worker, bundled for Node: nothing but Node's own modules stays outside. */
export default defineConfig({
  logLevel: 'silent',
  publicDir: false,
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: true,
    outDir: 'dist/electron',
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rolldownOptions: {
      // An optional part of the zip reader that nothing here reaches.
      external: ['@aws-sdk/client-s3'],
      input: {
        cli: 'electron/cli/main.ts',
        'risk-worker': 'electron/cli/risk-worker.ts',
        'paper-reader': 'electron/paper-reader.ts',
        'table-reader': 'electron/table-reader.ts',
      },
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'cli-[name].js' },
    },
  },
});
