import type { Finding } from '../base';
import { dollars, sumCents, type Cents } from '../cash-flow';
import { extension } from './schedule-of-values';

/** An item of the owner's bid form with the owner's estimate, in the order the work is done. */
export interface TabulatedItem {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly quantity: number;
  /** The range the quantity may turn out in, when it was not measured. */
  readonly lowQuantity?: number;
  readonly highQuantity?: number;
  readonly estimate: Cents;
  /** An allowance: the owner has set the amount, and every bid must carry it as set. */
  readonly isAllowance?: boolean;
}

/** What a bidder wrote for an item: a unit price, an amount, or both. */
export interface BidPrice {
  readonly unitPrice?: Cents;
  readonly amount?: Cents;
}

/** A bid as it was opened. */
export interface OpenedBid {
  readonly id: string;
  readonly bidder: string;
  readonly prices: Readonly<Record<string, BidPrice>>;
}

/** A bid with its amounts settled: where unit price and amount disagree, the unit price governs. */
export interface SettledBid {
  readonly bid: OpenedBid;
  readonly amounts: Readonly<Record<string, Cents>>;
  /** Absent while an item has no price. */
  readonly total?: Cents;
  readonly findings: readonly Finding[];
}

/** Settles the amounts of a bid and finds missing prices and wrong extensions. */
export function settleBid(items: readonly TabulatedItem[], bid: OpenedBid): SettledBid {
  const amounts: Record<string, Cents> = {};
  const findings: Finding[] = [];
  for (const item of items) {
    const price = bid.prices[item.id];
    const extended = price?.unitPrice === undefined ? undefined : extension(price.unitPrice, item.quantity);
    const amount = extended ?? price?.amount;
    if (amount === undefined) findings.push(missing(bid, item));
    else amounts[item.id] = amount;
    if (extended !== undefined && price?.amount !== undefined && price.amount !== extended)
      findings.push(wrongExtension(bid, item, price.amount, extended));
    if (item.isAllowance === true && amount !== undefined && amount !== item.estimate)
      findings.push(changedAllowance(bid, item, amount));
  }
  const isWhole = items.every(item => amounts[item.id] !== undefined);
  return { bid, amounts, ...(isWhole && { total: sumCents(Object.values(amounts)) }), findings };
}

function missing(bid: OpenedBid, item: TabulatedItem): Finding {
  return {
    code: 'bid/price-missing',
    weight: 'blocks',
    place: `/bids/${bid.id}/${item.id}`,
    message: `${bid.bidder} gives no price for ${item.title}`,
    meaning: 'the bid has no total and cannot be ranked',
    remedy: 'treat it as the bidding rules say; ask counsel before asking the bidder',
  };
}

function changedAllowance(bid: OpenedBid, item: TabulatedItem, amount: Cents): Finding {
  return {
    code: 'bid/allowance-changed',
    weight: 'warns',
    place: `/bids/${bid.id}/${item.id}`,
    message: `${bid.bidder} writes ${dollars(amount)} for the allowance ${item.title}, which is set at ${dollars(item.estimate)}`,
    meaning: 'the bids cannot be compared on this item',
    remedy: 'treat it as the bidding rules say',
  };
}

function wrongExtension(bid: OpenedBid, item: TabulatedItem, written: Cents, extended: Cents): Finding {
  return {
    code: 'bid/wrong-extension',
    weight: 'warns',
    place: `/bids/${bid.id}/${item.id}`,
    message: `${bid.bidder} writes ${dollars(written)} for ${item.title}; the unit price gives ${dollars(extended)}`,
    meaning: 'the unit price governs, as bidding rules usually have it',
    remedy: 'confirm with the rules of this bid',
  };
}
