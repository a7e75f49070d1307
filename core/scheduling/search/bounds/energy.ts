import { intAt, at } from '../../../base';
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
  const demands = at(net.demands, resource);
  const capacity = at(net.capacities, resource);
  const users = [...demands.keys()].filter(i => intAt(demands, i) * intAt(durations, i) > 0);
  const byTail = users.slice().sort((a, b) => intAt(tails, b) - intAt(tails, a));
  let bound = 0;
  for (const head of someOf([...new Set(users.map(i => intAt(heads, i)))])) {
    let work = 0;
    for (const i of byTail) {
      if (intAt(heads, i) < head) continue;
      work += intAt(demands, i) * intAt(durations, i);
      bound = Math.max(bound, head + Math.ceil(work / capacity) + intAt(tails, i));
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
