/** A record with a value for every key of a closed list. */
export function recordOf<K extends string, V>(keys: readonly K[], value: (key: K) => V): Record<K, V> {
  return Object.fromEntries(keys.map(key => [key, value(key)])) as Record<K, V>;
}
