import { describe, expect, it } from 'vitest';
import { formSections, type GrantForm } from '../../../core/funding';
import { ACCEPTED, COUNTY, FEDERAL, PLAN, contractWork, firstAward, usd, wages } from './plans';

const plain = (form: GrantForm) =>
  formSections(form).map(({ title, columns, lines }) => ({
    title,
    columns,
    lines: lines.map(line => [line.title, ...line.cents.map(cents => cents / 100)]),
  }));

/** Every line that is a sum, worked out from the lines it names. */
function unequalSums(form: GrantForm): string[] {
  return formSections(form).flatMap(({ title, lines }) =>
    lines.flatMap(line => {
      if (line.sums === undefined) return [];
      const { sums } = line;
      const again = line.cents.map((_, column) =>
        sums.reduce((sum, one) => sum + one.sign * (lines[one.line]?.cents[column] ?? Number.NaN), 0),
      );
      return again.join(' ') === line.cents.join(' ') ? [] : [`${title}: ${line.title}`];
    }),
  );
}

// OMB 4040-0006: A by activity, B by object class, C the non-federal resources, D the first year by quarter, E later years.
describe('the sections of SF-424A', () => {
  // Wages of 600 in March 2027, towing of 400 half in January 2028 and half in January 2029; 75 in 100 federal.
  const { form } = firstAward({
    lines: [
      wages('clean', 600),
      wages('pull', 400, {
        stage: 'tow',
        months: [
          { month: '2028-01', amount: usd(200) },
          { month: '2029-01', amount: usd(200) },
        ],
      }),
    ],
    plan: {
      ...PLAN,
      sources: [{ ...FEDERAL, period: { start: '2027-01-15', finish: '2032-12-31' } }, COUNTY],
    },
  });

  it('stand as on the form, with the amounts of each', () => {
    const [a, b, c, d, e] = plain(form);
    expect(a).toEqual({
      title: 'Section A, budget summary',
      columns: ['Federal', 'Non-federal', 'Total'],
      lines: [
        ['Preparing the ship', 450, 150, 600],
        ['Tow and sinking', 300, 100, 400],
        ['Monitoring and obligations', 0, 0, 0],
        ['Permits and management', 0, 0, 0],
        ['Total, line 5', 750, 250, 1000],
      ],
    });
    expect(b?.columns).toEqual([
      ...['Preparing the ship', 'Tow and sinking', 'Monitoring and obligations'],
      ...['Permits and management', 'Total'],
    ]);
    expect(b?.lines.map(([title]) => String(title).slice(0, 2)).join('')).toBe('a.b.c.d.e.f.g.h.i.j.k.');
    for (const line of [
      'a. Personnel',
      'i. Total Direct Charges (sum of 6a-6h)',
      'k. TOTALS (sum of 6i and 6j)',
    ])
      expect(b?.lines).toContainEqual([line, 600, 400, 0, 0, 1000]);
    expect(b?.lines).toContainEqual(['j. Indirect Charges', 0, 0, 0, 0, 0]);
    expect(c?.lines).toEqual([
      ['Applicant', 250],
      ['State', 0],
      ['Other', 0],
      ['Total', 250],
    ]);
    expect([d?.columns, d?.lines]).toEqual([
      ['Federal', 'Non-federal'],
      [
        ['First quarter', 450, 150],
        ['Second quarter', 0, 0],
        ['Third quarter', 0, 0],
        ['Fourth quarter', 0, 0],
      ],
    ]);
    expect([e?.columns, e?.lines]).toEqual([
      ['Federal'],
      [
        ['Year 2', 150],
        ['Year 3', 150],
        ['Year 4', 0],
        ['Year 5', 0],
      ],
    ]);
  });

  it('have line 5, lines i and k and the non-federal total as sums of the lines they name', () => {
    expect(unequalSums(form)).toEqual([]);
    const sums = formSections(form).flatMap(({ lines }) => lines.filter(line => line.sums !== undefined));
    expect(sums.map(({ sums: of }) => of?.length)).toEqual([4, 8, 2, 3]);
  });
});

// OMB 4040-0008: 12 = 1 to 11, 14 = 12 + 13, 16 = 14 − 15.
describe('the lines of SF-424C', () => {
  const { form } = firstAward({
    lines: [contractWork('prep', 600), wages('permit', 200, { stage: 'permits' })],
    plan: {
      ...PLAN,
      sources: [{ ...FEDERAL, form: 'SF-424C' }, COUNTY],
      notAllowable: [{ lineId: 'prep', amount: usd(100), reason: 'not eligible' }],
    },
    scrap: { amount: usd(50), keptBy: 'owner', month: '2027-03' },
    contingency: ACCEPTED,
  });

  it('have total, not allowable and allowable, and their sums', () => {
    const [section, ...others] = plain(form);
    expect(others).toEqual([]);
    expect(section?.columns).toEqual(['Total', 'Not allowable', 'Allowable']);
    expect(section?.lines).toHaveLength(16);
    expect(section?.lines.slice(11)).toEqual([
      ['12. SUBTOTAL (sum of lines 1-11)', 800, 100, 700],
      ['13. Contingencies', 100, 0, 100],
      ['14. SUBTOTAL', 900, 100, 800],
      ['15. Project (program) income', 50, 0, 50],
      ['16. TOTAL PROJECT COSTS (subtract #15 from #14)', 850, 100, 750],
    ]);
    expect(unequalSums(form)).toEqual([]);
    const sums = formSections(form).flatMap(({ lines }) => lines.filter(line => line.sums !== undefined));
    expect(sums.map(({ sums: of }) => of?.map(({ sign }) => sign).join(''))).toEqual([
      '1'.repeat(11),
      '11',
      '1-1',
    ]);
  });
});
