import { z } from 'zod';
import { BugError, decimalText, figureSchema, provenanceSchema } from '../base';
import type { Cents } from '../cash-flow';

/** The stated rules by which bids are compared. */
export const BID_RULE_IDS = [
  'item-far-from-estimate',
  'item-far-from-median',
  'item-weight',
  'unbalanced-ratio',
  'front-loaded',
  'low-total',
] as const;
export type BidRuleId = (typeof BID_RULE_IDS)[number];

/** Schema of the file of bid rules and bond tiers. */
export const bidFile = z.strictObject({
  bondTiers: z.strictObject({
    ...provenanceSchema.shape,
    tiers: z.array(z.strictObject({ upTo: decimalText.nullable(), share: decimalText })).min(1),
  }),
  rules: z.array(z.strictObject({ id: z.enum(BID_RULE_IDS), title: z.string(), figure: figureSchema })),
});
export type BidRules = z.infer<typeof bidFile>;

/** A tier of a bond premium: its share of the part of the price up to a limit; the last has no limit. */
export interface BondTier {
  readonly upTo?: Cents;
  readonly share: number;
}

/** Reads the file of bid rules. @throws ZodError when the file is not of that shape. */
export function readBidRules(data: unknown): BidRules {
  return bidFile.parse(data);
}

/** The share a rule states. @throws BugError when the file has no such rule. */
export function bidRule(rules: BidRules, id: BidRuleId): number {
  const rule = rules.rules.find(entry => entry.id === id);
  if (!rule) throw new BugError(`the bid rules have no ${id}`);
  return Number(rule.figure.value);
}

/** The bond tiers of the file, in cents. */
export function bondTiersOf(rules: BidRules): BondTier[] {
  return rules.bondTiers.tiers.map(tier => ({
    share: Number(tier.share),
    ...(tier.upTo !== null && { upTo: Math.round(Number(tier.upTo) * 100) }),
  }));
}
