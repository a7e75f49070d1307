import { beforeAll, describe, expect, it } from 'vitest';
import { prepareRisk } from '../../../core/evaluation';
import {
  adjustedRuns,
  drain,
  momentsOf,
  planGap,
  simulate,
  type DriverRow,
  type PreparedRun,
} from '../../../core/risk';
import { demoProject, evaluated } from './demo';

const PLAN = { trials: 10_000, seed: 11 };
/** Shares of the variance closer than this are not told apart by the sampling of the runs made again. */
const SAMPLING = 0.03;

function exampleRun(): PreparedRun {
  const { prepared, findings } = prepareRisk(evaluated(demoProject()));
  if (prepared === undefined) throw new Error(JSON.stringify(findings));
  return prepared.run;
}

describe('the first ten drivers of the example', () => {
  const run = exampleRun();
  let rows: readonly DriverRow[] = [];
  let falls: readonly { readonly cost: number; readonly finish: number }[] = [];

  beforeAll(() => {
    rows = simulate(run, PLAN)?.drivers.slice(0, 10) ?? [];
    const adjustments = [{}, ...rows.map(row => ({ held: [row.id] }))];
    const [base, ...held] = (drain(adjustedRuns(PLAN, adjustments), run, PLAN, {}) ?? []).map(trials => ({
      cost: momentsOf(trials.total).variance,
      finish: momentsOf(trials.finish).variance,
    }));
    falls = held.map(({ cost, finish }) => ({
      cost: 1 - cost / (base?.cost ?? 0),
      finish: 1 - finish / (base?.finish ?? 0),
    }));
  }, 180_000);

  it('lower the variance by the contribution stated when held at their mode, all trials run again, within 3 points', () => {
    expect(rows).toHaveLength(10);
    for (const [i, { id, contribution, finishContribution }] of rows.entries()) {
      expect([id, Math.abs(contribution - (falls[i]?.cost ?? NaN)) < 0.03]).toEqual([id, true]);
      expect([id, Math.abs(finishContribution - (falls[i]?.finish ?? NaN)) < 0.03]).toEqual([id, true]);
    }
  });

  it('stand in the order of that fall, as far as runs can tell them apart', () => {
    for (const [i, fall] of falls.entries())
      for (const later of falls.slice(i + 1)) expect(later.cost - fall.cost).toBeLessThan(SAMPLING);
    expect(falls[0]?.cost).toBe(Math.max(...falls.map(fall => fall.cost)));
  });

  it('matter: together they take more than half of the variance, and the first more than a tenth', () => {
    expect(falls[0]?.cost).toBeGreaterThan(0.1);
    expect(falls.reduce((sum, fall) => sum + fall.cost, 0)).toBeGreaterThan(0.5);
  });
});

it('why the runs differ from the plan adds up, and is nothing where nothing is uncertain', () => {
  const run = exampleRun();
  const plan = { trials: 500, seed: 4 };
  const gap = drain(planGap(run, plan), run, plan, {});
  if (gap === undefined) throw new Error('the run was not asked to stop');
  const mean = momentsOf(
    simulate(run, { ...plan, ranksDrivers: false })?.samples.total ?? new Float64Array(0),
  );
  expect(gap.whole.cost).toBeCloseTo(mean.mean - run.plan.total, 2);
  const { events, drivers, ranges, rest } = gap;
  const parts = [events, drivers, ranges, rest];
  expect(parts.reduce((sum, part) => sum + part.cost, 0)).toBeCloseTo(gap.whole.cost, 2);
  expect(parts.reduce((sum, part) => sum + part.days, 0)).toBeCloseTo(gap.whole.days, 6);
  const { prepared } = prepareRisk(evaluated(demoProject()), { ranges: false, events: false });
  if (prepared === undefined) throw new Error('the example could not be made ready');
  const still = drain(planGap(prepared.run, plan), prepared.run, plan, {});
  for (const part of [still?.whole, still?.events, still?.drivers, still?.ranges, still?.rest]) {
    expect(part?.cost).toBeCloseTo(0, 6);
    expect(part?.days).toBeCloseTo(0, 9);
  }
});
