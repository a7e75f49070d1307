import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sumCents, type EstimateLine } from '../../../core/cash-flow';
import { grantBook, type GrantBook, type GrantInput } from '../../../core/funding';
import { line, randomLines } from '../cash-flow/lines';
import { FORMS, PLAN, RULES, usd } from './plans';

const SCRAP = usd(60_000);
const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };

/** Work large enough to bear the credit, in the middle of the award. */
const CUTTING = line({
  id: 'cutting',
  contract: true,
  amounts: { ...none, subcontract: usd(200_000) },
  months: [{ month: '2027-06', amount: usd(200_000) }],
});
const CREDITED: EstimateLine = {
  ...CUTTING,
  amounts: { ...none, subcontract: usd(140_000) },
  total: usd(140_000),
  months: [{ month: '2027-06', amount: usd(140_000) }],
  scrapCredit: true,
};

function bookOf(input: GrantInput): GrantBook {
  const { book, findings } = grantBook(input, RULES, FORMS);
  if (book === undefined) throw new Error(JSON.stringify(findings));
  return book;
}

function kept(lines: readonly EstimateLine[], keptBy: 'owner' | 'contractor'): GrantInput {
  return {
    lines: [...lines, keptBy === 'owner' ? CUTTING : CREDITED],
    scrap: { amount: SCRAP, keptBy, month: '2027-06' },
    plan: PLAN,
  };
}

const priceOf = ({ lines }: GrantInput) => sumCents(lines.filter(one => one.contract).map(one => one.total));

// Scrap sold by the contractor is an applicable credit (2 CFR 200.406), scrap sold by the owner program income,
// deducted where the project statement names no method (50 CFR 80.123): either way it lowers the request once.
describe('who keeps 60,000 of scrap, in 1,000 random projects', () => {
  it('moves it between contract price and program income, and the federal request is the same', () => {
    fc.assert(
      fc.property(randomLines, lines => {
        const [owner, contractor] = [kept(lines, 'owner'), kept(lines, 'contractor')];
        const [income, credit] = [bookOf(owner), bookOf(contractor)];
        expect(priceOf(owner) - priceOf(contractor)).toBe(SCRAP);
        expect([income.programIncome, credit.programIncome]).toEqual([SCRAP, 0]);
        expect(Math.abs(income.federal - credit.federal)).toBeLessThanOrEqual(1);
        expect(income.reconciliation.difference + credit.reconciliation.difference).toBe(0);
      }),
      { numRuns: 1000 },
    );
  });

  it('never lowers the request twice: credit and income for the same scrap give no budget', () => {
    fc.assert(
      fc.property(randomLines, lines => {
        const twice = { ...kept(lines, 'contractor'), scrap: { amount: SCRAP, keptBy: 'owner' as const } };
        const { book, findings } = grantBook(twice, RULES, FORMS);
        expect(book).toBeUndefined();
        expect(findings.map(one => one.code)).toContain('funding/scrap-twice');
      }),
      { numRuns: 100 },
    );
  });
});
