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

test('without a schedule the hours of what lasts by it are not known, nor those of all work; those of the rest are', () => {
  const { work, counts } = windowOf('without a schedule');
  const { estimate } = awkward('without a schedule');
  const items = estimate?.items ?? [];
  const { result, columns } = { result: estimate?.work.result, columns: estimate?.work.items.columns };
  const known = items.filter(item => item.span === undefined);
  expect(known.length).toBeGreaterThan(200);
  expect(known.length).toBeLessThan(items.length);
  for (const { id } of known) expect(columns && result?.number(columns.hours, id), id).toBeDefined();
  expect(work.table.rows.at(-1)?.cells['hours']?.absent).toBe(true);
  const answer = new WhyDesk(awkward('without a schedule'), 'us').answer('hours:all');
  expect(answer?.value.absent).toBe(true);
  expect(answer?.rows.some(row => row.value.absent === true)).toBe(true);
  expect(answer?.rows.some(row => (amountOf(row.value.text) ?? 0) > 100)).toBe(true);
  expect(work.sentence[0]).toBe(`${counts['work'] ?? ''} work items, `);
  expect(work.sentence[1]).toBe('the hours not known yet');
  expect(counts['work']).toBe(String(items.length));
});
