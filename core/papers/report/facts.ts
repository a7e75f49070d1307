import { byFiscalYear } from '../../cash-flow';
import { summarise, type EstimateParts, type EstimateSummary, type Evaluation } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import type { Project } from '../../project';
import type { Comparison } from '../../scenario';
import { documentHash } from '../document-hash';
import { monthlySpending, type MonthOfSpending } from '../monthly-spending';

/** What the pages of a report are written from. */
export interface ReportFacts {
  readonly evaluation: Evaluation;
  readonly project: Project;
  readonly parts: EstimateParts & { readonly money: MoneySheet };
  readonly summary: EstimateSummary;
  readonly months: readonly MonthOfSpending[] | undefined;
  readonly fiscalYears: readonly { readonly fiscalYear: number; readonly amount: number }[] | undefined;
  readonly comparison: Comparison | undefined;
  /** The start of the document's SHA-256: two papers with the same one speak of the same document. */
  readonly documentHash: string;
}

/** The month in which the fiscal year of a county begins, unless it says otherwise: October (common practice). */
export const FISCAL_YEAR_STARTS = 10;

/** Gathers the facts of a report. @returns nothing without an estimate. */
export function reportFacts(evaluation: Evaluation, comparison?: Comparison): ReportFacts | undefined {
  const { estimate, project } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const parts = { ...estimate, money: estimate.money };
  const summary = summarise(parts);
  const months = monthlySpending(parts, summary);
  return {
    evaluation,
    project,
    parts,
    summary,
    months,
    fiscalYears: months && byFiscalYear(months, FISCAL_YEAR_STARTS),
    comparison,
    documentHash: documentHash(project),
  };
}
