/** A list that is another but for some of its rows. */
export interface Patch {
  readonly of: readonly unknown[];
  readonly rows: readonly number[];
}

const PATCHES = new WeakMap<readonly unknown[], Patch>();

/** Notes from which list a list was made, and which rows differ; of the older list that is forgotten, so that no chain of them is kept. */
export function notePatch(list: readonly unknown[], patch: Patch): void {
  PATCHES.delete(patch.of);
  PATCHES.set(list, patch);
}

/** From which list a list was made, when that was noted. */
export function patchOf(list: readonly unknown[]): Patch | undefined {
  return PATCHES.get(list);
}
