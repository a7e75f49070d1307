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
  const crews = Object.keys(byCrew).flatMap((crew): CrewUse[] => {
    const use = uses[crew];
    if (use === undefined || use.peak === 0) return [];
    return [{ crew, title: titles.get(crew) ?? crew, peak: use.peak, hired: use.hired }];
  });
  const cents = crews.reduce(
    (sum, { crew, hired }) => sum + hired * Math.round((byCrew[crew] ?? 0) * 100),
    0,
  );
  return { crews, hired: crews.reduce((sum, { hired }) => sum + hired, 0), cost: cents / 100 };
}
