import type { Finding } from '../base';
import {
  dollars,
  reconcile,
  shareOf,
  sumCents,
  type Cents,
  type EstimateLine,
  type Reconciliation,
} from '../cash-flow';

/** An item of the bid: what the owner asks a price for, and the lines of work it is made of. */
export interface BidItem {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  /** Quantity in that unit; 1 for a lump sum. */
  readonly quantity: number;
  readonly lineIds: readonly string[];
  /** Whether a price is asked for one unit. */
  readonly isUnitPriced: boolean;
  /** An allowance: the owner sets the amount, and the bid carries it as set. */
  readonly allowance?: Cents;
}

/** An alternate: what it adds to the base bid, or takes from it (negative). */
export interface Alternate {
  readonly id: string;
  readonly title: string;
  /** Absent while nobody has priced it. */
  readonly amount?: Cents;
}

/** An item with its price. */
export interface PricedItem {
  readonly item: BidItem;
  /** What its lines cost at the contractor's price. */
  readonly cost: Cents;
  readonly unitPrice?: Cents;
  /** What the bid sheet says: the unit price times the quantity, the allowance, or the cost as a lump sum. */
  readonly amount: Cents;
}

/** The schedule of values: every contract line in exactly one item, and how it comes from the estimate. */
export interface ScheduleOfValues {
  readonly items: readonly PricedItem[];
  readonly baseBid: Cents;
  readonly alternates: readonly Alternate[];
  readonly reconciliation: Reconciliation;
  readonly findings: readonly Finding[];
}

/**
 * Prices the items of a bid from the contract lines of the estimate. From the estimate to the base bid: less the
 * owner's cost is the contract price; unit prices are whole cents and allowances stand as set, each a named step.
 */
export function scheduleOfValues(
  lines: readonly EstimateLine[],
  items: readonly BidItem[],
  alternates: readonly Alternate[] = [],
): ScheduleOfValues {
  const contract = lines.filter(line => line.contract);
  const priced = items.map(item => priceItem(item, contract));
  const baseBid = sumCents(priced.map(one => one.amount));
  return {
    items: priced,
    baseBid,
    alternates,
    reconciliation: reconcileBid(lines, priced, baseBid),
    findings: [...checkItems(contract, items), ...checkAlternates(alternates)],
  };
}

function priceItem(item: BidItem, contract: readonly EstimateLine[]): PricedItem {
  const cost = sumCents(contract.filter(line => item.lineIds.includes(line.id)).map(line => line.total));
  if (item.allowance !== undefined) return { item, cost, amount: item.allowance };
  if (!item.isUnitPriced || item.quantity <= 0) return { item, cost, amount: cost };
  const unitPrice = Math.round(cost / item.quantity);
  return { item, cost, unitPrice, amount: extension(unitPrice, item.quantity) };
}

/** A unit price times a quantity, rounded once to the cent. */
export function extension(unitPrice: Cents, quantity: number): Cents {
  return shareOf(unitPrice, quantity);
}

function reconcileBid(
  lines: readonly EstimateLine[],
  priced: readonly PricedItem[],
  baseBid: Cents,
): Reconciliation {
  const owners = lines.filter(line => !line.contract);
  const allowances = priced.filter(one => one.item.allowance !== undefined);
  const rounded = priced.filter(one => one.item.allowance === undefined);
  return reconcile(
    'bid',
    { id: 'estimate', title: 'Estimate', amount: sumCents(lines.map(line => line.total)) },
    [
      {
        id: 'owner',
        title: "Owner's own cost",
        amount: -sumCents(owners.map(line => line.total)),
        lineIds: owners.map(line => line.id),
      },
      { id: 'unit-prices', title: 'Rounding of unit prices to the cent', amount: over(rounded) },
      { id: 'allowances', title: 'Allowances as the owner sets them', amount: over(allowances) },
    ],
    { id: 'base-bid', title: 'Base bid', amount: baseBid },
  );
}

function over(priced: readonly PricedItem[]): Cents {
  return sumCents(priced.map(one => one.amount - one.cost));
}

function checkItems(contract: readonly EstimateLine[], items: readonly BidItem[]): Finding[] {
  const used = items.flatMap(item => item.lineIds);
  const unpriced = contract.filter(line => !used.includes(line.id));
  const twice = contract.filter(line => used.filter(id => id === line.id).length > 1);
  const unknown = used.filter(id => !contract.some(line => line.id === id));
  const empty = items.filter(item => item.isUnitPriced && item.quantity <= 0);
  return [
    ...unpriced.map(line =>
      blocked(
        'bid/line-in-no-item',
        `/lines/${line.id}`,
        `${line.title}, ${dollars(line.total)}, is in no bid item`,
        'put it into an item',
      ),
    ),
    ...twice.map(line =>
      blocked(
        'bid/line-in-two-items',
        `/lines/${line.id}`,
        `${line.title} is in more than one bid item`,
        'leave it in one',
      ),
    ),
    ...unknown.map(id =>
      blocked(
        'bid/item-without-line',
        `/lines/${id}`,
        `a bid item names ${id}, which is no contract line`,
        'take it out of the item',
      ),
    ),
    ...empty.map(item =>
      blocked(
        'bid/quantity',
        `/bid/items/${item.id}`,
        `${item.title} is priced by unit and has no quantity`,
        'enter its quantity',
      ),
    ),
  ];
}

function checkAlternates(alternates: readonly Alternate[]): Finding[] {
  return alternates
    .filter(({ amount }) => amount === undefined)
    .map(({ id, title }) => ({
      code: 'bid/alternate-without-price',
      weight: 'warns',
      place: `/bid/alternates/${id}`,
      message: `The alternate "${title}" has no price`,
      meaning: 'it stands in the bid without one, and whoever asked for it may reject the bid',
      remedy: 'enter what it adds, or what it takes with a minus; 0 where it changes nothing',
    }));
}

function blocked(code: string, place: string, message: string, remedy: string): Finding {
  const meaning = 'the bid would not hold the contract work, each part once, so it is not made';
  return { code, weight: 'blocks', place, message, meaning, remedy };
}
