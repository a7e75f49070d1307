import type { Figure } from '../base';
import { aligned, basisCell, figureEdit, givenCell, words } from './cells';
import type { Measures } from './measures';
import type { Column, Row, Shown, TableRows } from './rows';

/** A figure that may be left out: given, or an empty slot for it. */
export function optionalFigure(
  at: string,
  label: string,
  figure: Figure | undefined,
  unit: string,
  measures: Measures,
): Shown {
  if (figure === undefined)
    return { text: '', edit: { ...figureEdit(at, label, undefined, unit, measures), optional: true } };
  const shown = givenCell(at, label, figure, measures);
  return { ...shown, edit: { ...shown.edit, optional: true } };
}

const TERM_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Term', kind: 'words' },
  { key: 'value', title: 'Value', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
];

/** One term: its title, its value, its unit and where it comes from. */
export function termRow(id: string, title: string, value: Shown, unit = value.unit ?? ''): Row {
  return {
    id,
    kind: 'line',
    cells: {
      title: words(title),
      value,
      unit: words(unit),
      basis: value.basis === undefined ? words('') : basisCell(value.basis, value.source, value.why),
    },
  };
}

/** Terms with their value, unit and basis. */
export function termTable(id: string, caption: string, rows: readonly Row[]): TableRows {
  return { id, caption, columns: TERM_COLUMNS, rows: aligned(TERM_COLUMNS, rows) };
}
