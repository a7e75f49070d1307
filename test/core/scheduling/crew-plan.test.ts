import { describe, expect, it } from 'vitest';
import { schedule, searchCrewPlan, verifySchedule, type CrewPlan } from '../../../core/scheduling';
import { after, calendars, problemOf, work } from './problems';
import { directCost, problemFrom, readTimeCosts as read } from './time-cost';

describe('time and cost', () => {
  // Lecture text in the Nemotron-CC-Math collection: normal/crash weeks and costs, overhead 2,800 a week. Least direct
  // and total cost by exhaustive enumeration, at 26, 22, 19 and 18 weeks also by linear programming with HiGHS.
  it('seven activities with a weekly overhead: the whole curve from 26 to 18 weeks, the optimum at 19', () => {
    const printed = read(
      'A 8/6 15000/20000 -;B 10/7 20000/30000 -;C 5/4 8000/14000 A;D 6/4 11000/15000 A;E 8/5 9000/15000 A;F 12/8 3000/4000 CBD;G 5/4 5000/8000 E',
    );
    const result = searchCrewPlan(problemFrom(printed), {
      schedules: 10,
      seed: 1,
      cost: (plan, { calendarDays }) => directCost(printed, plan) + 2800 * calendarDays,
    });
    const curve = result.curve.map(
      p => `${p.calendarDays}: ${Math.round(p.cost - 2800 * p.calendarDays)}/${Math.round(p.cost)}`,
    );
    expect(curve.reverse()).toEqual([
      '26: 71000/143800',
      '25: 71250/141250',
      '24: 71500/138700',
      '23: 71750/136150',
      '22: 72000/133600',
      '21: 74000/132800',
      '20: 76500/132500',
      '19: 79000/132200',
      '18: 89000/139400',
    ]);
    expect([result.best?.calendarDays, result.isComplete]).toEqual([19, true]);
  });

  // tutorsglobe problem 5978513: normal/crash days and costs, 70 a day; results by exhaustive enumeration.
  const printed = read(
    'A 6/5 60/90 -;B 7/4 50/150 -;C 6/4 100/200 A;D 7/7 30/30 A;E 5/4 70/85 B;F 9/7 40/120 C;G 7/4 50/230 ED',
  );
  const cost = (plan: CrewPlan, { calendarDays }: { calendarDays: number }) =>
    directCost(printed, plan) + 70 * calendarDays;

  it('seven activities with a daily cost: 21 to 16 days, the optimum at 19', () => {
    const result = searchCrewPlan(problemFrom(printed), { schedules: 10, seed: 1, cost });
    const curve = result.curve.map(
      p => `${p.calendarDays}: ${Math.round(p.cost - 70 * p.calendarDays)}/${Math.round(p.cost)}`,
    );
    expect(curve.reverse()).toEqual([
      '21: 400/1870',
      '20: 430/1830',
      '19: 470/1800',
      '18: 570/1830',
      '17: 680/1870',
      '16: 790/1910',
    ]);
    expect([result.best?.calendarDays, result.best?.cost]).toEqual([19, 1800]);
    expect(result.frontier.map(p => p.calendarDays)).toEqual([16, 17, 18, 19]);
  });

  it('a last day takes the cheapest plan that keeps it; one that nothing keeps takes none', () => {
    const by = (finishBy: string) =>
      searchCrewPlan(problemFrom(printed), { schedules: 10, seed: 1, cost, finishBy }).best;
    expect([by('2027-03-17')?.cost, by('2027-03-15')]).toEqual([1870, undefined]);
  });

  it('when there are too many plans to try all, the search still finds the same optimum', () => {
    const result = searchCrewPlan(problemFrom(printed), { schedules: 10, seed: 1, cost, trials: 400 });
    expect([result.isComplete, result.tried < 576, result.best?.cost]).toEqual([false, true, 1800]);
  });
});

describe('a search that cannot try all plans', () => {
  const activities = Array.from({ length: 8 }, (_, i) => {
    const { workDays: _days, ...rest } = work(`${i}`, 0, { calendar: 'all' });
    const modes = [1, 2, 3].map(n => ({ crewSize: n, workDays: 7 - 2 * n, uses: { crew: n } }));
    return { ...rest, modes };
  });
  const problem = problemOf(activities, [], { resources: [{ id: 'crew', title: 'Crew', capacity: 24 }] });
  const cost = ({ modes }: CrewPlan) => 10 + modes.reduce((sum, mode) => sum + mode, 0);

  it('tries as many plans as it is asked for beside the planned ones, each once', () => {
    const plans: string[] = [];
    const result = searchCrewPlan(problem, {
      ...{ schedules: 5, seed: 1, trials: 60, starts: ['2027-03-01', '2027-03-02'] },
      cost: plan => {
        plans.push(JSON.stringify(plan));
        return cost(plan);
      },
    });
    // 3 crews for each of 8 activities and two first days are 13 122 plans: two as planned, and 60 more.
    expect([result.tried, new Set(plans).size, result.isComplete]).toEqual([62, 62, false]);
  });

  it('stops when it is told to, with what it has', () => {
    let asked = 0;
    const result = searchCrewPlan(problem, {
      ...{ schedules: 5, seed: 1, trials: 500, cost },
      onProgress: ({ schedules }) => {
        asked = schedules;
      },
      shouldStop: () => asked >= 7,
    });
    expect([result.tried, result.isComplete]).toEqual([7, false]);
    expect(result.best).toBeDefined();
  });

  it('ends where there is hardly a new plan left to draw', () => {
    const few = problemOf(activities.slice(0, 2), [], {
      resources: [{ id: 'crew', title: 'Crew', capacity: 24 }],
    });
    const result = searchCrewPlan(few, { schedules: 5, seed: 1, trials: 8, cost });
    expect(result.tried).toBeLessThanOrEqual(9);
    expect(result.best?.plan.modes).toEqual([0, 0]);
    expect(searchCrewPlan(few, { schedules: 5, seed: 1, trials: 9, cost })).toMatchObject({
      tried: 9,
      isComplete: true,
    });
  });
});

describe('shifts and first day', () => {
  const six = { ...calendars['six'], id: 'five', title: 'Saturdays too' };
  const problem = problemOf(
    [
      work('cut', 9),
      work('tow', 4, { calendar: 'all', consecutive: { weatherDays: 0 }, closures: ['stop'] }),
    ],
    [after('cut', 'tow')],
    {
      closures: { stop: { id: 'stop', title: 'Port closed', from: '2027-03-13', to: '2027-03-20' } },
    },
  );

  it('working Saturdays catches the window before the closure, and the cost says whether that pays', () => {
    const shifts = [
      {
        id: 'saturdays',
        title: 'Saturdays',
        calendars: {
          five: {
            ...six,
            weekdays: [1, 2, 3, 4, 5, 6] as const,
            shiftHours: 8,
            federalHolidays: false,
            holidays: [],
            closures: [],
            extraWorkDays: [],
          },
        },
      },
    ];
    const run = (premium: number, starts: readonly string[]) =>
      searchCrewPlan(problem, {
        schedules: 10,
        seed: 1,
        shifts,
        starts,
        cost: (plan, timed) => timed.calendarDays * 1000 + (plan.shift === undefined ? 0 : premium),
      });
    // Nine work days from Monday 1 March end on Thursday 11 March, on Saturdays too on Wednesday 10 March: four days
    // of tow do not fit before the 13th either way. Started on Monday 22 February they end on 3 or 4 March.
    expect(run(500, ['2027-03-01']).best?.plan.shift).toBeUndefined();
    const early = run(500, ['2027-02-22', '2027-03-01']).best;
    expect([early?.plan.start, early?.plan.shift, early?.finish]).toEqual([
      '2027-02-22',
      'saturdays',
      '2027-03-07',
    ]);
    expect(run(5000, ['2027-02-22']).best?.finish).toBe('2027-03-08');
  });

  it('a plan of the curve becomes a full schedule that keeps every rule', () => {
    const result = searchCrewPlan(problem, {
      schedules: 10,
      seed: 1,
      cost: (_, timed) => (verifySchedule(problem, timed.result()).length === 0 ? 1 : 99),
    });
    expect(result.best?.cost).toBe(1);
    expect(schedule(problem, { schedules: 10, seed: 1 }).finish).toBe(result.best?.finish);
  });
});
