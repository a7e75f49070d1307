import { parentPort, workerData } from 'node:worker_threads';
import { readTableFile } from './imports/read-table';
import type { TableFile, TableMessage } from './imports/table-thread';
import { HostProblem } from './problem';

/** A thread that reads one table, answers and ends: it may be stopped when the file turns out to be a trap. */
async function answer({ bytes, extension, sheet }: TableFile): Promise<TableMessage> {
  try {
    return { rows: await readTableFile(bytes, extension, sheet) };
  } catch (cause) {
    if (cause instanceof HostProblem) return { problem: cause.problem };
    throw cause;
  }
}

/** What the thread is given; anything else is a mistake of ours. */
function isTableFile(given: unknown): given is TableFile {
  return typeof given === 'object' && given !== null && 'bytes' in given && 'extension' in given;
}

const given: unknown = workerData;
if (isTableFile(given)) void answer(given).then(message => parentPort?.postMessage(message));
