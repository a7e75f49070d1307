import { workerEngine } from './client';
import type { Engine } from './protocol';

let kept: Engine | undefined;

/** The engine of this window. */
export function engine(): Engine {
  kept ??= workerEngine(() => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
  return kept;
}
