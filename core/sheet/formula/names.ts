import { BugError, known } from '../../base';
import type { SheetResult } from '../result';
import { homeOf, type Step } from '../step';
import {
  HEADING_ROWS,
  layOut,
  letterOf,
  quotedName,
  rowsOfPlace,
  type Place,
  type Placement,
  type TablePlace,
} from './layout';

/** A defined name of the workbook and the bounded range it stands for. */
export interface DefinedName {
  readonly name: string;
  readonly range: string;
}

/**
 * The defined names that formulas use: every single value, and the ranges of columns that totals and links
 * go over. A range takes in the guard row below the last.
 */
export class Names {
  readonly tables = new Map<string, TablePlace>();
  readonly #ranges = new Map<string, string>();
  readonly #used = new Set<string>();

  readonly #prefix: string;

  /** @param prefix before every name, so that several evaluations can stand in one workbook. */
  constructor(results: readonly SheetResult[], placement: Placement, prefix: string) {
    this.#prefix = prefix;
    for (const { sheet } of results) {
      for (const table of sheet.tables) this.#addTable(layOut(table, placeOf(placement, table.id)));
      for (const block of sheet.blocks) {
        const place = placeOf(placement, block.id);
        const count = block.entries().length;
        this.#addPair(block.id, place, count, 3);
        block.entries().forEach((entry, i) => {
          const row = place.row + HEADING_ROWS + i;
          const name = this.#add(`${block.id}_${homeOf(entry).key}`, place.sheet, 3, row, row);
          this.#used.add(name);
        });
      }
      for (const table of sheet.lookUps)
        this.#addPair(table.id, placeOf(placement, table.id), table.entries.length, 3);
    }
  }

  /** The name of a single value, or of the range of a column. */
  column(step: Step): string {
    const { id, key } = homeOf(step);
    return this.#use(`${id}_${key}`);
  }

  /** The name of the range of a column; of a single value that of all values of its block. */
  range(step: Step): string {
    return step.scope === undefined ? this.values(homeOf(step).id) : this.column(step);
  }

  keys(id: string): string {
    return this.#use(`${id}_rowKeys`);
  }

  values(id: string): string {
    return this.#use(`${id}_values`);
  }

  /** All names in use. */
  used(): DefinedName[] {
    return [...this.#used].map(name => ({ name, range: known(this.#ranges, name) }));
  }

  #addTable(place: TablePlace): void {
    const { table } = place;
    this.tables.set(table.id, place);
    const { first, guard } = rowsOfPlace(place, table.scope.rows.length);
    this.#add(`${table.id}_rowKeys`, place.sheet, 1, first, guard);
    place.columns.forEach((step, i) => {
      this.#add(`${table.id}_${homeOf(step).key}`, place.sheet, place.leading + i + 1, first, guard);
    });
  }

  #addPair(id: string, place: { sheet: string; row: number }, count: number, valueColumn: number): void {
    const first = place.row + HEADING_ROWS;
    const last = first + Math.max(count, 1) - 1;
    this.#add(`${id}_rowKeys`, place.sheet, 1, first, last);
    this.#add(`${id}_values`, place.sheet, valueColumn, first, last);
  }

  #nameOf(text: string): string {
    return `${this.#prefix}${text.replaceAll('-', '_')}`;
  }

  #add(text: string, sheet: string, column: number, first: number, last: number): string {
    const name = this.#nameOf(text);
    if (name.length > 255) throw new BugError(`the name ${name} is too long for a workbook`);
    if (this.#ranges.has(name)) throw new BugError(`two ranges of the workbook have the name ${name}`);
    const letter = letterOf(column);
    const end = first === last ? '' : `:$${letter}$${last}`;
    this.#ranges.set(name, `${quotedName(sheet)}!$${letter}$${first}${end}`);
    return name;
  }

  #use(text: string): string {
    const name = this.#nameOf(text);
    if (!this.#ranges.has(name)) throw new BugError(`the workbook has no range ${name}`);
    this.#used.add(name);
    return name;
  }
}

/** Where a table or block stands. @throws BugError when no place is given for it. */
export function placeOf(placement: Placement, id: string): Place {
  const place = placement.get(id);
  if (place === undefined) throw new BugError(`${id} has no place in the workbook`);
  return place;
}
