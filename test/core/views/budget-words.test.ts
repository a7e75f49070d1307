import { describe, expect, test } from 'vitest';
import { BASES } from '../../../core/base';
import { WhyDesk, windowRows, type TableRows } from '../../../core/views';
import { awkward, AWKWARD, type AwkwardName } from './awkward';
import { plain } from './laws';

const budgetOf = (name: AwkwardName) => {
  const budget = windowRows(AWKWARD[name], awkward(name), 'us', undefined)?.rows.budget;
  if (budget === undefined) throw new Error('the window has a budget');
  return budget;
};
/** The number of an amount as it is shown: nothing is a dash. */
const amountIn = (text = '') =>
  text === '–' ? 0 : Number(text.replaceAll(',', '').replace('−', '-').replace('$', ''));
const told = (table: TableRows, key = 'title') => table.rows.map(row => row.cells[key]?.text);
const idsOf = (table: TableRows) => table.rows.map(row => row.id);

describe('the budget of the example', () => {
  test('is told at the prices of its months, and at those of a year where they are held', () => {
    const date = AWKWARD['the example'].rates.priceDate.slice(0, 4);
    expect(plain(budgetOf('the example').sentence)).toMatch(
      new RegExp(
        `^\\$[\\d,]+ at the prices of the months in which it is spent, without contingency; rates are those of ${date}\\.$`,
      ),
    );
    expect(plain(budgetOf('at fixed prices').sentence)).toMatch(/^\$[\d,]+ at the prices of 2026, without/);
    expect(plain(budgetOf('without a schedule').sentence)).toBe(
      'The total leaves something out; Review says what.',
    );
  });

  test('has each table under its name, with a last row that is the total and opens it', () => {
    const { byStage, byElement, byMaterial, byMonth } = budgetOf('the example');
    const tables = [byStage, byElement, byMaterial, byMonth];
    expect(tables.map(({ id, caption }) => [id, caption])).toEqual([
      ['by-stage', 'Budget by stage'],
      ['by-element', 'Budget by element'],
      ['by-material', 'Budget by material of concern'],
      ['by-month', 'Budget by month of spending'],
    ]);
    const totals = new Set<string | undefined>();
    for (const { rows } of tables) {
      const last = rows.at(-1);
      const lines = rows.slice(0, -1);
      expect([last?.id, last?.kind, last?.cells['title']?.text]).toEqual(['total', 'total', 'Total']);
      expect([last?.cells['total']?.why, last?.cells['share']?.why]).toEqual(['sums/total', 'sums/total']);
      expect(last?.cells['share']?.text).toBe('100.0');
      expect(lines.every(row => row.kind === 'line')).toBe(true);
      const sum = (key: string) => lines.reduce((all, row) => all + amountIn(row.cells[key]?.text), 0);
      expect(sum('total')).toBe(amountIn(last?.cells['total']?.text));
      expect(sum('share')).toBeCloseTo(100, 6);
      totals.add(last?.cells['total']?.text);
    }
    expect(totals.size).toBe(1);
  });

  test('lists months in their order, in words, and materials by their money with what is for none last', () => {
    const { byMonth, byMaterial } = budgetOf('the example');
    const months = idsOf(byMonth).slice(0, -1);
    expect(months).toEqual(months.toSorted());
    expect(months.length).toBeGreaterThan(5);
    const names = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
    expect(told(byMonth).slice(0, -1)).toEqual(
      months.map(month => `${names[Number(month.slice(5)) - 1]} ${month.slice(0, 4)}`),
    );
    const materials = byMaterial.rows.slice(0, -1);
    expect([materials.at(-1)?.id, materials.at(-1)?.cells['title']?.text]).toEqual([
      'none',
      'Not for one material',
    ]);
    const titles = new Map(awkward('the example').library.materials.map(({ id, title }) => [id, title]));
    for (const { id, cells } of materials.slice(0, -1)) expect(cells['title']?.text).toBe(titles.get(id));
    const amounts = materials.slice(0, -1).map(row => amountIn(row.cells['total']?.text));
    expect(amounts).toEqual(amounts.toSorted((a, b) => b - a));
  });

  test('at held prices is spent in the months of the schedule all the same', () => {
    const held = idsOf(budgetOf('at fixed prices').byMonth);
    expect(held).toEqual(idsOf(budgetOf('the example').byMonth));
  });

  test('opens each amount of these tables as the sum of its lines, to the dollar', () => {
    const { byStage, byElement, byMaterial, byMonth } = budgetOf('the example');
    const desk = new WhyDesk(awkward('the example'), 'us');
    for (const { rows } of [byStage, byElement, byMaterial, byMonth])
      for (const row of rows)
        for (const [key, { text, why }] of Object.entries(row.cells)) {
          if (why === undefined || key === 'share') continue;
          const opened = desk.answer(why);
          expect(opened?.id, why).toBe(why);
          // Whole dollars are shown so that they add up: each lies within a dollar of its amount.
          expect(Math.abs(amountIn(opened?.value.text) - amountIn(text)), why).toBeLessThan(1.01);
        }
  });

  test('shares its money out by basis: parts of one whole, each opened as its elements with their mark-ups', () => {
    const { basis, basisHead, byStage } = budgetOf('the example');
    const desk = new WhyDesk(awkward('the example'), 'us');
    expect(basis.map(one => one.basis)).toEqual(BASES.filter(one => basis.some(part => part.basis === one)));
    expect(basis.reduce((sum, one) => sum + one.part, 0)).toBeCloseTo(1, 9);
    expect(basis.reduce((sum, one) => sum + Number.parseFloat(one.share.text), 0)).toBeCloseTo(100, 6);
    const total = amountIn(byStage.rows.at(-1)?.cells['total']?.text);
    expect(basis.reduce((sum, one) => sum + amountIn(one.amount.text), 0)).toBe(total);
    let unchecked = 0;
    for (const { basis: name, amount, part } of basis) {
      const opened = desk.answer(`basis:${name}`);
      expect([opened?.title, opened?.words]).toEqual([
        `Money that rests on: ${name}`,
        'Each element of a line takes the weakest basis among its givens; its mark-ups follow it.',
      ]);
      expect(Math.abs(amountIn(opened?.value.text) - amountIn(amount.text))).toBeLessThan(1.01);
      if (['judgement', 'from memory', 'invented for the demo'].includes(name)) unchecked += part;
    }
    const share = (unchecked * 100).toFixed(1);
    expect(basisHead).toBe(`Where the money’s basis lies: ${share} % of the total is not yet checked`);
    expect(desk.answer('basis:unchecked')?.words).toBe(
      `Money that rests on judgement, memory or invented figures. It is ${share} % of the total.`,
    );
  });

  test('draws the bar of each stage beside the longest', () => {
    const { bars, byStage } = budgetOf('the example');
    const amounts = byStage.rows.slice(0, -1).map(row => amountIn(row.cells['total']?.text));
    const most = Math.max(...amounts);
    for (const [at, { id }] of byStage.rows.slice(0, -1).entries())
      expect(bars[id]).toBeCloseTo((amounts[at] ?? 0) / most, 9);
    expect(Math.max(...Object.values(bars))).toBe(1);
  });
});

describe('the build-up of the total', () => {
  test('is contract work, mark-ups and the owner’s own cost to the cent, with scrap told beside it', () => {
    const { buildUp } = budgetOf('the example');
    expect(told(buildUp)).toEqual([
      'Direct cost of contract work',
      'Mark-ups of the contractor',
      'Owner’s own cost',
      'Total',
      'Of it: scrap kept by the contractor, as a lower price',
      'Beside it: scrap received by the owner, as income',
    ]);
    const [direct = 0, markUps = 0, owner = 0, total = 0] = told(buildUp, 'amount').map(amountIn);
    expect(Math.abs(direct + markUps + owner - total)).toBeLessThan(0.005);
    expect(buildUp.rows.map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'total', 'line', 'line']);
    expect([buildUp.id, buildUp.rows[3]?.id]).toEqual(['build-up', 'sums/total']);
  });

  test('has no row while nothing is priced', () => {
    expect(budgetOf('without a schedule').buildUp.rows).toEqual([]);
  });
});
