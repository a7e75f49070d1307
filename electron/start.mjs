// npm start: builds when something is newer than the last build, then opens the window and says which and why.
import { spawnSync } from 'node:child_process';
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
const built = spawnSync(process.execPath, [join(home, 'electron/build.mjs'), '--if-older'], {
  cwd: home,
  stdio: ['ignore', 'inherit', 'inherit'],
});
if (built.status !== 0) process.exit(2);
await import(pathToFileURL(join(home, 'dist/electron/start.js')).href);
