import { Worker } from 'node:worker_threads';
import type { FileCell } from '../../core/papers';

/** From the reader: the cells, or why the file is not read. */
export type ReaderMessage = { readonly cells: readonly FileCell[] } | { readonly refused: string };

/** The most memory the reader may take, in megabytes, and the longest it may need, in milliseconds. */
const MOST_MEMORY = 512;
const LONGEST = 60_000;

/**
 * Reads a workbook in a thread of its own with limits of memory and time: a file made to harm stops the thread alone.
 * @param reader where the built reader lies, `paper-reader.js`.
 */
export function readInWorker(reader: URL, bytes: Uint8Array): Promise<ReaderMessage> {
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
