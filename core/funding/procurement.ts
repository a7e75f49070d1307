import type { Cents } from '../cash-flow';
import { centsOf, ruleAt, type CountyLimits, type FundingRules } from './rules';

/** How a purchase must be made. */
export type ProcurementMethod = 'micro-purchase' | 'simplified acquisition' | 'formal';

/** The two thresholds in force, and whose they are. */
export interface ProcurementLimits {
  readonly microPurchase: Cents;
  readonly microPurchaseBy: 'federal' | 'county';
  readonly simplified: Cents;
  readonly simplifiedBy: 'federal' | 'county';
}

/**
 * The procurement thresholds for an award; where the county's own limit is lower, it governs.
 * @source 2 CFR 200.320 with 48 CFR 2.101; 2 CFR 200.318(a) for the recipient's own stricter rules.
 */
export function procurementLimits(
  rules: FundingRules,
  awardDate: string,
  county: CountyLimits,
): ProcurementLimits {
  const micro = centsOf(ruleAt(rules, 'micro-purchase', awardDate).figure);
  const simplified = centsOf(ruleAt(rules, 'simplified-acquisition', awardDate).figure);
  const countyMicro = county.microPurchase ?? micro;
  const countySimplified = county.simplified ?? simplified;
  return {
    microPurchase: Math.min(micro, countyMicro),
    microPurchaseBy: countyMicro < micro ? 'county' : 'federal',
    simplified: Math.min(simplified, countySimplified),
    simplifiedBy: countySimplified < simplified ? 'county' : 'federal',
  };
}

/** The method a purchase of this amount needs: each threshold is the highest amount still under it. */
export function procurementMethod(amount: Cents, limits: ProcurementLimits): ProcurementMethod {
  if (amount <= limits.microPurchase) return 'micro-purchase';
  return amount <= limits.simplified ? 'simplified acquisition' : 'formal';
}

/**
 * Whether one piece is equipment or a supply: equipment from the threshold of the award date, or from the
 * county's own level where that is lower.
 * @source 2 CFR 200.1, definition of equipment.
 */
export function pieceKind(
  unitCost: Cents,
  rules: FundingRules,
  awardDate: string,
  county: CountyLimits,
): 'equipment-purchase' | 'supply-purchase' {
  const federal = centsOf(ruleAt(rules, 'equipment-threshold', awardDate).figure);
  return unitCost >= Math.min(federal, county.equipment ?? federal)
    ? 'equipment-purchase'
    : 'supply-purchase';
}
