import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../core/evaluation';
import { compareScenarios } from '../../../core/scenario';
import { decisionRows, windowRows, WhyDesk } from '../../../core/views';
import { settlingLine } from '../../../core/views/bottom';
import { compareRows } from '../../../core/views/compare/view';
import { settingsTable } from '../../../core/views/risk/settings';
import { monthsOfLines } from '../../../core/papers/monthly-spending';
import { monthWords } from '../../../core/calendar';
import { summaryOf } from '../../../core/views/window';
import { awkward, DEMO, TODAY } from './awkward';
import { plain } from './laws';

const EXAMPLE = awkward('the example');
const desk = new WhyDesk(EXAMPLE, 'us');
const rows = windowRows(EXAMPLE.project, EXAMPLE, 'us', undefined)?.rows;
const wordsOf = (id: string) => desk.answer(id)?.rows.map(({ words }) => words) ?? [];

describe('the work', () => {
  test('begins with its items, hours and money in one sentence', () => {
    expect(plain(rows?.work.sentence)).toMatch(/^\d+ work items, [\d,]+ hours, \$[\d,]+\.$/);
  });

  test('opens the total of a stage as a figure of the sheets, and its elements as sums', () => {
    const stage = rows?.work.table.rows.find(row => row.id === 'permits');
    expect(stage?.cells['total']?.why).toBe('stages/permits/total');
    expect(stage?.cells['labour']?.why).toBe('stage:permits:labour');
  });

  test('tells the hours of an item with their unit, in all where conditions change them', () => {
    const sentences = rows?.work.stages.flatMap(({ lines }) => lines.map(line => plain(line.says))) ?? [];
    expect(sentences.filter(one => /at [\d.,]+ h each/.test(one)).length).toBeGreaterThan(20);
    expect(sentences.filter(one => /[Ii]n all [\d.,]+ hours/.test(one)).length).toBeGreaterThan(20);
  });
});

describe('a derivation', () => {
  test('of a given number of the sheets has its range', () => {
    const range = desk.answer('ship/lightship')?.rows[0]?.range;
    expect(range).toMatchObject({ low: expect.stringMatching(/\d/) as string });
    expect(range?.at).toBeGreaterThanOrEqual(0);
  });

  test('is given under its own name alone', () => {
    expect(desk.answer('given:/vessel/beam')).toBeDefined();
    expect(desk.answer('taken:/vessel/beam')).toBeUndefined();
  });

  test('of a month says of a line of several months that its days of this month count, and names others plainly', () => {
    const parts = EXAMPLE.estimate;
    const summary = parts && summaryOf(parts);
    if (parts === undefined || summary === undefined) throw new Error('the example is estimated');
    const months = monthsOfLines(parts, summary);
    const [single, several] = [1, 2].map(least =>
      summary.lines.find(({ id }) => {
        const own = months.get(id) ?? [];
        return (least === 1 ? own.length === 1 : own.length > 1) && own.every(({ amount = 0 }) => amount > 0);
      }),
    );
    const rowsOf = (line: typeof single) => wordsOf(`month:${months.get(line?.id ?? '')?.[0]?.month ?? ''}`);
    expect(rowsOf(single)).toContain(single?.title);
    expect(rowsOf(several)).toContain(`${several?.title ?? ''}, its days in this month`);
    expect(rowsOf(single)).not.toContain(`${single?.title ?? ''}, its days in this month`);
    expect(desk.answer(`month:${months.get(single?.id ?? '')?.[0]?.month ?? ''}`)?.title).toBe(
      monthWords(months.get(single?.id ?? '')?.[0]?.month ?? ''),
    );
  });

  test('of the money that came in names each source once', () => {
    const months = Array.from(
      { length: 36 },
      (_, i) => `${2027 + Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, '0')}`,
    );
    const told = months.map(month => wordsOf(`grant:cash|${month}|received`)).filter(one => one.length > 1);
    expect(told.length).toBeGreaterThan(0);
    for (const words of told) {
      expect(new Set(words).size).toBe(words.length);
      for (const title of words) expect(DEMO.funding?.sources.map(one => one.title)).toContain(title);
    }
  });
});

test('the weather of the runs is a choice of two, where the document has a section', () => {
  const cell = settingsTable(EXAMPLE, undefined).rows.find(row => row.id === 'weather')?.cells['value'];
  expect(cell?.edit).toMatchObject({ at: '/risk/weather', kind: 'choice', value: DEMO.risk?.weather });
  expect(cell?.edit?.choices?.map(({ id }) => id)).toEqual(['drawn', 'allowance']);
});

test('until a plan is settled its finish stands beside the word, and what is not known is the word alone', () => {
  const { estimate } = EXAMPLE;
  if (estimate === undefined || rows === undefined) throw new Error('the example is estimated');
  const cells = settlingLine(estimate, rows.bottom);
  const finish = cells.find(one => one.key === 'finish');
  expect([finish?.value.absent ?? false, finish?.beside]).toEqual([false, 'settling']);
  expect(finish?.value.text).toBe(rows.bottom.find(one => one.key === 'finish')?.value.text);
  const held = settlingLine({ ...estimate, datesHeld: true }, rows.bottom).find(one => one.key === 'finish');
  expect(held?.value).toMatchObject({ text: 'settling', absent: true });
});

describe('scenarios side by side', () => {
  const of = (scenario: string) =>
    evaluate(DEMO, { today: TODAY, seed: 1, upright: false, schedules: 20, scenario });
  const evaluations = DEMO.scenarios.map(({ id }) => of(id));
  const [first, ...others] = evaluations;
  if (first === undefined) throw new Error('the example has scenarios');
  const comparison = compareScenarios([first, ...others]);
  const compared = (one: typeof comparison) =>
    compareRows({ comparison: one, views: [], isStale: false, chosen: first.scenario.id, measures: 'us' });

  test('are chosen from in the order of their letters, whichever comes first', () => {
    const choices = decisionRows(first, comparison).choice.rows[0]?.cells['value']?.edit?.choices ?? [];
    expect(choices.map(({ title }) => title.slice(0, 2))).toEqual(['no', 'A,', 'B,', 'C,', 'D,']);
  });

  test('have no runs before they are simulated', () => {
    expect(compared(comparison).hasRuns).toBe(false);
  });

  test('tell of one without a total that it has none', () => {
    const { estimate } = first;
    if (estimate?.money === undefined) throw new Error('the example is estimated');
    const { money: _money, ...unpriced } = estimate;
    const without = { ...first, estimate: unpriced };
    const table = compared(compareScenarios([without, ...others])).facts;
    const total = table.rows.find(row => row.id === 'total');
    expect(Object.values(total?.cells ?? {}).some(cell => cell.absent === true || cell.text === '–')).toBe(
      true,
    );
  });
});
