import { describe, expect, test } from 'vitest';
import type { EstimateContext } from '../../../core/views/context';
import { dateWords } from '../../../core/views/schedule-axis';
import { sinkingView } from '../../../core/views/sinking';
import { openingWorkTable, yardstickTable } from '../../../core/views/sinking-tables';
import { summaryOf } from '../../../core/views/window';
import { openingWork, sinkingDay } from '../../../core/evaluation';
import { plain } from './laws';
import { screened } from './everything';

type Upright = NonNullable<EstimateContext['evaluation']['upright']>;

function contextOf(change: Partial<Upright> = {}, measures: 'us' | 'metric' = 'us'): EstimateContext {
  const evaluation = screened();
  const { estimate, upright } = evaluation;
  if (estimate === undefined || upright === undefined) throw new Error('the document is screened');
  return {
    evaluation: { ...evaluation, upright: { ...upright, ...change } },
    measures,
    parts: estimate,
    summary: summaryOf(estimate),
  };
}
function viewOf(change: Partial<Upright> = {}, measures: 'us' | 'metric' = 'us') {
  const view = sinkingView(contextOf(change, measures));
  if (view === undefined) throw new Error('there is a screen');
  return view;
}
type Stage = Upright['stages'][number];
const stage = (t: number, more: Partial<Stage> = {}): Stage => ({
  t,
  level: 1,
  gm: 0.5,
  heel: 2,
  list: 1,
  trim: 0,
  draught: 4,
  ...more,
});
const texts = (ticks: readonly { readonly text: string }[]) => ticks.map(({ text }) => text).join(' ');

describe('the moments of a sinking', () => {
  test.each([
    [0, '0 s'],
    [59.4, '59 s'],
    [59.5, '1 min 0 s'],
    [60, '1 min 0 s'],
    [125.2, '2 min 5 s'],
  ])('%d seconds after the release are told as %s', (t, said) => {
    const { curve, stages } = viewOf({ stages: [stage(t)] });
    expect(curve[0]?.time).toBe(said);
    expect(stages.rows[0]?.cells['time']?.text).toBe(said);
  });

  test('are drawn in metres and told in the reader’s measures', () => {
    const one = stage(30, { level: 3.048, heel: -3.26, list: -1.24, draught: 5, event: 'deck edge under' });
    expect(viewOf({ stages: [one] }).curve).toEqual([
      {
        t: 30,
        level: 3.048,
        draught: 5,
        heel: -3.26,
        worst: 3.26,
        list: -1.24,
        time: '30 s',
        heelWords: '3.3° to port',
        worstWords: '3.3° to port',
        levelWords: '10.0',
        listWords: '1.2°',
        event: 'deck edge under',
      },
    ]);
    expect(viewOf({ stages: [one] }, 'metric').curve[0]?.levelWords).toBe('3.0');
    const { heel: _heel, event: _event, ...flat } = one;
    expect(viewOf({ stages: [flat] }).curve[0]).toMatchObject({ heelWords: 'no balance', event: '' });
  });

  test('stand in a table with what happens, each opening the verdict', () => {
    const { heel: _heel, ...flat } = stage(60, { event: 'bow on the bottom' });
    const { stages } = viewOf({ stages: [stage(0, { heel: 4.56, list: 0, gm: 0.3048 }), flat] });
    expect(
      stages.rows.map(row => [row.id, row.kind, ...Object.values(row.cells).map(({ text }) => text)]),
    ).toEqual([
      ['0', 'line', '0 s', '3.3', '1.0', '4.6', '0.0', ''],
      ['1', 'line', '1 min 0 s', '3.3', '1.6', 'none', '1.0', 'bow on the bottom'],
    ]);
    expect(stages.rows[0]?.cells['level']?.why).toBe('upright:verdict');
    expect(stages.rows[0]?.cells['heel']?.why).toBe('upright:verdict');
    expect([stages.id, stages.caption]).toEqual(['stages', 'The sinking by time']);
    expect(stages.columns.map(column => column.title)).toEqual([
      'Time',
      'Flood level',
      'GM, likely',
      'Heel, worst',
      'List, likely',
      'What happens',
    ]);
    expect(plain(stages.note)).toMatch(
      /^Heel, worst: the greatest angle .* over the range of KG; .*List, likely: the angle .* likely values/,
    );
  });

  test('five of them stand side by side: all of five, else the first, the last and the worst between', () => {
    const at = (heels: readonly number[]) =>
      viewOf({ stages: heels.map((heel, place) => stage(place * 10, { heel })) }).strip.map(({ t }) => t);
    expect(at([1, 2, 3, 4, 5])).toEqual([0, 10, 20, 30, 40]);
    // Of nine moments every second one; the worst takes the place of the one between that is nearest to it.
    expect(at([0, 0, 0, 0, 0, -9, 0, 0, 8])).toEqual([0, 20, 50, 60, 80]);
    expect(at([0, 0, 0, 9, 0, 0, 0, 0, 0])).toEqual([0, 30, 40, 60, 80]);
    expect(at([0, 0, 0, 0, 0, 0, 9, 0, 0])).toEqual([0, 20, 40, 60, 80]);
  });
});

describe('the axes of a sinking', () => {
  test.each([
    [60, '0 1'],
    [480, '0 1 2 3 4 5 6 7 8'],
    [481, '0 2 4 6 8 10'],
    [3600, '0 10 20 30 40 50 60'],
    [30, '0 1'],
  ])('of %d seconds has minutes %s', (t, said) => {
    const { timeTicks } = viewOf({ stages: [stage(t)] });
    expect(texts(timeTicks)).toBe(said);
    expect(timeTicks.map(({ at }) => at)).toEqual(said.split(' ').map(minute => Number(minute) * 60));
  });

  test.each([
    [{ heel: 2, list: 1 }, '0 5 10'],
    [{ heel: -19, list: 1 }, '0 5 10 15 20'],
    [{ heel: 2, list: -38 }, '0 10 20 30 40'],
  ])('of %j has degrees %s', (more, said) => {
    expect(texts(viewOf({ stages: [stage(10, more)] }).heelTicks)).toBe(said);
  });

  test('of the level reaches the depth of the ship, in the reader’s unit', () => {
    const [us, metric] = [viewOf(), viewOf({}, 'metric')];
    // The ship of the example is 38 feet deep, 11.58 m.
    expect([us.levelUnit, texts(us.levelTicks)]).toEqual(['ft', '0 10 20 30 40']);
    expect([metric.levelUnit, texts(metric.levelTicks)]).toEqual(['m', '0 5 10 15']);
    expect(us.levelTicks.map(({ at }) => at.toFixed(3))).toEqual([
      '0.000',
      '3.048',
      '6.096',
      '9.144',
      '12.192',
    ]);
    expect(metric.levelTicks.map(({ at }) => at)).toEqual([0, 5, 10, 15]);
    expect(us.depth).toBeCloseTo(38 * 0.3048, 3);
    expect(us.beam).toBeCloseTo(60 * 0.3048, 3);
  });
});

describe('what the screen says', () => {
  test('is a sentence with heel and time, and the picture in words', () => {
    const view = viewOf({
      verdict: 'leans',
      greatestHeelDegrees: 12.5,
      sinkMinutes: 4.5,
      stages: [stage(0, { heel: 0 }), stage(90, { heel: 1 })],
      reasons: ['the beam is 10 m'],
      afterDeckEdge: { airCubicMetres: 1, notes: ['she leans 1 m'] },
    });
    // The sinking of the example waits for its window of weather and lasts a day.
    const sunk = sinkingDay(contextOf().evaluation)?.date ?? '';
    expect(plain(view.sentence)).toBe(
      `The screen says: leans; greatest heel 13° at the worst, under in 4 min 30 s. The ship is sunk on ${dateWords(sunk)}.`,
    );
    expect(view.words).toBe(
      'The ship through the sinking in 2 sections: 0 s, heel at worst 0.0°; 1 min 30 s, heel at worst 1.0° to starboard.',
    );
    // Ten metres are 32.8 feet, as whole as they were written; one metre is 3.
    expect(view.reasons).toEqual(['The beam is 33 ft.']);
    expect(view.afterDeckEdge).toEqual(['she leans 3 ft']);
  });

  test('of the compartments is what each needs, by its name, in the reader’s measures', () => {
    const context = contextOf();
    const [sized] = context.evaluation.upright?.sizing ?? [];
    const [space] = context.evaluation.project.vessel.compartments;
    if (sized === undefined || space === undefined) throw new Error('the document has spaces');
    const { note: _note, ...one } = sized;
    const sizing = [
      {
        ...one,
        compartment: space.id,
        openings: 3,
        area: 0.92903,
        cutLength: 3.048,
        ventCount: 2,
        fillMinutes: 4.25,
      },
      {
        ...one,
        compartment: 'elsewhere',
        openings: 0,
        area: 0,
        cutLength: 0,
        ventCount: 0,
        note: 'Within 1.0 m',
      },
    ];
    const { rows, id, caption } = viewOf({ sizing }).sizing;
    expect([id, caption]).toEqual(['sizing', 'Openings for even flooding']);
    expect(
      rows.map(row => [row.id, row.subject, ...Object.values(row.cells).map(({ text }) => text)]),
    ).toEqual([
      [space.id, space.id, space.title, '3', '10.0', '10.0', '2', '4.3', ''],
      [
        'elsewhere',
        'elsewhere',
        'elsewhere',
        '0',
        '0.0',
        '0.0',
        '0',
        rows[1]?.cells['minutes']?.text,
        'Within 3.3 ft',
      ],
    ]);
    expect(Object.values(rows[0]?.cells ?? {}).map(({ why }) => why)).toEqual([
      undefined,
      ...['openings', 'area', 'cut', 'vents', 'minutes'].map(() => 'upright:verdict'),
      undefined,
    ]);
  });

  test('of public rules is told as met or not, with what she has', () => {
    const { upright } = contextOf().evaluation;
    if (upright === undefined) throw new Error('the document is screened');
    const rule = {
      condition: 'afloat before the sinking' as const,
      rule: 'A rule',
      asks: 'for much',
      found: 0.456,
      unit: '1' as const,
      meets: true,
    };
    const { found: _found, ...unfound } = rule;
    const yardsticks = [rule, { ...unfound, unit: 'm' as const, meets: false }];
    const { id, rows } = yardstickTable({ ...upright, yardsticks });
    expect([id, ...rows.map(row => row.id)]).toEqual(['yardsticks', '0', '1']);
    expect(rows.map(row => Object.values(row.cells).map(({ text }) => text))).toEqual([
      ['A rule', 'afloat before the sinking', 'for much', '0.46', '', 'yes'],
      ['A rule', 'afloat before the sinking', 'for much', 'no balance', 'm', 'no'],
    ]);
  });

  test('of the work that follows from the openings is what the estimate has of it', () => {
    const context = contextOf({}, 'metric');
    const work = openingWork(context.parts);
    const { id, rows } = openingWorkTable(context);
    expect(id).toBe('opening-work');
    expect(rows.map(row => [row.id, row.subject, row.kind])).toEqual(
      work.map(one => [one.id, one.id, 'line']),
    );
    const rounded = (value: number | undefined, decimals: number) =>
      value === undefined
        ? 'none'
        : value.toLocaleString('en-US', { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
    for (const [place, one] of work.entries()) {
      const cells = rows[place]?.cells;
      expect(cells?.['title']?.text).toBe(one.title);
      expect(cells?.['hours']?.text).toBe(rounded(one.hours, 1));
      expect(cells?.['crews']?.text).toBe(rounded(one.crews, 0));
      expect(cells?.['days']?.text).toBe(rounded(one.workDays, 0));
      expect(cells?.['cost']?.text).toBe(rounded(one.cost, 0));
      expect(cells?.['quantity']?.text).toBe(rounded(one.quantity, 1));
      if (one.unit === 'each') expect(cells?.['unit']?.text).toBe('each');
    }
  });
});

test('a ship whose beam is not known is not drawn through her sinking', () => {
  const { evaluation, ...context } = contextOf();
  const { upright: _upright, ...unscreened } = evaluation;
  expect(sinkingView({ ...context, evaluation: unscreened })).toBeUndefined();
});
