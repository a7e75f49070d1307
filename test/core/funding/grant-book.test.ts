import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bookOfMonths,
  checkLines,
  differenceFindings,
  locateDifferences,
  sumCents,
  totalOfMonths,
  drawdownPlan,
  checkDrawdown,
  paymentsOfLines,
  type Book,
} from '../../../core/cash-flow';
import {
  bookOfForm,
  bookOfNarrative,
  drawBasisOf,
  federalRequest,
  formTotal,
  grantBook,
  grantCash,
  printedShares,
  type FundingPlan,
  type GrantBook,
  type GrantInput,
} from '../../../core/funding';
import { line } from '../cash-flow/lines';
import { COUNTY, FEDERAL, FORMS, PLAN, RULES, randomGrant, usd } from './plans';

const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };

function bookFor(input: GrantInput): GrantBook {
  const { book, findings } = grantBook(input, RULES, FORMS);
  if (!book) throw new Error(JSON.stringify(findings));
  return book;
}

const own = (id: string, dollars: number, more: Partial<Parameters<typeof line>[0]> = {}) =>
  line({ id, amounts: { ...none, labour: usd(dollars) }, ...more });
const contract = (id: string, dollars: number, more: Partial<Parameters<typeof line>[0]> = {}) =>
  line({ id, contract: true, amounts: { ...none, subcontract: usd(dollars) }, ...more });

describe('SF-424C', () => {
  // The form's own arithmetic, OMB 4040-0008: 14 = 12 + 13, 16 = 14 − 15, 17 = 16c × share.
  it('lines 1 to 11 of 700,000, contingency 70,000 and income 20,000 give 750,000, and 75 in 100 is 562,500', () => {
    const book = bookFor({
      lines: [contract('prep', 600_000), own('permit', 100_000, { stage: 'permits' })],
      contingency: {
        amount: usd(70_000),
        isByAcceptedMethod: true,
        isDocumented: true,
        isAcceptedByAgency: true,
        isReserve: false,
      },
      scrap: { amount: usd(20_000), keptBy: 'owner', month: '2027-04' },
      plan: { ...PLAN, sources: [{ ...FEDERAL, form: 'SF-424C' }, COUNTY] },
    });
    const form = book.awards[0]?.form;
    if (form?.kind !== 'SF-424C') throw new Error('SF-424C expected');
    const line = (id: string) => form.lines.find(one => one.id === id)?.allowable;
    expect(['1', '8', '12', '13', '14', '15', '16'].map(line)).toEqual(
      [100_000, 600_000, 700_000, 70_000, 770_000, 20_000, 750_000].map(usd),
    );
    expect(form.line17).toEqual({ share: 0.75, federal: usd(562_500), isCapped: false });
    expect(book.reconciliation.closes).toBe(true);
    expect(book.reconciliation.steps.map(step => [step.id, step.amount])).toEqual([
      ['contingency', usd(70_000)],
      ['program-income', -usd(20_000)],
    ]);
  });

  it('asks where the grantor wants indirect cost, and gives no form until told', () => {
    const plan: FundingPlan = {
      ...PLAN,
      sources: [{ ...FEDERAL, form: 'SF-424C' }, COUNTY],
      indirect: { kind: 'de minimis' },
    };
    const asked = grantBook({ lines: [own('a', 1000)], plan }, RULES, FORMS);
    expect(asked.book).toBeUndefined();
    expect(asked.findings.map(found => found.code)).toContain('funding/indirect-line');
    const told = { ...plan, sources: [{ ...FEDERAL, form: 'SF-424C' as const, indirectLine: '1' }, COUNTY] };
    const form = bookFor({ lines: [own('a', 1000)], plan: told }).awards[0]?.form;
    expect(form?.kind === 'SF-424C' && form.lines.find(one => one.id === '1')?.allowable).toBe(usd(150));
  });
});

describe('SF-424A', () => {
  const input: GrantInput = {
    lines: [
      own('inspector', 30_000, { stage: 'acceptance', fringe: usd(9_000) }),
      own('trip', 4_000, { travel: true, stage: 'management' }),
      line({ id: 'crane', unitCost: usd(12_000), amounts: { ...none, equipment: usd(12_000) } }),
      line({ id: 'pump', unitCost: usd(900), amounts: { ...none, equipment: usd(900) } }),
      contract('prep', 500_000, { contractId: 'prep' }),
    ],
    scrap: { amount: usd(60_000), keptBy: 'owner', month: '2027-04' },
    plan: { ...PLAN, contractClasses: { prep: 'subaward' }, indirect: { kind: 'de minimis' } },
  };

  it('puts each cost in its object class, k = i + j, and program income outside k', () => {
    const book = bookFor(input);
    const form = book.awards[0]?.form;
    if (form?.kind !== 'SF-424A') throw new Error('SF-424A expected');
    const cell = (id: string) => form.sectionB.find(one => one.id === id)?.total ?? -1;
    // base: 21,000 wages + 9,000 fringe + 4,000 travel + 900 supplies + 50,000 of the subaward = 84,900; 15 in 100 is 12,735
    expect(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j', 'k', '7'].map(cell)).toEqual(
      [21_000, 9_000, 4_000, 12_000, 900, 500_000, 0, 0, 546_900, 12_735, 559_635, 60_000].map(usd),
    );
    expect(cell('k')).toBe(cell('i') + cell('j'));
    expect(form.sectionA.total.total).toBe(cell('k'));
    // deduction: 75 in 100 of 559,635 − 60,000 = 499,635
    expect(form.sectionA.total.federal).toBe(usd(374_726.25));
    expect(form.sectionC.total).toBe(form.sectionA.total.nonFederal);
  });

  it('ties out row by row: form, estimate and printed sentences agree', () => {
    const rows = bookFor(input).awards[0]?.tieOut ?? [];
    expect(rows.map(row => row.classId)).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'j']);
    expect(rows.every(row => row.formDifference === 0 && row.narrativeDifference === 0)).toBe(true);
    expect(rows[0]).toMatchObject({ lineIds: ['inspector'] });
    expect(rows[0]?.sentences[0]).toBe(
      "$21,000.00 for inspector, wages; the estimator's judgement (invented for the test).",
    );
  });

  it('has no indirect cost and no form while a big contract has no class, but shows the three results', () => {
    const outcome = grantBook({ ...input, plan: { ...input.plan, contractClasses: {} } }, RULES, FORMS);
    expect(outcome.book).toBeUndefined();
    expect(outcome.findings.map(found => found.code)).toContain('funding/contract-class');
    expect(outcome.contracts[0]?.results.map(one => one.base)).toEqual([534_900, 84_900, 34_900].map(usd));
  });

  it('refuses a de minimis rate above that of the award date', () => {
    const plan: FundingPlan = {
      ...input.plan,
      indirect: { kind: 'de minimis', rate: 0.15 },
      awardDate: '2024-09-30',
    };
    expect(grantBook({ ...input, plan }, RULES, FORMS).findings.map(found => found.code)).toContain(
      'funding/rate-above-de-minimis',
    );
  });
});

describe('the award period', () => {
  const spread = own('survey', 300, {
    months: [
      { month: '2026-12', amount: usd(100) },
      { month: '2027-01', amount: usd(100) },
      { month: '2029-01', amount: usd(100) },
    ],
  });
  it('cost before it is pre-award cost, cost after it is unallowable, both found by month', () => {
    const book = bookFor({ lines: [spread], plan: PLAN });
    expect(book.reconciliation.steps.map(step => [step.id, step.amount, step.lineIds])).toEqual([
      ['before-award', -usd(100), ['survey']],
      ['after-award', -usd(100), ['survey']],
    ]);
    expect(formTotal(book.awards[0]?.form ?? fail())).toBe(usd(100));
  });
  it('pre-award cost counts where the grantor agreed to it', () => {
    const plan = { ...PLAN, sources: [{ ...FEDERAL, preAwardApproved: true }, COUNTY] };
    expect(formTotal(bookFor({ lines: [spread], plan }).awards[0]?.form ?? fail())).toBe(usd(200));
  });
  it('a month the award starts in is split by its days', () => {
    // April has 30 days; an award from the 11th bears 20 of them.
    const april = own('april', 300, { months: [{ month: '2027-04', amount: usd(300) }] });
    const plan = {
      ...PLAN,
      sources: [{ ...FEDERAL, period: { start: '2027-04-11', finish: '2028-12-31' } }, COUNTY],
    };
    expect(formTotal(bookFor({ lines: [april], plan }).awards[0]?.form ?? fail())).toBe(usd(200));
  });
});

function fail(): never {
  throw new Error('an award was expected');
}

describe('sources', () => {
  it('who keeps 60,000 of scrap moves it between price and income and asks for the same federal money', () => {
    const kept = { ...PLAN, sources: [{ ...FEDERAL, form: 'SF-424C' as const }, COUNTY] };
    const price = contract('prep', 800_000);
    const credit = contract('scrap credit', -60_000, { scrapCredit: true });
    const byOwner = bookFor({
      lines: [price],
      scrap: { amount: usd(60_000), keptBy: 'owner', month: '2027-03' },
      plan: kept,
    });
    const byYard = bookFor({
      lines: [price, credit],
      scrap: { amount: usd(60_000), keptBy: 'contractor' },
      plan: kept,
    });
    expect([byOwner.federal, byYard.federal]).toEqual([usd(555_000), usd(555_000)]);
    expect([byOwner.programIncome, byYard.programIncome]).toEqual([usd(60_000), 0]);
    const twice = grantBook(
      { lines: [price, credit], scrap: { amount: usd(60_000), keptBy: 'owner' }, plan: kept },
      RULES,
      FORMS,
    );
    expect(twice.book).toBeUndefined();
    expect(twice.findings.map(found => found.code)).toEqual(['funding/scrap-twice']);
  });

  it('match that no source can give is named, and no source gives more than it has', () => {
    const plan = { ...PLAN, sources: [FEDERAL, { ...COUNTY, cap: usd(100) }] };
    const { book, findings } = grantBook({ lines: [own('a', 1000)], plan }, RULES, FORMS);
    expect(book?.bySource).toEqual([
      { sourceId: 'federal', title: 'Federal reef grant', amount: usd(750) },
      { sourceId: 'county', title: 'County cash', amount: usd(100), leftOfCap: 0 },
    ]);
    expect(findings.map(found => found.code)).toEqual(['funding/match-not-found']);
  });

  it.each([
    ['funding/period-missing', { sources: [{ ...FEDERAL, period: undefined }] }],
    ['funding/share-missing', { sources: [{ ...FEDERAL, share: undefined }] }],
    ['funding/share-range', { sources: [{ ...FEDERAL, share: 1.5 }] }],
    ['funding/source-twice', { sources: [FEDERAL, COUNTY, COUNTY] }],
    ['funding/federal-match', { sources: [FEDERAL, { ...COUNTY, kind: 'federal' }] }],
    ['funding/value-in-kind', { sources: [FEDERAL, { ...COUNTY, support: 'in kind', lineIds: [] }] }],
    ['funding/in-kind-lines', { sources: [FEDERAL, { ...COUNTY, support: 'in kind' }] }],
    ['funding/in-kind-paid', { sources: [FEDERAL, { ...COUNTY, support: 'in kind', lineIds: ['a'] }] }],
    ['funding/no-award', { sources: [COUNTY] }],
    ['funding/no-form-line', { mapping: { 'SF-424A': [] } }],
    ['funding/unknown-form-line', { mapping: { 'SF-424A': [{ when: {}, to: 'z' }] } }],
  ])('%s blocks the budget', (code, change) => {
    const plan = { ...PLAN, ...change } as unknown as FundingPlan;
    const outcome = grantBook({ lines: [own('a', 10)], plan }, RULES, FORMS);
    expect(outcome.book).toBeUndefined();
    expect(outcome.findings.map(found => found.code)).toContain(code);
  });

  it('a cost is on one form only: the first grant that may pay for its stage', () => {
    const tow = { ...FEDERAL, id: 'tow-grant', stages: ['tow' as const], form: 'SF-424C' as const };
    const plan = { ...PLAN, sources: [tow, FEDERAL, COUNTY] };
    const book = bookFor({ lines: [own('towing', 100, { stage: 'tow' }), own('rest', 300)], plan });
    expect(book.awards.map(award => formTotal(award.form))).toEqual([usd(100), usd(300)]);
    expect(printedShares(book.bySource.map(one => one.amount)).reduce((a, b) => a + b)).toBeCloseTo(100, 9);
  });
});

function plant(book: Book, at: number, by: number): Book {
  return {
    ...book,
    entries: book.entries.map((entry, i) => (i === at ? { ...entry, amount: entry.amount + by } : entry)),
  };
}

describe('1,000 random grant budgets', () => {
  it('reconcile to the cent, share out fully, never exceed a source, and a planted cent is found and located', () => {
    let [asked, seen] = [0, 0];
    fc.assert(
      fc.property(randomGrant, fc.nat(), fc.constantFrom(1, -1), (input, spot, by) => {
        asked += 1;
        const { book, findings } = grantBook(input, RULES, FORMS);
        if (!book) {
          expect(findings.some(found => found.weight === 'blocks')).toBe(true);
          return;
        }
        seen += 1;
        expect(book.reconciliation.difference).toBe(0);
        for (const award of book.awards) {
          for (const row of award.rows) expect(sumCents(Object.values(row.shares))).toBe(row.allowable);
          const cap = award.source.cap ?? Infinity;
          expect(federalRequest(award.form)).toBeLessThanOrEqual(cap);
          const shared = award.income.shared;
          // In decimals: in doubles a share of seven tenths falls a trifle short of its half cent.
          const share = new Decimal(award.source.share ?? 1);
          expect(share.times(shared).plus(0.5).minus(federalRequest(award.form)).isNegative()).toBe(false);
          expect(award.tieOut.every(row => row.formDifference === 0 && row.narrativeDifference === 0)).toBe(
            true,
          );
          expectArithmetic(award.form);
          for (const right of [bookOfForm(award.form), bookOfNarrative(award.narrative)]) {
            if (right.entries.length === 0) continue;
            const at = spot % right.entries.length;
            const located = locateDifferences(right, plant(right, at, by));
            expect(located.map(one => one.key)).toEqual([right.entries[at]?.key]);
          }
          const plan = drawdownPlan(
            drawBasisOf(
              award,
              input.plan.sources.filter(s => s.form === 'none'),
              input,
            ),
          );
          expect(checkDrawdown(plan, plan.at(-1)?.drawn ?? 0, plan.at(-1)?.matchSpent ?? 0)).toEqual([]);
        }
        for (const source of book.bySource) expect(source.leftOfCap ?? 0).toBeGreaterThanOrEqual(0);
        const cash = grantCash(input, book);
        expect(cash.reconciliation.difference).toBe(0);
        const paid = bookOfMonths('cash', 'payments', cash.payments);
        if (paid.entries.length > 0) {
          const month = spot % paid.entries.length;
          expect(locateDifferences(paid, plant(paid, month, by)).map(one => one.key)).toEqual([
            paid.entries[month]?.key,
          ]);
        }
        const at = spot % input.lines.length;
        const off = input.lines.map((one, i) => (i === at ? { ...one, total: one.total + by } : one));
        expect([...new Set(checkLines(off).map(found => found.place))]).toEqual([
          `/lines/${off[at]?.id ?? ''}`,
        ]);
        expect(sumCents(cash.sources.map(source => totalOfMonths(source.bears)))).toBe(
          totalOfMonths(cash.payments) - incomeBorne(book),
        );
      }),
      { numRuns: 1000 },
    );
    expect(seen).toBeGreaterThan(0.9 * asked);
  });
});

describe('a figure that differs', () => {
  const right: Book = {
    id: 'cash',
    title: 'cash',
    entries: [{ key: '2027-01', title: 'January', amount: 100 }],
  };
  it('is a finding with its place and both amounts', () => {
    expect(differenceFindings(locateDifferences(right, plant(right, 0, 1)), 'cash')).toMatchObject([
      { place: '/books/cash/2027-01', message: 'January in the cash is $1.01, the estimate gives $1.00' },
    ]);
  });
  it('is found when it is missing or added, and a key twice is a fault', () => {
    const none: Book = { ...right, entries: [] };
    expect(differenceFindings(locateDifferences(right, none), 'cash')[0]?.message).toContain('is absent');
    expect(locateDifferences(none, right)).toMatchObject([{ key: '2027-01', found: 100 }]);
    expect(() =>
      locateDifferences({ ...right, entries: [...right.entries, ...right.entries] }, right),
    ).toThrow('twice');
  });
});

function incomeBorne(book: GrantBook): number {
  return sumCents(book.awards.flatMap(award => award.rows.map(row => row.shares['program-income'] ?? 0)));
}

function expectArithmetic(form: GrantBook['awards'][number]['form']): void {
  if (form.kind === 'SF-424C') {
    const at = (id: string) => form.lines.find(one => one.id === id)?.allowable ?? 0;
    const classes = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11'];
    expect(at('12')).toBe(sumCents(classes.map(at)));
    expect(at('16')).toBe(at('12') + at('13') - at('15'));
    expect(form.lines.every(one => one.total - one.notAllowable === one.allowable)).toBe(true);
    return;
  }
  const of = (id: string) => form.sectionB.find(one => one.id === id)?.total ?? 0;
  expect(of('i')).toBe(sumCents(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map(of)));
  expect(of('k')).toBe(of('i') + of('j'));
  expect(form.sectionA.total.total).toBe(of('k'));
  expect(form.sectionC.total).toBe(form.sectionA.total.nonFederal);
  expect(sumCents([...form.sectionD.federal, ...form.sectionE])).toBe(form.sectionA.total.federal);
}

describe('cash of a grant budget', () => {
  it('the lag and the fiscal year move the gap and no total', () => {
    fc.assert(
      fc.property(randomGrant, fc.nat(6), (input, lagMonths) => {
        const late = {
          ...input,
          plan: { ...input.plan, sources: input.plan.sources.map(s => ({ ...s, lagMonths })) },
        };
        const { book } = grantBook(input, RULES, FORMS);
        const other = grantBook(late, RULES, FORMS).book;
        fc.pre(book !== undefined && other !== undefined);
        const [a, b] = [grantCash(input, book), grantCash(late, other)];
        expect([a.view.totalPaid, a.view.totalReceived]).toEqual([b.view.totalPaid, b.view.totalReceived]);
        expect(book.federal).toBe(other.federal);
      }),
      { numRuns: 100 },
    );
  });

  it('payments of the lines alone come to the estimate less what is donated', () => {
    const gift = own('gift', 50, { inKind: true });
    const paid = paymentsOfLines([own('a', 100), gift], PLAN.payment).paid;
    expect(totalOfMonths(paid)).toBe(usd(100));
  });
});
