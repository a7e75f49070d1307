import { BugError, type Finding } from '../../base';
import { IMPORT_FIELDS, type ImportMapping } from './mapping';

/** A file as rows of text cells, as read from CSV or a worksheet. */
export type TextTable = readonly (readonly string[])[];

/** A row by field, with its place in the file. */
export interface MappedRow {
  readonly place: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** A mapped file. */
export interface MappedTable {
  readonly rows: readonly MappedRow[];
  readonly findings: readonly Finding[];
}

/**
 * What a row says under a field that every table of its kind gives, by a column or for all rows.
 * @throws BugError for a field that a table may leave out.
 */
export function cellOf(fields: MappedRow['fields'], field: string): string {
  const text = fields[field];
  if (text === undefined) throw new BugError(`a row was read without its ${field}`);
  return text;
}

/**
 * The rows of a file by field. Blank rows are passed over; a column the mapping names and the file has not is a finding,
 * and without a required one nothing is imported.
 */
export function mapTable(table: TextTable, mapping: ImportMapping): MappedTable {
  const headings = (table[mapping.headingRow - 1] ?? []).map(heading => heading.trim().toLowerCase());
  const at = (heading: string) => headings.indexOf(heading.trim().toLowerCase());
  const findings = missingColumns(mapping, at);
  if (findings.some(finding => finding.weight === 'blocks')) return { rows: [], findings };
  const rows = table.slice(mapping.headingRow).flatMap((cells, i): MappedRow[] => {
    if (cells.every(cell => cell.trim() === '')) return [];
    const read = Object.entries(mapping.columns).map(([field, heading]): [string, string] => {
      const cell = (cells[at(heading)] ?? '').trim();
      return [field, mapping.words[cell] ?? cell];
    });
    const place = `/imports/${mapping.id}/row-${mapping.headingRow + i + 1}`;
    return [{ place, fields: { ...mapping.constants, ...Object.fromEntries(read) } }];
  });
  return { rows, findings };
}

function missingColumns(mapping: ImportMapping, at: (heading: string) => number): Finding[] {
  return IMPORT_FIELDS[mapping.kind].flatMap(({ field, required }): Finding[] => {
    const heading = mapping.columns[field];
    const given = heading !== undefined ? at(heading) >= 0 : mapping.constants[field] !== undefined;
    if (given || (heading === undefined && !required)) return [];
    return [
      {
        code: 'imports/no-such-column',
        weight: required ? 'blocks' : 'warns',
        place: `/imports/${mapping.id}`,
        message: `The file has no column for ${field}${heading === undefined ? '' : ` under the heading "${heading}"`}.`,
        meaning: required ? 'Nothing is imported.' : 'That field stays empty.',
        remedy: 'Choose the column again.',
      },
    ];
  });
}
