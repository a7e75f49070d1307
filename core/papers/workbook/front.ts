import type { EstimateSummary, Evaluation } from '../../evaluation';
import { dollarsOf } from '../../money';
import { ABSENT, CHANGED_SINCE, cautionRows, headingRow, moneyFormula, number, text } from './cells';
import type { PaperCell, PaperCheck, PaperName, PaperSheet } from './model';
import { ALL_STAGES_ROW, TOTAL_LETTER } from './roll-up';

/** The name of the budget: while no contingency is chosen there is none, and nothing to be checked against it. */
const BUDGET = 'sums_budget';

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
    formula: `ROUND(sums_total+sums_contingency-${BUDGET},2)`,
  },
] as const;

/** The cover: what is asked for, in figures that the calculation sheets hold, and one master check. */
export function coverSheet(evaluation: Evaluation, summary: EstimateSummary, checks: PaperSheet): PaperSheet {
  const { project, scenario, letter, estimate } = evaluation;
  const schedule = estimate?.schedule;
  const money: PaperCell[] = [
    ['Total, the owner’s cost at the month of spending', 'sums_total', summary.total],
    ['Contingency', 'sums_contingency', summary.contingency],
    ['Budget: total and contingency', BUDGET, summary.budget],
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
        formula: masterCheck(checks),
        result: summary.total !== undefined && holds(checks) ? 'OK' : 'REVIEW',
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

const FIRST_CHECK = 3;

/** One word for all checks: a single one to be looked at makes it so. */
function masterCheck({ checks = [] }: PaperSheet): string {
  const standings = `Checks!$C$${FIRST_CHECK}:$C$${FIRST_CHECK + checks.length - 1}`;
  return `IF(COUNTIF(${standings},"OK")=ROWS(${standings}),"OK","REVIEW")`;
}

/** Whether no check gives a difference in the workbook as it is written. */
function holds({ checks = [] }: PaperSheet): boolean {
  return checks.every(({ result = 0 }) => result === 0);
}

/** Where the checks say by how much the total was changed. */
function changedRow({ checks = [] }: PaperSheet): number {
  return FIRST_CHECK + checks.length + 3;
}

/** The name under which all sheets read by how much the total was changed; none while there is no total. */
export function changedName(summary: EstimateSummary, checks: PaperSheet): PaperName[] {
  return summary.total === undefined
    ? []
    : [{ name: CHANGED_SINCE, range: `Checks!$B$${changedRow(checks)}` }];
}

/**
 * The checks of the whole workbook, each with its difference and OK or REVIEW in words, and below them what was
 * changed since the program wrote the workbook.
 */
export function checksSheet(summary: EstimateSummary, sheets: readonly PaperSheet[]): PaperSheet {
  const known = summary.total !== undefined;
  const own = CHECKS.filter(
    ({ formula }) => !known || summary.budget !== undefined || !formula.includes(BUDGET),
  );
  const checks: PaperCheck[] = [...own, ...sheets.flatMap(sheet => sheet.checks ?? [])];
  const rows = checks.flatMap(({ title, formula, result = 0 }, i): PaperCell[] => {
    const row = i + FIRST_CHECK;
    const difference: PaperCell = known
      ? {
          row,
          column: 2,
          content: { kind: 'formula', formula, result, format: 'money', decimals: 2 },
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
          result: known && result === 0 ? 'OK' : 'REVIEW',
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
      ...headingRow(2, ['Check', 'Difference', 'Standing']),
      ...rows,
      ...changes(summary, FIRST_CHECK + checks.length + 1),
    ],
    checks,
    widths: [78, 20, 14],
    headingRows: 2,
    landscape: false,
  };
}

/** The total that the program wrote, and what was changed since: forms, months and bridges are still of that total. */
function changes({ total }: EstimateSummary, top: number): PaperCell[] {
  if (total === undefined) return [];
  const row = top + 2;
  return [
    ...headingRow(top, ['Since the workbook was handed out', 'US dollars']),
    text(top + 1, 1, 'Total as handed out'),
    {
      row: top + 1,
      column: 2,
      content: { kind: 'money', value: dollarsOf(total), role: 'given' },
    },
    text(row, 1, 'Changed in this workbook since'),
    {
      row,
      column: 2,
      content: {
        kind: 'formula',
        formula: `ROUND(sums_total-B${top + 1},2)`,
        result: 0,
        format: 'money',
        decimals: 2,
      },
      style: 'total',
    },
    text(
      row + 1,
      1,
      'Forms, months and other scenarios are of the total as handed out. Take changes back',
      'note',
    ),
    text(row + 2, 1, 'into the program, and it writes them anew.', 'note'),
  ];
}
