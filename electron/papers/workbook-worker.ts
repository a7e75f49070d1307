import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { readOrRefuse, type ReaderMessage } from './read-workbook';

/** The most memory the reader may take, in megabytes, and the longest it may need, in milliseconds. */
const MOST_MEMORY = 512;
const LONGEST = 60_000;

/**
 * Reads a workbook in a thread of its own with limits of memory and time: a file made to harm stops the thread alone.
 * @param reader where the built reader lies; where there is none, as in a run from source, the workbook is read here.
 */
export function readInWorker(reader: URL | string | undefined, bytes: Uint8Array): Promise<ReaderMessage> {
  if (reader === undefined || !existsSync(reader)) return readOrRefuse(bytes);
  return new Promise(resolve => {
    const thread = new Worker(reader, {
      workerData: bytes,
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY },
    });
    const answer = (message: ReaderMessage) => {
      clearTimeout(clock);
      void thread.terminate();
      resolve(message);
    };
    const clock = setTimeout(() => {
      answer({ refused: 'it takes longer to read than any workbook of this program' });
    }, LONGEST);
    thread.on('message', answer);
    thread.on('error', error => {
      answer({ refused: `reading it failed: ${error.message}` });
    });
    thread.on('exit', () => {
      answer({ refused: 'reading it ended without an answer' });
    });
  });
}
