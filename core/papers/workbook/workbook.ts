import { summarise, type Evaluation } from '../../evaluation';
import type { Comparison } from '../../scenario';
import { emitWorkbook } from '../../sheet';
import { assumptionsSheet } from './assumptions';
import { calculationSheets } from './calculation';
import { checksSheet, coverSheet, rollUpSheet } from './front';
import type { PaperWorkbook } from './model';
import { scheduleSheet } from './schedule';

/**
 * The workbook of one scenario: cover with a master check, roll-up, schedule, assumptions with their basis, and the
 * calculation sheets with live formulas and cached results.
 * @returns nothing without an estimate: its findings say why.
 */
export function estimateWorkbook(
  evaluation: Evaluation,
  _comparison?: Comparison,
): PaperWorkbook | undefined {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const results = [estimate.work.result, estimate.money.result];
  const summary = summarise({ ...estimate, money: estimate.money });
  const emitted = emitWorkbook(results);
  return {
    title: `${evaluation.project.title}: ${evaluation.scenario.title}`,
    date: evaluation.today,
    names: emitted.names,
    sheets: [
      coverSheet(evaluation, summary),
      checksSheet(summary),
      rollUpSheet(summary),
      scheduleSheet(estimate),
      assumptionsSheet(results),
      ...calculationSheets(emitted),
    ],
  };
}
