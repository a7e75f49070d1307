import type { Asked, Engine, Part, Progress, Said } from './protocol';
import { ProjectSender } from './sent-project';

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (fault: Error) => void;
  readonly onProgress: Progress | undefined;
  readonly onPart: ((part: Part) => void) | undefined;
}

/** Asked work that was stopped by the reader: the last answer stays. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
}

/** The engine in a worker of its own, so that typing never waits for it. */
export function workerEngine(make: () => Worker): Engine {
  const waiting = new Map<number, Waiting>();
  let count = 0;
  let worker = listen(make(), waiting);
  let sender = new ProjectSender();
  return {
    ask: (name, ask, onProgress, onPart) => {
      count += 1;
      const asked: Asked = { number: count, name, ...sender.packed(ask) };
      return new Promise((resolve, reject) => {
        waiting.set(asked.number, { resolve, reject, onProgress, onPart });
        worker.postMessage(asked);
      });
    },
    cancel: () => {
      worker.terminate();
      for (const one of waiting.values()) one.reject(new Stopped('Stopped by the reader.'));
      waiting.clear();
      worker = listen(make(), waiting);
      sender = new ProjectSender();
    },
  };
}

function listen(worker: Worker, waiting: Map<number, Waiting>): Worker {
  worker.onmessage = (event: MessageEvent<Said>) => {
    const said = event.data;
    const one = waiting.get(said.number);
    if (one === undefined) return;
    if (said.kind === 'progress') one.onProgress?.(said.done, said.of, said.words);
    else if (said.kind === 'part') one.onPart?.(said.part);
    else {
      waiting.delete(said.number);
      if (said.kind === 'fault') one.reject(new Error(said.message));
      else one.resolve(said.answer as never);
    }
  };
  worker.onerror = event => {
    for (const one of waiting.values()) one.reject(new Error(event.message));
    waiting.clear();
  };
  return worker;
}
