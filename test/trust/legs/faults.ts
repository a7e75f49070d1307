import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { saveAtomically } from '../../../electron/files/atomic-save';
import { sweepLeftovers } from '../../../electron/files/backups';
import { errorCode, HostProblem } from '../../../electron/problem';
import type { Leg, Outcome } from '../leg';

const CODES = [
  'ENOSPC',
  'EIO',
  'EACCES',
  'EPERM',
  'EROFS',
  'EDQUOT',
  'EMFILE',
  'EBUSY',
  'ENOENT',
  'ETIMEDOUT',
];
const CALLS = [
  'open',
  'write',
  'fsync',
  'close',
  'chown',
  'chmod',
  'rename',
  'unlink',
  'stat',
  'realpath',
] as const;
const PROMISED = ['realpath', 'access', 'copyFile', 'rename', 'open', 'readFile', 'readdir', 'rm'] as const;

/** Makes the `nth` file call of a save fail with a code: once, or from there on. */
class FaultyDisk {
  calls = 0;
  readonly #restore: (() => void)[] = [];

  readonly #nth: number;
  readonly #code: string;
  readonly #mode: 'once' | 'from there on';

  constructor(nth: number, code: string, mode: 'once' | 'from there on') {
    this.#nth = nth;
    this.#code = code;
    this.#mode = mode;
  }

  #fails(): boolean {
    this.calls++;
    return this.#mode === 'once' ? this.calls === this.#nth : this.calls >= this.#nth;
  }

  #fault(): Error {
    return Object.assign(new Error(`${this.#code}: planted`), { code: this.#code });
  }

  install(): void {
    const plain = fs as unknown as Record<string, (...values: unknown[]) => unknown>;
    for (const name of CALLS) {
      const real = plain[name];
      if (real === undefined) continue;
      plain[name] = (...values) => {
        const done = values.at(-1);
        if (!this.#fails() || typeof done !== 'function') return real.apply(fs, values);
        const answer = done as (cause: Error) => void;
        setImmediate(() => answer(this.#fault()));
        return undefined;
      };
      this.#restore.push(() => (plain[name] = real));
    }
    const promised = fs.promises as unknown as Record<string, (...values: unknown[]) => Promise<unknown>>;
    for (const name of PROMISED) {
      const real = promised[name];
      if (real === undefined) continue;
      promised[name] = (...values) =>
        this.#fails() ? Promise.reject(this.#fault()) : real.apply(fs.promises, values);
      this.#restore.push(() => (promised[name] = real));
    }
  }

  remove(): void {
    for (const restore of this.#restore) restore();
  }
}

interface Case {
  readonly target: string;
  readonly nth: number;
  readonly code: string;
  readonly mode: 'once' | 'from there on';
}

/** One save with one fault. `wrong` tells in words what should not have been; `met` whether the fault came at all. */
async function oneFault({ target, nth, code, mode }: Case): Promise<{ met: boolean; wrong?: string }> {
  fs.writeFileSync(target, 'old');
  const disk = new FaultyDisk(nth, code, mode);
  disk.install();
  let thrown: unknown;
  let warned = false;
  try {
    warned = (await saveAtomically(target, 'new', 'versions')).warning !== undefined;
  } catch (cause) {
    thrown = cause;
  } finally {
    disk.remove();
  }
  const met = disk.calls >= nth;
  const now = fs.existsSync(target) ? fs.readFileSync(target, 'utf8') : 'gone';
  const wrong = wrongOutcome(now, thrown, warned, code);
  await sweepLeftovers(target);
  const left = fs
    .readdirSync(path.dirname(target))
    .filter(name => name !== path.basename(target) && !/\.before-\d$/.test(name));
  if (wrong !== undefined) return { met, wrong };
  return left.length > 0 ? { met, wrong: `left ${left.join(', ')}` } : { met };
}

function wrongOutcome(now: string, thrown: unknown, warned: boolean, code: string): string | undefined {
  if (now !== 'old' && now !== 'new') return `the file holds ${JSON.stringify(now)}`;
  if (thrown === undefined) return now === 'new' ? undefined : 'said saved, but the file is the old one';
  if (!(thrown instanceof HostProblem))
    return `a raw fault: ${errorCode(thrown)} ${thrown instanceof Error ? thrown.message : ''}`;
  const { message, meaning, remedy } = thrown.problem;
  if (message === '' || meaning === '' || remedy === '') return 'a problem without words';
  if (now === 'new' && !warned && !thrown.problem.code.includes('unconfirmed'))
    return `said not saved (${code}), but the file is the new one`;
  return undefined;
}

async function everyFault(long: boolean): Promise<Outcome> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-fault-'));
  const target = path.join(folder, 'x.reef.json');
  const wrongs: string[] = [];
  let runs = 0;
  for (const code of long ? CODES : ['ENOSPC', 'EIO', 'ENOENT']) {
    for (const mode of ['once', 'from there on'] as const) {
      for (let nth = 1, met = true; met; nth++) {
        const result = await oneFault({ target, nth, code, mode });
        met = result.met;
        runs++;
        if (result.wrong !== undefined) wrongs.push(`call ${nth} ${code} ${mode}: ${result.wrong}`);
      }
    }
  }
  fs.rmSync(folder, { recursive: true, force: true });
  const first = wrongs.slice(0, 5).join('; ');
  return {
    ok: wrongs.length === 0,
    words: `${runs} saves with a fault, ${wrongs.length} wrong outcomes ${first}`,
  };
}

export const faultLegs: readonly Leg[] = [{ name: 'every file call fails', run: everyFault }];
