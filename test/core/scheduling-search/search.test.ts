import { describe, expect, it } from 'vitest';
import { searchSchedule } from '../../../core/scheduling/search';
import { randomProblem, type Ingredients } from './random-problem';
import { finishDay, scheduleFaults } from './schedule-faults';

const KINDS_OF_PROBLEM: Readonly<Record<string, Ingredients>> = {
  plain: { activities: 20 },
  'plain with many resources': { activities: 15, resources: 9 },
  'with calendars': { activities: 15, hasCalendars: true },
  'with four kinds of relationship': { activities: 15, hasKinds: true },
  'with windows and dates': { activities: 15, hasWindows: true, hasCalendars: true },
  'with varying capacities': { activities: 15, hasVaryingCapacity: true, hasCalendars: true },
  'with exclusions and a fixed start': { activities: 12, hasExclusions: true, hasFixed: true },
  'with everything but maximum lags': {
    activities: 15,
    hasCalendars: true,
    hasKinds: true,
    hasWindows: true,
    hasVaryingCapacity: true,
    hasExclusions: true,
    resources: 6,
  },
  'with maximum lags': { activities: 12, hasMaximums: true, hasKinds: true },
  'with maximum lags on calendars': { activities: 12, hasMaximums: true, hasKinds: true, hasCalendars: true },
};

describe('every schedule handed out keeps every condition, day by day', () => {
  for (const [name, ingredients] of Object.entries(KINDS_OF_PROBLEM)) {
    it(`in problems ${name}`, () => {
      let [tried, found] = [0, 0];
      for (let seed = 1; seed <= 40; seed++) {
        tried++;
        const problem = randomProblem(seed, ingredients);
        const result = searchSchedule(problem, { schedules: 300, seed });
        if (!result.starts) continue;
        found++;
        expect({ seed, faults: scheduleFaults(problem, result.starts) }).toEqual({ seed, faults: [] });
        expect(result.finish).toBeGreaterThanOrEqual(result.lowerBound);
        const finishes = [...result.starts].map((start, i) => finishDay(problem, i, start));
        expect([...(result.finishes ?? [])]).toEqual(finishes);
        expect(result.finish).toBe(Math.max(...finishes));
      }
      const share = ingredients.hasMaximums === true || ingredients.hasFixed === true ? 0.25 : 0.75;
      expect(found).toBeGreaterThanOrEqual(share * tried);
    });
  }
});

describe('the search', () => {
  it('gives the same schedule for the same seed', () => {
    const problem = randomProblem(7, { activities: 30, resources: 4 });
    const once = searchSchedule(problem, { schedules: 500, seed: 3 });
    expect(searchSchedule(problem, { schedules: 500, seed: 3 })).toEqual(once);
  });

  it('of more than a thousand activities, many of which may begin at once, keeps every condition near the bound', () => {
    const few = randomProblem(3, { activities: 1100 });
    const problem = { ...few, relationships: few.relationships.filter((_, r) => r % 8 === 0) };
    const result = searchSchedule(problem, { schedules: 60, seed: 1 });
    expect(result.starts && scheduleFaults(problem, result.starts)).toEqual([]);
    expect(result.finish).toBeLessThanOrEqual(1.15 * result.lowerBound);
  });

  it('with more resources than are compared two by two keeps every condition', () => {
    const problem = randomProblem(5, { activities: 40, resources: 90, hasCalendars: true });
    const result = searchSchedule(problem, { schedules: 200, seed: 1 });
    expect(result.starts && scheduleFaults(problem, result.starts)).toEqual([]);
  });

  it('of nothing is done at once', () => {
    const nothing = {
      ...randomProblem(1, { activities: 2 }),
      activities: [],
      relationships: [],
      exclusions: [],
    };
    expect(searchSchedule(nothing, { schedules: 10, seed: 1 })).toMatchObject({
      status: 'optimal',
      finish: 0,
    });
  });
});
