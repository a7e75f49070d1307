import { lowerFirst } from '../../base';
import type { Cents } from '../../cash-flow';
import type { Alternative } from '../../benefit';
import { benefitView, type Evaluation } from '../../evaluation';
import { isPermittable, summaryOf, type Comparison } from '../../scenario';
import { wholeDollars } from '../report/words';

/** Something else that could be done with the ship. */
export interface OtherChoice {
  readonly kind: 'scenario' | 'published' | 'nothing';
  readonly title: string;
  /** In the money of the estimate; nothing where nobody has worked it out. */
  readonly amount?: Cents;
  /** What to know of it. */
  readonly note: string;
  readonly source?: string;
}

/**
 * The other scenarios, what else is done with old ships by published cost, and doing nothing.
 * @param recommended the scenario to choose: it stands first, so that a short page has its amount.
 */
export function otherChoices(
  evaluation: Evaluation,
  { evaluations }: Comparison,
  recommended?: string,
): OtherChoice[] {
  const isFirst = (other: Evaluation) => other.scenario.id === recommended;
  const others = evaluations
    .filter(({ scenario }) => scenario.id !== evaluation.scenario.id)
    .sort((one, other) => Number(isFirst(other)) - Number(isFirst(one)));
  const published = (benefitView(evaluation).alternatives ?? []).filter(
    ({ id }) => id !== 'reef' && id !== 'do-nothing',
  );
  return [
    ...others.map(scenarioChoice),
    ...published.map(publishedChoice),
    {
      kind: 'nothing',
      title: 'Doing nothing',
      note: 'no cost here and no reef; the present owner keeps the hull, its berth and its oil',
    },
  ];
}

/** What was published of many ships is no amount of this one: it stands in words. */
function publishedChoice({ title, published, ships, source, priceYear }: Alternative): OtherChoice {
  const mean =
    published === undefined
      ? 'a mean'
      : `${wholeDollars(published / 100)} a ship${priceYear === undefined ? '' : ` at ${priceYear} prices`}, a mean`;
  const many = ships === undefined ? 'many ships' : `${ships} ships`;
  const [who = source] = source.split(':');
  return {
    kind: 'published',
    title: title.replace(', per ship', ''),
    note: `no amount for this ship: what was published is ${mean} for ${many} whose tonnage is not known; source: ${who}`,
    source,
  };
}

function scenarioChoice(other: Evaluation): OtherChoice {
  const total = summaryOf(other)?.total?.cents;
  return {
    kind: 'scenario',
    title: `Scenario ${other.letter}, ${lowerFirst(other.scenario.title)}`,
    ...(total !== undefined && { amount: total }),
    note: isPermittable(other)
      ? 'total at the month of spending'
      : 'may not be carried out: a clean-up goal is unmet',
  };
}
