import { describe, expect, test } from 'vitest';
import { tabulationView, type Evaluation } from '../../../core/evaluation';
import { compareScenarios } from '../../../core/scenario';
import { compareRows, WhyDesk } from '../../../core/views';
import { comparedOrigin, totalSteps } from '../../../core/views/compare/origin';
import { awkward, DEMO, evaluatedAs } from './awkward';
import { plain } from './laws';

let made: readonly [Evaluation, Evaluation] | undefined;
/** The example, and its scenario with other access for divers, worked out when they are first asked for. */
const both = () => (made ??= [awkward('the example'), evaluatedAs(DEMO, { scenario: 'diver-access' })]);
const amountIn = (text = '') =>
  Number(text.replaceAll(',', '').replace('−', '-').replace('+', '').replace('$', ''));
const totalOf = ({ estimate }: Evaluation) => {
  const { money } = estimate ?? {};
  return (money?.result.money(money.sums.total)?.cents ?? Number.NaN) / 100;
};

describe('two scenarios beside each other', () => {
  const rowsOf = (chosen: string) => {
    const [first, second] = both();
    const comparison = compareScenarios([first, second], []);
    return compareRows({ comparison, views: [], isStale: false, chosen, measures: 'us' });
  };

  test('are told with what the second costs more, in dollars', () => {
    const [first, second] = both();
    const told = amountIn(/\$([\d,]+) more than A/.exec(plain(rowsOf(first.scenario.id).sentence))?.[1]);
    // Shown in round figures: within a thousandth of the dearer total.
    expect(Math.abs(told - (totalOf(second) - totalOf(first)))).toBeLessThan(totalOf(second) / 1000);
  });

  test('are joined by a bridge whose steps lead from the one total to the other, to the dollar', () => {
    const [first, second] = both();
    const [bridge] = rowsOf(first.scenario.id).bridges;
    const rows = bridge?.table.rows ?? [];
    expect(rows.length).toBeGreaterThan(2);
    expect(rows.map(row => row.kind)).toEqual(['total', ...rows.slice(2).map(() => 'line'), 'total']);
    const amounts = rows.map(row => amountIn(row.cells['amount']?.text));
    expect(amounts[0]).toBe(Math.round(totalOf(first)));
    expect(amounts.at(-1)).toBe(Math.round(totalOf(second)));
    expect(amounts.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(amounts.at(-1));
    for (const { cells } of rows.slice(1, -1)) expect(cells['amount']?.text).toMatch(/^([+−][\d,]+|0)$/);
    const bars = bridge?.bars ?? [];
    expect(bars.map(bar => bar.id)).toEqual(rows.map(row => row.id));
    expect([bars[0]?.kind, bars.at(-1)?.kind]).toEqual(['total', 'total']);
    for (const [at, bar] of bars.entries()) {
      expect(bar.text).toBe(rows[at]?.cells['amount']?.text);
      if (bar.kind !== 'total') expect(bar.kind).toBe((amounts[at] ?? 0) < 0 ? 'saves' : 'adds');
    }
  });

  test('stand as plans on the frontier, the one that is shown now marked', () => {
    const [first, second] = both();
    const chosen = (of: Evaluation) =>
      rowsOf(of.scenario.id).frontier?.plans.map(plan => [
        plan.letter,
        plan.isChosen,
        Math.round(plan.dollars),
      ]);
    const [a, b] = [Math.round(totalOf(first)), Math.round(totalOf(second))];
    expect(chosen(first)).toEqual([
      ['A', true, a],
      [second.letter, false, b],
    ]);
    expect(chosen(second)).toEqual([
      ['A', false, a],
      [second.letter, true, b],
    ]);
  });

  test('open the totals of all: that of the one shown as its sum, that of another as its cell', () => {
    const [first, second] = both();
    const about = {
      ...{ comparison: compareScenarios([first, second], []), views: [] },
      chosen: first.scenario.id,
    };
    expect(totalSteps(about).map(({ value, words }) => [value.text, value.why, words])).toEqual([
      ['total of A', 'sums/total', first.scenario.title],
      [
        `total of ${second.letter}`,
        `compare:scenarios-side-by-side|total|${second.scenario.id}`,
        second.scenario.title,
      ],
    ]);
    const table = { id: 'weights', caption: 'What counts', columns: [], rows: [] };
    const origin = comparedOrigin(table, about);
    expect([origin.path, origin.home]).toEqual(['Compare, what counts', 'compare']);
  });
});

describe('bids received', () => {
  test('stand beside the estimate item by item, in the order of their totals', () => {
    const evaluation = awkward('the example');
    const view = tabulationView(evaluation).comparison;
    const shown = new WhyDesk(evaluation, 'us').opened('bid')?.comparison;
    if (view === undefined || shown === undefined) throw new Error('the example has bids');
    const ranked = view.totals.toSorted((a, b) => (a.rank ?? 99) - (b.rank ?? 99));
    expect(shown.table.columns.map(({ key, title }) => [key, title])).toEqual([
      ...[
        ['title', 'Item'],
        ['quantity', 'Quantity'],
        ['unit', 'Unit'],
        ['estimate', 'Estimate'],
      ],
      ...ranked.map(one => [one.bidId, one.bidder]),
      ['median', 'Middle'],
    ]);
    const text = (cents: number) =>
      (cents / 100).toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
    for (const [at, row] of view.rows.entries()) {
      const cells = shown.table.rows[at]?.cells;
      expect(cells?.['estimate']?.text).toBe(text(row.item.estimate));
      for (const { bidId } of ranked) {
        const amount = row.byBid[bidId];
        expect(cells?.[bidId]).toMatchObject(
          amount === undefined ? { text: 'no price', absent: true } : { text: text(amount) },
        );
      }
    }
    expect(shown.totals.rows.map(row => row.id)).toEqual(ranked.map(one => one.bidId));
  });
});
