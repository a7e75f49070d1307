import { stageTitle } from '../../estimate';
import { ELEMENTS, ELEMENT_TITLES, type EstimateLine, type EstimateSummary } from '../../evaluation';
import { sumMoney, type Money } from '../../money';
import { letterOf, type EmittedWorkbook } from '../../sheet';
import { STAGES } from '../../work';
import { headingRow, moneyFormula, text } from './cells';
import type { PaperCell, PaperSheet } from './model';
import { columnRange } from './placed';

/** Where the stages begin, and the row of their sum. */
export const FIRST_STAGE_ROW = 4;
export const ALL_STAGES_ROW = FIRST_STAGE_ROW + STAGES.length;
/** The column of the totals: after title, key and the elements. */
export const TOTAL_LETTER = letterOf(ELEMENTS.length + 3);

/** Stages by element, live sums over the lines; sums of rows and columns meet in the total. */
export function rollUpSheet(summary: EstimateSummary, emitted: EmittedWorkbook): PaperSheet {
  const stageRange = columnRange(emitted, 'lines', 'stage');
  const cells = STAGES.flatMap((stage, i): PaperCell[] => {
    const row = FIRST_STAGE_ROW + i;
    const lines = summary.lines.filter(line => line.stage === stage);
    const first = `C${row}:${letterOf(ELEMENTS.length + 2)}${row}`;
    return [
      text(row, 1, stageTitle(stage)),
      text(row, 2, stage, 'note'),
      ...ELEMENTS.map((element, column) =>
        moneyFormula(
          row,
          column + 3,
          `SUMIFS(${columnRange(emitted, 'lines', element)},${stageRange},$B${row})`,
          sumOf(lines, element),
        ),
      ),
      moneyFormula(row, ELEMENTS.length + 3, `SUM(${first})`, summary.byStage[stage], 'total'),
    ];
  });
  return {
    name: 'Roll-up',
    cells: [
      text(1, 1, 'Total by stage and element, US dollars', 'title'),
      text(2, 1, 'Live sums over the sheet Lines. Mark-ups stand with their line.', 'note'),
      ...headingRow(3, ['Stage', 'Key', ...ELEMENTS.map(key => ELEMENT_TITLES[key]), 'Total']),
      ...cells,
      text(ALL_STAGES_ROW, 1, 'All stages', 'total'),
      ...ELEMENTS.map((element, column) => sumCell(column + 3, summary.byElement[element])),
      sumCell(ELEMENTS.length + 3, summary.total),
    ],
    widths: [26, 20, ...ELEMENTS.map(() => 16), 18],
    headingRows: 3,
    landscape: true,
  };
}

function sumCell(column: number, amount: Money | undefined): PaperCell {
  const letter = letterOf(column);
  const range = `${letter}${FIRST_STAGE_ROW}:${letter}${ALL_STAGES_ROW - 1}`;
  return moneyFormula(ALL_STAGES_ROW, column, `SUM(${range})`, amount, 'total');
}

function sumOf(lines: readonly EstimateLine[], element: (typeof ELEMENTS)[number]): Money | undefined {
  const known = lines.flatMap(line => line.elements[element] ?? []);
  return known.length === lines.length ? sumMoney(known) : undefined;
}
