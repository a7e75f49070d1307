import { summarise, type EstimateParts, type Evaluation } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import type { Comparison } from '../../scenario';
import { monthlySpending } from '../monthly-spending';
import { assumptionsSheet } from './assumptions';
import { calculationSheets } from './calculation';
import { cashSheet } from './cash';
import { chartsSheet } from './charts';
import { comparisonSheet } from './comparison';
import { checksSheet, coverSheet } from './front';
import { cautionsSheet, changesSheet, findingsSheet, sourcesSheet } from './lists';
import type { PaperSheet, PaperWorkbook } from './model';
import { emitNamed } from './placed';
import { basisSheet, glossarySheet, readMeSheet } from './reading';
import { rollUpSheet } from './roll-up';
import { scheduleSheet } from './schedule';
import { timeChartSheet } from './time-chart';

/**
 * The workbook of one scenario: cover with a master check, read me, comparison, roll-up, cash, schedule and its
 * picture, the calculation sheets with live formulas and cached results, and what they rest on.
 * @param comparison all scenarios side by side; without it there is no sheet of them.
 * @returns nothing without an estimate: its findings say why.
 */
export function estimateWorkbook(evaluation: Evaluation, comparison?: Comparison): PaperWorkbook | undefined {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const parts = { ...estimate, money: estimate.money };
  const results = [parts.work.result, parts.money.result];
  const emitted = emitNamed(results);
  return {
    title: `${evaluation.project.title}: ${evaluation.scenario.title}`,
    date: evaluation.today,
    names: emitted.names,
    sheets: [
      ...frontSheets(evaluation, parts, emitted, comparison),
      ...calculationSheets(emitted),
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

function frontSheets(
  evaluation: Evaluation,
  parts: EstimateParts & { readonly money: MoneySheet },
  emitted: ReturnType<typeof emitNamed>,
  comparison: Comparison | undefined,
): PaperSheet[] {
  const summary = summarise(parts);
  const months = monthlySpending(parts, summary);
  const timeChart = timeChartSheet(parts);
  return [
    coverSheet(evaluation, summary),
    readMeSheet(),
    checksSheet(summary),
    ...(comparison === undefined ? [] : [comparisonSheet(comparison, evaluation)]),
    rollUpSheet(summary, emitted),
    ...(months === undefined ? [] : [cashSheet(months)]),
    chartsSheet(months),
    scheduleSheet(parts),
    ...(timeChart === undefined ? [] : [timeChart]),
  ];
}
