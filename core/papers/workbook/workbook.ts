import { summarise, type EstimateParts, type EstimateSummary, type Evaluation } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import type { Comparison } from '../../scenario';
import { documentHash } from '../document-hash';
import { monthlySpending } from '../monthly-spending';
import { inputCells, type InputCell } from '../take-back';
import { assumptionsSheet } from './assumptions';
import { calculationSheets } from './calculation';
import { cashSheet } from './cash';
import { chartsSheet } from './charts';
import { comparisonSheet } from './comparison';
import { changedName, checksSheet, coverSheet } from './front';
import { fundingSheets } from './funding';
import { FIRST_INPUT_ROW, inputsSheet } from './inputs';
import { labourSheet } from './labour';
import { cautionsSheet, changesSheet, findingsSheet, sourcesSheet } from './lists';
import type { PaperSheet, PaperWorkbook } from './model';
import { emitNamed } from './placed';
import { basisSheet, glossarySheet, readMeSheet } from './reading';
import { riskSheet } from './risk';
import { rollUpSheet } from './roll-up';
import { scheduleSheet } from './schedule';
import { timeChartSheet } from './time-chart';
import { uprightSheet } from './upright';

/**
 * The workbook of one scenario: cover with a master check, read me, comparison, roll-up, cash, schedule and its
 * picture, the calculation sheets with live formulas and cached results, and what they rest on.
 * Cells of the large sheets are made when they are read, and in parts, so that writing never holds them all.
 * @param comparison all scenarios side by side; without it there is no sheet of them.
 * @returns nothing without an estimate: its findings say why.
 */
export function estimateWorkbook(evaluation: Evaluation, comparison?: Comparison): PaperWorkbook | undefined {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const parts = { ...estimate, money: estimate.money };
  const results = [parts.work.result, parts.money.result];
  const emitted = emitNamed(results);
  const inputs = inputCells({ ...evaluation, estimate: parts });
  const front = frontSheets(evaluation, parts, emitted, comparison);
  const stamp = {
    document: documentHash(evaluation.project),
    scenario: evaluation.scenario.id,
    dated: evaluation.today,
  };
  return {
    title: `${evaluation.project.title}: ${evaluation.scenario.title}`,
    date: evaluation.today,
    names: [...emitted.names, ...changedName(front.summary, front.checks)],
    sheets: [
      coverSheet(evaluation, front.summary, front.checks),
      readMeSheet(),
      front.checks,
      ...front.sheets,
      inputsSheet(inputs, stamp),
      ...calculationSheets(emitted, rowsOfInputs(inputs)),
      assumptionsSheet(results),
      sourcesSheet(results),
      basisSheet(evaluation, parts.money),
      cautionsSheet(evaluation),
      findingsSheet(evaluation.findings),
      changesSheet(evaluation),
      glossarySheet(),
    ],
  };
}

function present(...sheets: readonly (PaperSheet | undefined)[]): PaperSheet[] {
  return sheets.filter(sheet => sheet !== undefined);
}

/** The row of each figure that reads an input. */
function rowsOfInputs(inputs: readonly InputCell[]): Map<string, number> {
  return new Map(
    inputs.flatMap((input, i) => input.figures.map((id): [string, number] => [id, FIRST_INPUT_ROW + i])),
  );
}

/** What the sheets with figures for readers are, what they are made from, and the checks of all of them. */
interface Front {
  readonly summary: EstimateSummary;
  readonly sheets: readonly PaperSheet[];
  readonly checks: PaperSheet;
}

function frontSheets(
  evaluation: Evaluation,
  parts: EstimateParts & { readonly money: MoneySheet },
  emitted: ReturnType<typeof emitNamed>,
  comparison: Comparison | undefined,
): Front {
  const summary = summarise(parts);
  const months = monthlySpending(parts, summary);
  const sheets = [
    ...(comparison === undefined || comparison.evaluations.length < 2
      ? []
      : [comparisonSheet(comparison, evaluation)]),
    ...present(comparison && riskSheet(comparison, evaluation), uprightSheet(evaluation)),
    rollUpSheet(summary, emitted),
    ...present(labourSheet(parts, emitted)),
    ...fundingSheets(evaluation),
    ...(months === undefined ? [] : [cashSheet(months)]),
    chartsSheet(months),
    scheduleSheet(parts),
    ...present(timeChartSheet(parts)),
  ];
  return { summary, sheets, checks: checksSheet(summary, sheets) };
}
