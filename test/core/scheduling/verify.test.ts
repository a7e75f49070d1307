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
const codes = (result: ScheduleResult) =>
  new Set(verifySchedule(problem, result).map(finding => finding.code));

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

  it.each<[string, ScheduleResult]>([
    ['verify/not-before', changed('A', { start: '2027-03-01', finish: '2027-03-03' })],
    ['verify/duration', changed('A', { finish: '2027-03-05' })],
    ['verify/idle-start', changed('C', { start: '2027-03-13', finish: '2027-03-15' })],
    ['verify/idle-finish', changed('C', { start: '2027-03-12', finish: '2027-03-13' })],
    ['verify/order', changed('C', { start: '2027-03-12', finish: '2027-03-11' })],
    ['verify/deadline', changed('D', { start: '2027-03-30', finish: '2027-03-31' })],
    ['verify/consecutive', changed('tow', { start: '2027-03-18', finish: '2027-03-27' })],
    ['verify/relationship', changed('C', { start: '2027-03-08', finish: '2027-03-09' })],
    ['verify/maximum-lag', changed('done', { start: '2027-03-24', finish: '2027-03-24' })],
    ['verify/capacity', changed('B', { start: '2027-03-04', finish: '2027-03-05' })],
    ['verify/exclusion', changed('C', { start: '2027-03-10', finish: '2027-03-11' })],
    ['verify/zone-state', changed('D', { start: '2027-03-04', finish: '2027-03-05' })],
    ['verify/crew', changed('A', { crewSize: 9 })],
    ['verify/missing', { ...good, activities: good.activities.slice(1) }],
    ['verify/peak', { ...good, resourcePeaks: { crew: { units: 7, date: '2027-03-02' } } }],
    ['verify/finish', { ...good, finish: '2027-04-01' }],
    ['verify/bound', { ...good, lowerBoundDays: 99 }],
    ['verify/optimal', { ...good, status: 'optimal', lowerBoundDays: 1 }],
    ['verify/hammock', { ...good, hammocks: [] }],
  ])('notices %s', (code, result) => {
    expect(codes(result)).toContain(code);
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
