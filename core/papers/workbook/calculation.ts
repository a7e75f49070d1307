import type { EmittedWorkbook, Region, WorkbookCell } from '../../sheet';
import type { PaperCell, PaperContent, PaperSheet } from './model';

/** The calculation sheets as paper: the cells as the sheets give them, headings set, inputs marked. */
export function calculationSheets(emitted: EmittedWorkbook): PaperSheet[] {
  return [...emitted.sheets].map(([name, cells]) => {
    const regions = emitted.regions.filter(region => region.sheet === name);
    const columns = Math.max(1, ...cells.map(cell => cell.column));
    return {
      name,
      cells: cells.map(cell => paperCell(cell, regions)),
      widths: Array.from({ length: columns }, (_, i) => widthOf(i, cells)),
      headingRows: regions.length === 1 ? 2 : 0,
      landscape: true,
    };
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
