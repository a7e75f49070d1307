import { describe, expect, it } from 'vitest';
import { dayOf, expandCalendar, type WorkCalendar } from '../../../core/calendar';
import {
  networkTimes,
  type Network,
  type NetworkActivity,
  type NetworkRelationship,
  type RelationshipKind,
} from '../../../core/network';

const FIVE: WorkCalendar = {
  id: 'five',
  title: 'Monday to Friday',
  weekdays: [1, 2, 3, 4, 5],
  shiftHours: 8,
  federalHolidays: false,
  holidays: [],
  closures: [],
  extraWorkDays: [],
};
/** Monday 1 March 2027, and four weeks laid out from it. */
const MONDAY = dayOf('2027-03-01');
const calendar = expandCalendar(FIVE, MONDAY, 28);

const work = (id: string, duration: number, more: Partial<NetworkActivity> = {}): NetworkActivity => ({
  id,
  title: `Work ${id}`,
  duration,
  ...more,
});
const after = (from: string, to: string, kind: RelationshipKind = 'FS', lag?: number): NetworkRelationship =>
  lag === undefined ? { from, to, kind } : { from, to, kind, lag };

/** Early start and finish, late start and finish of each, as days from the first Monday. */
function days(network: Network, from = MONDAY): (number | undefined)[][] {
  return (networkTimes(network, from).activities ?? []).map(t =>
    [t.earlyStart, t.earlyFinish, t.lateStart, t.lateFinish].map(moment => moment - MONDAY),
  );
}

describe('what is wrong with a network is told with its place, what it means and what to do', () => {
  it('a duration that is no duration', () => {
    const result = networkTimes({
      activities: [
        work('A', Infinity),
        work('B', -0.5),
        work('C', 1.5, { calendar }),
        work('D', 0),
        work('E', 0.5),
      ],
      relationships: [],
    });
    expect(result.activities).toBeUndefined();
    expect(result.findings).toEqual([
      {
        code: 'network/duration',
        weight: 'blocks',
        place: '/activities/A',
        message: 'Work A has a duration of Infinity days.',
        meaning: 'No dates can be found for it or for what follows it.',
        remedy: 'Give days, 0 or more.',
      },
      {
        code: 'network/duration',
        weight: 'blocks',
        place: '/activities/B',
        message: 'Work B has a duration of -0.5 days.',
        meaning: 'No dates can be found for it or for what follows it.',
        remedy: 'Give days, 0 or more.',
      },
      {
        code: 'network/duration',
        weight: 'blocks',
        place: '/activities/C',
        message: 'Work C has a duration of 1.5 days.',
        meaning: 'No dates can be found for it or for what follows it.',
        remedy: 'Give whole work days, 0 or more.',
      },
    ]);
  });

  it('a relationship that leads nowhere, at either end, or waits for no number of days', () => {
    const result = networkTimes({
      activities: [work('A', 1), work('B', 1)],
      relationships: [after('A', 'B'), after('X', 'B'), after('A', 'Y'), after('A', 'B', 'FS', NaN)],
    });
    expect(result.activities).toBeUndefined();
    const told = (index: number, message: string) => ({
      code: 'network/relationship',
      weight: 'blocks',
      place: `/relationships/${index}`,
      message,
      meaning: 'No dates can be found while a relationship leads nowhere.',
      remedy: 'Name two activities and a number of days.',
    });
    expect(result.findings).toEqual([
      told(1, 'There is no activity "X".'),
      told(2, 'There is no activity "Y".'),
      told(3, 'A lag of NaN days.'),
    ]);
  });

  it('a circle', () => {
    const result = networkTimes({
      activities: [work('A', 1), work('B', 1)],
      relationships: [after('A', 'B'), after('B', 'A', 'SS')],
    });
    expect(result.activities).toBeUndefined();
    expect(result.findings).toHaveLength(1);
    expect(result.findings[0]).toMatchObject({
      code: 'network/loop',
      weight: 'blocks',
      meaning: 'No dates can be found for them or for what follows them.',
      remedy: 'Take out one of the relationships between them.',
    });
    expect(result.findings[0]?.message).toMatch(
      /^Each of these waits for the one before it, and the first for the last: (Work A, Work B|Work B, Work A)\.$/,
    );
    expect(result.findings[0]?.place).toMatch(/^\/activities\/[AB]$/);
  });
});

describe('moments that are given', () => {
  it('work held back starts on its day, and what it holds back has as much less float', () => {
    const result = networkTimes({
      activities: [work('A', 2), work('B', 3, { notBefore: 4 }), work('C', 1)],
      relationships: [after('A', 'C'), after('B', 'C')],
    });
    expect(result.finish).toBe(8);
    expect(
      result.activities?.map(t => [t.id, t.earlyStart, t.earlyFinish, t.totalFloat, t.freeFloat, t.critical]),
    ).toEqual([
      ['A', 0, 2, 5, 5, false],
      ['B', 4, 7, 0, 0, true],
      ['C', 7, 8, 0, 0, true],
    ]);
  });

  it('a day held back to before the beginning holds nothing', () => {
    expect(networkTimes({ activities: [work('A', 2, { notBefore: -3 })], relationships: [] }, 1).finish).toBe(
      3,
    );
  });

  it('a deadline moves the late times and no early one; missed, the float is below zero and critical', () => {
    const network: Network = { activities: [work('A', 2), work('B', 3)], relationships: [after('A', 'B')] };
    const at = (finishBy: number) => {
      const result = networkTimes({ ...network, finishBy });
      return [result.finish, ...(result.activities ?? []).map(t => [t.totalFloat, t.freeFloat, t.critical])];
    };
    expect(at(7)).toEqual([5, [2, 0, false], [2, 0, false]]);
    expect(at(4)).toEqual([5, [-1, 0, true], [-1, 0, true]]);
  });

  it('nothing to do is finished where it begins', () => {
    expect(networkTimes({ activities: [], relationships: [] }, 12)).toEqual({
      activities: [],
      finish: 12,
      hammocks: [],
      findings: [],
    });
  });
});

describe('every kind of relationship, with a lag and with an overlap', () => {
  // A of 4 days, B of 3, and C of 20 that sets the finish: kind, lag, early start of B, late start of A.
  const cases: readonly [RelationshipKind, number, number, number][] = [
    ['FS', 0, 4, 13],
    ['FS', 2, 6, 11],
    ['FS', -1, 3, 14],
    ['SS', 0, 0, 16],
    ['SS', 2, 2, 15],
    ['FF', 0, 1, 16],
    ['FF', 3, 4, 13],
    ['SF', 0, 0, 16],
    ['SF', 5, 2, 15],
  ];
  it.each(cases)('%s with %d days', (kind, lag, start, lateStart) => {
    const [a, b] =
      networkTimes({
        activities: [work('A', 4), work('B', 3), work('C', 20)],
        relationships: [after('A', 'B', kind, lag)],
      }).activities ?? [];
    expect([b?.earlyStart, b?.earlyFinish, b?.lateStart]).toEqual([start, start + 3, 17]);
    expect([a?.lateStart, a?.lateFinish, a?.totalFloat]).toEqual([lateStart, lateStart + 4, lateStart]);
  });
});

describe('work days', () => {
  it('a milestone stands where it is reached, also in idle days, and takes no day', () => {
    const network: Network = {
      activities: [work('A', 5, { calendar }), work('done', 0, { calendar }), work('B', 1, { calendar })],
      relationships: [after('A', 'done'), after('done', 'B')],
    };
    // Friday's work is finished when Saturday begins; the next begins on Monday, and no work day lies between.
    expect(days(network)).toEqual([
      [0, 5, 0, 5],
      [5, 5, 7, 7],
      [7, 8, 7, 8],
    ]);
  });

  it('a milestone held by a finish stands at it, with its lag in work days', () => {
    const network = (lag: number): Network => ({
      activities: [work('A', 4, { calendar }), work('done', 0, { calendar })],
      relationships: [after('A', 'done', 'FF', lag)],
    });
    expect(days(network(0))).toEqual([
      [0, 4, 0, 4],
      [4, 4, 4, 4],
    ]);
    // Two work days after Thursday: Friday and Monday.
    expect(days(network(2))).toEqual([
      [0, 4, 0, 4],
      [8, 8, 8, 8],
    ]);
  });

  it('a finish that falls into idle days is reached with the next work day', () => {
    const everyDay = expandCalendar({ ...FIVE, weekdays: [1, 2, 3, 4, 5, 6, 7] }, MONDAY, 28);
    const network: Network = {
      activities: [work('A', 6, { calendar: everyDay }), work('B', 2, { calendar })],
      relationships: [after('A', 'B', 'FF')],
    };
    // A ends with Saturday: B ends with Monday, and began on Friday.
    expect(days(network).at(1)).toEqual([4, 8, 4, 8]);
  });

  it('an overlap goes back over a weekend by work days', () => {
    const network: Network = {
      activities: [work('A', 6, { calendar }), work('B', 2, { calendar })],
      relationships: [after('A', 'B', 'FS', -2)],
    };
    // A ends with Monday of the second week; two work days earlier is the Friday before.
    expect(days(network)).toEqual([
      [0, 8, 0, 8],
      [4, 8, 4, 8],
    ]);
  });

  it('work begun in idle days starts with the next work day; late work ends with the last one before', () => {
    const network: Network = {
      activities: [work('A', 2, { calendar, notBefore: MONDAY + 5 }), work('B', 12)],
      relationships: [],
    };
    // Twelve days of plain time end with Friday of the second week.
    expect(days(network)).toEqual([
      [7, 9, 10, 12],
      [0, 12, 0, 12],
    ]);
    expect(days({ ...network, finishBy: MONDAY + 14 })).toEqual([
      [7, 9, 10, 12],
      [0, 12, 2, 14],
    ]);
  });

  it('beyond the days that are laid out there is no date', () => {
    const result = networkTimes(
      {
        activities: [work('A', 20, { calendar }), work('B', 1, { calendar })],
        relationships: [after('A', 'B')],
      },
      MONDAY,
    );
    // Twenty work days fill the four weeks; nothing is left for B.
    expect(result.activities?.map(t => [t.earlyStart - MONDAY, t.earlyFinish - MONDAY])).toEqual([
      [0, 26],
      [Infinity, Infinity],
    ]);
    expect(
      networkTimes({ activities: [work('A', 21, { calendar })], relationships: [] }, MONDAY).finish,
    ).toBe(Infinity);
    expect(
      networkTimes({ activities: [work('A', 1, { calendar })], relationships: [] }, MONDAY - 1).finish,
    ).toBe(Infinity);
    expect(
      networkTimes({ activities: [work('A', 1, { calendar })], relationships: [] }, MONDAY + 28).finish,
    ).toBe(Infinity);
  });

  it('late work that the laid out days do not reach back to has no late start', () => {
    const result = networkTimes(
      { activities: [work('A', 3, { calendar })], relationships: [], finishBy: MONDAY + 2 },
      MONDAY,
    );
    expect(result.activities?.[0]).toMatchObject({ lateFinish: MONDAY + 2, lateStart: -Infinity });
    const none = networkTimes(
      { activities: [work('A', 3, { calendar })], relationships: [], finishBy: MONDAY },
      MONDAY,
    );
    expect(none.activities?.[0]?.lateFinish).toBe(-Infinity);
  });
});

describe('spans', () => {
  const network: Network = {
    activities: [work('A', 2), work('B', 3), work('C', 1)],
    relationships: [after('A', 'B')],
  };
  it('run from the first of some starts to the last of some finishes', () => {
    const hammocks = [{ id: 'h', fromStartOf: ['B', 'A'], toFinishOf: ['C', 'B'] }];
    expect(networkTimes({ ...network, hammocks }).hammocks).toEqual([{ id: 'h', start: 0, finish: 5 }]);
  });
  it('without an activity at one end are left out; unknown ones are passed over', () => {
    const hammocks = [
      { id: 'no start', fromStartOf: ['X'], toFinishOf: ['B'] },
      { id: 'no end', fromStartOf: ['A'], toFinishOf: [] },
      { id: 'some', fromStartOf: ['X', 'B'], toFinishOf: ['B', 'Y'] },
    ];
    expect(networkTimes({ ...network, hammocks }).hammocks).toEqual([{ id: 'some', start: 2, finish: 5 }]);
  });
});
