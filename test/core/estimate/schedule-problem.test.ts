import { describe, expect, it } from 'vitest';
import {
  isObligation,
  isSpan,
  projectCalendars,
  scheduleProblem,
  type Adjustment,
  type PlannedItem,
} from '../../../core/estimate';
import type { WorkItem } from '../../../core/work';
import { figure, item, small } from './small';

type PlanInput = Parameters<typeof scheduleProblem>[0];

const CALENDARS = {
  start: '2027-01-04',
  federalHolidays: true,
  shiftHours: 10,
  yardDaysAWeek: 6,
  closures: [],
};
const plan = (planned: WorkItem, more: Partial<PlannedItem> = {}): PlannedItem => ({
  item: planned,
  ...{ days: 3, unit: 'work-day', crews: 2, crewSize: 4 },
  ...more,
});

function problemOf(planned: readonly PlannedItem[], more: Partial<PlanInput> = {}) {
  const { library } = small();
  const place = (id: string, touches: string[] = []) => ({ id, title: id, kind: 'ship' as const, touches });
  const window = {
    id: 'calm',
    title: 'Calm',
    weatherShare: figure('0.3', '1'),
    weatherDays: figure('2', 'day'),
  };
  const closure = {
    id: 'storms',
    title: 'Storms',
    from: '06-01',
    to: '11-30',
    basis: 'published' as const,
    source: 'A test',
  };
  return scheduleProblem({
    library: {
      ...library,
      places: [place('hold', ['deck']), place('deck')],
      windows: [window],
      closures: [closure],
    },
    ...{ planned, relationships: [], calendars: CALENDARS, seasons: true },
    ...{ crewLimits: new Map(), placeLimits: new Map(), adjustments: new Map() },
    ...more,
  });
}

describe('an activity', () => {
  const one = (of: WorkItem, more: Partial<PlannedItem> = {}, input: Partial<PlanInput> = {}) =>
    problemOf([plan(of, more)], input).activities[0];

  it('has the days, people and crews of its item, its place and calendar', () => {
    expect(one(item('scrape', { crew: 'gang' }))).toEqual({
      ...{ id: 'scrape', title: 'The scrape', stage: 'clean-up', place: 'hold', calendar: 'yard' },
      ...{ workDays: 3, crewSize: 8, uses: { gang: 2 }, durationUnit: 'work-day', waiting: false },
    });
  });

  it('without a crew is a wait, and with none at work uses none', () => {
    expect(one(item('permit'), { unit: 'day', crews: 0 })).toMatchObject({
      ...{ uses: {}, waiting: true, durationUnit: 'day', crewSize: 0 },
    });
    expect(one(item('permit'), { days: 0, crews: 0 })).toMatchObject({ waiting: false });
    expect(one(item('scrape', { crew: 'gang' }), { crews: 0 })).toMatchObject({ uses: {}, waiting: false });
  });

  it('in a window keeps days free for weather: a share of its own, at least those stated', () => {
    const weather = (days: number) =>
      one(item('tow', { window: 'calm' }), { days })?.consecutive?.weatherDays;
    // 0.3 of 3 is 0.9, of 10 is 3, of 11 is 3.3.
    expect([weather(3), weather(10), weather(11)]).toEqual([2, 3, 4]);
    expect(one(item('scrape'))).not.toHaveProperty('consecutive');
  });

  it('waits for the season where seasons hold, and names no closures elsewhere', () => {
    const tow = item('tow', { closures: ['storms'] });
    expect(one(tow)?.closures).toEqual(['storms']);
    expect(one(tow, {}, { seasons: false })).not.toHaveProperty('closures');
    expect(one(item('scrape'))).not.toHaveProperty('closures');
  });

  it('opens, needs or ends the gas-free state of its place', () => {
    const of = (gasFree: string) => one(item('test', { gasFree }));
    expect(of('opens')).toMatchObject({ opensStates: ['gas-free'] });
    expect(of('needs')).toMatchObject({ needsStates: ['gas-free'] });
    expect(of('loses')).toMatchObject({ endsStates: ['gas-free'] });
    expect(problemOf([]).zoneStates).toEqual([{ id: 'gas-free', title: 'Gas-free', stopLimitDays: 7 }]);
  });

  it('keeps what the planner says of it: not before a day, begun, done, so many days left', () => {
    const change: Adjustment = {
      ...{ item: 'scrape', notBefore: '2027-02-01', actualStart: '2027-02-03', actualFinish: '2027-02-09' },
      remaining: figure('4', 'work-day'),
    };
    const input = { adjustments: new Map([['scrape', change]]), statusDate: '2027-03-01' };
    expect(one(item('scrape'), {}, input)).toMatchObject({
      ...{ notBefore: '2027-02-01', actualStart: '2027-02-03', actualFinish: '2027-02-09', remaining: 4 },
    });
    const { activities, statusDate } = problemOf([plan(item('paint'))], input);
    expect(statusDate).toBe('2027-03-01');
    for (const field of ['notBefore', 'actualStart', 'actualFinish', 'remaining'])
      expect(activities[0]).not.toHaveProperty(field);
    expect(problemOf([plan(item('paint'))])).not.toHaveProperty('statusDate');
  });

  it('says what is new of an item that was planned before', () => {
    const scrape = item('scrape');
    const days = [3, 5].map(days => problemOf([plan(scrape, { days })]).activities[0]?.workDays);
    expect(days).toEqual([3, 5]);
  });
});

describe('the plan around the activities', () => {
  const span = { from: ['clean-up'], to: ['cut', 'tow'], unit: 'day' };
  const yearly = { duration: { driver: 'deck', perUnit: figure('365', 'day/year') } };

  it('leaves out spans and what is owed after the sinking, with their relationships', () => {
    const watch = item('watch', { span });
    const survey = item('survey', yearly);
    expect([isSpan(watch), isSpan(survey), isObligation(watch), isObligation(survey)]).toEqual([
      true,
      false,
      false,
      true,
    ]);
    expect(isObligation(item('wait', { duration: figure('30', 'day') }))).toBe(false);
    expect(isObligation(item('wait', { duration: { driver: 'deck', perUnit: figure('1', 'day/m2') } }))).toBe(
      false,
    );
    const after = (from: string, to: string) => ({ from, to, kind: 'FS' as const });
    const { activities, relationships } = problemOf(
      [plan(item('scrape')), plan(item('paint')), plan(watch), plan(survey)],
      { relationships: [after('scrape', 'paint'), after('scrape', 'survey'), after('watch', 'paint')] },
    );
    expect(activities.map(({ id }) => id)).toEqual(['scrape', 'paint']);
    expect(relationships).toEqual([after('scrape', 'paint')]);
  });

  it('hangs a span from all activities of the stages and items it names, and drops one that has none', () => {
    const of = (planned: readonly WorkItem[]) => problemOf(planned.map(one => plan(one))).hammocks;
    const watch = item('watch', { span, calendar: 'continuous' });
    const [cut, paint, tow] = [
      item('cut', { stage: 'topside' }),
      item('paint'),
      item('tow', { stage: 'tow' }),
    ];
    expect(of([paint, cut, watch, tow])).toEqual([
      {
        ...{ id: 'watch', title: 'The watch', calendar: 'continuous' },
        ...{ fromStartOf: ['paint'], toFinishOf: ['cut', 'tow'] },
      },
    ]);
    expect(of([paint, watch])).toEqual([]);
    expect(of([cut, watch])).toEqual([]);
  });

  it('tells lags in work days or calendar days, and how long may pass at most', () => {
    const link = { from: 'scrape', to: 'paint', kind: 'SS' as const };
    const of = (more: object) =>
      problemOf([plan(item('scrape')), plan(item('paint'))], { relationships: [{ ...link, ...more }] })
        .relationships;
    expect(of({})).toEqual([link]);
    expect(of({ lag: figure('2', 'day') })).toEqual([{ ...link, lag: 2, lagUnit: 'day' }]);
    expect(of({ lag: figure('3', 'work-day'), maximumLag: figure('9', 'day') })).toEqual([
      { ...link, lag: 3, lagUnit: 'work-day', maximumLag: 9 },
    ]);
  });

  it('fields the crews that work, as many as there are or as the limit says; places hold people up to theirs', () => {
    const planned = [
      plan(item('scrape', { crew: 'gang' })),
      plan(item('desk', { crew: 'staff' }), { crews: 0 }),
    ];
    expect(problemOf(planned).resources).toEqual([{ id: 'gang', title: 'Gang', capacity: 4 }]);
    const limits = { crewLimits: new Map([['gang', 2]]), placeLimits: new Map([['deck', 12]]) };
    const { resources, zones, closures } = problemOf(planned, limits);
    expect(resources).toEqual([{ id: 'gang', title: 'Gang', capacity: 2 }]);
    expect(zones).toEqual([
      { id: 'hold', title: 'hold', touches: ['deck'] },
      { id: 'deck', title: 'deck', touches: [], crewLimit: 12 },
    ]);
    expect(closures).toEqual({ storms: { id: 'storms', title: 'Storms', from: '06-01', to: '11-30' } });
  });

  it('keeps hot work from fuel, and crews from an asbestos enclosure, where both are in the plan', () => {
    const with_ = (id: string, hazard: string | undefined, more: Partial<PlannedItem> = {}) =>
      plan(item(id, { crew: 'gang', ...(hazard === undefined ? {} : { hazard }) }), more);
    const { exclusions } = problemOf([
      ...[with_('burn', 'hot-work'), with_('drain', 'fuel-cleaning'), with_('strip', 'asbestos-enclosure')],
      ...[
        with_('nothing', 'hot-work', { days: 0 }),
        with_('idle', undefined, { days: 0 }),
        plan(item('permit')),
      ],
    ]);
    expect(exclusions).toEqual([
      {
        ...{ id: 'hot-work-and-fuel', title: 'Hot work and fuel cleaning', reach: 'touching' },
        ...{ first: ['burn'], second: ['drain'] },
      },
      {
        ...{ id: 'asbestos-enclosure', title: 'Asbestos enclosure', reach: 'zone' },
        ...{ first: ['strip'], second: ['burn', 'drain'] },
      },
    ]);
    expect(problemOf([with_('drain', 'fuel-cleaning'), with_('weld', undefined)]).exclusions).toEqual([]);
    expect(problemOf([with_('burn', 'hot-work'), with_('weld', undefined)]).exclusions).toEqual([]);
  });
});

describe('the calendars of a project', () => {
  it('are office, yard, sea and every day, each with its week, shift, holidays and closures', () => {
    const closure = { id: 'summer', title: 'Summer', from: '07-01', to: '07-14' };
    const of = (federalHolidays: boolean) =>
      projectCalendars({
        ...CALENDARS,
        federalHolidays,
        closures: [{ ...closure, calendars: ['yard', 'sea'] }],
      });
    const told = (holidays: boolean) =>
      Object.entries(of(holidays)).map(([id, one]) => [
        id === one.id,
        ...[one.title, one.weekdays.length, one.shiftHours, one.federalHolidays, one.closures.length],
      ]);
    expect(told(true)).toEqual([
      [true, 'Office days', 5, 8, true, 0],
      [true, 'Yard days', 6, 10, true, 1],
      [true, 'Days at sea', 7, 10, false, 1],
      [true, 'Every day', 7, 10, false, 0],
    ]);
    expect(Object.values(of(false)).some(one => one.federalHolidays)).toBe(false);
    expect(of(true)['yard']).toMatchObject({ weekdays: [1, 2, 3, 4, 5, 6], closures: [closure] });
    expect(of(true)['yard']?.closures[0]).not.toHaveProperty('calendars');
  });
});
