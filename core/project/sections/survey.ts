import { z } from 'zod';
import { decimalText, figureSchema, isoDate, key } from '../../base';
import { words } from './texts';

/** The twelve things the guidance's work plan asks to assemble; an unknown widens the range. */
export const INTAKE = [
  'asbestos-papers',
  'pcb-papers',
  'demilitarisation',
  'refrigerants-out',
  'hazardous-material-information',
  'hull-paint-and-date',
  'general-drawings',
  'size-and-superstructure',
  'tank-soundings',
  'reuse-list',
  'laws-and-permits',
  'site-survey',
] as const;

/** A laboratory result as it stood in the report. */
export const laboratoryResultSchema = z.strictObject({
  sample: z.string().min(1),
  space: z.string(),
  material: key,
  analyte: z.string(),
  result: z.string(),
  unit: z.string(),
  qualifier: z.string(),
  reportingLimit: decimalText.optional(),
  date: isoDate,
});

export const surveySchema = z.strictObject({
  intake: z.partialRecord(z.enum(INTAKE), z.enum(['yes', 'no', 'unknown'])).default({}),
  /** Measured quantities that replace assumptions, by driver. */
  measured: z
    .array(z.strictObject({ driver: key, figure: figureSchema, note: words.optional() }))
    .default([]),
  laboratory: z.array(laboratoryResultSchema).default([]),
});
