import { known } from '../../base';
import type { Use } from '../../scheduling';
import type { HireCosts } from './hire-cost';

/** How a schedule uses one kind of crew. */
export interface CrewUse {
  readonly crew: string;
  readonly title: string;
  /** Most crews at once. */
  readonly peak: number;
  /** Crews that come, each time more are at work than on the work day before; every one of them goes again. */
  readonly hired: number;
}

/** The use of the crews that come and go, in the order of the rate book, and what coming and going costs, dollars. */
export interface CrewsUsed {
  readonly crews: readonly CrewUse[];
  readonly hired: number;
  readonly cost: number;
}

/** @param titles of the crews, by id. */
export function crewsUsed(
  uses: Readonly<Record<string, Use>>,
  { byCrew }: HireCosts,
  titles: ReadonlyMap<string, string>,
): CrewsUsed {
  const used = Object.entries(byCrew).flatMap(([crew, each]): { use: CrewUse; cents: number }[] => {
    const use = uses[crew];
    if (use === undefined || use.peak === 0) return [];
    const { peak, hired } = use;
    return [
      { use: { crew, title: known(titles, crew), peak, hired }, cents: hired * Math.round(each * 100) },
    ];
  });
  return {
    crews: used.map(({ use }) => use),
    hired: used.reduce((sum, { use }) => sum + use.hired, 0),
    cost: used.reduce((sum, { cents }) => sum + cents, 0) / 100,
  };
}
