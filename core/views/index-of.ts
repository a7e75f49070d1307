import type { Project } from '../project';

/**
 * Makes an index of a list by a key, once for each list: rows are looked up line by line, and a search for each of them
 * would take a large project's lines squared. Of several entries with one key the first counts.
 */
export function indexBy<T>(keyOf: (entry: T) => string): (list: readonly T[]) => ReadonlyMap<string, T> {
  const known = new WeakMap<readonly T[], ReadonlyMap<string, T>>();
  return list => {
    const found = known.get(list);
    if (found !== undefined) return found;
    const made = new Map<string, T>();
    for (const entry of list) if (!made.has(keyOf(entry))) made.set(keyOf(entry), entry);
    known.set(list, made);
    return made;
  };
}

/** Entries of a list by a key, once for each list. */
export function groupBy<T>(
  keyOf: (entry: T) => string | undefined,
): (list: readonly T[]) => ReadonlyMap<string, readonly T[]> {
  const known = new WeakMap<readonly T[], ReadonlyMap<string, readonly T[]>>();
  return list => {
    const found = known.get(list);
    if (found !== undefined) return found;
    const made = new Map<string, T[]>();
    for (const entry of list) {
      const key = keyOf(entry);
      if (key === undefined) continue;
      const group = made.get(key);
      if (group === undefined) made.set(key, [entry]);
      else group.push(entry);
    }
    known.set(list, made);
    return made;
  };
}

const changesByItem = indexBy((change: Project['items'][number]) => change.item);

/** What the planner changed about an item. */
export function changeOf(project: Project, item: string): Project['items'][number] | undefined {
  return changesByItem(project.items).get(item);
}
