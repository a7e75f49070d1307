import { parentPort, workerData } from 'node:worker_threads';
import { readOrRefuse } from './papers/read-workbook';

/** A thread that reads one workbook, answers and ends: it may be stopped when the file turns out to be a trap. */
if (workerData instanceof Uint8Array)
  void readOrRefuse(workerData).then(message => parentPort?.postMessage(message));
