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
if (process.argv.slice(2).some(word => word === '--help' || word === '-h')) {
  process.stdout.write(`npm start -- [FILE] [--no-open] [--browser] [--folder FOLDER]

Opens the window: in Electron where its runtime is present or can be fetched, else in a Chromium window.

  FILE             a project to open, *.reef.json
  --no-open        prints the address of the window instead of opening it
  --browser        uses the Chromium window without trying Electron
  --folder FOLDER  where projects are kept and looked for
`);
  process.exit(0);
}
const built = spawnSync(process.execPath, [join(home, 'electron/build.mjs'), '--if-older'], {
  cwd: home,
  stdio: ['ignore', 'inherit', 'inherit'],
});
if (built.status !== 0) process.exit(2);
await import(pathToFileURL(join(home, 'dist/electron/start.js')).href);
