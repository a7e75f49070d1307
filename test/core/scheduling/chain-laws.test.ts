import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  chainScheduler,
  schedule,
  verifySchedule,
  type ChainScheduler,
  type ScheduleProblem,
  type ScheduleResult,
} from '../../../core/scheduling';
import { isoOf } from '../../../core/calendar';
import { randomProblem } from './random-problems';

interface Planned {
  readonly problem: ScheduleProblem;
  readonly plan: ScheduleResult;
  readonly chains: ChainScheduler;
}

/** Random problems whose crews are the same on all days, with their plans. */
const plans = fc.sample(randomProblem(9, 5), { numRuns: 200, seed: 20280301 }).flatMap(given => {
  const resources = given.resources.map(({ capacityChanges: _, ...resource }) => resource);
  const problem: ScheduleProblem = { ...given, resources };
  const plan = schedule(problem, { schedules: 80, seed: 1 });
  return plan.activities.length === 0 ? [] : [{ problem, plan }];
});
/** Those that chains can tell: not where one works in another's idle days. */
const planned: readonly Planned[] = plans.flatMap(({ problem, plan }) => {
  const chains = chainScheduler(problem, plan);
  return chains === undefined ? [] : [{ problem, plan, chains }];
});
/** Those in which a longer duration can only push: no relationship counts to a finish. */
const pushing = planned.filter(({ problem }) => problem.relationships.every(r => r.kind.endsWith('S')));

/** Days of every activity, weather allowance included. */
function plannedDays({ problem }: Planned): number[] {
  return problem.activities.map(a => (a.workDays ?? 0) + (a.consecutive?.weatherDays ?? 0));
}

/** The days with some more for each activity; a milestone stays one. */
function longer(days: readonly number[], more: readonly number[]): number[] {
  return days.map((d, i) => (d === 0 ? 0 : d + (more[i % more.length] ?? 0)));
}

/** Trials scheduled at once; rows are trials. */
function run({ chains }: Planned, rows: readonly (readonly number[])[]) {
  const n = rows.length;
  const durations = chains.activities.map((_, i) => Float64Array.from(rows, row => row[i] ?? Number.NaN));
  const columns = () => chains.activities.map(() => new Float64Array(n));
  const trials = { n, durations, starts: columns(), finishes: columns(), finish: new Float64Array(n) };
  chains.chunk(trials);
  const drives = new Float64Array(chains.activities.length);
  chains.countDriving(trials, drives);
  const row = (of: readonly Float64Array[], t: number) => of.map(column => column[t] ?? Number.NaN);
  return {
    drives: [...drives],
    trials: rows.map((_, t) => ({
      starts: row(trials.starts, t),
      finishes: row(trials.finishes, t),
      finish: trials.finish[t] ?? Number.NaN,
    })),
  };
}
const one = (of: Planned, days: readonly number[]) => {
  const { trials, drives } = run(of, [days]);
  const [trial] = trials;
  if (trial === undefined) throw new Error('a trial is missing');
  return { ...trial, drives };
};

/** What the day-by-day check finds wrong with the dates of a trial; sums and peaks told of the plan are left out. */
function broken(of: Planned, days: readonly number[], trial: ReturnType<typeof one>): string[] {
  const { problem, plan, chains } = of;
  const date = (moment: number) => isoOf(chains.first + moment);
  const activities = plan.activities.map((activity, i) => {
    const [start = 0, finish = 0] = [trial.starts[i], trial.finishes[i]];
    const last = chains.isMilestone[i] === 1 ? start - (chains.closes[i] ?? 0) : finish - 1;
    return { ...activity, start: date(chains.isMilestone[i] === 1 ? last : start), finish: date(last) };
  });
  const asked = problem.activities.map((activity, i) => ({
    ...activity,
    workDays: (days[i] ?? 0) - (activity.consecutive?.weatherDays ?? 0),
  }));
  const { start: _start, finish: _finish, ...rest } = plan;
  const told = { ...rest, status: 'feasible' as const, lowerBoundDays: 0, activities };
  const aside = ['verify/peak', 'verify/hammock', 'verify/finish', 'verify/start'];
  return verifySchedule({ ...problem, activities: asked, hammocks: [] }, told)
    .filter(finding => !aside.includes(finding.code))
    .map(finding => finding.message);
}

const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
/** Positions in a list, and what stands there. */
const some = (list: readonly Planned[]) => fc.nat(list.length - 1);
function pick(list: readonly Planned[], position: number): Planned {
  const found = list[position];
  if (found === undefined) throw new Error(`no plan ${position}`);
  return found;
}
const extras = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 9 });

describe('chains of random plans', () => {
  it('tell most plans', () => {
    expect(planned.length).toBeGreaterThan(0.8 * plans.length);
    expect(pushing.length).toBeGreaterThan(0.08 * planned.length);
  });
  it('with the planned days give the plan, or one that starts nothing later and ends no sooner than proved', () => {
    let same = 0;
    for (const of of planned) {
      const { plan, chains } = of;
      const trial = one(of, plannedDays(of));
      expect(trial.finish).toBeLessThanOrEqual(plan.calendarDays ?? -1);
      expect(trial.finish).toBeGreaterThanOrEqual(plan.lowerBoundDays ?? Infinity);
      expect(chains.plannedFinish).toBe(trial.finish);
      const dates = plan.activities.map((a, i) => {
        const opens = (trial.starts[i] ?? 0) - (chains.isMilestone[i] === 1 ? (chains.closes[i] ?? 0) : 0);
        expect(isoOf(chains.first + opens) <= a.start, `${a.id} of ${a.start}`).toBe(true);
        return isoOf(chains.first + opens) === a.start;
      });
      if (dates.every(Boolean)) same++;
    }
    expect(same).toBeGreaterThan(0.9 * planned.length);
  });
  it('with any days keep every rule, day by day', () => {
    fc.assert(
      fc.property(some(planned), extras, (at, more) => {
        const of = pick(planned, at);
        const days = longer(plannedDays(of), more);
        const trial = one(of, days);
        if (Number.isFinite(trial.finish)) expect(broken(of, days, trial)).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });
  it('start nothing sooner when work takes longer', () => {
    fc.assert(
      fc.property(some(pushing), extras, extras, (at, first, second) => {
        const of = pick(pushing, at);
        const days = longer(plannedDays(of), first);
        const [a, b] = [one(of, days), one(of, longer(days, second))];
        if (!Number.isFinite(b.finish)) return;
        expect(b.finish).toBeGreaterThanOrEqual(a.finish);
        a.starts.forEach((start, i) => {
          expect(b.starts[i]).toBeGreaterThanOrEqual(start);
        });
      }),
      { numRuns: 300 },
    );
  });
  it('are the same for a trial alone and among others, and counts of driving add up', () => {
    fc.assert(
      fc.property(some(planned), fc.array(extras, { minLength: 2, maxLength: 5 }), (at, mores) => {
        const of = pick(planned, at);
        const rows = mores.map(more => longer(plannedDays(of), more));
        const together = run(of, rows);
        const alone = rows.map(days => one(of, days));
        expect(together.trials).toEqual(alone.map(({ drives: _, ...trial }) => trial));
        together.drives.forEach((count, i) => {
          expect(count).toBe(sum(alone.map(trial => trial.drives[i] ?? 0)));
        });
      }),
      { numRuns: 100 },
    );
  });
  it('end at the same time when only work that does not drive the finish becomes shorter', () => {
    fc.assert(
      fc.property(some(pushing), extras, extras, (at, more, less) => {
        const of = pick(pushing, at);
        const days = longer(plannedDays(of), more);
        const trial = one(of, days);
        if (!Number.isFinite(trial.finish)) return;
        expect(sum(trial.drives)).toBeGreaterThan(0);
        const shorter = days.map((d, i) =>
          d === 0 || trial.drives[i] !== 0 ? d : Math.max(1, d - (less[i % less.length] ?? 0)),
        );
        expect(one(of, shorter).finish).toBe(trial.finish);
      }),
      { numRuns: 300 },
    );
  });
  it('keep the dates of what stands and of all that depends on nothing new', () => {
    for (const of of planned.slice(0, 40)) {
      const { chains } = of;
      const durations = plannedDays(of).map(days => Float64Array.of(days));
      const columns = () => chains.activities.map(() => new Float64Array(1));
      const trials = { n: 1, durations, starts: columns(), finishes: columns(), finish: new Float64Array(1) };
      chains.chunk(trials);
      const before = trials.starts.map(column => [...column]);
      chains.chunk({ ...trials, stands: () => true });
      expect(trials.starts.map(column => [...column])).toEqual(before);
    }
  });
});

describe('plans that chains cannot tell', () => {
  it('are those with crews that vary by date and those with most lags', () => {
    for (const [problem, cannot] of [
      [{ capacityChanges: [{ from: '2027-03-03', to: '2027-03-04', capacity: 1 }] }, true],
      [{}, false],
    ] as const) {
      const given: ScheduleProblem = {
        horizonStart: '2027-03-01',
        calendars: planned[0]?.problem.calendars ?? {},
        resources: [{ id: 'crew', title: 'Crew', capacity: 2, ...problem }],
        activities: [
          { id: 'a', title: 'A', stage: 's', calendar: 'five', workDays: 3, crewSize: 1, uses: { crew: 1 } },
          { id: 'b', title: 'B', stage: 's', calendar: 'five', workDays: 2, crewSize: 1, uses: { crew: 1 } },
        ],
        relationships: [{ from: 'a', to: 'b', kind: 'SS', lag: 1 }],
      };
      const told = (of: ScheduleProblem) => chainScheduler(of, schedule(of, { schedules: 20, seed: 1 }));
      expect(told(given) === undefined).toBe(cannot);
      const bound = { from: 'a', to: 'b', kind: 'SS', lag: 1, maximumLag: 2 } as const;
      expect(told({ ...given, relationships: [bound] })).toBeUndefined();
    }
  });
});
