import type { Finding } from '../base';
import { dollars, sumCents, type Cents } from '../cash-flow';
import { settleBid, type OpenedBid, type SettledBid, type TabulatedItem } from './bid-tabulation';
import { bidRule, type BidRules } from './rules';
import { unbalancedFindings } from './unbalanced';

/** One item across the bidders. */
export interface ComparisonRow {
  readonly item: TabulatedItem;
  readonly byBid: Readonly<Record<string, Cents>>;
  readonly median?: Cents;
}

/** A bidder's total and its place. */
export interface BidTotal {
  readonly bidId: string;
  readonly bidder: string;
  readonly total?: Cents;
  /** 1 is the lowest; absent when the bid has no total. */
  readonly rank?: number;
  readonly overEstimate?: Cents;
}

/** The bids against the owner's estimate, line by line. */
export interface BidComparison {
  readonly rows: readonly ComparisonRow[];
  readonly totals: readonly BidTotal[];
  readonly estimate: Cents;
  readonly findings: readonly Finding[];
}

const ENOUGH_FOR_A_MEDIAN = 3;

/**
 * Compares bids with the owner's estimate and with each other by stated rules: missing prices, wrong
 * extensions, outliers, unbalanced items, front loading, totals far below the estimate.
 * @source 23 CFR 635.114(c) to (e) asks for the look; the numbers of the rules are the owner's, with their basis.
 */
export function compareBids(
  items: readonly TabulatedItem[],
  bids: readonly OpenedBid[],
  rules: BidRules,
): BidComparison {
  const settled = bids.map(bid => settleBid(items, bid));
  const estimate = sumCents(items.map(item => item.estimate));
  const rows = items.map(item => comparisonRow(item, settled));
  return {
    rows,
    totals: rankTotals(settled, estimate),
    estimate,
    findings: [
      ...settled.flatMap(bid => bid.findings),
      ...settled.flatMap(bid => outliers(bid, rows, estimate, rules)),
      ...settled.flatMap(bid => lowTotal(bid, estimate, rules)),
      ...unbalancedFindings(items, settled, rules),
      ...(bids.length === 1 ? [oneBid()] : []),
    ],
  };
}

function comparisonRow(item: TabulatedItem, settled: readonly SettledBid[]): ComparisonRow {
  const priced = settled.flatMap(bid => {
    const amount = bid.amounts[item.id];
    return amount === undefined ? [] : [[bid.bid.id, amount] as const];
  });
  const median =
    priced.length >= ENOUGH_FOR_A_MEDIAN ? medianOf(priced.map(([, amount]) => amount)) : undefined;
  return { item, byBid: Object.fromEntries(priced), ...(median !== undefined && { median }) };
}

/** The middle amount; of an even count the mean of the two in the middle, to the cent. @param amounts at least one. */
export function medianOf(amounts: readonly Cents[]): Cents {
  const sorted = amounts.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  const middle = sorted.slice(Math.ceil(half) - 1, Math.floor(half) + 1);
  return Math.round(sumCents(middle) / middle.length);
}

function rankTotals(settled: readonly SettledBid[], estimate: Cents): BidTotal[] {
  const totals = settled.flatMap(bid => bid.total ?? []).toSorted((a, b) => a - b);
  return settled.map(({ bid, total }) => ({
    bidId: bid.id,
    bidder: bid.bidder,
    ...(total !== undefined && { total, rank: totals.indexOf(total) + 1, overEstimate: total - estimate }),
  }));
}

function outliers(
  { bid, amounts }: SettledBid,
  rows: readonly ComparisonRow[],
  estimate: Cents,
  rules: BidRules,
): Finding[] {
  const [far, farFromMiddle, weight] = [
    bidRule(rules, 'item-far-from-estimate'),
    bidRule(rules, 'item-far-from-median'),
    bidRule(rules, 'item-weight'),
  ];
  return rows.flatMap(({ item, median }) => {
    const amount = amounts[item.id];
    if (amount === undefined || item.estimate < weight * estimate) return [];
    const isFar = Math.abs(amount - item.estimate) > far * item.estimate;
    const isFarFromMiddle = median === undefined || Math.abs(amount - median) > farFromMiddle * median;
    return isFar && isFarFromMiddle ? [outlier(bid, item, amount)] : [];
  });
}

function outlier(bid: OpenedBid, item: TabulatedItem, amount: Cents): Finding {
  return {
    code: 'bid/outlier',
    weight: 'warns',
    place: `/bids/${bid.id}/${item.id}`,
    message: `${bid.bidder} asks ${dollars(amount)} for ${item.title}, the estimate is ${dollars(item.estimate)}`,
    meaning: 'the item or its scope may be read in two ways, by the bidder or by the estimate',
    remedy: 'check the quantity and the scope first, then ask the bidder how the price is made up',
    rule: '23 CFR 635.114(c)',
  };
}

function lowTotal({ bid, total }: SettledBid, estimate: Cents, rules: BidRules): Finding[] {
  if (total === undefined || total >= estimate * (1 - bidRule(rules, 'low-total'))) return [];
  return [
    {
      code: 'bid/low-total',
      weight: 'warns',
      place: `/bids/${bid.id}`,
      message: `${bid.bidder} bids ${dollars(total)}, the estimate is ${dollars(estimate)}`,
      meaning: 'work may have been left out, and a contractor at a loss looks for changes',
      remedy: 'have the bidder confirm scope and price in writing before award',
    },
  ];
}

function oneBid(): Finding {
  return {
    code: 'bid/one-bid',
    weight: 'notes',
    place: '/bids',
    message: 'only one bid came in, so the bids cannot be compared with each other',
    meaning: 'nothing but the estimate says whether the price is fair',
    remedy: 'compare it with the estimate item by item, and keep the record of who was asked',
  };
}
