import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { errorCode } from '../problem';

/** A lock that its holder has not touched for this long, in milliseconds, is taken as left behind. */
export const STALE_AFTER = 60_000;
const TOUCHED_EVERY = 15_000;

const ownerSchema = z.strictObject({
  user: z.string().max(200),
  host: z.string().max(200),
  pid: z.int(),
  since: z.string().max(40),
});

/** Who has a document open. */
export type LockOwner = z.infer<typeof ownerSchema>;

/** The lock beside a document, which other programs' users can read. */
export function lockOf(target: string): string {
  return path.join(path.dirname(target), `~$${path.basename(target)}.lock`);
}

function ourselves(): LockOwner {
  return {
    user: os.userInfo().username,
    host: os.hostname(),
    pid: process.pid,
    since: new Date().toISOString(),
  };
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (cause) {
    return errorCode(cause) === 'EPERM';
  }
}

/** The holder of a lock; `undefined` when there is none, it is unreadable, or it was left behind. */
export function holderOf(target: string, now = Date.now()): LockOwner | undefined {
  const file = lockOf(target);
  try {
    const owner = ownerSchema.safeParse(JSON.parse(fs.readFileSync(file, 'utf8')));
    if (!owner.success || now - fs.statSync(file).mtimeMs > STALE_AFTER) return undefined;
    const isLocal = owner.data.host === os.hostname();
    return isLocal && !isAlive(owner.data.pid) ? undefined : owner.data;
  } catch {
    return undefined;
  }
}

/** A document held open by this program; its lock file is touched until it is let go. */
export class DocumentLock {
  readonly #file: string;
  readonly #content: string;
  readonly #timer: NodeJS.Timeout;

  private constructor(file: string, content: string) {
    this.#file = file;
    this.#content = content;
    this.#timer = setInterval(() => this.#touch(), TOUCHED_EVERY);
    this.#timer.unref();
  }

  /**
   * Takes a document for this program.
   * @returns the lock; who holds it instead; or `undefined` where no lock can be written, as in a read-only folder.
   */
  static take(target: string, force = false): DocumentLock | LockOwner | undefined {
    const file = lockOf(target);
    const content = JSON.stringify(ourselves());
    const holder = holderOf(target);
    if (holder !== undefined && !force) return holder;
    try {
      fs.rmSync(file, { force: true });
      fs.writeFileSync(file, content, { flag: 'wx' });
      return new DocumentLock(file, content);
    } catch (cause) {
      return errorCode(cause) === 'EEXIST' ? holderOf(target) : undefined;
    }
  }

  #isOurs(): boolean {
    try {
      return fs.readFileSync(this.#file, 'utf8') === this.#content;
    } catch {
      return false;
    }
  }

  #touch(): void {
    if (!this.#isOurs()) return;
    const now = new Date();
    fs.utimesSync(this.#file, now, now);
  }

  /** Whether someone else took the document over in the meantime. */
  isLost(): boolean {
    return !this.#isOurs();
  }

  release(): void {
    clearInterval(this.#timer);
    if (this.#isOurs()) fs.rmSync(this.#file, { force: true });
  }
}
