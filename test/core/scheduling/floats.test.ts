import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { networkTimes } from '../../../core/network';
import { schedule, verifySchedule, type ScheduleProblem } from '../../../core/scheduling';
import { solved } from './dates';
import { after, problemOf, work } from './problems';
import { randomProblem } from './random-problems';

const crews = (capacity: number) => ({ resources: [{ id: 'crew', title: 'Crew', capacity }] });
const one = crews(1);
const uses = { crew: 1 };
const floats = (problem: ScheduleProblem) =>
  solved(problem).activities.map(a => `${a.id} ${a.totalFloat} ${a.freeFloat} ${a.critical}`);

describe('floats under resources', () => {
  it('without the crew B would have float; with one crew it has none', () => {
    const activities = [work('A', 5, { uses }), work('B', 3, { uses })];
    expect(floats(problemOf(activities, [], crews(2)))).toEqual(['A 0 0 true', 'B 2 2 false']);
    expect(floats(problemOf(activities, [], one))).toEqual(['A 0 0 true', 'B 0 0 true']);
  });
  it('floats count the work days of the activity, the weekend between left out', () => {
    expect(floats(problemOf([work('A', 8), work('B', 3)]))).toEqual(['A 0 0 true', 'B 5 5 false']);
  });
  it('a deadline earlier than the finish takes float away', () => {
    expect(floats(problemOf([work('A', 8), work('B', 3, { deadline: '2027-03-05' })]))).toEqual([
      'A 0 0 true',
      'B 2 2 false',
    ]);
  });
  it('what waits for a season has float up to it', () => {
    const problem = problemOf(
      [
        work('A', 3),
        work('tow', 2, { calendar: 'all', windows: [{ from: '2027-03-15', to: '2027-03-20' }] }),
      ],
      [after('A', 'tow')],
    );
    expect(floats(problem)).toEqual(['A 7 7 false', 'tow 0 0 true']);
  });
  it('the critical chain runs through the crew from the first to the last', () => {
    const problem = problemOf(
      [work('A', 5, { uses }), work('B', 3, { uses }), work('C', 2), work('D', 1)],
      [after('B', 'C'), after('A', 'D')],
      one,
    );
    expect(solved(problem).criticalChain).toEqual(['B', 'A', 'D']);
  });

  it('every float can be used: started that much later, the project still finishes the same day', () => {
    fc.assert(
      fc.property(randomProblem(7, 4), fc.nat(6), (problem, which) => {
        const result = schedule(problem, { schedules: 300, seed: 1 });
        const activity = result.activities[which];
        if (!activity || activity.totalFloat === 0 || problem.activities[which]?.workDays === 0) return;
        const later = lateStart(problem, which, activity.start, activity.totalFloat);
        if (later === undefined) return;
        const delayed = {
          ...problem,
          activities: problem.activities.map((a, i) => (i === which ? { ...a, notBefore: later } : a)),
        };
        const again = schedule(delayed, { schedules: 3000, seed: 2 });
        expect(verifySchedule(delayed, again)).toEqual([]);
        expect(again.calendarDays).toBeLessThanOrEqual(result.calendarDays ?? 0);
      }),
      { numRuns: 150 },
    );
  });

  it('without resources they are the floats of the network', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 3, maxLength: 9 }),
        fc.infiniteStream(fc.nat(1000)),
        (days, draws) => {
          const draw = (n: number) => (Number(draws.next().value) || 0) % n;
          const relationships = days.flatMap((_, i) => (i === 0 ? [] : [after(`${draw(i)}`, `${i}`)]));
          const problem = problemOf(
            days.map((n, i) => work(`${i}`, n, { calendar: 'all' })),
            relationships,
          );
          const network = networkTimes({
            activities: days.map((duration, i) => ({ id: `${i}`, title: `${i}`, duration })),
            relationships,
          });
          expect(solved(problem).activities.map(a => [a.id, a.totalFloat, a.freeFloat])).toEqual(
            network.activities?.map(t => [t.id, t.totalFloat, t.freeFloat]),
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** The date some work days after a start on the activity's own open days, when they are simply every day. */
function lateStart(problem: ScheduleProblem, which: number, start: string, days: number): string | undefined {
  const activity = problem.activities[which];
  if (activity?.calendar !== 'all' || activity.closures?.length || activity.uses?.['crane']) return undefined;
  return new Date(Date.parse(`${start}T00:00:00Z`) + days * 86400000).toISOString().slice(0, 10);
}
