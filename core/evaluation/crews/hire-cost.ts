import type { Figure } from '../../base';
import type { WholeParts } from '../risk/parts';
import { rateAt } from '../../estimate';

/** What it costs to hire and let go one crew of each kind. */
export interface HireCosts {
  /** Dollars for one crew, by crew, of the crews that come and go: those of contractors. */
  readonly byCrew: Readonly<Record<string, number>>;
  /** Paid hours for one person hired and released, and where the figure comes from. */
  readonly hours: Figure;
}

/**
 * The people of a crew × the paid hours that one of them takes to hire and let go × the rate of an hour. Public staff
 * stay whatever the plan, so they cost nothing here.
 */
export function hireCosts({ input, work, money }: WholeParts): HireCosts {
  const { crews, crewSizes } = input.library.rateBook;
  const { figure: hours } = rateAt(input, 'crewSizes/hireAndRelease', crewSizes.hireAndRelease);
  const byCrew = crews
    .filter(crew => crew.employer === 'contractor')
    .flatMap(({ id }): [string, number][] => {
      const people = work.result.number(work.crews.crews.columns.people, id);
      const rate = money.result.number(money.crewRates.columns.rate, id);
      return people === undefined || rate === undefined
        ? []
        : [[id, Math.round(people * Number(hours.value) * rate * 100) / 100]];
    });
  return { byCrew: Object.fromEntries(byCrew), hours };
}
