import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { BenchRow } from './row';

const FOLDER = 'dist/renderer';

const packed = (file: string) => gzipSync(readFileSync(file), { level: 9 }).length / 1000;

/** Code that a text of the build asks for, by name. */
const asked = (text: string) =>
  [...text.matchAll(/([\w-]+-[\w-]{8}\.(?:js|css))/g)].map(found => found[1] ?? '');

/** What the window loads, packed: at first and in all; its workers beside it. Fonts are not counted. */
export function bundleRows(): BenchRow[] {
  const assets = join(FOLDER, 'assets');
  const first = [...new Set(asked(readFileSync(join(FOLDER, 'index.html'), 'utf8')))];
  const reached = new Set(first);
  const workers = readdirSync(assets).filter(file => file.startsWith('worker') && file.endsWith('.js'));
  for (const file of reached)
    if (file.endsWith('.js'))
      for (const next of asked(readFileSync(join(assets, file), 'utf8')))
        if (!next.startsWith('worker') && existsSync(join(assets, next))) reached.add(next);
  const sum = (files: Iterable<string>) =>
    [...files].reduce((all, file) => all + packed(join(assets, file)), 0);
  const row = (name: string, figure: number): BenchRow => ({ name, figure, unit: 'kB packed' });
  return [
    row('code of the window at first load', sum(first)),
    row('code of the window in all', sum(reached)),
    row('code of its workers', sum(workers)),
  ];
}
