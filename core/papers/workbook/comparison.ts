import { summarise, type Evaluation } from '../../evaluation';
import { dollarsOf, minus, type Money } from '../../money';
import type { Bridge, Comparison } from '../../scenario';
import { ABSENT, date, headingRow, moneyFormula, text } from './cells';
import type { PaperCell, PaperSheet } from './model';

const FIRST_ROW = 4;

/** Scenarios side by side with what separates the first from each other; differences and sums are live. */
export function comparisonSheet(comparison: Comparison, shown: Evaluation): PaperSheet {
  const { evaluations, bridges } = comparison;
  const first = evaluations[0] && totalsOf(evaluations[0]).total;
  const rows = evaluations.flatMap((evaluation, i) => scenarioRow(evaluation, FIRST_ROW + i, first, shown));
  let next = FIRST_ROW + evaluations.length + 1;
  const steps = bridges.flatMap(bridge => {
    const cells = bridgeRows(bridge, next, evaluations);
    next += bridge.steps.length + 4;
    return cells;
  });
  return {
    name: 'Comparison',
    cells: [
      text(1, 1, 'Scenarios side by side, US dollars', 'title'),
      text(
        2,
        1,
        'Other scenarios as the program worked them out; this workbook’s own figures are live.',
        'note',
      ),
      ...headingRow(3, ['Scenario', 'Total', 'Budget', 'Less the first', 'Finish', 'Roll-over screening']),
      ...rows,
      ...steps,
    ],
    widths: [48, 18, 18, 18, 14, 20],
    headingRows: 3,
    landscape: true,
  };
}

function totalsOf({ estimate }: Evaluation): { total: Money | undefined; budget: Money | undefined } {
  const summary = estimate?.money && summarise({ ...estimate, money: estimate.money });
  return { total: summary?.total, budget: summary?.budget };
}

function scenarioRow(
  evaluation: Evaluation,
  row: number,
  first: Money | undefined,
  shown: Evaluation,
): PaperCell[] {
  const { letter, scenario, estimate, upright } = evaluation;
  const { total, budget } = totalsOf(evaluation);
  const own = scenario.id === shown.scenario.id;
  const difference = total && first && minus(total, first);
  return [
    text(row, 1, `${letter}: ${scenario.title}${own ? ' (this workbook)' : ''}`),
    own ? moneyFormula(row, 2, 'sums_total', total) : value(row, 2, total),
    own ? moneyFormula(row, 3, 'sums_budget', budget) : value(row, 3, budget),
    moneyFormula(row, 4, `ROUND(B${row}-B$${FIRST_ROW},2)`, difference),
    estimate?.schedule.finish === undefined ? text(row, 5, ABSENT) : date(row, 5, estimate.schedule.finish),
    text(row, 6, upright?.verdict ?? 'not run'),
  ];
}

function bridgeRows(bridge: Bridge, top: number, evaluations: readonly Evaluation[]): PaperCell[] {
  const letterOf = (id: string) => evaluations.find(({ scenario }) => scenario.id === id)?.letter ?? id;
  const last = top + bridge.steps.length;
  return [
    ...headingRow(top, [`From ${letterOf(bridge.from)} to ${letterOf(bridge.to)}`, 'Adds']),
    ...bridge.steps.flatMap(({ title, amount }, i) => [
      text(top + 1 + i, 1, title),
      value(top + 1 + i, 2, amount),
    ]),
    text(last + 1, 1, 'Put new steps in above this row.', 'note'),
    text(last + 2, 1, 'Difference of the totals', 'total'),
    moneyFormula(last + 2, 2, `ROUND(SUM(B${top + 1}:B${last + 1}),2)`, bridge.total, 'total'),
  ];
}

function value(row: number, column: number, amount: Money | undefined): PaperCell {
  return amount === undefined
    ? text(row, column, ABSENT)
    : { row, column, content: { kind: 'money', value: dollarsOf(amount), role: 'result' } };
}
