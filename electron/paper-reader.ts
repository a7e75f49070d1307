import { parentPort, workerData } from 'node:worker_threads';
import { NotAWorkbook, readWorkbook } from './papers/read-workbook';
import type { ReaderMessage } from './papers/workbook-worker';

/** A thread that reads one workbook, answers and ends: it may be stopped when the file turns out to be a trap. */
async function readOne(bytes: Uint8Array): Promise<ReaderMessage> {
  try {
    return { cells: await readWorkbook(bytes) };
  } catch (error) {
    if (!(error instanceof NotAWorkbook)) throw error;
    return { refused: error.message };
  }
}

if (workerData instanceof Uint8Array) parentPort?.postMessage(await readOne(workerData));
