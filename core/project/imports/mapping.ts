import { z } from 'zod';
import { key } from '../../base';

/** What can be imported. */
export const IMPORT_KINDS = ['laboratory', 'tanks', 'weights', 'prices', 'wages'] as const;
export type ImportKind = (typeof IMPORT_KINDS)[number];

/** The fields of each kind; those marked `required` must have a column or a constant. */
export const IMPORT_FIELDS: Readonly<Record<ImportKind, readonly { field: string; required: boolean }[]>> = {
  laboratory: fields(
    ['sample', 'material', 'analyte', 'result', 'unit', 'date'],
    ['space', 'qualifier', 'reportingLimit'],
  ),
  tanks: fields(['title', 'capacity', 'unit'], ['contents', 'sounding']),
  weights: fields(['title', 'mass', 'massUnit', 'vcg', 'lcg', 'tcg', 'lengthUnit'], []),
  prices: fields(['item', 'unit', 'price'], ['title', 'vendor', 'quantity', 'dated', 'validUntil', 'year']),
  wages: fields(['trade', 'wage'], ['basis', 'source', 'year']),
};

function fields(required: readonly string[], optional: readonly string[]) {
  return [
    ...required.map(field => ({ field, required: true })),
    ...optional.map(field => ({ field, required: false })),
  ];
}

/** How the columns of a file become fields; kept in the project, so that the next file of that layout needs no questions. */
export const importMappingSchema = z.strictObject({
  id: key,
  title: z.string().min(1).max(200),
  kind: z.enum(IMPORT_KINDS),
  /** The row of the headings, from 1. */
  headingRow: z.int().min(1).max(200).default(1),
  /** Field by the heading of its column. */
  columns: z.record(z.string(), z.string()),
  /** Fields that no column gives and that hold for the whole file. */
  constants: z.record(z.string(), z.string()).default({}),
  /** Words of the file by the word of the document: `Cable jacket` is `pcb-cable`. */
  words: z.record(z.string(), z.string()).default({}),
  /** How dates are written. */
  dates: z.enum(['YYYY-MM-DD', 'MM/DD/YYYY', 'DD.MM.YYYY']).default('YYYY-MM-DD'),
  /** How numbers are written: with a point or a comma before the decimals. */
  decimals: z.enum(['point', 'comma']).default('point'),
});
export type ImportMapping = z.infer<typeof importMappingSchema>;
