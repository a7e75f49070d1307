import { describe, expect, test } from 'vitest';
import { at } from '../../../core/base';
import { summarise } from '../../../core/evaluation';
import { fromCents } from '../../../core/money';
import { monthlySpending, monthsOfLines } from '../../../core/papers';
import { WhyDesk, windowRows } from '../../../core/views';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const evaluation = evaluated(project);
const parts = estimated(evaluation);
const summary = summarise(parts);
const amountIn = (text = '') => (text === '–' ? 0 : Number(text.replaceAll(',', '').replace('−', '-')));

describe('the spending by month', () => {
  /** One line with its amount, worked from 22 January to 20 February: 10 days in January and 20 in February. */
  const one = (cents: number | undefined, id = at(parts.schedule.activities, 0).id) => {
    const dated = { ...at(parts.schedule.activities, 0), start: '2027-01-22', finish: '2027-02-20' };
    const line = { ...at(summary.lines, 0), id, total: cents === undefined ? undefined : fromCents(cents) };
    const schedule = { ...parts.schedule, activities: [dated], hammocks: [] };
    return monthsOfLines({ ...parts, schedule, planned: [] }, { lines: [line] }).get(id);
  };

  test('of a line goes by the days of its work: $3,000 over 10 and 20 days are $1,000 and $2,000', () => {
    expect(one(300_000)).toEqual([
      { month: '2027-01', amount: 100_000 },
      { month: '2027-02', amount: 200_000 },
    ]);
  });

  test('is not known in each month of a line without an amount, has no month without dates, and is none of nothing', () => {
    expect(one(undefined)).toEqual([
      { month: '2027-01', amount: undefined },
      { month: '2027-02', amount: undefined },
    ]);
    expect(one(5, 'elsewhere')).toEqual([{ month: undefined, amount: 5 }]);
    expect(one(0)).toEqual([]);
  });

  test('is the same in the window as in the papers, and opens with the same amount to the cent', () => {
    const rows = windowRows(project, evaluation, 'us', undefined)?.rows.budget.byMonth.rows ?? [];
    const told = new Map(rows.map(row => [row.id, amountIn(row.cells['total']?.text)]));
    const months = monthlySpending(parts, summary) ?? [];
    const busy = months.filter(({ amount }) => amount !== 0);
    expect(busy.length).toBeGreaterThan(5);
    expect([...told.keys()]).toEqual([...busy.map(({ month }) => month), 'total']);
    const desk = new WhyDesk(evaluation, 'us');
    for (const { month, amount } of busy) {
      expect(Math.abs((told.get(month) ?? Number.NaN) - amount / 100), month).toBeLessThan(1);
      expect(amountIn(desk.answer(`month:${month}`)?.value.text), month).toBe(amount / 100);
    }
  });
});
