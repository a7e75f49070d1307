import { BugError, type Finding } from '../base';
import { dollars, sumCents, type Cents } from '../cash-flow';
import type { SettledBid, TabulatedItem } from './bid-tabulation';
import { bidRule, type BidRules } from './rules';

/**
 * Finds unbalanced bids. Mathematically unbalanced: an item's price over its estimate is far off the whole
 * bid's. Front-loaded: the early half is dearer than the late half. Materially unbalanced: the lowest bid is
 * mathematically unbalanced, and at a quantity inside an item's range it is no longer the lowest. A balanced
 * lowest bid that turns on a quantity gets a note only.
 * @source definitions of 23 CFR 635.102; award rules of 635.114(d) and (e).
 */
export function unbalancedFindings(
  items: readonly TabulatedItem[],
  settled: readonly SettledBid[],
  rules: BidRules,
): Finding[] {
  const whole = settled.flatMap(({ bid, amounts, total }) =>
    total !== undefined && total > 0 ? [{ bid, amounts, total }] : [],
  );
  const lowest = whole.toSorted((a, b) => a.total - b.total).slice(0, 1);
  return [
    ...whole.flatMap(bid => mathematically(items, bid, rules)),
    ...whole.flatMap(bid => frontLoaded(items, bid, rules)),
    ...lowest.flatMap(bid => turningOnQuantity(items, bid, whole, rules)),
  ];
}

/** A bid with a price for every item. */
type WholeBid = Pick<SettledBid, 'bid' | 'amounts'> & { readonly total: Cents };

/** What a whole bid asks for an item. @throws BugError when it has no price: then it is not whole. */
function asked({ bid, amounts }: WholeBid, item: TabulatedItem): Cents {
  const amount = amounts[item.id];
  if (amount === undefined) throw new BugError(`the bid ${bid.id} has no price for ${item.id}`);
  return amount;
}

function mathematically(items: readonly TabulatedItem[], whole: WholeBid, rules: BidRules): Finding[] {
  const estimate = sumCents(items.map(item => item.estimate));
  const bidRatio = whole.total / estimate;
  const [off, weight] = [bidRule(rules, 'unbalanced-ratio'), bidRule(rules, 'item-weight')];
  return items
    .filter(item => item.estimate > 0 && item.estimate >= weight * estimate)
    .flatMap(item => {
      const amount = asked(whole, item);
      const ratio = amount / item.estimate / bidRatio;
      if (Math.abs(ratio - 1) <= off) return [];
      return [
        warns(
          'bid/mathematically-unbalanced',
          `/bids/${whole.bid.id}/${item.id}`,
          `${whole.bid.bidder} asks ${dollars(amount)} for ${item.title}: ${ratio.toFixed(2)} times the level of its whole bid`,
          'check the quantity; if it may change, see what the change costs',
          '23 CFR 635.102',
        ),
      ];
    });
}

function frontLoaded(items: readonly TabulatedItem[], whole: WholeBid, rules: BidRules): Finding[] {
  const estimate = sumCents(items.map(item => item.estimate));
  let running: Cents = 0;
  const early = items.filter(item => {
    running += item.estimate;
    return running * 2 <= estimate;
  });
  const late = items.filter(item => !early.includes(item));
  const level = (part: readonly TabulatedItem[]): number =>
    sumCents(part.map(item => asked(whole, item))) / sumCents(part.map(item => item.estimate));
  if (early.length === 0) return [];
  const lead = level(early) / level(late) - 1;
  if (lead <= bidRule(rules, 'front-loaded')) return [];
  return [
    warns(
      'bid/front-loaded',
      `/bids/${whole.bid.id}`,
      `${whole.bid.bidder} prices the early half ${(lead * 100).toFixed(0)} per cent above the late half`,
      'pay by a schedule of values that follows the work, or ask for a balanced one',
      '23 CFR 635.102',
    ),
  ];
}

function turningOnQuantity(
  items: readonly TabulatedItem[],
  lowest: WholeBid,
  whole: readonly WholeBid[],
  rules: BidRules,
): Finding[] {
  const others = whole.filter(bid => bid.bid.id !== lowest.bid.id);
  const isUnbalanced = mathematically(items, lowest, rules).length > 0;
  return items.flatMap(item => {
    const turns = [item.lowQuantity, item.highQuantity].filter(quantity => quantity !== undefined);
    const quantity = turns.find(turn =>
      others.some(other => totalAt(other, item, turn) < totalAt(lowest, item, turn)),
    );
    if (quantity === undefined) return [];
    const found = warns(
      isUnbalanced ? 'bid/materially-unbalanced' : 'bid/rank-turns-on-quantity',
      `/bids/${lowest.bid.id}/${item.id}`,
      `at ${quantity} ${item.unit} of ${item.title}, inside its range, ${lowest.bid.bidder} is no longer the lowest`,
      'measure the quantity before award, or weigh the bids at the likely quantity',
      '23 CFR 635.114(e)',
    );
    return [isUnbalanced ? found : { ...found, weight: 'notes' }];
  });
}

/** The total of a bid if one item came out at another quantity. */
function totalAt(whole: WholeBid, item: TabulatedItem, quantity: number): number {
  return whole.total + asked(whole, item) * (quantity / item.quantity - 1);
}

const MEANINGS = {
  'bid/mathematically-unbalanced':
    'if the quantity comes out otherwise, the payment moves by more than the work does',
  'bid/front-loaded': 'money would be paid before the work that it is for is done',
  'bid/materially-unbalanced': 'this bid may cost more than another once the work is measured',
  'bid/rank-turns-on-quantity': 'which bid is the lowest depends on a quantity that may come out otherwise',
} as const;

function warns(
  code: keyof typeof MEANINGS,
  place: string,
  message: string,
  remedy: string,
  rule: string,
): Finding {
  return { code, weight: 'warns', place, message, meaning: MEANINGS[code], remedy, rule };
}
