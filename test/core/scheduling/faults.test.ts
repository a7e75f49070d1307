import { describe, expect, it } from 'vitest';
import type { ScheduleActivity, ScheduleProblem } from '../../../core/scheduling';
import { checkProblem } from '../../../core/scheduling/check/check-problem';
import { after, calendars, problemOf, work } from './problems';

/** Code, place and message of each fault of a problem. */
const told = (problem: ScheduleProblem) =>
  checkProblem(problem).map(({ code, place, message }) => [code.replace('schedule/', ''), place, message]);
const cleaners = { id: 'cleaners', title: 'Cleaners', capacity: 2 };
const one = (more: Partial<ScheduleActivity>, problem: Partial<ScheduleProblem> = {}) =>
  told(problemOf([work('A', 2, more)], [], problem));

describe('what is wrong with a problem before it is scheduled', () => {
  it('nothing, where all it names is there', () => {
    const problem = problemOf(
      [
        work('A', 2, {
          uses: { cleaners: 1 },
          place: 'hold',
          opensStates: ['clean'],
          closures: ['spawning'],
        }),
        work('B', 0, { workDays: 3, needsStates: ['clean'], place: 'hold', windows: [] }),
      ],
      [after('A', 'B', { lag: 1, maximumLag: 1 })],
      {
        resources: [
          {
            ...cleaners,
            calendar: 'five',
            capacityChanges: [{ from: '2027-03-08', to: '2027-03-12', capacity: 0 }],
          },
        ],
        zones: [
          { id: 'hold', title: 'Hold', touches: ['deck'] },
          { id: 'deck', title: 'Deck' },
        ],
        zoneStates: [{ id: 'clean', title: 'Clean' }],
        closures: { spawning: { id: 'spawning', title: 'Spawning', from: '2027-05-01', to: '2027-05-31' } },
        hammocks: [{ id: 'h', title: 'Hire', calendar: 'all', fromStartOf: ['A'], toFinishOf: ['B'] }],
        exclusions: [{ id: 'x', title: 'Apart', first: ['A'], second: ['B'] }],
        statusDate: '2027-03-01',
      },
    );
    expect(told(problem)).toEqual([]);
  });

  it.each<[string, Partial<ScheduleProblem>, string[][]]>([
    ['a first day that is none', { horizonStart: '2027-02-30' }, [['date', '/horizonStart']]],
    ['a status date that is none', { statusDate: 'soon' }, [['date', '/statusDate']]],
    ['two of one id', { resources: [cleaners, cleaners] }, [['duplicate', '/resources/cleaners']]],
    [
      'a calendar of a crew that is not there',
      { resources: [{ ...cleaners, calendar: 'none' }] },
      [['unknown-calendar', '/resources/cleaners']],
    ],
    [
      'parts of units, fewer than none for a time, and days that are none',
      {
        resources: [
          {
            ...cleaners,
            capacity: 1.5,
            capacityChanges: [{ from: '2027-13-01', to: '2027-03-12', capacity: -1 }],
          },
        ],
      },
      [
        ['whole-number', '/resources/cleaners'],
        ['whole-number', '/resources/cleaners'],
        ['date', '/resources/cleaners'],
      ],
    ],
    [
      'groups that name what is not there',
      {
        exclusions: [{ id: 'x', title: 'Apart', first: ['A'], second: ['gone'] }],
        hammocks: [{ id: 'h', title: 'Hire', calendar: 'none', fromStartOf: ['gone'], toFinishOf: ['A'] }],
        zones: [{ id: 'hold', title: 'Hold', touches: ['bridge'] }],
      },
      [
        ['unknown-activity', '/exclusions/x'],
        ['unknown-activity', '/hammocks/h'],
        ['unknown-calendar', '/hammocks/h'],
        ['unknown-zone', '/zones/hold'],
      ],
    ],
  ])('%s', (_what, problem, faults) => {
    expect(one({}, problem).map(([code, place]) => [code, place])).toEqual(faults);
  });

  it.each<[string, Partial<ScheduleActivity>, string[]]>([
    [
      'fewer crews than the one that is planned',
      { modes: [{ crewSize: 2, workDays: 3, uses: {} }], plannedMode: 1 },
      ['A has no crew number 2.'],
    ],
    ['no crew at all', { modes: [] }, ['A has no duration.']],
    ['days left that are not whole', { remaining: 0.5 }, ['A has 0.5 where a whole number is due.']],
    [
      'weather days below none',
      { consecutive: { weatherDays: -1 } },
      ['A has -1 where a whole number is due.'],
    ],
    ['a finish without a start', { actualFinish: '2027-03-02' }, ['A has finished but not started.']],
    [
      'a start without a status date, before the project',
      { actualStart: '2027-02-26' },
      [
        'A has started, but the project has no status date.',
        'A started on 2027-02-26, before the project on 2027-03-01.',
      ],
    ],
    [
      'a state of its zone that nothing opens',
      { needsStates: ['clean'] },
      ['A needs Clean in its zone, but nothing opens it there.'],
    ],
  ])('an activity with %s', (_what, more, messages) => {
    const found = one(more, { zoneStates: [{ id: 'clean', title: 'Clean' }] });
    expect(found.map(([, , message]) => message)).toEqual(messages);
    expect(found.every(([, place]) => place === '/activities/A')).toBe(true);
  });

  it('an actual day on or after the status date', () => {
    const on = (actualFinish: string) =>
      one({ actualStart: '2027-03-02', actualFinish }, { statusDate: '2027-03-05' });
    expect(on('2027-03-04')).toEqual([]);
    expect(on('2027-03-05')).toEqual([
      [
        'progress',
        '/activities/A',
        'A has an actual date 2027-03-05 that is not before the status date 2027-03-05.',
      ],
    ]);
  });

  it('a loop, told at its first activity, and a calendar or closure that is itself wrong', () => {
    const loop = problemOf(
      [work('A', 1, { title: 'Tow' }), work('B', 1)],
      [after('A', 'B'), after('B', 'A')],
    );
    expect(told(loop)).toEqual([
      [
        'loop',
        expect.stringMatching(/^\/activities\/[AB]$/),
        expect.stringMatching(
          /^Each of these waits for the one before it, and the first for the last: (Tow, B|B, Tow)\.$/,
        ),
      ],
    ]);
    const upset = Object.fromEntries(
      Object.entries(calendars).map(([id, calendar]) => [
        id,
        id === 'five' ? { ...calendar, holidays: ['2027-02-30'] } : calendar,
      ]),
    );
    expect(one({}, { calendars: upset }).map(([, place]) => place)).toEqual([
      expect.stringContaining('/calendars/five'),
    ]);
    const closures = {
      spawning: { id: 'spawning', title: 'Spawning', from: '2027-06-01', to: '2027-05-31' },
    };
    expect(one({}, { closures }).map(([, place]) => place)).toEqual([
      expect.stringContaining('/closures/spawning'),
    ]);
  });
});
