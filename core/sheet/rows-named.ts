import { at } from '../base';
import type { Scope } from './scope';
import type { Step } from './step';

type Texts = readonly (string | undefined)[];

const NAMED = new WeakMap<Texts, WeakMap<Scope, Int32Array>>();

/** The row of a column's table that a key column names in a row; -1 where there is none, and of a single value. */
export function rowNamed(texts: Texts, { scope }: Step, row: number): number {
  return scope === undefined ? -1 : at(rowsNamed(texts, scope), row);
}

/** The rows of a table that the texts of a key column name; -1 where there is none. Worked out once for both. */
function rowsNamed(texts: Texts, scope: Scope): Int32Array {
  const byScope = NAMED.get(texts) ?? new WeakMap<Scope, Int32Array>();
  NAMED.set(texts, byScope);
  const known = byScope.get(scope);
  if (known !== undefined) return known;
  const rows = Int32Array.from(texts, text => (text === undefined ? -1 : (scope.index.get(text) ?? -1)));
  byScope.set(scope, rows);
  return rows;
}
