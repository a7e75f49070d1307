/** Builds when needed, runs the end-to-end tests in a real Chromium, and prints `N passed, N failed` on the last line. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { startVitest } from 'vitest/node';

const root = path.join(import.meta.dirname, '..', '..');
spawnSync(process.execPath, ['electron/build.mjs', '--if-older'], { cwd: root, stdio: 'inherit' });
const only = process.argv.slice(2).map(word => (word === '--shots' ? 'screens' : word));
const vitest = await startVitest('test', only, {
  config: path.join(import.meta.dirname, 'vitest.config.ts'),
  watch: false,
  root,
});
const tests = vitest.state.getFiles().flatMap(function walk(task) {
  return 'tasks' in task ? task.tasks.flatMap(walk) : [task];
});
const passed = tests.filter(test => test.result?.state === 'pass').length;
const failed = tests.filter(test => test.result?.state === 'fail').length;
const broken = vitest.state
  .getFiles()
  .filter(file => file.result?.state === 'fail' && file.tasks.length === 0).length;
await vitest.close();
process.stdout.write(`${passed} passed, ${failed + broken} failed\n`);
process.exit(failed + broken === 0 ? 0 : 1);
