import type { EmittedWorkbook, Region, WorkbookCell } from '../../sheet';
import type { PaperCell, PaperContent, PaperSheet } from './model';

/** The calculation sheets as paper: the cells as the sheets give them, headings set, inputs marked. */
export function calculationSheets(emitted: EmittedWorkbook): PaperSheet[] {
  return [...emitted.sheets].map(([name, cells]) => {
    const regions = emitted.regions.filter(region => region.sheet === name);
    const columns = Math.max(1, ...cells.map(cell => cell.column));
    return {
      name,
      cells: [...cells.map(cell => paperCell(cell, regions)), ...regions.flatMap(guardNote)],
      numberInputs: regions.flatMap(region => numberInputs(region, cells)),
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

/** The columns of a region in which people type numbers. */
function numberInputs(region: Region, cells: readonly WorkbookCell[]): string[] {
  if (region.lastRow < region.firstRow) return [];
  return region.columns.flatMap((column, i) => {
    const inside = cells.filter(
      cell => cell.column === i + 1 && cell.row >= region.firstRow && cell.row <= region.lastRow,
    );
    const isTyped = column.role === 'input' && inside.every(({ content }) => content.kind === 'input');
    return isTyped && inside.length > 0
      ? [`${column.letter}${region.firstRow}:${column.letter}${region.lastRow}`]
      : [];
  });
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

function paperCell(cell: WorkbookCell, regions: readonly Region[]): PaperCell {
  const { row, column } = cell;
  const region = regions.find(
    candidate => row >= candidate.headingRow && row <= (candidate.guardRow ?? candidate.lastRow),
  );
  const base = { row, column, content: contentOf(cell, region) };
  if (region !== undefined && row === region.headingRow) return { ...base, style: 'heading' };
  if (region !== undefined && row === region.headingRow + 1) return { ...base, style: 'unit' };
  return base;
}

function contentOf({ content, column }: WorkbookCell, region: Region | undefined): PaperContent {
  switch (content.kind) {
    case 'text':
    case 'absent':
      return { kind: 'text', text: content.text };
    case 'blank':
      return { kind: 'text', text: '' };
    case 'input': {
      const role = region?.columns[column - 1]?.role === 'schedule' ? 'schedule' : 'input';
      if (content.format.kind === 'money' && role === 'input')
        return { kind: 'money', value: content.value, role };
      return { kind: 'number', value: content.value, decimals: content.format.decimals, role };
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
