import type { EstimateSummary, Evaluation } from '../../evaluation';
import { ABSENT, cautionRows, headingRow, moneyFormula, number, text } from './cells';
import type { PaperCell, PaperSheet } from './model';
import { ALL_STAGES_ROW, TOTAL_LETTER } from './roll-up';

/** The checks of the workbook: each a difference that must be nothing. */
const CHECKS = [
  { title: 'The lines add up to the total', formula: 'ROUND(SUM(lines_total)-sums_total,2)' },
  {
    title: 'The stages add up to the total',
    formula: `ROUND('Roll-up'!${TOTAL_LETTER}${ALL_STAGES_ROW}-sums_total,2)`,
  },
  {
    title: 'Contract work, mark-ups and the owner’s cost add up to the total',
    formula: 'ROUND(sums_contract_cost+sums_mark_ups+sums_owner_cost-sums_total,2)',
  },
  {
    title: 'Total and contingency are the budget',
    formula: 'ROUND(sums_total+sums_contingency-sums_budget,2)',
  },
] as const;

/** The cover: what is asked for, in figures that the calculation sheets hold, and one master check. */
export function coverSheet(evaluation: Evaluation, summary: EstimateSummary): PaperSheet {
  const { project, scenario, letter, estimate } = evaluation;
  const schedule = estimate?.schedule;
  const money: PaperCell[] = [
    ['Total, the owner’s cost at the month of spending', 'sums_total', summary.total],
    ['Contingency', 'sums_contingency', summary.contingency],
    ['Budget: total and contingency', 'sums_budget', summary.budget],
    ['Direct cost of contract work', 'sums_contract_cost', summary.contractCost],
    ['Mark-ups of the contractor', 'sums_mark_ups', summary.markUps],
    ['Owner’s own cost', 'sums_owner_cost', summary.ownerCost],
  ].flatMap(([title, name, amount], i) =>
    moneyRow(i + 7, String(title), String(name), amount as EstimateSummary['total']),
  );
  const share = summary.uncheckedShare;
  const cells: PaperCell[] = [
    text(1, 1, project.title, 'title'),
    text(2, 1, `Scenario ${letter}: ${scenario.title}`),
    ...(project.sample
      ? [text(3, 1, 'Invented example: ship, place, prices and quotes are not real.', 'caution')]
      : []),
    text(5, 1, 'Master check', 'heading'),
    {
      row: 5,
      column: 2,
      content: {
        kind: 'formula',
        formula: 'IF(SUMPRODUCT(ABS(Checks!$B$3:$B$6))=0,"OK","REVIEW")',
        result: checksHold(summary) ? 'OK' : 'REVIEW',
        format: 'text',
        decimals: undefined,
      },
      style: 'total',
    },
    ...money,
    text(14, 1, 'Start'),
    text(14, 2, schedule?.start ?? ABSENT),
    text(15, 1, 'Finish'),
    text(15, 2, schedule?.finish ?? ABSENT),
    text(16, 1, 'Work days'),
    number(16, 2, schedule?.workDays, 0, 'schedule'),
    text(17, 1, 'Share of the total that rests on figures nobody has checked'),
    number(17, 2, share === undefined ? undefined : Math.round(share * 1000) / 10, 1, 'result'),
    text(17, 3, '%'),
    text(18, 1, 'Prices of'),
    text(18, 2, project.rates.priceDate),
    text(
      20,
      1,
      'The workbook cannot level crews: dates and durations come from the program and stand as values in marked columns.',
      'note',
    ),
    ...cautionRows(evaluation.library.cautionClosing, 21),
  ];
  return { name: 'Cover', cells, widths: [62, 22, 6], headingRows: 0, landscape: false };
}

function moneyRow(row: number, title: string, name: string, amount: EstimateSummary['total']): PaperCell[] {
  return [text(row, 1, title), moneyFormula(row, 2, name, amount, 'total')];
}

function checksHold(summary: EstimateSummary): boolean {
  return summary.total !== undefined && summary.budget !== undefined;
}

/** The checks, each with its difference and OK or REVIEW in words. */
export function checksSheet(summary: EstimateSummary): PaperSheet {
  const known = checksHold(summary);
  const rows = CHECKS.flatMap(({ title, formula }, i): PaperCell[] => {
    const row = i + 3;
    const difference: PaperCell = known
      ? {
          row,
          column: 2,
          content: { kind: 'formula', formula, result: 0, format: 'money', decimals: 2 },
        }
      : text(row, 2, ABSENT);
    return [
      text(row, 1, title),
      difference,
      {
        row,
        column: 3,
        content: {
          kind: 'formula',
          formula: `IF(ISNUMBER(B${row}),IF(B${row}=0,"OK","REVIEW"),"REVIEW")`,
          result: known ? 'OK' : 'REVIEW',
          format: 'text',
          decimals: undefined,
        },
      },
    ];
  });
  return {
    name: 'Checks',
    cells: [
      text(1, 1, 'Checks: every difference must be nothing', 'title'),
      ...headingRow(2, ['Check', 'Difference, USD', 'Standing']),
      ...rows,
    ],
    widths: [70, 20, 14],
    headingRows: 2,
    landscape: false,
  };
}
