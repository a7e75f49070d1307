import type { Given } from './given';
import type { Inner } from './inner';
import type { Row, Scope } from './scope';

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

  /** The scope of a table; that of the last build where its rows are called and counted as they were. */
  scope<R>(id: string, rows: readonly R[], make: () => Scope, call: (row: R) => Row): Scope {
    const known = this.#scopes.get(id);
    const scope = known !== undefined && isCalledTheSame(known, rows, call) ? known.scope : make();
    this.#scopes.set(id, { rows, scope });
    return scope;
  }
}

/** Whether rows that are other objects than before have the same key, title, unit and place. */
function isCalledTheSame<R>(
  { rows: before, scope }: { readonly rows: readonly unknown[]; readonly scope: Scope },
  rows: readonly R[],
  call: (row: R) => Row,
): boolean {
  if (before.length !== rows.length) return false;
  return rows.every((row, i) => {
    if (row === before[i]) return true;
    const [was, is] = [scope.rows[i], call(row)];
    return was?.key === is.key && was.title === is.title && was.own === is.own && was.place === is.place;
  });
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before === now || (before.length === now.length && before.every((one, i) => one === now[i]));
}

/** The values again, the changed rows read anew; the very same list when no value changed. */
function again<R, T>(known: Remembered<T>, rows: readonly R[], read: (row: R) => T): readonly T[] {
  const { values, rows: before } = known;
  if (before === rows) return values;
  const changed =
    before.length === rows.length ? rows.flatMap((row, i) => (row === before[i] ? [] : [i])) : undefined;
  if (changed === undefined) return rows.map(row => read(row));
  if (changed.length === 0) return values;
  const anew = changed.flatMap(at => {
    const row = rows[at];
    return row === undefined ? [] : [{ at, value: read(row) }];
  });
  if (anew.every(({ at, value }) => value === values[at])) return values;
  const patched = [...values];
  for (const { at, value } of anew) patched[at] = value;
  return patched;
}
