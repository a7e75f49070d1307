import { BugError } from '../base';
import { shareOf, sumCents, type Cents } from '../cash-flow';
import type { BondTier } from './rules';

/**
 * A mark-up of the contractor: a share, a scale of bond tiers or a lump sum. It stands on the direct cost, on
 * that and the mark-ups before it, or on the whole contract price, itself included (bond, tax).
 */
export type MarkUp = {
  readonly id: string;
  readonly title: string;
} & (
  | { readonly on: 'direct' | 'direct and before' | 'contract price'; readonly share: number }
  | { readonly on: 'contract price'; readonly tiers: readonly BondTier[] }
  | { readonly on: 'lump'; readonly amount: Cents }
);

/** A price built up from direct cost. */
export interface BuildUp {
  readonly direct: Cents;
  readonly markUps: readonly { readonly id: string; readonly title: string; readonly amount: Cents }[];
  readonly price: Cents;
}

const MOST_ROUNDS = 10_000;

/**
 * Builds a contract price: the mark-ups in their order; those on the contract price are found together, as the
 * least price that covers itself.
 * @throws BugError when the shares of the contract price leave nothing for the work.
 */
export function buildUp(direct: Cents, markUps: readonly MarkUp[]): BuildUp {
  const before = beforePrice(direct, markUps);
  const subtotal = direct + sumCents([...before.values()]);
  const price = coveringPrice(subtotal, markUps);
  return {
    direct,
    markUps: markUps.map(markUp => ({
      id: markUp.id,
      title: markUp.title,
      amount: before.get(markUp.id) ?? ofPrice(markUp, price),
    })),
    price,
  };
}

function beforePrice(direct: Cents, markUps: readonly MarkUp[]): Map<string, Cents> {
  const amounts = new Map<string, Cents>();
  for (const markUp of markUps) {
    if (markUp.on === 'lump') amounts.set(markUp.id, markUp.amount);
    if (markUp.on === 'direct') amounts.set(markUp.id, shareOf(direct, markUp.share));
    if (markUp.on === 'direct and before')
      amounts.set(markUp.id, shareOf(direct + sumCents([...amounts.values()]), markUp.share));
  }
  return amounts;
}

/** Starts at the subtotal and rises until it covers the mark-ups on itself; it can only rise, so it ends. */
function coveringPrice(subtotal: Cents, markUps: readonly MarkUp[]): Cents {
  let price = subtotal;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = subtotal + sumCents(markUps.map(markUp => ofPrice(markUp, price)));
    if (next === price) return price;
    price = next;
  }
  throw new BugError('the mark-ups on the contract price leave nothing for the work');
}

function ofPrice(markUp: MarkUp, price: Cents): Cents {
  if (markUp.on !== 'contract price') return 0;
  return 'tiers' in markUp ? bondPremium(price, markUp.tiers) : shareOf(price, markUp.share);
}

/** The premium of a bond on a price: each tier's share of the part of the price inside it, rounded by tier. */
export function bondPremium(price: Cents, tiers: readonly BondTier[]): Cents {
  let from = 0;
  const parts = tiers.map(tier => {
    const to = Math.min(price, tier.upTo ?? price);
    const part = shareOf(Math.max(0, to - from), tier.share);
    from = Math.max(from, to);
    return part;
  });
  return sumCents(parts);
}
