import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const CORE = path.join(import.meta.dirname, '..', 'core');

export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  logLevel: 'warn',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    target: 'chrome120',
    outDir: '../dist/renderer',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    cssCodeSplit: true,
    rolldownOptions: {
      // The modules of core do nothing when they are loaded: of their doors the window takes along what it calls alone.
      treeshake: {
        moduleSideEffects: id => (path.dirname(id).startsWith(CORE) ? false : undefined),
      },
    },
  },
});
