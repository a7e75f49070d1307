import { readdirSync, statSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sourceFiles } from './files';
import { LAYERS } from './layers';

const ROWS = new Map(LAYERS.map(([, name], row) => [name, row]));
const IMPORT = /^(?:import|export)\b[^'"`;]*from\s+['"]([^'"]+)['"]|import\(['"]([^'"]+)['"]\)/gm;
/** Packages core may use: arithmetic, schema, hash. Nothing of the page, nothing of Node. */
const PACKAGES = new Set([
  'decimal.js',
  'zod',
  'date-fns',
  '@noble/hashes/sha2.js',
  '@noble/hashes/utils.js',
]);

function importsOf(text: string): string[] {
  return [...text.matchAll(IMPORT)].map(found => found[1] ?? found[2] ?? '');
}

describe('the layer table', () => {
  const files = sourceFiles('core');

  test('every folder of core has a row', () => {
    const folders = readdirSync('core').filter(name => statSync(`core/${name}`).isDirectory());
    expect(folders.filter(name => !ROWS.has(name))).toEqual([]);
  });

  test('a module imports only rows above it, and only through their index', () => {
    const faults = files.flatMap(file => {
      const own = file.path.split('/')[1] ?? '';
      return importsOf(file.text).flatMap(target => {
        if (!target.startsWith('.')) return PACKAGES.has(target) ? [] : [`${file.path} imports ${target}`];
        const path = posix.join(posix.dirname(file.path), target);
        if (path.startsWith('templates/'))
          return target.endsWith('.json') ? [] : [`${file.path} imports ${target}`];
        const [top, module, ...inside] = path.split('/');
        if (top !== 'core') return [`${file.path} imports ${target}`];
        if (module === own) return [];
        const above = (ROWS.get(module ?? '') ?? 99) < (ROWS.get(own) ?? -1);
        return above && inside.length === 0 ? [] : [`${file.path} imports ${target}`];
      });
    });
    expect(faults).toEqual([]);
  });

  test('a planted import of a lower row would be seen', () => {
    expect(importsOf(`import { x } from '../project';\nexport { y } from '../sheet';`)).toEqual([
      '../project',
      '../sheet',
    ]);
  });
});
