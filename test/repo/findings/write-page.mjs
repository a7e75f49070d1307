// npm run findings: runs every example and writes the catalogue of findings.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = dirname(dirname(dirname(dirname(fileURLToPath(import.meta.url)))));
const vitest = join(home, 'node_modules/vitest/vitest.mjs');
const run = spawnSync(
  process.execPath,
  [vitest, 'run', 'test/repo/findings/findings.test.ts', '--reporter=dot'],
  { cwd: home, stdio: 'inherit', env: { ...process.env, WRITE_FINDINGS: '1' } },
);
process.exit(run.status ?? 1);
