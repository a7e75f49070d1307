/** How fast a simulation runs in one thread: the sheet's columns, a serial schedule a trial, draws, drivers. Bundle and run. */
import { readFileSync } from 'node:fs';
import { evaluate, prepareRisk } from '../../core/evaluation';
import { readProject } from '../../core/project';
import {
  difference,
  simulate,
  TRIALS_PER_CHUNK,
  type PreparedRun,
  type UncertainInput,
} from '../../core/risk';
import { columns, evaluateSheet } from '../../core/sheet';
import { exampleItems, exampleSheet } from '../core/sheet/example';
import { benchNetwork, serialScheduler } from './serial-scheduler';

const UNCERTAIN = ['taken', 'production', 'crewRate', 'stuffRate', 'tonnesPer'];
const LINES = 200;

interface Parts {
  readonly perLine: number;
  readonly activities: number;
  readonly hasSheet: boolean;
}

function prepared({ perLine, activities, hasSheet }: Parts): { run: PreparedRun; liveSteps: number } {
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
      scheduler: activities === 0 ? { decode: () => 1 } : serialScheduler(network),
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
measure('draws, sheet and schedule', { perLine: 1, activities: 60, hasSheet: true }, 40_000, false);
measure('draws, sheet and schedule', { perLine: 5, activities: 60, hasSheet: true }, 20_000, false);
measure('the whole, with drivers ranked', { perLine: 1, activities: 60, hasSheet: true }, 10_000, true);
/** Standard errors of the difference of two scenarios, one line apart, with common and with independent draws. */
function commonDraws(): void {
  const { run } = prepared({ perLine: 2, activities: 0, hasSheet: true });
  const fewer: PreparedRun = {
    ...run,
    inputs: run.inputs.map((input, i) =>
      i === 0 ? { ...input, distribution: { kind: 'certain', value: 0 } } : input,
    ),
  };
  const samples = (of: PreparedRun, seed: number) => {
    const result = simulate(of, { trials: 10_000, seed, ranksDrivers: false });
    if (result === undefined) throw new Error('the bench was not asked to stop');
    return result.samples;
  };
  const base = samples(run, 1);
  const common = difference(base, samples(fewer, 1)).standardError;
  const independent = difference(base, samples(fewer, 2)).standardError;
  console.log(
    `difference of two scenarios: standard error ${common.toFixed(0)} common, ${independent.toFixed(0)} independent, ratio ${(common / independent).toFixed(3)}`,
  );
}

/** The invented example: both sheets, the schedule with its weather, events, percentiles and drivers, in one thread. */
function wholeExample(): void {
  const { project } = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8'));
  if (project === undefined) throw new Error('the example could not be read');
  const evaluation = evaluate(project, { today: '2026-11-24', seed: 1, upright: false });
  const { prepared: ready } = prepareRisk(evaluation);
  if (ready === undefined) throw new Error('the example could not be made ready');
  simulate(ready.run, { trials: 2000, seed: 1 });
  const started = process.cpuUsage().user;
  const result = simulate(ready.run, { trials: 10_000, seed: 2 });
  const seconds = (process.cpuUsage().user - started) / 1e6;
  console.log(
    `the example: ${ready.drawn} of ${ready.ranged} ranges drawn, ${ready.liveSteps} live steps, ` +
      `${ready.run.activities.length} activities: ${result?.trials ?? 0} trials in ${seconds.toFixed(3)} s of CPU, drivers ranked`,
  );
}

commonDraws();
wholeExample();
console.log(`memory ${Math.round(process.memoryUsage().rss / 1e6)} MB`);
