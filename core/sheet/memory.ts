import type { Given } from './given';
import type { Inner } from './inner';
import type { Scope } from './scope';

interface Remembered<T> {
  readonly rows: readonly unknown[];
  readonly from: readonly unknown[];
  readonly values: readonly T[];
}

/** Columns read from rows, by table and column. */
class ReadColumns<T> {
  readonly #known = new Map<string, Remembered<T>>();

  /** Reads a column; rows that are the same objects as before are not read again while the sources are the same. */
  of<R>(id: string, rows: readonly R[], from: readonly unknown[], read: (row: R) => T): readonly T[] {
    const known = this.#known.get(id);
    const values = known && isSame(known.from, from) ? again(known, rows, read) : rows.map(row => read(row));
    this.#known.set(id, { rows, from, values });
    return values;
  }
}

/**
 * What was read from rows when a sheet was last built: the next build reads the changed rows only. It holds nothing that
 * rows and the sources named beside them would not say again, so a sheet built with it equals one built without.
 */
export class SheetMemory {
  readonly givens = new ReadColumns<Given | undefined>();
  readonly texts = new ReadColumns<string | undefined>();
  /** The last evaluation of each sheet, by its id. */
  readonly evaluated = new Map<string, Inner>();
  readonly #scopes = new Map<string, { readonly rows: readonly unknown[]; readonly scope: Scope }>();

  /** The scope of a table whose rows are the same objects in the same order as before, else made anew. */
  scope(id: string, rows: readonly unknown[], make: () => Scope): Scope {
    const known = this.#scopes.get(id);
    if (known !== undefined && isSame(known.rows, rows)) return known.scope;
    const scope = make();
    this.#scopes.set(id, { rows, scope });
    return scope;
  }
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before === now || (before.length === now.length && before.every((one, i) => one === now[i]));
}

/** The values again, the changed rows read anew; the very same list when no row changed. */
function again<R, T>(known: Remembered<T>, rows: readonly R[], read: (row: R) => T): readonly T[] {
  const { values, rows: before } = known;
  if (before === rows) return values;
  const changed =
    before.length === rows.length ? rows.flatMap((row, i) => (row === before[i] ? [] : [i])) : undefined;
  if (changed === undefined) return rows.map(row => read(row));
  if (changed.length === 0) return values;
  const patched = [...values];
  for (const at of changed) {
    const row = rows[at];
    if (row !== undefined) patched[at] = read(row);
  }
  return patched;
}
