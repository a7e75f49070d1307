import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { expect, test } from 'vitest';

const ROOT = path.join(import.meta.dirname, '../..');

function risk(): Record<string, unknown> {
  const words = [
    'electron/reefwright.mjs',
    'risk',
    'demo/wrenfield.reef.json',
    '--trials',
    '500',
    '--seed',
    '7',
    '--json',
  ];
  const ran = spawnSync(process.execPath, words, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 28 });
  return JSON.parse(ran.stdout) as Record<string, unknown>;
}

test('two runs of the same seed on worker threads print the same, but for the seconds they took', () => {
  const [first, second] = [risk(), risk()];
  expect(typeof first['seconds']).toBe('number');
  expect(JSON.stringify({ ...first, seconds: 0 })).toBe(JSON.stringify({ ...second, seconds: 0 }));
}, 120_000);
