import { byFiscalYear, mostCarried, type Cents, type Peak } from '../../cash-flow';
import type { CountyCost } from '../../funding';
import { grantView, type Evaluation } from '../../evaluation';
import { summaryOf } from '../../scenario';
import { spendingOfLines } from '../monthly-spending';

/** An amount of one fiscal year. */
export interface FiscalYearAmount {
  readonly fiscalYear: number;
  readonly amount: Cents;
}

/** What the county pays and when. */
export interface CountyMoney {
  /** `own share`: what no grant and no partner bears. `spending`: the cost of work, since no funding is known. */
  readonly of: 'own share' | 'spending' | 'not known';
  /** The month in which its fiscal year begins, 1 to 12. */
  readonly fiscalYearStart: number;
  readonly fiscalYears: readonly FiscalYearAmount[];
  /** The most the county lends beyond its own share at the end of a month, until the grant is paid back. */
  readonly peakGap?: Peak;
  /** The most it has out at the end of a month, its own share included. */
  readonly mostOut?: Peak;
  /** What it pays in all: its share of the forms, and what they leave out. */
  readonly cost?: CountyCost;
}

/** What the sum that the county pays rests on, to follow it in a sentence. */
const AT_THE_BUDGET = ', if the work costs what is budgeted; beyond that no grant has promised anything.';

/**
 * What the county pays in all, as a sentence: with its own part and the part that no source bears yet, where there is one.
 * @param shown an amount in cents as the reader sees it.
 */
export function inAllWords<T>(
  { total, unfunded }: Pick<CountyCost, 'total' | 'unfunded'>,
  shown: (cents: Cents) => T,
): (string | T)[] {
  const parts =
    unfunded === 0
      ? []
      : [', ', shown(total - unfunded), ' of its own, and ', shown(unfunded), ' that no source bears yet'];
  return ['The county pays in all ', shown(total), ...parts, AT_THE_BUDGET];
}

/** The month in which a fiscal year begins where the document does not say: October (common practice). */
const USUAL_START = 10;

/** County money by fiscal year, from the funding of the document; without any, the cost of work by fiscal year. */
export function countyMoney(evaluation: Evaluation): CountyMoney {
  const start = evaluation.project.funding?.fiscalYearStart ?? USUAL_START;
  const { cash } = grantView(evaluation);
  if (cash !== undefined) {
    const own = cash.cash.sources.filter(source => source.mode === 'own').flatMap(source => source.bears);
    const { peak } = cash.cash.view;
    const mostOut = mostCarried(cash.cash.view);
    return {
      of: 'own share',
      fiscalYearStart: start,
      fiscalYears: byFiscalYear(own, start),
      ...(peak !== undefined && { peakGap: peak }),
      ...(mostOut !== undefined && { mostOut }),
      cost: cash.cash.county,
    };
  }
  const months = spendingOf(evaluation);
  return months === undefined
    ? { of: 'not known', fiscalYearStart: start, fiscalYears: [] }
    : { of: 'spending', fiscalYearStart: start, fiscalYears: byFiscalYear(months, start) };
}

function spendingOf(evaluation: Evaluation) {
  const { estimate } = evaluation;
  const summary = summaryOf(evaluation);
  return estimate === undefined || summary === undefined ? undefined : spendingOfLines(estimate, summary);
}
