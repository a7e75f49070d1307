import { describe, expect, test } from 'vitest';
import { BASES } from '../../../core/base';
import type { Holding, ScheduledActivity } from '../../../core/scheduling';
import { holdingWords } from '../../../core/scheduling';
import type { EstimateContext } from '../../../core/views/context';
import { scenariosView } from '../../../core/views/scenarios';
import { scheduleWhy } from '../../../core/views/why-schedule';
import { summaryOf } from '../../../core/views/window';
import { awkward } from './awkward';
import { datesSaid } from '../../../core/views/dates-said';

const evaluation = awkward('the example');
const { estimate } = evaluation;
if (estimate === undefined) throw new Error('the example is estimated');
const parts = estimate;
const { schedule, relationships, problem } = parts;

function contextOf(change: Partial<typeof schedule> = {}): EstimateContext {
  const changed = { ...parts, schedule: { ...schedule, ...change } };
  return { evaluation, measures: 'us', parts: changed, summary: summaryOf(changed) };
}
const [first] = relationships;
const crewed = schedule.activities.find(
  one => one.crewSize > 0 && one.workDays > 0 && relationships.some(each => each.from === one.id),
);
if (first === undefined || crewed === undefined) throw new Error('the example has work in an order');
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const dated = (iso: string) =>
  `${Number(iso.slice(8))} ${MONTHS[Number(iso.slice(5, 7)) - 1] ?? ''} ${iso.slice(0, 4)}`;

describe('an activity that is asked for', () => {
  const told = (change: Partial<ScheduledActivity> = {}) => {
    const activity = { ...crewed, heldBy: [], ...change };
    const activities = schedule.activities.map(one => (one.id === activity.id ? activity : one));
    return scheduleWhy(contextOf({ activities }), `activity:${activity.id}`);
  };

  test('tells its dates, its length, its people and its float, and who comes after it', () => {
    const after = relationships.filter(one => one.from === crewed.id).slice(0, 6);
    expect(told({ critical: true, totalFloat: 7 })).toEqual({
      id: `activity:${crewed.id}`,
      title: crewed.title,
      path: 'Schedule',
      home: 'schedule',
      value: { text: `${dated(crewed.start)} to ${dated(crewed.finish)}`, unit: '' },
      words: 'It holds the finish: it has no float.',
      rows: [
        {
          depth: 0,
          operator: '=',
          value: { text: String(crewed.workDays), why: `worked/${crewed.id}/days` },
          words: 'work days from start to finish',
        },
        {
          depth: 0,
          operator: '',
          value: { text: String(crewed.crewSize), why: `worked/${crewed.id}/crews` },
          words: 'people at work',
        },
        {
          depth: 0,
          operator: '',
          value: { text: '7' },
          words: 'work days it may slip before the finish moves',
        },
      ],
      usedBy: after.map(one => ({
        why: `activity:${one.to}`,
        title: parts.items.find(item => item.id === one.to)?.title,
        view: 'Schedule',
      })),
      bases: BASES,
    });
    expect(told({ critical: false })?.words).toBe('It does not hold the finish: it has float.');
    expect(told({ crewSize: 0 })?.rows.map(row => row.words)).not.toContain('people at work');
  });

  test('of which no sheet knows the length opens nothing for it', () => {
    const unknown = schedule.activities.find(one => !parts.work.result.has(`worked/${one.id}/days`));
    if (unknown === undefined) throw new Error('some activity has no sheet of its own');
    const [row] = scheduleWhy(contextOf(), `activity:${unknown.id}`)?.rows ?? [];
    expect(row?.value).toEqual({ text: String(unknown.workDays) });
  });

  const of = (type: 'FS', from: string): Holding => ({
    kind: 'relationship',
    relationship: 0,
    from,
    type,
    lag: 0,
    lagUnit: 'work-day',
  });
  const other = schedule.activities.find(one => one.id !== crewed.id)?.id ?? '';
  const [resource] = problem.resources;
  test.each<[string, Holding, string | undefined]>([
    ['another before it', of('FS', other), `activity:${other}`],
    ['itself', of('FS', crewed.id), undefined],
    ['the start', { kind: 'start', date: '2027-01-04' }, undefined],
    [
      'a crew that another has',
      { kind: 'resource', resource: resource?.id ?? '', activities: [other, crewed.id] },
      `activity:${other}`,
    ],
    ['a crew that nobody has', { kind: 'resource', resource: resource?.id ?? '', activities: [] }, undefined],
  ])('held by %s leads to what holds it', (_, holding, why) => {
    const row = told({ heldBy: [holding] })?.rows.at(-1);
    expect(row).toEqual({
      depth: 0,
      operator: '',
      value: { text: '', ...(why === undefined ? {} : { why }) },
      words: datesSaid(holdingWords(problem, holding)),
    });
  });
});

describe('the finish and the work days', () => {
  const { criticalChain, finish = '', workDays = 0 } = schedule;
  test('open as the chain that holds them, the last first', () => {
    const told = scheduleWhy(contextOf({ lowerBoundDays: 100, calendarDays: 120 }), 'schedule:finish');
    const chain = criticalChain.toReversed().slice(0, 40);
    const bound = ' No plan of this work takes fewer than 100 calendar days; this one takes 120.';
    expect([told?.title, told?.value, told?.path]).toEqual([
      'Finish',
      { text: dated(finish), unit: '' },
      'Schedule',
    ]);
    expect(told?.words).toBe(
      `The last day of the chain of activities that leads to it, last first. What may slip ends before something else, such as a window, lets the next begin.${bound}`,
    );
    expect(told?.rows.map(row => [row.value.text, row.value.why, row.words])).toEqual(
      chain.map(id => {
        const activity = schedule.activities.find(one => one.id === id);
        const { totalFloat = 0, title = '' } = activity ?? {};
        const spare =
          totalFloat === 0 ? '' : `, may slip ${totalFloat} work day${totalFloat === 1 ? '' : 's'}`;
        return [dated(activity?.finish ?? ''), `activity:${id}`, `${title}${spare}`];
      }),
    );
    const days = scheduleWhy(contextOf({ lowerBoundDays: 100, calendarDays: 120 }), 'schedule:work-days');
    expect([days?.title, days?.value]).toEqual(['Work days', { text: String(workDays), unit: 'work days' }]);
    expect(days?.words).toBe(
      `Days from start to finish on which at least one activity works: not those on which all wait or rest. Float is counted by the calendar of its activity and may be more.${bound}`,
    );
    expect(days?.rows).toEqual(told?.rows);
  });

  test('tell no bound where none is known, and nothing without a finish', () => {
    const { lowerBoundDays: _bound, calendarDays: _days, finish: _finish, ...rest } = schedule;
    const under = (change: object) =>
      scheduleWhy(
        { ...contextOf(), parts: { ...parts, schedule: { ...rest, ...change } } },
        'schedule:finish',
      );
    const plain =
      'The last day of the chain of activities that leads to it, last first. What may slip ends before something else, such as a window, lets the next begin.';
    expect(under({ finish, calendarDays: 120 })?.words).toBe(plain);
    expect(under({ finish, lowerBoundDays: 100 })?.words).toBe(plain);
    expect(under({})).toBeUndefined();
  });
});

test('people of a day are the crews at work on it, from their first day to their last', () => {
  const dayOf = (iso: string) => Math.round(Date.parse(`${iso}T00:00:00Z`) / 86_400_000);
  const shown = scheduleWhy(contextOf(), `people:${dayOf(crewed.start)}`);
  const here = schedule.activities.filter(
    one => one.crewSize > 0 && one.start <= crewed.start && one.finish >= crewed.start,
  );
  expect(shown?.title).toBe(`People at work on ${dated(crewed.start)}`);
  expect(shown?.value).toEqual({
    text: String(here.reduce((sum, one) => sum + one.crewSize, 0)),
    unit: 'people',
  });
  expect(shown?.rows.map(row => [row.operator, row.value.text, row.value.why, row.words])).toEqual(
    here.map((one, at) => [at === 0 ? '=' : '+', String(one.crewSize), `activity:${one.id}`, one.title]),
  );
  const empty = scheduleWhy(contextOf({ activities: [] }), `people:${dayOf(crewed.start)}`);
  expect(empty?.rows.map(row => [row.value.text, row.words])).toEqual([
    ['0', 'no activity with a crew is at work that day'],
  ]);
});

test('hours of all work and of a stage are the sum of their items, the largest first', () => {
  const { money } = parts;
  if (money === undefined) throw new Error('the example has a schedule');
  const column = money.lines.columns.hours;
  for (const rest of ['all', 'tow']) {
    const own = parts.items
      .filter(item => rest === 'all' || item.stage === rest)
      .map(item => ({ item, hours: money.result.number(column, item.id) ?? NaN }))
      .filter(({ hours }) => hours !== 0)
      .toSorted((a, b) => b.hours - a.hours);
    const told = scheduleWhy(contextOf(), `hours:${rest}`);
    const text = (hours: number) =>
      hours.toLocaleString('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 });
    expect(told?.title).toBe(rest === 'all' ? 'Hours of all work' : told?.title);
    expect(told?.title.startsWith('Hours')).toBe(true);
    expect([told?.path, told?.value.unit]).toEqual(['Work, hours', 'h']);
    expect(told?.value.text).toBe(text(own.reduce((sum, { hours }) => sum + hours, 0)));
    expect(told?.rows.map(row => row.operator)).toEqual(own.map((_, at) => (at === 0 ? '=' : '+')));
    expect(told?.rows.map(row => row.value.why)).toEqual(own.map(({ item }) => `lines/${item.id}/hours`));
    expect(told?.rows[0]?.words).toBe(own[0]?.item.title);
  }
});

describe('scenarios', () => {
  const scenario = (id: string, changes: readonly { at: string; to: unknown; note?: string }[] = []) => ({
    id,
    title: `Scenario ${id}`,
    changes: changes.map(one => ({ ...one })),
  });
  const under = (scenarios: readonly ReturnType<typeof scenario>[]) =>
    scenariosView({
      ...contextOf(),
      evaluation: { ...evaluation, project: { ...evaluation.project, scenarios: [...scenarios] as never } },
    });

  test('have a letter, a name and a note to write, and how much they change', () => {
    const { scenarios } = under([
      scenario('one'),
      { ...scenario('two', [{ at: '/vessel/built', to: 1960 }]), note: 'Why not' } as ReturnType<
        typeof scenario
      >,
    ]);
    const read = scenarios.rows.map(row => [
      row.id,
      row.kind,
      ...Object.entries(row.cells).map(([key, { text, edit, remove }]) =>
        [key, text, edit?.kind, edit?.at ?? remove?.at, edit?.label ?? remove?.label].join(' | '),
      ),
    ]);
    expect(read).toEqual([
      [
        ...['one', 'line', 'letter | A |  |  | '],
        'title | Scenario one | text | /scenarios/one/title | Name of scenario A',
        'note | – | text | /scenarios/one/note | Note on scenario A',
        'count | 0 |  |  | ',
        'remove | Remove |  | /scenarios/one | scenario A, Scenario one',
      ],
      [
        ...['two', 'line', 'letter | B |  |  | '],
        'title | Scenario two | text | /scenarios/two/title | Name of scenario B',
        'note | Why not | text | /scenarios/two/note | Note on scenario B',
        'count | 1 |  |  | ',
        'remove | Remove |  | /scenarios/two | scenario B, Scenario two',
      ],
    ]);
  });

  test.each([
    ['/items/tow-tug/crewsAtOnce', { value: '2', unit: 'each' }, 'crews at once', '2'],
    ['/vessel/length', { value: '1430', unit: 'ft' }, 'Vessel, length', '1,430 ft'],
    ['/vessel/length', { value: '12', unit: 4 }, 'Vessel, length', '12'],
    ['/vessel/beam', { value: 12, unit: 'ft' }, 'Vessel, beam', 'value: 12; unit: ft'],
    ['/items/tow-tug', { item: 'tow-tug', include: false, note: 'Left' }, '', 'include: no'],
    [
      '/contingency',
      { policy: 'confidence', confidence: '0.8' },
      'Contingency',
      'policy: confidence; confidence: 0.8',
    ],
    ['/options/shift-pattern', 'two-shifts-five-days', 'Shifts', 'Two shifts, five days'],
    ['/quotes/a/hoursPerUnit', ['x', 'y'], 'Quotes, a, hours per unit', '2 entries'],
  ])('tell the change at %s to %j as words', (at, to, what, said) => {
    const title = parts.items.find(item => item.id === 'tow-tug')?.title ?? '';
    const [row] = under([scenario('one', [{ at, to, note: 'So' }])]).changes.rows;
    const name = at.startsWith('/items/') ? [title, what].filter(part => part !== '').join(', ') : what;
    expect([row?.cells['what']?.text, row?.cells['to']?.text, row?.cells['note']?.text]).toEqual([
      name,
      said,
      'So',
    ]);
    expect(row?.id).toBe(`one${at}`);
    const place = `/scenarios/one/changes/${at.replaceAll('/', '~1')}`;
    expect(row?.cells['note']?.edit).toMatchObject({
      at: `${place}/note`,
      kind: 'text',
      label: `Why scenario A changes ${name}`,
      optional: true,
    });
    expect(row?.cells['remove']?.remove).toEqual({
      at: place,
      label: `the change of ${name} in scenario A`,
    });
  });
});
