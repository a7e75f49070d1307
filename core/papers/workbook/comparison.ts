import { summarise, type Evaluation } from '../../evaluation';
import { dollarsOf, minus, type Money } from '../../money';
import type { Bridge, Comparison } from '../../scenario';
import { letterOfScenario } from '../letter-of-scenario';
import { ABSENT, CHANGED_SINCE, changedSinceRow, date, headingRow, moneyFormula, text } from './cells';
import type { PaperCell, PaperCheck, PaperSheet } from './model';

const SHEET = 'Comparison';
const FIRST_ROW = 4;

/** Scenarios side by side with what separates the first from each other; differences and sums are live. */
export function comparisonSheet(comparison: Comparison, shown: Evaluation): PaperSheet {
  const { evaluations, bridges } = comparison;
  const first = evaluations[0] && totalsOf(evaluations[0]).total;
  const rows = evaluations.flatMap((evaluation, i) => scenarioRow(evaluation, FIRST_ROW + i, first, shown));
  let next = FIRST_ROW + evaluations.length + 1;
  const blocks = bridges.map(bridge => {
    const block = bridgeBlock(bridge, next, evaluations, shown.scenario.id);
    next = block.next;
    return block;
  });
  return {
    name: SHEET,
    cells: [
      text(1, 1, 'Scenarios side by side, US dollars', 'title'),
      text(
        2,
        1,
        'Other scenarios as the program worked them out; this workbook’s own figures are live.',
        'note',
      ),
      ...headingRow(3, ['Scenario', 'Total', 'Budget', 'Less the first', 'Finish', 'Upright screen']),
      ...rows,
      ...blocks.flatMap(({ cells }) => cells),
    ],
    checks: blocks.flatMap(({ checks }) => checks),
    widths: [60, 18, 18, 18, 14, 20],
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

/** A bridge as a block of rows: its cells, the row after it, and what must hold in it. */
interface BridgeBlock {
  readonly cells: readonly PaperCell[];
  readonly next: number;
  readonly checks: readonly PaperCheck[];
}

function bridgeBlock(
  bridge: Bridge,
  top: number,
  evaluations: readonly Evaluation[],
  shown: string,
): BridgeBlock {
  const placeOf = (id: string) => evaluations.findIndex(({ scenario }) => scenario.id === id);
  const rowOf = (id: string) => FIRST_ROW + placeOf(id);
  const letterOf = (id: string) => letterOfScenario(evaluations, id);
  const [from, to] = [letterOf(bridge.from), letterOf(bridge.to)];
  const own = bridge.to === shown ? CHANGED_SINCE : bridge.from === shown ? `-${CHANGED_SINCE}` : undefined;
  const changed = top + 1 + bridge.steps.length;
  const guard = own === undefined ? changed : changed + 1;
  const risk = riskRows(bridge, guard + 1, { from: rowOf(bridge.from), to: rowOf(bridge.to) });
  const apart = (letter: string) =>
    `${SHEET}!${letter}${rowOf(bridge.to)}+${SHEET}!${letter}${rowOf(bridge.from)}`;
  return {
    cells: [
      ...headingRow(top, [`From ${from} to ${to}`, 'Adds']),
      ...bridge.steps.flatMap(({ title, amount }, i) => [
        text(top + 1 + i, 1, title),
        value(top + 1 + i, 2, amount),
      ]),
      ...(own === undefined ? [] : changedSinceRow(changed, own)),
      text(guard, 1, 'Put new steps in above this row.', 'note'),
      text(guard + 1, 1, 'Difference of the totals', 'total'),
      moneyFormula(guard + 1, 2, `ROUND(SUM(B${top + 1}:B${guard}),2)`, bridge.total, 'total'),
      ...risk.cells,
    ],
    next: risk.next + 1,
    checks: [
      {
        title: `The steps from ${from} to ${to} add up to the difference of the totals`,
        formula: `ROUND(${SHEET}!B${guard + 1}-${apart('B')},2)`,
      },
      ...(bridge.risk?.kind === 'contingency'
        ? [
            {
              title: `With risk they add up to the difference of the budgets of ${from} and ${to}`,
              formula: `ROUND(${SHEET}!B${guard + 3}-${apart('C')},2)`,
            },
          ]
        : []),
    ],
  };
}

/** Risk leads on from the difference of the totals, which hold none; a contingency is live. */
function riskRows(
  { risk }: Bridge,
  sum: number,
  { from, to }: { readonly from: number; readonly to: number },
): { readonly cells: readonly PaperCell[]; readonly next: number } {
  if (risk === undefined) return { cells: [], next: sum + 1 };
  const live = `ROUND(C${to}-B${to}-C${from}+B${from},2)`;
  return {
    cells: [
      text(sum + 1, 1, risk.title),
      risk.kind === 'contingency'
        ? moneyFormula(sum + 1, 2, live, risk.amount)
        : value(sum + 1, 2, risk.amount),
      text(sum + 2, 1, risk.end.title, 'total'),
      moneyFormula(sum + 2, 2, `ROUND(B${sum}+B${sum + 1},2)`, risk.end.amount, 'total'),
    ],
    next: sum + 3,
  };
}

function value(row: number, column: number, amount: Money | undefined): PaperCell {
  return amount === undefined
    ? text(row, column, ABSENT)
    : { row, column, content: { kind: 'money', value: dollarsOf(amount), role: 'result' } };
}
