import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { beforeAll, expect, test } from 'vitest';

const ROOT = path.join(import.meta.dirname, '../..');
const COMMAND = path.join(ROOT, 'electron/reefwright.mjs');

/** Builds the command line once where it is older than its sources. */
beforeAll(() => {
  spawnSync(process.execPath, [COMMAND, '--help'], { cwd: ROOT });
}, 300_000);

test('why ends at the givens a figure rests on, each with its basis and source', () => {
  const words = ['why', 'demo/wrenfield.reef.json', '--line', 'tank-washing', '--column', 'labour'];
  const { stdout } = spawnSync(process.execPath, [COMMAND, ...words, '--today', '2026-11-24'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  const [tree = '', givens = ''] = stdout.split('It rests on ');
  expect(tree.split('\n')[0]).toMatch(/^87063\.54 USD {2}Labour: Tanks washed/);
  // A step that only passes a figure on is not printed, and no word of the sheet stands for one.
  expect(tree).not.toMatch(/\[(link|carried|when|quoted|dollars)\]/);
  expect(givens).toMatch(/0\.32 h\/m2 {2}Hours for one: Tanks washed {2}\[judgement: .+\]/);
  expect(givens).toMatch(/21\.9 USD\/h {2}Wage: Tank cleaner {2}\[judgement: .+\]/);
  expect(givens).not.toContain('does not apply here');
}, 120_000);
