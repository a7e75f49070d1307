import type { Finding } from '../../base';
import {
  compareBids,
  type BidComparison,
  type BidPrice,
  type OpenedBid,
  type ScheduleOfValues,
  type TabulatedItem,
} from '../../bid';
import type { Cents } from '../../cash-flow';
import type { BidChoices, PriceRow, ReceivedBid } from '../../project';
import type { Evaluation } from '../evaluate';
import { bidView } from './bid-view';
import { faultsOfSection } from './faulty-section';
import { centsOfFigure } from './grant-input';
import { shippedBookRules, type BookRules } from './shipped-rules';

/** What a bidder asks for an alternate of the bid form. */
export interface AlternateAsked {
  readonly alternateId: string;
  readonly title: string;
  /** What the owner reckons with; absent while he has no amount for it. */
  readonly estimate?: Cents;
  readonly byBid: Readonly<Record<string, Cents>>;
}

/** The bids received against the owner's estimate. The comparison is absent while there is no bid or no estimate. */
export interface TabulationView {
  readonly items: readonly TabulatedItem[];
  readonly bids: readonly OpenedBid[];
  readonly comparison?: BidComparison;
  readonly alternates: readonly AlternateAsked[];
  readonly findings: readonly Finding[];
}

/** The tabulation of the bids received: item by item, totals in their order, outliers and unbalanced items by stated rules. */
export function tabulationView(
  evaluation: Evaluation,
  rules: BookRules = shippedBookRules(),
): TabulationView {
  const nothing = { items: [], bids: [], alternates: [] };
  const { receivedBids = [], bid } = evaluation.project;
  if (receivedBids.length === 0) return { ...nothing, findings: [] };
  const { schedule, findings } = bidView(evaluation);
  const faults = faultsOfSection(evaluation, '/receivedBids');
  if (schedule === undefined || faults.length > 0) return { ...nothing, findings: [...findings, ...faults] };
  const items = schedule.items.map(one => tabulated(one, bid));
  const bids = receivedBids.map(openedBid);
  const comparison = compareBids(items, bids, rules.bid);
  return {
    items,
    bids,
    comparison,
    alternates: schedule.alternates.map(({ id, title, amount }) => ({
      alternateId: id,
      title,
      ...(amount !== undefined && { estimate: amount }),
      byBid: Object.fromEntries(receivedBids.flatMap(one => alternateOf(one, id))),
    })),
    findings: [...comparison.findings.map(inDocument), ...receivedBids.flatMap(one => strangers(one, items))],
  };
}

/** A finding of the comparison with its place in the document: the bid, or what it has for an item. */
function inDocument(finding: Finding): Finding {
  const [, , bid, item] = finding.place.split('/');
  const place = ['/receivedBids', bid, ...(item === undefined ? [] : ['prices', item])];
  return { ...finding, place: place.filter(step => step !== undefined).join('/') };
}

function tabulated(
  { item, amount }: ScheduleOfValues['items'][number],
  bid: BidChoices | undefined,
): TabulatedItem {
  const { id, title, unit, quantity, allowance } = item;
  const given = bid?.items.find(one => one.id === id)?.quantity;
  return {
    id,
    title,
    unit,
    quantity,
    ...(given?.low !== undefined && { lowQuantity: Number(given.low) }),
    ...(given?.high !== undefined && { highQuantity: Number(given.high) }),
    estimate: amount,
    ...(allowance !== undefined && { isAllowance: true }),
  };
}

function openedBid({ id, bidder, prices }: ReceivedBid): OpenedBid {
  return {
    id,
    bidder,
    prices: Object.fromEntries(
      prices.map(({ item, unitPrice, amount }): [string, BidPrice] => [
        item,
        {
          ...(unitPrice && { unitPrice: centsOfFigure(unitPrice) }),
          ...(amount && { amount: centsOfFigure(amount) }),
        },
      ]),
    ),
  };
}

function alternateOf({ id, alternates }: ReceivedBid, alternateId: string): [string, Cents][] {
  const asked = alternates.find(one => one.item === alternateId);
  return asked === undefined ? [] : [[id, centsOfFigure(asked.amount)]];
}

function strangers({ id, bidder, prices }: ReceivedBid, items: readonly TabulatedItem[]): Finding[] {
  return prices
    .filter(price => !items.some(item => item.id === price.item))
    .map(price => ({
      code: 'bid/price-for-no-item',
      weight: 'warns',
      place: `/receivedBids/${id}/prices/${price.item}`,
      message: `${bidder} has a price for ${price.item}, which is no item of the bid form`,
      meaning: 'the price is left out of its total',
      remedy: 'set it against the item that is meant',
    }));
}

/**
 * The rows of an imported bid tabulation as bids: one for each bidder, a price for one unit of each item.
 * @param rows what the import of prices gave; a row without a bidder is left out.
 */
export function bidsOfPrices(rows: readonly PriceRow[]): ReceivedBid[] {
  const bidders = [...new Set(rows.map(row => row.vendor).filter(vendor => vendor !== ''))];
  return bidders.map((bidder, index) => ({
    id: `bid-${index + 1}`,
    bidder,
    prices: rows
      .filter(row => row.vendor === bidder)
      .map(({ item, price }) => ({ item, unitPrice: { ...price, unit: 'USD' } })),
    alternates: [],
  }));
}
