import { describe, expect, it } from 'vitest';
import { line } from '../cash-flow/lines';
import {
  activitySchema,
  grantBook,
  mapToForm,
  printedShares,
  ruleAt,
  type FundingPlan,
  type GrantInput,
} from '../../../core/funding';
import { sumCents, type EstimateLine } from '../../../core/cash-flow';
import { COUNTY, FEDERAL, FORMS, PLAN, RULES, usd } from './plans';

const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };
const own = (id: string, dollars: number, more: Partial<EstimateLine> = {}): EstimateLine =>
  line({ id, amounts: { ...none, labour: usd(dollars) }, ...more });
const bought = (id: string, unitCost: number): EstimateLine =>
  line({ id, amounts: { ...none, equipment: usd(unitCost) }, unitCost: usd(unitCost) });

function rowsOf(input: GrantInput) {
  const { book, findings } = grantBook(input, RULES, FORMS);
  if (book === undefined) throw new Error(JSON.stringify(findings));
  return book.awards.flatMap(award => award.rows);
}
const codesOf = (input: GrantInput) => grantBook(input, RULES, FORMS).findings.map(one => one.code);

// 2 CFR 200.1: equipment is a piece of the threshold of the award date or more, or of the recipient's lower level.
describe('equipment and supplies on the form', () => {
  const classOf = (unitCost: number, plan: Partial<FundingPlan> = {}) =>
    rowsOf({ lines: [bought('pump', unitCost)], plan: { ...PLAN, ...plan } }).map(row => [
      row.kind,
      row.classId,
    ]);

  it.each([
    [10_000, '2024-10-01', 'equipment-purchase', 'd'],
    [9_999, '2024-10-01', 'supply-purchase', 'e'],
    [9_999, '2024-09-30', 'equipment-purchase', 'd'],
    [5_000, '2024-09-30', 'equipment-purchase', 'd'],
    [4_999, '2024-09-30', 'supply-purchase', 'e'],
  ])('a pump of %d in an award of %s is %s, line %s', (unitCost, awardDate, kind, classId) => {
    expect(classOf(unitCost, { awardDate })).toEqual([[kind, classId]]);
  });

  it('the lower level of the county governs: from 5,000 equipment, 4,999 supply', () => {
    const county = { equipment: usd(5_000) };
    expect(classOf(5_000, { county })).toEqual([['equipment-purchase', 'd']]);
    expect(classOf(4_999, { county })).toEqual([['supply-purchase', 'e']]);
    expect(classOf(9_999, { county: { equipment: usd(20_000) } })).toEqual([['supply-purchase', 'e']]);
  });
});

describe('rent', () => {
  it('stands outside the base of indirect cost, as modified total direct cost has it (2 CFR 200.1)', () => {
    const lines = [own('staff', 100), own('berth', 300, { rent: true })];
    const { book } = grantBook({ lines, plan: { ...PLAN, indirect: { kind: 'de minimis' } } }, RULES, FORMS);
    expect(book?.awards[0]?.indirect).toMatchObject({ base: usd(100), amount: usd(15) });
  });
});

describe('nothing is left out in silence', () => {
  const plan = { ...PLAN, sources: [FEDERAL, COUNTY] };
  const contingency = {
    amount: usd(50),
    isByAcceptedMethod: true,
    isDocumented: true,
    isAcceptedByAgency: true,
    isReserve: false,
  };

  it('a cost that no row of the mapping takes blocks the form, contingency too', () => {
    const mapping = { 'SF-424A': [{ when: { kind: 'labour' as const }, to: 'a' }] };
    const input = { lines: [own('a', 100)], contingency, plan: { ...plan, mapping } };
    const found = grantBook(input, RULES, FORMS).findings.filter(one => one.code === 'funding/no-form-line');
    expect(found.map(one => one.place)).toEqual(['/funding/mapping']);
    expect(mapToForm([], { kind: 'fee' })).toBeUndefined();
  });

  it('a mapping to a line the form does not have is named', () => {
    const mapping = { 'SF-424A': [{ when: {}, to: 'z' }] };
    expect(codesOf({ lines: [own('a', 100)], plan: { ...plan, mapping } })).toContain(
      'funding/unknown-form-line',
    );
  });

  it('without a grant that has a form there is no budget', () => {
    const { book, findings } = grantBook(
      { lines: [own('a', 100)], plan: { ...plan, sources: [COUNTY] } },
      RULES,
      FORMS,
    );
    expect(book).toBeUndefined();
    expect(findings.map(one => one.code)).toEqual(['funding/no-award']);
  });

  it('a project of no cost has a form of zeros that closes', () => {
    const free = own('a', 0, { months: [] });
    const { book } = grantBook({ lines: [free], contingency, plan }, RULES, FORMS);
    expect(book?.federal).toBe(0);
    expect(book?.reconciliation).toMatchObject({ difference: 0, closes: true });
    expect(printedShares([0, 0])).toEqual([0, 0]);
  });

  it('columns of the user keep the money whole and the indirect cost with the column it comes from', () => {
    const activities = [
      activitySchema.parse({ id: 'ship', title: 'The ship', stages: ['clean-up'] }),
      activitySchema.parse({ id: 'sea', title: 'At sea', stages: ['tow', 'sinking'] }),
    ];
    const lines = [own('a', 100), own('b', 300, { stage: 'tow' })];
    const rows = rowsOf({ lines, plan: { ...plan, activities, indirect: { kind: 'de minimis' } } });
    const of = (id: string) => sumCents(rows.filter(row => row.activityId === id).map(row => row.allowable));
    expect([of('ship'), of('sea')]).toEqual([usd(115), usd(345)]);
  });

  it('a rule that no date reaches is a fault of the program', () => {
    const later = { ...RULES, rules: RULES.rules.filter(rule => rule.from !== null) };
    expect(() => ruleAt(later, 'de-minimis-rate', '1990-01-01')).toThrow('no de-minimis-rate');
  });
});
