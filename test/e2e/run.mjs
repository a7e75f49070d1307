/** Builds when needed, runs the end-to-end tests in a real Chromium, and prints `N passed, N failed` on the last line. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { startVitest } from 'vitest/node';

const root = path.join(import.meta.dirname, '..', '..');
// `--shots`: screenshots only. `--view NAME`: of one view. `--test WORDS`: only tests whose name has the words. `--no-build`: as it stands.
const words = process.argv.slice(2);
const valueOf = name => (words.includes(name) ? words.splice(words.indexOf(name), 2)[1] : undefined);
const view = valueOf('--view');
const named = valueOf('--test');
if (view !== undefined) process.env['REEFWRIGHT_VIEW'] = view;
const only = words.filter(word => word !== '--no-build').map(word => (word === '--shots' ? 'screens' : word));
if (!words.includes('--no-build'))
  spawnSync(process.execPath, ['electron/build.mjs', '--if-older'], { cwd: root, stdio: 'inherit' });
const vitest = await startVitest('test', only, {
  config: path.join(import.meta.dirname, 'vitest.config.ts'),
  watch: false,
  ...(named === undefined ? {} : { testNamePattern: named }),
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
