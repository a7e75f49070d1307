import { describe, expect, it } from 'vitest';
import { searchSchedule } from '../../../core/scheduling/search';
import { exhaustiveOptimum } from './exhaustive';
import { randomProblem, type Ingredients } from './random-problem';
import { finishDay, scheduleFaults } from './schedule-faults';

const KINDS: Readonly<Record<string, Ingredients>> = {
  plain: { activities: 5 },
  'with calendars': { activities: 4, hasCalendars: true },
  'with four kinds of relationship': { activities: 4, hasKinds: true, hasCalendars: true },
  'with windows and varying capacities': { activities: 4, hasWindows: true, hasVaryingCapacity: true },
  'with maximum lags': { activities: 4, hasKinds: true, hasMaximums: true },
  'with everything': {
    activities: 4,
    hasCalendars: true,
    hasKinds: true,
    hasMaximums: true,
    hasWindows: true,
    hasVaryingCapacity: true,
    hasExclusions: true,
  },
};

describe('on 300 small random problems the search finds the optimum that trying everything finds', () => {
  for (const [name, ingredients] of Object.entries(KINDS)) {
    it(`${name}, 50 problems`, () => {
      let [tried, solvable] = [0, 0];
      for (let seed = 1; seed <= 50; seed++) {
        tried++;
        const problem = randomProblem(100 + seed, ingredients);
        const result = searchSchedule(problem, { schedules: 20_000, seed });
        const upTo = result.finish ?? 60;
        const expected = exhaustiveOptimum(problem, upTo);
        expect({ seed, status: result.status, finish: result.finish }).toEqual({
          seed,
          status: expected === undefined ? 'infeasible' : 'optimal',
          finish: expected,
        });
        if (!result.starts) continue;
        solvable++;
        expect(scheduleFaults(problem, result.starts)).toEqual([]);
        const finishes = [...result.starts].map((start, i) => finishDay(problem, i, start));
        expect([...(result.finishes ?? [])]).toEqual(finishes);
      }
      expect(solvable).toBeGreaterThanOrEqual(0.2 * tried);
    });
  }
});
