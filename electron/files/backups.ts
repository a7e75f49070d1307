import fs from 'node:fs';
import path from 'node:path';
import { errorCode } from '../problem';

/** How many earlier versions are kept beside a document. */
export const KEPT_VERSIONS = 5;

/** The copy of an earlier version, beside the file: 1 is the version before the last save. */
export function backupOf(target: string, age = 1): string {
  return path.join(path.dirname(target), `.${path.basename(target)}.before-${age}`);
}

function beforeNewFormat(target: string, version: string): string {
  return path.join(path.dirname(target), `.${path.basename(target)}.format-${version}`);
}

async function isThere(target: string): Promise<boolean> {
  try {
    await fs.promises.access(target);
    return true;
  } catch (cause) {
    if (errorCode(cause) === 'ENOENT') return false;
    throw cause;
  }
}

/** Moves a file when it is there. */
async function moveIfThere(from: string, to: string): Promise<void> {
  try {
    await fs.promises.rename(from, to);
  } catch (cause) {
    if (errorCode(cause) !== 'ENOENT') throw cause;
  }
}

/**
 * Keeps the version on disk as the newest of the kept ones and drops the oldest. The copy is complete before
 * the older ones move, so that a stop at any moment leaves whole versions only.
 */
export async function keepVersion(target: string): Promise<void> {
  if (!(await isThere(target))) return;
  const fresh = `${backupOf(target)}.new`;
  await fs.promises.copyFile(target, fresh);
  for (let age = KEPT_VERSIONS - 1; age >= 1; age--)
    await moveIfThere(backupOf(target, age), backupOf(target, age + 1));
  await fs.promises.rename(fresh, backupOf(target));
}

/** The document format that a text is in, read from its first lines. */
function formatOf(text: string): string | undefined {
  return /"version":\s*(\d{1,6})/.exec(text.slice(0, 400))?.[1];
}

/** Before a document of an older format is first saved in the newer one, a copy of it is kept for good. */
export async function keepOlderFormat(target: string, text: string): Promise<void> {
  if (!(await isThere(target))) return;
  const old = formatOf(await fs.promises.readFile(target, 'utf8'));
  if (old === undefined || old === formatOf(text)) return;
  const kept = beforeNewFormat(target, old);
  if (!(await isThere(kept))) await fs.promises.copyFile(target, kept);
}

/**
 * Removes what an interrupted save left beside a document: half-written temporary files and a backup that was
 * not finished. Only the holder of the document's lock calls it, so no save is under way.
 * @returns the names that were removed.
 */
export async function sweepLeftovers(target: string): Promise<readonly string[]> {
  const folder = path.dirname(target);
  const base = path.basename(target);
  const unfinished = path.basename(`${backupOf(target)}.new`);
  const names = (await fs.promises.readdir(folder)).filter(
    name => name === unfinished || (name.startsWith(`${base}.`) && /^\.\d+$/.test(name.slice(base.length))),
  );
  for (const name of names) await fs.promises.rm(path.join(folder, name), { force: true });
  return names;
}
