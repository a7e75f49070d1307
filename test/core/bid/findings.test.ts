import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  bidSheet,
  compareBids,
  compareQuotes,
  medianOf,
  readBidRules,
  scheduleOfValues,
  type BidItem,
  type OpenedBid,
  type Quote,
  type TabulatedItem,
} from '../../../core/bid';
import type { Finding } from '../../../core/base';
import { line, usd } from '../cash-flow/lines';

const RULES = readBidRules(JSON.parse(readFileSync('templates/bid.json', 'utf8')));
const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };
const work = (id: string, dollars: number) =>
  line({ id, title: `Work ${id}`, contract: true, amounts: { ...none, subcontract: usd(dollars) } });
const item = (id: string, lineIds: string[], more: Partial<BidItem> = {}): BidItem => ({
  ...{ id, title: `Item ${id}`, unit: 'lump sum', quantity: 1, lineIds, isUnitPriced: false },
  ...more,
});
const only = (findings: readonly Finding[], code: string) => findings.filter(found => found.code === code);

describe('bid items that do not hold the contract work, each part once', () => {
  const [tow, prep] = [work('tow', 500), work('prep', 70)];
  const told = (code: string, place: string, message: string, remedy: string) => ({
    ...{ code, weight: 'blocks', place, message, remedy },
    meaning: 'the bid would not hold the contract work, each part once, so it is not made',
  });
  it('a line in no item', () => {
    expect(scheduleOfValues([tow, prep], [item('a', ['tow'])]).findings).toEqual([
      told(
        'bid/line-in-no-item',
        '/lines/prep',
        'Work prep, $70.00, is in no bid item',
        'put it into an item',
      ),
    ]);
  });
  it('a line in two items', () => {
    expect(scheduleOfValues([tow], [item('a', ['tow']), item('b', ['tow'])]).findings).toEqual([
      told('bid/line-in-two-items', '/lines/tow', 'Work tow is in more than one bid item', 'leave it in one'),
    ]);
  });
  it('an item of no contract line', () => {
    const own = line({ id: 'permit', amounts: { ...none, fee: 5 } });
    expect(scheduleOfValues([tow, own], [item('a', ['tow', 'permit'])]).findings).toEqual([
      told(
        'bid/item-without-line',
        '/lines/permit',
        'a bid item names permit, which is no contract line',
        'take it out of the item',
      ),
    ]);
  });
  it.each([
    [0, true, 1],
    [-1, true, 1],
    [0, false, 0],
    [2, true, 0],
  ])('a quantity of %d priced by unit: %o', (quantity, isUnitPriced, count) => {
    const { findings } = scheduleOfValues([tow], [item('a', ['tow'], { quantity, isUnitPriced })]);
    expect(findings).toEqual(
      [
        told(
          'bid/quantity',
          '/bid/items/a',
          'Item a is priced by unit and has no quantity',
          'enter its quantity',
        ),
      ].slice(0, count),
    );
  });
});

describe('the steps from the estimate to the bid', () => {
  const own = line({ id: 'permit', amounts: { ...none, fee: usd(70) } });
  const items = [
    item('a', ['x'], { quantity: 300, isUnitPriced: true, unit: 'ft' }),
    item('b', ['y'], { allowance: usd(550) }),
  ];
  const values = () =>
    scheduleOfValues([work('x', 1000.01), work('y', 500), own], items, [
      { id: 'alt', title: 'Deck', amount: -500 },
    ]);
  it('have their names and lines', () => {
    expect(values().reconciliation).toEqual({
      id: 'bid',
      from: { id: 'estimate', title: 'Estimate', amount: usd(1570.01) },
      steps: [
        { id: 'owner', title: "Owner's own cost", amount: -usd(70), lineIds: ['permit'] },
        { id: 'unit-prices', title: 'Rounding of unit prices to the cent', amount: -usd(1.01) },
        { id: 'allowances', title: 'Allowances as the owner sets them', amount: usd(50) },
      ],
      to: { id: 'base-bid', title: 'Base bid', amount: usd(1549) },
      difference: 0,
      closes: true,
    });
  });
  it('end in a sheet of prices, on which an allowance is marked as one', () => {
    expect(bidSheet(values())).toStrictEqual({
      items: [
        { number: 1, title: 'Item a', unit: 'ft', quantity: 300, unitPrice: 333, amount: usd(999) },
        { number: 2, title: 'Item b', unit: 'lump sum', quantity: 1, amount: usd(550), isAllowance: true },
      ],
      baseBid: usd(1549),
      alternates: [{ number: 1, title: 'Deck', amount: -500 }],
    });
  });
});

describe('quotes that need a word', () => {
  const quote = (id: string, dollars: number, more: Partial<Quote> = {}): Quote => ({
    ...{ id, supplier: id, amount: usd(dollars), adjustments: [] },
    ...more,
  });
  const three = [quote('a', 100), quote('b', 120, { validUntil: '2027-04-30' }), quote('c', 150)];
  const told = (code: string, message: string, meaning: string, remedy: string, weight = 'warns') => ({
    ...{ code, weight, place: '/quotes/tow', message, meaning, remedy },
  });
  it('a choice that is not among them', () => {
    expect(compareQuotes('tow', three, { quoteId: 'z' }).findings).toEqual([
      told(
        'bid/quote-not-there',
        'the quote z is not among the quotes',
        'nothing stands behind the choice, so the worked-out cost is used',
        'choose one of them',
      ),
    ]);
  });
  it('a choice that is dearer than another, until a reason is given', () => {
    expect(compareQuotes('tow', three, { quoteId: 'b' }).findings).toEqual([
      told(
        'bid/quote-not-lowest',
        'the quote used is $20.00 above the lowest, and no reason is given',
        'whoever reviews the price will ask why money was left on the table',
        'write down why, or use the lowest',
      ),
    ]);
    expect(compareQuotes('tow', three, { quoteId: 'b', reason: 'holds the berth' }).findings).toEqual([]);
    expect(compareQuotes('tow', three, { quoteId: 'a' }).findings).toEqual([]);
  });
  it('a choice that has run out by the day of the order', () => {
    const choice = { quoteId: 'b', reason: 'r' };
    expect(compareQuotes('tow', three, choice, '2027-05-01').findings).toEqual([
      told(
        'bid/quote-expired',
        'the quote used stands until 2027-04-30, the work is ordered on 2027-05-01',
        'its amount is used, but nobody is bound by it on that day',
        'ask for it to be renewed, and widen its range until then',
      ),
    ]);
    expect(compareQuotes('tow', three, choice, '2027-04-30').findings).toEqual([]);
    expect(compareQuotes('tow', three, { quoteId: 'c', reason: 'r' }, '2029-01-01').findings).toEqual([]);
  });
  it('none that is relied on', () => {
    expect(compareQuotes('tow', three).findings).toEqual([
      told(
        'bid/quote-none-chosen',
        'no quote of this scope is relied on, so the worked-out cost stands',
        'the quotes are there to compare with and move no figure',
        'choose a quote, or keep them as a second way to check the cost',
        'notes',
      ),
    ]);
  });
  it('fewer than three', () => {
    expect(compareQuotes('tow', three.slice(0, 2), { quoteId: 'a' }).findings).toEqual([
      told(
        'bid/few-quotes',
        'there are 2 quotes',
        'whether the price is the going one, so few quotes cannot show',
        'ask for more, or say why fewer must do',
        'notes',
      ),
    ]);
  });
  it('spread from the lowest to the highest, where there are two and the lowest is above nothing', () => {
    expect(compareQuotes('tow', three).spread).toBe(0.5);
    expect(compareQuotes('tow', three.slice(0, 1))).not.toHaveProperty('spread');
    expect(compareQuotes('tow', [])).not.toHaveProperty('spread');
    expect(compareQuotes('tow', [quote('a', 0), quote('b', 5)])).not.toHaveProperty('spread');
  });
});

describe('bids that need a word', () => {
  const items: TabulatedItem[] = [
    { id: 'mob', title: 'Mobilisation', unit: 'lump sum', quantity: 1, estimate: usd(100) },
    { id: 'oil', title: 'Oil', unit: 'gal', quantity: 1000, estimate: usd(400) },
    { id: 'tow', title: 'Tow', unit: 'lump sum', quantity: 1, estimate: usd(500) },
  ];
  const bid = (id: string, mob: number, oil: number, tow: number): OpenedBid => ({
    id,
    bidder: `Bidder ${id}`,
    prices: { mob: { amount: usd(mob) }, oil: { unitPrice: usd(oil / 1000) }, tow: { amount: usd(tow) } },
  });
  const fair = [bid('A', 105, 410, 515), bid('B', 110, 430, 530)];

  // 23 CFR 635.114(c): obvious unbalancing of unit prices is examined.
  it('a price far from the estimate and from the other bids', () => {
    const { findings } = compareBids(items, [...fair, bid('C', 105, 410, 2000)], RULES);
    expect(only(findings, 'bid/outlier')).toEqual([
      {
        code: 'bid/outlier',
        weight: 'warns',
        place: '/bids/C/tow',
        message: 'Bidder C asks $2,000.00 for Tow, the estimate is $500.00',
        meaning: 'the item or its scope may be read in two ways, by the bidder or by the estimate',
        remedy: 'check the quantity and the scope first, then ask the bidder how the price is made up',
        rule: '23 CFR 635.114(c)',
      },
    ]);
  });
  it('a total far below the estimate', () => {
    const { findings } = compareBids(items, [...fair, bid('C', 50, 200, 250)], RULES);
    expect(only(findings, 'bid/low-total')).toEqual([
      {
        code: 'bid/low-total',
        weight: 'warns',
        place: '/bids/C',
        message: 'Bidder C bids $500.00, the estimate is $1,000.00',
        meaning: 'work may have been left out, and a contractor at a loss looks for changes',
        remedy: 'have the bidder confirm scope and price in writing before award',
      },
    ]);
  });
  it('one bid alone', () => {
    expect(only(compareBids(items, fair.slice(0, 1), RULES).findings, 'bid/one-bid')).toEqual([
      {
        code: 'bid/one-bid',
        weight: 'notes',
        place: '/bids',
        message: 'only one bid came in, so the bids cannot be compared with each other',
        meaning: 'nothing but the estimate says whether the price is fair',
        remedy: 'compare it with the estimate item by item, and keep the record of who was asked',
      },
    ]);
    expect(only(compareBids(items, fair, RULES).findings, 'bid/one-bid')).toEqual([]);
  });
  it('a price that is missing leaves the bid without a total', () => {
    const open = { ...bid('C', 1, 1, 1), prices: { mob: { amount: usd(100) }, tow: { amount: usd(500) } } };
    const { findings, totals } = compareBids(items, [...fair, open], RULES);
    expect(only(findings, 'bid/price-missing')).toEqual([
      {
        code: 'bid/price-missing',
        weight: 'blocks',
        place: '/bids/C/oil',
        message: 'Bidder C gives no price for Oil',
        meaning: 'the bid has no total and cannot be ranked',
        remedy: 'treat it as the bidding rules say; ask counsel before asking the bidder',
      },
    ]);
    expect(totals.map(each => [each.bidId, each.rank])).toEqual([
      ['A', 1],
      ['B', 2],
      ['C', undefined],
    ]);
  });
  it('an amount that its unit price does not give', () => {
    const wrong = { ...bid('C', 105, 410, 515) };
    const prices = { ...wrong.prices, oil: { unitPrice: 41, amount: usd(500) } };
    expect(
      only(compareBids(items, [...fair, { ...wrong, prices }], RULES).findings, 'bid/wrong-extension'),
    ).toEqual([
      {
        code: 'bid/wrong-extension',
        weight: 'warns',
        place: '/bids/C/oil',
        message: 'Bidder C writes $500.00 for Oil; the unit price gives $410.00',
        meaning: 'the unit price governs, as bidding rules usually have it',
        remedy: 'confirm with the rules of this bid',
      },
    ]);
  });
  it.each([
    [[5], 5],
    [[9, 1, 5], 5],
    [[1, 4], 3],
    [[8, 2, 4, 6], 5],
  ])('the middle of %j is %d', (amounts, middle) => expect(medianOf(amounts)).toBe(middle));
});
