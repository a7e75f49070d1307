import { describe, expect, test } from 'vitest';
import type { Evaluation, RiskView } from '../../../core/evaluation';
import { decisionAbout } from '../../../core/papers';
import { compareScenarios, type DecisionTable } from '../../../core/scenario';
import { decisionRows } from '../../../core/views';
import { weightTable } from '../../../core/views/compare/weights';
import { costCurve, finishCurve, valueAt } from '../../../core/views/risk/curves';
import { frontierPicture } from '../../../core/views/risk/frontier';
import { dayOf } from '../../../core/calendar';
import { studied } from './everything';
import { plain } from './laws';

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const dated = (iso = '') =>
  `${Number(iso.slice(8))} ${MONTHS[Number(iso.slice(5, 7)) - 1] ?? ''} ${iso.slice(0, 4)}`;
const month = (iso = '') => `${MONTHS[Number(iso.slice(5, 7)) - 1] ?? ''} ${iso.slice(0, 4)}`;
const dollars = (cents = NaN) => `$${Math.floor((cents + 50) / 100).toLocaleString('en-US')}`;

describe('the page a board votes on', () => {
  const made = () => {
    const { evaluation, other, facts } = studied();
    const comparison = compareScenarios([evaluation, other], [facts]);
    return { decision: decisionAbout(evaluation, comparison), rows: decisionRows(evaluation, comparison) };
  };

  test('tells cost and time of the scenario, each under what it is', () => {
    const { decision, rows } = made();
    const {
      total,
      contingency,
      budget,
      risk,
      sunkOn,
      finish,
      lastDate,
      afterSinking,
      uncheckedShare,
      letter,
    } = decision;
    if (risk === undefined) throw new Error('the example was run');
    const inHundred = (share: number) =>
      share > 0 && share < 0.005
        ? 'fewer than 1'
        : share < 1 && share >= 0.995
          ? 'more than 99'
          : String(Math.round(share * 100));
    const years = afterSinking.years === 1 ? 'one year' : `${afterSinking.years} years`;
    const expected = [
      ['total', 'The work costs', dollars(total?.cents), 'sums/total'],
      ['contingency', 'Set aside for what is not known', dollars(contingency?.cents), 'sums/budget'],
      ['budget', 'Budget', dollars(budget?.cents), 'sums/budget'],
      [
        'p80',
        '80 in 100 runs cost no more than',
        dollars(Math.round(risk.p80 * 100)),
        'decision:decision-figures|p80|value',
      ],
      ...(risk.award === undefined
        ? []
        : [
            [
              'award',
              expect.stringMatching(/^Inside \$[\d,]+, the total with/),
              `${inHundred(risk.award.chance)} in 100 runs`,
              'decision:decision-figures|award|value',
            ],
          ]),
      [
        'sunk',
        'By the plan the ship is sunk by',
        dated(sunkOn?.date),
        'decision:decision-figures|sunk|value',
      ],
      ['finish', 'By the plan all is done by', dated(finish), 'schedule:finish'],
      ...(lastDate === undefined
        ? []
        : [
            [
              'last-date',
              'Last date of the project',
              dated(lastDate),
              'decision:decision-figures|last-date|value',
            ],
            [
              'kept',
              'All is done by that date in',
              `${inHundred(risk.chanceOfDeadline ?? Number.NaN)} in 100 runs`,
              'decision:decision-figures|kept|value',
            ],
          ]),
      ...(risk.anotherSeason === undefined
        ? []
        : [
            [
              'season',
              'Another season is needed for the tow or the sinking in',
              `${inHundred(risk.anotherSeason)} in 100 runs`,
              'decision:decision-figures|season|value',
            ],
          ]),
      [
        'finish-p80',
        '80 in 100 runs end by',
        dated(risk.finishP80),
        'decision:decision-figures|finish-p80|value',
      ],
      [
        'after',
        `What comes after the sinking costs, over ${years}`,
        dollars(afterSinking.inTotal),
        'decision:decision-figures|after|value',
      ],
      [
        'after-year',
        'Spread over those years, what comes once among it, a year',
        dollars(afterSinking.perYear),
        'decision:decision-figures|after-year|value',
      ],
      [
        'beside',
        'Beside it, in no total: kept up each year',
        dollars(afterSinking.besidePerYear),
        'decision:decision-figures|beside|value',
      ],
      [
        'unchecked',
        'Rests on figures nobody has checked yet',
        `${((uncheckedShare ?? NaN) * 100).toFixed(1)} %`,
        'basis:unchecked',
      ],
    ];
    expect(
      rows.figures.rows.map(row => [
        row.id,
        row.cells['what']?.text,
        row.cells['value']?.text,
        row.cells['value']?.why,
      ]),
    ).toEqual(expected);
    expect(rows.besides).toBe(decision.recommended?.besides ?? '');
    expect([rows.letter, rows.figures.caption]).toEqual([letter, `Cost and time of scenario ${letter}`]);
  });

  test('tells what the county pays by fiscal year, and what it lends', () => {
    const { decision, rows } = made();
    const { fiscalYears, cost, peakGap, mostOut } = decision.county;
    const years = rows.county.rows.map(row => [row.id, row.cells['year']?.text, row.cells['amount']?.text]);
    expect(years).toEqual(
      fiscalYears.map(one => [String(one.fiscalYear), String(one.fiscalYear), dollars(one.amount).slice(1)]),
    );
    expect(plain(rows.county.note)).toBe(
      [
        'What no grant and no partner bears.',
        ...(cost === undefined
          ? []
          : [
              `The county pays in all ${dollars(cost.total)}, if the work costs what is budgeted; beyond that no grant has promised anything.`,
            ]),
        ...(peakGap === undefined
          ? []
          : [
              `At the end of ${month(peakGap.month)} it lends ${dollars(peakGap.amount)} beyond its own share.`,
            ]),
        ...(mostOut === undefined
          ? []
          : [`It has ${dollars(mostOut.amount)} out at most, at the end of ${month(mostOut.month)}.`]),
      ].join(' '),
    );
    expect(rows.county.caption).toBe(`What the county pays in scenario ${decision.letter}, and when`);
    const note = Object.values(rows.whys).find(({ id }) => id.includes('county-money-note'));
    expect(note?.rows.map(row => row.value.why)).toContain('grant:county|total');
  });

  test('tells the other choices, the dates of the board and the vote', () => {
    const { decision, rows } = made();
    expect(
      rows.others.rows.map(row => [row.id, ...Object.values(row.cells).map(({ text }) => text)]),
    ).toEqual(
      decision.otherChoices.map(({ kind, title, amount, note }, at) => [
        `${kind}-${at}`,
        title,
        amount === undefined ? '–' : dollars(amount).slice(1),
        note,
      ]),
    );
    expect(
      rows.dates.rows.map(row => [row.id, row.subject, row.cells['what']?.text, row.cells['date']?.text]),
    ).toEqual(decision.boardDates.map(({ id, title, date }) => [id, id, title, dated(date)]));
    for (const { id, title } of decision.boardDates)
      expect(
        rows.whys[`decision:board-dates|${id}|date`]?.rows.map(row => [row.value.why, row.words]),
      ).toEqual([[`activity:${id}`, title]]);
    const [chosen, note] = rows.choice.rows;
    const able = decision.table.ranked.toSorted((a, b) => a.letter.localeCompare(b.letter));
    expect(chosen?.cells['value']?.edit?.choices).toEqual([
      { id: '', title: 'not yet' },
      ...able.map(one => ({ id: one.scenario, title: `${one.letter}, ${one.title}` })),
    ]);
    expect([chosen?.id, note?.id]).toEqual(['chosen', 'note']);
    expect(note?.cells['value']?.edit).toMatchObject({ at: '/decision/note', kind: 'text', optional: true });
    expect([rows.troubles, rows.notStudied]).toEqual([decision.troubles, decision.notStudied]);
    expect(rows.caution).toBe('The upright screen was not run.');
  });

  test('tells how each figure came about, at home in the risk where there were runs', () => {
    const { rows } = made();
    const p80 = rows.whys['decision:decision-figures|p80|value'];
    expect([p80?.path, p80?.home, p80?.title]).toEqual([
      'Decision',
      'risk',
      'Figure: 80 in 100 runs cost no more than',
    ]);
    expect(p80?.words).toMatch(
      /^All runs are put in order of cost\. 80 in 100 of them cost this much or less\./,
    );
    expect(p80?.rows.map(row => [row.value.text, row.value.why])).toEqual([
      ['the total', 'sums/total'],
      ['the finish', 'schedule:finish'],
    ]);
    const { evaluation, other } = studied();
    const unrun = decisionRows(evaluation, compareScenarios([evaluation, other]));
    expect(unrun.whys['decision:decision-figures|sunk|value']?.home).toBe('decision');
    const upright = { verdict: 'leans', missingInputs: [] as readonly string[] } as Evaluation['upright'];
    const leaning = { ...evaluation, upright } as Evaluation;
    expect(decisionRows(leaning, compareScenarios([leaning])).caution).toBe(
      'The upright screen says “leans”: screening, not a naval architect’s study.',
    );
  });
});

test('weights are told with their share, the scores they give and how far they reach', () => {
  const { evaluation } = studied();
  const scored = (letter: string, cost: number | undefined, score: number) => ({
    scenario: letter.toLowerCase(),
    letter,
    title: letter,
    scores: cost === undefined ? {} : { cost },
    score,
  });
  const table: DecisionTable = {
    weights: [{ criterion: 'cost', weight: 0.25 }],
    reading: 'plan',
    alike: [],
    notCompared: [],
    isBoardsOwn: true,
    ranked: [scored('A', 1, 0.754), scored('B', undefined, 0.5)],
    leftOut: [],
    sensitivity: [],
    dominance: [],
  };
  const shown = weightTable(compareScenarios([evaluation]), table);
  expect(shown.columns.map(({ key, title, unit }) => [key, title, unit])).toEqual([
    ['what', 'What counts', undefined],
    ['weight', 'Weight', undefined],
    ['share', 'Share', '%'],
    ['a', 'A', 'score'],
    ['b', 'B', 'score'],
    ['reach', 'The order holds for', undefined],
    ['remove', 'Take out', undefined],
  ]);
  expect(
    shown.rows.map(row => [
      row.id,
      row.kind,
      row.cells['share']?.text,
      row.cells['a']?.text,
      row.cells['b']?.text,
    ]),
  ).toEqual([
    ['cost', 'line', '25', '1.00', '–'],
    ['score', 'total', undefined, '0.75', '0.50'],
  ]);
  expect(shown.rows[0]?.cells['reach']?.text).toBe('left out: a scenario has no figure for it');
  expect(shown.rows[0]?.cells['weight']?.edit).toEqual({
    at: '/decision/weights/0/weight',
    kind: 'decimal',
    unit: '1',
    value: '0.6',
    label: 'Weight of low budget',
  });
  expect(shown.add?.fields[1]).toMatchObject({ path: 'weight', kind: 'decimal', value: '0.1' });
});

describe('the curves of the runs', () => {
  const view = (change: Partial<RiskView> = {}): RiskView => ({ ...studied().view, ...change });
  const steps = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
  const cost = {
    ...studied().view.cost,
    curve: steps.map(share => ({ share, value: share * 1_000_000 })),
    plan: 250_000,
    planShare: 0.25,
  };

  test('of cost marks the plan, the middle, the confidence asked for and the budget', () => {
    const { contingency } = view();
    const drawn = costCurve(
      view({ cost, confidence: 0.8, contingency: { ...contingency, budget: 450_000 } }),
    );
    expect(drawn.marks).toEqual([
      { id: 'plan', at: 250_000, share: 0.25, text: 'plan $250,000' },
      { id: 'p50', at: 500_000, share: 0.5, text: 'P50 $500,000' },
      { id: 'chosen', at: 800_000, share: 0.8, text: 'P80 $800,000' },
      { id: 'limit', at: 450_000, share: 0.4, text: 'budget $450,000' },
    ]);
    expect(drawn.words).toBe(
      'Cost of the runs as a rising curve. plan $250,000, P50 $500,000, P80 $800,000, budget $450,000.',
    );
    expect(drawn.points[3]).toEqual({ share: 0.4, at: 400_000 });
    // From 100,000 with an eighth of 900,000 as room, which is below 0, to 1,000,000.
    expect([drawn.ticks[0]?.at, drawn.ticks.at(-1)?.at]).toEqual([-250_000, 1_000_000]);
    const below = costCurve(view({ cost, contingency: { ...contingency, budget: 50_000 } }));
    expect(below.marks.at(-1)).toMatchObject({ id: 'limit', share: 0 });
  });

  test('of the finish marks the plan, the middle, the confidence and the last date', () => {
    const curve = steps.map((share, at) => ({ share, date: `2029-0${1 + Math.floor(at / 2)}-1${at % 2}` }));
    const finish = { ...view().finish, curve, plan: '2029-02-11', planShare: 0.4 };
    const deadline = { date: '2029-04-10', chanceOfMissing: 0.3 } as NonNullable<RiskView['deadline']>;
    const drawn = finishCurve(view({ finish, confidence: 0.8, deadline }));
    expect(drawn.marks.map(({ id, at, share, text }) => [id, at, share, text])).toEqual([
      ['plan', dayOf('2029-02-11'), 0.4, 'plan 11 Feb 2029'],
      ['p50', dayOf('2029-03-10'), 0.5, 'P50 10 Mar 2029'],
      ['chosen', dayOf('2029-04-11'), 0.8, 'P80 11 Apr 2029'],
      ['limit', dayOf('2029-04-10'), 0.7, 'last date 10 Apr 2029'],
    ]);
    expect(drawn.title).toBe('Finish');
    expect(finishCurve(view({ finish: { ...finish, plan: '' } })).marks.map(({ id }) => id)).not.toContain(
      'plan',
    );
  });

  test('are read at a share of the runs, also where it is a rounding short of it', () => {
    const points = [
      { at: 1, share: 0.3 },
      { at: 2, share: 0.7999999999 },
      { at: 3, share: 1 },
    ];
    expect([0.3, 0.31, 0.8, 0.9].map(share => valueAt(points, share))).toEqual([1, 2, 2, 3]);
    expect(valueAt(points.slice(0, 2), 0.9)).toBeUndefined();
  });
});

describe('the line of equal chance', () => {
  const line = Array.from({ length: 14 }, (_, at) => ({
    date: `2029-01-${String(at + 10)}`,
    budget: 2_000_000 - at * 10_000,
  }));
  const plan = {
    letter: 'A',
    isChosen: true,
    isPermittable: false,
    total: 1_900_000,
    finish: '2029-01-05',
    line,
  };

  test('of a scenario stands with its plan, money in hand and last date on one pair of axes', () => {
    const drawn = frontierPicture(
      [plan, { ...plan, letter: 'B', isChosen: false, isPermittable: true, line: [] }],
      {
        confidence: 0.8,
        inHand: 2_200_000,
        lastDate: '2029-06-30',
      },
    );
    expect(drawn.title).toBe('80 in 100 end inside both, $ million');
    expect(drawn.lines).toEqual([
      {
        letter: 'A',
        isChosen: true,
        points: line.map(({ date, budget }) => ({ day: dayOf(date), dollars: budget })),
      },
    ]);
    expect(
      drawn.plans.map(one => [one.letter, one.isChosen, one.isPermittable, one.day, one.dollars]),
    ).toEqual([
      ['A', true, false, dayOf('2029-01-05'), 1_900_000],
      ['B', false, true, dayOf('2029-01-05'), 1_900_000],
    ]);
    expect([drawn.inHand, drawn.lastDate]).toEqual([
      { at: 2_200_000, text: '$2,200,000 budget' },
      { at: dayOf('2029-06-30'), text: 'after 30 Jun 2029' },
    ]);
    expect(drawn.money.at(-1)?.at).toBeGreaterThanOrEqual(2_200_000);
    expect(drawn.dates.at(-1)?.at).toBeGreaterThanOrEqual(dayOf('2029-06-30'));
    expect(drawn.words).toBe(
      'The plan of A costs $1,900,000 and ends on 5 Jan 2029. 80 in 100 runs end inside $2,000,000 by 10 Jan 2029, or inside $1,870,000 by 23 Jan 2029. The plan of B costs $1,900,000 and ends on 5 Jan 2029.',
    );
    expect(drawn.table.caption).toBe('Budgets and dates that hold together in 80 of 100 runs');
    // Of fourteen points every third one and the last stand in the table.
    expect(
      drawn.table.rows.map(row => [row.id, ...Object.values(row.cells).map(({ text }) => text)]),
    ).toEqual([
      ['A-plan', 'A, the plan, to compare', '5 Jan 2029', '1,900,000'],
      ...[0, 3, 6, 9, 12, 13].map((at, place) => [
        `A-${place}`,
        'A',
        dated(line[at]?.date),
        (line[at]?.budget ?? NaN).toLocaleString('en-US'),
      ]),
      ['B-plan', 'B, the plan, to compare', '5 Jan 2029', '1,900,000'],
    ]);
  });

  test('without a plan has no axes, and without limits none of them', () => {
    const none = frontierPicture([], { confidence: 0.8, inHand: undefined, lastDate: undefined });
    expect(none).toMatchObject({ lines: [], plans: [], dates: [], money: [], words: '' });
    expect(none).not.toHaveProperty('inHand');
    expect(none).not.toHaveProperty('lastDate');
    expect(none.title).toBe('Cost and finish of the plans, $ million');
  });
});

test('the day of the sinking opens the activity that ends on it', () => {
  const { evaluation, other, facts } = studied();
  const comparison = compareScenarios([evaluation, other], [facts]);
  const { sunkOn } = decisionAbout(evaluation, comparison);
  const why = decisionRows(evaluation, comparison).whys['decision:decision-figures|sunk|value'];
  expect(JSON.stringify(why)).toContain(`"activity:${sunkOn?.id}"`);
  expect(evaluation.estimate?.schedule.activities.find(({ id }) => id === sunkOn?.id)?.finish).toBe(
    sunkOn?.date,
  );
});
