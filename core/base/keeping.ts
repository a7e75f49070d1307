/**
 * A step of the loop that keeps what it last made: asked again with the very same objects it answers at once. The steps
 * wrapped in it look at nothing but their arguments, and those never change, so a kept answer is the answer.
 * @param most how many answers it keeps.
 */
export function keeping<A extends readonly unknown[], R>(
  most: number,
  step: (...from: A) => R,
): (...from: A) => R {
  return keptBy(most, (...from) => from, step, Object.is);
}

/**
 * The same for a step that looks at some parts of its arguments alone: it keeps its answer as long as those parts say
 * the same. Parts that are plain data are compared by what they say, all others by identity.
 * @param parts what of the arguments the step looks at, one after another.
 */
export function keepingParts<A extends readonly unknown[], R>(
  most: number,
  parts: (...from: A) => readonly unknown[],
  step: (...from: A) => R,
): (...from: A) => R {
  return keptBy(most, parts, step, isSameData);
}

function keptBy<A extends readonly unknown[], R>(
  most: number,
  parts: (...from: A) => readonly unknown[],
  step: (...from: A) => R,
  isSame: (a: unknown, b: unknown) => boolean,
): (...from: A) => R {
  const kept: { readonly parts: readonly unknown[]; readonly made: R }[] = [];
  return (...from) => {
    const now = parts(...from);
    const at = kept.findIndex(one => isSameList(one.parts, now, isSame));
    const found = kept[at];
    if (found !== undefined) {
      if (at > 0) kept.unshift(...kept.splice(at, 1));
      return found.made;
    }
    const made = step(...from);
    kept.unshift({ parts: now, made });
    if (kept.length > most) kept.pop();
    return made;
  };
}

function isSameList(
  a: readonly unknown[],
  b: readonly unknown[],
  isSame: (a: unknown, b: unknown) => boolean,
): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!isSame(a[i], b[i])) return false;
  return true;
}

/** Whether two values of plain data say the same; anything else, such as a map, is the same as itself alone. */
export function isSameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && isSameList(a, b, isSameData);
  return isPlain(a) && isPlain(b) && isSameRecord(a, b);
}

type Plain = Readonly<Record<string, unknown>>;

function isPlain(value: object): value is Plain {
  const parent: unknown = Object.getPrototypeOf(value);
  return parent === Object.prototype || parent === null;
}

function isSameRecord(a: Plain, b: Plain): boolean {
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(key => Object.hasOwn(b, key) && isSameData(a[key], b[key]));
}

/** What is read from an object, read once: the same answer for the same object. */
export function onceFor<T extends object, R>(read: (of: T) => R): (of: T) => R {
  const known = new WeakMap<T, { readonly made: R }>();
  return of => {
    const found = known.get(of);
    if (found !== undefined) return found.made;
    const made = read(of);
    known.set(of, { made });
    return made;
  };
}
