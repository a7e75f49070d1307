// npm run trust [-- --long] [--only NAME] [--part 2/9] [--planted]: builds the legs for Node, silently, then runs them.
// npm run trust -- --properties N: the random tests with N other seeds.
// npm run trust -- --mutation PART: changes core/PART one place at a time and counts what its tests see.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mutate } from './mutation/run.mjs';
import { properties } from './properties.mjs';

const home = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const words = process.argv.slice(2);
if (words.includes('--mutation')) process.exit((await mutate(home, words)) ? 0 : 1);
if (words.includes('--properties')) process.exit(properties(home, words) ? 0 : 1);
const vite = join(home, 'node_modules/vite/bin/vite.js');
const built = spawnSync(
  process.execPath,
  [vite, 'build', '--config', 'test/trust/vite.config.ts', '--logLevel', 'error'],
  { cwd: home, encoding: 'utf8' },
);
if (built.status !== 0) {
  process.stderr.write(`The legs could not be built:\n${built.stdout}${built.stderr}`);
  process.exit(2);
}
const run = spawnSync(process.execPath, ['--expose-gc', join(home, 'dist/trust/run.js'), ...words], {
  cwd: home,
  stdio: 'inherit',
});
process.exit(run.status ?? 2);
