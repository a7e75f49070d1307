import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  schedule,
  verifySchedule,
  type ScheduledActivity,
  type ScheduleProblem,
  type ScheduleResult,
} from '../../../core/scheduling';
import { after, problemOf, work } from './problems';

const problem: ScheduleProblem = problemOf(
  [
    work('A', 3, {
      uses: { crew: 1 },
      place: 'bow',
      crewSize: 2,
      notBefore: '2027-03-02',
      endsStates: ['gas-free'],
    }),
    work('B', 2, { uses: { crew: 1 }, place: 'bow', crewSize: 2, opensStates: ['gas-free'] }),
    work('C', 2, { place: 'midship', crewSize: 1, needsStates: [] }),
    work('D', 2, { place: 'bow', crewSize: 1, needsStates: ['gas-free'], deadline: '2027-03-30' }),
    work('tow', 3, { calendar: 'all', consecutive: { weatherDays: 1 }, closures: ['stop'] }),
    work('done', 0),
  ],
  [after('A', 'C', { lag: 2 }), after('D', 'tow'), after('tow', 'done', { maximumLag: 4 })],
  {
    closures: { stop: { id: 'stop', title: 'Stop', from: '2027-03-20', to: '2027-03-25' } },
    resources: [{ id: 'crew', title: 'Crew', capacity: 1 }],
    zones: [
      { id: 'bow', title: 'Bow', crewLimit: 4, touches: ['midship'] },
      { id: 'midship', title: 'Midship' },
    ],
    zoneStates: [{ id: 'gas-free', title: 'Gas-free' }],
    exclusions: [{ id: 'hot', title: 'Hot', first: ['C'], second: ['D'] }],
    hammocks: [{ id: 'berth', title: 'Berth', fromStartOf: ['A'], toFinishOf: ['D'], calendar: 'six' }],
  },
);
const good = schedule(problem, { schedules: 300, seed: 1 });

function changed(id: string, change: Partial<ScheduledActivity>): ScheduleResult {
  return { ...good, activities: good.activities.map(a => (a.id === id ? { ...a, ...change } : a)) };
}
const berths = good.hammocks;

describe('the day-by-day check', () => {
  it('passes the schedule of the scheduler', () => {
    expect(verifySchedule(problem, good)).toEqual([]);
    expect(good.activities.map(a => `${a.id} ${a.start}/${a.finish}`)).toEqual([
      'A 2027-03-02/2027-03-04',
      'B 2027-03-05/2027-03-08',
      'C 2027-03-11/2027-03-12',
      'D 2027-03-09/2027-03-10',
      'tow 2027-03-11/2027-03-14',
      'done 2027-03-15/2027-03-15',
    ]);
  });

  it.each<[change: string, ScheduleResult, ...findings: [code: string, place: string, message: string][]]>([
    [
      'an activity that begins too early',
      changed('A', { start: '2027-03-01', finish: '2027-03-03' }),
      ['not-before', '/activities/A', 'A starts on 2027-03-01, before 2027-03-02.'],
      ['hammock', '/hammocks/berth', 'Berth runs 2027-03-01 to 2027-03-10, 9 work days.'],
    ],
    [
      'one that is longer',
      changed('A', { finish: '2027-03-05' }),
      ['duration', '/activities/A', 'A has 4 days where 3 are due.'],
      ['capacity', '/resources/crew', 'Crew: more in use on 2027-03-05 than there is.'],
      ['peak', '/resources/crew', 'Crew peaks at 2, not 1.'],
    ],
    [
      'one that begins on a Saturday',
      changed('C', { start: '2027-03-13', finish: '2027-03-15' }),
      ['idle-start', '/activities/C', 'C starts on 2027-03-13, a day it cannot work.'],
      ['duration', '/activities/C', 'C has 1 days where 2 are due.'],
    ],
    [
      'one that ends on a Saturday',
      changed('C', { start: '2027-03-12', finish: '2027-03-13' }),
      ['idle-finish', '/activities/C', 'C ends on 2027-03-13, a day it cannot work.'],
      ['duration', '/activities/C', 'C has 1 days where 2 are due.'],
    ],
    [
      'one that ends before it begins',
      changed('C', { start: '2027-03-12', finish: '2027-03-11' }),
      ['order', '/activities/C', 'C ends on 2027-03-11, before it starts on 2027-03-12.'],
      ['idle-start', '/activities/C', 'C starts on 2027-03-12, a day it cannot work.'],
      ['idle-finish', '/activities/C', 'C ends on 2027-03-11, a day it cannot work.'],
      ['duration', '/activities/C', 'C has 0 days where 2 are due.'],
    ],
    [
      'one that is late',
      changed('D', { start: '2027-03-30', finish: '2027-03-31' }),
      ['deadline', '/activities/D', 'D ends on 2027-03-31, after 2027-03-30.'],
      ['relationship', '/relationships/1', 'tow after D: -21 days where at least 0 are due.'],
      ['finish', '/finish', 'Ends on 2027-03-15, but the last day is 2027-03-31.'],
      ['hammock', '/hammocks/berth', 'Berth runs 2027-03-02 to 2027-03-31, 26 work days.'],
    ],
    [
      'an operation over a closure',
      changed('tow', { start: '2027-03-18', finish: '2027-03-27' }),
      ['consecutive', '/activities/tow', 'tow does not run on consecutive days.'],
      ['relationship', '/relationships/2', 'done after tow: -12 days where at least 0 are due.'],
      ['finish', '/finish', 'Ends on 2027-03-15, but the last day is 2027-03-27.'],
    ],
    [
      'a lag that is too short, and work that excludes other work',
      changed('C', { start: '2027-03-08', finish: '2027-03-09' }),
      ['relationship', '/relationships/0', 'C after A: 1 days where at least 2 are due.'],
      ['exclusion', '/exclusions/hot', 'C and D run at the same time.'],
    ],
    [
      'a lag that is too long',
      changed('done', { start: '2027-03-24', finish: '2027-03-24' }),
      ['maximum-lag', '/relationships/2', 'done after tow: 8 days where at most 4 may be.'],
      ['finish', '/finish', 'Ends on 2027-03-15, but the last day is 2027-03-24.'],
    ],
    [
      'more in use than there is',
      changed('B', { start: '2027-03-04', finish: '2027-03-05' }),
      ['capacity', '/resources/crew', 'Crew: more in use on 2027-03-04 than there is.'],
      ['peak', '/resources/crew', 'Crew peaks at 2, not 1.'],
    ],
    [
      'work without its state',
      changed('D', { start: '2027-03-04', finish: '2027-03-05' }),
      ['zone-state', '/activities/D', 'D runs without Gas-free in its zone.'],
      ['hammock', '/hammocks/berth', 'Berth runs 2027-03-02 to 2027-03-05, 4 work days.'],
    ],
    [
      'a crew nobody asked for',
      changed('A', { crewSize: 9 }),
      ['crew', '/activities/A', 'A has a crew of 9 that was not asked for.'],
    ],
    [
      'an activity that is not there',
      { ...good, activities: good.activities.slice(1) },
      ['missing', '/activities/A', 'A has no dates.'],
      ['start', '/start', 'Starts on 2027-03-02, but the first day is 2027-03-05.'],
      ['hammock', '/hammocks/berth', 'Berth runs  to 2027-03-10, 9 work days.'],
    ],
    [
      'another peak',
      { ...good, resourcePeaks: { crew: { units: 7, date: '2027-03-02' } } },
      ['peak', '/resources/crew', 'Crew peaks at 1, not 7.'],
    ],
    ['no peak', { ...good, resourcePeaks: {} }, ['peak', '/resources/crew', 'Crew peaks at 1, not nothing.']],
    [
      'another finish',
      { ...good, finish: '2027-04-01' },
      ['finish', '/finish', 'Ends on 2027-04-01, but the last day is 2027-03-15.'],
    ],
    [
      'a bound above what was reached, of which it is said to be the least',
      { ...good, lowerBoundDays: 99 },
      ['bound', '/lowerBoundDays', '15 days is less than the least possible, 99.'],
      ['optimal', '/status', 'Said to be optimal without proof.'],
    ],
    [
      'an optimum without proof',
      { ...good, status: 'optimal', lowerBoundDays: 1 },
      ['optimal', '/status', 'Said to be optimal without proof.'],
    ],
    ...[
      [],
      ...(['start', 'finish'] as const).map(end => berths.map(berth => ({ ...berth, [end]: '2027-03-03' }))),
      ...(['calendarDays', 'workDays'] as const).map(days => berths.map(berth => ({ ...berth, [days]: 7 }))),
    ].map((hammocks): [string, ScheduleResult, [string, string, string]] => [
      `a hammock of ${JSON.stringify(hammocks[0] ?? 'no dates')}`,
      { ...good, hammocks },
      ['hammock', '/hammocks/berth', 'Berth runs 2027-03-02 to 2027-03-10, 8 work days.'],
    ]),
  ])('says what is wrong and where: %s', (_, result, ...findings) => {
    const found = verifySchedule(problem, result);
    expect(found.map(({ code, place, message }) => [code, place, message])).toEqual(
      findings.map(([code, ...rest]) => [`verify/${code}`, ...rest]),
    );
    for (const { weight } of found) expect(weight).toBe('blocks');
  });

  it('shares no code with the scheduler and none with the calendars', () => {
    const folder = 'core/scheduling/verify';
    const imports = readdirSync(folder).flatMap(file => [
      ...readFileSync(`${folder}/${file}`, 'utf8').matchAll(/import (type )?.*?from '(.*?)';/gs),
    ]);
    const outside = imports
      .filter(([, type, path = '']) => !path.startsWith('./') && type === undefined)
      .map(([, , path]) => path);
    expect(outside).toEqual([]);
  });
});
