import { sumCents, type Cents } from '../../cash-flow';
import { wholeYears } from '../../benefit';
import { benefitView, lineSpans, type Evaluation } from '../../evaluation';
import { dayOf } from '../../calendar';
import { summaryOf } from '../../scenario';

/** What the reef costs the county once the ship is down. */
export interface AfterSinkingCost {
  /** Of the estimate, over all its years; nothing while a line is absent. */
  readonly inTotal: Cents | undefined;
  /** The same in a year, over the years the lines last. */
  readonly perYear: Cents | undefined;
  readonly years: number;
  /** What is owed beside the estimate, in a year. */
  readonly besidePerYear: Cents;
  /** Paid only if it happens, such as removal if the ship moves; without an amount nobody has estimated it. */
  readonly onlyIf: readonly { readonly title: string; readonly party: string; readonly amount?: Cents }[];
}

/** The yearly cost after the sinking, from the lines of that stage and the obligations beside them. */
export function afterTheSinking(evaluation: Evaluation): AfterSinkingCost {
  const { obligations } = benefitView(evaluation);
  const inTotal = summaryOf(evaluation)?.byStage['after-sinking']?.cents;
  const years = yearsOf(evaluation);
  return {
    inTotal,
    perYear: inTotal === undefined || years === 0 ? undefined : Math.round(inTotal / years),
    years,
    besidePerYear: sumCents((obligations?.beside ?? []).map(one => one.costPerYear)),
    onlyIf: (obligations?.contingent ?? []).map(({ title, party, amount }) => ({
      title,
      party,
      ...(amount !== undefined && { amount }),
    })),
  };
}

/** Whole years from the first to the last day of the lines after the sinking, at least one. */
function yearsOf({ estimate }: Evaluation): number {
  if (estimate === undefined) return 0;
  const spans = lineSpans(estimate);
  const own = estimate.items
    .filter(item => item.stage === 'after-sinking')
    .flatMap(item => spans.get(item.id) ?? []);
  if (own.length === 0) return 0;
  const first = Math.min(...own.map(span => dayOf(span.start)));
  const last = Math.max(...own.map(span => dayOf(span.finish)));
  return wholeYears(last - first + 1);
}
