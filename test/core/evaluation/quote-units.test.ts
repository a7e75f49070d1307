import { describe, expect, it } from 'vitest';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const base: Project = { ...demoProject(), quotes: [] };
const ITEM = 'cable-stripping';

function quoted(value: string, unit: string, share = '1') {
  const quote: Project['quotes'][number] = {
    id: 'yard',
    vendor: 'Kestrel Marine (invented)',
    dated: '2026-10-01',
    validUntil: '2029-01-31',
    covers: [{ item: ITEM, share }],
    exclusions: [],
    amount: { value, unit, basis: 'quoted', source: 'Invented quote', year: 2026 },
    chosen: true,
  };
  const evaluation = evaluated({ ...base, quotes: [quote] });
  const parts = estimated(evaluation);
  const codes = evaluation.findings.filter(one => one.code.startsWith('quotes/'));
  return { amount: parts.quoted?.quotes.get(ITEM)?.amount, codes, parts };
}

describe('a price for a unit', () => {
  const { parts } = quoted('1000', 'USD');
  const quantity = parts.money.result.at(parts.money.lines.columns.quantity, ITEM);

  it('counts in every unit that measures the same, 1 ft being 0.3048 m', () => {
    expect(quantity.unit).toBe('m');
    const metres = Number(quantity.number);
    expect(Number(quoted('3', 'USD/m').amount)).toBeCloseTo(3 * metres, 2);
    expect(Number(quoted('3', 'USD/ft').amount)).toBeCloseTo((3 * metres) / 0.3048, 1);
    expect(Number(quoted('3', 'USD/ft', '0.5').amount)).toBeCloseTo((1.5 * metres) / 0.3048, 1);
  });

  it('counts in no unit that measures something else, and says so in words', () => {
    const { amount, codes } = quoted('850', 'USD/t');
    expect(amount).toBeUndefined();
    expect(codes.map(one => [one.code, one.message])).toEqual([
      [
        'quotes/no-amount',
        '$850 per tonne of Kestrel Marine (invented) cannot be put in place of the lines it covers.',
      ],
    ]);
  });

  it('taken as a lump sum is asked about, being far from what was worked out', () => {
    const { codes } = quoted('4.25', 'USD');
    expect(codes.map(one => one.code)).toContain('quotes/far-from-computed');
    expect(codes.find(one => one.code === 'quotes/far-from-computed')?.message).toContain(
      'comes to $4.25 for work',
    );
  });

  it('below zero prices nothing and is told as that', () => {
    expect(quoted('-96000', 'USD').codes.find(one => one.code === 'quotes/no-amount')?.remedy).toContain(
      'below zero',
    );
  });
});

it('a quote for work that brings scrap says that the credit goes with it', () => {
  const { codes, parts } = quoted('200000', 'USD');
  const credit = parts.money.result.money(parts.money.scrap.columns.credit, ITEM)?.cents ?? 0;
  expect(credit).toBeGreaterThan(0);
  const [told] = codes.filter(one => one.code === 'quotes/takes-scrap');
  expect(told?.message).toContain((credit / 100).toLocaleString('en-US', { minimumFractionDigits: 2 }));
});

describe('a change of a work item beyond its limits', () => {
  const change = (field: 'quantity' | 'hoursPerUnit' | 'crews', value: string, unit: string) => {
    const figure = { value, unit, basis: 'judgement' as const, source: 'Entered by hand' };
    const evaluation = evaluated({
      ...base,
      items: [{ item: 'pipe-lagging-removal', note: '', [field]: figure }],
    });
    const { money } = estimated(evaluation);
    return {
      codes: evaluation.findings.map(one => `${one.code} ${one.place}`),
      total: money.result.number(money.sums.total),
    };
  };

  it('is told and withheld, so that no total rests on it', () => {
    for (const [field, value, unit] of [
      ['quantity', '-9000', 'm'],
      ['hoursPerUnit', '-1', 'h/m'],
      ['crews', '-1', '1'],
    ] as const) {
      const { codes, total } = change(field, value, unit);
      expect(codes, field).toContain(`given/out-of-limits /items/pipe-lagging-removal/${field}/value`);
      // Crews that nobody can plan leave those that the hours ask for.
      expect(total === undefined, field).toBe(field !== 'crews');
    }
  });

  it('counts within them', () => {
    const { codes, total } = change('quantity', '300', 'm');
    expect(codes.filter(one => one.startsWith('given/'))).toEqual([]);
    expect(total).toBeGreaterThan(0);
  });
});

it('a start more than a year before today is asked about, unless the plan says how far it has come', () => {
  const begun = (start: string, statusDate?: string) =>
    evaluated({ ...base, calendars: { ...base.calendars, start }, ...(statusDate && { statusDate }) })
      .findings.map(one => one.code)
      .includes('document/start-long-past');
  expect([begun('2019-03-01'), begun('2019-03-01', '2026-11-01'), begun(base.calendars.start)]).toEqual([
    true,
    false,
    false,
  ]);
});
