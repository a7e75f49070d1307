import { describe, expect, it } from 'vitest';
import {
  chunkCount,
  drainOnWorkers,
  simulate,
  simulation,
  trialRunner,
  type ChunkResult,
  type Distribution,
  type PreparedRun,
  type SimulationResult,
} from '../../../core/risk';
import { prepare, type SmallProject } from './small-project';

/** Two-sided 99 % of the standard normal: many checks stand side by side, so 95 % would miss one in twenty. */
const WITHIN = 2.576;

const wide: Distribution = { kind: 'triangular', low: 80, likely: 100, high: 160 };

/** Three lines and three activities with a driver, an event and a correlation. */
const project: SmallProject = {
  ranges: {
    quantity: wide,
    rate: { kind: 'pert', low: 8, likely: 10, high: 15 },
    tow: { kind: 'uniform', low: 5, high: 9 },
  },
  drivers: [
    {
      id: 'market',
      title: 'Labour market',
      probability: 0.7,
      factor: { kind: 'triangular', low: 0.9, likely: 1, high: 1.4 },
      inputs: ['rate'],
      note: 'beyond the range of the rate',
    },
  ],
  events: [
    {
      id: 'storm',
      title: 'Storm at berth',
      probability: 0.2,
      costs: [{ line: 'berth', dollars: { kind: 'uniform', low: 1000, high: 5000 } }],
      delays: [{ activity: 'clean', workDays: { kind: 'uniform', low: 2, high: 6 } }],
      mitigation: { title: 'Double moorings', cost: 150, line: 'berth', probability: 0.05, impactLeft: 0.5 },
    },
  ],
  correlations: [{ first: 'quantity', second: 'tow', correlation: 0.4 }],
  activities: {
    clean: { days: read => read('quantity') / 10 },
    permits: { days: () => 12 },
    tow: { days: read => read('tow'), after: ['clean', 'permits'] },
  },
  lines: {
    labour: read => Math.round(read('quantity') * read('rate') * 100) / 100,
    berth: (_, finish) => Math.round(finish * 400 * 100) / 100,
    fees: () => 750,
  },
};

function run(prepared: PreparedRun, trials = 3000, seed = 5): SimulationResult {
  const result = simulate(prepared, { trials, seed });
  if (result === undefined) throw new Error('the run was not asked to stop');
  return result;
}

describe('collapsed ranges', () => {
  it('give the plan to the cent and day in every trial', () => {
    const collapsed: SmallProject = {
      ...project,
      ranges: {
        quantity: { kind: 'triangular', low: 123.4, likely: 123.4, high: 123.4 },
        rate: { kind: 'pert', low: 10.37, likely: 10.37, high: 10.37 },
        tow: { kind: 'uniform', low: 7, high: 7 },
      },
      drivers: (project.drivers ?? []).map(d => ({ ...d, factor: { kind: 'certain', value: 1 } })),
      events: (project.events ?? []).map(e => ({ ...e, probability: 0 })),
    };
    const prepared = prepare(collapsed);
    const { samples, cost, withoutAnswer } = run(prepared, 777);
    expect(new Set(samples.total)).toEqual(new Set([prepared.plan.total]));
    expect(new Set(samples.finish)).toEqual(new Set([prepared.plan.finish]));
    expect([cost.standardDeviation, cost.planShare, withoutAnswer]).toEqual([0, 1, 0]);
  });
});

describe('the same seed', () => {
  it('gives the same bits whichever thread runs which chunk, in whatever order', async () => {
    const prepared = prepare(project);
    const options = { trials: 3100, seed: 9 };
    const alone = simulate(prepared, options);
    const runners = [trialRunner(prepare(project), options), trialRunner(prepare(project), options)];
    const finished: number[] = [];
    const shared = await drainOnWorkers(
      simulation(prepared, options),
      job =>
        new Promise<ChunkResult>((resolve, reject) => {
          // Even chunks answer late and on another runner than odd ones.
          setTimeout(
            () => {
              const answer = runners[job.chunk % 2]?.run(structuredClone(job));
              finished.push(job.chunk);
              if (answer === undefined) reject(new Error('no runner'));
              else resolve(structuredClone(answer));
            },
            job.chunk % 2 === 0 ? 20 : 1,
          );
        }),
      {},
      5,
    );
    expect(finished.slice(0, 13)).not.toEqual([...finished.slice(0, 13)].sort((a, b) => a - b));
    expect(shared).toEqual(alone);
  });

  it('is told apart from another seed', () => {
    expect(run(prepare(project), 500, 1).cost.mean).not.toBe(run(prepare(project), 500, 2).cost.mean);
  });
});

describe('draws belong to ids', () => {
  it('so another input, driver or event moves none of them', () => {
    const more: SmallProject = {
      ...project,
      ranges: { another: wide, ...project.ranges },
      events: [
        { id: 'lien', title: 'Lien', probability: 0.5, costs: [], delays: [] },
        ...(project.events ?? []),
      ],
    };
    expect(run(prepare(more), 1500).samples.total).toEqual(run(prepare(project), 1500).samples.total);
  });

  it('and every stratum of a full run is hit exactly once by each id', () => {
    const prepared = prepare({
      ranges: { x: { kind: 'uniform', low: 0, high: 1 } },
      lines: { only: read => read('x') },
    });
    const { samples } = run(prepared, 2000);
    expect(Array.from(samples.total, x => Math.floor(x * 2000)).sort((a, b) => a - b)).toEqual([
      ...Array(2000).keys(),
    ]);
  });

  it('and those of two ids are unrelated', () => {
    const uniform: Distribution = { kind: 'uniform', low: 0, high: 1 };
    const { samples } = run(
      prepare({
        ranges: { a: uniform, b: uniform },
        lines: { only: read => read('a') },
        activities: { b: { days: read => read('b') } },
      }),
      10_000,
    );
    const correlation =
      samples.total.reduce((sum, x, t) => sum + (x - 0.5) * ((samples.finish[t] ?? 0) - 0.5), 0) /
      (10_000 / 12);
    expect(Math.abs(correlation)).toBeLessThan(WITHIN / Math.sqrt(10_000));
  });
});

describe('a trial without a finite answer', () => {
  const broken = prepare({
    ranges: { x: { kind: 'uniform', low: 0, high: 1 } },
    lines: { only: read => (read('x') > 0.9 ? Number.NaN : read('x')) },
  });

  it('is counted, reported and left out of every percentile', () => {
    const result = run(broken, 1000);
    expect(result.withoutAnswer).toBe(100);
    expect(result.findings.map(f => [f.code, f.weight])).toEqual([['risk/trials-without-answer', 'blocks']]);
    const p80 = result.cost.percentiles.find(p => p.share === 0.8);
    // P80 of the 900 trials up to 0.9, not the 800th of a thousand.
    expect(p80?.value).toBeCloseTo(0.72, 2);
    expect(result.cost.curve.every(point => Number.isFinite(point.value))).toBe(true);
  });
});

describe('a long run', () => {
  it('asked to stop runs no further chunk and gives no result', () => {
    const seen: number[] = [];
    const result = simulate(prepare(project), {
      trials: 1_000_000,
      seed: 1,
      onProgress: done => seen.push(done),
      shouldStop: () => seen.length >= 20,
    });
    expect(result).toBeUndefined();
    expect(seen).toEqual(Array.from({ length: 20 }, (_, i) => (i + 1) * 250));
  });

  it('asked to stop gives workers no further job: those in hand end, and their answers are dropped', async () => {
    const prepared = prepare(project);
    const plan = { trials: 1_000_000, seed: 1 };
    const { run: runChunk } = trialRunner(prepared, plan);
    const events: string[] = [];
    let isStopped = false;
    const result = await drainOnWorkers(
      simulation(prepared, plan),
      async job => {
        events.push(`given ${job.chunk}`);
        await new Promise(resolve => setTimeout(resolve, 1));
        if (job.chunk === 7) {
          isStopped = true;
          events.push('stop');
        }
        return runChunk(job);
      },
      { shouldStop: () => isStopped, onProgress: done => events.push(`told ${done}`) },
      3,
    );
    expect(result).toBeUndefined();
    expect(events).toContain('given 7');
    expect(events.slice(events.indexOf('stop') + 1)).toEqual([]);
  });

  it('ends when P50 and P80 of cost and finish are known closely enough, at the same trial on every machine', () => {
    const prepared = prepare(project);
    const first = simulate(prepared, {
      trials: 100_000,
      seed: 3,
      stop: { costWidth: 150, finishWidth: 1 },
      ranksDrivers: false,
    });
    expect(first?.trials).toBeLessThan(100_000);
    expect((first?.trials ?? 1) % 2000).toBe(0);
    const widths = [first?.cost, first?.finish].map(s =>
      (s?.percentiles ?? []).filter(p => p.share === 0.5 || p.share === 0.8).map(p => p.high - p.low),
    );
    expect(Math.max(...(widths[0] ?? [Infinity]))).toBeLessThanOrEqual(150);
    expect(Math.max(...(widths[1] ?? [Infinity]))).toBeLessThanOrEqual(1);
  });
});

it('how often an activity drives the finish agrees with the share worked out by hand', () => {
  // Two parallel uniform activities, (0, 10) and (5, 10): the second is longer in 3 of 4 cases.
  const { drivesFinish } = run(
    prepare({
      ranges: { a: { kind: 'uniform', low: 0, high: 10 }, b: { kind: 'uniform', low: 5, high: 10 } },
      activities: { a: { days: read => read('a') }, b: { days: read => read('b') } },
    }),
    20_000,
  );
  expect(drivesFinish?.map(d => d.activity)).toEqual(['a', 'b']);
  expect(Math.abs((drivesFinish?.[1]?.share ?? 0) - 0.75)).toBeLessThan(
    WITHIN * Math.sqrt((0.75 * 0.25) / 20_000),
  );
});

it('a plan is cut into chunks of 250 trials, the last one short', () => {
  expect([1, 250, 251, 10_000].map(trials => chunkCount({ trials, seed: 1 }))).toEqual([1, 1, 2, 40]);
  expect(run(prepare(project), 251).samples.total).toHaveLength(251);
});
