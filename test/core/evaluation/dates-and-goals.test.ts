import { describe, expect, it } from 'vitest';
import { scheduleProblem, type PlannedItem } from '../../../core/estimate';
import { shippedLibrary } from '../../../core/evaluation';
import { goalFindings, unmetGoals } from '../../../core/evaluation/goals';
import {
  scheduledInSteps,
  scheduledOnce,
  scheduledOrHeld,
  verifiedOnce,
} from '../../../core/evaluation/scheduled-once';
import { itemTimings, obligationStart, wholeSpan } from '../../../core/evaluation/timing';
import type { Project } from '../../../core/project';
import { schedule } from '../../../core/scheduling';
import type { WorkItem } from '../../../core/work';
import { demoProject } from './demo';
import { drivers, figure, item, small } from '../estimate/small';

const EFFORT = { schedules: 3, seed: 1 };

/** A week of scraping, two of painting behind it, a wait of 61 days behind that, and three watches over the first two. */
function plan(weeks = 1) {
  const { library } = small();
  const planned = (of: WorkItem, days: number, unit: 'work-day' | 'day' = 'work-day'): PlannedItem => ({
    ...{ item: of, days, unit, crews: 0, crewSize: 0 },
  });
  const watch = (unit: string) =>
    item(`watch-by-${unit}`, { span: { from: ['scrape'], to: ['paint'], unit }, calendar: 'yard' });
  const yearly = { duration: { driver: 'deck', perUnit: figure('365', 'day/year') } };
  const items = [
    planned(item('scrape'), 5 * weeks),
    planned(item('paint'), 10),
    planned(item('dry', { calendar: 'continuous' }), 61, 'day'),
    ...['work-day', 'day', 'month'].map(unit => planned(watch(unit), 0)),
    planned(item('survey', { ...yearly, after: [{ item: 'scrape' }, { item: 'paint' }] }), 730, 'day'),
    planned(item('report', { ...yearly, after: [{ item: 'no-such-item' }] }), 30, 'day'),
  ];
  const problem = scheduleProblem({
    library: {
      ...library,
      places: [{ id: 'hold', title: 'Hold', kind: 'ship', touches: [] }],
    },
    planned: items,
    relationships: [
      { from: 'scrape', to: 'paint', kind: 'FS' },
      { from: 'paint', to: 'dry', kind: 'FS' },
    ],
    calendars: { start: '2027-02-01', federalHolidays: false, shiftHours: 8, yardDaysAWeek: 5, closures: [] },
    ...{ crewLimits: new Map(), placeLimits: new Map(), adjustments: new Map(), seasons: false },
  });
  return { items, problem };
}

describe('when items happen, as money sees it', () => {
  // Monday 1 February 2027 to Friday 5; 8 to 19 February; 20 February to 21 April.
  const made = () => {
    const { items, problem } = plan();
    return { items, schedule: schedule(problem, EFFORT) };
  };
  const priceDate = '2026-12-15';

  it('is the month of the middle of their dates, in months from the price date, and their days', () => {
    const { items, schedule } = made();
    const timings = itemTimings(items, schedule, { priceDate });
    expect(timings.get('scrape')).toEqual({ months: '2', days: '5' });
    // The middle of 20 February to 21 April is in March.
    expect(timings.get('dry')).toEqual({ months: '3', days: '61' });
    const held = itemTimings(items, schedule, { priceDate, fixedYear: 2026 });
    expect(held.get('dry')).toEqual({ months: '0', days: '61' });
    const later = itemTimings(items, schedule, { priceDate: '2027-01-15' });
    expect(later.get('dry')).toEqual({ months: '2', days: '61' });
  });

  it('of a span is how long it lasts in its unit: work days, calendar days, months to a tenth', () => {
    const { items, schedule } = made();
    const timings = itemTimings(items, schedule, { priceDate });
    // 1 to 19 February: 15 work days, 19 days, 19 ÷ 30.44 = 0.6 months.
    expect(timings.get('watch-by-work-day')).toEqual({ span: '15', months: '2', days: '15' });
    expect(timings.get('watch-by-day')).toEqual({ span: '19', months: '2', days: '19' });
    expect(timings.get('watch-by-month')).toEqual({ span: '0.6', months: '2', days: '0.6' });
  });

  it('of what is owed afterwards begins when the last it follows has finished, else with the whole', () => {
    const { items, schedule } = made();
    expect(obligationStart(['scrape', 'paint'], schedule)).toBe('2027-02-19');
    expect(obligationStart(['scrape'], schedule)).toBe('2027-02-05');
    expect(obligationStart([], schedule)).toBe('2027-04-21');
    const turned = { ...schedule, activities: schedule.activities.toReversed() };
    expect(obligationStart(['scrape', 'paint'], turned)).toBe('2027-02-19');
    const timings = itemTimings(items, schedule, { priceDate });
    // The middle of two years from 19 February 2027 is 19 February 2028; of 30 days from 21 April, 6 May.
    expect(timings.get('survey')).toEqual({ months: '14', days: '730' });
    expect(timings.get('report')).toEqual({ months: '5', days: '30' });
  });

  it('has a first and a last day, and none without activities', () => {
    const { schedule } = made();
    expect(wholeSpan(schedule)).toMatchObject({
      start: '2027-02-01',
      finish: '2027-04-21',
      calendarDays: 80,
    });
    const { finish: _finish, ...endless } = schedule;
    expect(() => wholeSpan(endless)).toThrow(/no dates/);
  });
});

describe('a schedule is made once', () => {
  it('for a problem that says the same, under one seed and with one number of passes', () => {
    const first = scheduledOnce(plan().problem, EFFORT);
    expect(scheduledOnce(plan().problem, EFFORT).schedule).toBe(first.schedule);
    expect(scheduledOnce(plan().problem, { ...EFFORT, seed: 2 }).schedule).not.toBe(first.schedule);
    expect(scheduledOnce(plan().problem, { ...EFFORT, schedules: 4 }).schedule).not.toBe(first.schedule);
    expect(scheduledOnce(plan(2).problem, EFFORT).schedule.activities[0]?.workDays).toBe(10);
    expect(scheduledOnce(plan().problem, EFFORT).schedule).toBe(first.schedule);
  });

  it('is forgotten when twelve others were asked for since, and kept while it is', () => {
    const effort = (seed: number) => ({ schedules: 2, seed: 100 + seed });
    const first = scheduledOnce(plan().problem, effort(0)).schedule;
    for (let other = 1; other <= 11; other++) scheduledOnce(plan().problem, effort(other));
    expect(scheduledOnce(plan().problem, effort(0)).schedule).toBe(first);
    for (let other = 12; other <= 22; other++) scheduledOnce(plan().problem, effort(other));
    expect(scheduledOnce(plan().problem, effort(0)).schedule).toBe(first);
    for (let other = 23; other <= 34; other++) scheduledOnce(plan().problem, effort(other));
    expect(scheduledOnce(plan().problem, effort(0)).schedule).not.toBe(first);
  });

  it('takes the room of one however often it is asked for', () => {
    const effort = (seed: number) => ({ schedules: 2, seed: 200 + seed });
    const first = scheduledOnce(plan().problem, effort(0)).schedule;
    for (let time = 0; time < 15; time++) scheduledOnce(plan().problem, effort(1));
    expect(scheduledOnce(plan().problem, effort(0)).schedule).toBe(first);
  });

  it('in steps too, and then is known at once', () => {
    const effort = { schedules: 3, seed: 77 };
    const steps = [...scheduledInSteps(plan().problem, effort)].length;
    expect(steps).toBeGreaterThan(0);
    expect([...scheduledInSteps(plan().problem, effort)]).toEqual([]);
    const { schedule, datesHeld } = scheduledOrHeld(plan().problem, effort, undefined);
    expect([schedule.finish, datesHeld]).toEqual(['2027-04-21', undefined]);
  });

  it('and an unknown plan takes the dates held, where they are of all its activities and spans', () => {
    const held = scheduledOnce(plan().problem, EFFORT).schedule;
    const effort = { schedules: 3, seed: 88 };
    const slower = plan(2).problem;
    expect(scheduledOrHeld(slower, effort, held)).toEqual({
      problem: slower,
      schedule: held,
      datesHeld: true,
    });
    const without = (list: 'activities' | 'hammocks') => ({ ...held, [list]: held[list].slice(1) });
    // A week later than the example.
    for (const list of ['activities', 'hammocks'] as const) {
      const made = scheduledOrHeld(slower, { ...effort, seed: 89 }, without(list));
      expect([made.datesHeld, made.schedule.finish]).toEqual([undefined, '2027-04-28']);
    }
    // One that was scheduled before has its own dates, whatever is held.
    const { datesHeld, schedule } = scheduledOrHeld(plan().problem, EFFORT, { ...held });
    expect([datesHeld, schedule === held]).toEqual([undefined, true]);
    expect(verifiedOnce(plan().problem, held)).toEqual([]);
  });
});

describe('the clean-up goals of a scenario', () => {
  const { materials, ...shipped } = shippedLibrary();
  const [oil, paint] = materials;
  if (oil === undefined || paint === undefined) throw new Error('the library has materials');
  const [deck] = drivers();
  if (deck === undefined) throw new Error('two drivers');
  const library = {
    ...shipped,
    materials: [oil, paint],
    drivers: [
      { ...deck, id: 'oily', material: oil.id },
      { ...deck, id: 'painted', material: paint.id },
    ],
  };
  const wash = item('wash', { meets: [oil.id] });
  const wipe = item('wipe', { meets: [oil.id, oil.id] });
  const of = (items: readonly WorkItem[], change: Partial<Project> = {}, ship = ['oily']) =>
    unmetGoals({ ...demoProject(), items: [], ownItems: [], ...change }, library, new Set(ship), items, [
      wash,
      wipe,
    ]);
  const unmet = (...leftOut: string[]) => [{ material: oil.id, title: oil.title, goal: oil.goal, leftOut }];

  it('are met when all items that meet one are in, and not when one is left out or brought to nothing', () => {
    expect(of([wash, wipe])).toEqual([]);
    expect(of([wash])).toEqual(unmet('wipe'));
    expect(of([])).toEqual(unmet('wash', 'wipe'));
    const nothing = { item: 'wash', note: '', quantity: figure('0.0', 'm2') };
    expect(of([wash, wipe], { items: [nothing] })).toEqual(unmet('wash'));
    expect(of([wash, wipe], { items: [{ ...nothing, quantity: figure('1', 'm2') }] })).toEqual([]);
  });

  it('are met by an item of the project’s own instead', () => {
    const own = item('own-way', { meets: [oil.id] });
    expect(of([own], { ownItems: [own] })).toEqual([]);
    expect(of([own, wash])).toEqual(unmet('wipe'));
  });

  it('matter for a material on board alone', () => {
    expect(of([], {}, [])).toEqual([]);
    const [left] = of([wash, wipe], {}, ['oily', 'painted']);
    expect(left).toEqual({ material: paint.id, title: paint.title, goal: paint.goal, leftOut: [] });
  });

  it('left unmet are told at the item left out, else at the material', () => {
    expect(goalFindings(unmet('wipe', 'wash'))).toMatchObject([
      { code: 'goals/unmet', weight: 'warns', place: '/items/wipe' },
    ]);
    const [found] = goalFindings(unmet());
    expect(found?.place).toBe(`templates/materials/${oil.id}`);
    expect(found?.message).toBe(
      `${oil.title} is on board and the scenario leaves its clean-up goal unmet: ${oil.goal}`,
    );
  });
});
