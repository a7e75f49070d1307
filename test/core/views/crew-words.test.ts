import { describe, expect, test } from 'vitest';
import type { CrewPlanAnswer, CrewPlanPoint, LevelledPlan } from '../../../core/evaluation';
import { crewAnswer, crewPlanRows, LEVEL_QUESTION, PLAN_QUESTION } from '../../../core/views';
import type { Sentence, TableRows, Whys } from '../../../core/views';
import { awkward } from './awkward';

const evaluation = awkward('the example');
const { estimate } = evaluation;
if (estimate === undefined) throw new Error('the example is estimated');
const { schedule } = estimate;

const use = (crew: string, peak: number, hired: number) => ({ crew, title: `Crew ${crew}`, peak, hired });
const PLAN: LevelledPlan = {
  kind: 'level',
  before: { crews: [use('burners', 3, 5), use('riggers', 2, 2)], hired: 7, cost: 14_000 },
  after: { crews: [use('burners', 2, 2)], hired: 2, cost: 4_000 },
  saved: 10_000,
  peopleBefore: 30,
  peopleAfter: 24,
  totalBefore: 100_000,
  totalAfter: 100_400,
  schedule,
  moved: [{ id: 'boom', title: 'Boom', from: '2027-03-05', to: '2027-03-01' }],
  basis: 'Each hiring costs two days.',
  findings: [],
};
const plain = (sentence: Sentence) =>
  sentence.map(part => (typeof part === 'string' ? part : part.text)).join('');
/** Figures that open no derivation. */
const closed = (tables: readonly (TableRows | undefined)[], whys: Whys | undefined) =>
  tables.flatMap(table =>
    (table?.rows ?? []).flatMap(row =>
      (table?.columns ?? [])
        .filter(({ kind, key }) => kind === 'number' && /\d/.test(row.cells[key]?.text ?? ''))
        .filter(({ key }) => (whys?.[row.cells[key]?.why ?? '']?.rows ?? []).length === 0)
        .map(({ key }) => `${row.id}, ${key}`),
    ),
  );
const answerTo = (plan: Parameters<typeof crewAnswer>[2]) => crewAnswer(evaluation, LEVEL_QUESTION, plan);

describe('crews evened out', () => {
  test.each([
    [
      {},
      'in hiring and releasing that saves $10,000. The total of the estimate would be $400 higher with these',
    ],
    [{ saved: -250 }, 'in hiring and releasing that costs $250 more.'],
    [{ totalAfter: 99_000 }, 'The total of the estimate would be $1,000 lower with these dates.'],
    [{ totalAfter: 100_000.2 }, 'The total of the estimate stays.'],
    [{ moved: [] }, 'No better arrangement was found: the crews stay as they are.'],
  ])('with %o are told as: %s', (change, said) => {
    expect(plain(answerTo({ ...PLAN, ...change }).answer)).toContain(said);
  });

  test('without a total say nothing of the estimate', () => {
    const { totalAfter: _after, ...rest } = PLAN;
    expect(plain(answerTo(rest).answer)).not.toContain('estimate');
  });

  test('are told crew by crew, and one that is no longer needed has no figure', () => {
    const rows = answerTo(PLAN).crews?.rows.map(row => [
      row.id,
      ...['peak', 'peakAfter', 'hired', 'hiredAfter'].map(key => row.cells[key]?.text),
    ]);
    expect(rows).toEqual([
      ['burners', '3', '2', '5', '2'],
      ['riggers', '2', '–', '2', '–'],
    ]);
    expect(answerTo(PLAN).moved?.rows[0]?.cells['days']?.text).toBe('−4');
  });

  test('open what stands behind each figure, and the money what was set against what', () => {
    const { crews, moved, whys, answer } = answerTo(PLAN);
    expect(closed([crews, moved], whys)).toEqual([]);
    const money = answer.flatMap(part => (typeof part === 'string' ? [] : [part]));
    expect(money.map(part => part.text)).toEqual(['$10,000', '$400']);
    const rows = whys?.[money[0]?.why ?? '']?.rows ?? [];
    // The total after opens nothing: the sheets hold the one before.
    expect(rows.map(row => row.value.why)).toEqual([undefined, undefined, 'sums/total', undefined]);
    const steps = rows.map(row => `${row.operator} ${row.value.text}`);
    expect(steps).toEqual(['= $14,000', '− $4,000', ' $100,000', ' $100,400']);
    const days = whys?.[moved?.rows[0]?.cells['days']?.why ?? ''];
    expect(days?.rows.map(row => row.value.text)).toEqual(['1 Mar 2027', '5 Mar 2027']);
  });

  test('that cannot be, or have no schedule to be planned for, are told so without a table', () => {
    expect(answerTo(undefined)).toEqual({
      question: LEVEL_QUESTION,
      answer: ['There is no schedule with prices to plan crews for.'],
    });
    expect(plain(answerTo({ earliest: '2029-05-04' }).answer)).toBe('No: the earliest finish is 4 May 2029.');
  });

  test('are drawn alone where the estimate has gone since', () => {
    const { picture } = crewAnswer(awkward('with a hull that nobody knows'), LEVEL_QUESTION, PLAN);
    expect(picture?.before).toEqual(picture?.after);
  });
});

const point = (
  id: string,
  finish: string,
  cost: number,
  more: Partial<CrewPlanPoint> = {},
): CrewPlanPoint => ({
  id,
  isPresent: false,
  isLong: false,
  start: '2027-01-04',
  finish,
  shift: 'one',
  crews: [],
  words: `Plan ${id}`,
  changes: [],
  total: cost,
  standbyDays: 0,
  standby: 0,
  cost,
  workDays: 300,
  peakCrew: 20,
  ...more,
});
const present = point('now', '2029-03-01', 5_000_000, { isPresent: true });
const cheap = point('cheap', '2029-02-01', 4_800_000);
const early = point('early', '2028-11-01', 5_200_000);
const beaten = point('beaten', '2029-02-01', 4_900_000);
const ANSWER: CrewPlanAnswer = {
  finishBy: '2029-03-31',
  present,
  best: cheap,
  earliest: early,
  curve: [early, cheap, beaten],
  frontier: ['early', 'cheap'],
  tried: 12,
  sentence: 'Plan cheap costs least.',
  cautions: [],
  notes: [],
};

describe('crew plans', () => {
  test('without an answer or without a plan are only the question', () => {
    expect(crewPlanRows(undefined, false)).toEqual({ question: PLAN_QUESTION });
    expect(crewPlanRows({ ...ANSWER, curve: [] }, false)).toEqual({ question: PLAN_QUESTION });
  });

  test('stand by finish and cost, the plan as it stands among them, each with what speaks for or against it', () => {
    const rows = crewPlanRows(ANSWER, false).found?.table.rows.map(row => [
      row.cells['letter']?.text,
      row.cells['words']?.text,
    ]);
    expect(rows).toEqual([
      ['A', 'Plan early'],
      ['B', 'Plan cheap (cheapest)'],
      ['', 'Plan beaten (another is cheaper and no later)'],
      ['C', 'Plan now (as it stands, another is cheaper and no later)'],
    ]);
  });

  test('open what each figure is made of', () => {
    const { table, whys } = crewPlanRows(ANSWER, false).found ?? {};
    expect(closed([table], whys)).toEqual([]);
    const why = whys?.[table?.rows[1]?.cells['cost']?.why ?? ''];
    expect(why?.rows.map(row => `${row.operator} ${row.value.text}`)).toEqual(['= 4,800,000', '+ 0']);
  });

  test('are offered as scenarios, the cheapest first, but for the plan as it stands', () => {
    const found = crewPlanRows({ ...ANSWER, curve: [early, cheap, present] }, false).found;
    expect(found?.offers.map(one => one.label)).toEqual([
      'Make a scenario of plan B, the cheapest: $4,800,000, 1 Feb 2029',
      'Make a scenario of plan A: $5,200,000, 1 Nov 2028',
    ]);
    expect(found?.picture.lastDate?.text).toBe('last day 31 Mar 2029');
    expect(found?.table.rows).toHaveLength(3);
  });

  test('without a last day and without the plan as it stands are drawn all the same', () => {
    const { finishBy: _by, present: _present, best: _best, ...rest } = ANSWER;
    const found = crewPlanRows(rest, true).found;
    expect(found?.picture.lastDate).toBeUndefined();
    expect(found?.picture.plans.map(one => [one.letter, one.isChosen])).toEqual([
      ['A', false],
      ['B', false],
    ]);
  });

  test('of which many are worth telling apart have eight letters at most, the first and the last among them', () => {
    const many = Array.from({ length: 20 }, (_, at) =>
      point(`p${at}`, `2029-01-${String(at + 1).padStart(2, '0')}`, 5_000_000 - at),
    );
    const found = crewPlanRows({ ...ANSWER, curve: many, frontier: many.map(({ id }) => id) }, false).found;
    const lettered = found?.table.rows.filter(row => row.cells['letter']?.text !== '').map(row => row.id);
    expect(lettered).toEqual(['p0', 'p4', 'p8', 'p11', 'p15', 'p19', 'now']);
  });
});
