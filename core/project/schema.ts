import { z } from 'zod';
import { figureSchema, isoDate, key } from '../base';
import { importMappingSchema } from './imports/mapping';
import { workItemSchema } from '../work';
import { benefitsSchema, bidSchema, fundingSchema } from './funding-schema';
import { contingencySchema } from './sections/contingency';
import { decisionSchema } from './sections/decision';
import {
  adjustmentSchema,
  calendarsSchema,
  plannedDate,
  quoteSchema,
  relationshipSchema,
  scenarioSchema,
  type changeSchema,
} from './sections/plan';
import { receivedBidSchema } from './sections/received-bids';
import { recordSchema } from './sections/record';
import { riskSchema } from './sections/risk';
import { surveySchema } from './sections/survey';
import { titleText, words, year } from './sections/texts';
import { uprightSchema } from './sections/upright';
import { siteSchema, vesselSchema } from './sections/vessel';

export * from './sections/contingency';
export * from './sections/decision';
export * from './sections/offer';
export * from './sections/plan';
export * from './sections/received-bids';
export * from './sections/record';
export * from './sections/risk';
export * from './sections/survey';
export * from './sections/upright';
export * from './sections/vessel';

/** The version of the document format this program writes. */
export const FORMAT = 'reefwright-project';
export const VERSION = 1;

export const projectSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  title: titleText,
  /** Set on invented examples: every paper says so. */
  sample: z.boolean(),
  reader: z.enum(['grant', 'bid', 'comparison']),
  statusDate: isoDate.optional(),
  vessel: vesselSchema,
  site: siteSchema,
  upright: uprightSchema.optional(),
  survey: surveySchema.default({ intake: {}, measured: [], laboratory: [] }),
  rates: z.strictObject({
    book: key,
    priceDate: plannedDate,
    /** Prices held at the mean of this year, nothing escalated beyond it. */
    fixedPriceYear: year.optional(),
    /** The user’s wage table: it stands before the rate book, and a rate below it is a finding. */
    wages: z.array(z.strictObject({ trade: key, figure: figureSchema })).default([]),
    overrides: z
      .array(z.strictObject({ at: z.string(), figure: figureSchema, note: words.optional() }))
      .default([]),
  }),
  quotes: z.array(quoteSchema).default([]),
  calendars: calendarsSchema,
  options: z.record(key, z.string()),
  items: z.array(adjustmentSchema).default([]),
  /** Work items of this project alone, in the form of the library. */
  ownItems: z.array(workItemSchema).default([]),
  /** Relationships of this project alone, beside those of the library. */
  relationships: z.array(relationshipSchema).default([]),
  contingency: contingencySchema,
  risk: riskSchema.optional(),
  funding: fundingSchema.optional(),
  bid: bidSchema.optional(),
  benefits: benefitsSchema.optional(),
  /** Bids as they were opened, for the comparison. */
  receivedBids: z.array(receivedBidSchema).max(40).optional(),
  /** Approval, plan kept, independent estimate, lessons. */
  record: recordSchema.optional(),
  decision: decisionSchema.optional(),
  attachments: z
    .array(
      z.strictObject({
        name: titleText,
        sha256: z.string(),
        page: z.int().optional(),
        note: words.optional(),
      }),
    )
    .default([]),
  /** How the columns of imported files become fields. */
  imports: z.array(importMappingSchema).optional(),
  notes: z.array(z.strictObject({ at: z.string(), text: words })).default([]),
  scenarios: z.array(scenarioSchema).min(1).max(26),
});

export type Project = z.infer<typeof projectSchema>;
export type Vessel = z.infer<typeof vesselSchema>;
export type Site = z.infer<typeof siteSchema>;
export type Survey = z.infer<typeof surveySchema>;
export type Quote = z.infer<typeof quoteSchema>;
export type Adjustment = z.infer<typeof adjustmentSchema>;
export type Scenario = z.infer<typeof scenarioSchema>;
export type Relationship = z.infer<typeof relationshipSchema>;
export type Change = z.infer<typeof changeSchema>;
