import { describe, expect, it } from 'vitest';
import { sumCents, totalOfMonths } from '../../../core/cash-flow';
import {
  PROGRAM_INCOME,
  applyProgramIncome,
  borneMonths,
  drawBasisOf,
  grantBook,
  grantCash,
  modifiedTotalDirectCost,
  piecesOfLine,
  procurementLimits,
  ruleAt,
  scopePiece,
  termOf,
  type CostPiece,
  type FundingSource,
  type GrantInput,
} from '../../../core/funding';
import { line } from '../cash-flow/lines';
import {
  ACCEPTED,
  COUNTY,
  FEDERAL,
  FORMS,
  GIFT,
  PLAN,
  RULES,
  budgetOf,
  contractWork,
  firstAward,
  usd,
  wages,
} from './plans';

const PIECE: CostPiece = {
  id: 'a/labour',
  lineId: 'a',
  title: 'a',
  kind: 'labour',
  activityId: 'preparation',
  isInKind: false,
  amount: 300,
  months: [{ month: '2027-04', amount: 300 }],
};

// 2 CFR 200.403(h) and 200.344: cost counts inside the period of performance; April has 30 days.
describe('the part of a cost inside the award period', () => {
  const inApril = (start: string, finish: string, preAwardApproved = false) => {
    const { before, after, allowable } = scopePiece(PIECE, { start, finish, preAwardApproved }, 0);
    return { before, after, allowable };
  };
  it.each([
    ['2027-01-01', '2027-04-10', { before: 0, after: 200, allowable: 100 }],
    ['2027-01-01', '2027-04-29', { before: 0, after: 10, allowable: 290 }],
    ['2027-01-01', '2027-04-30', { before: 0, after: 0, allowable: 300 }],
    ['2027-04-01', '2027-12-31', { before: 0, after: 0, allowable: 300 }],
    ['2027-04-02', '2027-12-31', { before: 10, after: 0, allowable: 290 }],
    ['2027-04-11', '2027-04-20', { before: 100, after: 100, allowable: 100 }],
    ['2027-05-01', '2027-12-31', { before: 300, after: 0, allowable: 0 }],
    ['2026-01-01', '2027-03-31', { before: 0, after: 300, allowable: 0 }],
  ])('of April work in an award from %s to %s', (start, finish, expected) => {
    expect(inApril(start, finish)).toEqual(expected);
  });
  it('an agreed cost before the start is inside, one after the finish never is', () => {
    expect(inApril('2027-04-11', '2027-04-20', true)).toEqual({ before: 0, after: 100, allowable: 200 });
  });
  it('no month outside the period is left in it', () => {
    const months = ['2026-12', '2027-01', '2027-02'].map(month => ({ month, amount: 100 }));
    const period = { start: '2027-01-01', finish: '2027-01-31', preAwardApproved: false };
    expect(scopePiece({ ...PIECE, months }, period, 0).months).toEqual([{ month: '2027-01', amount: 100 }]);
  });
  it.each([
    [40, 40],
    [0, 0],
    [900, 300],
    [-5, 0],
  ])('a refusal of %d takes %d off, from every month alike', (asked, refused) => {
    const months = ['2027-01', '2027-02', '2027-03'].map(month => ({ month, amount: 100 }));
    const period = { start: '2027-01-01', finish: '2027-12-31', preAwardApproved: false };
    const scoped = scopePiece({ ...PIECE, months }, period, asked);
    expect([scoped.notAllowable, scoped.allowable]).toEqual([refused, 300 - refused]);
    expect(totalOfMonths(scoped.months)).toBe(300 - refused);
    expect(scoped.piece).toMatchObject({ id: 'a/labour' });
  });
  it('nothing is refused of a credit', () => {
    const credit = { ...PIECE, amount: -300, months: [{ month: '2027-04', amount: -300 }] };
    const period = { start: '2027-01-01', finish: '2027-12-31', preAwardApproved: false };
    expect(scopePiece(credit, period, 40)).toMatchObject({ notAllowable: 0, allowable: -300 });
  });
});

describe('the months of a row', () => {
  const months = [
    { month: '2027-03', amount: usd(100) },
    { month: '2027-04', amount: usd(300) },
  ];
  it('each piece of a line keeps the pattern of the line', () => {
    const split = line({ id: 'x', amounts: { ...wages('x', 300).amounts, fee: usd(100) }, months });
    const pieces = piecesOfLine(split, 'preparation', () => 'equipment-purchase');
    expect(pieces.map(piece => piece.months.map(each => each.amount))).toEqual([
      [75, 225].map(usd),
      [25, 75].map(usd),
    ]);
  });
  // PLAN: contracts are paid a month later, 5 in 100 held back until 2 months after the last month of the
  // contract, and paid a month later too.
  it('a contract is paid later with its retainage at the end of the whole contract, wages at once', () => {
    const early = contractWork('early', 100, { contractId: 'yard' });
    const late = contractWork('late', 100, {
      contractId: 'yard',
      months: [{ month: '2027-08', amount: usd(100) }],
    });
    const rows = firstAward({ lines: [early, late, wages('staff', 100)], plan: PLAN }).rows;
    const paid = (id: string) => rows.find(row => row.lineId === id)?.paidMonths;
    expect(paid('early')).toEqual([
      { month: '2027-04', amount: usd(95) },
      { month: '2027-11', amount: usd(5) },
    ]);
    expect(paid('late')).toEqual([
      { month: '2027-09', amount: usd(95) },
      { month: '2027-11', amount: usd(5) },
    ]);
    expect(paid('staff')).toEqual([{ month: '2027-03', amount: usd(100) }]);
  });
  it('wages are paid after their own lag, and a gift counts in its month', () => {
    const payment = { ...PLAN.payment, ownPayLag: 1 };
    const plan = { ...PLAN, payment, sources: [FEDERAL, GIFT, COUNTY] };
    const rows = firstAward({ lines: [wages('gift', 10, { inKind: true }), wages('a', 90)], plan }).rows;
    expect(rows.map(row => [row.lineId, row.paidMonths[0]?.month])).toEqual([
      ['gift', '2027-03'],
      ['a', '2027-04'],
    ]);
  });
  it('indirect cost follows the months of the work it rests on', () => {
    const plan = { ...PLAN, indirect: { kind: 'de minimis' as const } };
    const rows = firstAward({ lines: [wages('a', 400, { months })], plan }).rows;
    expect(rows.find(row => row.kind === 'indirect')?.months).toEqual([
      { month: '2027-03', amount: usd(15) },
      { month: '2027-04', amount: usd(45) },
    ]);
  });
  it('a month of credits alone bears no indirect cost', () => {
    const refund = wages('b', -50, { months: [{ month: '2027-06', amount: -usd(50) }] });
    const plan = { ...PLAN, indirect: { kind: 'de minimis' as const } };
    const rows = firstAward({ lines: [wages('a', 400, { months }), refund], plan }).rows;
    const indirect = rows.find(row => row.kind === 'indirect');
    expect(indirect?.allowable).toBe(usd(52.5));
    expect(indirect?.months.map(each => each.month)).toEqual(['2027-03', '2027-04']);
  });
});

// 2 CFR 200.1, modified total direct cost.
describe('the base of indirect cost', () => {
  const plan = { ...PLAN, indirect: { kind: 'de minimis' as const } };
  it('has no row in a column that gives nothing to it', () => {
    const lines = [wages('a', 100), wages('b', 300, { stage: 'tow', rent: true })];
    const rows = firstAward({ lines, plan }).rows.filter(row => row.kind === 'indirect');
    expect(rows.map(row => [row.activityId, row.allowable])).toEqual([['preparation', usd(15)]]);
  });
  it('of nothing but rent is nothing, and so is the cost', () => {
    const award = firstAward({ lines: [wages('berth', 300, { rent: true })], plan });
    expect(award.indirect).toMatchObject({ base: 0, amount: 0, rows: [], findings: [] });
  });
  it('is not asked for where the grantee takes none', () => {
    const { indirect } = firstAward({ lines: [contractWork('prep', 900_000)], plan: PLAN });
    expect(indirect).toEqual({ rate: 0, base: 0, amount: 0, rows: [], contracts: [], findings: [] });
  });
  it('of a subaward that comes to a credit gives nothing', () => {
    const items = [{ id: 'x', amount: -500, contractId: 's' }];
    expect(modifiedTotalDirectCost(items, { s: 'subaward' }, 1000).base).toBe(0);
  });
  it('of a service procurement whose parts cancel out keeps each part', () => {
    const items = [
      { id: 'x', amount: 500, contractId: 's' },
      { id: 'y', amount: -500, contractId: 's' },
    ];
    expect(modifiedTotalDirectCost(items, { s: 'service procurement' }, 1000).parts).toEqual([
      { id: 'x', inBase: 500 },
      { id: 'y', inBase: -500 },
    ]);
  });
  it('asks for the class of every contract priced as a whole, however small', () => {
    const { findings } = grantBook({ lines: [contractWork('prep', 10)], plan }, RULES, FORMS);
    expect(findings.map(each => each.code)).toEqual(['funding/contract-class']);
  });
  it('says nothing of a missing grant where one is there but held up', () => {
    const { findings } = grantBook({ lines: [contractWork('prep', 10)], plan }, RULES, FORMS);
    expect(findings.map(each => each.code)).not.toContain('funding/no-award');
  });
  it('asks for it when a contract is bought in parts of both kinds', () => {
    const bought = line({
      id: 'part',
      contractId: 'prep',
      amounts: { ...wages('x', 0).amounts, subcontract: 100 },
    });
    const whole = contractWork('prep', 10, { contractId: 'prep' });
    const { findings } = grantBook({ lines: [bought, whole], plan }, RULES, FORMS);
    expect(findings.map(each => each.place)).toEqual(['/funding/contracts/prep']);
  });
  it('tells the class that was chosen beside the three results, and none where none was', () => {
    const lines = [contractWork('prep', 60_000, { contractId: 'prep' })];
    const chosen = grantBook(
      { lines, plan: { ...plan, contractClasses: { prep: 'capital' } } },
      RULES,
      FORMS,
    );
    expect(chosen.contracts).toMatchObject([{ contractId: 'prep', amount: usd(60_000), chosen: 'capital' }]);
    const [open] = grantBook({ lines, plan }, RULES, FORMS).contracts;
    expect(open).not.toHaveProperty('chosen');
    expect(open?.results.map(each => each.indirect)).toEqual([9_000, 7_500, 0].map(usd));
  });
});

describe('who bears what', () => {
  const tow = wages('pull', 400, { stage: 'tow' });
  const lines = [wages('clean', 600), tow];
  const dive: FundingSource = { ...COUNTY, id: 'dive', title: 'Dive fund', kind: 'other' };

  it('a source for some stages helps with them and with what belongs to no stage', () => {
    const staged = { ...dive, stages: ['tow' as const, 'sinking' as const] };
    const plan = { ...PLAN, sources: [FEDERAL, staged, COUNTY] };
    // 75 in 100 of 1,100 is 825; of the rest the fund takes 100 of the tow and 25 of the contingency
    const book = budgetOf({ lines, contingency: ACCEPTED, plan });
    expect(book.bySource.map(one => one.amount)).toEqual([825, 125, 150].map(usd));
  });
  it('a cost and a credit that cancel out are shared out row by row all the same', () => {
    const { rows } = firstAward({ lines: [wages('a', 10), contractWork('credit', -10)], plan: PLAN });
    const shared = rows.map(row => sumCents(Object.values(row.shares)));
    expect(shared).toEqual([usd(10), -usd(10)]);
  });
  it('a credit as large as a gift is no program income', () => {
    const gift = wages('gift', 100, { inKind: true });
    const plan = { ...PLAN, sources: [FEDERAL, GIFT, COUNTY] };
    const { rows } = firstAward({ lines: [gift, contractWork('credit', -100)], plan });
    expect(borneMonths(rows, PROGRAM_INCOME)).toEqual([]);
  });
  it('match of the budget is what sources give and what nobody gives yet', () => {
    const plan = { ...PLAN, sources: [FEDERAL, { ...COUNTY, cap: usd(100) }] };
    expect(budgetOf({ lines, plan }).match).toBe(usd(250));
  });
  it('what a grant of the State gives is no resource beside itself', () => {
    const plan = { ...PLAN, sources: [{ ...FEDERAL, kind: 'state' as const }, COUNTY] };
    const { form } = firstAward({ lines, plan });
    expect(form.kind === 'SF-424A' && form.sectionC).toEqual({
      applicant: usd(250),
      state: 0,
      other: 0,
      unfunded: 0,
      total: usd(250),
    });
  });
  it('a refusal of a line with nothing to refuse changes nothing', () => {
    const refused = { ...PLAN, notAllowable: [{ lineId: 'credit', reason: 'x' }] };
    const withCredit = [...lines, contractWork('credit', -100)];
    expect(budgetOf({ lines: withCredit, plan: refused }).federal).toBe(
      budgetOf({ lines: withCredit, plan: PLAN }).federal,
    );
  });
  // 2 CFR 200.307(e): only deduction lowers the cost that is shared.
  it('income stands on line 15 under deduction alone', () => {
    const scrap = { amount: usd(50), keptBy: 'owner' as const };
    const line15 = (method: 'deduction' | 'cost sharing' | 'addition') => {
      const sources = [{ ...FEDERAL, form: 'SF-424C' as const }, COUNTY];
      const { form } = firstAward({ lines, scrap, plan: { ...PLAN, sources, income: { method } } });
      return form.kind === 'SF-424C' && form.lines.find(one => one.id === '15')?.allowable;
    };
    expect([line15('deduction'), line15('cost sharing'), line15('addition')]).toEqual([usd(50), 0, 0]);
  });
  it('added income is used up whole', () => {
    expect(applyProgramIncome(usd(800), usd(60), 0.75, 'addition').unused).toBe(0);
  });
});

describe('cash of the owner', () => {
  const STATE: FundingSource = {
    ...COUNTY,
    id: 'state',
    title: 'State',
    kind: 'state',
    mode: 'advance',
    cap: usd(50),
  };
  const lines = [wages('gift', 40, { inKind: true }), wages('a', 160)];
  const plan = { ...PLAN, sources: [FEDERAL, GIFT, STATE, COUNTY] };
  const cashOf = (input: GrantInput) => grantCash(input, budgetOf(input));

  it('comes from the grant and from partners in cash; the rest is own, and nobody pays a gift', () => {
    const { sources } = cashOf({ lines, plan });
    expect(
      sources.map(({ sourceId, title, mode, lagMonths, bears }) => [
        sourceId,
        title,
        mode,
        lagMonths,
        totalOfMonths(bears),
      ]),
    ).toEqual([
      ['federal', 'Federal reef grant', 'reimbursement', 2, usd(150)],
      ['state', 'State', 'advance', 0, usd(10)],
      ['own', 'Own cash', 'own', 0, 0],
    ]);
  });
  it('scrap without a month comes in with the last payment of all', () => {
    const months = ['2027-03', '2027-06', '2027-09'].map(month => ({ month, amount: usd(100) }));
    const input = {
      lines: [wages('a', 300, { months })],
      scrap: { amount: usd(30), keptBy: 'owner' as const },
      plan: { ...PLAN, sources: [{ ...FEDERAL, share: 0 }, COUNTY] },
    };
    const received = cashOf(input).view.months.filter(month => month.received !== 0);
    expect(received.map(each => [each.month, each.received])).toEqual([['2027-09', usd(30)]]);
  });
  it('without work and income there are no months at all', () => {
    const input = { lines: [wages('a', 0, { months: [] })], plan: PLAN };
    expect(cashOf(input).view.months).toEqual([]);
  });
  it('a source that gives nothing has no months', () => {
    expect(borneMonths(firstAward({ lines, plan }).rows, 'county')).toEqual([]);
  });
  it('income that adds to the project is no part of the drawing', () => {
    const scrap = { amount: usd(30), keptBy: 'owner' as const, month: '2027-05' };
    const input = { lines, scrap, plan: { ...plan, income: { method: 'addition' as const } } };
    expect(drawBasisOf(firstAward(input), [COUNTY], input)).not.toHaveProperty('income');
  });
});

describe('the parts of the cost that are counted', () => {
  it('are kept apart by why they stand outside the base of indirect cost', () => {
    const plan = {
      ...PLAN,
      sources: [FEDERAL, GIFT, COUNTY],
      indirect: { kind: 'negotiated' as const, rate: 0.5, agreement: 'invented' },
    };
    const crane = line({
      id: 'crane',
      unitCost: usd(12_000),
      amounts: { ...wages('x', 0).amounts, equipment: usd(12_000) },
    });
    const lines = [
      wages('gift', 40, { inKind: true }),
      wages('berth', 30, { rent: true }),
      crane,
      wages('a', 10),
    ];
    const award = firstAward({ lines, contingency: ACCEPTED, plan });
    expect(award.indirect).toMatchObject({ rate: 0.5, base: usd(10), amount: usd(5) });
  });
  it('a service of the owner that is bought from several lines is held to the cap together', () => {
    const plan = { ...PLAN, indirect: { kind: 'de minimis' as const } };
    const part = (id: string, dollars: number) =>
      line({
        id,
        contractId: 'lab',
        amounts: { ...wages(id, 0).amounts, labour: usd(1), subcontract: usd(dollars) },
      });
    const { findings } = grantBook({ lines: [part('x', 30_000), part('y', 30_000)], plan }, RULES, FORMS);
    expect(findings.map(each => each.code)).toEqual(['funding/contract-class']);
    expect(grantBook({ lines: [part('x', 30_000), part('y', 20_000)], plan }, RULES, FORMS).findings).toEqual(
      [],
    );
  });
});

// 2 CFR 200.318(a): the recipient's own stricter rules hold.
describe('whose limit governs a purchase', () => {
  const owners = (county: { microPurchase?: number; simplified?: number }) => {
    const limits = procurementLimits(RULES, '2026-11-01', county);
    return [limits.microPurchaseBy, limits.simplifiedBy];
  };
  it.each([
    [{}, ['federal', 'federal']],
    [{ microPurchase: usd(15_000), simplified: usd(350_000) }, ['federal', 'federal']],
    [{ microPurchase: usd(14_999), simplified: usd(349_999) }, ['county', 'county']],
    [{ microPurchase: usd(20_000), simplified: usd(100_000) }, ['federal', 'county']],
  ])('with county limits of %o', (county, expected) => {
    expect(owners(county)).toEqual(expected);
  });
});

describe('dated rules', () => {
  it('are found in whatever order the file has them', () => {
    const turned = { ...RULES, rules: RULES.rules.toReversed() };
    for (const date of ['1990-01-01', '2024-09-30', '2024-10-01', '2025-09-30', '2025-10-01', '2030-01-01'])
      for (const id of ['de-minimis-rate', 'subaward-cap', 'micro-purchase'] as const)
        expect(ruleAt(turned, id, date)).toEqual(ruleAt(RULES, id, date));
  });
  it('each usual term is its own', () => {
    const value = (id: string) => Number(RULES.terms.find(term => term.id === id)?.figure.value);
    for (const id of ['retainage', 'release-after', 'contract-pay-lag', 'reimbursement-lag'] as const)
      expect(termOf(RULES, id)).toBe(value(id));
    expect(new Set(RULES.terms.map(term => term.figure.value)).size).toBeGreaterThan(1);
  });
});
