import type { Evaluation, JsonObject } from '../evaluation';

/** What the work items of a scenario take off the ship, tonnes; absent when one of them is. */
function takenOff({ estimate }: Evaluation): number | undefined {
  if (estimate === undefined) return undefined;
  const { removals, result } = estimate.work;
  const tonnes = removals.scope.rows.map(row => result.number(removals.columns.tonnes, row.key));
  const known = tonnes.filter(one => one !== undefined);
  return known.length < tonnes.length ? undefined : known.reduce((sum, one) => sum + one, 0);
}

/**
 * Days and degrees beside the dollars of a bridge: what the second scenario has more of than the first, in work days,
 * greatest heel, lowest GM and tonnes taken off. What is not known at one end is left out. Screening only.
 */
export function uprightChange(evaluations: readonly Evaluation[], from: string, to: string): JsonObject {
  const [a, b] = [from, to].map(id => evaluations.find(one => one.scenario.id === id));
  if (a === undefined || b === undefined) return {};
  const change = (of: (one: Evaluation) => number | undefined) => {
    const [before, after] = [of(a), of(b)];
    return before === undefined || after === undefined ? undefined : after - before;
  };
  const changes = {
    workDays: change(one => one.estimate?.schedule.workDays),
    greatestHeelDegrees: change(one => one.upright?.greatestHeelDegrees),
    likelyHeelDegrees: change(one => one.upright?.likelyHeelDegrees),
    lowestGmMetres: change(one => one.upright?.lowestGmMetres),
    tonnesTakenOff: change(takenOff),
  };
  return Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
}
