import { z } from 'zod';
import { decimalText, figureSchema, key, provenanceSchema } from '../../base';
import { share, titleText, words } from './texts';

/** What can be done about an event, its price, and what probability and share of the impact it leaves. */
export const mitigationSchema = z.strictObject({
  title: titleText,
  cost: figureSchema,
  /** The line that pays for it; the line of the event’s first cost, or of its stage, unless given. */
  item: key.optional(),
  probability: figureSchema,
  impactLeft: figureSchema,
});

/** An event of the project’s register. With the id of an event of the library it stands in that one’s place. */
export const registerEventSchema = z.strictObject({
  id: key,
  title: titleText,
  owner: titleText.optional(),
  probability: figureSchema,
  /** Dollars of the month of spending, on the line of a work item. */
  costs: z.array(z.strictObject({ item: key, dollars: figureSchema })).default([]),
  /** Work days on the activity of a work item. */
  delays: z.array(z.strictObject({ item: key, workDays: figureSchema })).default([]),
  mitigation: mitigationSchema.optional(),
  /** Why it is not counted twice where a range or a driver moves the same figures. */
  note: words.optional(),
});

/**
 * A range that stands in place of the one of the library or of the document, by the id the drivers are listed with.
 * Low and high are its ends; of a lognormal its P10 and P90; of a discrete one its least and greatest outcome.
 */
export const rangeSchema = z.strictObject({
  given: z.string().min(1).max(200),
  low: decimalText,
  high: decimalText,
  shape: z.enum(['pert', 'triangular', 'uniform', 'lognormal', 'discrete']).default('pert'),
  /** Discrete only: what can come, each with its probability; they add up to 1. */
  outcomes: z
    .array(z.strictObject({ value: decimalText, probability: share }))
    .min(2)
    .max(20)
    .optional(),
  note: words.optional(),
  ...provenanceSchema.shape,
});

/** A survey on offer that would narrow a range: its price, and the share of the range left after it. */
export const surveyOfferSchema = z.strictObject({
  given: z.string().min(1).max(200),
  title: titleText,
  cost: figureSchema,
  rangeLeft: figureSchema,
});

const TWELVE = 12;

/** How sure: register, ranges, correlations, weather and how many trials. All of it may be left out. */
export const riskSchema = z.strictObject({
  trials: z.int().min(100).max(1_000_000).default(10_000),
  seed: z
    .int()
    .min(0)
    .max(2 ** 31 - 1)
    .default(1),
  /** The share of runs that budget and date are asked for at. */
  confidence: share.default('0.8'),
  /** `drawn`: operations wait for their windows in each trial. `allowance`: the plan’s allowance stands in all. */
  weather: z.enum(['drawn', 'allowance']).default('drawn'),
  register: z.array(registerEventSchema).max(200).default([]),
  /** Events of the library that do not apply here, each with its reason. */
  leftOut: z.array(z.strictObject({ event: key, reason: words.min(3) })).default([]),
  ranges: z.array(rangeSchema).max(1000).default([]),
  surveys: z.array(surveyOfferSchema).max(50).default([]),
  /** Rank correlations between two ranges or drivers, by their ids. */
  correlations: z
    .array(z.strictObject({ first: z.string().min(1), second: z.string().min(1), correlation: figureSchema }))
    .max(200)
    .default([]),
  /** Factors that stand in place of those of the library’s drivers. */
  drivers: z.array(z.strictObject({ driver: key, factor: figureSchema })).default([]),
  /** Workability of the site, in place of the library’s: share of workable days, January to December. */
  workability: z
    .array(
      z.strictObject({
        series: key,
        workable: z.array(share).length(TWELVE),
        persistence: share,
        ...provenanceSchema.shape,
      }),
    )
    .default([]),
});

export type RiskSection = z.infer<typeof riskSchema>;
