import {
  boundNetOf,
  destructiveBound,
  energyBound,
} from '../../../core/scheduling/search/bounds/destructive';
import type { Instance } from './instances';
import { cpuSeconds } from './measure';

/** Lower bounds of every instance against the best known finishes. */
export function measureBounds(instances: readonly Instance[]) {
  const rows = instances.flatMap(({ name, problem, known }) => {
    if (known.upper === undefined) return [];
    const before = cpuSeconds();
    const net = boundNetOf(problem);
    const bound = destructiveBound(net, energyBound(net), Infinity, () => false);
    return [{ name, bound, upper: known.upper, milliseconds: (cpuSeconds() - before) * 1000 }];
  });
  const mean = (of: (row: (typeof rows)[number]) => number): number =>
    rows.reduce((sum, row) => sum + of(row), 0) / Math.max(1, rows.length);
  const proved = mean(row => (row.bound === row.upper ? 100 : 0));
  const gap = mean(row => ((row.upper - row.bound) / row.bound) * 100);
  const milliseconds = mean(row => row.milliseconds);
  const wrong = rows.filter(row => row.bound > row.upper).length;
  const text =
    `bounds: ${proved.toFixed(1)} % proved optimal against the best known, mean gap ${gap.toFixed(2)} %, ` +
    `${milliseconds.toFixed(2)} ms mean CPU, ${wrong} above a best known finish`;
  return { proved, gap, milliseconds, wrong, text, exitCode: wrong > 0 ? 1 : 0 };
}
