import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bidMargin,
  bidSheet,
  bondPremium,
  bondTiersOf,
  bookOfBid,
  buildUp,
  compareBids,
  compareQuotes,
  findLeaks,
  internalSheet,
  medianOf,
  numbersIn,
  readBidRules,
  bidRule,
  scheduleOfValues,
  secretsOf,
  type BidItem,
  type OpenedBid,
  type TabulatedItem,
} from '../../../core/bid';
import { locateDifferences, sumCents, type EstimateLine } from '../../../core/cash-flow';
import { line, randomLines, usd } from '../cash-flow/lines';

const RULES = readBidRules(JSON.parse(readFileSync('templates/bid.json', 'utf8')));
const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };

describe('mark-ups in order', () => {
  it('each stands on what it says: 1,000 direct, 10 on direct, 10 on direct and before, 5 on the price', () => {
    // 1000 + 100 + 110 = 1210; a tax of 5 in 100 of the price itself: price = 1210 / 0.95 = 1273.684...
    const result = buildUp(usd(1000), [
      { id: 'site', title: 'Site overhead', on: 'direct', share: 0.1 },
      { id: 'profit', title: 'Profit', on: 'direct and before', share: 0.1 },
      { id: 'tax', title: 'Tax', on: 'contract price', share: 0.05 },
    ]);
    expect(result.price).toBe(usd(1273.68));
    expect(result.markUps.map(markUp => markUp.amount)).toEqual([usd(100), usd(110), usd(63.68)]);
  });

  it('the order changes a mark-up on what stands before it, and a lump sum counts', () => {
    const lump = { id: 'lump', title: 'Permit bond', on: 'lump' as const, amount: usd(100) };
    const profit = { id: 'profit', title: 'Profit', on: 'direct and before' as const, share: 0.1 };
    expect(buildUp(usd(1000), [lump, profit]).price).toBe(usd(1210));
    expect(buildUp(usd(1000), [profit, lump]).price).toBe(usd(1200));
  });

  it('a bond by tiers pays each share on its own part of the price', () => {
    const tiers = bondTiersOf(RULES);
    // 500,000 at 2.5 in 100 and 500,000 at 1.5 in 100
    expect(bondPremium(usd(1_000_000), tiers)).toBe(usd(20_000));
    expect(bondPremium(usd(6_000_000), tiers)).toBe(usd(12_500 + 30_000 + 25_000 + 7_500));
    const price = buildUp(usd(900_000), [{ id: 'bond', title: 'Bond', on: 'contract price', tiers }]).price;
    expect(price - bondPremium(price, tiers)).toBe(usd(900_000));
  });

  it('the parts add up to the price, whatever the mark-ups', () => {
    const share = fc.integer({ min: 0, max: 30 }).map(per => per / 100);
    fc.assert(
      fc.property(fc.nat(1e10), share, share, share, (direct, a, b, c) => {
        const result = buildUp(direct, [
          { id: 'a', title: 'a', on: 'direct', share: a },
          { id: 'b', title: 'b', on: 'direct and before', share: b },
          { id: 'c', title: 'c', on: 'contract price', share: c },
          { id: 'bond', title: 'bond', on: 'contract price', tiers: bondTiersOf(RULES) },
        ]);
        expect(direct + sumCents(result.markUps.map(markUp => markUp.amount))).toBe(result.price);
      }),
    );
  });

  it('shares of the price that leave nothing for the work are a fault', () => {
    expect(() => buildUp(usd(10), [{ id: 'x', title: 'x', on: 'contract price', share: 1 }])).toThrow(
      'leave nothing',
    );
  });
});

const prep = line({
  id: 'prep',
  contract: true,
  amounts: { ...none, labour: usd(800), markUp: usd(200.01) },
});
const tow = line({ id: 'tow', contract: true, stage: 'tow', amounts: { ...none, subcontract: usd(500) } });
const permit = line({ id: 'permit', amounts: { ...none, fee: usd(70) } });
const ITEMS: BidItem[] = [
  { id: 'i1', title: 'Cable removed', unit: 'ft', quantity: 300, lineIds: ['prep'], isUnitPriced: true },
  { id: 'i2', title: 'Tow', unit: 'lump sum', quantity: 1, lineIds: ['tow'], isUnitPriced: false },
];

describe('the schedule of values', () => {
  it('comes from the estimate by named steps to the cent, unit prices in whole cents', () => {
    const schedule = scheduleOfValues([prep, tow, permit], ITEMS);
    // 1,000.01 over 300 ft is 3.33 a foot, which comes to 999.00: 1.01 less
    expect(schedule.items.map(one => [one.unitPrice, one.amount])).toEqual([
      [333, usd(999)],
      [undefined, usd(500)],
    ]);
    expect(schedule.reconciliation.steps.map(step => [step.id, step.amount])).toEqual([
      ['owner', -usd(70)],
      ['unit-prices', -usd(1.01)],
    ]);
    expect([schedule.reconciliation.closes, schedule.findings]).toEqual([true, []]);
  });

  it('an allowance stands as the owner sets it, the rest is a named step', () => {
    const items = [{ ...ITEMS[0], id: 'a', allowance: usd(1500) } as BidItem, ITEMS[1] as BidItem];
    const schedule = scheduleOfValues([prep, tow], items);
    expect(schedule.baseBid).toBe(usd(2000));
    expect(schedule.reconciliation.steps.map(step => step.id)).toEqual(['allowances']);
  });

  it('finds a line in no item, in two, an unknown line and a quantity of nothing', () => {
    const items: BidItem[] = [
      { id: 'a', title: 'a', unit: 'ft', quantity: 0, lineIds: ['tow', 'gone'], isUnitPriced: true },
      { id: 'b', title: 'b', unit: 'ft', quantity: 1, lineIds: ['tow'], isUnitPriced: false },
    ];
    expect(scheduleOfValues([prep, tow], items).findings.map(found => found.code)).toEqual([
      'bid/line-in-no-item',
      'bid/line-in-two-items',
      'bid/item-without-line',
      'bid/quantity',
    ]);
  });

  it('for 1,000 random projects closes to the cent, and a planted cent is found and located', () => {
    fc.assert(
      fc.property(randomLines, fc.nat(20), fc.nat(), (lines, quantity, spot) => {
        const items: BidItem[] = lines
          .filter(one => one.contract)
          .map((one, index) => ({
            id: `i-${one.id}`,
            title: `Item ${index}`,
            unit: 'each',
            quantity: quantity + 1,
            lineIds: [one.id],
            isUnitPriced: index % 2 === 0,
          }));
        const schedule = scheduleOfValues(lines, items, [{ id: 'alt', title: 'Deck', amount: -500 }]);
        expect(schedule.reconciliation.difference).toBe(0);
        const book = bookOfBid(bidSheet(schedule));
        const at = spot % book.entries.length;
        const off = {
          ...book,
          entries: book.entries.map((e, i) => (i === at ? { ...e, amount: e.amount + 1 } : e)),
        };
        expect(locateDifferences(book, off).map(one => one.key)).toEqual([book.entries[at]?.key]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('what leaves and what stays', () => {
  const lines: EstimateLine[] = [
    line({
      id: 'cable',
      contract: true,
      source: 'Harrow Point Disposal',
      amounts: { ...none, labour: usd(41_237.11), disposal: usd(9_871.23), markUp: usd(12_345.67) },
    }),
    line({
      id: 'tanks',
      contract: true,
      source: 'Quayside Services',
      amounts: { ...none, labour: usd(52_711.09), equipment: usd(7_654.21), markUp: usd(15_411.13) },
    }),
  ];
  const items: BidItem[] = [
    {
      id: 'a',
      title: 'Cleaning',
      unit: 'lump sum',
      quantity: 1,
      lineIds: ['cable', 'tanks'],
      isUnitPriced: false,
    },
  ];
  const schedule = scheduleOfValues(lines, items);
  const internal = internalSheet(
    schedule,
    lines,
    [
      { lineId: 'cable', title: 'hours', value: 1187.5 },
      { lineId: 'cable', title: 'wage', value: 36.24 },
      { lineId: 'tanks', title: 'quote', value: 'Brae Tank Cleaning' },
    ],
    { buildUp: buildUp(usd(111_473.64), []), shares: [{ title: 'Profit', share: 0.085 }] },
  );
  const sheet = bidSheet(schedule);
  const secrets = secretsOf(internal, sheet);

  it('the bid sheet holds none of the numbers and names of the internal sheet but its prices', () => {
    expect(secrets.numbers).toEqual(
      expect.arrayContaining([41_237.11, 9_871.23, 12_345.67, 1187.5, 36.24, 0.085, 8.5, 111_473.64]),
    );
    expect(secrets.words).toEqual(['Harrow Point Disposal', 'Quayside Services', 'Brae Tank Cleaning']);
    const everything = JSON.stringify(sheet);
    const dollars = sheet.items.flatMap(row => [row.amount / 100, (row.unitPrice ?? 0) / 100]);
    expect(findLeaks([everything, ...dollars, sheet.baseBid / 100], secrets)).toEqual([]);
    expect(Object.keys(sheet.items[0] ?? {})).toEqual(['number', 'title', 'unit', 'quantity', 'amount']);
  });

  it('a leak is found wherever it is: a number, a comment, a name', () => {
    const leaks = findLeaks(
      [12_345.67, 'checked: 41,237.11 of wages', 'by quayside services', 'Cleaning'],
      secrets,
    );
    expect(leaks).toEqual([
      { secret: 12_345.67, at: 0 },
      { secret: 41_237.11, at: 1 },
      { secret: 'Quayside Services', at: 2 },
    ]);
    expect(numbersIn('1,234.50 and 7')).toEqual([1234.5, 7]);
  });

  it('in random projects every internal amount that is no price is a secret, and none is on the sheet', () => {
    fc.assert(
      fc.property(randomLines, all => {
        const own = all.filter(one => one.contract);
        fc.pre(own.length > 1);
        const one: BidItem[] = [
          {
            id: 'all',
            title: 'The work',
            unit: 'lump sum',
            quantity: 1,
            lineIds: own.map(l => l.id),
            isUnitPriced: false,
          },
        ];
        const values = scheduleOfValues(all, one);
        const hidden = secretsOf(internalSheet(values, own, [], { shares: [] }), bidSheet(values));
        const dollars = [values.baseBid / 100, ...bidSheet(values).items.map(row => row.amount / 100)];
        expect(findLeaks(dollars, hidden)).toEqual([]);
        expect(hidden.numbers.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe('quotes', () => {
  const quote = (id: string, amount: number, more = {}) => ({
    id,
    supplier: id,
    amount: usd(amount),
    adjustments: [],
    ...more,
  });
  it('are compared after bringing them to the same scope', () => {
    const result = compareQuotes(
      'tow',
      [
        quote('a', 100, { adjustments: [{ title: 'riding crew', amount: usd(30) }] }),
        quote('b', 120),
        quote('c', 150),
      ],
      { quoteId: 'b' },
      '2027-05-01',
    );
    expect(result.rows.map(row => [row.quote.id, row.levelled, row.overLowest])).toEqual([
      ['b', usd(120), 0],
      ['a', usd(130), usd(10)],
      ['c', usd(150), usd(30)],
    ]);
    expect([result.spread, result.findings]).toEqual([0.25, []]);
  });
  it('a dearer, expired or unknown choice and too few quotes are found', () => {
    const codes = (quoteId: string, reason?: string) =>
      compareQuotes(
        'tow',
        [quote('a', 100), quote('b', 120, { validUntil: '2027-04-30' })],
        { quoteId, ...(reason !== undefined && { reason }) },
        '2027-05-01',
      ).findings.map(found => found.code);
    expect(codes('b')).toEqual(['bid/quote-not-lowest', 'bid/quote-expired', 'bid/few-quotes']);
    expect(codes('b', 'holds the berth')).toEqual(['bid/quote-expired', 'bid/few-quotes']);
    expect(codes('z')).toEqual(['bid/quote-not-there', 'bid/few-quotes']);
  });
});

describe('margin', () => {
  it('is price less cost at P50 and P80, and breaks even where the growth eats it', () => {
    const margin = bidMargin(usd(1100), usd(1000), { p50: usd(1000), p80: usd(1155) }, [
      usd(900),
      usd(1000),
      usd(1155),
      usd(1200),
    ]);
    expect([margin.atP50.margin, margin.atP80.margin]).toEqual([usd(100), -usd(55)]);
    expect(margin.atP80.share).toBeCloseTo(-0.05, 12);
    expect(margin.breakEvenGrowth).toBeCloseTo(0.1, 12);
    expect(margin.chanceOfLoss).toBe(0.5);
    expect(bidMargin(1, 1, { p50: 1, p80: 1 })).not.toHaveProperty('chanceOfLoss');
  });
});

describe('comparison of bids', () => {
  const items: TabulatedItem[] = [
    { id: 'mob', title: 'Mobilisation', unit: 'lump sum', quantity: 1, estimate: usd(100) },
    {
      id: 'oil',
      title: 'Oil',
      unit: 'gal',
      quantity: 1000,
      lowQuantity: 500,
      highQuantity: 2000,
      estimate: usd(400),
    },
    { id: 'tow', title: 'Tow', unit: 'lump sum', quantity: 1, estimate: usd(500) },
  ];
  const bid = (id: string, mob: number, oil: number, tow: number): OpenedBid => ({
    id,
    bidder: id,
    prices: {
      mob: { amount: usd(mob) },
      oil: { unitPrice: Math.round(usd(oil) / 1000) },
      tow: { amount: usd(tow) },
    },
  });
  const fair = [bid('A', 105, 410, 515), bid('B', 110, 430, 530), bid('C', 98, 420, 520)];

  it('fair bids are ranked against the estimate and nothing is found', () => {
    const result = compareBids(items, fair, RULES);
    expect(result.findings).toEqual([]);
    expect(result.totals.map(one => [one.bidId, one.total, one.rank, one.overEstimate])).toEqual([
      ['A', usd(1030), 1, usd(30)],
      ['B', usd(1070), 3, usd(70)],
      ['C', usd(1038), 2, usd(38)],
    ]);
    expect(result.rows[1]).toMatchObject({
      median: usd(420),
      byBid: { A: usd(410), B: usd(430), C: usd(420) },
    });
  });

  const codes = (bids: OpenedBid[]) =>
    compareBids(items, bids, RULES).findings.map(one => `${one.code} ${one.place}`);

  it('an item far off the estimate and off the middle of the bids is an outlier and unbalanced', () => {
    expect(codes([...fair, bid('D', 100, 410, 1000)])).toEqual(['bid/outlier /bids/D/tow']);
    // 40 of 100 against 1,055 of 1,000: 0.38 times the level of the bid
    expect(codes([...fair, bid('D', 40, 500, 515)])).toEqual([
      'bid/outlier /bids/D/mob',
      'bid/mathematically-unbalanced /bids/D/mob',
      // at 500 gal A costs 1,030 - 205 = 825, D 1,055 - 250 = 805
      'bid/rank-turns-on-quantity /bids/A/oil',
    ]);
  });

  it('an item that every bidder prices far off the estimate is no outlier: the estimate is', () => {
    const dear = [bid('A', 105, 900, 515), bid('B', 110, 880, 530), bid('C', 98, 910, 520)];
    expect(codes(dear).filter(code => code.startsWith('bid/outlier'))).toEqual([]);
  });

  it('prices moved to the first work are front loading', () => {
    expect(codes([...fair, bid('D', 135, 530, 380)])).toContain('bid/front-loaded /bids/D');
  });

  it('a lowest bid that loses its place inside the range of a quantity is materially unbalanced, or noted', () => {
    // at 2,000 gal D costs 1,020 + 460 = 1,480, A 1,030 + 410 = 1,440; D is balanced
    expect(codes([...fair, bid('D', 90, 460, 470)])).toEqual(['bid/rank-turns-on-quantity /bids/D/oil']);
    // the same with oil at 1.5 times its estimate, 1.47 times the level of the bid
    expect(codes([...fair, bid('D', 80, 600, 340)])).toContain('bid/materially-unbalanced /bids/D/oil');
  });

  it('a bid far below the estimate, a wrong extension, a missing price and a lone bid are found', () => {
    expect(codes([...fair, bid('D', 70, 290, 365)])).toContain('bid/low-total /bids/D');
    const wrong = {
      ...bid('A', 105, 410, 515),
      prices: { ...fair[0]?.prices, oil: { unitPrice: 41, amount: usd(400) } },
    };
    expect(codes([wrong as OpenedBid])).toEqual(['bid/wrong-extension /bids/A/oil', 'bid/one-bid /bids']);
    const short: OpenedBid = { id: 'S', bidder: 'S', prices: { mob: { amount: 1 } } };
    const result = compareBids(items, [...fair, short], RULES);
    expect(result.totals[3]).toEqual({ bidId: 'S', bidder: 'S' });
    expect(result.findings.map(one => one.code).filter(code => code === 'bid/price-missing')).toHaveLength(2);
  });

  it('the middle of an even count is the mean of the two in the middle', () => {
    expect([medianOf([1, 9, 3]), medianOf([1, 3, 5, 100])]).toEqual([3, 4]);
  });

  it('a rule that is not in the file is a fault', () => {
    expect(() => bidRule({ ...RULES, rules: [] }, 'low-total')).toThrow('no low-total');
  });
});

describe('what a tabulation must not pass over', () => {
  const ALLOWANCE: TabulatedItem = {
    id: 'permits',
    title: 'Permits',
    unit: 'allowance',
    quantity: 1,
    estimate: usd(50),
    isAllowance: true,
  };
  const WORK: TabulatedItem = {
    id: 'work',
    title: 'Work',
    unit: 'lump sum',
    quantity: 1,
    estimate: usd(100),
  };
  const opened = (id: string, work?: number, permits?: number): OpenedBid => ({
    id,
    bidder: id,
    prices: {
      ...(work !== undefined && { work: { amount: usd(work) } }),
      ...(permits !== undefined && { permits: { amount: usd(permits) } }),
    },
  });

  it('an allowance written otherwise than set is found, one carried as set is not', () => {
    const codes = (permits: number) =>
      compareBids([WORK, ALLOWANCE], [opened('A', 100, permits), opened('B', 101, 50)], RULES).findings.map(
        one => one.code,
      );
    expect(codes(50)).toEqual([]);
    expect(codes(45)).toEqual(['bid/allowance-changed']);
  });

  it('bids without a total are in no ranking, and no item of them is called unbalanced', () => {
    const { totals, findings } = compareBids([WORK, ALLOWANCE], [opened('A', 400), opened('B')], RULES);
    expect(totals).toEqual([
      { bidId: 'A', bidder: 'A' },
      { bidId: 'B', bidder: 'B' },
    ]);
    expect(new Set(findings.map(one => one.code))).toEqual(
      new Set(['bid/price-missing', 'bid/outlier', 'bid/low-total'].slice(0, 2)),
    );
  });

  it('a form of one item has no early half to load, and no item to be out of balance with', () => {
    const { findings } = compareBids([WORK], [opened('A', 104), opened('B', 99)], RULES);
    expect(findings).toEqual([]);
  });
});

describe('quotes of a scope nobody has chosen yet', () => {
  it('are noted as such, and an expiry is not judged while the day is not known', () => {
    const old = { id: 'a', supplier: 'a', amount: usd(1), adjustments: [], validUntil: '2020-01-01' };
    const codes = (choice?: { quoteId: string }) =>
      compareQuotes('tow', [old, { ...old, id: 'b' }, { ...old, id: 'c' }], choice).findings.map(
        one => one.code,
      );
    expect(codes()).toEqual(['bid/quote-none-chosen']);
    expect(codes({ quoteId: 'a' })).toEqual([]);
    expect(compareQuotes('tow', []).rows).toEqual([]);
    expect(compareQuotes('tow', [])).not.toHaveProperty('spread');
  });
});

describe('how a secret is told apart from what is open', () => {
  const secrets = { numbers: [12_345.67, 8.5], words: ['Abc', 'Brae Works'], open: new Set([12]) };
  const leaks = (...contents: (string | number)[]) => findLeaks(contents, secrets).map(leak => leak.secret);

  it('rounding, separators and the place in a text hide nothing', () => {
    expect(leaks('12345.7')).toEqual([12_345.67]);
    expect(leaks('about 12,346 dollars')).toEqual([12_345.67]);
    expect(leaks(12_345.67)).toEqual([12_345.67]);
    expect(leaks('9 per cent')).toEqual([8.5]);
  });
  it('a date is one word, an open number and nothing are no secrets', () => {
    expect(leaks('2026-09-08', '12', '0', 'item 12 of 12')).toEqual([]);
  });
  it('a short name counts where it stands alone, a long one anywhere', () => {
    expect(leaks('by ABC, in June')).toEqual(['Abc']);
    expect(leaks('abcess of plates')).toEqual([]);
    expect(leaks('subbrae works2')).toEqual(['Brae Works']);
  });
});
