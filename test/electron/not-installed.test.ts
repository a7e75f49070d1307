import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';

const root = path.join(import.meta.dirname, '../..');

test('before "npm ci" the command line says what to do, in one line', () => {
  const bare = fs.mkdtempSync(path.join(os.tmpdir(), 'bare-'));
  try {
    for (const file of ['package.json', 'electron/reefwright.mjs']) {
      fs.mkdirSync(path.dirname(path.join(bare, file)), { recursive: true });
      fs.copyFileSync(path.join(root, file), path.join(bare, file));
    }
    const run = spawnSync(process.execPath, [path.join(bare, 'electron/reefwright.mjs'), '--help'], {
      encoding: 'utf8',
    });
    expect(run.status).toBe(2);
    expect(run.stderr).toMatch(/^What Reefwright is built with .*Run "npm ci".*\n$/);
  } finally {
    fs.rmSync(bare, { recursive: true });
  }
});
