import { checkContingency } from '../../funding';
import { roundToCents } from '../../money';
import type { Project } from '../../project';
import { jointConfidence, type SimulationResult } from '../../risk';

/** How likely the cost stays inside what a grant has a part in. Dollars. */
export interface AwardChance {
  /** The plan’s cost, outside the forms too, with the contingency only where the grant may bear it. */
  readonly budget: number;
  readonly holdsContingency: boolean;
  /** Share of runs that cost no more. */
  readonly chance: number;
}

/**
 * The chance that the cost stays inside what the grant has a part in. A contingency that is not allowable is no part of it: the
 * county bears it, and what the work grows by with it. What stands outside the forms counts on both sides.
 * @param contingency dollars; undefined while it is not known, which leaves the award unknown too.
 * @returns undefined without an award, and without the figures it needs.
 * @source 2 CFR 200.433 for what a grant may bear.
 */
export function awardChance(
  { funding }: Pick<Project, 'funding'>,
  { total, finish }: Pick<SimulationResult['samples'], 'total' | 'finish'>,
  plan: number | undefined,
  contingency: number | undefined,
): AwardChance | undefined {
  const hasAward = funding?.sources.some(source => source.form !== 'none') === true;
  if (funding === undefined || !hasAward || plan === undefined || contingency === undefined) return undefined;
  const refused = checkContingency({
    amount: roundToCents(contingency.toFixed(2)).cents,
    isByAcceptedMethod: funding.contingency.byAcceptedMethod,
    isDocumented: funding.contingency.documented,
    isAcceptedByAgency: funding.contingency.acceptedByAgency,
    isReserve: funding.contingency.reserve,
  });
  const holdsContingency = contingency > 0 && refused.length === 0;
  const budget = holdsContingency ? plan + contingency : plan;
  const chance = jointConfidence(total, finish, budget, Infinity);
  return { budget, holdsContingency, chance };
}
