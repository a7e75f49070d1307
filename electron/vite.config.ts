import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** Builds one bundle of the shell, named by the mode: `entry` and `preload` (CommonJS for Electron), `start` (Node). */
export default defineConfig(({ mode }) => {
  const format = mode === 'start' ? 'es' : 'cjs';
  const extension = mode === 'start' ? 'js' : 'cjs';
  return {
    root: import.meta.dirname,
    logLevel: 'warn',
    ssr: { noExternal: true },
    build: {
      ssr: `${mode}.ts`,
      target: 'node20',
      outDir: '../dist/electron',
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        external: ['electron', ...builtinModules, ...builtinModules.map(name => `node:${name}`)],
        output: { format, entryFileNames: `${mode}.${extension}`, codeSplitting: false },
      },
    },
  };
});
