import type { Cents } from '../cash-flow';
import { dollarsToCents, type AlternativeId, type BenefitRules } from './rules';

/** What else could be done with the ship, by published cost per ship, at its own price year and at this one's. */
export interface Alternative {
  readonly id: AlternativeId;
  readonly title: string;
  readonly priceYear?: number;
  /** Over how many ships the published cost is a mean. */
  readonly ships?: number;
  /** Absent where nobody has published a cost. */
  readonly published?: Cents;
  /** In the money of the estimate; absent when the index does not reach. */
  readonly today?: Cents;
  readonly low?: Cents;
  readonly high?: Cents;
  /** The estimate over this cost, as a cross-check. */
  readonly estimateRatio?: number;
  readonly source: string;
}

/**
 * The alternatives beside the estimate. Published figures are means over many ships of a large programme, of all sizes
 * and not scaled to this one: a cross-check, never a quote for this ship. One without a published cost stands there
 * without a figure.
 * @param priceFactor from a price year to the money of the estimate; `undefined` when the index has no such year.
 */
export function alternatives(
  rules: BenefitRules,
  estimate: Cents,
  priceFactor: (fromYear: number) => number | undefined,
): Alternative[] {
  return rules.alternatives.map(({ id, title, figure, ships, why = 'no published cost' }) => {
    if (figure === undefined) return { id, title, source: why };
    const factor = figure.year === undefined ? undefined : priceFactor(figure.year);
    const at = (value: string | undefined): Cents | undefined =>
      value === undefined || factor === undefined ? undefined : Math.round(dollarsToCents(value) * factor);
    const [today, low, high] = [at(figure.value), at(figure.low), at(figure.high)];
    return {
      id,
      title,
      ...(figure.year !== undefined && { priceYear: figure.year }),
      ...(ships !== undefined && { ships }),
      published: dollarsToCents(figure.value),
      ...(today !== undefined && { today, estimateRatio: estimate / today }),
      ...(low !== undefined && { low }),
      ...(high !== undefined && { high }),
      source: figure.source,
    };
  });
}
