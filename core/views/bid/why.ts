import { BASES, withId } from '../../base';
import type { EstimateContext } from '../context';
import { cents } from '../funding/tie-out-table';
import type { WhyRows } from '../rows';
import { sumRows, type Part } from '../why-sums';
import { bidId, bidOf } from './bid-of';
import { tabulationOf } from './received';
import type { BidView } from '../../evaluation';

type Answer = (
  view: BidView,
  parts: readonly string[],
  id: string,
  context: EstimateContext,
) => WhyRows | undefined;

function titled(rows: WhyRows): WhyRows {
  return { ...rows, path: 'Bid, sum', home: 'bid' };
}

function costWhy(view: BidView, item: string | undefined, id: string): WhyRows | undefined {
  const inside = view.internal?.items.find(one => one.itemId === item);
  if (inside === undefined) return undefined;
  return titled(
    sumRows(
      id,
      inside.title,
      'The lines of the item at the contractor’s price.',
      inside.lines.map(line => ({ cents: line.total, words: line.title, why: `lines/${line.lineId}/total` })),
    ),
  );
}

/** What the sheet asks for an item: its cost, rounded to a unit price, or the allowance the owner set. */
const itemWhy: Answer = (view, [item = ''], id) => {
  const priced = view.schedule?.items.find(one => one.item.id === item);
  const made = costWhy(view, item, id);
  if (priced === undefined || made === undefined) return undefined;
  const { unitPrice, amount } = priced;
  const { allowance, quantity, unit } = priced.item;
  if (allowance !== undefined)
    return {
      ...made,
      words:
        'An allowance: the owner sets the amount, and every bid carries it. The cost of its lines is below.',
      value: { ...cents(amount), unit: '$', why: `given:/bid/items/${item}/allowance` },
    };
  if (unitPrice === undefined) return made;
  return {
    ...made,
    words: `${quantity} ${unit} at ${cents(unitPrice).text} $ each: the cost of its lines, rounded to a unit price in whole cents.`,
    value: { ...cents(amount), unit: '$' },
  };
};

const elementWhy: Answer = ({ internal }, [item, element = ''], id) => {
  const inside = internal?.items.find(one => one.itemId === item);
  if (inside === undefined) return undefined;
  const key = (['labour', 'equipment', 'material', 'disposal', 'subcontract', 'fee', 'markUp'] as const).find(
    one => one === element,
  );
  if (key === undefined) return undefined;
  return titled(
    sumRows(
      id,
      `${inside.title}, ${key === 'markUp' ? 'mark-up' : key}`,
      'The sum of this element over the lines of the item.',
      inside.lines.map(line => ({
        cents: line.amounts[key],
        words: line.title,
        why: `lines/${line.lineId}/${key === 'markUp' ? 'mark-up' : key}`,
      })),
    ),
  );
};

const baseWhy: Answer = ({ schedule }, _parts, id) =>
  schedule === undefined
    ? undefined
    : titled(
        sumRows(
          id,
          'Base bid',
          'The sum of the items, without alternates.',
          schedule.items.map(one => ({
            cents: one.amount,
            words: one.item.title,
            why: bidId('item', one.item.id),
          })),
        ),
      );

const directWhy: Answer = ({ internal }, _parts, id) => {
  if (internal === undefined) return undefined;
  const parts = internal.items.flatMap(item =>
    item.lines.map((line): Part => ({
      cents: line.total - line.amounts.markUp,
      words: line.title,
      why: `lines/${line.lineId}/total`,
    })),
  );
  return titled(sumRows(id, 'Direct cost of contract work', 'The contract lines before any mark-up.', parts));
};

/** What a mark-up adds, and the price as the sum of all of them. */
const priceWhy: Answer = ({ internal }, [markUp], id) => {
  const built = internal?.buildUp;
  if (built === undefined) return undefined;
  const own = built.markUps.find(one => one.id === markUp);
  const rows = sumRows(
    id,
    own?.title ?? 'Contract price',
    own === undefined
      ? 'Direct cost and the mark-ups in their order.'
      : 'Its share of what it stands on, added over the lines; the whole build-up is below.',
    [
      { cents: built.direct, words: 'Direct cost of contract work', why: bidId('direct') },
      ...built.markUps.map(one => ({ cents: one.amount, words: one.title, why: `given:${shareOf(one.id)}` })),
    ],
  );
  return titled(own === undefined ? rows : { ...rows, value: { ...cents(own.amount), unit: '$' } });
};

function shareOf(markUp: string): string {
  return `/rates/overrides/markUps~1${markUp}~1share/figure`;
}

const stepWhy: Answer = ({ schedule }, [, step], id) => {
  const found = schedule?.reconciliation;
  if (found === undefined) return undefined;
  const all = [found.from, ...found.steps];
  const one = [...all, found.to].find(each => each.id === step);
  return {
    ...titled(
      sumRows(
        id,
        one?.title ?? 'Difference',
        'A step from the estimate to the base bid; the base bid is summed from the items on its own.',
        all.map(each => ({
          cents: each.amount,
          words: each.title,
          ...(each.id === 'estimate' ? { why: 'sums/total' } : {}),
        })),
      ),
    ),
    value: { ...cents(one?.amount ?? found.difference), unit: '$' },
    bases: BASES,
  };
};

/** What a bidder asks for an item, beside the estimate; or its total. */
const receivedWhy: Answer = (_view, [bid, item = ''], id, context) => {
  const { comparison, items, bids } = tabulationOf(context.evaluation);
  const bidder = bids.find(one => one.id === bid);
  if (comparison === undefined || bidder === undefined) return undefined;
  const asked = comparison.rows.flatMap(row => {
    const amount = row.byBid[bidder.id];
    if (amount === undefined || (item !== 'total' && row.item.id !== item)) return [];
    return [{ cents: amount, words: row.item.title, why: bidId('received', bidder.id, row.item.id) }];
  });
  if (item === 'total')
    return titled(
      sumRows(
        id,
        bidder.bidder,
        'The items as opened; where unit price and amount differ the unit price governs.',
        asked,
      ),
    );
  const own = items.find(one => one.id === item);
  const price = bidder.prices[item];
  const [amount] = asked;
  if (own === undefined || price === undefined || amount === undefined) return undefined;
  const field = price.unitPrice === undefined ? 'amount' : 'unitPrice';
  return titled({
    ...sumRows(
      id,
      `${bidder.bidder}, ${own.title}`,
      'As the bidder wrote it, a unit price times the quantity.',
      [],
    ),
    value: { ...cents(amount.cents), unit: '$' },
    rows: [
      {
        depth: 0,
        operator: '=',
        value: {
          ...cents(price[field] ?? amount.cents),
          unit: '$',
          why: `given:/receivedBids/${bidder.id}/prices/${item}/${field}`,
        },
        words: field === 'amount' ? 'amount as written' : 'price for one unit',
      },
      {
        depth: 0,
        operator: '',
        value: { ...cents(own.estimate), unit: '$', why: bidId('item', item) },
        words: 'the estimate beside it',
      },
    ],
  });
};

/** The middle of the bids for an item. */
const middleWhy: Answer = (_view, [item = ''], id, context) => {
  const { comparison, bids } = tabulationOf(context.evaluation);
  const row = comparison?.rows.find(one => one.item.id === item);
  if (row?.median === undefined) return undefined;
  return titled({
    ...sumRows(
      id,
      `Middle of the bids, ${row.item.title}`,
      'The middle amount of the bids; of an even count the mean of the two in the middle.',
      Object.entries(row.byBid).map(([bid, amount]) => ({
        cents: amount,
        words: withId(bids, bid).bidder,
        why: bidId('received', bid, item),
      })),
    ),
    value: { ...cents(row.median), unit: '$' },
  });
};

const ANSWERS: Readonly<Record<string, Answer>> = {
  item: itemWhy,
  cost: (view, [item], id) => costWhy(view, item, id),
  element: elementWhy,
  base: baseWhy,
  direct: directWhy,
  price: priceWhy,
  'mark-up': priceWhy,
  step: stepWhy,
  received: receivedWhy,
  middle: middleWhy,
};

/** The derivation of a figure of the bid. */
export function bidWhy(context: EstimateContext, id: string): WhyRows | undefined {
  if (!id.startsWith('bid:')) return undefined;
  const [kind = '', ...parts] = id.slice(4).split('|');
  return ANSWERS[kind]?.(bidOf(context.evaluation), parts, id, context);
}
