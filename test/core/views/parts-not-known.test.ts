import { expect, test } from 'vitest';
import { WhyDesk, windowRows } from '../../../core/views';
import { AWKWARD, awkward } from './awkward';
import { amountOf } from './laws';

const windowOf = (name: 'with a lightship that is no weight' | 'without a schedule') => {
  const rows = windowRows(AWKWARD[name], awkward(name), 'us', undefined)?.rows;
  if (rows === undefined) throw new Error('there is a window');
  return rows;
};

test('months and materials that are known beside one that is not are told in dollars, each for itself', () => {
  const { byMonth, byMaterial } = windowOf('with a lightship that is no weight').budget;
  const desk = new WhyDesk(awkward('with a lightship that is no weight'), 'us');
  const rows = [byMonth, byMaterial].flatMap(table => table.rows.filter(row => row.kind === 'line'));
  const cells = rows.flatMap(row => row.cells['total'] ?? []);
  const known = cells.filter(cell => cell.absent !== true);
  expect(known.length).toBeGreaterThan(5);
  expect(known.length).toBeLessThan(cells.length);
  for (const { text, absent, why = '' } of cells) {
    const { value } = desk.answer(why) ?? {};
    expect(value?.absent, why).toBe(absent);
    if (absent === true) continue;
    const exact = amountOf(value?.text) ?? Number.NaN;
    // Half away from zero, as every amount that stands for itself.
    expect(amountOf(text), why).toBe(Math.sign(exact) * Math.floor(Math.abs(exact) + 0.5));
  }
});

test('work without a schedule is counted with its hours, though it has no price', () => {
  const { work, counts } = windowOf('without a schedule');
  const { estimate } = awkward('without a schedule');
  const result = estimate?.work.result;
  const column = estimate?.work.items.columns.hours;
  const hours = (estimate?.items ?? []).map(({ id }) =>
    column === undefined ? Number.NaN : (result?.number(column, id) ?? Number.NaN),
  );
  const sum = hours.reduce((all, one) => all + one, 0);
  const cell = work.table.rows.at(-1)?.cells['hours'];
  expect(amountOf(cell?.text)).toBe(Math.round(sum));
  expect(work.sentence[0]).toBe(`${counts['work'] ?? ''} work items, `);
  expect(counts['work']).toBe(String(hours.length));
});
