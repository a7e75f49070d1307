import { z } from 'zod';
import { BASES } from './basis';

/** Decimal text: what a person typed, kept as typed. No exponent, no infinity. */
export const decimalText = z
  .string()
  .regex(/^-?\d{1,15}(\.\d{1,12})?$/, 'write a plain decimal number, such as 12.5');

/** A calendar date as text, `YYYY-MM-DD`. */
export const isoDate = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'write the date as YYYY-MM-DD');

/** A key: lower-case words joined by hyphens. */
export const key = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'write a key as lower-case words joined by hyphens');

/** Schema of where a number comes from. */
export const provenanceSchema = z.strictObject({
  basis: z.enum(BASES),
  source: z.string().min(3),
  year: z.int().min(1850).max(2100).optional(),
});

/**
 * A given number with its unit, its range and where it comes from. A template may hold no number without it.
 * `value` is the likely value (the mode); `low` and `high` are its range when it has one.
 */
export const figureSchema = z.strictObject({
  value: decimalText,
  unit: z.string().min(1),
  low: decimalText.optional(),
  high: decimalText.optional(),
  ...provenanceSchema.shape,
  note: z.string().optional(),
  checkedOn: isoDate.optional(),
});

export type Figure = z.infer<typeof figureSchema>;

/** Where a number comes from, with its year unless the source names that already: `Price list of the port, 2024`. */
export function sourceWithYear({ source, year }: Pick<Figure, 'source' | 'year'>): string {
  return year === undefined || source.includes(String(year)) ? source : `${source}, ${year}`;
}
