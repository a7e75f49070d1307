import { searchSchedule } from '../../../core/scheduling/search';
import type { Instance } from './instances';
import { schedulesFor, type BenchOptions } from './options';

/** One run of the search on one instance. */
export interface Run {
  readonly instance: string;
  readonly seed: number;
  readonly status: string;
  readonly finish?: number;
  readonly lowerBound: number;
  readonly schedules: number;
  readonly cpuSeconds: number;
  /** % over the optimum (j30) or the critical path. */
  readonly deviation?: number;
  /** % over the best known finish. */
  readonly overBest?: number;
  readonly isFull: boolean;
}

/** CPU seconds of this process so far. */
export function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Runs the search on every instance with every seed. */
export function measureAll(instances: readonly Instance[], options: BenchOptions): Run[] {
  const seeds = Array.from({ length: options.seeds }, (_, k) => k + 1);
  return seeds.flatMap(seed => instances.map(instance => measure(instance, seed, options)));
}

function measure(instance: Instance, seed: number, options: BenchOptions): Run {
  const before = cpuSeconds();
  const { seconds } = options;
  const schedules = schedulesFor(options, instance.problem.activities.length);
  const result = searchSchedule(instance.problem, {
    schedules,
    seed,
    isHeuristicOnly: options.isHeuristicOnly,
    ...(seconds === undefined ? {} : { shouldStop: () => cpuSeconds() - before > seconds }),
  });
  const { finish } = result;
  const spent = cpuSeconds() - before;
  const over = (from: number | undefined) =>
    finish === undefined || !from ? undefined : (finish / from - 1) * 100;
  const deviation = over(instance.reference);
  const overBest = over(instance.known.upper);
  return {
    instance: instance.name,
    seed,
    status: result.status,
    lowerBound: result.lowerBound,
    schedules: result.schedules,
    cpuSeconds: spent,
    isFull: result.schedules >= schedules * 0.99,
    ...(finish === undefined ? {} : { finish }),
    ...(deviation === undefined ? {} : { deviation }),
    ...(overBest === undefined ? {} : { overBest }),
  };
}
