import { z } from 'zod';
import { BugError, figureSchema, isoDate, type Figure } from '../base';
import type { Cents } from '../cash-flow';

/** The rules that a grant budget needs, each with the award date from which it applies. */
export const RULE_IDS = [
  'de-minimis-rate',
  'subaward-cap',
  'equipment-threshold',
  'micro-purchase',
  'simplified-acquisition',
  'fixed-amount-subaward',
  'single-audit',
  'sport-fish-federal-share',
  'state-grant-match',
] as const;
export type RuleId = (typeof RULE_IDS)[number];

/** Usual terms of payment, as starting values for the user. */
export const TERM_IDS = ['retainage', 'release-after', 'contract-pay-lag', 'reimbursement-lag'] as const;
export type TermId = (typeof TERM_IDS)[number];

/** Schema of the file of dated rules. */
export const fundingFile = z.strictObject({
  rules: z.array(
    z.strictObject({
      id: z.enum(RULE_IDS),
      title: z.string(),
      from: isoDate.nullable(),
      figure: figureSchema,
    }),
  ),
  terms: z.array(z.strictObject({ id: z.enum(TERM_IDS), title: z.string(), figure: figureSchema })),
});
export type FundingRules = z.infer<typeof fundingFile>;
export type DatedRule = FundingRules['rules'][number];

/** Thresholds of the county or state that may be stricter than the federal ones. */
export interface CountyLimits {
  readonly microPurchase?: Cents | undefined;
  readonly simplified?: Cents | undefined;
  readonly equipment?: Cents | undefined;
}

/** Reads the file of dated rules. @throws ZodError when the file is not of that shape. */
export function readFundingRules(data: unknown): FundingRules {
  return fundingFile.parse(data);
}

/**
 * The rule in force for an award: the latest of that name that starts on or before the award date.
 * @param awardDate `YYYY-MM-DD`. @throws BugError when the file has no such rule.
 */
export function ruleAt(rules: FundingRules, id: RuleId, awardDate: string): DatedRule {
  const inForce = rules.rules.filter(
    rule => rule.id === id && (rule.from === null || rule.from <= awardDate),
  );
  const latest = inForce.toSorted((a, b) => ((a.from ?? '') < (b.from ?? '') ? -1 : 1)).at(-1);
  if (!latest) throw new BugError(`the funding rules have no ${id} for ${awardDate}`);
  return latest;
}

/** A figure in dollars as cents. */
export function centsOf(figure: Figure): Cents {
  return Math.round(Number(figure.value) * 100);
}

/** A figure that is a share or a count, as a number. */
export function numberOf(figure: Figure): number {
  return Number(figure.value);
}

/** A usual term of payment. @throws BugError when the file has no such term. */
export function termOf(rules: FundingRules, id: TermId): number {
  const term = rules.terms.find(entry => entry.id === id);
  if (!term) throw new BugError(`the funding rules have no term ${id}`);
  return numberOf(term.figure);
}
