import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  leastCrew,
  levellingSteps,
  levelSchedule,
  schedule,
  sumOfSquares,
  unitsHired,
  verifySchedule,
  type ScheduleProblem,
} from '../../../core/scheduling';
import { randomProblem } from './random-problems';
import { after, problemOf, work } from './problems';

// Eleven activities with one resource, from teaching slides "Allocate and level resources" (KSU, scribd 803324316):
// id, duration, predecessors, units. Their early profile has the sum 111 and the sum of squares 743. The least sum
// of squares 701, the least peak 8 and the least sum of squares at that peak, 703, were found by enumerating all
// 3,185 schedules.
const rows = 'A 3 - 3;B 5 - 2;C 6 A 3;D 2 A 4;E 3 D 2;F 3 D 1;G 4 B 3;H 5 G 2;I 4 C 3;J 2 IEF 4;K 3 J 5'
  .split(';')
  .map(row => row.split(' '));
const slides: ScheduleProblem = problemOf(
  rows.map(([id = '', days, , units]) =>
    work(id, Number(days), { calendar: 'all', uses: { crew: Number(units) } }),
  ),
  rows.flatMap(([id = '', , before = '-']) =>
    before === '-' ? [] : Array.from(before).map(from => after(from, id)),
  ),
  { resources: [{ id: 'crew', title: 'Crew', capacity: 99 }] },
);
const options = { schedules: 200, seed: 1 };
const unitsOf = (result: ReturnType<typeof schedule>) => result.profiles['crew']?.units ?? [];

describe('levelling of the eleven printed activities', () => {
  it('the early profile has the printed sums', () => {
    const early = unitsOf(schedule(slides, options));
    expect([early.length, early.reduce((a, b) => a + b, 0), sumOfSquares(early)]).toEqual([18, 111, 743]);
  });

  it('the least sum of squares is 701', () => {
    const result = levelSchedule(slides, { ...options, objective: 'squares' });
    expect([result.calendarDays, sumOfSquares(unitsOf(result))]).toEqual([18, 701]);
    expect(verifySchedule(slides, result)).toEqual([]);
  });

  it('the least peak is 8, and 703 the least sum of squares at that peak', () => {
    const units = unitsOf(levelSchedule(slides, { ...options, objective: 'peak' }));
    expect([Math.max(...units), sumOfSquares(units)]).toEqual([8, 703]);
  });

  it('eight units are the fewest that finish within the 18 days', () => {
    const least = leastCrew(slides, { ...options, finishBy: '2027-03-18', unitCosts: { crew: 100 } });
    expect([least?.units, least?.cost, least?.result.finish]).toEqual([{ crew: 8 }, 800, '2027-03-18']);
  });

  it('three days more need a smaller crew still, and a day too few cannot be had', () => {
    const relaxed = leastCrew(slides, { ...options, finishBy: '2027-03-21', unitCosts: { crew: 1 } });
    expect(relaxed?.units['crew']).toBeLessThan(8);
    expect(leastCrew(slides, { ...options, finishBy: '2027-03-17', unitCosts: { crew: 1 } })).toBeUndefined();
  });
});

describe('levelling', () => {
  it('hires fewer units than the early schedule, and says that levelling holds what it moved', () => {
    const early = unitsOf(schedule(slides, options));
    const result = levelSchedule(slides, { ...options, objective: 'hire-and-release' });
    expect(unitsHired(unitsOf(result))).toBeLessThan(unitsHired(early));
    expect(result.activities.some(a => a.heldBy.some(h => h.kind === 'levelling'))).toBe(true);
  });

  it('tells the use before and after as the profiles do, and the same seed gives the same answer', () => {
    const run = () => levelSchedule(slides, { ...options, objective: 'peak' });
    const first = run();
    const units = unitsOf(first);
    expect(first.uses?.after['crew']).toEqual({
      squares: sumOfSquares(units),
      hired: unitsHired(units),
      peak: Math.max(...units),
    });
    expect(first.uses?.before['crew']?.squares).toBe(743);
    expect(run()).toEqual(first);
  });

  it('weighs resources by what hiring them costs: of two that cannot both be even, the dear one is', () => {
    const problem = problemOf(
      [
        work('B', 4, { calendar: 'all', uses: { crane: 1, paint: 1 } }),
        work('C', 4, { calendar: 'all', uses: { paint: 1 }, deadline: '2027-03-04' }),
        work('D', 4, { calendar: 'all', uses: { crane: 1 }, notBefore: '2027-03-05' }),
      ],
      [],
      {
        resources: [
          { id: 'crane', title: 'Crane', capacity: 9 },
          { id: 'paint', title: 'Paint', capacity: 9 },
        ],
      },
    );
    // B lies beside C, which doubles the paint crew, or beside D, which doubles the crane.
    const peaks = (weights: Record<string, number>) => {
      const { uses } = levelSchedule(problem, { ...options, objective: 'peak', weights });
      return [uses?.after['crane']?.peak, uses?.after['paint']?.peak];
    };
    expect([peaks({ crane: 100, paint: 1 }), peaks({ crane: 1, paint: 100 })]).toEqual([
      [1, 2],
      [2, 1],
    ]);
  });

  it('stopped as soon as there is a schedule it still gives one that keeps every rule', () => {
    let isFound = false;
    const stopped = levelSchedule(slides, {
      ...options,
      objective: 'squares',
      onProgress: () => {
        isFound = true;
      },
      shouldStop: () => isFound,
    });
    expect([verifySchedule(slides, stopped), stopped.activities.length]).toEqual([[], 11]);
  });

  it('goes on a round at a time and tells how far it is', () => {
    const steps = levellingSteps(slides, { ...options, objective: 'squares', rounds: 5 });
    const told: string[] = [];
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) told.push(`${step.value.done}/${step.value.of}`);
    expect(told.slice(0, 3)).toEqual(['0/5', '1/5', '2/5']);
    expect(step.value.calendarDays).toBe(18);
  });

  it('a weekend without work is no swing: an even crew over two weeks hires once', () => {
    const problem = problemOf([work('A', 10, { uses: { crew: 2 } })], [], {
      resources: [{ id: 'crew', title: 'Crew', capacity: 2 }],
    });
    const result = levelSchedule(problem, { ...options, objective: 'hire-and-release' });
    expect(result.finish).toBe('2027-03-12');
  });

  it('keeps the finish and every rule of random problems, and never makes the figure worse', () => {
    fc.assert(
      fc.property(randomProblem(8, 4), problem => {
        const plain = schedule(problem, { schedules: 100, seed: 1 });
        if (plain.status === 'infeasible') return;
        const result = levelSchedule(problem, { schedules: 100, seed: 1, objective: 'squares', rounds: 3 });
        expect(verifySchedule(problem, result)).toEqual([]);
        expect(result.calendarDays).toBe(plain.calendarDays);
        const squares = (r: typeof plain) =>
          Object.values(r.profiles).reduce((sum, p) => sum + sumOfSquares(p.units), 0);
        for (const { id } of problem.resources) {
          const units = result.profiles[id]?.units ?? [];
          expect(result.uses?.after[id]).toMatchObject({
            squares: sumOfSquares(units),
            peak: Math.max(0, ...units),
          });
        }
        if (!problem.resources.some(r => r.heldOnIdleDays))
          expect(squares(result)).toBeLessThanOrEqual(squares(plain));
      }),
      { numRuns: 60 },
    );
  });
});

describe('the least crew of two trades', () => {
  const two = problemOf(
    [
      work('A', 2, { uses: { burners: 1 } }),
      work('B', 2, { uses: { burners: 1 } }),
      work('C', 2, { uses: { burners: 1, riggers: 1 } }),
      work('D', 2, { uses: { riggers: 2 } }),
      work('E', 1, { uses: { riggers: 1, divers: 1 } }),
    ],
    [after('A', 'E')],
    {
      resources: [
        { id: 'burners', title: 'Burners', capacity: 3 },
        { id: 'riggers', title: 'Riggers', capacity: 4 },
        { id: 'divers', title: 'Divers', capacity: 2 },
      ],
    },
  );
  const asked = { ...options, finishBy: '2027-03-08', unitCosts: { burners: 400, riggers: 300 } };
  /** Whether the work can be done by the last day with so many of each. */
  const isEnough = (burners: number, riggers: number) => {
    const [a, b, c] = two.resources;
    if (!a || !b || !c) throw new Error('three trades');
    const resources = [{ ...a, capacity: burners }, { ...b, capacity: riggers }, c];
    const { finish } = schedule({ ...two, resources }, options);
    return finish !== undefined && finish <= asked.finishBy;
  };

  it('is in time, and with one person fewer of any trade it would not be', () => {
    const least = leastCrew(two, asked);
    const { burners = 0, riggers = 0, ...others } = least?.units ?? {};
    expect(others).toEqual({});
    expect(least?.cost).toBe(400 * burners + 300 * riggers);
    expect(least?.result.finish?.localeCompare(asked.finishBy)).toBeLessThanOrEqual(0);
    expect(verifySchedule(two, least?.result ?? schedule(two, options))).toEqual([]);
    expect([
      isEnough(burners, riggers),
      isEnough(burners - 1, riggers),
      isEnough(burners, riggers - 1),
    ]).toEqual([true, false, false]);
  });

  it('costs no more than any other crew that is in time', () => {
    const costs = [1, 2, 3].flatMap(burners =>
      [1, 2, 3, 4]
        .filter(riggers => isEnough(burners, riggers))
        .map(riggers => 400 * burners + 300 * riggers),
    );
    expect(leastCrew(two, asked)?.cost).toBe(Math.min(...costs));
  });

  it('is one of each where the work has time to go one after the other, and costs what one of each costs', () => {
    // Six and five work days of single work, and two riggers for D: by Friday 2 April there are 25.
    const least = leastCrew(two, { ...asked, finishBy: '2027-04-02' });
    expect([least?.units, least?.cost]).toEqual([{ burners: 1, riggers: 2 }, 400 + 2 * 300]);
  });

  it('stopped before there is a schedule it names none', () => {
    expect(leastCrew(two, { ...asked, shouldStop: () => true })).toBeUndefined();
  });

  it('of trades of the same price, the first by name is tried first', () => {
    const alike = { ...asked, unitCosts: { burners: 300, riggers: 300 } };
    const { burners = 0, riggers = 0 } = leastCrew(two, alike)?.units ?? {};
    expect([isEnough(burners, riggers), isEnough(burners - 1, riggers)]).toEqual([true, false]);
    const turned = { ...two, resources: two.resources.toReversed() };
    expect(leastCrew(turned, alike)?.units).toEqual({ burners, riggers });
  });
});

describe('the least crew of random problems', () => {
  const PROBLEMS = 36;
  /** Problems with plenty of each resource, and a last day some days after the earliest finish. */
  const given = fc.sample(randomProblem(9, 3), { numRuns: PROBLEMS, seed: 5 }).flatMap((drawn, k) => {
    const problem: ScheduleProblem = {
      ...drawn,
      resources: drawn.resources.map(({ capacityChanges: _, ...resource }) => ({ ...resource, capacity: 6 })),
      activities: drawn.activities.map(({ place: _, ...activity }) => activity),
      exclusions: [],
    };
    const { finish } = schedule(problem, options);
    if (finish === undefined) return [];
    const last = Date.parse(finish) + (k % 3) * 86_400_000;
    return [{ problem, finishBy: new Date(last).toISOString().slice(0, 10) }];
  });
  const unitCosts = { crew: 3, crane: 5 };
  // Without rounds levelling only settles everything once: then there is something left to be spared.
  const few = { ...options, rounds: 0 };

  it('is never more than the peaks of the levelled schedule, is kept day by day, and no unit of it can be spared', () => {
    let spared = 0;
    for (const { problem, finishBy } of given) {
      const asked = { ...few, finishBy, unitCosts };
      const least = leastCrew(problem, asked);
      const levelled = levelSchedule(problem, { ...few, finishBy, objective: 'peak', weights: unitCosts });
      if (least === undefined) throw new Error('all units at hand finish in time');
      const { units, result, cost } = least;
      const peak = (id: string) => levelled.resourcePeaks[id]?.units ?? 0;
      expect(cost).toBe(3 * (units['crew'] ?? 0) + 5 * (units['crane'] ?? 0));
      expect(verifySchedule(problem, result)).toEqual([]);
      expect(result.finish?.localeCompare(finishBy)).toBeLessThanOrEqual(0);
      expect(result.uses?.before).toEqual(levelled.uses?.before);
      for (const id of ['crew', 'crane']) {
        const own = units[id] ?? 0;
        expect(own).toBeLessThanOrEqual(peak(id));
        if (own < peak(id)) spared++;
        expect(result.resourcePeaks[id]?.units ?? 0).toBeLessThanOrEqual(own);
        expect(result.uses?.after[id]?.peak).toBe(result.resourcePeaks[id]?.units ?? 0);
        if (own === 0) continue;
        const resources = problem.resources.map(resource => ({
          ...resource,
          capacity: (units[resource.id] ?? 0) - (resource.id === id ? 1 : 0),
        }));
        const { finish = '9999-12-31' } = schedule({ ...problem, resources }, options);
        expect(finish.localeCompare(finishBy)).toBe(1);
      }
    }
    expect(spared).toBeGreaterThan(1);
  });
});
