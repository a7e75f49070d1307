import fc from 'fast-check';
import type { ScheduleActivity, ScheduleProblem, ScheduleRelationship } from '../../../core/scheduling';
import { isoOf, dayOf } from '../../../core/calendar';
import { calendars } from './problems';

const date = (from: number, to: number) =>
  fc.integer({ min: from, max: to }).map(n => isoOf(dayOf('2027-03-01') + n));

/** A span of so many days, so many days after 1 March 2027. */
function spanFrom(day: number, days: number) {
  const from = dayOf('2027-03-01') + day;
  return { from: isoOf(from), to: isoOf(from + days - 1) };
}

function activity(i: number, longest: number, hasWindows: boolean): fc.Arbitrary<ScheduleActivity> {
  return fc
    .record({
      workDays: fc.oneof(
        { weight: 1, arbitrary: fc.constant(0) },
        { weight: 6, arbitrary: fc.integer({ min: 1, max: longest }) },
      ),
      calendar: fc.constantFrom('five', 'six', 'all', 'yard'),
      crew: fc.integer({ min: 0, max: 2 }),
      crane: fc.integer({ min: 0, max: 1 }),
      place: fc.constantFrom('bow', 'midship', 'stern'),
      notBefore: fc.option(date(0, 12), { nil: undefined, freq: 5 }),
      consecutive: fc.option(fc.record({ weatherDays: fc.integer({ min: 0, max: 1 }) }), {
        nil: undefined,
        freq: 5,
      }),
      closed: fc.boolean(),
      isWaiting: fc.boolean(),
      window: hasWindows
        ? fc.option(fc.tuple(fc.integer({ min: 0, max: 14 }), fc.integer({ min: 3, max: 12 })), {
            nil: undefined,
            freq: 3,
          })
        : fc.constant(undefined),
    })
    .map(({ workDays, calendar, crew, crane, place, notBefore, consecutive, closed, isWaiting, window }) => ({
      id: `${i}`,
      title: `Work ${i}`,
      stage: 'clean-up',
      calendar: consecutive && workDays > 0 ? 'all' : calendar,
      workDays,
      crewSize: workDays === 0 ? 0 : crew + crane,
      place,
      uses: workDays === 0 ? {} : { crew, crane },
      ...(notBefore === undefined ? {} : { notBefore }),
      ...(consecutive === undefined || workDays === 0 ? {} : { consecutive }),
      ...(closed ? { closures: ['stop'] } : {}),
      ...(window === undefined
        ? {}
        : { windows: [spanFrom(...window), { from: '2027-03-29', to: '2027-12-31' }] }),
      ...(isWaiting && workDays > 0 && crew + crane === 0
        ? { waiting: true, durationUnit: 'day' as const }
        : {}),
    }));
}

function relationships(n: number, hasMostLags: boolean): fc.Arbitrary<ScheduleRelationship[]> {
  return fc.array(
    fc
      .record({
        a: fc.nat(n - 1),
        b: fc.nat(n - 1),
        kind: fc.constantFrom('FS' as const, 'FS' as const, 'SS' as const, 'FF' as const, 'SF' as const),
        lag: fc.integer({ min: -2, max: 3 }),
        lagUnit: fc.constantFrom('work-day' as const, 'day' as const),
        more: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined }),
      })
      .filter(({ a, b }) => a !== b)
      .map(({ a, b, kind, lag, lagUnit, more }) => ({
        from: `${Math.min(a, b)}`,
        to: `${Math.max(a, b)}`,
        kind,
        lag,
        lagUnit,
        ...(hasMostLags && more !== undefined ? { maximumLag: lag + more } : {}),
      })),
    { maxLength: n + 2 },
  );
}

/** Problems with every kind of rule: calendars, lags, closures, runs of days, crews that vary, zones, exclusions. */
export function randomProblem(
  most: number,
  longest: number,
  hasMostLags = false,
  hasWindows = false,
): fc.Arbitrary<ScheduleProblem> {
  return fc.integer({ min: 2, max: most }).chain(n =>
    fc
      .record({
        activities: fc.tuple(...Array.from({ length: n }, (_, i) => activity(i, longest, hasWindows))),
        relationships: relationships(n, hasMostLags),
        capacity: fc.integer({ min: 2, max: 3 }),
        fewer: fc.option(fc.tuple(date(0, 10), fc.integer({ min: 0, max: 4 })), { nil: undefined }),
        closure: fc.tuple(date(2, 14), fc.integer({ min: 0, max: 6 })),
        isHeld: fc.boolean(),
        isExcluding: fc.boolean(),
        hasCraneCalendar: fc.boolean(),
        room: fc.option(fc.integer({ min: 3, max: 4 }), { nil: undefined }),
      })
      .map(
        ({
          activities,
          relationships,
          capacity,
          fewer,
          closure,
          isHeld,
          isExcluding,
          hasCraneCalendar,
          room,
        }) => ({
          horizonStart: '2027-03-01',
          calendars,
          closures: {
            stop: { id: 'stop', title: 'Stop', from: closure[0], to: isoOf(dayOf(closure[0]) + closure[1]) },
          },
          resources: [
            {
              id: 'crew',
              title: 'Crew',
              capacity,
              ...(fewer
                ? {
                    capacityChanges: [{ from: fewer[0], to: isoOf(dayOf(fewer[0]) + fewer[1]), capacity: 1 }],
                  }
                : {}),
            },
            {
              id: 'crane',
              title: 'Crane',
              capacity: 1,
              heldOnIdleDays: isHeld,
              ...(hasCraneCalendar ? { calendar: 'six' } : {}),
            },
          ],
          activities,
          relationships,
          zones: [
            {
              id: 'bow',
              title: 'Bow',
              touches: ['midship'],
              ...(room === undefined ? {} : { crewLimit: room }),
            },
            { id: 'midship', title: 'Midship' },
            { id: 'stern', title: 'Stern', touches: ['midship'] },
          ],
          exclusions: isExcluding
            ? [
                {
                  id: 'hot',
                  title: 'Hot work and fuel',
                  first: ['0', '1'],
                  second: activities.slice(2, 4).map(a => a.id),
                },
              ]
            : [],
          hammocks: [
            {
              id: 'berth',
              title: 'Berth',
              fromStartOf: ['0', '1'],
              toFinishOf: activities.map(a => a.id),
              calendar: 'six',
            },
          ],
        }),
      ),
  );
}
