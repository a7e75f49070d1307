import { at, type Basis, type Figure } from '../base';
import { isStarting } from '../project';
import { figureInMeasures, inMeasures, unitWords, type Measures } from './measures';
import { DASH, padsOf, printed } from './number-text';
import type { Column, Edit, Row, Shown } from './rows';

export function words(text: string): Shown {
  return { text };
}

export const NOT_APPLYING: Shown = { text: DASH };

/** A path of the document as one step: slashes inside it are written `~1`. */
export function asStep(place: string): string {
  return place.replaceAll('~', '~0').replaceAll('/', '~1');
}

/** The edit of a given number at a place, in the reader's measures. */
export function figureEdit(
  at: string,
  label: string,
  figure: Figure | undefined,
  unit: string,
  measures: Measures,
): Edit & Required<Pick<Edit, 'unit'>> {
  const shown =
    figure === undefined
      ? { value: '', unit: inMeasures('0', unit, measures).unit }
      : figureInMeasures(figure, measures);
  return { at, kind: 'figure', value: shown.value, unit: shown.unit, label };
}

/** A given number as it is shown: it has a unit, a derivation and a way to edit it. */
export type GivenShown = Shown & Required<Pick<Shown, 'unit' | 'why' | 'edit'>>;

/** A given number as a cell that can be edited and asked about. */
export function givenCell(at: string, label: string, figure: Figure, measures: Measures): GivenShown {
  const shown = figureInMeasures(figure, measures);
  return {
    text: printed(shown.value),
    unit: unitWords(shown.unit),
    why: `given:${at}`,
    basis: figure.basis,
    source: figure.source,
    edit: {
      at,
      kind: 'figure',
      value: shown.value,
      unit: shown.unit,
      label,
      ...(isStarting(figure) ? { begins: true as const } : {}),
    },
  };
}

/**
 * The edit of a rate: the number that stands there, typed again, stays at the prices of its year; another one is meant
 * at the prices of the year it is typed in.
 * @param today `YYYY-MM-DD`.
 */
export function atItsPrices(edit: Edit, figure: Figure | undefined, today: string): Edit {
  const yearNow = Number(today.slice(0, 4));
  return figure?.year === undefined ? { ...edit, yearNow } : { ...edit, year: figure.year, yearNow };
}

export function basisCell(basis: Basis | undefined, source?: string, why?: string): Shown {
  if (basis === undefined) return NOT_APPLYING;
  return {
    text: basis,
    basis,
    ...(source === undefined ? {} : { source }),
    ...(why === undefined ? {} : { why }),
  };
}

/** Gives the cells of number columns their hidden digits, so that every column lines up on the decimal. */
export function aligned(columns: readonly Column[], rows: readonly Row[]): readonly Row[] {
  const pads = new Map<string, readonly string[]>();
  for (const column of columns) {
    if (column.kind !== 'number' && column.kind !== 'share') continue;
    pads.set(column.key, padsOf(rows.map(row => row.cells[column.key]?.text ?? '')));
  }
  return rows.map((row, place) => ({
    ...row,
    cells: Object.fromEntries(
      Object.entries(row.cells).map(([key, shown]) => {
        const ofColumn = pads.get(key);
        const pad = ofColumn === undefined ? '' : at(ofColumn, place);
        return [key, pad === '' ? shown : { ...shown, pad }];
      }),
    ),
  }));
}

/** The column of a table whose rows can be taken out, and its cell. */
export const REMOVE_COLUMN: Column = { key: 'remove', title: 'Take out', kind: 'action' };

export function removeCell(at: string, label: string): Shown {
  return { text: 'Remove', remove: { at, label } };
}

/** A word, date or choice of the document as a cell that can be edited. */
export function editCell(edit: Edit, text = edit.value): Shown & { readonly edit: Edit } {
  return { text: text === '' ? DASH : text, edit };
}

/** A yes or no of the document as a cell that can be edited. */
export function switchCell(at: string, label: string, isOn: boolean): Shown & { readonly edit: Edit } {
  return editCell({
    at,
    kind: 'switch',
    value: String(isOn),
    label,
    choices: [
      { id: 'true', title: 'yes' },
      { id: 'false', title: 'no' },
    ],
  });
}

/** Whether a word is in a list of the document, as a cell that can be edited. */
export function memberCell(at: string, label: string, isIn: boolean): Shown {
  const shown = switchCell(at, label, isIn);
  return { ...shown, edit: { ...shown.edit, member: true } };
}
