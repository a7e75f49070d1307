import { describe, expect, it } from 'vitest';
import {
  bookOfForm,
  bookOfNarrative,
  federalRequest,
  formTotal,
  grantBook,
  grantCash,
  type FundingSource,
  type GrantForm,
  type GrantInput,
} from '../../../core/funding';
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

const STATE: FundingSource = {
  ...COUNTY,
  id: 'state',
  title: 'State reef fund',
  kind: 'state',
  share: 0.1,
  mode: 'reimbursement',
  lagMonths: 1,
};

/** Wages of 600 in March 2027, towing of 400 half in January 2028 and half in January 2029. */
const LINES = [
  wages('clean', 600),
  wages('pull', 400, {
    stage: 'tow',
    months: [
      { month: '2028-01', amount: usd(200) },
      { month: '2029-01', amount: usd(200) },
    ],
  }),
];
const LONG: FundingSource = { ...FEDERAL, period: { start: '2027-01-15', finish: '2032-12-31' } };
const WITH_STATE: GrantInput = { lines: LINES, plan: { ...PLAN, sources: [LONG, STATE, COUNTY] } };

const cellsOf = (form: GrantForm) =>
  bookOfForm(form).entries.map(({ key, title, amount }) => [key, title, amount / 100]);

// OMB 4040-0006: A by activity, B by object class, C the non-federal resources, D the first year by quarter, E later years.
describe('SF-424A, cell by cell', () => {
  const filled = () => firstAward(WITH_STATE).form;
  const part = (letter: string) => cellsOf(filled()).filter(([key]) => String(key).startsWith(`${letter}/`));

  it('is a book of its source and kind', () => {
    expect(bookOfForm(filled())).toMatchObject({ id: 'federal/SF-424A', title: 'SF-424A' });
  });
  it('section A has each activity and line 5, 75 in 100 of each', () => {
    expect(part('A')).toEqual([
      ['A/preparation/federal', 'A, Preparing the ship, federal', 450],
      ['A/preparation/non-federal', 'A, Preparing the ship, non-federal', 150],
      ['A/preparation/total', 'A, Preparing the ship, total', 600],
      ['A/tow-and-sinking/federal', 'A, Tow and sinking, federal', 300],
      ['A/tow-and-sinking/non-federal', 'A, Tow and sinking, non-federal', 100],
      ['A/tow-and-sinking/total', 'A, Tow and sinking, total', 400],
      ['A/monitoring/federal', 'A, Monitoring and obligations, federal', 0],
      ['A/monitoring/non-federal', 'A, Monitoring and obligations, non-federal', 0],
      ['A/monitoring/total', 'A, Monitoring and obligations, total', 0],
      ['A/management/federal', 'A, Permits and management, federal', 0],
      ['A/management/non-federal', 'A, Permits and management, non-federal', 0],
      ['A/management/total', 'A, Permits and management, total', 0],
      ['A/5/federal', 'A, line 5, federal', 750],
      ['A/5/nonFederal', 'A, line 5, nonFederal', 250],
      ['A/5/total', 'A, line 5, total', 1000],
    ]);
  });
  it('section B has a cell for each object class and activity, and one for their total', () => {
    const personnel = part('B').filter(([key]) => String(key).startsWith('B/a/'));
    expect(personnel).toEqual([
      ['B/a/preparation', 'B, a, preparation', 600],
      ['B/a/tow-and-sinking', 'B, a, tow-and-sinking', 400],
      ['B/a/monitoring', 'B, a, monitoring', 0],
      ['B/a/management', 'B, a, management', 0],
      ['B/a/total', 'B, a, total', 1000],
    ]);
    expect(part('B').map(([key]) => key)).toContain('B/7/total');
  });
  it('section C tells the applicant, the State and others apart', () => {
    expect(part('C')).toEqual([
      ['C/applicant', 'C, applicant', 150],
      ['C/state', 'C, state', 100],
      ['C/other', 'C, other', 0],
      ['C/unfunded', 'C, unfunded', 0],
      ['C/total', 'C, total', 250],
    ]);
  });
  it('section D has the quarters from the month of the start, federal and other money', () => {
    expect(part('D')).toEqual([
      ['D/13/1', 'D, line 13, quarter 1', 450],
      ['D/13/2', 'D, line 13, quarter 2', 0],
      ['D/13/3', 'D, line 13, quarter 3', 0],
      ['D/13/4', 'D, line 13, quarter 4', 0],
      ['D/14/1', 'D, line 14, quarter 1', 150],
      ['D/14/2', 'D, line 14, quarter 2', 0],
      ['D/14/3', 'D, line 14, quarter 3', 0],
      ['D/14/4', 'D, line 14, quarter 4', 0],
    ]);
  });
  it('section E has the four years after the first', () => {
    expect(part('E')).toEqual([
      ['E/1', 'E, year 1 after the first', 150],
      ['E/2', 'E, year 2 after the first', 150],
      ['E/3', 'E, year 3 after the first', 0],
      ['E/4', 'E, year 4 after the first', 0],
    ]);
  });
  it('nothing stands between the sections', () => {
    expect(cellsOf(filled()).length).toBe(
      ['A', 'B', 'C', 'D', 'E'].reduce((sum, letter) => sum + part(letter).length, 0),
    );
  });

  it('bears the name of the programme and its listing number where the source has them', () => {
    const programme = { title: 'Sport Fish Restoration', listingNumber: '15.605' };
    const named = { ...PLAN, sources: [{ ...FEDERAL, programme }, COUNTY] };
    const [one, other] = [named, PLAN].map(plan => firstAward({ lines: LINES, plan }).form);
    expect(one).toMatchObject({ programme: 'Sport Fish Restoration' });
    expect(one?.kind === 'SF-424A' && one.sectionA.lines[0]?.listingNumber).toBe('15.605');
    expect(other).toMatchObject({ programme: 'Federal reef grant' });
    expect(other?.kind === 'SF-424A' && other.sectionA.lines[0]?.listingNumber).toBe('');
  });
  it('asks for 75 in 100 of its total', () => {
    const form = filled();
    expect([formTotal(form), federalRequest(form)]).toEqual([usd(1000), usd(750)]);
  });
});

// OMB 4040-0008: 12 = 1 to 11, 14 = 12 + 13, 16 = 14 − 15, 17 = 16c × the federal share.
describe('SF-424C, line by line', () => {
  const plan = {
    ...PLAN,
    sources: [{ ...FEDERAL, form: 'SF-424C' as const }, COUNTY],
    notAllowable: [{ lineId: 'prep', amount: usd(100), reason: 'not eligible' }],
  };
  const lines = [contractWork('prep', 600), wages('permit', 200, { stage: 'permits' })];
  const scrap = { amount: usd(50), keptBy: 'owner' as const, month: '2027-03' };
  const filled = () => firstAward({ lines, plan, scrap, contingency: ACCEPTED }).form;

  it('has total, not allowable and allowable of each line', () => {
    expect(cellsOf(filled()).filter(([, , amount]) => amount !== 0)).toEqual([
      ['1/a', 'line 1, total', 200],
      ['1/c', 'line 1, allowable', 200],
      ['8/a', 'line 8, total', 600],
      ['8/b', 'line 8, not allowable', 100],
      ['8/c', 'line 8, allowable', 500],
      ['12/a', 'line 12, total', 800],
      ['12/b', 'line 12, not allowable', 100],
      ['12/c', 'line 12, allowable', 700],
      ['13/a', 'line 13, total', 100],
      ['13/c', 'line 13, allowable', 100],
      ['14/a', 'line 14, total', 900],
      ['14/b', 'line 14, not allowable', 100],
      ['14/c', 'line 14, allowable', 800],
      ['15/a', 'line 15, total', 50],
      ['15/c', 'line 15, allowable', 50],
      ['16/a', 'line 16, total', 850],
      ['16/b', 'line 16, not allowable', 100],
      ['16/c', 'line 16, allowable', 750],
      ['17', 'line 17, federal assistance requested', 562.5],
    ]);
  });
  it('bears the titles of the form', () => {
    const form = filled();
    const titles = form.kind === 'SF-424C' ? form.lines.map(one => [one.id, one.title]) : [];
    const totals = new Map(FORMS.sf424c.totals.map(one => [one.id, one.title]));
    expect(titles.slice(-5)).toEqual(['12', '13', '14', '15', '16'].map(id => [id, totals.get(id)]));
    expect(form).toMatchObject({ kind: 'SF-424C', sourceId: 'federal' });
  });
  it.each([
    [0, false],
    [1, true],
  ])('a cap %d cents below the share binds: %o', (below, isCapped) => {
    const cap = usd(562.5) - below;
    const sources = [{ ...FEDERAL, form: 'SF-424C' as const, cap }, COUNTY];
    const capped = firstAward({ lines, plan: { ...plan, sources }, scrap, contingency: ACCEPTED }).form;
    expect(capped.kind === 'SF-424C' && capped.line17.isCapped).toBe(isCapped);
  });
  it('of nothing at all the share of the notice is printed', () => {
    const free = wages('a', 0, { months: [] });
    const none = firstAward({ lines: [free], plan: { ...plan, notAllowable: [] } }).form;
    expect(none.kind === 'SF-424C' && none.line17).toEqual({ share: 0.75, federal: 0, isCapped: false });
  });
});

describe('from the estimate to the forms, step by step', () => {
  const input: GrantInput = {
    lines: [
      wages('gift', 40, { inKind: true }),
      wages('clean', 600),
      wages('early', 70, { months: [{ month: '2026-06', amount: usd(70) }] }),
      wages('late', 90, { months: [{ month: '2030-01', amount: usd(90) }] }),
      wages('tow', 30, { stage: 'tow' }),
    ],
    contingency: ACCEPTED,
    scrap: { amount: usd(25), keptBy: 'owner', month: '2027-05' },
    plan: {
      ...PLAN,
      sources: [{ ...FEDERAL, form: 'SF-424C', stages: ['clean-up'], indirectLine: '1' }, GIFT, COUNTY],
      notAllowable: [{ lineId: 'clean', amount: usd(50), reason: 'not eligible' }],
      indirect: { kind: 'de minimis' },
    },
  };
  const made = () => budgetOf(input);

  it('each step has its name, amount and lines', () => {
    // indirect: 15 in 100 of 550 that are allowed and paid; of the contingency 70 and 90 of 800 stand outside the period
    expect(made().reconciliation).toEqual({
      id: 'forms',
      from: { id: 'estimate', title: 'Estimate', amount: usd(830) },
      steps: [
        { id: 'contingency', title: 'Contingency', amount: usd(100) },
        { id: 'indirect', title: 'Indirect cost of the grantee', amount: usd(82.5) },
        { id: 'before-award', title: 'Pre-award cost', amount: -usd(78.75), lineIds: ['early'] },
        { id: 'after-award', title: 'Cost after the award period', amount: -usd(101.25), lineIds: ['late'] },
        { id: 'not-allowable', title: 'Cost not allowable', amount: -usd(50), lineIds: ['clean'] },
        { id: 'outside-forms', title: 'Cost that no form carries', amount: -usd(30), lineIds: ['tow'] },
        { id: 'program-income', title: 'Program income, SF-424C line 15', amount: -usd(25) },
      ],
      to: { id: 'forms', title: 'Forms total', amount: usd(727.5) },
      difference: 0,
      closes: true,
    });
  });
  it('and from the estimate to what is paid', () => {
    expect(grantCash(input, made()).reconciliation).toEqual({
      id: 'cash',
      from: { id: 'estimate', title: 'Estimate', amount: usd(830) },
      steps: [
        { id: 'contingency', title: 'Contingency', amount: usd(100) },
        { id: 'indirect', title: 'Indirect cost of the grantee', amount: usd(82.5) },
        {
          id: 'in-kind',
          title: 'Contributions in kind, paid by nobody',
          amount: -usd(40),
          lineIds: ['gift'],
        },
      ],
      to: { id: 'payments', title: 'Payments, released retainage included', amount: usd(972.5) },
      difference: 0,
      closes: true,
    });
  });
  it('the narrative says what each row is and how it came about', () => {
    const [award] = made().awards;
    expect(
      award?.narrative.map(({ rowId, lineId, classId, text }) => [rowId, lineId, classId, text]),
    ).toEqual([
      [
        'gift/labour',
        'gift',
        '8',
        "$40.00 for gift, wages; the estimator's judgement (invented for the test).",
      ],
      [
        'clean/labour',
        'clean',
        '8',
        "$550.00 for clean, wages; the estimator's judgement (invented for the test), out of $600.00 in all.",
      ],
      [
        'early/labour',
        'early',
        '8',
        "$0.00 for early, wages; the estimator's judgement (invented for the test), out of $70.00 in all.",
      ],
      [
        'late/labour',
        'late',
        '8',
        "$0.00 for late, wages; the estimator's judgement (invented for the test), out of $90.00 in all.",
      ],
      [
        'contingency/preparation',
        undefined,
        '13',
        '$80.00 of contingency: estimated by a documented method, see the basis of estimate.',
      ],
      [
        'indirect/preparation',
        undefined,
        '1',
        '$82.50 of indirect cost: 15 per cent of its part of the base of $550.00.',
      ],
    ]);
    expect(award?.narrative.map(one => 'lineId' in one)).toEqual([true, true, true, true, false, false]);
    expect(bookOfNarrative(award?.narrative ?? [])).toMatchObject({
      id: 'narrative',
      title: 'budget narrative',
      entries: [
        { key: 'gift/labour', title: 'gift/labour', amount: usd(40) },
        { key: 'clean/labour', amount: usd(550) },
        { key: 'early/labour', amount: 0 },
        { key: 'late/labour', amount: 0 },
        { key: 'contingency/preparation', amount: usd(80) },
        { key: 'indirect/preparation', amount: usd(82.5) },
      ],
    });
  });
  it('a sentence without an amount is missing from the book of the narrative', () => {
    expect(bookOfNarrative([{ rowId: 'a', classId: '1', text: 'no amount at all' }]).entries).toEqual([]);
  });
  it('rows that no line stands behind are named for their column', () => {
    const rows = made().awards[0]?.rows.filter(row => row.lineId === undefined) ?? [];
    expect(rows.map(({ title, isInKind, kind }) => [title, isInKind, kind])).toEqual([
      ['Contingency, preparing the ship', false, 'contingency'],
      ['Indirect cost, preparing the ship', false, 'indirect'],
    ]);
  });
  it('the tie-out leaves out lines of the form that nothing stands on', () => {
    expect(made().awards[0]?.tieOut.map(row => [row.classId, row.lineIds, row.estimate, row.form])).toEqual([
      ['1', [], usd(82.5), usd(82.5)],
      ['8', ['gift', 'clean', 'early', 'late'], usd(590), usd(590)],
      ['13', [], usd(80), usd(80)],
    ]);
  });
});

describe('two grants', () => {
  const tow: FundingSource = { ...FEDERAL, id: 'tow', title: 'Tow grant', stages: ['tow'] };
  const input: GrantInput = {
    lines: [...LINES, wages('yard', 100, { stage: 'yard' })],
    contingency: ACCEPTED,
    scrap: { amount: usd(60), keptBy: 'owner' },
    plan: { ...PLAN, sources: [LONG, tow, COUNTY] },
  };
  it('contingency and income stand in the first alone', () => {
    const { book } = grantBook(
      { ...input, plan: { ...input.plan, sources: [tow, LONG, COUNTY] } },
      RULES,
      FORMS,
    );
    expect(book?.awards.map(award => [award.source.id, award.income.income])).toEqual([
      ['tow', usd(60)],
      ['federal', 0],
    ]);
    const reserves = book?.awards.map(award => award.rows.filter(row => row.kind === 'contingency').length);
    expect(reserves).toEqual([1, 0]);
  });
});
