import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { saveAtomically } from '../../../electron/files/atomic-save';
import { sweepLeftovers } from '../../../electron/files/backups';
import { HostProblem } from '../../../electron/problem';
import type { Leg, Outcome } from '../leg';
import { versionText, wholeVersion } from '../version-text';

const OLD = versionText(1, 20_000);
const NEW = versionText(2, 500_000);

function mounted(folder: string, options: string): boolean {
  fs.mkdirSync(folder, { recursive: true });
  return spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder]).status === 0;
}

/** Saves a longer version where it cannot be saved: the problem in words must come, and the old version must stand. */
async function refusedSave(target: string, code: string): Promise<string | undefined> {
  let told = 'it said saved';
  try {
    await saveAtomically(target, NEW, 'versions');
  } catch (cause) {
    if (!(cause instanceof HostProblem)) return `${code}: a raw fault ${String(cause)}`;
    told = cause.problem.code;
    if (cause.problem.meaning === '' || cause.problem.remedy === '')
      return `${code}: a problem without words`;
  }
  if (told !== `file/${code.toLowerCase()}`) return `${code}: ${told}`;
  if (wholeVersion(fs.readFileSync(target, 'utf8')) !== 1) return `${code}: the old version is gone`;
  return undefined;
}

/** What a save or a sweep left beside the document. */
async function strays(target: string): Promise<string | undefined> {
  await sweepLeftovers(target);
  const known = new Set([path.basename(target), `.${path.basename(target)}.before-1`]);
  const left = fs.readdirSync(path.dirname(target)).filter(name => !known.has(name));
  return left.length === 0 ? undefined : `left ${left.join(', ')}`;
}

async function fullDisk(folder: string): Promise<(string | undefined)[]> {
  if (!mounted(folder, 'size=256k')) return ['skipped'];
  const target = path.join(folder, 'x.reef.json');
  fs.writeFileSync(target, OLD);
  const found = [await refusedSave(target, 'ENOSPC'), await strays(target)];
  fs.rmSync(path.join(folder, '.x.reef.json.before-1'), { force: true });
  await saveAtomically(target, versionText(3, 20_000));
  if (wholeVersion(fs.readFileSync(target, 'utf8')) !== 3)
    found.push('ENOSPC: a short version after it is not saved');
  spawnSync('umount', [folder]);
  return found;
}

async function readOnlyDisk(folder: string): Promise<(string | undefined)[]> {
  if (!mounted(folder, 'size=4m')) return ['skipped'];
  const target = path.join(folder, 'x.reef.json');
  fs.writeFileSync(target, OLD);
  spawnSync('mount', ['-o', 'remount,ro', folder]);
  const found = [await refusedSave(target, 'EROFS')];
  spawnSync('umount', [folder]);
  return found;
}

/** As a user who may read the folder and not write in it. */
async function foreignFolder(folder: string): Promise<(string | undefined)[]> {
  if (process.seteuid === undefined || process.geteuid?.() !== 0) return ['skipped'];
  fs.mkdirSync(folder, { mode: 0o755 });
  const target = path.join(folder, 'x.reef.json');
  fs.writeFileSync(target, OLD, { mode: 0o644 });
  process.seteuid(65_534);
  try {
    return [await refusedSave(target, 'EACCES')];
  } finally {
    process.seteuid(0);
  }
}

async function elsewhere(folder: string): Promise<(string | undefined)[]> {
  const found: (string | undefined)[] = [];
  const gone = path.join(folder, 'gone', 'x.reef.json');
  const long = path.join(folder, `${'x'.repeat(260)}.reef.json`);
  for (const [target, code] of [
    [gone, 'file/enoent'],
    [long, 'file/enametoolong'],
  ] as const) {
    try {
      await saveAtomically(target, NEW, 'versions');
      found.push(`${code}: it said saved`);
    } catch (cause) {
      const told = cause instanceof HostProblem ? cause.problem.code : String(cause);
      if (told !== code) found.push(`${code}: ${told}`);
    }
  }
  return found;
}

/** Disks that are really full, read-only, or somebody else's. */
async function realFaults(): Promise<Outcome> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-disk-'));
  fs.chmodSync(folder, 0o755);
  const cases: readonly (readonly [string, () => Promise<(string | undefined)[]>])[] = [
    ['full', () => fullDisk(path.join(folder, 'full'))],
    ['read-only', () => readOnlyDisk(path.join(folder, 'read-only'))],
    ['somebody else’s', () => foreignFolder(path.join(folder, 'foreign'))],
    ['gone or named too long', () => elsewhere(folder)],
  ];
  const answered: string[] = [];
  const skipped: string[] = [];
  const wrong: string[] = [];
  for (const [name, run] of cases) {
    const found = (await run()).flatMap(one => one ?? []);
    if (found.includes('skipped')) skipped.push(name);
    else if (found.length > 0) wrong.push(...found);
    else answered.push(name);
  }
  fs.rmSync(folder, { recursive: true, force: true });
  const left =
    skipped.length > 0 ? `; not run here, no right to mount or change the user: ${skipped.join(', ')}` : '';
  return {
    ok: wrong.length === 0 && answered.length > 0,
    words: `disks ${answered.join(', ')} answered in words with the old version whole, ${wrong.length} wrong ${wrong.join('; ')}${left}`,
  };
}

export const realFaultLegs: readonly Leg[] = [{ name: 'real disks', run: realFaults }];
