/** A field holder of the document as plain data. */
export type Holder = Record<string, unknown>;

export function isHolder(value: unknown): value is Holder {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

/** What names an entry of a list: its id, or what it is about. */
const NAMES = ['id', 'item', 'driver', 'at', 'trade'];

function isNamed(entry: unknown, step: string): boolean {
  return isHolder(entry) && NAMES.some(name => entry[name] === step);
}

/** Lists whose entries are made when one is first edited, and what a new entry holds. */
const NEW_ENTRIES: Readonly<Record<string, (step: string) => Holder>> = {
  items: step => ({ item: step, note: '' }),
  measured: step => ({ driver: step }),
  overrides: step => ({ at: step }),
  notes: step => ({ at: step, text: '' }),
  wages: step => ({ trade: step }),
  prices: step => ({ item: step }),
};

/** Sections that are made when one of their fields is first edited, with the lists they cannot do without. */
const NEW_HOLDERS: Readonly<Record<string, () => Holder>> = {
  bid: () => ({ items: [], alternates: [] }),
  record: () => ({ crossChecks: [], leftOut: [], reasons: [], lessons: [] }),
};

/** The steps of a path; a slash inside a step is written `~1`, as in RFC 6901. */
export function stepsOf(at: string): string[] {
  return at
    .split('/')
    .slice(1)
    .map(step => step.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** One step down, making the entry of a list or the holder that is not there yet. */
function descend(place: unknown, step: string, listName: string): unknown {
  if (Array.isArray(place)) {
    const list: unknown[] = place;
    const found = list.find(entry => isNamed(entry, step));
    if (found !== undefined) return found;
    const make = NEW_ENTRIES[listName];
    if (make === undefined) return /^\d+$/.test(step) ? list.at(Number(step)) : undefined;
    list.push(make(step));
    return list.at(-1);
  }
  if (!isHolder(place)) return undefined;
  place[step] ??= NEW_HOLDERS[step]?.() ?? {};
  return place[step];
}

/**
 * The holder of the last step of a path and the name of that step.
 * @returns `undefined` when the path leads nowhere in this document.
 */
export function holderAt(document: unknown, at: string): { holder: Holder; field: string } | undefined {
  const steps = stepsOf(at);
  const field = steps.pop();
  if (field === undefined) return undefined;
  let place: unknown = document;
  let name = '';
  for (const step of steps) {
    place = descend(place, step, name);
    name = step;
  }
  return isHolder(place) ? { holder: place, field } : undefined;
}

/** What stands at a path, making nothing; undefined when the path leads nowhere. */
export function readAt(document: unknown, at: string): unknown {
  let place: unknown = document;
  for (const step of stepsOf(at)) {
    if (Array.isArray(place)) {
      const list: unknown[] = place;
      place = list[entryAt(list, step)];
    } else place = isHolder(place) ? place[step] : undefined;
  }
  return place;
}

/** The number of an entry of a list, by its name or its number; -1 when there is none. */
export function entryAt(list: readonly unknown[], step: string): number {
  const named = list.findIndex(entry => isNamed(entry, step));
  return named < 0 && /^\d+$/.test(step) && Number(step) < list.length ? Number(step) : named;
}

/** Sets a value at a path inside a new entry; whole numbers in the path are places of lists. */
export function setAt(entry: Holder, path: string, value: unknown): void {
  const steps = path.split('/');
  const last = steps.pop() ?? '';
  let place: unknown = entry;
  for (const step of steps) {
    const next: unknown = Array.isArray(place)
      ? place[Number(step)]
      : isHolder(place)
        ? place[step]
        : undefined;
    if (next === undefined && isHolder(place)) place[step] = {};
    place = Array.isArray(place) ? place[Number(step)] : isHolder(place) ? place[step] : undefined;
  }
  if (Array.isArray(place)) place[Number(last)] = value;
  else if (isHolder(place)) place[last] = value;
}
