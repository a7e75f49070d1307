import { isRecord } from './laws';

/** Where a path of the document leads, found by the test in its own way: entries of a list by name or number. */

const NAMES = ['id', 'item', 'driver', 'at', 'trade'] as const;

export function stepsOf(at: string): string[] {
  return at
    .split('/')
    .slice(1)
    .map(step => step.replaceAll('~1', '/').replaceAll('~0', '~'));
}

function keyIn(holder: unknown, step: string): string | number | undefined {
  if (isRecord(holder)) return step;
  if (!Array.isArray(holder)) return undefined;
  const named = holder.findIndex(entry => isRecord(entry) && NAMES.some(name => entry[name] === step));
  if (named >= 0) return named;
  return /^\d+$/.test(step) && Number(step) < holder.length ? Number(step) : undefined;
}

function held(holder: unknown, key: string | number | undefined): unknown {
  if (key === undefined) return undefined;
  if (Array.isArray(holder)) {
    const entries: unknown[] = holder;
    return entries[Number(key)];
  }
  return isRecord(holder) ? holder[key] : undefined;
}

/** What stands at a path; undefined where nothing does. */
export function valueAt(document: unknown, at: string): unknown {
  return stepsOf(at).reduce<unknown>((holder, step) => held(holder, keyIn(holder, step)), document);
}

/** A copy of the document with another value at a path that leads somewhere; without any where it is undefined. */
export function withValueAt(document: unknown, at: string, value: unknown): unknown {
  const copy: unknown = structuredClone(document);
  const steps = stepsOf(at);
  const last = steps.pop() ?? '';
  let holder = copy;
  for (const step of steps) {
    const key = keyIn(holder, step);
    if (isRecord(holder) && held(holder, key) === undefined) holder[step] = {};
    holder = held(holder, key);
  }
  const key = keyIn(holder, last);
  if (Array.isArray(holder) && typeof key === 'number') {
    const entries: unknown[] = holder;
    if (value === undefined) entries.splice(key, 1);
    else entries[key] = value;
  } else if (isRecord(holder)) {
    if (value === undefined) Reflect.deleteProperty(holder, last);
    else holder[last] = value;
  }
  return copy;
}

/** Sets a value at a path inside a new entry. */
export function setInside(entry: unknown, path: string, value: unknown): void {
  const steps = path.split('/');
  const last = steps.pop() ?? '';
  let holder: unknown = entry;
  for (const step of steps) {
    if (isRecord(holder)) holder = holder[step] ??= {};
    else if (Array.isArray(holder)) {
      const entries: unknown[] = holder;
      holder = entries[Number(step)];
    }
  }
  if (Array.isArray(holder)) {
    const entries: unknown[] = holder;
    entries[Number(last)] = value;
  } else if (isRecord(holder)) holder[last] = value;
}
