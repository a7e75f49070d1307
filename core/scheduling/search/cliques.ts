/**
 * Covers pairs that exclude each other with groups of which any two exclude each other, so that one
 * single-unit resource stands for a whole group. Greedy: the first uncovered pair grows as far as it goes.
 */
export function coveringCliques(count: number, pairs: readonly (readonly [number, number])[]): Set<number>[] {
  const excludes = Array.from({ length: count }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    excludes[a]?.add(b);
    excludes[b]?.add(a);
  }
  const groups: Set<number>[] = [];
  for (const [a, b] of pairs) {
    if (a === b || groups.some(group => group.has(a) && group.has(b))) continue;
    const group = new Set([a, b]);
    for (const candidate of excludes[a] ?? []) {
      if ([...group].every(member => member === candidate || excludes[member]?.has(candidate)))
        group.add(candidate);
    }
    groups.push(group);
  }
  return groups;
}
