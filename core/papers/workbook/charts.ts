import type { MonthOfSpending } from '../monthly-spending';
import { FIRST_MONTH_ROW } from './cash';
import type { PaperChart, PaperSheet } from './model';
import { text } from './cells';
import { ALL_STAGES_ROW, FIRST_STAGE_ROW, TOTAL_LETTER } from './roll-up';

/** Live charts over the roll-up and the months. */
export function chartsSheet(months: readonly MonthOfSpending[] | undefined): PaperSheet {
  const lastStage = ALL_STAGES_ROW - 1;
  const stages: PaperChart = {
    title: 'Total by stage, US dollars',
    kind: 'bars',
    names: `'Roll-up'!$A$${FIRST_STAGE_ROW}:$A$${lastStage}`,
    values: `'Roll-up'!$${TOTAL_LETTER}$${FIRST_STAGE_ROW}:$${TOTAL_LETTER}$${lastStage}`,
  };
  return {
    name: 'Charts',
    cells: [text(1, 1, 'Charts: live, over the sheets Roll-up and Cash by month', 'title')],
    widths: [14, 14, 14, 14, 14, 14, 14, 14],
    headingRows: 0,
    landscape: false,
    charts: [stages, ...(months === undefined ? [] : monthCharts(months.length))],
  };
}

function monthCharts(count: number): PaperChart[] {
  const last = FIRST_MONTH_ROW + count - 1;
  const column = (letter: string) => `'Cash by month'!$${letter}$${FIRST_MONTH_ROW}:$${letter}$${last}`;
  return [
    {
      title: 'Cost of work by month, US dollars',
      kind: 'columns',
      names: column('A'),
      values: column('B'),
    },
    {
      title: 'Cost of work so far, US dollars',
      kind: 'line',
      names: column('A'),
      values: column('C'),
    },
  ];
}
