import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../core/base';
import {
  checkContingency,
  grantBook,
  type FundingPlan,
  type FundingSource,
  type GrantInput,
} from '../../../core/funding';
import { line } from '../cash-flow/lines';
import { ACCEPTED, COUNTY, FEDERAL, FORMS, GIFT, PLAN, RULES, contractWork, usd, wages } from './plans';

/** The one finding of a code, in full. */
function found(input: GrantInput, code: string): Finding | undefined {
  const all = grantBook(input, RULES, FORMS).findings.filter(each => each.code === code);
  expect(all).toHaveLength(1);
  return all[0];
}
const withSources = (...sources: FundingSource[]): GrantInput => ({
  lines: [wages('a', 10)],
  plan: { ...PLAN, sources },
});
const withPlan = (change: Partial<FundingPlan>, lines = [wages('a', 10)]): GrantInput => ({
  lines,
  plan: { ...PLAN, ...change },
});

const STOPS = 'no grant budget is made until this is put right; the estimate stands';
const { period: _period, ...NO_PERIOD } = FEDERAL;
const { share: _share, ...NO_SHARE } = FEDERAL;

// What a form needs: OMB 4040-0006 and 4040-0008; what counts as match: 2 CFR 200.306.
describe('what is wrong with a source is said in full', () => {
  it.each<[string, string, string, FundingSource]>([
    ['funding/period-missing', 'has no award period', 'enter its start and finish', NO_PERIOD],
    ['funding/share-missing', 'has no share', 'enter the share its notice allows', NO_SHARE],
    ['funding/share-range', 'has a share of 1.5', 'enter a share from 0 to 1', { ...FEDERAL, share: 1.5 }],
    ['funding/share-range', 'has a share of -0.1', 'enter a share from 0 to 1', { ...FEDERAL, share: -0.1 }],
  ])('%s: %s', (code, what, remedy, source) => {
    expect(found(withSources(source, COUNTY), code)).toEqual({
      code,
      weight: 'blocks',
      place: '/funding/sources/federal',
      message: `Federal reef grant ${what}`,
      meaning: STOPS,
      remedy,
    });
  });

  it.each([0, 1])('a share of %d is within bounds', share => {
    expect(grantBook(withSources({ ...FEDERAL, share }, COUNTY), RULES, FORMS).book).toBeDefined();
  });

  it.each<[string, string, string, FundingSource, string | undefined]>([
    [
      'funding/federal-match',
      'is federal money standing in as match',
      'give it a form of its own, or take it out',
      { ...COUNTY, kind: 'federal' },
      '2 CFR 200.306(b)(5); 50 CFR 80.85',
    ],
    [
      'funding/value-in-kind',
      'has no basis for its value',
      'say how the contribution is valued',
      { ...COUNTY, support: 'in kind', lineIds: ['a'] },
      '2 CFR 200.306(d) to (i)',
    ],
    [
      'funding/in-kind-lines',
      'names no line it contributes',
      'name its estimate lines',
      { ...COUNTY, support: 'in kind', lineIds: [] },
      undefined,
    ],
  ])('%s: %s', (code, what, remedy, source, rule) => {
    expect(found(withSources(FEDERAL, source), code)).toEqual({
      code,
      weight: 'blocks',
      place: '/funding/sources/county',
      message: `County cash ${what}`,
      meaning: STOPS,
      remedy,
      ...(rule !== undefined && { rule }),
    });
  });

  it('a source that stands twice is told once, by its name', () => {
    expect(found(withSources(FEDERAL, COUNTY, COUNTY), 'funding/source-twice')).toEqual({
      code: 'funding/source-twice',
      weight: 'blocks',
      place: '/funding/sources/county',
      message: 'County cash stands twice',
      meaning: STOPS,
      remedy: 'count each source once',
    });
  });

  it('without a grant that has a form the budget is absent and the estimate stands', () => {
    expect(found(withSources(COUNTY), 'funding/no-award')).toEqual({
      code: 'funding/no-award',
      weight: 'blocks',
      place: '/funding/sources',
      message: 'no source with a form and a period bears any cost, so there is no grant budget',
      meaning: 'forms, shares and match are absent; the estimate stands',
      remedy: 'add a grant with its form, period and share',
    });
  });
});

// 2 CFR 200.306(b): match is counted once, and only what is given.
describe('a donated line is given by exactly one source in kind', () => {
  const gift = wages('gift', 100, { inKind: true });
  const told = (code: string, what: string) => ({
    code,
    weight: 'blocks',
    place: '/lines/gift',
    message: `the line gift ${what}`,
    meaning: 'the match would be counted wrongly, so no grant budget is made',
    remedy: 'let exactly one source in kind name the donated line',
  });
  const lines = [gift, wages('a', 300)];

  it('none gives it', () => {
    expect(found(withPlan({}, lines), 'funding/in-kind-source')).toEqual(
      told('funding/in-kind-source', 'is donated, but no source gives it'),
    );
  });
  it('cash that names the line does not give it', () => {
    const cash = { ...COUNTY, lineIds: ['gift'] };
    expect(found(withPlan({ sources: [FEDERAL, cash] }, lines), 'funding/in-kind-source')?.place).toBe(
      '/lines/gift',
    );
  });
  it('two give it', () => {
    const sources = [FEDERAL, GIFT, { ...GIFT, id: 'other' }, COUNTY];
    expect(found(withPlan({ sources }, lines), 'funding/in-kind-twice')).toEqual(
      told('funding/in-kind-twice', 'is counted as match twice'),
    );
  });
  it('it is given, and paid all the same', () => {
    const sources = [FEDERAL, GIFT, COUNTY];
    expect(found(withPlan({ sources }, [wages('gift', 100)]), 'funding/in-kind-paid')).toEqual(
      told('funding/in-kind-paid', 'is given in kind by a source, but is not donated'),
    );
  });
});

// 50 CFR 80.120 (income) and 2 CFR 200.406 (credit): one of the two.
describe('scrap counted twice', () => {
  const credit = contractWork('credit', -40, { scrapCredit: true });
  const lines = [wages('a', 100), credit];
  it('is told on the line that has the credit', () => {
    const input: GrantInput = { lines, scrap: { amount: usd(40), keptBy: 'owner' }, plan: PLAN };
    expect(found(input, 'funding/scrap-twice')).toEqual({
      code: 'funding/scrap-twice',
      weight: 'blocks',
      place: '/lines/credit',
      message: 'scrap lowers the contract price and is program income as well',
      meaning: 'the federal request would be lowered twice',
      remedy: 'let either the contractor or the owner keep the scrap',
      rule: '50 CFR 80.120; 2 CFR 200.406',
    });
  });
  it.each([
    ['scrap worth nothing', { lines, scrap: { amount: 0, keptBy: 'owner' as const }, plan: PLAN }],
    [
      'no line with a credit',
      { lines: [wages('a', 100)], scrap: { amount: usd(40), keptBy: 'owner' as const }, plan: PLAN },
    ],
  ])('%s is counted once', (_what, input) => {
    expect(grantBook(input, RULES, FORMS).book).toBeDefined();
  });
});

// 2 CFR 200.433(b) and (c): contingency amounts in a budget.
describe('a contingency that a grant may not bear', () => {
  it.each([
    [
      { isReserve: true },
      'is a reserve for what cannot be foreseen',
      'leave the reserve out of the grant budget',
    ],
    [
      { isByAcceptedMethod: false },
      'is not estimated by a broadly accepted method',
      'take it from the estimate class or from the simulation',
    ],
    [{ isDocumented: false }, 'has no documentation', 'write down how it was estimated'],
    [{ isAcceptedByAgency: false }, 'is not accepted by the agency yet', 'ask the agency before applying'],
  ])('%o', (change, what, remedy) => {
    expect(checkContingency({ ...ACCEPTED, ...change })).toEqual([
      {
        code: 'funding/contingency-not-allowable',
        weight: 'warns',
        place: '/funding/contingency',
        message: `the contingency of $100.00 ${what}; it stands in the budget as cost not allowable`,
        meaning: 'the grant does not bear it; the county does',
        remedy,
        rule: '2 CFR 200.433',
      },
    ]);
  });
});

describe('a cost without a line on the form', () => {
  it('is told with its title, kind and amount, at its line', () => {
    expect(found(withPlan({ mapping: { 'SF-424A': [] } }), 'funding/no-form-line')).toEqual({
      code: 'funding/no-form-line',
      weight: 'blocks',
      place: '/lines/a',
      message: 'a, labour, $10.00, goes to no line of the form',
      meaning: 'the form would be short by that amount',
      remedy: 'add a row to the mapping of the form',
    });
  });
  it('of a contingency is told at the mapping, which alone can mend it', () => {
    const mapping = { 'SF-424A': [{ when: { kind: 'labour' as const }, to: 'a' }] };
    const input = { ...withPlan({ mapping }), contingency: ACCEPTED };
    expect(found(input, 'funding/no-form-line')).toMatchObject({
      place: '/funding/mapping',
      message: 'Contingency, preparing the ship, contingency, $100.00, goes to no line of the form',
    });
  });
  it('a line that SF-424A does not have is told with those it has', () => {
    const input = withPlan({ mapping: { 'SF-424A': [{ when: {}, to: 'z' }] } });
    expect(found(input, 'funding/unknown-form-line')).toEqual({
      code: 'funding/unknown-form-line',
      weight: 'blocks',
      place: '/funding/mapping',
      message: 'the mapping sends cost to line z, which SF-424A does not have',
      meaning: 'no form is made while a cost has no line on it',
      remedy: 'map it to one of a, b, c, d, e, f, g, h, j',
    });
  });
  it('and so for SF-424C', () => {
    const mapping = { 'SF-424C': [{ when: {}, to: 'j' }] };
    const input = withPlan({ mapping, sources: [{ ...FEDERAL, form: 'SF-424C' }, COUNTY] });
    expect(found(input, 'funding/unknown-form-line')).toMatchObject({
      message: 'the mapping sends cost to line j, which SF-424C does not have',
      remedy: 'map it to one of 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 13',
    });
  });
});

describe('shares that do not come out', () => {
  it('credits above the cost of a grant are told at its source', () => {
    expect(
      found(withPlan({}, [wages('a', 10), contractWork('credit', -30)]), 'funding/credits-above-cost'),
    ).toEqual({
      code: 'funding/credits-above-cost',
      weight: 'blocks',
      place: '/funding/sources/federal',
      message: 'the allowable cost of Federal reef grant is -$20.00: its credits are larger than its costs',
      meaning: 'a grant cannot ask for less than nothing, so there is no form',
      remedy: 'put the credit on the source that bears the cost it lowers',
    });
  });
  it('credits that come to the cost exactly leave a form of zeros', () => {
    const input = withPlan({}, [wages('a', 10), contractWork('credit', -10)]);
    expect(grantBook(input, RULES, FORMS).book?.federal).toBe(0);
  });
  it('match that nobody gives is a warning with its amount', () => {
    expect(found(withSources(FEDERAL), 'funding/match-not-found')).toEqual({
      code: 'funding/match-not-found',
      weight: 'warns',
      place: '/funding/sources/federal',
      message: '$2.50 of the cost beside Federal reef grant is borne by no source',
      meaning: 'the match is short by that amount',
      remedy: 'add a matching source, raise what a source gives, or ask for less',
    });
  });
  // 2 CFR 200.307: what income may be used for is agreed with the grantor.
  it('income without a use is a warning with its amount and method', () => {
    const input: GrantInput = { ...withPlan({}), scrap: { amount: usd(30), keptBy: 'owner' } };
    expect(found(input, 'funding/income-not-used')).toEqual({
      code: 'funding/income-not-used',
      weight: 'warns',
      place: '/funding/income',
      message: '$20.00 of program income finds no use under deduction',
      meaning: 'it lowers neither the grant nor the match, and stays with the grantee unexplained',
      remedy: 'agree with the grantor what the rest of the income is for',
      rule: '2 CFR 200.307',
    });
  });
});

// 2 CFR 200.414(f) (de minimis), 200.331 and 200.1 (contracts and subawards).
describe('indirect cost that is not known', () => {
  const meaning = 'indirect cost is not known, so no form is made; the estimate stands';
  it('a de minimis rate above the one of the award date is told with both', () => {
    const input = withPlan({ indirect: { kind: 'de minimis', rate: 0.16 } });
    expect(found(input, 'funding/rate-above-de-minimis')).toEqual({
      code: 'funding/rate-above-de-minimis',
      weight: 'blocks',
      place: '/funding/indirect',
      message: 'a de minimis rate of 0.16 is above the 0.15 of an award of 2026-11-01',
      meaning,
      remedy: 'enter a rate within the limit, or the negotiated rate with its agreement',
      rule: '2 CFR 200.414(f)',
    });
  });
  it('a contract without a class is told by its name', () => {
    const input = withPlan({ indirect: { kind: 'de minimis' } }, [
      contractWork('prep', 500, { contractId: 'yard-work' }),
    ]);
    expect(found(input, 'funding/contract-class')).toEqual({
      code: 'funding/contract-class',
      weight: 'blocks',
      place: '/funding/contracts/yard-work',
      message: 'the contract yard-work has no class, so the base of indirect cost is not known',
      meaning,
      remedy: 'choose service procurement, subaward or capital; the three results stand side by side',
      rule: '2 CFR 200.331 and 200.1',
    });
  });
  it('SF-424C without a line for it asks the grantor', () => {
    const input = withPlan({
      indirect: { kind: 'de minimis' },
      sources: [{ ...FEDERAL, form: 'SF-424C' }, COUNTY],
    });
    expect(found(input, 'funding/indirect-line')).toEqual({
      code: 'funding/indirect-line',
      weight: 'blocks',
      place: '/funding/sources/federal',
      message:
        'SF-424C has no line for indirect cost, and Federal reef grant was not asked where it wants it',
      meaning,
      remedy: 'ask the grantor, and enter the line',
    });
  });
});

it('findings of an allowed budget are none', () => {
  const input = withPlan({ indirect: { kind: 'negotiated', rate: 0.4, agreement: 'invented' } }, [
    wages('a', 100),
    line({ id: 'b', contract: false, amounts: { ...wages('b', 0).amounts, fee: usd(7) } }),
  ]);
  expect(grantBook(input, RULES, FORMS).findings).toEqual([]);
});
