import { summarise, type EstimateLine, type Evaluation } from '../../evaluation';
import { dollarsOf, plus, sumMoney, type Money } from '../../money';
import { headingRow, moneyFormula, text } from '../workbook/cells';
import type { PaperCell, PaperSheet, PaperWorkbook } from '../workbook/model';

const FIRST_ROW = 5;

/** One item of the bid: what it is called and its lump sum. */
interface BidItem {
  readonly title: string;
  readonly amount: Money;
}

/**
 * The bid file: a schedule of values of the contract work, each item at its full price. It holds no cost, no mark-up
 * and no note of the contractor: only what the owner may see.
 * @returns nothing without an estimate, or when a line of contract work is absent: a part would pass for the price.
 */
export function bidWorkbook(evaluation: Evaluation): PaperWorkbook | undefined {
  const { estimate, project, today } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const summary = summarise({ ...estimate, money: estimate.money });
  if (summary.contractCost === undefined || summary.markUps === undefined) return undefined;
  const names = new Map(estimate.items.map(item => [item.id, item.bidItem]));
  const lines = summary.lines.filter(line => line.contract);
  const items = bidItems(lines, names);
  if (items === undefined) return undefined;
  const price = plus(summary.contractCost, summary.markUps);
  const sheet = valuesSheet(project.title, project.sample, items, price);
  return { title: `${project.title}: bid`, date: today, names: [], sheets: [sheet] };
}

function bidItems(lines: readonly EstimateLine[], names: ReadonlyMap<string, string>): BidItem[] | undefined {
  const byName = new Map<string, Money[]>();
  for (const line of lines) {
    if (line.total === undefined) return undefined;
    const name = names.get(line.id) ?? line.title;
    byName.set(name, [...(byName.get(name) ?? []), line.total]);
  }
  return [...byName].map(([title, amounts]) => ({ title, amount: sumMoney(amounts) }));
}

function valuesSheet(title: string, sample: boolean, items: readonly BidItem[], price: Money): PaperSheet {
  const guard = FIRST_ROW + items.length;
  const rows = items.flatMap(({ title: words, amount }, i): PaperCell[] => [
    text(FIRST_ROW + i, 1, String(i + 1)),
    text(FIRST_ROW + i, 2, words),
    text(FIRST_ROW + i, 3, 'lump sum'),
    {
      row: FIRST_ROW + i,
      column: 4,
      content: { kind: 'money', value: dollarsOf(amount), role: 'input' },
    },
  ]);
  return {
    name: 'Schedule of values',
    cells: [
      text(1, 1, `Schedule of values: ${title}`, 'title'),
      text(2, 1, 'Each item at its full price, overhead, profit, bond, insurance and tax included.', 'note'),
      ...(sample ? [text(3, 1, 'Invented example: not an offer.', 'caution')] : []),
      ...headingRow(FIRST_ROW - 1, ['Item', 'Work', 'Unit', 'Amount, USD']),
      ...rows,
      text(guard, 2, 'Put new items in above this row.', 'note'),
      text(guard + 1, 2, 'Contract price', 'total'),
      moneyFormula(guard + 1, 4, `ROUND(SUM(D${FIRST_ROW}:D${guard}),2)`, price, 'total'),
    ],
    widths: [8, 70, 14, 20],
    headingRows: FIRST_ROW - 1,
    landscape: false,
  };
}
