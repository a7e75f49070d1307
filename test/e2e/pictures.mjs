// npm run pictures: shows every view of the example in Chromium and puts the pictures that the papers use into demo/pictures.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const run = spawnSync(
  process.execPath,
  [join(home, 'test/e2e/run.mjs'), '--shots', '--test', 'face of every view is shown at 1280 in light'],
  { cwd: home, stdio: 'inherit' },
);
if (run.status !== 0) process.exit(run.status ?? 1);
mkdirSync(join(home, 'demo/pictures'), { recursive: true });
for (const view of ['decision', 'compare', 'work', 'schedule', 'sinking', 'risk', 'funding', 'materials'])
  copyFileSync(join(home, `test/e2e/out/${view}-1280-light.png`), join(home, `demo/pictures/${view}.png`));
console.log('Wrote demo/pictures.');
