import { describe, expect, test } from 'vitest';
import { at } from '../../../core/base';
import { WhyDesk } from '../../../core/views';
import type { Row } from '../../../core/views/rows';
import { demoProject, evaluated } from '../evaluation/demo';

const funding = new WhyDesk(evaluated(demoProject()), 'us').opened('funding');
const amountIn = (text = '') => (text === '–' ? 0 : Number(text.replaceAll(',', '').replace('−', '-')));
const sum = (amounts: readonly number[]) => amounts.reduce((all, one) => all + one, 0);

describe('the sections of SF-424A', () => {
  const award = funding?.awards.find(one => one.form === 'SF-424A');
  if (award === undefined) throw new Error('the example has an award on SF-424A');
  const { table, sections } = award;
  const cell = (row: Row | undefined, key: string) => amountIn(row?.cells[key]?.text);
  const lineB = (id: string) => table.rows.find(row => row.id === id);
  const activities = table.columns
    .map(({ key }) => key)
    .filter(key => !['id', 'title', 'total'].includes(key));
  const [sectionA, sectionC] = [at(sections, 0), at(sections, 1)];
  const lineA = (id: string) => sectionA.rows.find(row => row.id === id);

  test('add up in every row of section B, to the dollar', () => {
    expect(activities.length).toBeGreaterThan(1);
    for (const row of table.rows)
      expect(cell(row, 'total'), row.id).toBe(sum(activities.map(key => cell(row, key))));
  });

  test('say the same in A as in B: each activity, and all of them', () => {
    for (const activity of activities)
      expect(cell(lineA(activity), 'total'), activity).toBe(cell(lineB('k'), activity));
    expect(cell(lineA('total'), 'total')).toBe(cell(lineB('k'), 'total'));
    for (const key of ['federal', 'other', 'total'])
      expect(cell(lineA('total'), key)).toBe(sum(activities.map(id => cell(lineA(id), key))));
    for (const row of sectionA.rows)
      expect(cell(row, 'federal') + cell(row, 'other'), row.id).toBe(cell(row, 'total'));
  });

  test('say the same in C as in A of what is not federal', () => {
    const last = sectionC.rows.at(-1);
    expect(cell(last, 'amount')).toBe(cell(lineA('total'), 'other'));
    expect(sum(sectionC.rows.slice(0, -1).map(row => cell(row, 'amount')))).toBe(cell(last, 'amount'));
  });
});
