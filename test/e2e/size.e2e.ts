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

/** What the page names, the window that its first script goes on to, and all that these import at once. */
function loadedFirst(): readonly string[] {
  const found = new Set(asked(fs.readFileSync(path.join(DIST, 'index.html'), 'utf8')));
  for (const file of found) {
    if (!file.endsWith('.js')) continue;
    const text = fs.readFileSync(path.join(DIST, 'assets', file), 'utf8');
    const imported = [...text.matchAll(/(?:import|from)\s*["']\.\/([^"']+\.js)["']/g)].map(
      one => one[1] ?? '',
    );
    const next = asked(text).filter(name => name.startsWith('main-'));
    for (const name of [...imported, ...next]) found.add(name);
  }
  expect([...found].some(name => name.startsWith('main-'))).toBe(true);
  return [...found];
}

test('the code of the window is under 300 kB packed at first load and under 450 kB in all, worker and fonts apart', () => {
  const first = loadedFirst();
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

test('the host reads under 500 kB of its own code before it prints its address: engine and papers come when asked for', () => {
  const folder = path.join(ROOT, 'dist', 'electron');
  const read = new Set(['start.js']);
  for (const file of read)
    for (const [, next] of fs
      .readFileSync(path.join(folder, file), 'utf8')
      .matchAll(/^(?:import|export) .*?["']\.\/([\w-]+\.js)["'];?$/gm))
      if (next !== undefined) read.add(next);
  const bytes = [...read].reduce((all, file) => all + fs.statSync(path.join(folder, file)).size, 0);
  process.stdout.write(`host code: ${bytes} bytes in ${read.size} files at the start\n`);
  expect(read.size).toBeGreaterThan(1);
  expect(bytes).toBeLessThan(500_000);
  expect(fs.readdirSync(folder)).toContain('start-make-papers.js');
});
