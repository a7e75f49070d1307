import { z } from 'zod';
import { BugError, decimalText, figureSchema, provenanceSchema } from '../base';

/** Every automatic check, by the practice it looks at. */
export const PRACTICE_IDS = [
  'whole-life',
  'baseline-defined',
  'structure',
  'assumptions',
  'sources',
  'repeatable',
  'baseline-agrees',
  'approval',
  'best-method',
  'inflation',
  'arithmetic',
  'refreshed',
  'variances',
  'lessons',
  'history',
  'sensitivity',
  'uncertainty',
  'cross-checks',
  'independent',
  'activities',
  'sequence',
  'resources',
  'durations',
  'traceable',
  'critical-path',
  'float',
  'schedule-risk',
  'progress',
  'baseline',
  'contingency-level',
  'contingency-growth',
] as const;
export type PracticeId = (typeof PRACTICE_IDS)[number];

/** The limits of the checks, each with its basis. */
export const LIMIT_IDS = [
  'big-line',
  'longest-activity',
  'largest-float',
  'oldest-estimate',
  'independent-difference',
  'like-length',
  'history-low',
  'history-high',
  'history-wide',
  'fewest-drivers',
  'budget-confidence',
  'middle-confidence',
] as const;
export type LimitId = (typeof LIMIT_IDS)[number];

const guide = z.enum(['cost', 'schedule', 'history']);

/** Schema of the file of practices, limits and estimate classes. */
export const reviewFile = z.strictObject({
  guides: z.array(
    z.strictObject({
      id: guide,
      title: z.string(),
      ...provenanceSchema.shape,
      checkedOn: z.string().optional(),
    }),
  ),
  practices: z.array(
    z.strictObject({
      id: z.enum(PRACTICE_IDS),
      guide,
      characteristic: z.string(),
      practice: z.string(),
      looks: z.string(),
      remedy: z.string(),
    }),
  ),
  limits: z.array(z.strictObject({ id: z.enum(LIMIT_IDS), title: z.string(), figure: figureSchema })),
  classes: z.strictObject({
    ...provenanceSchema.shape,
    rows: z.array(
      z.strictObject({
        estimateClass: z.int().min(1).max(5),
        from: z.number(),
        to: z.number(),
        lowest: z.number(),
        lowestNarrow: z.number(),
        highestNarrow: z.number(),
        highest: z.number(),
        use: z.string(),
      }),
    ),
  }),
});
export type ReviewData = z.infer<typeof reviewFile>;

/** Schema of the file of recorded growth and of past hulls. */
export const growthFile = z.strictObject({
  growth: z
    .array(
      z.strictObject({
        hullClass: z.string(),
        lengthFeet: z.number().nullable(),
        factor: decimalText,
        what: z.string(),
        ...provenanceSchema.shape,
      }),
    )
    .min(1),
  history: z.array(
    z.strictObject({
      id: z.string(),
      hullClass: z.string(),
      lengthFeet: z.number().nullable(),
      country: z.string(),
      sunkYear: z.int(),
      priceYear: z.int(),
      total: decimalText,
      currency: z.string(),
      ships: z.int().min(1),
      isWholeProject: z.boolean(),
      scope: z.string(),
      ...provenanceSchema.shape,
      evidence: z.string(),
    }),
  ),
});
export type GrowthData = z.infer<typeof growthFile>;

/** Reads the file of practices. @throws ZodError when the file is not of that shape. */
export function readReviewData(data: unknown): ReviewData {
  return reviewFile.parse(data);
}

/** Reads the file of recorded growth. @throws ZodError when the file is not of that shape. */
export function readGrowthData(data: unknown): GrowthData {
  return growthFile.parse(data);
}

/** A limit of the checks. @throws BugError when the file has none of that name. */
export function limitOf(data: ReviewData, id: LimitId): number {
  const limit = data.limits.find(entry => entry.id === id);
  if (!limit) throw new BugError(`the review file has no limit ${id}`);
  return Number(limit.figure.value);
}
