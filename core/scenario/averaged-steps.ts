import { at, BugError } from '../base';

/** Groups beyond this number would need too many orders. */
const MOST_GROUPS = 8;

/** Which groups have been changed, by their numbers. */
export type Changed = ReadonlySet<number>;

/**
 * Splits a difference over groups of changes so that no order is preferred: each group gets the mean, over all orders
 * in which the groups could be changed one after the other, of what its change adds. The parts add up to the cent.
 * @param keys names of the groups, each once; ties over a last cent go by them.
 * @param centsAt whole cents when exactly these groups are changed; asked once for each set.
 * @returns whole cents by group, in the order of the keys.
 * @throws BugError for more than eight groups, or amounts that are not whole cents.
 * @source L. S. Shapley, A value for n-person games, in Contributions to the Theory of Games II, 1953, pp. 307 to 317.
 * @example averagedSteps(['price', 'quantity'], set => [100, 150, 120, 180][[...set].reduce((n, i) => n + i + 1, 0)] ?? 0)
 */
export function averagedSteps(keys: readonly string[], centsAt: (changed: Changed) => number): number[] {
  const count = keys.length;
  if (count > MOST_GROUPS) throw new BugError(`${count} groups of changes: at most ${MOST_GROUPS}`);
  const amounts = Array.from({ length: 2 ** count }, (_, set) => wholeCents(centsAt(membersOf(set, count))));
  const orders = factorial(count);
  const shares = keys.map((_, group) => {
    let sum = 0n;
    for (let set = 0; set < amounts.length; set++) {
      if (isIn(set, group)) continue;
      const size = membersOf(set, count).size;
      const weight = factorial(size) * factorial(count - size - 1);
      sum += weight * (at(amounts, set + 2 ** group) - at(amounts, set));
    }
    return sum;
  });
  return roundedTogether(keys, shares, orders);
}

function isIn(set: number, group: number): boolean {
  return Math.floor(set / 2 ** group) % 2 === 1;
}

function membersOf(set: number, count: number): Set<number> {
  return new Set(Array.from({ length: count }, (_, group) => group).filter(group => isIn(set, group)));
}

function factorial(n: number): bigint {
  return n <= 1 ? 1n : BigInt(n) * factorial(n - 1);
}

function wholeCents(cents: number): bigint {
  if (!Number.isSafeInteger(cents)) throw new BugError(`${cents} is not a whole number of cents`);
  return BigInt(cents);
}

/**
 * Whole cents that add up to the sum of the shares: each is cut towards zero, and the cents that are left go one
 * each to those that lost most, equals by name. Turning all signs turns all results; the order does not matter.
 */
function roundedTogether(keys: readonly string[], shares: readonly bigint[], divisor: bigint): number[] {
  const cut = shares.map(share => share / divisor);
  const lost = shares.map((share, i) => share - at(cut, i) * divisor);
  const left = Number(lost.reduce((sum, part) => sum + part, 0n) / divisor);
  const sign = BigInt(Math.sign(left));
  const most = keys
    .map((key, i) => ({ key, i, lost: at(lost, i) * sign }))
    .sort((a, b) => (a.lost === b.lost ? (a.key < b.key ? -1 : 1) : a.lost > b.lost ? -1 : 1))
    .slice(0, Math.abs(left));
  const raised = new Set(most.map(({ i }) => i));
  return cut.map((cents, i) => Number(raised.has(i) ? cents + sign : cents));
}
