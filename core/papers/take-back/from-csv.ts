import type { FileCell } from './other-cells';
import type { TypedContent } from './typed-values';
import { INPUTS } from '../workbook/inputs';

/** The rows of a CSV file of inputs as cells, each at the address a spreadsheet shows it at. */
export function cellsOfCsv(rows: readonly (readonly string[])[]): FileCell[] {
  return rows.flatMap((row, i) =>
    row.map((field, j) => ({ sheet: INPUTS, row: i + 1, column: j + 1, content: fieldContent(field) })),
  );
}

/** A plain decimal number is one; everything else stays text. */
function fieldContent(field: string): TypedContent {
  const words = field.trim();
  if (words === '') return { kind: 'blank' };
  return /^-?\d+(\.\d+)?$/.test(words)
    ? { kind: 'number', value: Number(words) }
    : { kind: 'text', text: field.replace(/^'(?=[=+\-@|%])/, '') };
}
