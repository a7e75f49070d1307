import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../core/base';
import {
  bookBasis,
  grantView,
  historyView,
  marginView,
  prepareRisk,
  shippedBookRules,
  type Evaluation,
} from '../../../core/evaluation';
import { formMapping } from '../../../core/evaluation/books/form-mapping';
import { sinkingMonth } from '../../../core/evaluation/books/grant-view';
import { historyJson } from '../../../core/evaluation/books/history-json';
import { amountsJson, inDollars, reconciliationJson } from '../../../core/evaluation/books/in-dollars';
import { contractorRun } from '../../../core/evaluation/books/margin-view';
import { priceFactors } from '../../../core/evaluation/books/price-factors';
import { measurementPrices } from '../../../core/evaluation/upright-measurements';
import type { Funding, Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const DEMO = demoProject();
let made: Evaluation | undefined;
/** The example, worked out when it is first asked for. */
const example = (): Evaluation => (made ??= evaluated(DEMO));
/** The same estimate under a document that differs only in what the books read. */
const under = (change: Partial<Project>): Evaluation => ({
  ...example(),
  project: { ...example().project, ...change },
});
const figure = (value: string, unit: string): Figure => ({
  ...{ value, unit, year: 2026, basis: 'quoted', source: 'made up for the test' },
});
function funded(change: Partial<Funding> = {}): Partial<Project> {
  if (DEMO.funding === undefined) throw new Error('the example is funded');
  return { funding: { ...DEMO.funding, ...change } };
}
const basis = (evaluation = example()) => {
  const found = bookBasis(evaluation).basis;
  if (found === undefined) throw new Error('the example has a basis of its books');
  return found;
};
const lineOf = (change: Partial<Project>, id: string) =>
  basis(under(change)).lines.find(line => line.id === id);

// 2 CFR 200.433(b): a contingency is estimated by a broadly accepted method that the documents of the award name.
describe('the narrative of a contingency', () => {
  const said = (change: Partial<Project>) =>
    (grantView(under(change)).book?.awards ?? []).flatMap(award =>
      award.narrative
        .filter(({ rowId }) => rowId.startsWith('contingency/'))
        .map(({ text }) => text.replace(/^\$[\d,.]+ /, '')),
    );

  it('names the share of the estimate and where it comes from', () => {
    const share = figure('0.325', '1');
    const texts = said({ contingency: { policy: 'percentage', share } });
    expect(texts.length).toBeGreaterThan(0);
    expect(new Set(texts)).toEqual(
      new Set([
        'of contingency: its part of 32.5 per cent of the estimate; quoted (made up for the test, 2026).',
      ]),
    );
  });

  it('names the runs that the budget keeps inside where that is the method', () => {
    const texts = said({ contingency: { policy: 'confidence', confidence: '0.8' } });
    expect(texts[0]).toBe(
      'of contingency: its part of what keeps the cost of 80 per cent of 10000 simulated runs inside the budget, beyond the estimate.',
    );
  });
});

describe('the mapping of cost to the lines of the forms', () => {
  it('asks the rows of the user first, then for construction by kind and by work item, then the forms file', () => {
    const { forms } = shippedBookRules();
    const { lines, parts } = basis();
    const own = {
      'SF-424C': [{ when: { stage: 'tow' as const }, to: '9' }],
      'SF-424A': [{ when: {}, to: 'h' }],
    };
    const { 'SF-424A': a = [], 'SF-424C': c = [] } = formMapping(lines, parts.items, forms, own);
    expect(a).toEqual([...own['SF-424A'], ...forms.mappings['SF-424A']]);
    expect(c[0]).toEqual(own['SF-424C'][0]);
    const named = c.filter(row => row.when.lineId !== undefined);
    const titles = new Map(forms.sf424c.classes.map(({ id, title }) => [title, id]));
    expect(named).toEqual(
      parts.items.flatMap(({ id, formLine }) => {
        const to = titles.get(formLine.construction);
        return to === undefined ? [] : [{ when: { lineId: id }, to }];
      }),
    );
    expect(named.length).toBeGreaterThan(20);
    const byKind = c.slice(1, c.indexOf(named[0] ?? { when: {}, to: '' }));
    expect(byKind.length).toBeGreaterThan(0);
    for (const { when } of byKind) {
      expect(when).not.toHaveProperty('stage');
      expect([when.kind === undefined, when.kind === 'contract']).toEqual([false, false]);
    }
    expect(c.slice(-forms.mappings['SF-424C'].length)).toEqual(forms.mappings['SF-424C']);
    const { 'SF-424A': plain } = formMapping(lines, parts.items, forms, {});
    expect(plain).toEqual(forms.mappings['SF-424A']);
  });
});

describe('what a form is told of a line', () => {
  const staff = () => {
    const crews = new Set(
      example()
        .library.rateBook.crews.filter(crew => crew.employer === 'owner')
        .map(crew => crew.id),
    );
    const item = estimated(example()).items.find(
      one => !one.contract && one.crew !== undefined && crews.has(one.crew),
    );
    return item?.id ?? '';
  };

  it('is travel, rent or a price of one piece where the document says so', () => {
    const facts = (more: object) => funded({ lineFacts: [{ item: 'ocean-tow', ...more }] });
    expect(lineOf(funded(), 'ocean-tow')).not.toHaveProperty('travel');
    expect(lineOf(facts({ travel: true }), 'ocean-tow')).toMatchObject({ travel: true });
    expect(lineOf(facts({ rent: true }), 'ocean-tow')).toMatchObject({ rent: true });
    expect(lineOf(facts({ rent: false }), 'ocean-tow')).not.toHaveProperty('rent');
    expect(lineOf(facts({ unitPrice: figure('12.34', 'USD') }), 'ocean-tow')).toMatchObject({
      unitCost: 1234,
    });
    const travelling = estimated(example()).items.find(
      one => !one.contract && one.formLine.objectClass === 'Travel',
    );
    if (travelling !== undefined) {
      expect(lineOf(funded(), travelling.id)).toMatchObject({ travel: true });
      expect(
        lineOf(funded({ lineFacts: [{ item: travelling.id, travel: false }] }), travelling.id),
      ).not.toHaveProperty('travel');
    }
  });

  it('is the contract that names it, else the one of its stage, which no work of the owner has', () => {
    const contracts = [
      { id: 'by-stage', title: 'By stage', stages: ['tow' as const, 'management' as const] },
      { id: 'by-name', title: 'By name', lines: ['ocean-tow', staff()] },
    ];
    const change = funded({ contracts });
    const tow = estimated(example()).items.filter(one => one.stage === 'tow' && one.contract);
    expect(tow.length).toBeGreaterThan(1);
    for (const { id } of tow)
      expect(lineOf(change, id)?.contractId).toBe(id === 'ocean-tow' ? 'by-name' : 'by-stage');
    expect(lineOf(change, staff())?.contractId).toBe('by-name');
    const [first] = contracts;
    if (first === undefined) throw new Error('two contracts');
    const own = estimated(example()).items.filter(one => !one.contract && one.stage === 'management');
    for (const { id } of own)
      expect(lineOf(funded({ contracts: [first] }), id)).not.toHaveProperty('contractId');
    expect(lineOf({ funding: undefined }, 'ocean-tow')).not.toHaveProperty('contractId');
  });

  it('is given in kind where a source gives it, and not where a source pays for it in cash', () => {
    const sources = (support: 'in kind' | 'cash') =>
      funded({
        sources: (DEMO.funding?.sources ?? []).map(source =>
          source.id === 'dive-club' ? { ...source, support, lines: ['ocean-tow'] } : source,
        ),
      });
    expect(lineOf(sources('in kind'), 'ocean-tow')).toMatchObject({ inKind: true });
    expect(lineOf(sources('cash'), 'ocean-tow')).not.toHaveProperty('inKind');
    expect(lineOf(sources('in kind'), 'tow-survey')).not.toHaveProperty('inKind');
  });

  it('has the fringe benefits inside the labour of public staff: burden ÷ (1 + burden)', () => {
    const line = lineOf({}, staff());
    const burden = Number(example().library.rateBook.burdens.publicStaff.value);
    const labour = line?.amounts.labour ?? 0;
    expect(labour).toBeGreaterThan(0);
    expect(Math.abs((line?.fringe ?? 0) - (labour * burden) / (1 + burden))).toBeLessThan(1);
    expect(lineOf({}, 'ocean-tow')).not.toHaveProperty('fringe');
  });

  it('has a credit for scrap that the contractor keeps', () => {
    const yielding = estimated(example()).items.filter(one => one.scrap !== undefined);
    expect(yielding.length).toBeGreaterThan(0);
    const { money } = estimated(example());
    for (const { id } of yielding) {
      const credit = money.result.money(money.scrap.columns.credit, id)?.cents ?? 0;
      expect(lineOf({}, id)?.scrapCredit ?? false, id).toBe(credit !== 0);
    }
    expect(lineOf({}, 'ocean-tow')).not.toHaveProperty('scrapCredit');
  });
});

describe('the grant budget', () => {
  it('is absent without a funding section, and says what to add', () => {
    const view = grantView(under({ funding: undefined }));
    expect([view.book, view.cash, view.input, view.contracts, view.procurement]).toEqual([
      ...[undefined, undefined, undefined],
      ...[[], []],
    ]);
    expect(view.findings).toMatchObject([
      { code: 'funding/section-missing', weight: 'blocks', place: '/funding' },
    ]);
  });

  it('is withheld while a figure of the section is faulty, and not for one of another section', () => {
    const fault = (place: string) => ({
      ...{ code: 'test/fault', weight: 'blocks' as const, place, message: 'm', meaning: 'm', remedy: 'r' },
    });
    const withFault = (place: string) => grantView({ ...under({}), findings: [fault(place)] });
    for (const place of ['/funding', '/funding/sources/county-match/cap']) {
      expect(withFault(place).book).toBeUndefined();
      expect(withFault(place).findings).toContainEqual(fault(place));
    }
    expect(withFault('/fundings/other').book).toBeDefined();
  });

  it('is withheld without a contingency, and says how to set one', () => {
    const of = (contingency: Project['contingency']) => {
      const { money, ...parts } = estimated(evaluated({ ...DEMO, contingency }));
      return grantView({ ...under({ contingency }), estimate: { ...parts, money } });
    };
    const byShare = of({ policy: 'percentage' });
    expect([byShare.book, byShare.cash, byShare.input !== undefined]).toEqual([undefined, undefined, true]);
    expect(byShare.findings.find(one => one.code === 'funding/contingency-absent')).toMatchObject({
      ...{ weight: 'blocks', place: '/contingency/share' },
      remedy: 'Enter its share; for none at all, a share of 0.',
    });
    const byRuns = of({ policy: 'confidence', confidence: '0.8' });
    expect(byRuns.findings.find(one => one.code === 'funding/contingency-absent')).toMatchObject({
      ...{ weight: 'blocks', place: '/contingency/confidence' },
      remedy: 'Run the trials under Risk, which set it, or choose a share.',
    });
  });

  it('pays by fiscal years that add up to its payments, carries the gap at a rate, and none without', () => {
    const { cash, procurement, contracts } = grantView(example());
    const payments = (cash?.cash.payments ?? []).reduce((sum, month) => sum + month.amount, 0);
    expect(payments).toBeGreaterThan(0);
    expect((cash?.fiscalYears ?? []).reduce((sum, year) => sum + year.amount, 0)).toBe(payments);
    expect(cash?.drawdown.map(one => one.sourceId)).toEqual(['sport-fish-grant']);
    expect(cash?.carrying).toBeGreaterThan(0);
    const rateless = grantView(under(funded({ carryingRate: undefined }))).cash;
    expect(rateless).toBeDefined();
    expect(rateless).not.toHaveProperty('carrying');
    // Bought without offers up to the federal 15 000 dollars, formally beyond the county's 100 000.
    expect(procurement.map(({ contractId, method }) => [contractId, method])).toEqual(
      contracts.map(({ contractId, amount }) => [
        contractId,
        amount <= 1_500_000 ? 'micro-purchase' : amount <= 10_000_000 ? 'simplified acquisition' : 'formal',
      ]),
    );
    for (const { limits } of procurement)
      expect(limits).toMatchObject({
        microPurchaseBy: 'federal',
        simplified: 10_000_000,
        simplifiedBy: 'county',
      });
  });

  it('counts the month of the sinking by the last of its stage', () => {
    const { parts, spans, ...rest } = basis();
    const sinking = parts.items.filter(one => one.stage === 'sinking');
    const finishes = sinking.map(one => spans.get(one.id)?.finish ?? '').toSorted();
    expect(sinkingMonth({ ...rest, parts, spans })).toBe(finishes.at(-1)?.slice(0, 7));
    expect(sinkingMonth({ ...rest, parts, spans: new Map() })).toBeUndefined();
  });
});

describe('money as the command line prints it', () => {
  it('is dollars with at most two decimals', () => {
    expect([inDollars(12_345), inDollars(-5)]).toEqual([123.45, -0.05]);
    expect(amountsJson({ one: 100, two: 250 })).toEqual({ one: 1, two: 2.5 });
    const step = (id: string, amount: number, lineIds?: string[]) => ({
      ...{ id, title: `Step ${id}`, amount },
      ...(lineIds && { lineIds }),
    });
    expect(
      reconciliationJson({
        ...{ id: 'r', from: step('a', 1000, ['x']), steps: [step('b', 250, [])], to: step('c', 1250) },
        ...{ difference: 0, closes: true },
      }),
    ).toEqual({
      ...{ id: 'r', difference: 0, closes: true },
      from: { id: 'a', title: 'Step a', amount: 10, lines: ['x'] },
      steps: [{ id: 'b', title: 'Step b', amount: 2.5 }],
      to: { id: 'c', title: 'Step c', amount: 12.5 },
    });
  });

  it('of past hulls leaves out what is not known', () => {
    expect(historyJson({ cases: [], likeHulls: [], findings: [] })).toEqual({ cases: [], likeHulls: [] });
    const view = historyView(example());
    const json = historyJson(view);
    expect(json).toMatchObject({
      total: (view.total ?? 0) / 100,
      contingency: (view.contingency ?? 0) / 100,
      growth: {
        ...{ factor: view.growth?.factor, least: 0.84, median: 1.32, most: 1.66 },
        ...{ belowMedian: view.growth?.isBelowMedian, atMost: (view.growth?.atMost ?? 0) / 100 },
      },
      band: { low: (view.band?.low ?? 0) / 100, high: (view.band?.high ?? 0) / 100 },
    });
    expect(json['cases']).toEqual(view.cases.map(one => ({ ...one, cost: one.cost / 100 })));
    expect(json['likeHulls']).toEqual(view.likeHulls.map(one => ({ ...one, today: one.today / 100 })));
  });

  it('knows the factor of every year of the index to the price date', () => {
    const factors = priceFactors(basis());
    const years = example().library.indices.indices[0]?.years ?? [];
    expect(Object.keys(factors).map(Number)).toEqual(years.map(({ year }) => year).toSorted((a, b) => a - b));
    // Prices of a year with a lower index grow by more.
    const last = years.at(-1);
    for (const { year, value } of years)
      expect((factors[year] ?? 0) * Number(value)).toBeCloseTo(
        (factors[last?.year ?? 0] ?? 0) * Number(last?.value),
        2,
      );
  });
});

describe('the margin of the bid', () => {
  it('is price less the cost of the plan, which is the price without profit', () => {
    const view = marginView(example());
    const { price = 0, plan } = view;
    expect(plan?.cost).toBeLessThan(price);
    expect(plan?.margin).toBe(price - (plan?.cost ?? 0));
    expect(view.breakEvenGrowth).toBeCloseTo((plan?.margin ?? 0) / (plan?.cost ?? 1), 9);
  });

  it('is simulated with the contract lines alone: beyond the plan all that they come to is the contractor’s', () => {
    const { prepared } = prepareRisk(example());
    if (prepared === undefined) throw new Error('the example can be simulated');
    const run = contractorRun(example(), prepared);
    const { plan } = marginView(example());
    expect(run?.plan.total).toBeCloseTo((plan?.cost ?? 0) / 100, 2);
    const contract = new Set(
      estimated(example())
        .items.filter(one => one.contract)
        .map(one => one.id),
    );
    for (const event of run?.events ?? [])
      for (const { line } of event.costs) expect(contract.has(line)).toBe(true);
  });
});

describe('the price of a measurement', () => {
  it('is the direct cost and the days of its work item, and none where that was taken out', () => {
    const parts = estimated(example());
    const prices = measurementPrices(parts);
    const direct = parts.money.result.money(parts.money.lines.columns.direct, 'weight-survey')?.cents;
    const days = parts.schedule.activities.find(one => one.id === 'weight-survey')?.workDays;
    expect(prices['weight list']).toEqual(direct === undefined ? undefined : { cost: direct / 100, days });
    expect(Object.keys(prices).length).toBeGreaterThan(0);
    const items = parts.items.filter(one => one.id !== 'hull-visit');
    expect(measurementPrices({ ...parts, items })).not.toHaveProperty('draught survey');
    expect(measurementPrices(parts)).toHaveProperty('draught survey');
    const { money: _money, ...unpriced } = parts;
    expect(measurementPrices(unpriced)).toEqual({});
  });
});
