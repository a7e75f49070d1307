import { byFiscalYear } from '../../cash-flow';
import { summarise, type EstimateParts, type EstimateSummary, type Evaluation } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import type { Project } from '../../project';
import type { Comparison } from '../../scenario';
import { decisionAbout, type Decision } from '../decision';
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
  /** The month in which the fiscal year begins, 1 to 12, and whether the document says so. */
  readonly fiscalYearStart: number;
  readonly isFiscalYearGiven: boolean;
  readonly comparison: Comparison | undefined;
  readonly decision: Decision;
  /** The start of the document's SHA-256: two papers with the same one speak of the same document. */
  readonly documentHash: string;
}

/** The month in which a fiscal year begins where the document does not say: October (common practice). */
const USUAL_FISCAL_YEAR_START = 10;

/** Gathers the facts of a report. @returns nothing without an estimate. */
export function reportFacts(evaluation: Evaluation, comparison?: Comparison): ReportFacts | undefined {
  const { estimate, project } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const parts = { ...estimate, money: estimate.money };
  const summary = summarise(parts);
  const months = monthlySpending(parts, summary);
  const fiscalYearStart = project.funding?.fiscalYearStart ?? USUAL_FISCAL_YEAR_START;
  return {
    evaluation,
    project,
    parts,
    summary,
    months,
    fiscalYears: months && byFiscalYear(months, fiscalYearStart),
    fiscalYearStart,
    isFiscalYearGiven: project.funding !== undefined,
    comparison,
    decision: decisionAbout(evaluation, comparison),
    documentHash: documentHash(project),
  };
}
