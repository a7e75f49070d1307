// npm run outside-checks: runs every outside check and writes the page that lists them.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const run = spawnSync(
  process.execPath,
  [
    join(home, 'node_modules/vitest/vitest.mjs'),
    'run',
    'test/reference/outside-checks.test.ts',
    '--reporter=dot',
  ],
  { cwd: home, stdio: 'inherit', env: { ...process.env, WRITE_OUTSIDE_CHECKS: '1' } },
);
process.exit(run.status ?? 1);
