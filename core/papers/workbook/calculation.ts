import type { EmittedWorkbook, Region, WorkbookCell } from '../../sheet';
import { INPUT_COLUMN, INPUTS } from './inputs';
import type { PaperCell, PaperContent, PaperSheet } from './model';

/** The row of the sheet of inputs on which each figure stands that people may change, by the id of the figure. */
export type InputRows = ReadonlyMap<string, number>;

/**
 * The calculation sheets as paper: the cells as the sheets give them, headings set. A figure that people may change
 * stands once, on the sheet of inputs; here it is read from there.
 */
export function calculationSheets(emitted: EmittedWorkbook, inputs: InputRows): PaperSheet[] {
  return [...emitted.sheets].map(([name, cells]) => {
    const regions = emitted.regions.filter(region => region.sheet === name);
    const columns = cells.reduce((most, cell) => Math.max(most, cell.column), 1);
    const rowKeys = new Map(
      cells.flatMap(({ row, column, content }) =>
        column === 1 && content.kind === 'text' ? [[row, content.text] as const] : [],
      ),
    );
    return {
      name,
      cells: [...cells.map(cell => paperCell(cell, regions, rowKeys, inputs)), ...regions.flatMap(guardNote)],
      widths: Array.from({ length: columns }, (_, i) => widthOf(i, cells)),
      headingRows: regions.length === 1 ? 2 : 0,
      landscape: true,
    };
  });
}

/** The row below the last that all ranges take in: new rows go above it. */
function guardNote({ guardRow }: Region): PaperCell[] {
  const content: PaperContent = { kind: 'text', text: 'Put new rows in above this row.' };
  return guardRow === undefined ? [] : [{ row: guardRow, column: 2, content, style: 'note' }];
}

function widthOf(column: number, cells: readonly WorkbookCell[]): number {
  if (column === 0) return 24;
  const longest = cells.reduce(
    (most, cell) =>
      cell.column === column + 1 && cell.content.kind === 'text'
        ? Math.max(most, cell.content.text.length)
        : most,
    8,
  );
  return column === 1 ? Math.min(48, longest + 2) : Math.min(20, Math.max(12, Math.ceil(longest / 2) + 3));
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
  const input = region && inputs.get(figureId(region, rowKeys.get(row) ?? '', column));
  const base = { row, column, content: contentOf(cell, region, input) };
  if (region !== undefined && row === region.headingRow) return { ...base, style: 'heading' };
  if (region !== undefined && row === region.headingRow + 1) return { ...base, style: 'unit' };
  return base;
}

/** The id of the figure in a cell: table / row / column, or block / key. */
function figureId(region: Region, rowKey: string, column: number): string {
  const key = region.columns[column - 1]?.key ?? '';
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
