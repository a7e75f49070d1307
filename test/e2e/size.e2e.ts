import fs from 'node:fs';
import path from 'node:path';
import zlib from 'node:zlib';
import { expect, test } from 'vitest';
import { ROOT } from './lib/window';

const DIST = path.join(ROOT, 'dist', 'renderer');

function packed(file: string): number {
  return zlib.gzipSync(fs.readFileSync(path.join(DIST, 'assets', file)), { level: 9 }).length;
}

/** Code that a file of the build asks for, by name; the build empties its folder first, so nothing stale is there. */
function asked(text: string): string[] {
  return [...text.matchAll(/([\w-]+-[\w-]{8}\.(?:js|css))/g)].map(found => found[1] ?? '');
}

test('the code of the window is under 300 kB packed at first load and under 450 kB in all, worker and fonts apart', () => {
  const first = [...new Set(asked(fs.readFileSync(path.join(DIST, 'index.html'), 'utf8')))];
  const reached = new Set(first);
  for (const file of reached) {
    if (!file.endsWith('.js')) continue;
    for (const next of asked(fs.readFileSync(path.join(DIST, 'assets', file), 'utf8'))) {
      if (fs.existsSync(path.join(DIST, 'assets', next)) && !next.startsWith('worker')) reached.add(next);
    }
  }
  const sum = (files: Iterable<string>) => [...files].reduce((all, file) => all + packed(file), 0);
  const [atFirst, inAll] = [sum(first), sum(reached)];
  process.stdout.write(`window code: ${atFirst} bytes packed at first load, ${inAll} in all\n`);
  expect(first.length).toBeGreaterThan(1);
  expect(atFirst).toBeLessThan(300_000);
  expect(inAll).toBeGreaterThan(atFirst);
  expect(inAll).toBeLessThan(450_000);
});
