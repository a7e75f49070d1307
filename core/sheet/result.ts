import { BugError } from '../base';
import { fromCents, type Money } from '../money';
import { innerOf } from './inner';
import { rowsOf } from './order';
import type { Sheet } from './sheet';
import { homeOf, unitIn, type Step } from './step';

/** A figure of a sheet: what it is called, its unit, and its value unless it is absent. */
export interface Figure {
  /** table / row key / column key, or block / key. */
  readonly id: string;
  readonly title: string;
  /** The title of its row; none for a single value. */
  readonly rowTitle: string | undefined;
  readonly unit: string;
  /** Exact decimal text; undefined when absent. */
  readonly text: string | undefined;
  /** The same as a double. */
  readonly number: number | undefined;
}

/** The id of a placed step in a row: table / row key / column key; block / key for a single value. */
export function idOf(step: Step, rowKey?: string): string {
  const { id, key } = homeOf(step);
  if (step.scope === undefined) return `${id}/${key}`;
  if (rowKey === undefined) throw new BugError(`${id}/${key} needs a row key`);
  return `${id}/${rowKey}/${key}`;
}

/** The id of a placed step in a row by its number. */
export function idIn(step: Step, row: number): string {
  return idOf(step, step.scope?.rows[row]?.key);
}

/** What a sheet comes to, exactly. Absent figures are undefined; why is told by `sheetFindings`. */
export class SheetResult {
  readonly sheet: Sheet;
  #placed: ReadonlyMap<string, Step> | undefined;

  constructor(sheet: Sheet) {
    this.sheet = sheet;
  }

  /** Whether there is a figure of this id, absent or not. */
  has(id: string): boolean {
    return this.#find(id) !== undefined;
  }

  /** The figure of an id. @throws BugError when there is none. */
  figure(id: string): Figure {
    const found = this.#find(id);
    if (found === undefined) throw new BugError(`there is no figure ${id}`);
    return this.#figure(found.step, found.row);
  }

  /** The figure of a placed step, in the row of a key. @throws BugError when there is none. */
  at(step: Step, rowKey?: string): Figure {
    return this.figure(idOf(step, rowKey));
  }

  /** The figures of a column, in the order of the rows; of a single value, the one. */
  column(step: Step): Figure[] {
    return Array.from({ length: rowsOf(step) }, (_, row) => this.#figure(step, row));
  }

  /** A figure as a double; undefined when absent. */
  number(step: Step, rowKey?: string): number | undefined {
    const row = step.scope === undefined ? 0 : step.scope.index.get(rowKey ?? '');
    const inner = innerOf(this);
    const cell = row === undefined ? -1 : inner.order.cell(step, row);
    return inner.number(cell < 0 ? this.cellOf(idOf(step, rowKey)) : cell);
  }

  /** A column as doubles, in the order of the rows; undefined where absent. */
  numbers(step: Step): (number | undefined)[] {
    const inner = innerOf(this);
    const first = inner.order.cell(step, 0);
    return Array.from({ length: rowsOf(step) }, (_, row) => inner.number(first + row));
  }

  /** A figure of money; undefined when absent. @throws BugError when it is not whole cents of dollars. */
  money(step: Step, rowKey?: string): Money | undefined {
    const id = idOf(step, rowKey);
    const found = this.#find(id);
    if (found === undefined) throw new BugError(`there is no figure ${id}`);
    const unit = unitIn(step, found.row);
    if (unit !== 'USD') throw new BugError(`${id} is in ${unit}, not money`);
    const exact = innerOf(this).value(this.#cell(found));
    return exact && fromCents(exact.times(100).toNumber());
  }

  /** The text of a key column in a row. */
  key(step: Step, rowKey: string): string | undefined {
    const row = step.scope?.index.get(rowKey);
    return row === undefined ? undefined : step.kind.texts?.[row];
  }

  /** The number of the cell of an id. @throws BugError when there is none. */
  cellOf(id: string): number {
    const found = this.#find(id);
    if (found === undefined) throw new BugError(`there is no figure ${id}`);
    return this.#cell(found);
  }

  #figure(step: Step, row: number): Figure {
    const inner = innerOf(this);
    const cell = inner.order.cell(step, row);
    return {
      id: idIn(step, row),
      title: homeOf(step).title,
      rowTitle: step.scope?.rows[row]?.title,
      unit: unitIn(step, row),
      text: inner.text(cell) ?? step.kind.texts?.[row],
      number: inner.number(cell),
    };
  }

  #cell({ step, row }: { readonly step: Step; readonly row: number }): number {
    return innerOf(this).order.cell(step, row);
  }

  #find(id: string): { step: Step; row: number } | undefined {
    const [home = '', second = '', third] = id.split('/');
    this.#placed ??= placedById(this.sheet);
    const step = this.#placed.get(`${home}/${third ?? second}`);
    if (step === undefined || (step.scope === undefined) !== (third === undefined)) return undefined;
    const row = third === undefined ? 0 : step.scope?.index.get(second);
    return row === undefined ? undefined : { step, row };
  }
}

/** The placed steps by table and column key, or block and key. */
function placedById(sheet: Sheet): ReadonlyMap<string, Step> {
  const steps = [...sheet.tables.flatMap(t => t.placed), ...sheet.blocks.flatMap(b => b.entries())];
  return new Map(
    steps.map(step => {
      const { id, key } = homeOf(step);
      return [`${id}/${key}`, step];
    }),
  );
}
