import { describe, expect, it } from 'vitest';
import {
  benefitJson,
  benefitView,
  bidJson,
  bidView,
  bookBasis,
  estimateJson,
  fundingJson,
  grantInput,
  grantView,
  marginView,
  prepareRisk,
  quotedLines,
  quoteView,
  reviewInput,
  shippedBookRules,
  tabulationView,
  type BookBasis,
  type Evaluation,
} from '../../../core/evaluation';
import { reviewSchedule } from '../../../core/evaluation/books/review-schedule';
import type { Figure } from '../../../core/base';
import { fromCents } from '../../../core/money';
import type { Benefits, Funding, Project } from '../../../core/project';
import { simulate } from '../../../core/risk';
import { demoProject, estimated, evaluated } from './demo';

const DEMO: Project = demoProject();
const EVALUATION = evaluated(DEMO);
const RULES = shippedBookRules();

/** The same estimate under a document that differs only in what the books read. */
function under(change: Partial<Project>): Evaluation {
  return { ...EVALUATION, project: { ...EVALUATION.project, ...change } };
}

function basisOf(evaluation: Evaluation): BookBasis {
  const { basis, findings } = bookBasis(evaluation);
  if (basis === undefined) throw new Error(JSON.stringify(findings));
  return basis;
}

const figure = (value: string, unit: string): Figure => ({
  ...{ value, unit, year: 2026 },
  ...{ basis: 'quoted', source: 'made up for the test' },
});
const usd = (value: string) => figure(value, 'USD');

function funded(change: Partial<Funding> = {}): Funding {
  if (DEMO.funding === undefined) throw new Error('the example is funded');
  return { ...DEMO.funding, ...change };
}

describe('the funding section as a grant budget takes it', () => {
  const basis = basisOf(EVALUATION);
  const inputOf = (change: Partial<Funding>, of: BookBasis = basis) => grantInput(of, funded(change), RULES);

  it('carries caps of stages, activities and the line that a grantor wants indirect cost on', () => {
    const activities = [{ id: 'all', title: 'All of it', stages: ['tow' as const, 'sinking' as const] }];
    const sources = funded().sources.map(source => ({
      ...source,
      stageCaps: [{ stage: 'tow' as const, cap: usd('1500.25') }],
      indirectLine: 'other',
    }));
    const { plan } = inputOf({ activities, sources });
    expect(plan.activities).toEqual(activities);
    expect(plan.sources[0]).toMatchObject({ stageCaps: { tow: 150_025 }, indirectLine: 'other' });
    expect(inputOf({}).plan.sources[0]).not.toHaveProperty('stageCaps');
  });

  it('takes a negotiated rate with its agreement, and a retainage of its own in place of the usual one', () => {
    const indirect = {
      kind: 'negotiated',
      rate: figure('0.22', '1'),
      agreement: 'Made-up agreement',
    } as const;
    const { plan } = inputOf({ indirect, payment: { retainage: figure('0.08', '1') } });
    expect(plan.indirect).toEqual({ kind: 'negotiated', rate: 0.22, agreement: 'Made-up agreement' });
    expect(plan.payment.retainage).toBe(0.08);
    expect(inputOf({}).plan.payment.retainage).toBe(0.05);
  });

  it('spends the contingency of a project under way from its status month on', () => {
    const late = basisOf(under({ statusDate: '2027-05-20' }));
    expect(inputOf({}, late).contingency?.fromMonth).toBe('2027-05');
    expect(inputOf({}).contingency).not.toHaveProperty('fromMonth');
  });

  it('takes scrap by who keeps it, and none where there is none', () => {
    const scrapped = (scrapCredit?: number, scrapIncome?: number, spans = basis.spans) => {
      const money = (cents?: number) => (cents === undefined ? undefined : fromCents(cents));
      const summary = {
        ...basis.summary,
        ...{ scrapCredit: money(scrapCredit), scrapIncome: money(scrapIncome) },
      };
      return inputOf({}, { ...basis, summary, spans }).scrap;
    };
    expect(scrapped(5000, 0)).toEqual({ amount: 5000, keptBy: 'contractor' });
    expect([scrapped(0, 0), scrapped()]).toEqual([undefined, undefined]);
    expect(scrapped(0, 700)).toMatchObject({ amount: 700, keptBy: 'owner' });
    expect(scrapped(0, 700)?.month).toMatch(/^202\d-\d\d$/);
    expect(scrapped(0, 700, new Map())).toEqual({ amount: 700, keptBy: 'owner' });
  });

  it('prints the form of construction where a source asks for that one', () => {
    const sources = funded().sources.map(source =>
      source.form === 'none' ? source : { ...source, form: 'SF-424C' as const },
    );
    const evaluation = under({ funding: funded({ sources, indirect: { kind: 'none' } }) });
    const printed = JSON.stringify(fundingJson(evaluation, grantView(evaluation)));
    expect(printed).toContain('"form":"SF-424C"');
    expect(printed).not.toContain('sectionA');
  });
});

describe('the bid form', () => {
  const item = { headings: [], unit: 't', unitPriced: false };
  const items = [
    {
      ...item,
      id: 'cable',
      title: 'Cable',
      unitPriced: true,
      quantity: figure('40', 't'),
      lines: ['cable-stripping'],
    },
    { ...item, id: 'unforeseen', title: 'Unforeseen', unit: 'allowance', lines: [], allowance: usd('25000') },
    { ...item, id: 'rest', title: 'Rest', unit: 'lump sum', lines: [], headings: [] },
  ];
  const bid = { items, alternates: [] };

  it('prints unit prices and allowances where an item has them', () => {
    const evaluation = under({ bid, receivedBids: [] });
    const json = bidJson(evaluation, bidView(evaluation), tabulationView(evaluation));
    const rows = (json['items'] ?? []) as Record<string, unknown>[];
    const cable = rows.find(row => row['id'] === 'cable');
    expect(cable?.['amount']).toBeCloseTo(40 * Number(cable?.['unitPrice']), 0);
    expect(rows.find(row => row['id'] === 'unforeseen')).toMatchObject({ amount: 25_000, allowance: true });
    expect(cable).not.toHaveProperty('allowance');
  });

  it('takes the range of a quantity to the tabulation, where the least and the most may turn the ranks', () => {
    const ranged = [
      { ...items[0], quantity: { ...figure('40', 't'), low: '10', high: '90' } },
      ...items.slice(1),
    ];
    const price = (id: string, cable: string, other: string) => ({
      ...{ id, bidder: id, alternates: [] },
      prices: [
        { item: 'cable', unitPrice: usd(cable) },
        { item: 'unforeseen', amount: usd('25000') },
        { item: 'rest', amount: usd(other) },
      ],
    });
    const receivedBids = [price('a', '100', '9000'), price('b', '160', '7000'), price('c', '130', '8500')];
    const evaluation = under({ bid: { ...bid, items: ranged as typeof items }, receivedBids });
    const { comparison } = tabulationView(evaluation);
    // 40 t: 13,000 against 13,400 and 13,700; with 10 t the second bid is the lowest.
    expect(comparison?.totals.map(one => one.rank)).toEqual([1, 2, 3]);
    expect(JSON.stringify(comparison)).toContain('b');
  });
});

describe('quotes that cannot stand side by side', () => {
  const quote = (id: string, amount: Figure, items: readonly string[]) => ({
    ...{ id, vendor: `Vendor ${id}`, dated: '2026-10-20', validUntil: '2029-06-30', exclusions: [] },
    ...{ covers: items.map(item => ({ item, share: '1' })), amount, chosen: false },
  });

  it('a price for one unit of two lines is none, and a price in another unit neither', () => {
    const priced = (amount: Figure, ...items: string[]) =>
      quoteView(under({ quotes: [quote('a', amount, items)] })).scopes[0]?.comparison.rows.map(
        row => row.quote.amount,
      );
    expect(priced(usd('71500'), 'tow-tug', 'ocean-tow')).toEqual([7_150_000]);
    expect(priced(figure('715', 'USD/m2'), 'tow-tug', 'ocean-tow')).toEqual([]);
    expect(priced(figure('715', 'USD/m2'), 'tow-tug')).toEqual([]);
  });

  it('a quote for a line that costs nothing and that no other carries is told as dear as it is', () => {
    const parts = estimated(EVALUATION);
    const free = parts.money.lines.scope.rows.find(
      row => parts.money.result.money(parts.money.lines.columns.computed, row.key)?.cents === 0,
    );
    if (free === undefined) throw new Error('a line of the example costs nothing by itself');
    const quotes = [{ ...quote('a', usd('900'), [free.key]), chosen: true }];
    const alone = parts.planned.map(plan => ({ ...plan, item: { ...plan.item, span: undefined } }));
    const { findings } = quotedLines({ ...DEMO, quotes }, parts.money, '2026-11-24', alone);
    expect(findings.map(one => one.message).join(' ')).toContain(
      'which cost nothing before. Other lines carry what it uses.',
    );
  });
});

describe('what the reef is worth', () => {
  const { benefits } = DEMO;
  if (benefits === undefined) throw new Error('the example has benefits');
  const viewOf = (change: Partial<Benefits>) => {
    const evaluation = under({ benefits: { ...benefits, ...change } });
    return benefitJson(evaluation, benefitView(evaluation));
  };

  it('has no life where the thickness of the plate is not one', () => {
    expect(viewOf({})).toHaveProperty('life');
    expect(viewOf({ plateThickness: figure('11', 't') })).not.toHaveProperty('life');
  });

  it('takes visits and their value without a range as certain: one benefit a year at low, likely and high', () => {
    const uses = [
      {
        ...{ id: 'diving', title: 'Diving' },
        ...{ visitsPerYear: figure('1000', '1'), valuePerVisit: figure('50', 'USD') },
      },
    ];
    const view = benefitView(under({ benefits: { ...benefits, uses } }));
    const { low, likely, high } = view.case ?? {};
    expect([low?.benefitPerYear, likely?.benefitPerYear, high?.benefitPerYear]).toEqual([
      5_000_000, 5_000_000, 5_000_000,
    ]);
  });

  it('prints what removal would cost only where somebody knows it', () => {
    const removal = (removalIfItMoves: Benefits['removalIfItMoves']) =>
      viewOf({ removalIfItMoves })['onlyIfItHappens'];
    expect(removal({ party: 'county', amount: usd('400000') })).toMatchObject([
      { party: 'county', amount: 400_000 },
    ]);
    expect(JSON.stringify(removal({ party: 'county' }))).not.toContain('amount');
    const printed = fundingJson(
      ...([
        under({ benefits: { ...benefits, removalIfItMoves: { party: 'county', amount: usd('400000') } } }),
      ].map(one => [one, grantView(one)] as const)[0] ?? [EVALUATION, grantView(EVALUATION)]),
    );
    expect(JSON.stringify(printed)).toContain('"amount":400000');
  });

  it('keeps the year of an obligation of the owner’s own', () => {
    const own = { ...{ id: 'buoy', title: 'Buoy', party: 'county' }, firstYear: 1, years: 3 };
    const { year: _, ...timeless } = usd('800');
    const obligations = [
      { ...own, costPerYear: usd('900') },
      { ...own, id: 'lamp', costPerYear: timeless },
    ];
    const view = benefitView(under({ benefits: { ...benefits, obligations } }));
    expect(view.obligations?.beside.map(one => [one.id, one.basis.year])).toEqual([
      ['buoy', 2026],
      ['lamp', undefined],
    ]);
  });
});

describe('the margin', () => {
  it('has no simulated part where no run has an answer', () => {
    const { prepared } = prepareRisk(EVALUATION);
    const result = prepared && simulate(prepared.run, { trials: 64, seed: 1, ranksDrivers: false });
    if (result === undefined) throw new Error('the example can be simulated');
    const none = { ...result, samples: { ...result.samples, total: new Float64Array(0) } };
    expect(marginView(EVALUATION, none)).not.toHaveProperty('simulated');
    expect(marginView(EVALUATION, result)).toHaveProperty('simulated');
  });
});

describe('a planner’s own dates and relationships', () => {
  const relationship = {
    ...{ from: 'hull-visit', to: 'award', kind: 'FS' as const, note: 'The board meets once a month.' },
    ...{ lag: figure('3', 'work-day'), maximumLag: figure('500', 'work-day') },
  };
  const items = [
    { item: 'hull-visit', note: 'The owner opens the ship in February.', notBefore: '2027-02-08' },
    { item: 'bid-evaluation', note: 'Agreed.' },
  ];
  const options = { ...DEMO.options, 'scrap-keeper': 'owner', 'episodic-event': 'planned' };
  const evaluation = evaluated({ ...DEMO, items, options, relationships: [relationship] });
  const basis = basisOf(evaluation);

  it('reach the review of the schedule with their reasons', () => {
    const { activities, relationships } = reviewSchedule(basis);
    expect(activities.find(one => one.id === 'hull-visit')).toMatchObject({
      ...{ fixedDate: '2027-02-08', reason: 'The owner opens the ship in February.' },
    });
    expect(activities.find(one => one.id === 'award')).not.toHaveProperty('fixedDate');
    expect(relationships.filter(one => one.reason === relationship.note)).toMatchObject([
      { from: 'hull-visit', to: 'award', lag: 3 },
    ]);
  });

  it('keep the latest lag in the schedule, which trials cannot follow', () => {
    const { problem } = estimated(evaluation);
    expect(problem.relationships.filter(one => one.maximumLag === 500)).toHaveLength(1);
    const { prepared, findings } = prepareRisk(evaluation);
    expect(prepared).toBeUndefined();
    expect(findings.map(one => one.message).join(' ')).toContain('in a way trials cannot follow');
  });

  it('leave a stage without dates where none of its work is scheduled', () => {
    const { parts } = basis;
    const topside = new Set(parts.items.filter(item => item.stage === 'topside').map(item => item.id));
    const activities = parts.schedule.activities.filter(one => !topside.has(one.id));
    const without = { ...basis, parts: { ...parts, schedule: { ...parts.schedule, activities } } };
    const stages = (of: BookBasis) => reviewSchedule(of).stageDates.map(one => one.stage);
    expect(stages(basis).filter(stage => !stages(without).includes(stage))).toEqual(['topside']);
  });

  it('print the scrap that the owner sells, and the event that the planner has planned', () => {
    const json = estimateJson(evaluation);
    expect(json['scrap']).toMatchObject({ keptBy: 'owner' });
    expect(json).toHaveProperty('episodicEvent.noticeBy');
    expect(estimateJson(EVALUATION)['scrap']).toMatchObject({ keptBy: 'contractor' });
    expect(estimateJson(EVALUATION)).not.toHaveProperty('episodicEvent');
  });

  it('are looked at with every line of the estimate', () => {
    const { lines, schedule, total } = reviewInput(basis, RULES.growth);
    expect(lines.map(line => line.id)).toEqual(basis.lines.map(line => line.id));
    expect([schedule?.finish, total]).toEqual([basis.parts.schedule.finish, basis.summary.total?.cents]);
  });
});
