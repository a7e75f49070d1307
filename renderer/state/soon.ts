/** What sets a clock and stops it, as the window does. */
export interface Clock {
  readonly set: (ring: () => void, milliseconds: number) => number;
  readonly stop: (id: number) => void;
}

/** Work that is done once for many calls. */
export interface Soon {
  readonly call: () => void;
  readonly cancel: () => void;
}

/**
 * Work that is done so many milliseconds after the first call, once for all calls until then. A later call does not
 * put it off: who types without a pause would never have it done.
 */
export function soon(work: () => void, milliseconds: number, clock: Clock): Soon {
  let waiting: number | undefined;
  return {
    call: () => {
      waiting ??= clock.set(() => {
        waiting = undefined;
        work();
      }, milliseconds);
    },
    cancel: () => {
      if (waiting !== undefined) clock.stop(waiting);
      waiting = undefined;
    },
  };
}
