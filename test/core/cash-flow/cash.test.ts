import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  byFiscalYear,
  carryingCost,
  cashView,
  mostCarried,
  checkDrawdown,
  checkLines,
  contingencyByMonth,
  contractPayments,
  cumulativeCurve,
  drawdownPlan,
  fiscalYearOf,
  paymentsOfLines,
  spendingByMonth,
  spreadByDays,
  spreadLike,
  sumCents,
  totalOfMonths,
  type PaymentTerms,
  type SourcePayments,
} from '../../../core/cash-flow';
import { line, randomLines, usd } from './lines';

const TERMS: PaymentTerms = { retainage: 0.05, releaseAfterMonths: 2, contractPayLag: 1, ownPayLag: 0 };

describe('spending', () => {
  it('a cost over 10 March to 19 April is spread by the days of each month', () => {
    // 22 days of March and 19 of April: 41 days; 4,100.00 is 100.00 a day.
    expect(spreadByDays(usd(4100), '2027-03-10', '2027-04-19')).toEqual([
      { month: '2027-03', amount: usd(2200) },
      { month: '2027-04', amount: usd(1900) },
    ]);
  });

  it('the cumulative curve fills quiet months and ends at the total', () => {
    const curve = cumulativeCurve([
      { month: '2027-11', amount: 100 },
      { month: '2028-01', amount: 50 },
    ]);
    expect(curve.map(row => [row.month, row.amount, row.cumulative])).toEqual([
      ['2027-11', 100, 100],
      ['2027-12', 0, 100],
      ['2028-01', 50, 150],
    ]);
    expect(cumulativeCurve([])).toEqual([]);
  });

  it('contingency follows the work not yet spent', () => {
    const spending = [
      { month: '2027-01', amount: 500 },
      { month: '2027-02', amount: 300 },
      { month: '2027-03', amount: 100 },
    ];
    expect(contingencyByMonth(80, spending, '2027-02')).toEqual([
      { month: '2027-02', amount: 60 },
      { month: '2027-03', amount: 20 },
    ]);
    expect(contingencyByMonth(80, spending, '2028-01')).toEqual([{ month: '2027-03', amount: 80 }]);
    expect(contingencyByMonth(80, [])).toEqual([]);
  });

  it('lines whose elements or months do not add up are found, each by its id', () => {
    const good = line({ id: 'good', amounts: { ...zero, labour: 100 } });
    expect(checkLines([good])).toEqual([]);
    const bad = { ...good, id: 'bad', amounts: { ...good.amounts, labour: 101 } };
    const late = { ...good, id: 'late', months: [{ month: '2027-03', amount: 99 }] };
    const rich = { ...good, id: 'rich', fringe: 101 };
    expect(checkLines([bad, late, rich, rich]).map(f => `${f.code} ${f.place}`)).toEqual([
      'books/line-twice /lines/rich',
      'books/line-elements /lines/bad',
      'books/line-months /lines/late',
      'books/line-fringe /lines/rich',
      'books/line-fringe /lines/rich',
    ]);
  });
});

const zero = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };

describe('fiscal years', () => {
  // 31 USC 1102: the federal fiscal year begins on 1 October and is named after the year in which it ends.
  it('a year that starts in October is named after the year in which it ends', () => {
    expect([fiscalYearOf('2026-09', 10), fiscalYearOf('2026-10', 10), fiscalYearOf('2027-01', 10)]).toEqual([
      2026, 2027, 2027,
    ]);
    expect(fiscalYearOf('2026-12', 1)).toBe(2026);
  });

  it('changing the start month moves money between years and no total', () => {
    fc.assert(
      fc.property(randomLines, fc.integer({ min: 1, max: 12 }), (lines, start) => {
        const years = byFiscalYear(spendingByMonth(lines), start);
        expect(sumCents(years.map(year => year.amount))).toBe(sumCents(lines.map(one => one.total)));
      }),
    );
  });
});

describe('payments', () => {
  it('retainage of 5 in 100 is held back each month and released whole', () => {
    const work = [
      { month: '2027-01', amount: usd(1000) },
      { month: '2027-02', amount: usd(1000) },
    ];
    expect(contractPayments(work, TERMS).paid).toEqual([
      { month: '2027-02', amount: usd(950) },
      { month: '2027-03', amount: usd(950) },
      { month: '2027-05', amount: usd(100) },
    ]);
    expect(contractPayments([], TERMS)).toEqual({ paid: [], held: [], released: [] });
  });

  it('payments with the released retainage add up to the total, and with contingency to the budget', () => {
    fc.assert(
      fc.property(
        randomLines,
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.nat(1e9),
        (lines, retainage, contingency) => {
          const total = sumCents(lines.map(one => one.total));
          fc.pre(total > 0);
          const paid = paymentsOfLines(lines, { ...TERMS, retainage }).paid;
          expect(totalOfMonths(paid)).toBe(total);
          const reserve = contingencyByMonth(contingency, spendingByMonth(lines));
          expect(totalOfMonths([...paid, ...reserve])).toBe(total + contingency);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('nobody is paid for a donated line', () => {
    const donated = line({ id: 'gift', inKind: true, amounts: { ...zero, labour: 500 } });
    expect(paymentsOfLines([donated], TERMS).paid).toEqual([]);
  });
});

describe('the cash gap', () => {
  const paid = [
    { month: '2027-01', amount: usd(100) },
    { month: '2027-02', amount: usd(100) },
  ];
  const sources = (lagMonths: number): SourcePayments[] => [
    {
      sourceId: 'grant',
      title: 'Grant',
      mode: 'reimbursement',
      lagMonths,
      bears: paid.map(p => ({ ...p, amount: usd(75) })),
    },
    {
      sourceId: 'county',
      title: 'County',
      mode: 'own',
      lagMonths: 0,
      bears: paid.map(p => ({ ...p, amount: usd(25) })),
    },
  ];

  it('a grant paid back two months late leaves its share of two months to carry', () => {
    const view = cashView(paid, sources(2));
    expect(view.peak).toEqual({ month: '2027-02', amount: usd(150) });
    expect(view.months.map(row => [row.month, row.carried, row.gap])).toEqual([
      ['2027-01', usd(100), usd(75)],
      ['2027-02', usd(200), usd(150)],
      ['2027-03', usd(125), usd(75)],
      ['2027-04', usd(50), 0],
    ]);
    expect(mostCarried(view)).toEqual({ month: '2027-02', amount: usd(200) });
    expect(mostCarried({ months: [] })).toBeUndefined();
  });

  it('an advance leaves no gap', () => {
    const [grant, county] = sources(2);
    if (!grant || !county) throw new Error('two sources');
    const view = cashView(paid, [{ ...grant, mode: 'advance' }, county]);
    expect(view.peak).toBeUndefined();
    // The county has its own share out all the same.
    expect(mostCarried(view)).toEqual({ month: '2027-02', amount: usd(50) });
  });

  it('the lag moves the gap and no total', () => {
    fc.assert(
      fc.property(fc.nat(8), fc.nat(8), (a, b) => {
        const [left, right] = [cashView(paid, sources(a)), cashView(paid, sources(b))];
        expect([left.totalPaid, left.totalReceived]).toEqual([right.totalPaid, right.totalReceived]);
        if (a > b) expect(left.peak?.amount ?? 0).toBeGreaterThanOrEqual(right.peak?.amount ?? 0);
      }),
    );
  });

  it('carrying 75, 150 and 75 dollars for a month each at 12 in 100 a year costs 3 dollars', () => {
    // simple interest: 1 in 100 a month of 75 + 150 + 75 = 300
    expect(carryingCost(cashView(paid, sources(2)), 0.12)).toBe(usd(3));
  });
});

describe('drawing a grant', () => {
  const even = ['2027-01', '2027-02', '2027-03', '2027-04'];
  const months = (amounts: number[]) =>
    amounts.map((amount, i) => ({ month: even[i] ?? '', amount: usd(amount) }));

  // 50 CFR 80.96: federal money is not drawn in a larger proportion than the match that was spent.
  it('waits for the match and catches up when it is spent', () => {
    const plan = drawdownPlan({ grant: months([75, 75, 75, 75]), match: months([0, 0, 50, 50]) });
    expect(plan.map(row => row.draw)).toEqual([0, 0, usd(150), usd(150)]);
    expect(checkDrawdown(plan, usd(300), usd(100))).toEqual([]);
  });

  it('waits for a credit that will lower the match, since what is drawn is not paid back', () => {
    // the match goes 40, 80, 60, 100 of 100: no more than 60 in 100 of the grant before the last month
    const plan = drawdownPlan({ grant: months([75, 75, 75, 75]), match: months([40, 40, -20, 40]) });
    expect(plan.map(row => row.drawn)).toEqual([usd(75), usd(150), usd(180), usd(300)]);
    expect(checkDrawdown(plan, usd(300), usd(100))).toEqual([]);
  });

  it('may run ahead of the match where the rule allows it, and the check says so', () => {
    const plan = drawdownPlan({
      grant: months([75, 75, 75, 75]),
      match: months([0, 0, 50, 50]),
      mayRunAhead: true,
    });
    expect(plan.map(row => row.draw)).toEqual([usd(75), usd(75), usd(75), usd(75)]);
    expect(checkDrawdown(plan, usd(300), usd(100)).map(f => f.place)).toEqual([
      '/drawdown/2027-01',
      '/drawdown/2027-02',
      '/drawdown/2027-03',
    ]);
  });

  it('uses program income in hand before more of the grant', () => {
    const plan = drawdownPlan({
      grant: months([60, 60, 60, 60]),
      match: months([20, 20, 20, 20]),
      income: { bears: months([15, 15, 15, 15]), received: [{ month: '2027-01', amount: usd(60) }] },
    });
    expect(plan.map(row => row.drawn)).toEqual([usd(15), usd(90), usd(165), usd(240)]);
  });

  it('is never ahead of the match and ends at the whole grant', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(1e7), fc.nat(1e7)), { minLength: 1, maxLength: 4 }), pairs => {
        const grant = pairs.map(([amount], i) => ({ month: even[i] ?? '', amount }));
        const match = pairs.map(([, amount], i) => ({ month: even[i] ?? '', amount }));
        const plan = drawdownPlan({ grant, match });
        expect(checkDrawdown(plan, totalOfMonths(grant), totalOfMonths(match))).toEqual([]);
        expect(plan.at(-1)?.drawn).toBe(totalOfMonths(grant));
      }),
    );
  });

  it('a pattern spreads a total to the cent', () => {
    expect(totalOfMonths(spreadLike(100, months([1, 1, 1])))).toBe(100);
  });
});

describe('nothing to pay', () => {
  it('is a view without months, without a peak and without carrying cost', () => {
    const view = cashView([], []);
    expect(view).toMatchObject({ months: [], totalPaid: 0, totalReceived: 0 });
    expect(view).not.toHaveProperty('peak');
    expect(carryingCost(view, 0.05)).toBe(0);
  });
});
