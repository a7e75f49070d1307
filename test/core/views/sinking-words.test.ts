import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import { choiceRows, settlingLine, windowRows, type SinkingView, type TableRows } from '../../../core/views';
import { settlesWords } from '../../../core/views/sinking-tables';
import { DEMO, evaluatedAs, awkward } from './awkward';
import { brokenWords, plain } from './laws';

const screened = evaluatedAs(DEMO, { upright: true });
const { upright } = screened;
if (upright === undefined) throw new Error('the example is screened');
type Upright = typeof upright;
const [stage] = upright.stages;
const [sized] = upright.sizing;
if (stage === undefined || sized === undefined) throw new Error('the example sinks in stages');

const under = (change: Partial<Upright>): Evaluation => ({ ...screened, upright: { ...upright, ...change } });
function viewOf(evaluation: Evaluation, measures: 'us' | 'metric' = 'us'): SinkingView {
  const view = windowRows(DEMO, evaluation, measures, undefined)?.rows.sinking;
  if (view === undefined) throw new Error('there is a screen');
  return view;
}
const cells = (table: TableRows, row: number, ...keys: string[]) =>
  keys.map(key => table.rows[row]?.cells[key]?.text);
const unitsOf = (table: TableRows) => table.columns.flatMap(column => column.unit ?? []);

describe('a screen without a balance', () => {
  const { greatestHeelDegrees: _heel, lowestGmMetres: _gm, sinkMinutes: _minutes, ...rest } = upright;
  const lost: Evaluation = { ...screened, upright: { ...rest, verdict: 'may roll over' } };

  test('says so in the sentence and beside the verdict, and tells no heel and no time', () => {
    expect(plain(viewOf(lost).sentence)).toMatch(
      /^The screen says: may roll over; no balance below 60° at the worst\. The ship is sunk on \d+ \w{3} \d{4}\.$/,
    );
    const bottom = windowRows(DEMO, lost, 'us', undefined)?.rows.bottom.find(cell => cell.key === 'upright');
    expect(bottom).toMatchObject({ value: { text: 'May roll over' }, beside: 'screening' });
  });

  test('a moment without a balance is told in words, and the picture still finds its worst moment', () => {
    const { heel: _none, ...flat } = stage;
    const fallen = Array.from({ length: 7 }, (_, at) => ({ ...(at === 4 ? flat : stage), t: at * 60 }));
    const view = viewOf(under({ stages: fallen }));
    expect(view.stages.rows.map(row => row.cells['heel']?.text)).toContain('none');
    expect(view.strip.map(one => one.heelWords)).toContain('no balance');
    expect(view.strip.map(one => one.t)).toEqual([0, 120, 240, 300, 360]);
    expect(view.heelTicks.at(-1)?.at).toBeGreaterThanOrEqual(60);
  });
});

test.each([
  [0, '0.0°'],
  [3.25, '3.3° to starboard'],
  [-12, '12.0° to port'],
])('a heel of %d degrees is told as %s', (heel, said) => {
  expect(viewOf(under({ stages: [{ ...stage, heel }] })).strip.map(one => one.heelWords)).toEqual([said]);
});

describe('past the deck awash, where the check ends', () => {
  const flat = { ...stage, heel: 0, list: 0 };
  const end = { ...flat, t: 60, heel: 0, isPastCheck: true } as const;
  const ending = (list: number, more: Partial<Upright> = {}) =>
    viewOf(
      under({
        stages: [flat, { ...end, list }],
        atTheEnd: { outcome: 'sunk', listDegrees: list },
        mayRollOver: false,
        ...more,
      }),
    );

  test('she is drawn at the list of the simulation, and neither curve nor table has a heel that was judged', () => {
    const view = ending(-61.9);
    expect(view.strip.map(one => [one.heel, one.heelWords])).toEqual([
      [0, '0.0°'],
      [-61.9, '61.9° to port in the simulation'],
    ]);
    expect(view.curve.map(one => [one.worst, one.worstWords])).toEqual([
      [0, '0.0°'],
      [undefined, 'not judged'],
    ]);
    expect(cells(view.stages, 1, 'gm', 'heel', 'list')).toEqual(['not judged', 'not judged', '−61.9']);
    expect(view.words).toMatch(/; 1 min 0 s, 61\.9° to port in the simulation\.$/);
  });

  test('it is said how she is drawn, that she may lie on her side, and that this is a screening', () => {
    const rolled = ending(61.9, { atTheEnd: { outcome: 'rolled over', listDegrees: 61.9 } });
    expect(rolled.stripNote).toMatch(
      /at the end 61\.9° to starboard\. .* past 60°: she may come to rest on her side\. .* not worked out\. Screening, not a naval architect’s study\.$/,
    );
    expect(ending(0, { verdict: 'may roll over', mayRollOver: true }).stripNote).toContain(
      'she may come to rest on her side, however she is drawn',
    );
    expect(ending(0).stripNote).not.toContain('on her side');
    expect(viewOf(under({ stages: [flat] })).stripNote).toBe('');
  });

  test('the worst of the sections is one that was judged, and one without a balance stays without', () => {
    const seven = Array.from({ length: 7 }, (_, at) => ({ ...flat, t: at * 60, heel: at === 2 ? 9 : 0 }));
    const last = { ...end, t: 400, list: 80 };
    expect(viewOf(under({ stages: [...seven, last] })).strip.map(one => one.t)).toContain(120);
    const { heel: _heel, ...lost } = last;
    expect(viewOf(under({ stages: [flat, lost] })).strip.at(-1)).toMatchObject({
      heel: undefined,
      heelWords: 'no balance',
      worst: 60,
    });
  });

  test('the example rolls past 60° there, and is not drawn upright', () => {
    expect(upright.atTheEnd?.outcome).toBe('rolled over');
    const last = viewOf(screened).strip.at(-1);
    expect(Math.abs(last?.heel ?? 0)).toBeGreaterThan(60);
    expect(last?.event).toBe('rolled over');
    expect(viewOf(screened).stripNote).toContain('rolled past 60°');
  });
});

test('lengths and areas are told in the reader’s measures, their columns too', () => {
  const one = under({
    stages: [{ ...stage, level: 3.048, gm: 0.3048 }],
    sizing: [{ ...sized, area: 0.09290304 }],
  });
  expect(cells(viewOf(one).stages, 0, 'level', 'gm')).toEqual(['10.0', '1.0']);
  expect(cells(viewOf(one, 'metric').stages, 0, 'level', 'gm')).toEqual(['3.0', '0.3']);
  expect(cells(viewOf(one).sizing, 0, 'area')).toEqual(['1.0']);
  expect(cells(viewOf(one, 'metric').sizing, 0, 'area')).toEqual(['0.1']);
  expect(unitsOf(viewOf(one).sizing)).toEqual(['sq ft', 'ft', 'min']);
  expect(unitsOf(viewOf(one, 'metric').sizing)).toEqual(['m²', 'm', 'min']);
  expect(unitsOf(viewOf(one, 'metric').stages)).toEqual(['m', 'm', 'degrees', 'degrees']);
});

test('a sinking of many hours has few ticks on its axis', () => {
  const view = viewOf(under({ stages: [stage, { ...stage, t: 40 * 3600 }] }));
  expect(view.timeTicks.map(tick => tick.text)).toEqual(
    Array.from({ length: 11 }, (_, at) => String(at * 240)),
  );
});

describe('choices that would widen the margin', () => {
  const base = {
    titles: [],
    cost: 0,
    days: 0,
    verdict: 'leans',
    worst: 'may roll over',
    lowestGmMetres: 0.2,
    unevenness: 0.05,
  } as const;
  const now = { ...base, ids: [], greatestHeelDegrees: 9 };
  const half = {
    ...base,
    ids: ['half'],
    titles: ['Half of the topside'],
    cost: 120_000,
    days: 4,
    greatestHeelDegrees: 6,
    heelChangeDegrees: -3,
    peakListDegrees: 2,
  };
  const worse = { ...base, ids: ['cut'], titles: ['Cut'], cost: -500, heelChangeDegrees: 1.5 };
  const both = { ...half, ids: ['half', 'cut'], titles: ['Half of the topside', 'Cut'] };
  const choices = { now, each: [half, worse], cheapest: both, message: 'The set is cheapest.' };
  const asked = under({ choices });

  test('stand under the plan with what each costs and changes, the cheapest set last', () => {
    const rows = choiceRows(asked, 'us');
    expect(rows?.message).toBe('The set is cheapest.');
    const table = rows?.table;
    if (table === undefined) throw new Error('the choices were made');
    expect(table.rows.map(row => row.id)).toEqual(['now', 'half', 'cut', 'set']);
    const keys = ['title', 'cost', 'days', 'heel', 'change', 'list'];
    expect(cells(table, 0, ...keys)).toEqual(['The plan as it stands', '–', '–', '9.0', '–', 'not run']);
    expect(cells(table, 1, ...keys)).toEqual([
      'Half of the topside',
      '+120,000',
      '+4.00',
      '6.0',
      '−3.0',
      '2.0',
    ]);
    expect(cells(table, 2, ...keys)).toEqual(['Cut', '−500', '–', 'no balance', '+1.5', 'not run']);
    expect(cells(table, 3, 'title')).toEqual(['Half of the topside and Cut']);
    expect(viewOf(asked).choices.rows).toEqual(table.rows);
  });

  test('a choice whose change of heel is not known shows none; one choice alone is no set', () => {
    const { heelChangeDegrees: _change, ...unknown } = half;
    const table = choiceRows(
      under({ choices: { ...choices, each: [unknown], cheapest: half } }),
      'us',
    )?.table;
    expect(table?.rows.map(row => [row.id, row.cells['change']?.text])).toEqual([
      ['now', '–'],
      ['half', '–'],
    ]);
  });

  test('before they were asked for there is no row and no message, and nothing without a screen', () => {
    const { choices: _choices, ...unasked } = upright;
    const none = choiceRows({ ...screened, upright: unasked }, 'us');
    expect([none?.table.rows, none?.message]).toEqual([[], '']);
    expect(choiceRows(evaluatedAs(DEMO), 'us')).toBeUndefined();
  });
});

test.each([
  [{ cost: 12_500, days: 3 }, ' It costs $12,500 and takes 3 work days.'],
  [{ cost: 12_500 }, ''],
  [{}, ''],
])('the measurement that would settle it is told with its price %o where there is one', (price, said) => {
  const settles = { measurement: 'inclining', why: 'The height of the weights decides.', ...price } as const;
  expect(settlesWords({ ...upright, settles })).toBe(
    `What would settle it: inclining. The height of the weights decides.${said}`,
  );
});

test('a verdict that stands has nothing to settle, and notes after the deck edge are told where there are some', () => {
  const { settles: _settles, afterDeckEdge: _after, ...rest } = upright;
  expect(settlesWords(rest)).toBe('');
  expect(viewOf({ ...screened, upright: rest }).afterDeckEdge).toEqual([]);
  expect(brokenWords(viewOf({ ...screened, upright: rest }))).toEqual([]);
});

test('while an edit without prices settles, every figure is told as settling', () => {
  const { estimate } = awkward('without a schedule');
  const bottom = windowRows(DEMO, screened, 'us', undefined)?.rows.bottom ?? [];
  if (estimate === undefined) throw new Error('the work is known');
  expect(bottom.length).toBeGreaterThan(3);
  expect(settlingLine(estimate, bottom).map(cell => cell.value.text)).toEqual(bottom.map(() => 'settling'));
});
