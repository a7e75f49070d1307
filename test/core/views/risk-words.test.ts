import { describe, expect, test } from 'vitest';
import {
  prepareRisk,
  riskRun,
  type Evaluation,
  type PreparedEstimate,
  type RiskView,
} from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { troubles } from '../../../core/papers/decision/troubles';
import { compareScenarios, factsOf } from '../../../core/scenario';
import { compareRows, riskRows, type RiskStudy } from '../../../core/views';
import { inHundred } from '../../../core/views/risk/words';
import { awkward, BARE, DEMO, figure } from './awkward';
import { brokenWords, looseRows, plain } from './laws';

const evaluation = awkward('the example');
const bare = awkward('without grant, bid, record, deadline, quotes and compartments');

function preparedOf(one: Evaluation): PreparedEstimate {
  const { prepared, findings } = prepareRisk(one);
  if (prepared === undefined) throw new Error(JSON.stringify(findings));
  return prepared;
}
const prepared = preparedOf(evaluation);

/** A short run: words and rows are the same for more. */
function ran(one: Evaluation) {
  const { run } = riskRun(one, { trials: 200, triesWhatIfs: false });
  if (run === undefined) throw new Error('it can be simulated');
  for (;;) {
    const { result } = run.step();
    if (result !== undefined)
      return { view: result.view, facts: factsOf(one, result.simulation, run.prepared.first) };
  }
}
const { view: VIEW, facts } = ran(evaluation);
const bareRun = ran(bare);

const study = (change: Partial<RiskStudy> = {}): RiskStudy => ({
  evaluation,
  prepared,
  findings: [],
  view: VIEW,
  isStale: false,
  isWhole: true,
  ...change,
});
const seen = (change: Partial<RiskView>) => {
  const rows = riskRows(study({ view: { ...VIEW, ...change } }));
  const { found } = rows;
  if (found === undefined) throw new Error('there was a run');
  return { ...rows, found };
};
const under = (risk: Project['risk']): Evaluation => {
  const { risk: _risk, ...project } = DEMO;
  return { ...evaluation, project: risk === undefined ? project : { ...project, risk } };
};

describe('before a run', () => {
  test('of what cannot be run it is told why, with the register as it was given', () => {
    const none = awkward('without a schedule');
    const { findings } = prepareRisk(none);
    const rows = riskRows(study({ evaluation: none, prepared: undefined, findings, view: undefined }));
    expect(plain(rows.sentence)).toBe('How sure this is cannot be worked out yet.');
    expect([rows.run, rows.found, rows.noted, rows.missing.length]).toEqual([
      '',
      undefined,
      [],
      findings.length,
    ]);
    expect(rows.library).toEqual([]);
    expect(rows.register.rows.map(row => row.cells['share']?.text)).toEqual(
      DEMO.risk?.register.map(() => 'not in this scenario'),
    );
    expect(rows.settings.rows.map(row => row.id)).toEqual(['trials', 'seed', 'confidence', 'weather']);
  });

  test('of an estimate without a total or a finish it is not worked out', () => {
    const words = 'How sure this is has not been worked out yet.';
    const none = awkward('with a hull that nobody knows');
    expect(plain(riskRows(study({ evaluation: none, view: undefined })).sentence)).toBe(words);
    const absent = awkward('with a lightship that is no weight');
    expect(plain(riskRows(study({ evaluation: absent, view: undefined })).sentence)).toBe(words);
  });

  test('a document without the section shows how it would be run, without a way to change or add anything', () => {
    const rows = riskRows(study({ evaluation: bare, prepared: preparedOf(bare), view: undefined }));
    expect(rows.register.add).toBeUndefined();
    expect(rows.settings.rows.map(row => [row.id, row.cells['value']?.text])).toContainEqual([
      'weather',
      'drawn in each run',
    ]);
    expect(rows.settings.rows.flatMap(row => row.cells['value']?.edit ?? [])).toEqual([]);
    const unprepared = riskRows(
      study({ evaluation: { ...bare, project: BARE }, prepared: undefined, view: undefined }),
    );
    expect(unprepared.settings.rows).toEqual([]);
    expect(unprepared.register.rows).toEqual([]);
  });
});

describe('a run', () => {
  test.each([
    [false, true, /^200 runs, seed 1$/],
    [true, true, /^200 runs, seed 1, of the document before the last edits$/],
    [false, false, /; mitigations and surveys were not tried$/],
  ])('is named: stale %s, whole %s', (isStale, isWhole, name) => {
    const rows = riskRows(study({ isStale, isWhole }));
    expect(rows.run).toMatch(name);
    expect(rows.found?.bottom.map(cell => cell.beside)).toEqual(
      rows.found?.bottom.map(() => (isStale ? 'before the edit' : undefined)),
    );
    expect(plain(rows.found?.award)).toMatch(isStale ? / runs, before the edit\.$/ : / runs\.$/);
  });

  test('without award, grant or last date leaves out what speaks of them', () => {
    const { found } = seen({ award: undefined, grantPeriod: undefined, deadline: undefined });
    expect(found.award).toBeUndefined();
    expect(found.chances.rows.map(row => row.id)).toEqual(['joint', 'money', 'date', 'season']);
    expect(found.bottom.map(cell => cell.key)).toEqual(['p80']);
    expect(found.finish.marks.map(mark => mark.id)).not.toContain('limit');
    expect(found.frontier.lastDate).toBeUndefined();
  });

  test('tells the part of the grant by what it is, and not beside the same amount once more', () => {
    const { joint } = VIEW;
    const rowOf = (budget: number, holdsContingency: boolean) =>
      seen({ award: { budget, holdsContingency, chance: 0.5 } })
        .found.chances.rows.filter(row => row.id === 'award')
        .map(row => [row.cells['what']?.text, row.cells['chance']?.text]);
    expect(rowOf(joint.budget, true)).toEqual([]);
    expect(rowOf(2_000_000, true)).toEqual([['Inside $2,000,000, the total with the contingency', '50']]);
    expect(rowOf(1_900_000, false)).toEqual([['Inside $1,900,000, the total without the contingency', '50']]);
  });

  test('ends its axis with the grant where there is no last date of the document', () => {
    const { found } = seen({
      deadline: undefined,
      grantPeriod: { end: '2029-12-31', chanceOfMissing: 0.25 },
    });
    expect(found.finish.marks.find(mark => mark.id === 'limit')?.text).toBe('end of the grant 31 Dec 2029');
    expect(found.frontier.lastDate?.text).toBe('after 31 Dec 2029');
    expect(found.bottom.find(cell => cell.key === 'grant')?.value.text).toBe('75 in 100');
  });

  test('of which a percentile is missing says nothing of it', () => {
    const { found, sentence } = seen({
      confidence: 0.999,
      cost: { ...VIEW.cost, percentiles: [], curve: VIEW.cost.curve.filter(point => point.share < 0.9) },
    });
    expect(plain(sentence)).not.toContain('stay under');
    expect(found.bottom.map(cell => cell.key)).not.toContain('p80');
    expect(found.cost.marks.map(mark => mark.id)).not.toContain('chosen');
  });

  test('without a figure of the plan draws no mark for it and departs from the mean', () => {
    const { found, whys } = seen({
      cost: { ...VIEW.cost, plan: undefined, planShare: undefined },
      finish: { ...VIEW.finish, planShare: undefined },
      contingency: { ...VIEW.contingency, budget: undefined, amount: undefined },
    });
    expect(found.cost.marks.map(mark => mark.id)).toEqual(['p50', 'chosen']);
    expect(plain(found.percentiles.note)).toMatch(
      /^The plan’s cost holds in unknown runs, its finish in unknown\./,
    );
    expect(found.frontier.plans[0]?.dollars).toBe(VIEW.cost.mean);
    expect(plain(found.contingency.note)).toBe('The document sets no contingency aside.');
    const mean = `$${Math.round(VIEW.cost.mean).toLocaleString('en-US')}`;
    expect(whys['run:percentiles|p80|cost']?.rows.map(row => row.value.text)).toContain(mean);
  });

  test('marks the plan at no share where it is not known how sure it is, and no finish where there is none', () => {
    const { found } = seen({
      cost: { ...VIEW.cost, planShare: undefined },
      finish: { ...VIEW.finish, planShare: undefined },
    });
    expect(
      [found.cost, found.finish].map(curve => curve.marks.find(mark => mark.id === 'plan')?.share),
    ).toEqual([0, 0]);
    const undated = riskRows(
      study({
        evaluation: { ...evaluation, project: { ...DEMO, calendars: BARE.calendars } },
        view: { ...VIEW, finish: { ...VIEW.finish, curve: [] } },
      }),
    );
    expect(undated.found?.finish.marks.map(mark => mark.id)).not.toContain('p50');
  });

  test('by confidence shares out the contingency of the document', () => {
    const [line] = VIEW.contingencyAtP80.lines;
    if (line === undefined) throw new Error('a line has some');
    const contingency = {
      ...VIEW.contingency,
      policy: 'confidence' as const,
      amount: 1000,
      reaches: 0.7,
      lines: [
        { ...line, amount: 999.6 },
        { ...line, line: 'a-line-of-before', amount: 0.4 },
      ],
    };
    const { found } = seen({ contingency });
    expect(found.contingency.caption).toBe('Contingency at the confidence of the document');
    expect(found.contingency.rows.map(row => row.id)).toEqual(['plan', 'total', 'whole', line.line]);
    expect(
      found.contingency.rows.filter((_, at) => at % 2 === 1).map(row => row.cells['amount']?.text),
    ).toEqual(['1,000', '1,000']);
    expect(plain(found.contingency.note)).toBe(
      'The document sets $1,000 aside, which reaches 70 in 100 runs.',
    );
    const gone = seen({
      contingency: { ...contingency, lines: [{ ...line, line: 'a-line-of-before', amount: 5 }] },
    });
    expect(gone.found.contingency.rows.at(-1)?.cells['title']?.text).toBe('a-line-of-before');
    expect(seen({ contingency: { ...contingency, amount: undefined } }).found.contingency.caption).toBe(
      'Contingency at 80 in 100 runs',
    );
  });

  test('tells what a survey brings for each dollar, and nothing of one that is free', () => {
    const survey = { input: 'x', title: 'A survey', cost: 1000, narrowing: -2500, perDollar: -2.5 } as never;
    const [paid, free] = [
      survey,
      { ...(survey as object), input: 'y', cost: 0, perDollar: -Infinity } as never,
    ];
    expect(seen({ surveys: [paid, free] }).found.surveys.rows.map(row => row.cells['per']?.text)).toEqual([
      '−2.5',
      '–',
    ]);
  });

  test('names in one line what always drives the finish, and draws bars where nothing moves the cost', () => {
    const drivesFinish = [
      { activity: 'ocean-tow', title: 'Ocean tow', share: 1 },
      { activity: 'boom', title: 'Boom', share: 0.5 },
    ];
    const drivers = VIEW.drivers
      .slice(0, 2)
      .map(driver => ({ ...driver, costAtLow: 5, costAtHigh: 5, contribution: -0.1 }));
    const { found } = seen({ drivesFinish, drivers });
    expect(plain(found.drivesFinish.note)).toBe('In every run: ocean tow.');
    expect(found.drivesFinish.rows.map(row => row.id)).toEqual(['boom']);
    expect(Object.values(found.driverBars)).toEqual(drivers.map(() => ({ from: 0, to: 0, part: 0 })));
    expect(seen({ drivesFinish: drivesFinish.slice(1) }).found.drivesFinish.note).toBeUndefined();
  });

  test('of a document without grant and section is told in whole words too', () => {
    const rows = riskRows(study({ evaluation: bare, prepared: preparedOf(bare), view: bareRun.view }));
    expect(brokenWords(rows)).toEqual([]);
    expect(looseRows(rows)).toEqual([]);
    expect(rows.found?.percentiles.rows.map(row => row.cells['cash']?.text)).toEqual(
      bareRun.view.cost.percentiles.map(() => '–'),
    );
  });

  test('shown after the estimate has gone still names its lines by their keys', () => {
    const rows = riskRows(
      study({ evaluation: awkward('with a hull that nobody knows'), prepared: undefined }),
    );
    const lines = rows.found?.contingency.rows.filter(row => row.kind === 'line') ?? [];
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.map(row => row.cells['title']?.text)).toEqual(lines.map(row => row.id));
    expect(
      rows.whys['run:drivers|' + (VIEW.drivers[0]?.id ?? '') + '|share']?.rows.map(row => row.words),
    ).toEqual(['from which each run departs; its figures open their givens']);
    expect(brokenWords(rows)).toEqual([]);
  });
});

test('in how much each curve is steep: a driver that moves many givens counts those it does not name', () => {
  const driver = VIEW.drivers.find(one => one.kind === 'driver');
  const moved = prepared.run.drivers.find(one => one.id === driver?.id)?.inputs ?? [];
  if (driver === undefined) throw new Error('the library has drivers');
  const rows = riskRows(study()).whys[`run:drivers|${driver.id}|share`]?.rows ?? [];
  expect(moved.length).toBeGreaterThan(5);
  expect(rows.map(row => row.words)).toContain('givens more');
  expect(rows.find(row => row.words === 'givens more')?.value.text).toBe(String(moved.length - 5));
  const few = {
    ...prepared,
    places: new Map<string, string>(),
    run: { ...prepared.run, drivers: [{ id: driver.id, inputs: ['a-given'] }] as never },
  };
  expect(
    riskRows(study({ prepared: few })).whys[`run:drivers|${driver.id}|share`]?.rows.map(row => [
      row.value,
      row.words,
    ])[0],
  ).toEqual([{ text: 'moves' }, 'a-given']);
});

describe('the register', () => {
  const section = DEMO.risk;
  const own = section?.register[0];
  if (section === undefined || own === undefined) throw new Error('the example has an event of its own');
  const { owner: _owner, mitigation: _mitigation, ...plainEvent } = own;
  const probability = figure('0.5', '1');
  const register = [
    {
      ...plainEvent,
      id: 'certain-cost',
      costs: [{ item: 'berth-mooring', dollars: figure('5000', 'USD') }],
      delays: [],
    },
    { ...plainEvent, id: 'only-late', probability, costs: [], delays: own.delays },
    {
      ...plainEvent,
      id: 'elsewhere',
      costs: [{ item: 'no-such-line', dollars: figure('5', 'USD') }],
      delays: [],
    },
    {
      ...plainEvent,
      id: 'partly-elsewhere',
      costs: [
        { item: 'no-such-line', dollars: figure('5', 'USD') },
        { item: 'berth-mooring', dollars: figure('7000', 'USD') },
      ],
      delays: [],
    },
    {
      ...plainEvent,
      id: 'two-lines',
      costs: ['berth-mooring', 'tank-washing'].map(item => ({ item, dollars: figure('2500', 'USD') })),
      delays: [],
    },
  ];
  const shown = under({ ...section, register });
  const rows = riskRows(study({ evaluation: shown, prepared: preparedOf(shown), view: undefined })).register
    .rows;
  const cells = (id: string, ...keys: string[]) => {
    const row = rows.find(one => one.id === id);
    return keys.map(key => row?.cells[key]?.text);
  };

  test('shows an own event with what it has, and dashes for what it has not', () => {
    const keys = ['owner', 'probability', 'cost', 'delay', 'mitigation', 'price', 'mean'];
    expect(cells('certain-cost', ...keys)).toEqual(['–', '12', '5,000', '–', '–', '–', '–']);
    expect(cells('only-late', ...keys)).toEqual(['–', '50', '–', '8', '–', '–', '–']);
    expect(cells('elsewhere', 'cost', 'share')).toEqual(['–', 'not in this scenario']);
  });

  test('an impact in several parts is that of the parts the scenario has', () => {
    const editOf = (id: string) => rows.find(one => one.id === id)?.cells['cost']?.edit;
    expect(cells('partly-elsewhere', 'cost')).toEqual(['7,000']);
    expect(editOf('partly-elsewhere')).toMatchObject({
      at: '/risk/register/partly-elsewhere/costs/1/dollars',
      value: '7000',
    });
    expect(cells('two-lines', 'cost')).toEqual(['5,000 in 2 parts']);
    expect(editOf('two-lines')).toBeUndefined();
  });

  test('shows what a measure buys once it was tried', () => {
    const [event] = VIEW.register;
    const buys = { meanCost: 1200, p80Cost: -3400 };
    if (event === undefined) throw new Error('the run had events');
    const tried = seen({ register: [{ ...event, mitigation: { buys } } as never] });
    const row = tried.register.rows.find(one => one.id === event.id);
    expect([row?.cells['mean']?.text, row?.cells['p80']?.text]).toEqual(['+1,200', '−3,400']);
  });

  test('offers events of the library with their sizes, an odd one without a likeliest size as nothing', () => {
    const [event, ...events] = prepared.run.events.filter(one => one.costs.length > 0 && one.id !== own.id);
    const [cost] = event?.costs ?? [];
    if (event === undefined || cost === undefined) throw new Error('the library has events that cost');
    const { owner: _none, ...unowned } = event;
    const offered = (dollars: typeof cost.dollars) => {
      const run = { ...prepared.run, events: [{ ...unowned, costs: [{ ...cost, dollars }] }, ...events] };
      const told = riskRows(study({ prepared: { ...prepared, run }, view: undefined }));
      return {
        entry: told.library.find(one => one.id === event.id)?.entry,
        row: told.register.rows.find(one => one.id === event.id),
      };
    };
    const size = (dollars: object) => ({ costs: [{ dollars }] });
    expect(offered({ kind: 'certain', value: 1234.5 }).entry).toMatchObject(
      size({ value: '1234.50', unit: 'USD' }),
    );
    expect(offered({ kind: 'triangular', low: 1, likely: 2, high: 3 }).entry).toMatchObject(
      size({ low: '1.00', high: '3.00' }),
    );
    expect(offered({ kind: 'pert', low: 1, likely: 2, high: 4 }).entry).toMatchObject(
      size({ value: '2.00', high: '4.00' }),
    );
    const odd = offered({ kind: 'uniform', low: 1, high: 3 });
    expect(odd.row?.cells['cost']?.text).toBe('–');
    expect(odd.row?.cells['owner']?.text).toBe('–');
    expect(odd.entry).not.toHaveProperty('owner');
  });

  test('opens what stands behind an event, and the plan where the event is not in it', () => {
    const whys = riskRows(study({ evaluation: shown, prepared: preparedOf(shown), view: undefined })).whys;
    expect(Object.keys(whys).some(name => name.startsWith('run:register|'))).toBe(true);
    expect(brokenWords(whys)).toEqual([]);
  });
});

test('a frontier of plans alone says so, and of runs in how many it holds', () => {
  const compared = (views: readonly RiskView[]) =>
    compareRows({
      comparison: compareScenarios([evaluation], [facts]),
      views,
      isStale: false,
      chosen: evaluation.scenario.id,
      measures: 'us',
    });
  expect(compared([]).frontier).toMatchObject({
    title: 'Cost and finish of the plans, $ million',
    table: { caption: 'Where the plans stand' },
  });
  expect(compared([VIEW]).frontier?.title).toBe('80 in 100 end inside both, $ million');
  expect(compared([VIEW]).hasRuns).toBe(true);
  expect(compared([]).facts.rows.map(row => row.id)).toContain('p80');
});

test.each([
  [0, '0'],
  [0.001, 'fewer than 1'],
  [0.5, '50'],
  [0.996, 'more than 99'],
  [1, '100'],
])('a share of %d is told as %s in 100', (share, said) => {
  expect(inHundred(share)).toBe(said);
});

test('an amount in the register is said to pay for the work, and for a ship on her side for the attempt alone', () => {
  const { found: _found, ...rows } = riskRows(study({}));
  expect(plain(rows.register.note)).toContain('not for a reef that it spoils');
  expect(plain(rows.register.note)).toMatch(/on her side can rarely be put right, .* is the attempt\.$/);
  const titles = rows.register.rows.map(row => row.cells['title']?.text ?? '');
  expect(titles.filter(title => title.includes('on her side'))).toEqual([
    'She sinks early, or lies on her side, and it is tried to put her right',
  ]);
  const told = troubles(evaluation).find(({ id }) => id === 'on her side')?.happens;
  expect(told).toMatch(
    /putting her right is rarely possible\. .* for the attempt, not for the reef as planned\.$/,
  );
});
