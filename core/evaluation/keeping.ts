/**
 * A step of the loop that keeps what it last made: asked again with the very same objects it answers at once. The steps
 * wrapped in it look at nothing but their arguments, and those never change, so a kept answer is the answer.
 * @param most how many answers it keeps.
 */
export function keeping<A extends readonly unknown[], R>(
  most: number,
  step: (...from: A) => R,
): (...from: A) => R {
  const kept: { readonly from: A; readonly made: R }[] = [];
  return (...from) => {
    const at = kept.findIndex(one => one.from.every((part, i) => part === from[i]));
    const found = kept[at];
    if (found !== undefined) {
      if (at > 0) kept.unshift(...kept.splice(at, 1));
      return found.made;
    }
    const made = step(...from);
    kept.unshift({ from, made });
    if (kept.length > most) kept.pop();
    return made;
  };
}

/** Whether two values of plain data say the same. */
export function isSameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((one, i) => isSameData(one, b[i]));
  }
  if (Array.isArray(b)) return false;
  const left = Object.entries(a);
  const right = new Map(Object.entries(b));
  return (
    left.length === right.size &&
    left.every(([key, one]) => right.has(key) && isSameData(one, right.get(key)))
  );
}
