import { BugError } from './bug-error';

/**
 * The entry of a list at an index that is known to lie in it, counted from 0.
 * @throws BugError when the list has no such entry, so that nothing is shown as 0 or as an empty word.
 */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  if (entry === undefined)
    throw new BugError(`There is no entry ${String(index)} in a list of ${String(list.length)}.`);
  return entry;
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
