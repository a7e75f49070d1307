/** How fast a simulation runs in one thread: the sheet's columns, a serial schedule a trial, draws, drivers. Bundle and run. */
import {
  difference,
  simulate,
  TRIALS_PER_CHUNK,
  type PreparedRun,
  type UncertainInput,
} from '../../core/risk';
import { chainScheduler, schedule, type ChainScheduler, type ScheduleProblem } from '../../core/scheduling';
import { columns, evaluateSheet } from '../../core/sheet';
import { exampleItems, exampleSheet } from '../core/sheet/example';
import { exampleRun, wholeExample } from './risk-example';
import { benchNetwork, serialScheduler, type BenchNetwork } from './serial-scheduler';

const UNCERTAIN = ['taken', 'production', 'crewRate', 'stuffRate', 'tonnesPer'];
const LINES = 200;

interface Parts {
  readonly perLine: number;
  readonly activities: number;
  readonly hasSheet: boolean;
  /** Whether the program's own scheduler of trials is used, or one that decodes each trial day by day. */
  readonly isChained?: boolean;
}

function prepared({ perLine, activities, hasSheet, isChained = true }: Parts): {
  run: PreparedRun;
  liveSteps: number;
} {
  const items = exampleItems(LINES);
  const { sheet, grand } = exampleSheet(items);
  const exact = evaluateSheet(sheet);
  const network = benchNetwork(activities);
  const inputs: UncertainInput[] = items.flatMap(item =>
    UNCERTAIN.slice(0, perLine).map(key => {
      const id = `lines/${item.id}/${key}`;
      const likely = exact.figure(id).number ?? Number.NaN;
      const distribution = { kind: 'triangular', low: likely * 0.8, likely, high: likely * 1.4 } as const;
      return { id, title: id, distribution, moves: [item.id] };
    }),
  );
  const own = new Map(inputs.map(i => [i.id, new Float64Array(TRIALS_PER_CHUNK).fill(1)]));
  const total = exact.at(grand).id;
  const plan = columns(exact, { inputs: own, keep: [total], batch: TRIALS_PER_CHUNK });
  const durations = Array.from(network.days, days => new Float64Array(TRIALS_PER_CHUNK).fill(days));
  const flat = new Float64Array(TRIALS_PER_CHUNK).fill(1);
  const first = own.get(inputs[0]?.id ?? '') ?? flat;
  const likely = inputs[0]?.distribution.kind === 'triangular' ? inputs[0].distribution.likely : 1;
  return {
    liveSteps: hasSheet ? plan.liveSteps : 0,
    run: {
      inputs,
      columns: own,
      drivers: [
        {
          id: 'market',
          title: 'Market',
          probability: 1,
          factor: { kind: 'triangular', low: 0.9, likely: 1, high: 1.3 },
          inputs: inputs.slice(0, 40).map(i => i.id),
        },
      ],
      events: [],
      correlations: [],
      lines: ['all'],
      activities: network.ids,
      plan: {
        total: exact.figure(total).number ?? Number.NaN,
        lines: [exact.figure(total).number ?? Number.NaN],
        finish: 0,
      },
      work: ({ n }) => {
        durations.forEach((column, i) => {
          for (let t = 0; t < n; t++) column[t] = ((network.days[i] ?? 1) * (first[t] ?? 1)) / likely;
        });
        return durations;
      },
      scheduler:
        activities === 0 ? { decode: () => 1 } : isChained ? chainsOf(network) : serialScheduler(network),
      money: ({ n }) => {
        if (hasSheet) plan.run(n);
        const column = hasSheet ? (plan.kept.get(total) ?? flat) : flat;
        return { total: column, lines: [column] };
      },
    },
  };
}

function measure(title: string, parts: Parts, trials: number, ranksDrivers: boolean): void {
  const { run, liveSteps } = prepared(parts);
  simulate(run, { trials: 5000, seed: 1, ranksDrivers: false });
  const rates = Array.from({ length: 3 }, (_, i) => {
    const started = process.cpuUsage().user;
    const result = simulate(run, { trials, seed: i + 2, ranksDrivers });
    if (result === undefined || result.withoutAnswer > 0) throw new Error('the bench lost trials');
    return (process.cpuUsage().user - started) / 1e6;
  });
  const best = Math.min(...rates);
  console.log(
    `${title}: ${run.inputs.length} draws, ${liveSteps} live steps, ${parts.activities} activities: ` +
      `${trials} trials in ${best.toFixed(3)} s of CPU, ${Math.round(trials / best)} trials/s`,
  );
}

measure('draws alone', { perLine: 1, activities: 0, hasSheet: false }, 40_000, false);
measure('draws alone', { perLine: 5, activities: 0, hasSheet: false }, 20_000, false);
measure('draws and schedule', { perLine: 1, activities: 60, hasSheet: false }, 40_000, false);
measure('draws and sheet', { perLine: 1, activities: 0, hasSheet: true }, 40_000, false);
measure('draws and sheet', { perLine: 5, activities: 0, hasSheet: true }, 40_000, false);
measure('draws, sheet and schedule', { perLine: 1, activities: 60, hasSheet: true }, 40_000, false);
measure('draws, sheet and schedule', { perLine: 5, activities: 60, hasSheet: true }, 40_000, false);
measure(
  'draws, sheet and a schedule decoded day by day',
  { perLine: 1, activities: 60, hasSheet: true, isChained: false },
  20_000,
  false,
);
measure('the whole, with drivers ranked', { perLine: 1, activities: 60, hasSheet: true }, 10_000, true);
/** Standard errors of the difference of two scenarios of the example, with common and with independent draws. */
function commonDraws(): void {
  const samples = (scenario: string, seed: number) => {
    const { run } = exampleRun(scenario).prepared;
    const result = simulate(run, { trials: 4000, seed, ranksDrivers: false });
    if (result === undefined) throw new Error('the bench was not asked to stop');
    return result.samples;
  };
  const [closed, open] = ['fishing-reef', 'diver-access'];
  const base = samples(closed, 1);
  const common = difference(base, samples(open, 1)).standardError;
  const independent = difference(base, samples(open, 2)).standardError;
  console.log(
    `${open} less ${closed}, 4,000 trials: standard error of the mean difference ${common.toFixed(0)} dollars with common draws, ` +
      `${independent.toFixed(0)} with independent ones, ratio ${(common / independent).toFixed(3)}`,
  );
}

/** A network as a problem of the program: five-day weeks, four crews. */
function problemOf(network: BenchNetwork): ScheduleProblem {
  const crews = ['a', 'b', 'c', 'd'];
  return {
    horizonStart: '2027-03-01',
    calendars: {
      yard: {
        id: 'yard',
        title: 'Yard',
        weekdays: [1, 2, 3, 4, 5],
        shiftHours: 8,
        federalHolidays: false,
        holidays: [],
        closures: [],
        extraWorkDays: [],
      },
    },
    resources: crews.map(id => ({ id, title: id, capacity: 10 })),
    activities: network.ids.map((id, i) => ({
      id,
      title: id,
      stage: 'yard',
      calendar: 'yard',
      workDays: network.days[i] ?? 1,
      uses: Object.fromEntries(crews.map((crew, r) => [crew, network.demand[i]?.[r] ?? 0])),
    })),
    relationships: network.ids.flatMap((to, i) =>
      [...new Set(network.after[i])].map(p => ({ from: network.ids[p] ?? '', to, kind: 'FS' as const })),
    ),
  };
}

/** The program's own scheduler for trials, a chunk at a time. */
function chainsOf(network: BenchNetwork): ChainScheduler {
  const problem = problemOf(network);
  const scheduler = chainScheduler(problem, schedule(problem, { schedules: 1000, seed: 1 }));
  if (scheduler === undefined) throw new Error('the bench network has no chains');
  return scheduler;
}

/** The scheduler of trials alone: 60 activities on four crews. */
function scheduleAlone(): void {
  const network = benchNetwork(60);
  const scheduler = chainsOf(network);
  const columns = () => network.ids.map(() => new Float64Array(TRIALS_PER_CHUNK));
  const durations = network.ids.map((_, i) =>
    Float64Array.from({ length: TRIALS_PER_CHUNK }, (__, t) => (network.days[i] ?? 1) + ((i * 7 + t) % 4)),
  );
  const finish = new Float64Array(TRIALS_PER_CHUNK);
  const trials = { n: TRIALS_PER_CHUNK, durations, starts: columns(), finishes: columns(), finish };
  for (let i = 0; i < 40; i++) scheduler.chunk(trials);
  const chunks = 800;
  const started = process.cpuUsage().user;
  for (let i = 0; i < chunks; i++) scheduler.chunk(trials);
  const seconds = (process.cpuUsage().user - started) / 1e6;
  console.log(
    `the scheduler of trials alone: 60 activities, 4 crews, 5-day weeks: ${Math.round((chunks * TRIALS_PER_CHUNK) / seconds)} schedules/s`,
  );
}

scheduleAlone();
commonDraws();
console.log(`memory of this bench ${Math.round(process.memoryUsage().rss / 1e6)} MB`);
await wholeExample();
