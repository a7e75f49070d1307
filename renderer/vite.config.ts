import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type HtmlTagDescriptor, type Plugin } from 'vite';

const CORE = path.join(import.meta.dirname, '..', 'core');

/** The window's own part is loaded beside the part that starts the engine, not after it; it still runs after it. */
const loadedAtOnce: Plugin = {
  name: 'loaded-at-once',
  transformIndexHtml: {
    order: 'post',
    handler: (_html, { bundle }): HtmlTagDescriptor[] => {
      const chunks = Object.values(bundle ?? {}).flatMap(file => (file.type === 'chunk' ? [file] : []));
      const main = chunks.find(chunk => chunk.facadeModuleId?.endsWith('/main.tsx'));
      const entries = new Set(chunks.filter(chunk => chunk.isEntry).map(chunk => chunk.fileName));
      const parts =
        main === undefined ? [] : [main.fileName, ...main.imports].filter(part => !entries.has(part));
      return parts.map(part => ({
        tag: 'link',
        attrs: { rel: 'modulepreload', href: `/${part}` },
        injectTo: 'head',
      }));
    },
  },
};

export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  logLevel: 'warn',
  plugins: [react(), loadedAtOnce],
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
