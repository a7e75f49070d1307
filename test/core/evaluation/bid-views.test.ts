import { describe, expect, test } from 'vitest';
import type { Figure } from '../../../core/base';
import { sumCents } from '../../../core/cash-flow';
import {
  bidJson,
  bidView,
  bidsOfPrices,
  bookBasis,
  contractorRun,
  internalJson,
  marginView,
  prepareRisk,
  quoteView,
  tabulationView,
  type Evaluation,
} from '../../../core/evaluation';
import { importPrices, importMappingSchema, type Project } from '../../../core/project';
import { simulate } from '../../../core/risk';
import { demoProject, evaluated } from './demo';

const DEMO: Project = { ...demoProject(), quotes: [], receivedBids: [] };
const EVALUATION = evaluated(DEMO);

function under(change: Partial<Project>): Evaluation {
  return { ...EVALUATION, project: { ...EVALUATION.project, ...change } };
}

const usd = (amount: number): Figure => ({
  value: amount.toFixed(2),
  unit: 'USD',
  basis: 'quoted',
  source: 'made up for the test',
});

const VIEW = bidView(EVALUATION);
const ITEMS = VIEW.schedule?.items ?? [];

/** A bid at a factor of the estimate, item by item. */
function bidAt(id: string, factor: (item: string) => number): NonNullable<Project['receivedBids']>[number] {
  return {
    id,
    bidder: `Bidder ${id}`,
    alternates: [],
    prices: ITEMS.map(({ item, amount }) => ({
      item: item.id,
      amount: usd(Math.round(amount * factor(item.id)) / 100),
    })),
  };
}

describe('the bids received', () => {
  const even = [bidAt('a', () => 1.02), bidAt('b', () => 0.97), bidAt('c', () => 1.08)];

  test('are ranked against the estimate of the bid form, and even bids give no finding', () => {
    const { comparison, findings } = tabulationView(under({ receivedBids: even }));
    expect(comparison?.estimate).toBe(VIEW.sheet?.baseBid);
    expect(comparison?.totals.map(one => one.rank)).toEqual([2, 1, 3]);
    expect(findings).toEqual([]);
    const total = sumCents(ITEMS.map(({ amount }) => Math.round(amount * 0.97)));
    expect(comparison?.totals[1]?.total).toBe(total);
  });

  test('an item far off the estimate and off the others is found by its rule', () => {
    const off = bidAt('d', item => (item === 'tow' ? 2.4 : 1));
    const { findings } = tabulationView(under({ receivedBids: [...even, off] }));
    expect(findings.map(one => `${one.code} ${one.place}`)).toContain(
      'bid/outlier /receivedBids/d/prices/tow',
    );
  });

  test('a price for no item of the form is told and left out of the total', () => {
    const [first] = even;
    const strange = [...(first?.prices ?? []), { item: 'no-such-item', amount: usd(1) }];
    const view = tabulationView(
      under({ receivedBids: [{ id: 'a', bidder: 'A', alternates: [], prices: strange }] }),
    );
    expect(view.findings.map(one => [one.code, one.place])).toEqual([
      ['bid/one-bid', '/receivedBids'],
      ['bid/price-for-no-item', '/receivedBids/a/prices/no-such-item'],
    ]);
    const plain = tabulationView(under({ receivedBids: even })).comparison;
    expect(view.comparison?.totals[0]?.total).toBe(plain?.totals[0]?.total);
  });

  test('an amount in a wrong unit withholds the comparison and nothing else', () => {
    const wrong = [{ ...bidAt('a', () => 1), prices: [{ item: 'tow', amount: { ...usd(1), unit: 'ft' } }] }];
    const evaluation = evaluated({ ...DEMO, receivedBids: wrong });
    const view = tabulationView(evaluation);
    expect(view.comparison).toBeUndefined();
    expect(view.findings.map(one => one.place)).toEqual(['/receivedBids/a/prices/tow/amount/unit']);
    expect(bidView(evaluation).sheet?.baseBid).toBe(VIEW.sheet?.baseBid);
  });

  test('a tabulation read from a file becomes bids by the name of the bidder', () => {
    const mapping = importMappingSchema.parse({
      id: 'tabulation',
      title: 'Bid tabulation made up for the test',
      kind: 'prices',
      columns: { item: 'Item', unit: 'Unit', price: 'Price', vendor: 'Bidder' },
    });
    const table = [
      ['Item', 'Unit', 'Price', 'Bidder'],
      ['tow', 'lump sum', '200000', 'Brae Marine'],
      ['sinking', 'lump sum', '150000', 'Brae Marine'],
      ['tow', 'lump sum', '210000', 'Quay Works'],
    ];
    const bids = bidsOfPrices(importPrices(table, mapping).rows);
    expect(bids.map(bid => [bid.bidder, bid.prices.map(price => price.unitPrice?.value)])).toEqual([
      ['Brae Marine', ['200000', '150000']],
      ['Quay Works', ['210000']],
    ]);
    const { comparison } = tabulationView(under({ receivedBids: bids }));
    expect(comparison?.rows.find(row => row.item.id === 'tow')?.byBid).toEqual({
      'bid-1': 20_000_000,
      'bid-2': 21_000_000,
    });
  });

  test('the printed comparison holds each bid against each item', () => {
    const evaluation = under({ receivedBids: even });
    const json = JSON.parse(
      JSON.stringify(bidJson(evaluation, bidView(evaluation), tabulationView(evaluation))),
    ) as { comparison: { rows: unknown[]; totals: { rank: number }[] }; baseBid: number };
    expect(json.comparison.rows).toHaveLength(ITEMS.length);
    expect(json.baseBid).toBe((VIEW.sheet?.baseBid ?? 0) / 100);
    expect(JSON.stringify(json)).not.toContain('Crew rate');
  });
});

describe('the quotes of a scope', () => {
  const quote = (id: string, amount: number, more: Partial<Project['quotes'][number]> = {}) => ({
    id,
    vendor: `Vendor ${id}`,
    dated: '2026-11-01',
    validUntil: '2028-12-31',
    covers: [{ item: 'ocean-tow', share: '1' }],
    exclusions: [],
    amount: usd(amount),
    chosen: false,
    ...more,
  });
  const item = ITEMS.flatMap(one => one.item.lineIds)[0] ?? '';
  const covers = [{ item, share: '1' }];

  test('are levelled by their adjustments, the lowest first, with the day the work starts', () => {
    const quotes = [
      quote('a', 1000, { covers, adjustments: [{ title: 'no crane', amount: usd(300) }] }),
      quote('b', 1200, { covers }),
      quote('c', 1250, { covers, chosen: true, reason: 'free in that month' }),
    ];
    const { scopes, findings } = quoteView(under({ quotes }));
    expect(scopes).toHaveLength(1);
    expect(scopes[0]?.comparison.rows.map(row => [row.quote.id, row.levelled])).toEqual([
      ['b', 120_000],
      ['c', 125_000],
      ['a', 130_000],
    ]);
    expect(scopes[0]?.neededOn).toBe(bookBasis(EVALUATION).basis?.spans.get(item)?.start);
    expect(scopes[0]?.computed).toBeGreaterThan(0);
    expect(findings).toEqual([]);
  });

  test('that share an item stand together, others apart, and a scope without a choice says so', () => {
    const other = ITEMS.flatMap(one => one.item.lineIds)[1] ?? '';
    const quotes = [
      quote('a', 1000, { covers }),
      quote('b', 900, { covers: [...covers, { item: other, share: '0.5' }] }),
      quote('c', 700, { covers: [{ item: other, share: '1' }] }),
      quote('d', 700, { covers: [{ item: 'public-day', share: '1' }] }),
    ];
    const { scopes, findings } = quoteView(under({ quotes }));
    expect(scopes.map(scope => scope.comparison.rows.length).toSorted()).toEqual([1, 3]);
    expect(findings.filter(one => one.code === 'bid/quote-none-chosen').map(one => one.place)).toEqual([
      '/quotes/c',
      '/quotes/d',
    ]);
  });
});

describe('the margin of the bid', () => {
  test('in the plan it is the profit, and the cost may grow by profit over cost', () => {
    const { price, plan, breakEvenGrowth, simulated } = marginView(EVALUATION);
    const profit = VIEW.internal?.buildUp?.markUps.find(one => one.id === 'profit')?.amount ?? Number.NaN;
    expect(price).toBe(VIEW.sheet?.baseBid);
    expect(plan?.margin).toBe(profit);
    expect(breakEvenGrowth).toBeCloseTo(profit / ((price ?? 0) - profit), 12);
    expect(simulated).toBeUndefined();
  });

  test('simulated, it is the price less the cost of contract work at P50 and P80', () => {
    const { prepared } = prepareRisk(EVALUATION);
    const run = prepared && contractorRun(EVALUATION, prepared);
    if (run === undefined) throw new Error('the demo can be simulated');
    const result = simulate(run, { trials: 400, seed: 3, ranksDrivers: false });
    const view = marginView(EVALUATION, result);
    const rising = [...(result?.samples.total ?? [])].toSorted((a, b) => a - b);
    // 50 and 80 in 100 of 400 trials are the 200th and the 320th in rising order.
    const at = (rank: number) => (view.price ?? 0) - Math.round((rising[rank - 1] ?? Number.NaN) * 100);
    expect(view.simulated?.atP50.margin).toBe(at(200));
    expect(view.simulated?.atP80.margin).toBe(at(320));
    const dearer = rising.filter(cost => cost * 100 > (view.price ?? 0)).length;
    expect(view.simulated?.chanceOfLoss).toBeCloseTo(dearer / 400, 12);
    expect(view.findings.some(one => one.code === 'bid/margin-gone')).toBe(at(320) < 0);
    expect(internalJson(VIEW.internal, quoteView(EVALUATION), view)).toHaveProperty('margin.p80');
  });

  test('without ranges, drivers and events the cost is that of the plan in every trial', () => {
    const { prepared } = prepareRisk(EVALUATION, { ranges: false, events: false });
    const run = prepared && contractorRun(EVALUATION, prepared);
    if (run === undefined) throw new Error('the demo can be simulated');
    const result = simulate(run, { trials: 100, seed: 1, ranksDrivers: false });
    const view = marginView(EVALUATION, result);
    expect(view.simulated?.atP50.cost).toBe(view.plan?.cost);
    expect(view.simulated?.atP80.cost).toBe(view.plan?.cost);
    expect(view.simulated?.chanceOfLoss).toBe(0);
  });
});

describe('a title of the bid', () => {
  test('that names a supplier is a finding', () => {
    const [first] = DEMO.bid?.items ?? [];
    if (first === undefined || DEMO.bid === undefined) throw new Error('the demo has bid items');
    const quotes = [
      {
        id: 'q',
        vendor: 'Brae Tank Cleaning',
        dated: '2026-11-01',
        validUntil: '2027-01-01',
        covers: [{ item: 'ocean-tow', share: '1' }],
        exclusions: [],
        amount: usd(1),
        chosen: false,
      },
    ];
    const items = DEMO.bid.items.map((item, i) =>
      i === 0 ? { ...item, title: 'Tanks by Brae tank cleaning' } : item,
    );
    const view = bidView(under({ quotes, bid: { ...DEMO.bid, items } }));
    expect(view.findings.map(one => [one.code, one.place])).toEqual([
      ['bid/names-supplier', `/bid/items/${first.id}`],
    ]);
  });
});
