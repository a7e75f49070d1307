import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { dayOf, expandCalendar, isoOf, type WorkCalendar } from '../../../core/calendar';
import {
  networkTimes,
  type Network,
  type NetworkActivity,
  type RelationshipKind,
} from '../../../core/network';

const week = (days: readonly (1 | 2 | 3 | 4 | 5 | 6 | 7)[]): WorkCalendar => ({
  id: 'w',
  title: 'w',
  weekdays: days,
  shiftHours: 8,
  federalHolidays: false,
  holidays: [],
  closures: [],
  extraWorkDays: [],
});
const first = dayOf('2027-03-01');
const laidOut = [week([1, 2, 3, 4, 5]), week([1, 2, 3, 4, 5, 6]), week([1, 2, 3, 4, 5, 6, 7])].map(c =>
  expandCalendar(c, first - 200, 800),
);

const kinds: readonly RelationshipKind[] = ['FS', 'SS', 'FF', 'SF'];
const networks = (isWithCalendars: boolean): fc.Arbitrary<Network> =>
  fc.integer({ min: 2, max: 8 }).chain(n =>
    fc.record({
      activities: fc.tuple(
        ...Array.from({ length: n }, (_, i) =>
          fc
            .record({ duration: fc.integer({ min: 1, max: 6 }), c: fc.integer({ min: 0, max: 2 }) })
            .map(({ duration, c }): NetworkActivity => {
              const calendar = laidOut[c];
              return {
                id: `${i}`,
                title: `${i}`,
                duration,
                ...(isWithCalendars && calendar ? { calendar } : {}),
              };
            }),
        ),
      ),
      relationships: fc.array(
        fc
          .record({
            a: fc.nat(n - 1),
            b: fc.nat(n - 1),
            kind: fc.constantFrom(...kinds),
            lag: fc.integer({ min: -2, max: 4 }),
          })
          .filter(({ a, b }) => a !== b)
          .map(({ a, b, kind, lag }) => ({ from: `${Math.min(a, b)}`, to: `${Math.max(a, b)}`, kind, lag })),
        { maxLength: 10 },
      ),
    }),
  );

function delayed(network: Network, id: string, notBefore: number): Network {
  return { ...network, activities: network.activities.map(a => (a.id === id ? { ...a, notBefore } : a)) };
}

describe('network times', () => {
  it.each([false, true])(
    'total float is exactly the delay that keeps the finish (calendars: %s)',
    isWithCalendars => {
      fc.assert(
        fc.property(networks(isWithCalendars), network => {
          const from = isWithCalendars ? first : 0;
          const plain = networkTimes(network, from);
          for (const times of plain.activities ?? []) {
            expect(networkTimes(delayed(network, times.id, times.lateStart), from).finish).toBe(plain.finish);
            expect(
              networkTimes(delayed(network, times.id, times.lateStart + 1), from).finish,
            ).toBeGreaterThan(plain.finish ?? 0);
          }
        }),
        { numRuns: 300 },
      );
    },
  );

  it('delaying an activity by its free float moves no other; fractions are kept', () => {
    fc.assert(
      fc.property(networks(false), network => {
        const plain = networkTimes(network);
        for (const times of plain.activities ?? []) {
          const moved = networkTimes(delayed(network, times.id, times.earlyStart + times.freeFloat));
          const others = (r: typeof plain) =>
            r.activities?.filter(t => t.id !== times.id).map(t => t.earlyStart);
          expect(others(moved)).toEqual(others(plain));
        }
      }),
    );
  });

  it('five-day work before seven-day work: a weekend lies between nothing and nothing', () => {
    const [five, , seven] = laidOut;
    if (!five || !seven) throw new Error('no calendars');
    const network: Network = {
      activities: [
        { id: 'cut', title: 'cut', duration: 5, calendar: five },
        { id: 'tow', title: 'tow', duration: 3, calendar: seven },
        { id: 'paint', title: 'paint', duration: 1, calendar: five },
      ],
      relationships: [
        { from: 'cut', to: 'tow', kind: 'FS' },
        { from: 'cut', to: 'paint', kind: 'FS', lag: 2 },
      ],
      hammocks: [{ id: 'berth', fromStartOf: ['cut'], toFinishOf: ['tow', 'paint'] }],
    };
    const result = networkTimes(network, first);
    const dates = result.activities?.map(
      t => `${t.id} ${isoOf(t.earlyStart)} ${isoOf(t.earlyFinish - 1)} ${t.totalFloat}`,
    );
    // Cut ends Friday 5 March; the tow runs on Saturday; two work days later is Wednesday.
    expect(dates).toEqual([
      'cut 2027-03-01 2027-03-05 0',
      'tow 2027-03-06 2027-03-08 2',
      'paint 2027-03-10 2027-03-10 0',
    ]);
    expect(result.hammocks).toEqual([{ id: 'berth', start: first, finish: dayOf('2027-03-11') }]);
  });

  it('a loop is a finding that names its activities, and no times are given', () => {
    const activities = ['A', 'B', 'C'].map(id => ({ id, title: `Work ${id}`, duration: 1 }));
    const result = networkTimes({
      activities,
      relationships: [
        { from: 'A', to: 'B', kind: 'FS' },
        { from: 'B', to: 'C', kind: 'FS' },
        { from: 'C', to: 'B', kind: 'SS' },
      ],
    });
    expect(result.activities).toBeUndefined();
    expect(result.findings.map(f => f.code)).toEqual(['network/loop']);
    expect(result.findings[0]?.message).toMatch(/Work B.*Work C|Work C.*Work B/);
  });

  it('a negative duration, half a work day and an unknown activity are findings', () => {
    const [calendar] = laidOut;
    const result = networkTimes({
      activities: [
        { id: 'A', title: 'A', duration: -1 },
        { id: 'B', title: 'B', duration: 0.5, ...(calendar ? { calendar } : {}) },
      ],
      relationships: [{ from: 'A', to: 'X', kind: 'FS' }],
    });
    expect(result.findings.map(f => f.code)).toEqual([
      'network/duration',
      'network/duration',
      'network/relationship',
    ]);
  });
});
