#!/usr/bin/env node
// The command line: builds it first, silently, when it is older than its sources, then runs it.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const home = dirname(dirname(fileURLToPath(import.meta.url)));
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  process.stderr.write(
    `Reefwright needs Node 20.19 or newer; this is ${process.versions.node}. Install Node 22 LTS and try again.\n`,
  );
  process.exit(2);
}

/** The newest time any file below a folder was written. */
function newest(path) {
  const entry = statSync(path);
  if (!entry.isDirectory()) return entry.mtimeMs;
  return Math.max(entry.mtimeMs, ...readdirSync(path).map(name => newest(join(path, name))));
}

const built = join(home, 'dist/electron/cli.js');
const sources = ['core', 'electron', 'templates', 'package.json']
  .map(name => join(home, name))
  .filter(existsSync);
if (!existsSync(built) && !existsSync(join(home, 'node_modules/vite'))) {
  process.stderr.write(
    'What Reefwright is built with is not installed yet. Run "npm ci" in its folder, then try again.\n',
  );
  process.exit(2);
}
if (
  existsSync(join(home, 'node_modules/vite')) &&
  (!existsSync(built) || newestOf(sources) > statSync(built).mtimeMs)
) {
  const vite = join(home, 'node_modules/vite/bin/vite.js');
  const run = spawnSync(process.execPath, [vite, 'build', '--config', 'electron/cli.vite.config.ts'], {
    cwd: home,
    encoding: 'utf8',
  });
  if (run.status !== 0) {
    process.stderr.write(`The command line could not be built:\n${run.stdout}${run.stderr}\n`);
    process.exit(2);
  }
}

function newestOf(paths) {
  return Math.max(...paths.map(newest));
}

await import(pathToFileURL(built).href);
