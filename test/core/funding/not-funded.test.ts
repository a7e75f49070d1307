import { describe, expect, it } from 'vitest';
import { sumCents } from '../../../core/cash-flow';
import { budgetParts, formSections, grantBook, grantCash, type GrantInput } from '../../../core/funding';
import { line } from '../cash-flow/lines';
import { COUNTY, FEDERAL, FORMS, PLAN, RULES, usd } from './plans';

/** $1,000 of work: the grant gives at most $350 and the county $200, so that nobody bears $450. */
const input = (form: 'SF-424A' | 'SF-424C' = 'SF-424A'): GrantInput => ({
  lines: [line({ id: 'a', amounts: { ...line({ id: 'a' }).amounts, labour: usd(1000) } })],
  plan: {
    ...PLAN,
    sources: [
      { ...FEDERAL, form, cap: usd(350) },
      { ...COUNTY, cap: usd(200) },
    ],
  },
});
function made(of: GrantInput) {
  const { book } = grantBook(of, RULES, FORMS);
  if (book === undefined) throw new Error('there is a grant budget');
  return book;
}

describe('a part of the budget that no source bears', () => {
  const whole = sumCents(input().lines.map(({ total }) => total));
  const open = whole - usd(550);

  it('is told beside the sources, and with them makes the budget of the forms', () => {
    for (const form of ['SF-424A', 'SF-424C'] as const) {
      const book = made(input(form));
      expect(book.unfunded).toBe(open);
      expect(budgetParts(book).map(({ title, amount }) => [title, amount])).toEqual([
        ['Federal reef grant', usd(350)],
        ['County cash', usd(200)],
        ['Not funded yet', open],
      ]);
      expect(sumCents(budgetParts(book).map(({ amount }) => amount))).toBe(book.reconciliation.to.amount);
    }
  });

  it('is no source in section C', () => {
    const form = made(input()).awards[0]?.form;
    if (form?.kind !== 'SF-424A') throw new Error('the form is SF-424A');
    expect(form.sectionC).toEqual({
      applicant: usd(200),
      state: 0,
      other: 0,
      unfunded: open,
      total: usd(200) + open,
    });
    const section = formSections(form).find(({ title }) => title.startsWith('Section C'));
    expect(section?.lines.map(({ title, cents }) => [title, cents[0]])).toEqual([
      ['Applicant', usd(200)],
      ['State', 0],
      ['Other', 0],
      ['Not funded yet', open],
      ['Total', usd(200) + open],
    ]);
    expect(section?.lines.at(-1)?.sums?.map(sum => sum.line)).toEqual([0, 1, 2, 3]);
  });

  it('is not the share of the county, which has its cap', () => {
    const { county } = grantCash(input(), made(input()));
    expect(county).toMatchObject({ share: usd(200), unfunded: open, outside: 0, total: usd(200) + open });
    expect(county.shares.map(({ sourceId }) => sourceId)).toEqual(['county']);
  });

  it('is told nowhere when the sources bear all', () => {
    const book = made({ ...input(), plan: PLAN });
    expect([book.unfunded, budgetParts(book).length]).toEqual([0, 2]);
  });

  it('is not what program income pays for', () => {
    const book = made({
      ...input(),
      scrap: { amount: usd(100), keptBy: 'owner' },
      plan: { ...input().plan, income: { method: 'deduction' } },
    });
    expect(book.unfunded).toBe(open - usd(100));
    expect(budgetParts(book).map(({ title, amount }) => [title, amount])).toContainEqual([
      'Program income',
      usd(100),
    ]);
    const onConstruction = made({ ...input('SF-424C'), scrap: { amount: usd(100), keptBy: 'owner' } });
    for (const one of [book, onConstruction])
      expect(sumCents(budgetParts(one).map(({ amount }) => amount))).toBe(one.reconciliation.to.amount);
  });
});
