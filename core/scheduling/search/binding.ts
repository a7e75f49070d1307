import { at } from '../../base';
import type { LastingOrders } from './ordered';
import type { SearchProblem } from './problem';

/** Positions of the resources that can run short; the others need not be watched. */
export function bindingResources(problem: SearchProblem, orders: LastingOrders): number[] {
  return problem.resources.flatMap(({ capacity, capacityByDay }, r) => {
    const least = capacityByDay ? leastOf(capacityByDay) : capacity;
    return mostAtOnce(problem, r, orders) > least ? [r] : [];
  });
}

function leastOf(values: ArrayLike<number>): number {
  let least = Infinity;
  for (let i = 0; i < values.length; i++) least = Math.min(least, at(values, i));
  return least;
}

/**
 * More than the units that are ever held at once: users are put into rows in which each is over before the next
 * starts, and a row holds at most what its largest user holds.
 */
function mostAtOnce(problem: SearchProblem, resource: number, orders: LastingOrders): number {
  const rows: { last: number; most: number }[] = [];
  problem.activities.forEach(({ demands }, i) => {
    const units = at(demands, resource);
    if (units === 0) return;
    const row = rows.find(candidate => orders.isBefore(candidate.last, i));
    if (row) {
      row.last = i;
      row.most = Math.max(row.most, units);
    } else rows.push({ last: i, most: units });
  });
  return rows.reduce((sum, row) => sum + row.most, 0);
}
