import { at } from '../base';
import type { Given } from './given';
import type { Inner } from './inner';
import { notePatch } from './patched';
import type { Row, Scope } from './scope';

/** Which rows of a list are other objects than in the list before; the last answer is kept, since all columns of a table ask. */
class Changes {
  #last: { readonly before: readonly unknown[]; readonly now: readonly unknown[]; readonly rows: number[] } =
    {
      before: [],
      now: [],
      rows: [],
    };

  /** The numbers of the changed rows; undefined when rows have come or gone. */
  between(before: readonly unknown[], now: readonly unknown[]): readonly number[] | undefined {
    if (before.length !== now.length) return undefined;
    if (this.#last.before === before && this.#last.now === now) return this.#last.rows;
    const rows: number[] = [];
    for (let i = 0; i < now.length; i++) if (before[i] !== now[i]) rows.push(i);
    this.#last = { before, now, rows };
    return rows;
  }
}

interface Remembered<T> {
  readonly rows: readonly unknown[];
  readonly from: readonly unknown[];
  readonly values: readonly T[];
}

/** Columns read from rows, by table and column. */
class ReadColumns<T> {
  readonly #known = new Map<string, Remembered<T>>();
  readonly #changes: Changes;

  constructor(changes: Changes) {
    this.#changes = changes;
  }

  /** Reads a column; rows that are the same objects as before are not read again while the sources are the same. */
  of<R>(id: string, rows: readonly R[], from: readonly unknown[], read: (row: R) => T): readonly T[] {
    const known = this.#known.get(id);
    const changed = known && isSame(known.from, from) ? this.#changes.between(known.rows, rows) : undefined;
    const values =
      known === undefined || changed === undefined
        ? rows.map(row => read(row))
        : again(known.values, changed, rows, read);
    this.#known.set(id, { rows, from, values });
    return values;
  }
}

/**
 * What was read from rows when a sheet was last built: the next build reads the changed rows only. It holds nothing that
 * rows and the sources named beside them would not say again, so a sheet built with it equals one built without.
 */
export class SheetMemory {
  readonly #changes = new Changes();
  readonly givens = new ReadColumns<Given | undefined>(this.#changes);
  readonly texts = new ReadColumns<string | undefined>(this.#changes);
  /** The last evaluation of each sheet, by its id. */
  readonly evaluated = new Map<string, Inner>();
  readonly #scopes = new Map<string, { readonly rows: readonly unknown[]; readonly scope: Scope }>();

  /** The scope of a table; that of the last build where its rows are called and counted as they were. */
  scope<R>(id: string, rows: readonly R[], make: () => Scope, call: (row: R) => Row): Scope {
    const known = this.#scopes.get(id);
    const changed = known && this.#changes.between(known.rows, rows);
    const isSameCall =
      known !== undefined &&
      changed !== undefined &&
      changed.every(number => isCalledTheSame(at(known.scope.rows, number), call(at(rows, number))));
    const scope = isSameCall ? known.scope : make();
    this.#scopes.set(id, { rows, scope });
    return scope;
  }
}

/** Whether a row that is another object than before has the key, title, unit and place it had. */
function isCalledTheSame(was: Row, is: Row): boolean {
  return was.key === is.key && was.title === is.title && was.own === is.own && was.place === is.place;
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before === now || (before.length === now.length && before.every((one, i) => one === now[i]));
}

/** The values again, the changed rows read anew; the very same list when no value changed. */
function again<R, T>(
  values: readonly T[],
  changed: readonly number[],
  rows: readonly R[],
  read: (row: R) => T,
): readonly T[] {
  const anew: { readonly number: number; readonly value: T }[] = [];
  for (const number of changed) {
    const value = read(at(rows, number));
    if (value !== values[number]) anew.push({ number, value });
  }
  if (anew.length === 0) return values;
  const patched = [...values];
  for (const { number, value } of anew) patched[number] = value;
  notePatch(patched, { of: values, rows: anew.map(({ number }) => number) });
  return patched;
}
