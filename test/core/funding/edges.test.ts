import { describe, expect, it } from 'vitest';
import {
  bookOfMonths,
  checkLines,
  sumCents,
  totalOfMonths,
  type EstimateLine,
} from '../../../core/cash-flow';
import {
  borneMonths,
  classSentence,
  drawBasisOf,
  federalRequest,
  formTotal,
  grantBook,
  grantCash,
  mapToForm,
  piecesOfLine,
  type FundingPlan,
  type FundingSource,
  type GrantBook,
  type GrantInput,
} from '../../../core/funding';
import { line } from '../cash-flow/lines';
import { COUNTY, FEDERAL, FORMS, GIFT, PLAN, RULES, usd } from './plans';

const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };
const own = (id: string, dollars: number, more: Partial<EstimateLine> = {}): EstimateLine =>
  line({ id, amounts: { ...none, labour: usd(dollars) }, ...more });

function outcome(input: GrantInput) {
  return grantBook(input, RULES, FORMS);
}
function bookFor(input: GrantInput): GrantBook {
  const { book, findings } = outcome(input);
  if (!book) throw new Error(JSON.stringify(findings));
  return book;
}
const codesOf = (input: GrantInput): string[] => outcome(input).findings.map(found => found.code);

describe('contributions in kind', () => {
  const lines = [own('gift', 100, { inKind: true }), own('a', 300)];
  const plan: FundingPlan = { ...PLAN, sources: [FEDERAL, GIFT, COUNTY], indirect: { kind: 'de minimis' } };

  it('bear their own line whole, count as match, enter no base of indirect cost, and nobody is paid', () => {
    const book = bookFor({ lines, plan });
    // base 300 at 15 in 100 is 45; 445 in all, 75 in 100 is 333.75; match 111.25 of which 100 in kind
    expect([formTotal(book.awards[0]?.form ?? fail()), book.federal, book.match]).toEqual(
      [445, 333.75, 111.25].map(usd),
    );
    expect(book.bySource.map(one => [one.sourceId, one.amount])).toEqual([
      ['federal', usd(333.75)],
      ['partner', usd(100)],
      ['county', usd(11.25)],
    ]);
    const cash = grantCash({ lines, plan }, book);
    expect([totalOfMonths(cash.payments), cash.reconciliation.closes]).toEqual([usd(345), true]);
    expect(cash.reconciliation.steps.map(step => step.id)).toEqual(['indirect', 'in-kind']);
  });

  it('lower the grant where they are more than the match it leaves', () => {
    const big = [own('gift', 300, { inKind: true }), own('a', 100)];
    const book = bookFor({ lines: big, plan: { ...plan, indirect: { kind: 'none' } } });
    expect([book.federal, book.match]).toEqual([usd(100), usd(300)]);
  });

  it('are counted once, on a donated line that a source names', () => {
    expect(codesOf({ lines, plan: { ...plan, sources: [FEDERAL, COUNTY] } })).toContain(
      'funding/in-kind-source',
    );
    const twice = { ...GIFT, id: 'other' };
    expect(codesOf({ lines, plan: { ...plan, sources: [FEDERAL, GIFT, twice, COUNTY] } })).toContain(
      'funding/in-kind-twice',
    );
  });
});

describe('caps and shares', () => {
  const lines = [own('clean', 600), own('pull', 400, { stage: 'tow' })];
  it('a cap by stage lowers the grant on that stage alone', () => {
    const plan = { ...PLAN, sources: [{ ...FEDERAL, stageCaps: { tow: usd(100) } }, COUNTY] };
    const book = bookFor({ lines, plan });
    expect(borneMonths(book.awards[0]?.rows ?? [], 'federal')).toEqual([
      { month: '2027-03', amount: usd(550) },
    ]);
    expect(book.match).toBe(usd(450));
  });
  it('a matching source gives its share, on its stages', () => {
    const state: FundingSource = {
      ...COUNTY,
      id: 'state',
      kind: 'state',
      share: 0.1,
      stages: ['tow'],
      mode: 'reimbursement',
      lagMonths: 3,
    };
    const book = bookFor({ lines, plan: { ...PLAN, sources: [FEDERAL, state, COUNTY] } });
    expect(book.bySource.map(one => one.amount)).toEqual([750, 100, 150].map(usd));
    const form = book.awards[0]?.form;
    expect(form?.kind === 'SF-424A' && form.sectionC).toEqual({
      applicant: usd(150),
      state: usd(100),
      other: 0,
      unfunded: 0,
      total: usd(250),
    });
  });
  it('a capped request on SF-424C prints what it is of line 16c', () => {
    const plan = { ...PLAN, sources: [{ ...FEDERAL, form: 'SF-424C' as const, cap: usd(500) }, COUNTY] };
    const form = bookFor({ lines, plan }).awards[0]?.form;
    expect(form?.kind === 'SF-424C' && form.line17).toEqual({
      share: 0.5,
      federal: usd(500),
      isCapped: true,
    });
  });
  it('credits above the cost give no form', () => {
    const credit = line({ id: 'c', amounts: { ...none, material: -100 } });
    expect(codesOf({ lines: [credit], plan: PLAN })).toContain('funding/credits-above-cost');
  });
});

describe('what falls outside', () => {
  const lines = [own('clean', 600), own('pull', 400, { stage: 'tow' })];
  it('a stage that no form may pay for is a named step with its lines', () => {
    const plan = { ...PLAN, sources: [{ ...FEDERAL, stages: ['clean-up' as const] }, COUNTY] };
    const book = bookFor({ lines, plan });
    expect(book.outsideForms).toEqual(['pull']);
    expect(book.reconciliation.steps).toEqual([
      { id: 'outside-forms', title: 'Cost that no form carries', amount: -usd(400), lineIds: ['pull'] },
    ]);
  });
  it('a refused part of a line is cost not allowable, a whole line when no amount is given', () => {
    const part = { ...PLAN, notAllowable: [{ lineId: 'clean', amount: usd(50), reason: 'alcohol' }] };
    const whole = {
      ...PLAN,
      notAllowable: [
        { lineId: 'clean', reason: 'not eligible' },
        { lineId: 'gone', reason: 'x' },
      ],
    };
    expect(formTotal(bookFor({ lines, plan: part }).awards[0]?.form ?? fail())).toBe(usd(950));
    const book = bookFor({ lines, plan: whole });
    expect(formTotal(book.awards[0]?.form ?? fail())).toBe(usd(400));
    expect(book.awards[0]?.tieOut[0]?.sentences).toContain(
      "$0.00 for clean, wages; the estimator's judgement (invented for the test), out of $600.00 in all.",
    );
  });
  it('contingency not accepted stands as cost not allowable', () => {
    const contingency = {
      amount: usd(100),
      isByAcceptedMethod: true,
      isDocumented: true,
      isAcceptedByAgency: false,
      isReserve: false,
    };
    const { book, findings } = outcome({ lines, contingency, plan: PLAN });
    expect(findings.map(found => found.code)).toEqual(['funding/contingency-not-allowable']);
    expect(book?.reconciliation.steps.map(step => [step.id, step.amount])).toEqual([
      ['contingency', usd(100)],
      ['not-allowable', -usd(100)],
    ]);
  });
  it('income beyond its use is a finding', () => {
    const scrap = { amount: usd(900), keptBy: 'owner' as const };
    const plan: FundingPlan = { ...PLAN, income: { method: 'cost sharing', costOfEarning: usd(100) } };
    const { book, findings } = outcome({ lines, scrap, plan });
    // match of 250 takes 250 of 800
    expect(findings.map(found => [found.code, found.message.slice(0, 7)])).toEqual([
      ['funding/income-not-used', '$550.00'],
    ]);
    expect([book?.programIncome, book?.match, book?.federal]).toEqual([usd(800), 0, usd(750)]);
  });
  it('addition leaves the shares alone', () => {
    const scrap = { amount: usd(60), keptBy: 'owner' as const };
    const book = bookFor({ lines, scrap, plan: { ...PLAN, income: { method: 'addition' } } });
    expect([federalRequest(book.awards[0]?.form ?? fail()), book.match]).toEqual([usd(750), usd(250)]);
  });
});

describe('cash and drawing of a grant budget', () => {
  const lines = [own('a', 1000)];
  const scrap = { amount: usd(200), keptBy: 'owner' as const, month: '2027-05' };
  it('program income comes in its month, the grant after its lag, and the gap is what is left', () => {
    const book = bookFor({ lines, scrap, plan: PLAN });
    const cash = grantCash({ lines, scrap, plan: PLAN }, book);
    // paid 1,000 in March; the county bears 200 of 800; 600 of the grant and 200 of scrap come in May
    expect(cash.view.peak).toEqual({ month: '2027-03', amount: usd(800) });
    expect(cash.view.months.at(-1)).toMatchObject({ month: '2027-05', received: usd(800), gap: 0 });
    const basis = drawBasisOf(book.awards[0] ?? fail(), [COUNTY], { lines, scrap, plan: PLAN });
    expect([totalOfMonths(basis.grant), totalOfMonths(basis.match), basis.income?.received]).toEqual([
      usd(600),
      usd(200),
      [{ month: '2027-05', amount: usd(200) }],
    ]);
  });
  it('the county pays its share of the forms, and alone what falls after the award', () => {
    const late = own('late', 100, { months: [{ month: '2029-01', amount: usd(100) }] });
    const input = { lines: [own('a', 1000), late], plan: PLAN };
    // 75 in 100 of 1,000 are the grant's; 250 and the 100 of 2029 are the county's
    const { county } = grantCash(input, bookFor(input));
    expect(county).toMatchObject({ total: usd(350), share: usd(250), outside: usd(100) });
    expect(county.outsideSteps.map(({ title, amount }) => [title, amount])).toEqual([
      ['Cost after the award period', usd(100)],
    ]);
    expect(county.shares.map(({ title, amount }) => [title, amount])).toEqual([['County cash', usd(250)]]);
  });
  it('scrap without a month comes in with the last payment', () => {
    const { month: _gone, ...rest } = scrap;
    const book = bookFor({ lines, scrap: rest, plan: PLAN });
    expect(grantCash({ lines, scrap: rest, plan: PLAN }, book).view.months).toHaveLength(3);
    expect(
      drawBasisOf(book.awards[0] ?? fail(), [COUNTY], { lines, scrap: rest, plan: PLAN }),
    ).not.toHaveProperty('income');
  });
});

describe('pieces of a line', () => {
  const pieceOf = () => 'equipment-purchase' as const;
  it('rent and travel are one piece, the rest falls apart by element', () => {
    expect(piecesOfLine(own('berth', 10, { rent: true }), 'x', pieceOf).map(one => one.kind)).toEqual([
      'rent',
    ]);
    expect(piecesOfLine(own('trip', 10, { travel: true }), 'x', pieceOf).map(one => one.kind)).toEqual([
      'travel',
    ]);
    const all = {
      labour: 700,
      equipment: 200,
      material: 100,
      disposal: 300,
      subcontract: 400,
      fee: 500,
      markUp: 600,
    };
    const parts = piecesOfLine(line({ id: 'all', amounts: all, fringe: 100 }), 'x', pieceOf);
    expect(parts.map(one => [one.kind, one.amount])).toEqual([
      ['labour', 600],
      ['fringe', 100],
      ['equipment', 200],
      ['material', 100],
      ['disposal', 300],
      ['subcontract', 400],
      ['fee', 500],
      ['markUp', 600],
    ]);
    expect(parts.find(one => one.kind === 'subcontract')?.contractId).toBe('all');
  });
  it('elements that cancel out share the months evenly, and such a line without a month is found', () => {
    const even = line({ id: 'even', amounts: { ...none, labour: 100, material: -100 } });
    const months = [
      { month: '2027-01', amount: 5 },
      { month: '2027-02', amount: -5 },
    ];
    expect(piecesOfLine({ ...even, months }, 'x', pieceOf)[0]?.months.map(one => one.amount)).toEqual([
      50, 50,
    ]);
    expect(checkLines([{ ...even, months: [] }]).map(found => found.code)).toEqual([
      'books/line-without-month',
    ]);
  });
  it('a small service the owner buys needs no class, a big one does', () => {
    const lab = (dollars: number) => line({ id: 'lab', amounts: { ...none, subcontract: usd(dollars) } });
    const plan: FundingPlan = { ...PLAN, indirect: { kind: 'negotiated', rate: 0.1, agreement: 'invented' } };
    expect(bookFor({ lines: [lab(50_000)], plan }).indirect).toBe(usd(5_000));
    expect(codesOf({ lines: [lab(50_000.01)], plan })).toContain('funding/contract-class');
  });
});

describe('words and mapping', () => {
  it('a row of the mapping must fit in every part', () => {
    const rows = [
      { when: { kind: 'fee' as const, stage: 'tow' as const }, to: '1' },
      { when: { lineId: 'L' }, to: '2' },
    ];
    expect(mapToForm(rows, { kind: 'fee', stage: 'tow' })).toBe('1');
    expect(mapToForm(rows, { kind: 'fee', stage: 'yard', lineId: 'L' })).toBe('2');
    expect(mapToForm(rows, { kind: 'fee', stage: 'yard', lineId: 'M' })).toBeUndefined();
  });
  it('the narrative gives workings, basis, source and year', () => {
    const oil = line({
      id: 'oil',
      title: 'oily water',
      contract: true,
      amounts: { ...none, disposal: usd(76_960) },
      workings: '148,000 gal at $0.52 a gal',
      basis: 'quoted',
      source: 'yard quote',
      year: 2026,
    });
    const book = bookFor({ lines: [oil], plan: PLAN });
    expect(book.awards[0]?.narrative[0]?.text).toBe(
      '$76,960.00 for oily water: 148,000 gal at $0.52 a gal; quoted for this ship (yard quote, 2026).',
    );
  });
  it('a result by class reads as a sentence', () => {
    expect(classSentence({ contractClass: 'capital', base: usd(205_000), indirect: usd(30_750) }, 0.15)).toBe(
      'as capital: base $205,000.00, at 15 % $30,750.00',
    );
  });
  it('a stage in no column stands in the last', () => {
    const activities = [{ id: 'only', title: 'Only', stages: ['tow' as const] }];
    const form = bookFor({ lines: [own('a', 5)], plan: { ...PLAN, activities } }).awards[0]?.form;
    expect(form?.kind === 'SF-424A' && form.sectionA.lines.map(one => one.total)).toEqual([usd(5)]);
  });
  it('months make a book', () => {
    const book = bookOfMonths('cash', 'payments', [{ month: '2027-01', amount: 5 }]);
    expect([book.entries[0]?.key, sumCents(book.entries.map(one => one.amount))]).toEqual(['2027-01', 5]);
  });
});

function fail(): never {
  throw new Error('an award was expected');
}
