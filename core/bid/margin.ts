import type { Cents } from '../cash-flow';

/** What is left of a price at a cost. */
export interface Margin {
  readonly cost: Cents;
  /** Price less cost; negative is a loss. */
  readonly margin: Cents;
  /** The margin as a share of the price. */
  readonly share: number;
}

/** The margin of a bid at the middle and at the careful cost, and where it breaks even. */
export interface BidMargin {
  readonly price: Cents;
  readonly atPlan: Margin;
  readonly atP50: Margin;
  readonly atP80: Margin;
  /** By how much the plan cost may grow before the margin is gone, as a share of it. */
  readonly breakEvenGrowth: number;
  /** The share of simulated costs above the price; absent without a simulation. */
  readonly chanceOfLoss?: number;
}

/**
 * The margin of a price against simulated cost.
 * @param plan the contractor's cost in the plan, without profit. @param costs simulated costs, in any order.
 */
export function bidMargin(
  price: Cents,
  plan: Cents,
  percentiles: { readonly p50: Cents; readonly p80: Cents },
  costs?: readonly Cents[],
): BidMargin {
  return {
    price,
    atPlan: marginAt(price, plan),
    atP50: marginAt(price, percentiles.p50),
    atP80: marginAt(price, percentiles.p80),
    breakEvenGrowth: breakEvenGrowth(price, plan),
    ...(costs &&
      costs.length > 0 && { chanceOfLoss: costs.filter(cost => cost > price).length / costs.length }),
  };
}

/** What is left of a price at a cost. @param price above nothing. */
export function marginAt(price: Cents, cost: Cents): Margin {
  return { cost, margin: price - cost, share: (price - cost) / price };
}

/** By how much a cost may grow before it eats the price, as a share of the cost. */
export function breakEvenGrowth(price: Cents, plan: Cents): number {
  return price / plan - 1;
}
