import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { TextTable } from '../../core/project';
import type { Problem } from '../channels';
import { HostProblem } from '../problem';
import { readTableFile } from './read-table';

/** A table that somebody chose: its bytes, the end of its name, and the worksheet, the first unless given. */
export interface TableFile {
  readonly bytes: Uint8Array;
  readonly extension: string;
  readonly sheet?: string;
}

/** From the thread: the rows, a problem in words, or nothing when its bytes are of no table. */
export type TableMessage = { readonly rows: TextTable } | { readonly problem: Problem };

/** The largest table that is read, in bytes. */
export const LARGEST_TABLE = 20 * 1024 * 1024;

/** The most memory the thread may take, in megabytes, and the longest it may need, in milliseconds. */
export interface ThreadLimits {
  readonly megabytes: number;
  readonly milliseconds: number;
}
const LIMITS: ThreadLimits = { megabytes: 512, milliseconds: 30_000 };

function refused(message: string): HostProblem {
  return new HostProblem({
    code: 'file/table-refused',
    message,
    meaning: 'Nothing was read from it and nothing was changed.',
    remedy: 'Keep only the rows you need in a plain table, save it as CSV or .xlsx, and choose that file.',
  });
}

/**
 * Reads a table in a thread of its own, with limits of time and memory: a file made to harm stops the thread alone.
 * @param reader where the built reader lies; where there is none, as in a run from source, the table is read here.
 * @throws HostProblem
 */
export async function readTableApart(
  reader: string | URL | undefined,
  file: TableFile,
  limits = LIMITS,
): Promise<TextTable> {
  if (file.bytes.byteLength > LARGEST_TABLE) throw refused('The table has more than 20 MB.');
  if (reader === undefined || !existsSync(reader))
    return readTableFile(file.bytes, file.extension, file.sheet);
  const message = await answerOf(reader, file, limits);
  if ('rows' in message) return message.rows;
  throw new HostProblem(message.problem);
}

function answerOf(reader: string | URL, file: TableFile, limits: ThreadLimits): Promise<TableMessage> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(reader, {
      workerData: file,
      resourceLimits: { maxOldGenerationSizeMb: limits.megabytes },
    });
    const end = (settle: () => void) => {
      clearTimeout(clock);
      settle();
      void thread.terminate();
    };
    const refuse = (why: string) => end(() => reject(refused(why)));
    const clock = setTimeout(() => {
      refuse('The table takes longer to read than any table needs.');
    }, limits.milliseconds);
    thread.on('message', (message: TableMessage) => end(() => resolve(message)));
    thread.on('error', () =>
      refuse('The table cannot be read: it needs more memory than any table does, or it is damaged.'),
    );
    thread.on('exit', () => refuse('Reading the table ended without an answer.'));
  });
}
