import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { readProject, writeProject } from '../../../core/project';
import { AppFolder } from '../../../electron/files/app-folder';
import type { Leg, Outcome } from '../leg';

/** Edit after edit with unsaved work kept each time: memory and the journal must stay small. */
async function soak(long: boolean): Promise<Outcome> {
  const cycles = long ? 10_000 : 500;
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-soak-'));
  const kept = new AppFolder(folder);
  const project = readProject(fs.readFileSync('demo/wrenfield.reef.json', 'utf8')).project;
  if (project === undefined) return { ok: false, words: 'the example does not open' };
  let largest = 0;
  const journal = path.join(folder, 'recovery', 'aaaabbbbcccc.journal');
  const cycle = async (n: number) => {
    const edited = { ...project, title: `Cycle ${n}`, notes: [{ at: '/title', text: `note ${n % 97}` }] };
    const text = writeProject(edited);
    await kept.writeRecovery('aaaabbbbcccc', 'x', text, { place: '', base: '' });
    largest = Math.max(largest, fs.statSync(journal).size);
  };
  for (let n = 0; n < 50; n++) await cycle(n);
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  for (let n = 0; n < cycles; n++) await cycle(n);
  globalThis.gc?.();
  const grown = (process.memoryUsage().heapUsed - before) / 1024 / 1024;
  fs.rmSync(folder, { recursive: true, force: true });
  return {
    ok: grown < 20 && largest < 4 * 1024 * 1024,
    words: `${cycles} edits kept: heap grew ${grown.toFixed(1)} MB, journal at most ${(largest / 1024).toFixed(0)} kB`,
  };
}

export const soakLegs: readonly Leg[] = [{ name: 'soak', run: soak }];
