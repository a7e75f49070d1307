import { BugError } from './bug-error';

/**
 * The entry of a list at an index that is known to lie in it, counted from 0.
 * @throws BugError when the list has no such entry, so that nothing is shown as 0 or as an empty word.
 */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  return entry === undefined ? missing(list, index) : entry;
}

/**
 * What a map holds under a key that is known to be in it.
 * @throws BugError when nothing is there.
 */
export function known<K, V>(map: ReadonlyMap<K, V>, key: K): V {
  const entry = map.get(key);
  if (entry === undefined) throw new BugError(`Nothing is held under the key ${String(key)}.`);
  return entry;
}

/**
 * The value of a column of numbers at an index that is known to lie in it: {@link at} for the inner loops, which stays
 * quick because it meets one kind of list only, and is short enough for the engine to put in place of the call.
 * @throws BugError when the column ends before it.
 */
export function valueAt(column: Float64Array, index: number): number {
  return column[index] ?? missing(column, index);
}

/** The same of a column of whole numbers. @throws BugError when the column ends before it. */
export function intAt(column: Int32Array, index: number): number {
  return column[index] ?? missing(column, index);
}

/** The same of a column of flags and small whole numbers. @throws BugError when the column ends before it. */
export function byteAt(column: Uint8Array, index: number): number {
  return column[index] ?? missing(column, index);
}

/** The same of a column of ranks and orders. @throws BugError when the column ends before it. */
export function wholeAt(column: Uint16Array | Uint32Array, index: number): number {
  return column[index] ?? missing(column, index);
}

/**
 * The entry of a list that has an id, where one is known to have it.
 * @throws BugError when none has it.
 */
export function withId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const entry = list.find(one => one.id === id);
  if (entry === undefined) throw new BugError(`No entry has the id ${id}.`);
  return entry;
}

function missing(list: ArrayLike<unknown>, index: number): never {
  throw new BugError(`There is no entry ${String(index)} in a list of ${String(list.length)}.`);
}
