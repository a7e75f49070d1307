import { usualObligations, type ContingentObligation, type Obligation } from '../../benefit';
import { isObligation } from '../../estimate';
import type { Benefits } from '../../project';
import type { BookBasis } from './book-lines';
import { centsOfFigure } from './grant-input';
import type { BookRules } from './shipped-rules';

/** What the ship binds the owner to after the sinking, beside what the estimate already holds. */
export interface AfterSinking {
  /** Of the document, else the usual ones that no line of the estimate covers. None of them is in the estimate. */
  readonly beside: readonly Obligation[];
  /** The lines of the estimate that are obligations of the years after the sinking. */
  readonly lineIds: readonly string[];
  readonly contingent: readonly ContingentObligation[];
}

/** The usual obligation and the work item that stands for it in the estimate. */
const IN_THE_ESTIMATE: Readonly<Record<string, string>> = {
  monitoring: 'monitoring-dives',
  charts: 'chart-update',
};

/** The obligations after the sinking, none counted twice: what the estimate carries is not taken a second time. */
export function afterSinking(
  { parts, lines }: BookBasis,
  benefits: Benefits | undefined,
  rules: BookRules,
): AfterSinking {
  const own = benefits?.obligations?.map(({ costPerYear, ...rest }) => ({
    ...rest,
    costPerYear: centsOfFigure(costPerYear),
    basis: {
      basis: costPerYear.basis,
      source: costPerYear.source,
      ...(costPerYear.year !== undefined && { year: costPerYear.year }),
    },
  }));
  const usual = usualObligations(rules.benefit).filter(
    one => !lines.some(line => line.id === IN_THE_ESTIMATE[one.id]),
  );
  const removal = benefits?.removalIfItMoves;
  return {
    beside: own ?? usual,
    lineIds: parts.items.filter(isObligation).map(item => item.id),
    contingent: [
      {
        id: 'removal',
        title: 'Removal or recovery if the ship moves',
        party: removal?.party ?? 'permit holder',
        ...(removal?.amount && { amount: centsOfFigure(removal.amount) }),
      },
    ],
  };
}
