import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** Packages written for CommonJS ask for their own file name. */
const NAMES = `import { fileURLToPath as ownPath } from 'node:url';
const __filename = ownPath(import.meta.url);
const __dirname = import.meta.dirname;`;

/** Builds one bundle of the shell, named by the mode: `entry`, `preload`, `table-reader` and `paper-reader` (CommonJS for Electron), `start` (Node). */
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
        external: [
          'electron',
          '@aws-sdk/client-s3',
          ...builtinModules,
          ...builtinModules.map(name => `node:${name}`),
        ],
        output: {
          format,
          banner: format === 'es' ? NAMES : '',
          entryFileNames: `${mode}.${extension}`,
          // What the host does not need until it is asked for is left in files of its own.
          chunkFileNames: `${mode}-[name].${extension}`,
          codeSplitting: format === 'es',
          // What is packed goes without blanks and comments; names stay, so that a trace can be read.
          minify:
            format === 'cjs' ? { compress: true, mangle: false, codegen: { removeWhitespace: true } } : false,
        },
      },
    },
  };
});
