import type { Finding } from '../../base';
import type { Survey } from '../schema';
import { dateOf, numberOf, plainNumber } from './cells';
import type { ImportMapping } from './mapping';
import { cellOf, mapTable, type MappedRow, type TextTable } from './table';

export type LaboratoryRow = Survey['laboratory'][number];

/**
 * Laboratory results of a file. The result cell stays as the laboratory wrote it (not detected is never made a zero);
 * only the number in it is written with a point.
 */
export function importLaboratory(
  table: TextTable,
  mapping: ImportMapping,
): { readonly rows: readonly LaboratoryRow[]; readonly findings: readonly Finding[] } {
  const mapped = mapTable(table, mapping);
  const read = mapped.rows.map(row => laboratoryRow(row, mapping));
  return {
    rows: read.flatMap(one => ('row' in one ? [one.row] : [])),
    findings: [...mapped.findings, ...read.flatMap(one => ('finding' in one ? [one.finding] : []))],
  };
}

function laboratoryRow(
  { fields, place }: MappedRow,
  mapping: ImportMapping,
): { row: LaboratoryRow } | { finding: Finding } {
  const of = (field: string) => cellOf(fields, field);
  const date = dateOf(of('date'), mapping);
  const limit = numberOf(fields['reportingLimit'], mapping);
  const [sample, material] = [of('sample'), of('material')];
  if (date === undefined || sample === '' || !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(material))
    return {
      finding: {
        code: 'imports/row-not-read',
        weight: 'warns',
        place,
        message: `The row of sample "${sample}", material "${material}", date "${of('date')}" cannot be read.`,
        meaning: 'It is left out.',
        remedy: 'Give each row a sample, a date as the mapping says, and say which material its words mean.',
      },
    };
  return {
    row: {
      sample,
      space: fields['space'] ?? '',
      material,
      analyte: of('analyte'),
      result: plainNumber(of('result'), mapping),
      unit: of('unit'),
      qualifier: fields['qualifier'] ?? '',
      ...(limit === undefined ? {} : { reportingLimit: limit }),
      date,
    },
  };
}
