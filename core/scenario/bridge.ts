import { at, known } from '../base';
import { fromCents, minus, type Money } from '../money';
import { summarise, type EstimateParts, type Evaluation } from '../evaluation';
import { averagedSteps } from './averaged-steps';
import { GROUP_TITLES, differingGroups, type GroupKey } from './groups';
import { mixedTotal } from './hybrid';
import type { RiskStep } from './risk-step';

/** One step from a total to another. */
export interface BridgeStep {
  readonly key: GroupKey | 'all';
  readonly title: string;
  /** What it adds; negative when it makes the second scenario cheaper. */
  readonly amount: Money;
}

/** Why one scenario costs more or less than another, in steps that add up to the difference to the cent. */
export interface Bridge {
  readonly from: string;
  readonly to: string;
  readonly steps: readonly BridgeStep[];
  /** The second total less the first. */
  readonly total: Money;
  /** What risk adds beyond the totals, which hold none; absent when no contingency and no simulation is known. */
  readonly risk?: RiskStep;
}

/**
 * The steps from the total of one scenario to that of another, each the mean over all orders in which the groups of
 * changes can be made, so that none is preferred. Swapping the two turns every sign.
 * @returns nothing when a total is absent. One step for all when a mixture of the two cannot be worked out.
 */
export function differenceBridge(a: Evaluation, b: Evaluation): Bridge | undefined {
  const [first, second] = [totalOf(a), totalOf(b)];
  if (first === undefined || second === undefined || !a.estimate || !b.estimate) return undefined;
  const total = minus(second, first);
  const frame = { from: a.scenario.id, to: b.scenario.id, total };
  const parts = [a.estimate, b.estimate] as const;
  const groups = differingGroups(...parts);
  const totals = mixtures(parts, groups, first.cents, second.cents);
  if (groups.length === 0 || totals === undefined) {
    const steps = total.cents === 0 ? [] : [{ key: 'all' as const, title: 'All differences', amount: total }];
    return { ...frame, steps };
  }
  const amounts = averagedSteps(groups, changed => known(totals, nameOf(changed)));
  const steps = groups.map((key, i) => ({
    key,
    title: GROUP_TITLES[key],
    amount: fromCents(at(amounts, i)),
  }));
  return { ...frame, steps };
}

function totalOf({ estimate }: Evaluation): Money | undefined {
  return estimate?.money && summarise({ ...estimate, money: estimate.money }).total;
}

/** The total for every set of groups changed; the two ends are the scenarios' own totals. */
function mixtures(
  parts: readonly [EstimateParts, EstimateParts],
  groups: readonly GroupKey[],
  first: number,
  second: number,
): Map<string, number> | undefined {
  const totals = new Map<string, number>();
  for (let set = 0; set < 2 ** groups.length; set++) {
    const changed = new Set(groups.map((_, i) => i).filter(i => Math.floor(set / 2 ** i) % 2 === 1));
    const cents =
      changed.size === 0
        ? first
        : changed.size === groups.length
          ? second
          : mixedTotal(parts, group => parts[changed.has(groups.indexOf(group)) ? 1 : 0]);
    if (cents === undefined) return undefined;
    totals.set(nameOf(changed), cents);
  }
  return totals;
}

/** A name for a set of groups, whose numbers always come in rising order. */
function nameOf(changed: ReadonlySet<number>): string {
  return [...changed].join(' ');
}
