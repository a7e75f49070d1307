import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import {
  CONTRACT_CLASSES,
  grantBook,
  readForms,
  readFundingRules,
  type Award,
  type FundingPlan,
  type FundingSource,
  type GrantBook,
  type GrantInput,
} from '../../../core/funding';
import { STAGES, type EstimateLine } from '../../../core/cash-flow';
import { line, randomLines, usd } from '../cash-flow/lines';

const read = (name: string): unknown => JSON.parse(readFileSync(`templates/${name}.json`, 'utf8'));
export const RULES = readFundingRules(read('funding'));
export const FORMS = readForms(read('forms'));

export const FEDERAL: FundingSource = {
  id: 'federal',
  title: 'Federal reef grant',
  kind: 'federal',
  form: 'SF-424A',
  support: 'cash',
  share: 0.75,
  period: { start: '2027-01-01', finish: '2028-12-31' },
  mode: 'reimbursement',
  lagMonths: 2,
};
export const COUNTY: FundingSource = {
  id: 'county',
  title: 'County cash',
  kind: 'applicant',
  form: 'none',
  support: 'cash',
  mode: 'own',
  lagMonths: 0,
};

export const PLAN: FundingPlan = {
  awardDate: '2026-11-01',
  sources: [FEDERAL, COUNTY],
  contractClasses: {},
  indirect: { kind: 'none' },
  income: {},
  notAllowable: [],
  county: {},
  payment: { retainage: 0.05, releaseAfterMonths: 2, contractPayLag: 1, ownPayLag: 0 },
};

/** A random grant budget: any form, caps, periods, methods, refusals and donations; every contract classed. */
export const randomGrant: fc.Arbitrary<GrantInput> = fc
  .record({
    lines: randomLines,
    contingency: fc.integer({ min: 0, max: 500_000_00 }),
    isAccepted: fc.boolean(),
    form: fc.constantFrom('SF-424A' as const, 'SF-424C' as const),
    second: fc.boolean(),
    share: fc.integer({ min: 0, max: 100 }),
    cap: fc.option(fc.integer({ min: 0, max: 3_000_000_00 }), { nil: undefined }),
    countyCap: fc.option(fc.integer({ min: 0, max: 3_000_000_00 }), { nil: undefined }),
    start: fc.constantFrom('2026-06-01', '2027-01-01', '2027-03-17'),
    finish: fc.constantFrom('2027-09-10', '2028-12-31'),
    approved: fc.boolean(),
    method: fc.constantFrom('deduction' as const, 'addition' as const, 'cost sharing' as const),
    scrap: fc.integer({ min: 0, max: 400_000_00 }),
    keptBy: fc.constantFrom('owner' as const, 'contractor' as const),
    refuse: fc.integer({ min: 0, max: 100_000_00 }),
    donate: fc.boolean(),
    rate: fc.constantFrom('none', 'de minimis', 'negotiated'),
    contractClass: fc.constantFrom(...CONTRACT_CLASSES),
    stageCap: fc.option(fc.integer({ min: 0, max: 100_000_00 }), { nil: undefined }),
  })
  .map(draft => {
    const donated = draft.donate ? draft.lines.find(line => !line.contract && line.total > 0)?.id : undefined;
    const lines = draft.lines.map(line => (line.id === donated ? { ...line, inKind: true } : line));
    const split = Math.floor(STAGES.length / 2);
    const period = { start: draft.start, finish: draft.finish };
    const first: FundingSource = {
      ...FEDERAL,
      form: draft.form,
      share: draft.share / 100,
      period,
      preAwardApproved: draft.approved,
      indirectLine: '11',
      ...(draft.cap !== undefined && { cap: draft.cap }),
      ...(draft.second && { stages: STAGES.slice(0, split) }),
      ...(draft.stageCap !== undefined && { stageCaps: { 'clean-up': draft.stageCap } }),
    };
    const other: FundingSource = {
      ...FEDERAL,
      id: 'second',
      title: 'Second grant',
      share: 0.5,
      indirectLine: '1',
      form: 'SF-424C',
    };
    const gift: FundingSource = {
      ...COUNTY,
      id: 'partner',
      title: 'Partner in kind',
      kind: 'other',
      support: 'in kind',
      valuation: { basis: 'judgement', source: 'invented for the test' },
      lineIds: donated === undefined ? [] : [donated],
    };
    const county = { ...COUNTY, ...(draft.countyCap !== undefined && { cap: draft.countyCap }) };
    const plan: FundingPlan = {
      ...PLAN,
      sources: [first, ...(draft.second ? [other] : []), ...(donated === undefined ? [] : [gift]), county],
      contractClasses: classesFor(lines, draft.contractClass),
      indirect:
        draft.rate === 'none'
          ? { kind: 'none' }
          : draft.rate === 'de minimis'
            ? { kind: 'de minimis' }
            : { kind: 'negotiated', rate: 0.2137, agreement: 'invented' },
      income: { method: draft.method },
      notAllowable: lines[0] ? [{ lineId: lines[0].id, amount: draft.refuse, reason: 'test' }] : [],
    };
    return {
      lines,
      contingency: {
        amount: draft.contingency,
        isByAcceptedMethod: true,
        isDocumented: true,
        isAcceptedByAgency: draft.isAccepted,
        isReserve: false,
      },
      scrap: { amount: draft.scrap, keptBy: draft.keptBy, month: '2027-06' },
      plan,
    };
  });

function classesFor(lines: readonly EstimateLine[], contractClass: (typeof CONTRACT_CLASSES)[number]) {
  const ids = lines.map(line => line.contractId ?? line.id);
  return Object.fromEntries([...ids, 'main-contract'].map(id => [id, contractClass]));
}

export { usd };

const NONE = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };

/** A line of the owner's own wages. */
export const wages = (id: string, dollars: number, more: Partial<EstimateLine> = {}): EstimateLine =>
  line({ id, amounts: { ...NONE, labour: usd(dollars) }, ...more });

/** A line of contract work. */
export const contractWork = (id: string, dollars: number, more: Partial<EstimateLine> = {}): EstimateLine =>
  line({ id, contract: true, amounts: { ...NONE, subcontract: usd(dollars) }, ...more });

/** The grant budget, which the input must allow. */
export function budgetOf(input: GrantInput): GrantBook {
  const { book, findings } = grantBook(input, RULES, FORMS);
  if (book === undefined) throw new Error(JSON.stringify(findings));
  return book;
}

/** The first award of a grant budget. */
export function firstAward(input: GrantInput): Award {
  const [award] = budgetOf(input).awards;
  if (award === undefined) throw new Error('there is no award');
  return award;
}

/** A contribution in kind that gives the line `gift`. */
export const GIFT: FundingSource = {
  ...COUNTY,
  id: 'partner',
  title: 'Dive club',
  kind: 'other',
  support: 'in kind',
  valuation: { basis: 'judgement', source: 'invented for the test' },
  lineIds: ['gift'],
};

/** A contingency that a grant may bear. */
export const ACCEPTED = {
  amount: usd(100),
  isByAcceptedMethod: true,
  isDocumented: true,
  isAcceptedByAgency: true,
  isReserve: false,
};
