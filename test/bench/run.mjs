// npm run bench -- NAME ...: builds the benches for Node, silently, then runs the one that is named; without a name the
// whole table, for which the window is built too.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const vite = join(home, 'node_modules/vite/bin/vite.js');
const built = spawnSync(
  process.execPath,
  [vite, 'build', '--config', 'test/bench/vite.config.ts', '--logLevel', 'error'],
  { cwd: home, encoding: 'utf8' },
);
if (built.status !== 0) {
  process.stderr.write(`The benches could not be built:\n${built.stdout}${built.stderr}`);
  process.exit(2);
}
const words = process.argv.slice(2);
if (words[0] === undefined || words[0].startsWith('--')) {
  const window = spawnSync(process.execPath, [join(home, 'electron/build.mjs'), '--if-older'], {
    cwd: home,
    encoding: 'utf8',
  });
  if (window.status !== 0) {
    process.stderr.write(`The window could not be built:\n${window.stdout}${window.stderr}`);
    process.exit(2);
  }
}
const run = spawnSync(process.execPath, [join(home, 'dist/bench/run.js'), ...words], {
  cwd: home,
  stdio: 'inherit',
});
process.exit(run.status ?? 2);
