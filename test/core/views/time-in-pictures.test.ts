import { describe, expect, test } from 'vitest';
import { dayOf } from '../../../core/calendar';
import { sinkingDay } from '../../../core/evaluation';
import type { EstimateContext } from '../../../core/views/context';
import { people } from '../../../core/views/people';
import { planOf, scheduleView } from '../../../core/views/schedule';
import { dateWords } from '../../../core/views/schedule-axis';
import { shades } from '../../../core/views/schedule-shades';
import type { ScheduleLane } from '../../../core/views';
import { summaryOf } from '../../../core/views/window';
import { awkward } from './awkward';
import { plain } from './laws';

const evaluation = awkward('the example');
const { estimate } = evaluation;
if (estimate === undefined) throw new Error('the example is estimated');
const parted = estimate;
const { problem, schedule } = estimate;
const [activity] = problem.activities;
const [scheduled] = schedule.activities;
if (activity === undefined || scheduled === undefined) throw new Error('the example has work');

interface Change {
  readonly activities?: typeof problem.activities;
  readonly closures?: typeof problem.closures;
  readonly own?: typeof evaluation.project.calendars.closures;
  readonly scheduled?: typeof schedule.activities;
  /** Without words for a project without a last date. */
  readonly deadline?: string;
}
function contextOf({
  activities,
  closures,
  own,
  scheduled: dated,
  deadline = evaluation.project.calendars.deadline ?? '',
}: Change = {}): EstimateContext {
  const { project } = evaluation;
  const { deadline: _deadline, ...calendars } = project.calendars;
  const changed = {
    ...calendars,
    closures: own ?? calendars.closures,
    ...(deadline === '' ? {} : { deadline }),
  };
  const parts = {
    ...parted,
    problem: {
      ...problem,
      activities: activities ?? problem.activities,
      closures: closures ?? problem.closures ?? {},
    },
    schedule: { ...schedule, activities: dated ?? schedule.activities },
  };
  return {
    evaluation: { ...evaluation, project: { ...project, calendars: changed } },
    measures: 'us',
    parts,
    summary: summaryOf(parts),
  };
}

const plainActivity = (id: string, more: Partial<typeof activity> = {}) => {
  const { closures: _closures, windows: _windows, waiting: _waiting, ...rest } = activity;
  return { ...rest, id, title: `Work ${id}`, calendar: 'yard', ...more };
};
const bar = (id: string) => ({
  id,
  title: id,
  from: 0,
  to: 1,
  kind: 'held' as const,
  holds: '',
  couldStart: 0,
  couldStartWords: '',
  words: '',
  why: `activity:${id}`,
});
const lane = (id: string, ...bars: readonly string[]): ScheduleLane => ({
  id,
  title: id,
  part: 'whole',
  bars: bars.map(bar),
});
const LANES = [lane('tanks', 'a', 'b'), lane('sea', 'c'), lane('office', 'd')];
const span = { from: dayOf('2027-01-01'), to: dayOf('2027-12-31') };

describe('what stops work in a span of time', () => {
  test('seasons are shaded on the lanes of the activities they stop, and only those that stop one', () => {
    const closures = {
      turtles: { id: 'turtles', title: 'Turtles', from: '05-01', to: '10-31' },
      nobody: { id: 'nobody', title: 'Nobody', from: '01-01', to: '01-31' },
    };
    const activities = [
      plainActivity('a'),
      plainActivity('b', { closures: ['turtles'] }),
      plainActivity('c', { closures: ['turtles'] }),
      plainActivity('d', { closures: [] }),
    ];
    expect(shades(contextOf({ activities, closures, own: [] }), span, LANES)).toEqual([
      {
        id: 'turtles',
        title: 'Turtles',
        from: dayOf('2027-05-01'),
        to: dayOf('2027-11-01'),
        kind: 'closed',
        lanes: ['tanks', 'sea'],
      },
    ]);
  });

  test('closures of the project are shaded within the span, on the lanes of the calendars they stop', () => {
    const activities = [
      plainActivity('a', { calendar: 'office' }),
      plainActivity('b', { calendar: 'yard' }),
      plainActivity('c', { calendar: 'sea' }),
      plainActivity('d', { calendar: 'office' }),
    ];
    const closed = (id: string, from: string, to: string, ...calendars: ('yard' | 'sea' | 'office')[]) => ({
      id,
      title: `Closed ${id}`,
      from,
      to,
      calendars,
    });
    const own = [
      closed('before', '2026-01-01', '2026-12-31', 'yard'),
      closed('into', '2026-12-01', '2027-01-01', 'yard'),
      closed('within', '2027-03-01', '2027-03-02', 'sea', 'office'),
      closed('out-of', '2027-12-31', '2028-02-01', 'sea'),
      closed('after', '2028-01-01', '2028-02-01', 'yard'),
    ];
    const found = shades(contextOf({ activities, closures: {}, own }), span, LANES);
    expect(found).toEqual([
      {
        id: 'into',
        title: 'Closed into',
        from: span.from,
        to: dayOf('2027-01-02'),
        kind: 'closed',
        lanes: ['tanks'],
      },
      {
        id: 'within',
        title: 'Closed within',
        from: dayOf('2027-03-01'),
        to: dayOf('2027-03-03'),
        kind: 'closed',
        lanes: ['tanks', 'sea', 'office'],
      },
      {
        id: 'out-of',
        title: 'Closed out-of',
        from: dayOf('2027-12-31'),
        to: span.to,
        kind: 'closed',
        lanes: ['sea'],
      },
    ]);
  });

  test('weather windows are shaded once each, within the span, on the lanes that wait for them', () => {
    const summer = { from: '04-15', to: '08-15' };
    const late = { from: '2027-12-01', to: '2028-02-01' };
    const activities = [
      plainActivity('a'),
      plainActivity('b', { windows: [summer] }),
      plainActivity('c', { windows: [summer, late] }),
      plainActivity('d'),
    ];
    expect(shades(contextOf({ activities, closures: {}, own: [] }), span, LANES)).toEqual([
      {
        id: `window-${dayOf('2027-04-15')}-${dayOf('2027-08-15')}`,
        title: 'Weather window',
        from: dayOf('2027-04-15'),
        to: dayOf('2027-08-16'),
        kind: 'window',
        lanes: ['tanks', 'sea'],
      },
      {
        id: `window-${dayOf('2027-12-01')}-${dayOf('2028-02-01')}`,
        title: 'Weather window',
        from: dayOf('2027-12-01'),
        to: span.to + 1,
        kind: 'window',
        lanes: ['sea'],
      },
    ]);
  });
});

describe('bars of the schedule', () => {
  const itemOf = (id: string) => estimate.items.find(item => item.id === id);
  const views = () => scheduleView(contextOf());

  test('stand in the lane of their place, from their first day to the day after their last', () => {
    const lanes = views()?.lanes ?? [];
    const days = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;
    const shift = dayOf('2027-01-04') - days('2027-01-04');
    const shown = lanes.flatMap(one => one.bars.map(each => ({ lane: one.id, bar: each })));
    const working = schedule.activities.filter(one => one.workDays > 0);
    expect(shown.map(one => one.bar.id).toSorted()).toEqual(working.map(one => one.id).toSorted());
    for (const { lane: place, bar: shownBar } of shown) {
      const one = working.find(each => each.id === shownBar.id);
      if (one === undefined) throw new Error('the bar is of an activity');
      expect(itemOf(one.id)?.place).toBe(place);
      expect([shownBar.from, shownBar.to]).toEqual([days(one.start) + shift, days(one.finish) + shift + 1]);
      const isWaiting = problem.activities.find(each => each.id === one.id)?.waiting === true;
      expect(shownBar.kind).toBe(isWaiting ? 'waiting' : one.totalFloat === 0 ? 'held' : 'float');
      expect(
        shownBar.words.endsWith(
          one.totalFloat === 0
            ? 'It holds the finish.'
            : `It may slip ${one.totalFloat} work ${one.totalFloat === 1 ? 'day' : 'days'}.`,
        ),
      ).toBe(true);
      // Ready on the day after the last of those that must be finished before it.
      const before = estimate.relationships.filter(each => each.to === one.id && each.kind === 'FS');
      const ready = before.flatMap(
        each => schedule.activities.find(({ id }) => id === each.from)?.finish ?? [],
      );
      const first = Math.min(shownBar.from, Math.max(...ready.map(date => days(date) + shift + 1)));
      expect(shownBar.couldStart, one.id).toBe(ready.length === 0 ? shownBar.from : first);
      expect(
        shownBar.couldStartWords.startsWith(shownBar.couldStart < shownBar.from ? 'Could start ' : 'Starts '),
      ).toBe(true);
      const [hold] = one.heldBy;
      const by =
        hold === undefined
          ? undefined
          : 'activities' in hold
            ? hold.activities[0]
            : 'activity' in hold
              ? hold.activity
              : hold.kind === 'relationship'
                ? hold.from
                : undefined;
      expect(shownBar.heldBy).toBe(by);
      expect(hold === undefined ? shownBar.holds : '').toMatch(/^$|^Nothing holds it\.$/);
    }
  });

  test('show where they stood in an earlier plan, where that was elsewhere', () => {
    const plan = new Map(planOf(evaluation));
    expect(plan.size).toBe(schedule.activities.length);
    const [first, second] = schedule.activities.filter(one => one.workDays > 0);
    if (first === undefined || second === undefined) throw new Error('there is work');
    plan.set(first.id, { start: '2026-12-01', finish: first.finish });
    plan.set(second.id, { start: second.start, finish: '2026-12-09' });
    const bars = (scheduleView(contextOf(), plan)?.lanes ?? []).flatMap(one => one.bars);
    expect(
      bars
        .filter(one => one.earlier !== undefined)
        .map(one => [one.id, one.earlier])
        .toSorted(),
    ).toEqual(
      [
        [first.id, { from: dayOf('2026-12-01'), to: dayOf(first.finish) + 1 }],
        [second.id, { from: dayOf(second.start), to: dayOf('2026-12-10') }],
      ].toSorted(),
    );
    expect((views()?.lanes ?? []).flatMap(one => one.bars).some(one => one.earlier !== undefined)).toBe(
      false,
    );
  });

  test('end in the sentence with the sinking, the last of them, the last date or how many hold it', () => {
    const { finish = '' } = schedule;
    const said = (deadline: string) => plain(scheduleView(contextOf({ deadline }))?.sentence);
    const last = schedule.activities.find(one => one.finish === finish)?.title ?? '';
    const rest = ` There is work on ${schedule.workDays ?? 0} days.`;
    const sunk = sinkingDay(evaluation)?.date ?? '';
    const holding = schedule.activities.filter(one => one.totalFloat === 0).length;
    const lead = `The ship is sunk on ${dateWords(sunk)}. All is done by ${dateWords(finish)}, when ${last} ends`;
    const dated = (days: number) =>
      new Date(Date.parse(`${finish}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
    expect(said('')).toBe(`${lead}; ${holding} activities hold it.${rest}`);
    expect(said(dated(3))).toBe(`${lead}, 3 calendar days before the last date.${rest}`);
    expect(said(dated(1))).toBe(`${lead}, 1 calendar day before the last date.${rest}`);
    expect(said(dated(0))).toBe(`${lead}, 0 calendar days before the last date.${rest}`);
    expect(said(dated(-2))).toBe(`${lead}, 2 calendar days after the last date.${rest}`);
  });
});

describe('people at work', () => {
  const dated = (id: string, start: string, finish: string, crewSize: number, more: object = {}) => ({
    ...scheduled,
    id,
    start,
    finish,
    crewSize,
    heldBy: [],
    critical: false,
    ...more,
  });
  const [first, second, third] = estimate.items.filter(item => item.crew !== undefined);
  const [resource, another] = problem.resources;
  if (
    first === undefined ||
    second === undefined ||
    third === undefined ||
    resource === undefined ||
    another === undefined
  )
    throw new Error('the example has crews');
  const waits = (id: string) => ({
    critical: true,
    heldBy: [{ kind: 'resource' as const, resource: id, activities: [] }],
  });

  test('are told step by step, with the crew that most of the chain waits for', () => {
    const activities = [
      dated(first.id, '2027-01-04', '2027-01-05', 4, waits(another.id)),
      dated(second.id, '2027-01-05', '2027-01-08', 6, waits(resource.id)),
      dated(third.id, '2027-01-11', '2027-01-11', 2, waits(resource.id)),
    ];
    const shown = people(contextOf({ scheduled: activities }));
    const crew = evaluation.library.rateBook.crews.find(one => one.id === resource.id);
    const size = (crew?.members ?? []).reduce((sum, member) => sum + Number(member.people.value), 0);
    const limit = Math.round(size * resource.capacity);
    expect(shown.holdingTrade).toEqual({
      title: crew?.title.toLowerCase(),
      limit,
      text: `${crew?.title ?? ''}: ${limit} people, all there are`,
    });
    expect(shown.peopleTable.rows.map(row => Object.values(row.cells).map(({ text }) => text))).toEqual([
      ['4 Jan 2027', '4 Jan 2027', '4'],
      ['5 Jan 2027', '5 Jan 2027', '10'],
      ['6 Jan 2027', '8 Jan 2027', '6'],
      ['9 Jan 2027', '10 Jan 2027', '0'],
      ['11 Jan 2027', '11 Jan 2027', '2'],
    ]);
    expect(shown.peopleTable.rows.map(row => row.cells['all']?.why)).toEqual(
      shown.people.map(step => `people:${step.from}`),
    );
    const holds = (id: string) => estimate.items.find(item => item.id === id)?.crew === resource.id;
    const holding = (...ids: readonly (readonly [string, number])[]) =>
      ids.reduce((sum, [id, count]) => sum + (holds(id) ? count : 0), 0);
    expect(shown.people.map(step => step.holding)).toEqual([
      holding([first.id, 4]),
      holding([first.id, 4], [second.id, 6]),
      holding([second.id, 6]),
      0,
      holding([third.id, 2]),
    ]);
    expect(shown.peak).toBe(`peak ${schedule.peakCrew} people`);
    expect(shown.peopleTicks).toEqual([0, 5, 10]);
  });

  test('have no crew that holds the chain where none is waited for first', () => {
    const late = { kind: 'start' as const, date: '2027-01-04' };
    const held = {
      critical: true,
      heldBy: [late, { kind: 'resource' as const, resource: resource.id, activities: [] }],
    };
    const activities = [
      dated(first.id, '2027-01-04', '2027-01-05', 4, held),
      dated(second.id, '2027-01-05', '2027-01-08', 6, { ...waits(resource.id), critical: false }),
    ];
    const shown = people(contextOf({ scheduled: activities }));
    expect(shown.holdingTrade).toBeUndefined();
    expect(shown.people.every(step => step.holding === 0)).toBe(true);
    expect(people(contextOf({ scheduled: [] })).peopleTicks).toEqual([0, 2]);
  });
});
