import type { PlainUnit } from '../units';

/** A row of a table: what it is called and where the document holds it. */
export interface Row {
  /** The document's id of what the row stands for: stable, part of the id of every figure in the row. */
  readonly key: string;
  readonly title: string;
  /** What `own` means in this row. */
  readonly own: PlainUnit | undefined;
  /** Where the document holds it, for findings. */
  readonly place: string;
}

/** The rows in which the columns of one table are calculated. */
export interface Scope {
  readonly id: string;
  readonly heading: string;
  readonly rows: readonly Row[];
  /** The keys of the rows. */
  readonly keys: readonly string[];
  /** Row number by row key. */
  readonly index: ReadonlyMap<string, number>;
}
