import { checkCalendar, checkClosure } from '../../../core/calendar';
import { networkTimes, type NetworkActivity } from '../../../core/network';
import {
  checkProblem,
  schedule,
  verifySchedule,
  type ScheduledActivity,
  type ScheduleProblem,
  type ScheduleResult,
} from '../../../core/scheduling';
import { after, calendars, problemOf, work } from '../../core/scheduling/problems';
import { examples, type Told } from './example';

const five = { ...calendars['five'], id: 'five', title: 'Five days' } as Parameters<typeof checkCalendar>[0];
const activity = (more: Partial<NetworkActivity> = {}): NetworkActivity => ({
  id: 'A',
  title: 'Cleaning',
  duration: 2,
  ...more,
});
const network = (...activities: NetworkActivity[]) => ({
  findings: (relationships: Parameters<typeof networkTimes>[0]['relationships'] = []) =>
    networkTimes({ activities, relationships }).findings,
});

export const calendarExamples = examples(
  [
    'calendar/closure-order',
    'a closure from 2027-06-02 to 2027-06-01',
    () => checkClosure({ id: 'c', title: 'Nesting', from: '2027-06-02', to: '2027-06-01' }, '/closures/c'),
  ],
  [
    'calendar/date',
    'a holiday on "30 Feb"',
    () => checkCalendar({ ...five, holidays: ['30 Feb'] }, '/calendars/five'),
  ],
  [
    'calendar/no-work-day',
    'a week without a work day',
    () => checkCalendar({ ...five, weekdays: [] }, '/calendars/five'),
  ],
  [
    'calendar/shift-hours',
    'a shift of 25 hours',
    () => checkCalendar({ ...five, shiftHours: 25 }, '/calendars/five'),
  ],
);

export const networkExamples = examples(
  ['network/duration', 'an activity of -1 days', () => network(activity({ duration: -1 })).findings()],
  [
    'network/relationship',
    'a relationship to an activity that is not there',
    () => network(activity()).findings([{ from: 'A', to: 'Z', kind: 'FS' }]),
  ],
  [
    'network/loop',
    'two activities that wait for each other',
    () =>
      network(activity(), activity({ id: 'B', title: 'Towing' })).findings([
        { from: 'A', to: 'B', kind: 'FS' },
        { from: 'B', to: 'A', kind: 'FS' },
      ]),
  ],
);

const one =
  (more: Parameters<typeof work>[2], extra: Partial<ScheduleProblem> = {}) =>
  () =>
    checkProblem(problemOf([work('A', 2, more)], [], extra));

export const problemExamples = examples(
  ['schedule/date', 'an activity not before 30 February', one({ notBefore: '2027-02-30' })],
  [
    'schedule/duplicate',
    'two activities with one id',
    () => checkProblem(problemOf([work('A', 1), work('A', 1)])),
  ],
  [
    'schedule/duration',
    'an activity without work days',
    () => checkProblem(problemOf([{ id: 'A', title: 'A', stage: 'clean-up', calendar: 'five' }])),
  ],
  [
    'schedule/infeasible',
    'ten days of work in a window of two',
    () =>
      schedule(problemOf([work('A', 10, { deadline: '2027-03-02' })]), { schedules: 10, seed: 1 }).findings,
  ],
  [
    'schedule/lag',
    'a relationship of at least 3 and at most 1 days',
    () => checkProblem(problemOf([work('A', 1), work('B', 1)], [after('A', 'B', { lag: 3, maximumLag: 1 })])),
  ],
  [
    'schedule/loop',
    'two activities that wait for each other',
    () => checkProblem(problemOf([work('A', 1), work('B', 1)], [after('A', 'B'), after('B', 'A')])),
  ],
  [
    'schedule/mode',
    'the second of one crew',
    one({ modes: [{ crewSize: 1, workDays: 1, uses: {} }], plannedMode: 1 }),
  ],
  ['schedule/progress', 'a finish without a start', one({ actualFinish: '2027-03-01' })],
  [
    'schedule/state-not-opened',
    'work that needs a gas-free zone, and nothing frees it',
    one(
      { needsStates: ['gas-free'], place: 'bow' },
      { zones: [{ id: 'bow', title: 'Bow' }], zoneStates: [{ id: 'gas-free', title: 'Gas-free' }] },
    ),
  ],
  [
    'schedule/unknown-activity',
    'a relationship to an activity that is not there',
    () => checkProblem(problemOf([work('A', 1)], [after('A', 'Z')])),
  ],
  ['schedule/unknown-calendar', 'an activity on a calendar that is not there', one({ calendar: 'none' })],
  ['schedule/unknown-closure', 'an activity with a closure that is not there', one({ closures: ['none'] })],
  ['schedule/unknown-resource', 'an activity with a crew that is not there', one({ uses: { nobody: 1 } })],
  ['schedule/unknown-zone', 'an activity in a zone that is not there', one({ place: 'nowhere' })],
  [
    'schedule/unknown-zone-state',
    'an activity that ends a state that is not there',
    one({ endsStates: ['none'] }),
  ],
  [
    'schedule/whole-number',
    'an activity of one and a half work days',
    () => checkProblem(problemOf([work('A', 1.5)])),
  ],
);

const PROBLEM: ScheduleProblem = problemOf(
  [
    work('A', 3, {
      uses: { crew: 1 },
      place: 'bow',
      crewSize: 2,
      notBefore: '2027-03-02',
      endsStates: ['gas-free'],
    }),
    work('B', 2, { uses: { crew: 1 }, place: 'bow', crewSize: 2, opensStates: ['gas-free'] }),
    work('C', 2, { place: 'midship', crewSize: 1 }),
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
let kept: ScheduleResult | undefined;
const good = () => (kept ??= schedule(PROBLEM, { schedules: 300, seed: 1 }));
const moved = (id: string, change: Partial<ScheduledActivity>) => (): readonly Told[] =>
  verifySchedule(PROBLEM, {
    ...good(),
    activities: good().activities.map(a => (a.id === id ? { ...a, ...change } : a)),
  });
const told = (change: Partial<ScheduleResult>) => () => verifySchedule(PROBLEM, { ...good(), ...change });
/** The same problem with work that has begun or a day from which is planned, against the schedule made before. */
const under =
  (id: string, change: Partial<Parameters<typeof work>[2]>, extra: Partial<ScheduleProblem> = {}) =>
  () =>
    verifySchedule(
      {
        ...PROBLEM,
        ...extra,
        activities: PROBLEM.activities.map(a => (a.id === id ? { ...a, ...change } : a)),
      },
      good(),
    );

export const verifyExamples = examples(
  [
    'verify/actual',
    'work that began the day before is dated as planned',
    under('C', { actualStart: '2027-03-10' }, { statusDate: '2027-03-11' }),
  ],
  ['verify/bound', 'a least possible length of 99 days', told({ lowerBoundDays: 99 })],
  [
    'verify/capacity',
    'two activities of one crew on one day',
    moved('B', { start: '2027-03-04', finish: '2027-03-05' }),
  ],
  ['verify/consecutive', 'a tow with a pause', moved('tow', { start: '2027-03-18', finish: '2027-03-27' })],
  ['verify/crew', 'a crew of 9 that nobody asked for', moved('A', { crewSize: 9 })],
  [
    'verify/deadline',
    'a finish after the deadline',
    moved('D', { start: '2027-03-30', finish: '2027-03-31' }),
  ],
  ['verify/duration', 'four days where three are due', moved('A', { finish: '2027-03-05' })],
  ['verify/exclusion', 'excluded work on one day', moved('C', { start: '2027-03-10', finish: '2027-03-11' })],
  ['verify/finish', 'a last day that no activity has', told({ finish: '2027-04-01' })],
  ['verify/hammock', 'a span without dates', told({ hammocks: [] })],
  ['verify/idle-finish', 'a finish on a Saturday', moved('C', { start: '2027-03-12', finish: '2027-03-13' })],
  ['verify/idle-start', 'a start on a Saturday', moved('C', { start: '2027-03-13', finish: '2027-03-15' })],
  [
    'verify/maximum-lag',
    'nine days where at most four may lie between',
    moved('done', { start: '2027-03-24', finish: '2027-03-24' }),
  ],
  [
    'verify/missing',
    'an activity without dates',
    () => verifySchedule(PROBLEM, { ...good(), activities: good().activities.slice(1) }),
  ],
  ['verify/not-before', 'a start before its day', moved('A', { start: '2027-03-01', finish: '2027-03-03' })],
  ['verify/optimal', 'said to be the best without proof', told({ status: 'optimal', lowerBoundDays: 1 })],
  ['verify/order', 'a finish before the start', moved('C', { start: '2027-03-12', finish: '2027-03-11' })],
  [
    'verify/peak',
    'a peak of 7 where 1 is used',
    told({ resourcePeaks: { crew: { units: 7, date: '2027-03-02' } } }),
  ],
  [
    'verify/relationship',
    'a start too soon after the work before',
    moved('C', { start: '2027-03-08', finish: '2027-03-09' }),
  ],
  ['verify/start', 'a first day before every activity', told({ start: '2027-02-01' })],
  [
    'verify/status-date',
    'work planned before the day from which is planned',
    under('C', {}, { statusDate: '2027-04-01' }),
  ],
  [
    'verify/zone-state',
    'work in a zone that is not free of gas',
    moved('D', { start: '2027-03-04', finish: '2027-03-05' }),
  ],
);
