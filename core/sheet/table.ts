import { BugError } from '../base';
import type { PlainUnit } from '../units';
import type { Placing } from './block';
import type { Given } from './given';
import { givenStep, textStep } from './kinds/leaves';
import type { SheetMemory } from './memory';
import type { Row, Scope } from './scope';
import type { Step } from './step';
import type { SheetUnit } from './unit';

/** The rows of a table and what they are called. */
export interface RowsOf<R> {
  readonly heading: string;
  readonly of: readonly R[];
  /** The document's id of the row: letters, digits, `-`, `_`, `.`, `:`, beginning with a letter. */
  readonly key: (row: R) => string;
  readonly title: (row: R) => string;
  /** The plain unit that `own` means in the row. */
  readonly own?: (row: R) => PlainUnit;
  /** Where the document holds the row, for findings. */
  readonly place?: (row: R) => string;
}

/** A table: its columns by the names the recipe returned them under. */
export interface Table<C = unknown> {
  readonly id: string;
  readonly heading: string;
  readonly scope: Scope;
  readonly columns: C;
  /** All placed columns, in the order of calculation: fields and calculated ones. */
  readonly placed: readonly Step[];
}

const ROW_KEY = /^[A-Za-z][\w.:-]*$/;

/** @throws BugError when a key cannot be a key, or two rows share one (workbooks do not tell case apart). */
export function scopeOf<R>(id: string, rows: RowsOf<R>): Scope {
  const index = new Map<string, number>();
  const seen = new Set<string>();
  const list = rows.of.map((row, i): Row => {
    const key = rows.key(row);
    if (!ROW_KEY.test(key)) throw new BugError(`${id}: "${key}" cannot be a row key`);
    if (seen.has(key.toLowerCase())) throw new BugError(`${id}: two rows have the key "${key}"`);
    seen.add(key.toLowerCase());
    index.set(key, i);
    return rowOf(id, rows, row);
  });
  return { id, heading: rows.heading, rows: list, keys: list.map(row => row.key), index };
}

/** What a row is called, and where it is held. */
export function rowOf<R>(id: string, rows: RowsOf<R>, row: R): Row {
  const key = rows.key(row);
  return { key, title: rows.title(row), own: rows.own?.(row), place: rows.place?.(row) ?? `${id}/${key}` };
}

/** What a recipe is written with. It runs once, with no row in hand; only the fields read rows. */
export class Recipe<R> {
  readonly placed: Step[] = [];
  readonly #rows: readonly R[];
  readonly #scope: Scope;
  readonly #place: Placing;

  readonly #memory: SheetMemory | undefined;

  constructor(rows: readonly R[], scope: Scope, place: Placing, memory: SheetMemory | undefined) {
    this.#rows = rows;
    this.#scope = scope;
    this.#place = place;
    this.#memory = memory;
  }

  /**
   * A number given in each row; absent where the reader gives none.
   * @param from all that the reader looks at besides the row, by identity; with it a sheet with a memory reads a row
   * once, until the row or one of these is another object.
   */
  field<U extends SheetUnit>(
    key: string,
    title: string,
    unit: U,
    read: (row: R) => Given | undefined,
    from?: readonly unknown[],
  ): Step<U> {
    const givens =
      from && this.#memory
        ? this.#memory.givens.of(`${this.#scope.id}/${key}`, this.#rows, from, read)
        : this.#rows.map(read);
    return this.#add(key, title, givenStep(unit, givens, this.#scope));
  }

  /** A number that the levelled schedule gave each row, as decimal text; `from` as of a field. */
  fromSchedule<U extends SheetUnit>(
    key: string,
    title: string,
    unit: U,
    read: (row: R) => Omit<Given, 'basis' | 'source'> | undefined,
    from?: readonly unknown[],
  ): Step<U> {
    const scheduled = (row: R): Given | undefined => {
      const given = read(row);
      return given && { ...given, basis: 'schedule', source: 'levelled schedule' };
    };
    return this.field(key, title, unit, scheduled, from);
  }

  /** A text given in each row: the key of a row elsewhere, a stage. */
  key(
    key: string,
    title: string,
    read: (row: R) => string | undefined,
    from?: readonly unknown[],
  ): Step<'text'> {
    const texts =
      from && this.#memory
        ? this.#memory.texts.of(`${this.#scope.id}/${key}`, this.#rows, from, read)
        : this.#rows.map(read);
    return this.#add(key, title, textStep(texts, this.#scope));
  }

  /** The row's own key, to link to a row of the same key elsewhere. It is the first column of the table. */
  rowKey(): Step<'text'> {
    const texts = this.#scope.keys;
    const home = this.#add('key', this.#scope.heading, textStep(texts, this.#scope));
    this.placed.pop();
    return home;
  }

  /** Places a step as a column: shown, with an id, and the same formula in every row. */
  place<U extends SheetUnit>(key: string, title: string, step: Step<U>): Step<U> {
    if (step.scope !== undefined && step.scope !== this.#scope)
      throw new BugError(`${this.#scope.id}/${key}: the step stands in rows of ${step.scope.id}`);
    return this.#add(key, title, { ...step, scope: this.#scope });
  }

  #add<S extends Step>(key: string, title: string, step: S): S {
    if (this.placed.some(column => column.home?.key === key))
      throw new BugError(`${this.#scope.id}: the column ${key} is placed twice`);
    const placed = this.#place(step, key, title);
    this.placed.push(placed);
    return placed;
  }
}
