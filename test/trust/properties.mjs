// npm run trust -- --properties N: the random tests with N other seeds; each seed is printed, so that it can be used again
// with REEFWRIGHT_SEED.
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Test files that draw their cases with fast-check. */
function randomTests(home) {
  return readdirSync(join(home, 'test'), { recursive: true })
    .map(file => join('test', file))
    .filter(file => /\.test\.tsx?$/.test(file))
    .filter(file => readFileSync(join(home, file), 'utf8').includes('fc.assert'));
}

/** Runs them. @returns whether all held under every seed. */
export function properties(home, words) {
  const count = Number(words[words.indexOf('--properties') + 1] ?? 1) || 1;
  const files = randomTests(home);
  let failed = 0;
  for (let i = 0; i < count; i++) {
    const seed = randomInt(2 ** 31);
    console.log(`random tests: ${files.length} files with REEFWRIGHT_SEED=${seed}`);
    const run = spawnSync(
      process.execPath,
      [join(home, 'node_modules/vitest/vitest.mjs'), 'run', '--reporter=dot', ...files],
      { cwd: home, encoding: 'utf8', env: { ...process.env, REEFWRIGHT_SEED: String(seed) } },
    );
    if (run.status === 0) continue;
    failed++;
    console.log(`${run.stdout}${run.stderr}`);
  }
  console.log(`${count - failed} seeds passed, ${failed} failed`);
  return failed === 0;
}
