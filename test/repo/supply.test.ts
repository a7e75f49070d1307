import { builtinModules } from 'node:module';
import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = path.join(import.meta.dirname, '../..');

interface Manifest {
  readonly dependencies?: Record<string, string>;
  readonly devDependencies: Record<string, string>;
  readonly overrides: { readonly exceljs: Record<string, string> };
}
interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly hasInstallScript?: boolean;
  readonly link?: boolean;
}
const read = (name: string): unknown => JSON.parse(fs.readFileSync(path.join(ROOT, name), 'utf8'));
const manifest = read('package.json') as Manifest;
const { packages } = read('package-lock.json') as { packages: Record<string, Locked> };
const locked = Object.entries(packages).filter(([name]) => name !== '');

/** What ends up in the program: packages that core, renderer and electron name. A new one is a deliberate edit here. */
const RUNTIME = [
  '@fontsource-variable/source-sans-3',
  '@fontsource-variable/source-serif-4',
  '@noble/hashes',
  '@tanstack/react-virtual',
  'd3-scale',
  'd3-shape',
  'date-fns',
  'decimal.js',
  'electron',
  'exceljs',
  'immer',
  'jszip',
  'papaparse',
  'react',
  'react-aria-components',
  'react-dom',
  'write-file-atomic',
  'yauzl',
  'zod',
  'zustand',
];

/** Licences that ask for no more than a notice, or for the source of the file changed. */
const LICENCES =
  /^\(?(MIT|ISC|BSD-[23]-Clause|0BSD|Apache-2\.0|BlueOak-1\.0\.0|OFL-1\.1|Python-2\.0|PSF-2\.0|MPL-2\.0|Unlicense|WTFPL|CC-BY-[34]\.0|CC0-1\.0|Zlib|BSL-1\.0|GPL-3\.0-or-later| OR | AND )+\)?$/;

function packagesNamedIn(folder: string): string[] {
  return fs
    .readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter(name => /\.(tsx?|css)$/.test(name) && !/vite\.config|\.d\.ts$/.test(name))
    .flatMap(name => {
      const text = fs.readFileSync(path.join(ROOT, folder, name), 'utf8');
      return [...text.matchAll(/(?:from |import |import\(|url\()'([^'.][^']*)'/g)].map(
        found => found[1] ?? '',
      );
    })
    .filter(name => !name.startsWith('node:') && !builtinModules.includes(name) && !name.startsWith('/'))
    .map(name =>
      name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/'),
    );
}

describe('the supply of packages', () => {
  test('every version is exact', () => {
    const versions = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  test('the program is made of exactly the packages listed here', () => {
    const named = new Set(['core', 'renderer', 'electron'].flatMap(packagesNamedIn));
    expect([...named].sort()).toEqual(RUNTIME);
  });

  test('every package of the lock file has a licence that allows it to be handed on', () => {
    const strange = locked.filter(
      ([, entry]) => entry.link !== true && !LICENCES.test(entry.license ?? 'none'),
    );
    expect(strange.map(([name, entry]) => `${name} ${entry.license ?? 'none'}`)).toEqual([]);
  });

  test('a licence with a duty to publish is only ever one side of a choice', () => {
    const bound = locked.filter(
      ([, entry]) => /GPL/.test(entry.license ?? '') && !/ OR /.test(entry.license ?? ''),
    );
    expect(bound).toEqual([]);
  });

  test('install scripts are off, and one package of the packers alone has any', () => {
    expect(fs.readFileSync(path.join(ROOT, '.npmrc'), 'utf8')).toContain('ignore-scripts=true');
    const scripted = locked.filter(([, entry]) => entry.hasInstallScript === true).map(([name]) => name);
    expect(scripted).toEqual(['node_modules/electron-winstaller']);
  });

  test('the old parts of the workbook writer are replaced by maintained ones', () => {
    expect(Object.keys(manifest.overrides.exceljs).sort()).toEqual(['tmp', 'unzipper', 'uuid']);
    const versionOf = (name: string) =>
      locked.find(([at]) => at === `node_modules/${name}`)?.[1].version ?? '0';
    expect(Number(versionOf('unzipper').split('.')[1])).toBeGreaterThanOrEqual(12);
    expect(Number(versionOf('uuid').split('.')[0])).toBeGreaterThanOrEqual(11);
  });
});
