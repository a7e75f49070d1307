import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { workDaysOf, type SearchActivity, type SearchProblem } from '../../../core/scheduling/search';
import {
  finishFrom,
  firstMomentBefore,
  lastMomentBefore,
  latestStart,
  leastMoment,
  mostMoment,
  NEVER,
  nextStart,
  previousStart,
  startForFinish,
} from '../../../core/scheduling/time';

const HORIZON = 24;

interface Drawn {
  readonly open: readonly boolean[];
  readonly allowed: readonly boolean[];
  readonly duration: number;
  readonly hasCalendar: boolean;
  readonly hasAllowed: boolean;
}

const days = fc.array(fc.boolean(), { minLength: HORIZON, maxLength: HORIZON });
/** Where starts are allowed one by one, they are worked out from the calendar, and no other calendar is given. */
const drawn: fc.Arbitrary<Drawn> = fc
  .record({
    open: days,
    allowed: days,
    duration: fc.integer({ min: 0, max: 6 }),
    rule: fc.constantFrom('calendar', 'allowed starts', 'none'),
  })
  .map(({ rule, ...of }) => ({
    ...of,
    hasCalendar: rule === 'calendar',
    hasAllowed: rule === 'allowed starts',
  }));
const moment = fc.integer({ min: 0, max: HORIZON });

function problemOf({ open, allowed, duration, hasCalendar, hasAllowed }: Drawn): SearchProblem {
  const activity: SearchActivity = {
    duration,
    demands: [],
    ...(hasCalendar ? { calendar: 0 } : {}),
    ...(hasAllowed ? { startAllowed: Uint8Array.from(allowed, Number) } : {}),
  };
  return {
    horizon: HORIZON,
    activities: [activity, { duration: 2, demands: [], fixedStart: 7 }],
    resources: [],
    relationships: [],
    calendars: [workDaysOf(open)],
    exclusions: [],
  };
}

/** Day by day: from the start on, each open day takes one day of work; undefined when the horizon ends before. */
function finishByHand({ open, duration, hasCalendar }: Drawn, start: number): number | undefined {
  let left = duration;
  let day = start;
  for (; left > 0; day++) {
    if (day >= HORIZON) return undefined;
    if (!hasCalendar || open[day] === true) left--;
  }
  return day;
}

/** Whether it may start on a day: open where it has a calendar, allowed where that is said. */
function mayStart({ open, allowed, duration, hasCalendar, hasAllowed }: Drawn, day: number): boolean {
  return (!hasCalendar || duration === 0 || open[day] === true) && (!hasAllowed || allowed[day] === true);
}

const starts = (of: Drawn) =>
  Array.from({ length: HORIZON }, (_, day) => day).filter(day => mayStart(of, day));

describe('moments of an activity, beside a count day by day', () => {
  it('finishes when the last of its work days is over', () => {
    fc.assert(
      fc.property(drawn, moment, (of, start) => {
        fc.pre(start < HORIZON);
        expect(finishFrom(problemOf(of), 0, start)).toBe(finishByHand(of, start) ?? NEVER);
      }),
    );
  });

  it('starts next on the first day it may, and before on the last', () => {
    fc.assert(
      fc.property(drawn, moment, (of, from) => {
        const problem = problemOf(of);
        expect(nextStart(problem, 0, from)).toBe(starts(of).find(day => day >= from) ?? NEVER);
        expect(previousStart(problem, 0, from)).toBe(starts(of).findLast(day => day <= from) ?? -1);
      }),
    );
  });

  it('has as its latest start the last one that finishes in time', () => {
    fc.assert(
      fc.property(drawn, fc.integer({ min: -2, max: HORIZON }), (of, finish) => {
        const inTime = starts(of).filter(day => (finishByHand(of, day) ?? NEVER) <= finish);
        expect(Math.max(-1, latestStart(problemOf(of), 0, finish))).toBe(inTime.at(-1) ?? -1);
      }),
    );
  });

  it('has as its start for a finish the first from which it does not finish before', () => {
    fc.assert(
      fc.property(drawn, moment, (of, finish) => {
        const start = startForFinish(problemOf(of), 0, finish);
        fc.pre(start < HORIZON && of.duration > 0);
        expect(finishByHand(of, start) ?? NEVER).toBeGreaterThanOrEqual(finish);
      }),
    );
  });

  it('starts at its booked moment and nowhere else', () => {
    const problem = problemOf({ open: [], allowed: [], duration: 1, hasCalendar: false, hasAllowed: false });
    expect([nextStart(problem, 1, 0), nextStart(problem, 1, 20)]).toEqual([7, 7]);
    expect([previousStart(problem, 1, 0), previousStart(problem, 1, 20)]).toEqual([7, 7]);
  });
});

describe('moments that a lag leaves, beside a count day by day', () => {
  /** Open days before a moment, or all days where a lag counts calendar days. */
  const before = ({ open, hasCalendar }: Drawn, at: number) =>
    hasCalendar ? open.slice(0, at).filter(Boolean).length : at;
  const moments = Array.from({ length: HORIZON + 1 }, (_, at) => at);
  const lags = fc.integer({ min: 1, max: 5 });
  const between = (of: Drawn, lag: object) => ({
    from: 0,
    to: 1,
    kind: 'FS' as const,
    ...(of.hasCalendar ? { calendar: 0 } : {}),
    ...lag,
  });
  const inside = (at: number) => at >= 0 && at < HORIZON;

  it('a least lag is kept from the first moment with so many days between, and up to the last before it', () => {
    fc.assert(
      fc.property(drawn, moment, lags, (of, at, lag) => {
        const relationship = between(of, { minimumLag: lag });
        const first = moments.find(to => before(of, to) - before(of, at) >= lag);
        const found = leastMoment(problemOf(of), relationship, at);
        if (first === undefined) expect(found).toBeGreaterThan(HORIZON);
        else expect(found).toBe(first);
        const last = moments.findLast(from => before(of, at) - before(of, from) >= lag);
        const latest = lastMomentBefore(problemOf(of), relationship, at);
        if (inside(latest)) expect(latest).toBe(last);
        else expect(latest < 0 ? last : undefined).toBeUndefined();
      }),
    );
  });

  it('a most lag is kept up to the last moment with so many days between, and from the first before it', () => {
    fc.assert(
      fc.property(drawn, moment, lags, (of, at, lag) => {
        const relationship = between(of, { maximumLag: lag });
        const last = moments.findLast(to => before(of, to) - before(of, at) <= lag);
        const found = mostMoment(problemOf(of), relationship, at);
        expect(Math.min(found, HORIZON)).toBe(last);
        const first = moments.find(from => before(of, at) - before(of, from) <= lag);
        expect(Math.max(0, firstMomentBefore(problemOf(of), relationship, at))).toBe(first);
      }),
    );
  });

  it('without a lag on a side that side is open', () => {
    const problem = problemOf({ open: [], allowed: [], duration: 1, hasCalendar: false, hasAllowed: false });
    const most = { from: 0, to: 1, kind: 'SS', maximumLag: 3 } as const;
    const least = { from: 0, to: 1, kind: 'SS', minimumLag: 3 } as const;
    expect(leastMoment(problem, most, 9)).toBe(0);
    expect(lastMomentBefore(problem, most, 9)).toBe(NEVER);
    expect(mostMoment(problem, least, 9)).toBe(NEVER);
    expect(firstMomentBefore(problem, least, 9)).toBe(0);
  });
});
