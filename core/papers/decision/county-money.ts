import { byFiscalYear, spreadByDays, type Cents } from '../../cash-flow';
import { grantView, lineSpans, type Evaluation } from '../../evaluation';
import { summaryOf } from '../../scenario';

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
  /** The most the county has paid and not yet got back at the end of a month. */
  readonly peakGap?: { readonly month: string; readonly amount: number };
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
    return {
      of: 'own share',
      fiscalYearStart: start,
      fiscalYears: byFiscalYear(own, start),
      ...(peak !== undefined && { peakGap: peak }),
    };
  }
  const months = spendingOf(evaluation);
  return months === undefined
    ? { of: 'not known', fiscalYearStart: start, fiscalYears: [] }
    : { of: 'spending', fiscalYearStart: start, fiscalYears: byFiscalYear(months, start) };
}

function spendingOf(evaluation: Evaluation) {
  const { estimate } = evaluation;
  const lines = summaryOf(evaluation)?.lines;
  if (estimate === undefined || lines === undefined) return undefined;
  const spans = lineSpans(estimate);
  const months = lines.map(({ id, total }) => {
    const span = spans.get(id);
    if (total?.cents === 0) return [];
    return total === undefined || span === undefined
      ? undefined
      : spreadByDays(total.cents, span.start, span.finish);
  });
  return months.every(month => month !== undefined) ? months.flat() : undefined;
}
