import type { Instance } from './instances';
import type { Run } from './measure';
import type { BenchOptions } from './options';

/** What the bench says of a set. */
export interface Report {
  readonly set: string;
  /** Absent: as many as the seconds allow. */
  readonly schedules?: number;
  readonly counting: string;
  readonly seeds: number;
  readonly instances: number;
  readonly deviationFrom: string;
  readonly meanDeviationPercent: number;
  readonly meanDeviationBySeed: readonly number[];
  readonly meanOverBestKnownPercent?: number;
  readonly bestKnownReached: number;
  readonly proved: number;
  readonly infeasible: number;
  readonly belowLowerBound: number;
  /** Lower bounds above the best known finish: wrong proofs. */
  readonly wrongProofs: number;
  /** Inside the search, CPU time, over the runs that spent the whole budget; all its parts included. */
  readonly schedulesPerCpuSecond?: number;
  readonly cpuSeconds: number;
}

/** Sums the runs up. */
export function reportOf(
  instances: readonly Instance[],
  runs: readonly Run[],
  options: BenchOptions,
): Report {
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const defined = (values: readonly (number | undefined)[]) => values.filter(value => value !== undefined);
  const bySeed = Array.from({ length: options.seeds }, (_, k) =>
    mean(defined(runs.filter(run => run.seed === k + 1).map(run => run.deviation))),
  );
  const known = new Map(instances.map(instance => [instance.name, instance.known]));
  const overBest = defined(runs.map(run => run.overBest));
  const full = runs.filter(run => run.isFull);
  const cpu = (some: readonly Run[]): number => some.reduce((sum, run) => sum + run.cpuSeconds, 0);
  return {
    set: options.set,
    ...(options.schedules === undefined ? {} : { schedules: options.schedules }),
    counting:
      'forward or backward pass = 1 schedule; passes ended early and exact search = placements / activities',
    seeds: options.seeds,
    instances: instances.length,
    deviationFrom: options.set === 'j30' ? 'optimum' : 'critical path',
    meanDeviationPercent: mean(bySeed),
    meanDeviationBySeed: bySeed,
    ...(overBest.length === 0 ? {} : { meanOverBestKnownPercent: mean(overBest) }),
    bestKnownReached: overBest.filter(value => value <= 0).length / options.seeds,
    proved: runs.filter(run => run.status === 'optimal').length / options.seeds,
    infeasible: runs.filter(run => run.status === 'infeasible').length / options.seeds,
    belowLowerBound: runs.filter(run => (run.finish ?? Infinity) < (known.get(run.instance)?.lower ?? 0))
      .length,
    wrongProofs: runs.filter(run => run.lowerBound > (known.get(run.instance)?.upper ?? Infinity)).length,
    ...(full.length === 0
      ? {}
      : { schedulesPerCpuSecond: Math.round(full.reduce((sum, run) => sum + run.schedules, 0) / cpu(full)) }),
    cpuSeconds: cpu(runs),
  };
}

/** The report in words. */
export function reportText(report: Report): string {
  const over = report.meanOverBestKnownPercent;
  return [
    `${report.set}: ${report.instances} instances, ${report.schedules ?? 'timed'} schedules, mean of ${report.seeds} seed(s)`,
    `  ${report.meanDeviationPercent.toFixed(3)} % over the ${report.deviationFrom}` +
      ` (seeds ${report.meanDeviationBySeed.map(value => value.toFixed(3)).join(', ')})`,
    ...(over === undefined ? [] : [`  ${over.toFixed(3)} % over the best known`]),
    `  best known reached ${report.bestKnownReached.toFixed(1)}, proved optimal ${report.proved.toFixed(1)},` +
      ` infeasible ${report.infeasible.toFixed(1)}, below a lower bound ${report.belowLowerBound}, wrong proofs ${report.wrongProofs}`,
    `  ${report.schedulesPerCpuSecond ?? '-'} schedules a CPU second inside the search, ${report.cpuSeconds.toFixed(1)} CPU s`,
    `  counting: ${report.counting}`,
  ].join('\n');
}
