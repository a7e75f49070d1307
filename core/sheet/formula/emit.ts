import { at } from '../../base';
import { reachedAbsent } from '../findings';
import { innerOf } from '../inner';
import type { LookUp } from '../look-up';
import type { SheetResult } from '../result';
import type { Block } from '../block';
import { homeOf, type Step } from '../step';
import { boundUnit } from '../unit';
import { columnContent, formatOf, type CellContent } from './content';
import { HEADING_ROWS, letterOf, placeApart, rowsOfPlace, type Placement, type TablePlace } from './layout';
import { Names, placeOf, type DefinedName } from './names';
import { LONGEST_FORMULA, requireHiddenOnce } from './render';

/** One cell of the workbook, by row and column from 1. */
export interface WorkbookCell {
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
}

/** A column of a region: what it holds and whether people fill it in. */
export interface RegionColumn {
  readonly letter: string;
  readonly key: string;
  readonly title: string;
  readonly unit: string;
  readonly role: 'name' | 'input' | 'schedule' | 'calculation';
}

/** A table, block or look-up table as it stands in the workbook. */
export interface Region {
  readonly id: string;
  readonly heading: string;
  readonly sheet: string;
  readonly headingRow: number;
  readonly firstRow: number;
  /** Less than `firstRow` when there are no rows. */
  readonly lastRow: number;
  /** The blank row that ranges take in below the last; tables only. */
  readonly guardRow?: number;
  readonly columns: readonly RegionColumn[];
}

/** The sheets' figures as a workbook: cells with formulas and results, defined names, and what stands where. */
export interface EmittedWorkbook {
  readonly sheetNames: readonly string[];
  /** The cells of one sheet from the top, in parts that are made when they are asked for: none need be held whole. */
  partsOf(sheet: string): readonly CellMaker[];
  /** All sheets at once. */
  readonly sheets: ReadonlyMap<string, readonly WorkbookCell[]>;
  readonly regions: readonly Region[];
  readonly names: readonly DefinedName[];
  /** Formulas that are too long to read; a test of every shipped sheet wants none. */
  readonly tooLong: readonly string[];
}

/**
 * Writes evaluated sheets as workbook cells: one formula form a column, each with the exact result beside
 * it. Absent figures, and all that depend on them, are text. Plain data: a writer of any format can use it.
 * @param results in the order they were run, the work sheet first.
 * @param options where things stand, and a prefix of the defined names: with one of its own, each of several
 * evaluations can stand in the same workbook.
 * @throws BugError when a hidden step is used twice.
 */
export function emitWorkbook(
  results: readonly SheetResult[],
  options: { readonly placement?: Placement; readonly prefix?: string } = {},
): EmittedWorkbook {
  const placement = options.placement ?? placeApart(results);
  const names = new Names(results, placement, options.prefix ?? '');
  const makers = new Map<string, CellMaker[]>();
  const regions: Region[] = [];
  const add = (region: Region, rows: RowMaker) => {
    regions.push(region);
    const all = makers.get(region.sheet) ?? [];
    all.push(...partsOfRegion(region, rows));
    makers.set(region.sheet, all);
  };
  for (const result of results) {
    requireHiddenOnce(innerOf(result).order.steps);
    const context = { result, names, missing: reachedAbsent(result) };
    for (const place of names.tables.values())
      if (result.sheet.tables.includes(place.table)) add(tableRegion(place), tableCells(place, context));
    for (const block of result.sheet.blocks) add(...blockRegion(block, placement, context));
    for (const table of result.sheet.lookUps) add(...lookUpRegion(table, placement));
  }
  const sheetNames = [...makers.keys()];
  const partsOf = (sheet: string) => makers.get(sheet) ?? [];
  const cellsOf = (sheet: string) => partsOf(sheet).flatMap(make => make());
  return {
    sheetNames,
    partsOf,
    get sheets() {
      return new Map(sheetNames.map(name => [name, cellsOf(name)]));
    },
    get tooLong() {
      return sheetNames.flatMap(name => tooLong(name, cellsOf(name)));
    },
    regions,
    names: names.used(),
  };
}

/** Makes some cells, those of whole rows. */
export type CellMaker = () => WorkbookCell[];

/** Makes the cells of a row of a region, its rows counted from 0. */
type RowMaker = (row: number) => WorkbookCell[];

/** Rows in a part. */
const ROWS_IN_PART = 250;

/** The parts of a region; its headings stand in the first with the rows below them. */
function partsOfRegion(region: Region, rows: RowMaker): CellMaker[] {
  const count = Math.max(0, region.lastRow - region.firstRow + 1);
  const parts = Math.max(1, Math.ceil(count / ROWS_IN_PART));
  return Array.from({ length: parts }, (_, part) => () => {
    const cells = part === 0 ? headings(region) : [];
    const end = Math.min(count, (part + 1) * ROWS_IN_PART);
    for (let row = part * ROWS_IN_PART; row < end; row++) cells.push(...rows(row));
    return cells;
  });
}

function tooLong(sheet: string, cells: readonly WorkbookCell[]): string[] {
  return cells.flatMap(({ row, column, content }) =>
    content.kind === 'formula' && content.formula.length > LONGEST_FORMULA
      ? [`${sheet}!${letterOf(column)}${row} ${content.formula}`]
      : [],
  );
}

export interface EmitContext {
  readonly result: SheetResult;
  readonly names: Names;
  /** Cells that are absent and matter. */
  readonly missing: ReadonlySet<number>;
}

function headings(region: Region): WorkbookCell[] {
  return region.columns.flatMap((column, i) => [
    textCell(region.headingRow, i + 1, column.title),
    textCell(region.headingRow + 1, i + 1, column.unit === '1' ? '' : column.unit),
  ]);
}

function textCell(row: number, column: number, text: string): WorkbookCell {
  return { row, column, content: { kind: 'text', text } };
}

function named(letter: string, key: string, title: string): RegionColumn {
  return { letter, key, title, unit: '', role: 'name' };
}

function roleOf(step: Step): RegionColumn['role'] {
  if (step.kind.texts) return 'input';
  if (step.kind.givens === undefined) return 'calculation';
  return step.kind.givens.some(given => given?.basis === 'schedule') ? 'schedule' : 'input';
}

function tableRegion(place: TablePlace): Region {
  const { table } = place;
  const { first, last, guard } = rowsOfPlace(place, table.scope.rows.length);
  const lead = [named('A', 'key', 'Key'), named('B', 'title', table.heading)];
  if (place.leading === 3) lead.push(named('C', 'unit', 'Unit'));
  const columns = place.columns.map((step, i): RegionColumn => {
    const letter = letterOf(place.leading + i + 1);
    const unit = step.unit === 'text' ? '' : step.unit;
    const { key, title } = homeOf(step);
    return { letter, key, title, unit, role: roleOf(step) };
  });
  return {
    id: table.id,
    heading: table.heading,
    sheet: place.sheet,
    headingRow: place.row,
    firstRow: first,
    lastRow: last,
    guardRow: guard,
    columns: [...lead, ...columns],
  };
}

function tableCells(place: TablePlace, context: EmitContext): RowMaker {
  const { rows } = place.table.scope;
  const { first } = rowsOfPlace(place, rows.length);
  const columns = place.columns.map(step => columnContent(step, context));
  return i => {
    const { key, title, own } = at(rows, i);
    return [
      textCell(first + i, 1, key),
      textCell(first + i, 2, title),
      ...(own === undefined ? [] : [textCell(first + i, 3, own)]),
      ...columns.map((content, column) => ({
        row: first + i,
        column: place.leading + column + 1,
        content: content(i, first + i),
      })),
    ];
  };
}

function blockRegion(block: Block, placement: Placement, context: EmitContext): [Region, RowMaker] {
  const entries = block.entries().map(entry => ({ entry, content: columnContent(entry, context) }));
  const region = listRegion(block.id, block.heading, placement, entries.length);
  return [
    region,
    i => {
      const row = region.firstRow + i;
      return entries
        .slice(i, i + 1)
        .flatMap(({ entry, content }) => [
          textCell(row, 1, homeOf(entry).key),
          textCell(row, 2, homeOf(entry).title),
          { row, column: 3, content: content(0, row) },
          textCell(row, 4, boundUnit(entry.unit, undefined)),
        ]);
    },
  ];
}

function lookUpRegion(table: LookUp, placement: Placement): [Region, RowMaker] {
  const region = listRegion(table.id, table.title, placement, table.entries.length);
  return [
    region,
    i => table.entries.slice(i, i + 1).flatMap(entry => entryCells(table, entry, region.firstRow + i)),
  ];
}

function entryCells(table: LookUp, entry: LookUp['entries'][number], row: number): WorkbookCell[] {
  const { value } = entry.given;
  const format = formatOf(table.unit, value?.split('.')[1]?.length);
  return [
    {
      row,
      column: 1,
      content: { kind: 'input', value: Number(entry.key), format: formatOf(table.keyUnit, undefined) },
    },
    textCell(row, 2, entry.title),
    {
      row,
      column: 3,
      content: value === undefined ? { kind: 'blank' } : { kind: 'input', value: Number(value), format },
    },
    textCell(row, 4, table.unit),
  ];
}

function listRegion(id: string, heading: string, placement: Placement, count: number): Region {
  const place = placeOf(placement, id);
  const value: RegionColumn = { letter: 'C', key: 'value', title: 'Value', unit: '', role: 'input' };
  return {
    id,
    heading,
    sheet: place.sheet,
    headingRow: place.row,
    firstRow: place.row + HEADING_ROWS,
    lastRow: place.row + HEADING_ROWS + count - 1,
    columns: [named('A', 'key', 'Key'), named('B', 'title', heading), value, named('D', 'unit', 'Unit')],
  };
}
