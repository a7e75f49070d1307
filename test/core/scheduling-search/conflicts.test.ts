import { describe, expect, it } from 'vitest';
import {
  searchSchedule,
  type SearchActivity,
  type SearchProblem,
  type SearchRelationship,
} from '../../../core/scheduling/search';

const HORIZON = 30;
const options = { schedules: 20, seed: 1 };
const task = (duration: number, more: Partial<SearchActivity> = {}): SearchActivity => ({
  ...{ duration, demands: [1], ...more },
});
const after = (from: number, to: number, more: Partial<SearchRelationship> = {}): SearchRelationship => ({
  ...{ from, to, kind: 'FS', minimumLag: 0, ...more },
});
/** A problem with one crew of two. */
const problem = (
  activities: readonly SearchActivity[],
  relationships: readonly SearchRelationship[] = [],
): SearchProblem => ({
  ...{ horizon: HORIZON, activities, relationships, calendars: [], exclusions: [] },
  resources: [{ capacity: 2 }],
});
const searched = (...parts: Parameters<typeof problem>) => searchSchedule(problem(...parts), options);

describe('what stands in the way of any schedule', () => {
  it('is seen at once where an activity needs more than there is, unless it is fixed or takes no time', () => {
    expect(searched([task(2), task(3, { demands: [3] })])).toEqual({
      ...{ status: 'infeasible', lowerBound: 0, schedules: 0 },
      conflict: { kind: 'demand above capacity', activities: [1], relationships: [], resources: [0] },
    });
    expect(searched([task(2), task(0, { demands: [3] })])).toMatchObject({ status: 'optimal', finish: 2 });
    expect(searched([task(3, { demands: [3], fixedStart: 0 }), task(2)]).finish).toBe(5);
  });

  it('is seen at once where relationships go round, and only what goes round is named', () => {
    const round = [after(0, 1), after(1, 2), after(2, 3), after(3, 1, { kind: 'SS' }), after(3, 4)];
    const found = searched([task(1), task(1), task(1), task(1), task(1)], round);
    expect(found.status).toBe('infeasible');
    expect(found.conflict?.kind).toBe('loop of relationships');
    expect(found.conflict?.activities).toEqual(expect.arrayContaining([1, 2, 3]));
    expect(found.conflict?.activities).not.toContain(0);
    expect(found.conflict?.relationships).toEqual(expect.arrayContaining([1, 2, 3]));
    expect(found.conflict?.relationships).not.toContain(0);
  });

  it('is the chain that leads past a latest finish: 2 + 3 + 2 days do not end by the sixth', () => {
    const chain = [after(0, 1), after(1, 2), after(3, 2)];
    const by = (latestFinish: number) =>
      searched([task(2), task(3), task(2, { latestFinish }), task(1)], chain);
    expect(by(6)).toMatchObject({
      status: 'infeasible',
      conflict: {
        ...{ kind: 'no room between earliest start and latest finish', resources: [] },
        ...{ activities: [2, 1, 0], relationships: [0, 1] },
      },
    });
    expect(by(7)).toMatchObject({ status: 'optimal', finish: 7 });
  });

  it('is a single activity that may start on no day', () => {
    const allowed = (...days: number[]) =>
      Uint8Array.from({ length: HORIZON }, (_, day) => +days.includes(day));
    expect(searched([task(2), task(2, { startAllowed: allowed() })])).toMatchObject({
      status: 'infeasible',
      conflict: { kind: 'no allowed start', activities: [1], relationships: [], resources: [] },
    });
    expect(searched([task(2, { latestFinish: 5, startAllowed: allowed(4) })])).toMatchObject({
      conflict: { kind: 'no allowed start', activities: [0] },
    });
    expect(searched([task(2, { startAllowed: allowed(4) })])).toMatchObject({ status: 'optimal', finish: 6 });
  });

  it('is nothing in a problem without activities', () => {
    expect(searched([])).toMatchObject({ status: 'optimal', finish: 0, lowerBound: 0, schedules: 0 });
  });
});
