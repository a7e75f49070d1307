import { bugs } from './bug';

/** Calendars, the search, its proof, and what holds each activity. */
export const scheduleBugs = bugs(
  [
    'extra work days are worked',
    'core/calendar/day-flags.ts',
    'for (const date of calendar.extraWorkDays) set(parseIsoDate(date), 1);',
    '',
    'test/core/scheduling/calendar-cases.test.ts',
    'an extra work day on a Saturday',
  ],
  [
    'a window shorter than the tow is named in one sentence',
    'core/scheduling/diagnose/window-conflicts.ts',
    'if (longest.days >= needed) return [];',
    'return [];',
    'test/core/scheduling/infeasible.test.ts',
    'a window shorter than the tow',
  ],
  [
    'the day-by-day check sees two crews where there is one',
    'core/scheduling/verify/check-resources.ts',
    '?.capacity ?? resource.capacity;',
    '?.capacity ?? resource.capacity + 1;',
    'test/core/scheduling/verify.test.ts',
    'notices verify/capacity',
  ],
  [
    'no schedule is below a lower bound',
    'core/scheduling/verify/check-sums.ts',
    '(result.lowerBoundDays ?? 0) > days',
    '(result.lowerBoundDays ?? 0) > days + 900',
    'test/core/scheduling/verify.test.ts',
    'notices verify/bound',
  ],
  [
    'work that has happened stays as it happened',
    'core/scheduling/compile/progress.ts',
    'dayOf(activity.actualStart) - first;',
    'dayOf(activity.actualStart) - first + 1;',
    'test/core/scheduling/progress.test.ts',
    'what is finished stays',
  ],
  [
    'levelling of the worked example comes to 701',
    'core/scheduling/level/objective.ts',
    'sum + n * n',
    'sum + n',
    'test/core/scheduling/levelling.test.ts',
    'the early profile has the printed sums',
  ],
  [
    'the critical chain runs through the crew',
    'core/scheduling/explain/critical-chain.ts',
    "if (holding.kind === 'resource' || holding.kind === 'crew-limit') return holding.activities;",
    '',
    'test/core/scheduling/floats.test.ts',
    'the critical chain runs through the crew',
  ],
);
