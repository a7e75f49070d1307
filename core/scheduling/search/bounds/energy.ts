import { NONE } from '../dice';
import { criticalPath, type BoundNet } from './bound-net';

/**
 * The larger of the critical path and, over all sets of activities that start late and end far from the end,
 * the earliest start of the set plus its work over the capacity plus its distance from the end.
 */
export function energyBound(net: BoundNet): number {
  let bound = criticalPath(net);
  for (let r = 0; r < net.capacities.length; r++) bound = Math.max(bound, resourceBound(net, r));
  return bound;
}

function resourceBound(net: BoundNet, resource: number): number {
  const { heads, tails, durations } = net;
  const demands = net.demands[resource] ?? durations;
  const capacity = net.capacities[resource] ?? 1;
  const users = [...demands.keys()].filter(i => (demands[i] ?? NONE) * (durations[i] ?? NONE) > 0);
  const byTail = users.slice().sort((a, b) => (tails[b] ?? NONE) - (tails[a] ?? NONE));
  let bound = 0;
  for (const head of someOf([...new Set(users.map(i => heads[i] ?? NONE))])) {
    let work = 0;
    for (const i of byTail) {
      if ((heads[i] ?? NONE) < head) continue;
      work += (demands[i] ?? NONE) * (durations[i] ?? NONE);
      bound = Math.max(bound, head + Math.ceil(work / capacity) + (tails[i] ?? NONE));
    }
  }
  return bound;
}

/** All of a few values, an even choice of many: in networks of thousands the bound need not try them all. */
function someOf(values: readonly number[]): readonly number[] {
  const step = Math.ceil(values.length / 300);
  return values
    .slice()
    .sort((a, b) => a - b)
    .filter((_, k) => k % step === 0);
}
