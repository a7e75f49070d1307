import { z } from 'zod';
import { BASES, isoDate, key, recordOf } from '../base';
import { ELEMENTS } from '../evaluation';
import { STAGES } from '../work';
import { EVALUATION_FORMAT, EVALUATION_VERSION } from './evaluation-json';

/** Dollars with at most two decimals. */
const dollars = z
  .number()
  .refine(value => Math.abs(value * 100 - Math.round(value * 100)) < 1e-4, 'whole cents');
const share = z.number().min(-1).max(10);
const month = z.string().regex(/^\d{4}-\d{2}$/);

const findingSchema = z.strictObject({
  code: z.string(),
  weight: z.enum(['blocks', 'warns', 'notes']),
  place: z.string(),
  message: z.string(),
  meaning: z.string().optional(),
  remedy: z.string(),
  rule: z.string().optional(),
});
const findings = z.array(findingSchema);

const lineSchema = z.looseObject({
  id: key,
  stage: z.enum(STAGES),
  title: z.string(),
  quantity: z.number().optional(),
  unit: z.string(),
  hours: z.number().optional(),
  labour: dollars.optional(),
  equipment: dollars.optional(),
  material: dollars.optional(),
  disposal: dollars.optional(),
  subcontract: dollars.optional(),
  fee: dollars.optional(),
  markUp: dollars.optional(),
  total: dollars.optional(),
});

const estimateSchema = z.looseObject({
  scenario: key,
  currency: z.literal('USD'),
  priceDate: isoDate,
  permittable: z.boolean().optional(),
  total: dollars.optional(),
  knownSoFar: dollars.optional(),
  contractCost: dollars.optional(),
  markUps: dollars.optional(),
  ownerCost: dollars.optional(),
  contingency: dollars.optional(),
  budget: dollars.optional(),
  byStage: z.strictObject(recordOf(STAGES, () => dollars.optional())).optional(),
  byElement: z.strictObject(recordOf(ELEMENTS, () => dollars.optional())).optional(),
  byBasis: z.strictObject(recordOf(BASES, () => dollars.optional())).optional(),
  uncheckedShare: share.optional(),
  lines: z.array(lineSchema).optional(),
  wasteTonnes: z.record(key, z.number()).optional(),
  generatorCategoryByMonth: z.record(month, z.enum(['very small', 'small', 'large'])).optional(),
  start: isoDate.optional(),
  finish: isoDate.optional(),
  findings,
});

const activitySchema = z.looseObject({
  id: key,
  title: z.string(),
  start: isoDate,
  finish: isoDate,
  workDays: z.number(),
  totalFloat: z.number(),
  critical: z.boolean(),
  crew: z.number(),
});

const scheduleSchema = z.looseObject({
  scenario: key,
  status: z.string().optional(),
  start: isoDate.optional(),
  finish: isoDate.optional(),
  activities: z.array(activitySchema).optional(),
  findings,
});

const comparisonSchema = z.looseObject({
  scenarios: z.array(z.looseObject({ id: key, title: z.string(), letter: z.string() })),
  bridges: z.array(
    z.looseObject({
      from: key,
      to: key,
      steps: z.array(z.looseObject({ title: z.string(), amount: dollars })),
      total: dollars,
      risk: z
        .strictObject({
          title: z.string(),
          amount: dollars,
          to: z.strictObject({ title: z.string(), amount: dollars }),
        })
        .optional(),
    }),
  ),
});

/** The evaluation of a scenario as a file: what other tools may rely on. Fields beyond these may be added in one version. */
export const evaluationSchema = z.strictObject({
  $schema: z.string(),
  format: z.literal(EVALUATION_FORMAT),
  version: z.literal(EVALUATION_VERSION),
  title: z.string(),
  /** Set on invented examples. */
  sample: z.boolean(),
  /** The start of the SHA-256 of the document, as the scenario sees it. */
  document: z.string().regex(/^[0-9a-f]{12}$/),
  evaluatedOn: isoDate,
  scenario: z.strictObject({ id: key, letter: z.string(), title: z.string() }),
  estimate: estimateSchema,
  schedule: scheduleSchema,
  upright: z.looseObject({ scenario: key, findings }).optional(),
  comparison: comparisonSchema.optional(),
});
