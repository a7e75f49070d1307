import { solveByChuffed } from './chuffed';
import type { Instance } from './instances';
import { measureAll } from './measure';
import type { BenchOptions } from './options';

/** The search and Chuffed on the same instances, one after the other, with the same seconds each. */
export async function comparePeer(instances: readonly Instance[], options: BenchOptions) {
  const seconds = options.seconds ?? 10;
  const runs = measureAll(instances, { ...options, seconds, seeds: 1 });
  const rows: { name: string; here?: number; peer?: number; isProved: boolean }[] = [];
  for (const [k, { name, problem }] of instances.entries()) {
    const peer = await solveByChuffed(problem, seconds);
    const here = runs[k]?.finish;
    rows.push({
      name,
      isProved: peer.isProved,
      ...(here === undefined ? {} : { here }),
      ...(peer.finish === undefined ? {} : { peer: peer.finish }),
    });
  }
  const atLeastAsGood = rows.filter(row => (row.here ?? Infinity) <= (row.peer ?? Infinity)).length;
  const better = rows.filter(row => (row.here ?? Infinity) < (row.peer ?? Infinity)).length;
  const text = [
    `${options.set}, ${seconds} s each: at least as good as Chuffed on ${atLeastAsGood} of ${rows.length}, better on ${better}`,
    ...rows.map(
      row =>
        `  ${row.name}: here ${row.here ?? '-'}, Chuffed ${row.peer ?? '-'}${row.isProved ? ' proved' : ''}`,
    ),
  ].join('\n');
  return { seconds, atLeastAsGood, better, of: rows.length, rows, text, exitCode: 0 };
}
