import { describe, expect, it } from 'vitest';
import { fasterPlans, schedule, verifySchedule, type FasterPlan } from '../../../core/scheduling';
import { problemOf, work } from './problems';
import { directCost, problemFrom, readTimeCosts, type Printed } from './time-cost';

/** The plans found one after the other, each with its days and direct cost. */
function plansOf(printed: readonly Printed[]): { days: number; direct: number; plan: FasterPlan }[] {
  const problem = problemFrom(printed);
  const costOf = (activity: number, mode: number) =>
    directCost(printed, { modes: printed.map((_, i) => (i === activity ? mode : 0)), start: '' });
  const found = fasterPlans(problem, {
    schedules: 10,
    seed: 1,
    extraCost: (activity, from, to) => costOf(activity, to) - costOf(activity, from),
  });
  return [...found].flatMap(plan => {
    if (plan === undefined) return [];
    const days = (Date.parse(plan.finish) - Date.parse('2027-03-01')) / 86_400_000 + 1;
    return [{ days, direct: directCost(printed, { modes: plan.modes, start: '' }), plan }];
  });
}

describe('plans that finish earlier and earlier', () => {
  // tutorsglobe problem 5978513: normal/crash days and costs; least direct costs by exhaustive enumeration.
  const printed = readTimeCosts(
    'A 6/5 60/90 -;B 7/4 50/150 -;C 6/4 100/200 A;D 7/7 30/30 A;E 5/4 70/85 B;F 9/7 40/120 C;G 7/4 50/230 ED',
  );
  const least: Record<number, number> = { 21: 400, 20: 430, 19: 470, 18: 570, 17: 680, 16: 790 };

  it('begin with the planned crews, gain days with each step and end at the shortest', () => {
    const plans = plansOf(printed);
    expect(plans[0]?.days).toBe(21);
    expect(plans[0]?.direct).toBe(400);
    expect(plans.at(-1)?.days).toBe(16);
    plans.slice(1).forEach((plan, i) => expect(plan.days).toBeLessThan(plans[i]?.days ?? 0));
  });

  it('never cost less than the least possible, and the first steps cost just that', () => {
    const plans = plansOf(printed);
    for (const { days, direct } of plans) expect(direct).toBeGreaterThanOrEqual(least[days] ?? 0);
    expect(plans.slice(0, 3).map(({ days, direct }) => `${days}: ${direct}`)).toEqual([
      '21: 400',
      '20: 430',
      '19: 470',
    ]);
  });

  it('keep to the crews that there are: a larger crew that nobody has is not taken', () => {
    const { workDays: _, ...rest } = work('A', 0, { calendar: 'all' });
    const modes = [1, 2, 4].map(n => ({ crewSize: n, workDays: 8 / n, uses: { crew: n } }));
    const problem = problemOf([{ ...rest, modes }], [], {
      resources: [{ id: 'crew', title: 'Crew', capacity: 2 }],
    });
    const plans = [...fasterPlans(problem, { schedules: 10, seed: 1, extraCost: () => 1 })].flatMap(
      one => one ?? [],
    );
    expect(plans.map(plan => plan.modes)).toEqual([[0], [1]]);
    const result = schedule(problem, { schedules: 10, seed: 1, modes: [1] });
    expect([verifySchedule(problem, result), result.finish]).toEqual([[], plans.at(-1)?.finish]);
  });

  it('a problem with faults has none', () => {
    expect([
      ...fasterPlans(problemOf([work('A', 1.5)]), { schedules: 5, seed: 1, extraCost: () => 1 }),
    ]).toEqual([]);
  });
});
