import { ELEMENTS, type ElementKey } from '../evaluation';

export { ELEMENTS, type ElementKey };

export const ELEMENT_TITLES: Readonly<Record<ElementKey, string>> = {
  labour: 'Labour',
  equipment: 'Equipment',
  material: 'Material',
  disposal: 'Disposal, less scrap',
  subcontract: 'Subcontract',
  fee: 'Fee',
  'mark-up': 'Mark-up',
};
