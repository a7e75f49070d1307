import { at } from '../../base';
import type { EmittedWorkbook, Region, WorkbookCell } from '../../sheet';
import { INPUT_COLUMN, INPUTS } from './inputs';
import { largeSheet, type SheetPart } from './large-sheet';
import type { PaperCell, PaperContent, PaperSheet } from './model';

/** The row of the sheet of inputs on which each figure stands that people may change, by the id of the figure. */
export type InputRows = ReadonlyMap<string, number>;

/**
 * The calculation sheets as paper: the cells as the sheets give them, headings set. A figure that people may change
 * stands once, on the sheet of inputs; here it is read from there.
 */
export function calculationSheets(emitted: EmittedWorkbook, inputs: InputRows): PaperSheet[] {
  return emitted.sheetNames.map(name => {
    const regions = emitted.regions.filter(region => region.sheet === name);
    const frame = { name, headingRows: regions.length === 1 ? 2 : 0, landscape: true };
    const parts = emitted.partsOf(name).map(made => () => cellsOf(made(), regions, inputs));
    return largeSheet(frame, parts, widthsOf);
  });
}

function cellsOf(
  cells: readonly WorkbookCell[],
  regions: readonly Region[],
  inputs: InputRows,
): readonly PaperCell[] {
  const rowKeys = new Map(
    cells.flatMap(({ row, column, content }) =>
      column === 1 && content.kind === 'text' ? [[row, content.text] as const] : [],
    ),
  );
  const below = cells.reduce((most, cell) => Math.max(most, cell.row), 0) + 1;
  const ended = regions.filter(({ guardRow }) => guardRow === below);
  return [...cells.map(cell => paperCell(cell, regions, rowKeys, inputs)), ...ended.flatMap(guardNote)];
}

/** The row below the last that all ranges take in: new rows go above it. */
function guardNote({ guardRow }: Region): PaperCell[] {
  const content: PaperContent = { kind: 'text', text: 'Put new rows in above this row.' };
  return guardRow === undefined ? [] : [{ row: guardRow, column: 2, content, style: 'note' }];
}

/** The width of each column by its longest words; a heading may take two lines. */
function widthsOf(parts: readonly SheetPart[]): number[] {
  const widths: (number | undefined)[] = [];
  for (const part of parts)
    for (const { column, content, style } of part()) {
      if (content.kind !== 'text' || style === 'note') continue;
      const { length } = content.text;
      const needed = style === 'heading' ? Math.ceil(length / 2) + 3 : length + 2;
      widths[column - 1] = Math.max(widths[column - 1] ?? 12, needed);
    }
  return Array.from(widths, (width = 12, i) => {
    if (i === 0) return Math.min(34, Math.max(24, width));
    return Math.min(i === 1 ? 48 : 26, width);
  });
}

function paperCell(
  cell: WorkbookCell,
  regions: readonly Region[],
  rowKeys: ReadonlyMap<number, string>,
  inputs: InputRows,
): PaperCell {
  const { row, column } = cell;
  const region = regions.find(
    candidate => row >= candidate.headingRow && row <= (candidate.guardRow ?? candidate.lastRow),
  );
  const isOpen = cell.content.kind === 'input' || cell.content.kind === 'blank';
  const input = isOpen && region ? inputs.get(figureId(region, rowKeys.get(row) ?? '', column)) : undefined;
  const base = { row, column, content: contentOf(cell, region, input) };
  if (region !== undefined && row === region.headingRow) return { ...base, style: 'heading' };
  if (region !== undefined && row === region.headingRow + 1) return { ...base, style: 'unit' };
  return base;
}

/** The id of the figure in a cell: table / row / column, or block / key. */
function figureId(region: Region, rowKey: string, column: number): string {
  const key = at(region.columns, column - 1).key;
  return key === 'value' && region.guardRow === undefined
    ? `${region.id}/${rowKey}`
    : `${region.id}/${rowKey}/${key}`;
}

function contentOf(
  { content, column }: WorkbookCell,
  region: Region | undefined,
  input: number | undefined,
): PaperContent {
  switch (content.kind) {
    case 'text':
    case 'absent':
      return { kind: 'text', text: content.text };
    case 'blank':
      return input === undefined ? { kind: 'text', text: '' } : openReference(input);
    case 'input': {
      const { kind, decimals } = content.format;
      if (input !== undefined)
        return {
          kind: 'formula',
          formula: `${INPUTS}!$${INPUT_COLUMN}$${input}`,
          result: content.value,
          format: kind,
          decimals,
        };
      const role = region?.columns[column - 1]?.role === 'schedule' ? 'schedule' : 'given';
      return kind === 'money'
        ? { kind: 'money', value: content.value, role }
        : { kind: 'number', value: content.value, decimals, role };
    }
    case 'formula':
      return {
        kind: 'formula',
        formula: content.formula,
        result: content.result,
        format: content.format.kind,
        decimals: content.format.decimals,
      };
  }
}

/** A figure nobody has given yet: empty as long as its input cell is. */
function openReference(input: number): PaperContent {
  const at = `${INPUTS}!$${INPUT_COLUMN}$${input}`;
  return {
    kind: 'formula',
    formula: `IF(${at}="","",${at})`,
    result: '',
    format: 'number',
    decimals: undefined,
  };
}
