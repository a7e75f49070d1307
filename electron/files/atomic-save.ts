import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import writeFileAtomic from 'write-file-atomic';
import { diskProblem, errorCode, HostProblem } from '../problem';
import { backupOf, keepOlderFormat, keepVersion } from './backups';

/** Codes that a scanner or an indexer causes for a moment; the whole write is repeated. */
const PASSING = new Set(['EPERM', 'EACCES', 'EBUSY']);
/** Waits between attempts in milliseconds; 5 seconds in all at most. */
const WAITS = [10, 20, 40, 80, 160, 320, 640, 1280];

export function contentHash(text: string | Uint8Array): string {
  return createHash('sha256').update(text).digest('hex');
}

/** The file a link points to, so that saving replaces the content and keeps the link. */
async function realTarget(target: string): Promise<string> {
  try {
    return await fs.promises.realpath(target);
  } catch (cause) {
    if (errorCode(cause) === 'ENOENT') return target;
    throw cause;
  }
}

async function writeWithPatience(target: string, text: string): Promise<void> {
  for (const wait of [...WAITS, -1]) {
    try {
      await writeFileAtomic(target, text, { encoding: 'utf8', fsync: true });
      return;
    } catch (cause) {
      if (wait < 0 || !PASSING.has(errorCode(cause))) throw cause;
      await pause(wait);
    }
  }
}

/** Makes the rename durable. Windows cannot open a folder: there the step does not exist. */
async function syncFolder(folder: string): Promise<boolean> {
  if (process.platform === 'win32') return true;
  try {
    const handle = await fs.promises.open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
    return true;
  } catch {
    return false;
  }
}

export interface Saved {
  readonly hash: string;
  /** Set when the file is in place but the disk did not confirm it. */
  readonly warning?: string;
}

/**
 * Saves a text so that the file on disk is the version before or this one, never a mixture: earlier versions kept,
 * temporary file in the same folder, fsync, rename, fsync of the folder, read back.
 * @throws HostProblem when it could not be written; the file is then as it was.
 */
export async function saveAtomically(
  target: string,
  text: string,
  keep: 'versions' | 'none' = 'none',
): Promise<Saved> {
  const meaning = 'The file on disk is still the version before. Your edits stay open here.';
  const hash = contentHash(text);
  try {
    const real = await realTarget(target);
    if (keep === 'versions') {
      await keepOlderFormat(real, text);
      await keepVersion(real);
    }
    await writeWithPatience(real, text);
    const confirmed = await syncFolder(path.dirname(real));
    const back = await readBack(real);
    if (back !== undefined && back.hash !== hash)
      throw await putBack(real, keep, back.bytes < Buffer.byteLength(text));
    return confirmed && back !== undefined
      ? { hash }
      : { hash, warning: 'Saved, but the disk did not confirm it.' };
  } catch (cause) {
    if (cause instanceof HostProblem) throw cause;
    throw diskProblem(cause, meaning);
  }
}

/** The hash and length of what the disk gives back, or `undefined` when it gives nothing. */
async function readBack(target: string): Promise<{ hash: string; bytes: number } | undefined> {
  try {
    const content = await fs.promises.readFile(target);
    return { hash: contentHash(content), bytes: content.byteLength };
  } catch {
    return undefined;
  }
}

/**
 * What was written reads back differently: the version before is put in its place again, where one is kept. A text cut
 * short is what a full disk leaves that took a part of it without a word.
 */
async function putBack(target: string, keep: 'versions' | 'none', isCutShort: boolean): Promise<HostProblem> {
  let isBack = false;
  if (keep === 'versions') {
    try {
      await fs.promises.copyFile(backupOf(target), target);
      isBack = true;
    } catch (cause) {
      if (errorCode(cause) === '') throw cause;
    }
  }
  if (isCutShort)
    return diskProblem(
      Object.assign(new Error('the text was cut short'), { code: 'ENOSPC' }),
      isBack ? 'The version before was put back. Your edits stay open here.' : 'Your edits stay open here.',
    );
  return new HostProblem({
    code: 'file/read-back-differs',
    message: 'The file reads back differently from what was written.',
    meaning: isBack
      ? 'The disk or another program changed it. The version before was put back; your edits stay open here.'
      : 'The disk or another program changed it. Your edits stay open here.',
    remedy: 'Save under a new name on another disk.',
  });
}
