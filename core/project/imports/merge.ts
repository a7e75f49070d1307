/** One entry that an import adds or changes; one that stays the same is counted, not listed. */
export interface ImportChange {
  readonly kind: 'added' | 'changed';
  /** Where in the document. */
  readonly place: string;
  readonly title: string;
  /** What stands there now, in words; none for an added entry. */
  readonly before?: string;
  readonly after: string;
}

/** A list of the document with imported rows put in, and what that changes. */
export interface Merged<T> {
  readonly list: T[];
  readonly changes: readonly ImportChange[];
  readonly same: number;
}

/** How entries of a list are told apart, named and put into words. */
export interface ListOf<T> {
  readonly place: string;
  readonly keyOf: (entry: T) => string;
  readonly titleOf: (entry: T) => string;
  readonly say: (entry: T) => string;
  /** A field about which an empty cell says nothing: what the document holds stays. */
  readonly quiet?: keyof T;
}

/** Puts rows into a list: a row with the key of an entry takes its place and keeps what it does not speak of. */
export function merged<T extends object>(
  existing: readonly T[],
  rows: readonly T[],
  of: ListOf<T>,
): Merged<T> {
  const list = [...existing];
  const changes: ImportChange[] = [];
  let same = 0;
  for (const row of rows) {
    const at = list.findIndex(entry => of.keyOf(entry) === of.keyOf(row));
    const old = list[at];
    const change = { place: `${of.place}/${of.keyOf(row)}`, title: of.titleOf(row), after: of.say(row) };
    if (old === undefined) {
      list.push(row);
      changes.push({ kind: 'added', ...change });
      continue;
    }
    const isQuiet = of.quiet !== undefined && row[of.quiet] === '';
    const entry = { ...old, ...row, ...(isQuiet && of.quiet ? { [of.quiet]: old[of.quiet] } : {}) };
    list[at] = entry;
    if (JSON.stringify(ordered(entry)) === JSON.stringify(ordered(old))) same += 1;
    else changes.push({ kind: 'changed', ...change, before: of.say(old) });
  }
  return { list, changes, same };
}

function ordered(entry: object): unknown[] {
  return Object.entries(entry).toSorted(([a], [b]) => (a < b ? -1 : 1));
}
