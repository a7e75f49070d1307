import type { LineColumns } from '../estimate';
import type { Step } from '../sheet';

/** The elements of a line, in the order they are shown. */
export const ELEMENTS = [
  'labour',
  'equipment',
  'material',
  'disposal',
  'subcontract',
  'fee',
  'mark-up',
] as const;
export type ElementKey = (typeof ELEMENTS)[number];

export const ELEMENT_TITLES: Readonly<Record<ElementKey, string>> = {
  labour: 'Labour',
  equipment: 'Equipment',
  material: 'Material',
  disposal: 'Disposal',
  subcontract: 'Subcontract',
  fee: 'Fee',
  'mark-up': 'Mark-up',
};

/** The column of an element. */
export function elementStep(columns: LineColumns, element: ElementKey): Step<'USD'> {
  return element === 'mark-up' ? columns.markUp : columns[element];
}
