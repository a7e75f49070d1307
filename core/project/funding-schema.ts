import { z } from 'zod';
import { figureSchema, isoDate, key, provenanceSchema } from '../base';
import {
  CONTRACT_CLASSES,
  FORM_KINDS,
  INCOME_METHODS,
  activitySchema,
  mappingRowSchema,
  type FormKind,
} from '../funding';
import { STAGES } from '../work';
import { offerSchema } from './sections/offer';

const words = z.string().max(4000);
const titleText = z.string().min(1).max(200);
const months = z.int().min(0).max(60);
const stages = z.array(z.enum(STAGES)).min(1);

/** A source of funding; the sources with a form carry a budget of their own, the others match it. */
export const fundingSourceSchema = z.strictObject({
  id: key,
  title: titleText,
  kind: z.enum(['federal', 'state', 'applicant', 'other']),
  form: z.enum([...FORM_KINDS, 'none']),
  support: z.enum(['cash', 'in kind']),
  /** The largest share of the allowable cost it bears, in unit 1. */
  share: figureSchema.optional(),
  /** The most it gives, in USD, in all and to a stage. */
  cap: figureSchema.optional(),
  stageCaps: z.array(z.strictObject({ stage: z.enum(STAGES), cap: figureSchema })).default([]),
  stages: stages.optional(),
  /** Work items that are its contribution in kind, and how they are valued. */
  lines: z.array(key).optional(),
  valuation: provenanceSchema.optional(),
  period: z.strictObject({ start: isoDate, finish: isoDate }).optional(),
  preAwardApproved: z.boolean().default(false),
  mode: z.enum(['advance', 'reimbursement', 'own']),
  /** Months from payment to reimbursement. */
  lagMonths: months,
  programme: z.strictObject({ title: titleText, listingNumber: z.string() }).optional(),
  /** The line of SF-424C where this grantor wants indirect cost. */
  indirectLine: z.string().optional(),
});

/** A contract of the project: the contract work of some stages or items, and its class. There is no default class. */
export const contractSchema = z.strictObject({
  id: key,
  title: titleText,
  stages: stages.optional(),
  lines: z.array(key).optional(),
  class: z.enum(CONTRACT_CLASSES).optional(),
});

const indirectSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({ kind: z.literal('de minimis'), rate: figureSchema.optional() }),
  z.strictObject({ kind: z.literal('negotiated'), rate: figureSchema, agreement: titleText }),
]);

const mappingSchema = z.strictObject({
  'SF-424A': z.array(mappingRowSchema).optional(),
  'SF-424C': z.array(mappingRowSchema).optional(),
} satisfies Record<FormKind, unknown>);

/** Everything the user decides about the funding. */
export const fundingSchema = z.strictObject({
  awardDate: isoDate,
  /** The month in which the county's fiscal year starts, 1 to 12. */
  fiscalYearStart: z.int().min(1).max(12),
  sources: z.array(fundingSourceSchema).min(1).max(20),
  contracts: z.array(contractSchema).default([]),
  indirect: indirectSchema,
  programIncome: z
    .strictObject({ method: z.enum(INCOME_METHODS).optional(), costOfEarning: figureSchema.optional() })
    .default({}),
  notAllowable: z
    .array(z.strictObject({ item: key, amount: figureSchema.optional(), reason: words }))
    .default([]),
  /** What a form must know of an item and the estimate cannot tell: rent, travel, the price of one piece bought. */
  lineFacts: z
    .array(
      z.strictObject({
        item: key,
        rent: z.boolean().optional(),
        travel: z.boolean().optional(),
        unitPrice: figureSchema.optional(),
      }),
    )
    .optional(),
  /** How the contingency stands with the agency. */
  contingency: z.strictObject({
    byAcceptedMethod: z.boolean(),
    documented: z.boolean(),
    acceptedByAgency: z.boolean(),
    reserve: z.boolean(),
  }),
  county: z
    .strictObject({
      microPurchase: figureSchema.optional(),
      simplified: figureSchema.optional(),
      equipment: figureSchema.optional(),
    })
    .default({}),
  mapping: mappingSchema.default({}),
  activities: z.array(activitySchema).min(1).max(4).optional(),
  /** Terms of payment that differ from the usual ones. */
  payment: z
    .strictObject({
      retainage: figureSchema.optional(),
      releaseAfterMonths: months.optional(),
      contractPayLag: months.optional(),
      ownPayLag: months.optional(),
    })
    .default({}),
  /** The yearly rate at which the county carries its cash gap. */
  carryingRate: figureSchema.optional(),
});

/** The bid: what the owner asks prices for. Without items the library's own headings are the items. */
export const bidSchema = z.strictObject({
  items: z
    .array(
      z.strictObject({
        id: key,
        title: titleText,
        unit: z.string().min(1).max(40),
        quantity: figureSchema.optional(),
        /** The library's headings and the single work items it is made of. */
        headings: z.array(z.string()).default([]),
        lines: z.array(key).default([]),
        unitPriced: z.boolean().default(false),
        allowance: figureSchema.optional(),
      }),
    )
    .default([]),
  /** Alternates: what each adds to the base bid, or takes from it; without an amount it is asked for and not priced yet. */
  alternates: z
    .array(z.strictObject({ id: key, title: titleText, amount: figureSchema.optional() }))
    .default([]),
  /** Who bids and until when: the bidder’s, never the owner’s. */
  offer: offerSchema.optional(),
});

/** What the reef is worth and what it binds the owner to: the user's own figures, each with its source. */
export const benefitsSchema = z.strictObject({
  plateThickness: figureSchema.optional(),
  uses: z
    .array(
      z.strictObject({
        id: key,
        title: titleText,
        visitsPerYear: figureSchema,
        valuePerVisit: figureSchema,
      }),
    )
    .default([]),
  discountRate: figureSchema.optional(),
  horizonYears: z.int().min(1).max(200),
  firstBenefitYear: z.int().min(0).max(50),
  /** Obligations after the sinking beside those of the estimate; the usual ones when left out. */
  obligations: z
    .array(
      z.strictObject({
        id: key,
        title: titleText,
        party: titleText,
        costPerYear: figureSchema,
        firstYear: z.int().min(0).max(200),
        years: z.int().min(1).max(200),
      }),
    )
    .optional(),
  /** What would have to be paid only if it happens, such as removal when the ship moves; absent when nobody knows. */
  removalIfItMoves: z.strictObject({ party: titleText, amount: figureSchema.optional() }).optional(),
});

export type Funding = z.infer<typeof fundingSchema>;
export type FundingSourceChoice = z.infer<typeof fundingSourceSchema>;
export type BidChoices = z.infer<typeof bidSchema>;
export type Benefits = z.infer<typeof benefitsSchema>;
