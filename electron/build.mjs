/** Builds the window and its shells into `dist`. With `--if-older`, only when a source is newer than the last build. */
import fs from 'node:fs';
import path from 'node:path';

const root = path.join(import.meta.dirname, '..');
const stamp = path.join(root, 'dist', 'built.json');
const sources = ['core', 'renderer', 'electron', 'templates', 'demo', 'package.json'];

function newest(target) {
  const stat = fs.statSync(target, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  const entries = fs.readdirSync(target).filter(name => name !== 'out' && name !== 'node_modules');
  return Math.max(stat.mtimeMs, ...entries.map(name => newest(path.join(target, name))));
}

const latest = Math.max(...sources.map(name => newest(path.join(root, name))));
const built = fs.existsSync(stamp) ? JSON.parse(fs.readFileSync(stamp, 'utf8')).sources : -1;

if (!process.argv.includes('--if-older') || built < latest) {
  const started = performance.now();
  const { build } = await import('vite');
  await build({ configFile: path.join(root, 'renderer', 'vite.config.ts') });
  for (const mode of ['entry', 'preload', 'start', 'table-reader', 'paper-reader']) {
    await build({ configFile: path.join(root, 'electron', 'vite.config.ts'), mode });
  }
  const samples = path.join(root, 'dist', 'demo');
  fs.mkdirSync(samples, { recursive: true });
  const demo = path.join(root, 'demo');
  for (const name of fs.existsSync(demo) ? fs.readdirSync(demo) : []) {
    if (name.endsWith('.reef.json')) fs.copyFileSync(path.join(demo, name), path.join(samples, name));
  }
  fs.copyFileSync(path.join(root, 'electron/icon/icon.png'), path.join(root, 'dist/electron/icon.png'));
  fs.writeFileSync(stamp, JSON.stringify({ sources: latest }));
  process.stdout.write(`Built in ${((performance.now() - started) / 1000).toFixed(1)} s.\n`);
}
