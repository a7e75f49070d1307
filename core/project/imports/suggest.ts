import { known } from '../../base';
import { keyOf } from './cells';
import { IMPORT_FIELDS, importMappingSchema, type ImportKind, type ImportMapping } from './mapping';
import type { TextTable } from './table';

/** Words by which headings of tables are known (judgement), by field; the field's own name always counts. */
const HEADINGS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    sample: ['sample id', 'sample no', 'lab no', 'id'],
    space: ['location', 'where', 'frame', 'compartment'],
    material: ['matrix', 'type', 'family'],
    analyte: ['parameter', 'compound'],
    result: ['value', 'conc', 'concentration'],
    unit: ['units', 'uom'],
    qualifier: ['flag', 'q', 'qual'],
    reportingLimit: ['reporting limit', 'rl', 'mrl', 'limit', 'pql'],
    date: ['collected', 'sampled', 'sample date'],
    title: ['name', 'tank', 'item', 'description'],
    capacity: ['cap', 'volume'],
    contents: ['holds', 'content'],
    sounding: ['sounded'],
    mass: ['weight'],
    massUnit: ['mass unit', 'weight unit'],
    lengthUnit: ['length unit'],
    item: ['key', 'work item', 'rate'],
    price: ['unit price', 'rate'],
    vendor: ['bidder', 'supplier'],
    quantity: ['qty'],
    dated: ['date', 'quoted on'],
    validUntil: ['valid until', 'expires'],
    trade: ['classification', 'craft'],
    wage: ['base wage', 'hourly', 'rate'],
    basis: ['rests on'],
    source: ['reference'],
    year: ['price year', 'of year', 'year of prices'],
  }),
);

/**
 * The mapping that reads a table: one kept in the project whose columns are all there, else one guessed from the
 * headings. A guess is shown before it is used.
 * @param kept the mappings of the project, looked through in order.
 */
export function suggestedMapping(
  kind: ImportKind,
  table: TextTable,
  title: string,
  kept: readonly ImportMapping[],
): ImportMapping {
  const fitting = kept.find(mapping => mapping.kind === kind && fits(mapping, table));
  return fitting ?? guessed(kind, table, title);
}

function headingsOf(table: TextTable, row: number): string[] {
  return (table[row - 1] ?? []).map(heading => heading.trim().toLowerCase());
}

function fits(mapping: ImportMapping, table: TextTable): boolean {
  const headings = headingsOf(table, mapping.headingRow);
  return Object.values(mapping.columns).every(heading => headings.includes(heading.trim().toLowerCase()));
}

function guessed(kind: ImportKind, table: TextTable, title: string): ImportMapping {
  const found = table.findIndex(row => row.filter(cell => cell.trim() !== '').length > 1);
  const headingRow = Math.max(1, found + 1);
  const headings = (table[headingRow - 1] ?? []).map(heading => heading.trim());
  const free = new Set(headings.filter(heading => heading !== ''));
  const columns: Record<string, string> = {};
  for (const pass of [0, 1]) {
    for (const { field } of IMPORT_FIELDS[kind]) {
      if (columns[field] !== undefined) continue;
      const names = pass === 0 ? [field] : known(HEADINGS, field);
      const heading = [...free].find(text => names.some(name => plain(name) === plain(text)));
      if (heading === undefined) continue;
      columns[field] = heading;
      free.delete(heading);
    }
  }
  return importMappingSchema.parse({ id: keyOf(title), title, kind, headingRow, columns });
}

function plain(text: string): string {
  return text.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
}
