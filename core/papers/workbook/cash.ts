import { dollarsOf, fromCents } from '../../money';
import type { MonthOfSpending } from '../monthly-spending';
import { CHANGED_SINCE, changedSinceRow, headingRow, text } from './cells';
import type { PaperCell, PaperSheet } from './model';

const SHEET = 'Cash by month';
/** Where the months begin. */
export const FIRST_MONTH_ROW = 4;

/** Spending by month: amounts from the program, the running total and the check live. */
export function cashSheet(months: readonly MonthOfSpending[]): PaperSheet {
  const guard = FIRST_MONTH_ROW + months.length;
  const rows = months.flatMap(({ month, amount, cumulative }, i): PaperCell[] => {
    const row = FIRST_MONTH_ROW + i;
    const formula = i === 0 ? `B${row}` : `C${row - 1}+B${row}`;
    return [
      text(row, 1, month),
      {
        row,
        column: 2,
        content: { kind: 'money', value: dollarsOf(fromCents(amount)), role: 'schedule' },
      },
      money(row, 3, `ROUND(${formula},2)`, cumulative),
    ];
  });
  const total = months.reduce((_, month) => month.cumulative, 0);
  return {
    name: SHEET,
    cells: [
      text(1, 1, 'Cost of work by month, US dollars', 'title'),
      text(2, 1, 'Months come from the schedule of the program. Payment follows by the contract.', 'note'),
      ...headingRow(3, ['Month', 'Spending', 'So far']),
      ...rows,
      text(guard, 1, 'Put new months in above this row.', 'note'),
      text(guard + 1, 1, 'All months', 'total'),
      { ...money(guard + 1, 2, `ROUND(SUM(B${FIRST_MONTH_ROW}:B${guard}),2)`, total), style: 'total' },
      ...changedSinceRow(guard + 2, CHANGED_SINCE),
      text(guard + 3, 1, 'Both less the total of the estimate: must be nothing'),
      money(guard + 3, 2, `ROUND(B${guard + 1}+B${guard + 2}-sums_total,2)`, 0),
    ],
    checks: [{ title: 'The months add up to the total', formula: `'${SHEET}'!B${guard + 3}` }],
    widths: [54, 20, 20],
    headingRows: 3,
    landscape: false,
  };
}

function money(row: number, column: number, formula: string, cents: number): PaperCell {
  const result = dollarsOf(fromCents(cents));
  return { row, column, content: { kind: 'formula', formula, result, format: 'money', decimals: 2 } };
}
