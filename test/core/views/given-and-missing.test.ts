import { describe, expect, test } from 'vitest';
import { BASES } from '../../../core/base';
import type { Evaluation } from '../../../core/evaluation';
import { startingProject, type Project } from '../../../core/project';
import { WhyDesk } from '../../../core/views';
import { stillMissing } from '../../../core/views/still-missing';
import { inputOf } from '../../../core/views/why-inputs';
import { generatorTable, generatorWhy } from '../../../core/views/waste';
import { summaryOf } from '../../../core/views/window';
import type { EstimateContext } from '../../../core/views/context';
import { awkward, DEMO, figure, LIBRARY, TODAY } from './awkward';
import { plain } from './laws';

function contextOf(change: Partial<Project> = {}, measures: 'us' | 'metric' = 'us'): EstimateContext {
  const evaluation = awkward('the example');
  const { estimate } = evaluation;
  if (estimate === undefined) throw new Error('the example is estimated');
  return {
    evaluation: { ...evaluation, project: { ...evaluation.project, ...change } },
    measures,
    parts: estimate,
    summary: summaryOf(estimate),
  };
}
const deskOf = (change: Partial<Project> = {}, measures: 'us' | 'metric' = 'us') =>
  new WhyDesk(contextOf(change, measures).evaluation, measures);

describe('a given number that is asked for', () => {
  const { vessel, site } = DEMO;
  const beam = figure('20', 'm', { low: '18', high: '26', year: 2025, note: 'Twice' });

  test('is told whole: value, range, where it comes from and where it is changed', () => {
    expect(deskOf({ vessel: { ...vessel, beam } }, 'metric').answer('given:/vessel/beam')).toStrictEqual({
      id: 'given:/vessel/beam',
      title: 'Beam',
      path: 'Given number',
      value: { text: '20', unit: 'm' },
      words: 'Invented for this test, 2025. Note: Twice',
      rows: [
        {
          depth: 0,
          operator: '=',
          value: { text: '20', unit: 'm', basis: 'surveyed', source: 'Invented for this test, 2025' },
          words: 'given in this project',
          // From 18 to 26 the value 20 is a quarter of the way.
          range: { low: '18', high: '26', at: 0.25 },
        },
      ],
      usedBy: [],
      bases: BASES,
      edit: { at: '/vessel/beam', kind: 'figure', value: '20', unit: 'm', label: 'Beam' },
      home: 'vessel',
    });
  });

  test.each([
    ['30', '18', '26', 1],
    ['10', '18', '26', 0],
    ['18', '18', '18', 0.5],
  ])('of %s in a range of %s to %s stands at %d of it', (value, low, high, at) => {
    const own = deskOf({ vessel: { ...vessel, beam: { ...beam, value, low, high } } }, 'metric');
    expect(own.answer('given:/vessel/beam')?.rows[0]?.range?.at).toBe(at);
  });

  test('without range, year or note says nothing of them', () => {
    const own = deskOf({ site: { ...site, waterDepth: figure('60', 'm', { note: '' }) } }, 'metric');
    const told = own.answer('given:/site/waterDepth');
    expect([told?.title, told?.words]).toEqual(['Water depth', 'Invented for this test.']);
    expect(told?.rows[0]).not.toHaveProperty('range');
    const half = deskOf({ vessel: { ...vessel, beam: figure('20', 'm', { low: '18' }) } }, 'metric');
    expect(half.answer('given:/vessel/beam')?.rows[0]).not.toHaveProperty('range');
  });

  test.each([
    ['clearanceRequired', 'Clearance required'],
    ['towDistance', 'Tow distance'],
    ['yardDistance', 'Road to the disposal sites'],
  ] as const)('of the site at %s is called “%s”', (field, title) => {
    const own = deskOf({ site: { ...site, [field]: figure('40', 'm') } }, 'metric');
    expect(own.answer(`given:/site/${field}`)).toMatchObject({ title, home: 'vessel' });
  });

  test.each([
    ['draughtLight', 'Draught light'],
    ['draughtFull', 'Draught full'],
    ['length', 'Length'],
  ] as const)('of the ship at %s is called “%s”', (field, title) => {
    const own = deskOf({ vessel: { ...vessel, [field]: figure('40', 'm') } }, 'metric');
    expect(own.answer(`given:/vessel/${field}`)?.title).toBe(title);
  });

  test('of a work item is called after it, one of the rate book after its rate', () => {
    const items = [
      { item: 'tow-tug', note: '', hoursPerUnit: figure('3', 'h/each'), crews: figure('2', 'each') },
    ];
    const own = deskOf({ items });
    const title = contextOf().parts.items.find(item => item.id === 'tow-tug')?.title ?? '';
    expect(own.answer('given:/items/tow-tug/hoursPerUnit')?.title).toBe(`${title}: hours for one`);
    expect(own.answer('given:/items/tow-tug/crews')).toMatchObject({
      title: `${title}: crews planned`,
      home: 'work',
    });
    const [trade] = LIBRARY.rateBook.trades;
    const place = `given:/rates/overrides/trades~1${trade?.id ?? ''}~1wage/figure`;
    const book = deskOf().answer(place);
    expect(book?.title).toBe(trade?.title);
    expect(book?.rows[0]?.words).toBe('from the library');
    const overrides = [{ at: `trades/${trade?.id ?? ''}/wage`, figure: figure('50', 'USD/h') }];
    const changed = deskOf({ rates: { ...DEMO.rates, overrides } }).answer(place);
    expect([changed?.title, changed?.rows[0]?.words, changed?.value.text]).toEqual([
      trade?.title,
      'given in this project',
      '50',
    ]);
    const kept = deskOf({ rates: { ...DEMO.rates, overrides } }).answer(
      `book:trades/${trade?.id ?? ''}/wage`,
    );
    expect([kept?.title, kept?.rows[0]?.words, kept?.value.text]).toEqual([
      trade?.title,
      'from the library',
      book?.value.text,
    ]);
    // Typed again in the derivation, the number is still meant at the prices of its year.
    expect(kept?.edit?.year).toBe(trade?.wage.year);
    expect(trade?.wage.year).toBeDefined();
    const [hire] = LIBRARY.rateBook.equipment.filter(one => one.mobilisation !== undefined);
    const beside = deskOf().answer(
      `given:/rates/overrides/equipment~1${hire?.id ?? ''}~1mobilisation/figure`,
    );
    expect(beside?.title).toBe(`${hire?.title ?? ''}, mobilisation`);
  });

  test('is no entry of a list that has it not, and no text', () => {
    expect(deskOf().answer('given:/vessel/name')).toBeUndefined();
    expect(deskOf().answer('given:/quotes/nobody/amount')).toBeUndefined();
    expect(deskOf().answer('given:/vessel/length/value')).toBeUndefined();
  });

  test('that the library gives for one unit of work is told as of the library', () => {
    const item = contextOf().parts.items.find(one => one.hoursPerUnit !== undefined);
    const told = deskOf({}, 'metric').answer(`rate:${item?.id ?? ''}`);
    expect(told).toMatchObject({
      title: `${item?.title ?? ''}: hours for one`,
      home: 'work',
      edit: { at: `/items/${item?.id ?? ''}/hoursPerUnit` },
    });
    expect(told?.rows[0]?.words).toBe('from the library');
  });
});

describe('the input behind a figure of the sheets', () => {
  test.each([
    ['ship/length', '/vessel/length', 'vessel'],
    ['ship/beam', '/vessel/beam', 'vessel'],
    ['ship/draught-full', '/vessel/draughtFull', 'vessel'],
    ['ship/lightship', '/vessel/lightship', 'vessel'],
    ['ship/water-depth', '/site/waterDepth', 'vessel'],
    ['ship/tow-distance', '/site/towDistance', 'vessel'],
    ['worked/tow-tug/hours-per-unit', '/items/tow-tug/hoursPerUnit', 'work'],
    ['items/tow-tug/quantity', '/items/tow-tug/quantity', 'work'],
    ['items/tow-tug/crews', '/items/tow-tug/crewsAtOnce', 'work'],
    ['trades/burner/wage', '/rates/overrides/trades~1burner~1wage/figure', 'rates'],
    ['mark-ups/profit', '/rates/overrides/markUps~1profit~1share/figure', 'rates'],
  ])('%s stands at %s', (id, at, home) => {
    const context = contextOf();
    const found = inputOf(context, id);
    expect([found?.edit.at, found?.home, found?.edit.kind]).toEqual([at, home, 'figure']);
    expect(found?.edit.label).toMatch(/\S/);
  });

  test('of a quantity of the ship is what a survey found of it', () => {
    const context = contextOf();
    const all = [1, 2, 3, 4, 5, 6, 7, 8, 9].flatMap(table =>
      ['measured', 'number'].map(column => `drivers-${table}/fuel-left/${column}`),
    );
    const known = all.filter(id => context.parts.work.result.has(id));
    expect(known.length).toBeGreaterThan(0);
    for (const id of known)
      expect(inputOf(context, id)).toMatchObject({
        edit: { at: '/survey/measured/fuel-left/figure', kind: 'figure' },
        home: 'work',
      });
  });

  test.each([
    'ship/displacement',
    'lines/tow-tug/total',
    'trades/burner/burdened',
    'hires/tow-tug/rate',
    'drivers/fuel-left/number',
    'drivers-1/fuel-left/value',
    'sums/total',
  ])('%s is none', id => {
    expect(inputOf(contextOf(), id)).toBeUndefined();
  });
});

describe('what a reader still has to give', () => {
  const empty = awkward('as it begins');
  const begun = (reader: Project['reader']): Project =>
    startingProject(LIBRARY, { reader, hullType: 'freighter', title: 'New', start: TODAY });
  const missing = (project: Project, findings: Evaluation['findings'] = []) =>
    stillMissing({ ...empty, project, findings });
  const of = (reader: Project['reader'], id: string) =>
    missing(begun(reader)).rows.find(row => row.id === id);
  const ids = (project: Project, findings?: Evaluation['findings']) =>
    missing(project, findings).rows.map(row => row.id);

  test.each([
    ['grant', 'Still missing for a grant budget of your own:'],
    ['bid', 'Still missing for a bid of your own:'],
    ['comparison', 'Still missing for a decision:'],
  ] as const)('for a %s is told under its name', (reader, lead) => {
    expect(missing(begun(reader)).lead).toBe(lead);
  });

  test.each([
    ['grant', 'name', 'the name, type and year of the ship', 'vessel', '/vessel/name'],
    ['grant', 'length', 'her length', 'vessel', '/vessel/length'],
    ['grant', 'lightship', 'her lightship', 'vessel', '/vessel/lightship'],
    ['grant', 'depth', 'the depth of the site', 'vessel', '/site/waterDepth'],
    ['grant', 'clearance', 'the clearance required above her', 'vessel', '/site/clearanceRequired'],
    ['grant', 'tow', 'the distance of the tow', 'vessel', '/site/towDistance'],
    ['grant', 'start', 'the start of the project', 'schedule', '/calendars/start'],
    ['grant', 'sources', 'the sources of the money', 'funding', '/funding'],
    ['grant', 'survey', 'quantities found by a survey', 'materials', '/survey/measured/'],
    ['bid', 'wages', 'your wages', 'rates', undefined],
    ['bid', 'mark-ups', 'your mark-ups', 'rates', undefined],
    ['bid', 'quotes', 'quotes of those you buy from', 'work', undefined],
    ['comparison', 'last-date', 'the last date', 'schedule', '/calendars/deadline'],
    ['comparison', 'weights', 'what counts for the board', 'compare', undefined],
    ['comparison', 'vote', 'the vote', 'decision', undefined],
  ] as const)('of a %s: %s, in words and with its place', (reader, id, words, view, at) => {
    expect(of(reader, id)).toStrictEqual({ id, words, view, ...(at === undefined ? {} : { at }) });
  });

  test('of the example is nothing that stands there', () => {
    const own = { ...DEMO, reader: 'grant' as const };
    expect(ids(own)).toEqual([]);
    const blocks = { code: 'a/b', weight: 'blocks', place: '/a', message: 'm', remedy: 'r' } as const;
    const [blocked] = missing(own, [{ ...blocks, weight: 'warns' }, blocks]).rows;
    expect(blocked).toEqual({ id: 'blocked', words: 'what the findings ask for', view: 'review' });
    expect(ids(own, [{ ...blocks, weight: 'warns' }])).toEqual([]);
  });

  test('of a ship that has a name is her type and year, until the year is no longer one that was begun with', () => {
    const project = begun('bid');
    const named = (change: Partial<Project['vessel']>) =>
      missing({ ...project, vessel: { ...project.vessel, name: 'Named', ...change } }).rows[0];
    const asked = { id: 'built', words: 'her type and year', view: 'vessel', at: '/vessel/built' };
    expect(named({})).toStrictEqual(asked);
    // Another type was chosen, and the year is still the freighter's, or became the usual one of the type.
    const other = LIBRARY.hullTypes.find(({ id }) => id === 'naval-auxiliary');
    const usual = Number(other?.quantities['build-year']?.value);
    expect(usual).not.toBe(project.vessel.built);
    expect(named({ hullType: 'naval-auxiliary' })).toStrictEqual(asked);
    expect(named({ hullType: 'naval-auxiliary', built: usual })).toStrictEqual(asked);
    expect(named({ hullType: 'naval-auxiliary', built: usual + 1 })?.id).toBe('length');
    expect(named({ hullType: 'unknown', built: 1900 })?.id).toBe('length');
  });

  test('of a grant is its share, its period and the classes of its contracts, each at the first that lacks it', () => {
    const { funding } = DEMO;
    const [first, second, ...others] = funding?.sources ?? [];
    if (funding === undefined || first === undefined || second === undefined)
      throw new Error('there is a grant');
    const under = (change: Partial<typeof funding>) =>
      missing({ ...DEMO, reader: 'grant', funding: { ...funding, ...change } }).rows;
    const { period: _period, ...unending } = { ...second, form: first.form };
    const begins = figure('0.75', '1', { source: 'Starting value, to be replaced' });
    expect(under({ sources: [first, { ...second, share: begins }, ...others] })).toEqual([
      {
        id: 'share',
        words: 'the share of the grant',
        view: 'funding',
        at: `/funding/sources/${second.id}/share`,
      },
    ]);
    expect(under({ sources: [first, unending, ...others] })).toEqual([
      {
        id: 'period',
        words: 'the period of the grant',
        view: 'funding',
        at: `/funding/sources/${second.id}/period/start`,
      },
    ]);
    const contracts = funding.contracts.map(({ class: _class, ...one }) => one);
    const [contract] = contracts;
    expect(under({ contracts, indirect: { kind: 'de minimis' } })).toEqual([
      {
        id: 'class',
        words: 'the class of each contract',
        view: 'funding',
        at: `/funding/contracts/${contract?.id ?? ''}/class`,
      },
    ]);
    expect(under({ contracts, indirect: { kind: 'none' } })).toEqual([]);
  });

  test('leaves the list with wages of either kind, a mark-up, a weight or a vote', () => {
    const bid = begun('bid');
    const wage = figure('40', 'USD/h');
    const rated = (rates: Partial<Project['rates']>) => ids({ ...bid, rates: { ...bid.rates, ...rates } });
    expect(rated({ wages: [{ trade: 'burner', figure: wage }] })).not.toContain('wages');
    expect(rated({ overrides: [{ at: 'trades/burner/wage', figure: wage }] })).not.toContain('wages');
    expect(rated({ overrides: [{ at: 'trades/burner/wage', figure: wage }] })).toContain('mark-ups');
    expect(rated({ overrides: [{ at: 'markUps/profit/share', figure: wage }] })).toContain('wages');
    expect(rated({ overrides: [{ at: 'markUps/profit/share', figure: wage }] })).not.toContain('mark-ups');
    const compared = begun('comparison');
    const weights = [{ criterion: 'cost' as const, weight: '1' }];
    expect(ids({ ...compared, decision: { weights } })).not.toContain('weights');
    expect(ids({ ...compared, decision: { weights } })).toContain('vote');
    expect(ids({ ...compared, decision: { weights: [], chosen: 'a' } })).not.toContain('vote');
    expect(ids({ ...compared, decision: { weights: [], chosen: 'a' } })).toContain('weights');
    const two = compared.scenarios.flatMap(one => [one, { ...one, id: 'b' }]);
    expect(ids({ ...compared, scenarios: two })).not.toContain('scenarios');
    const alone = missing({ ...compared, scenarios: two.slice(0, 1) }).rows.find(
      row => row.id === 'scenarios',
    );
    expect(alone).toStrictEqual({ id: 'scenarios', words: 'a second way to do it', view: 'compare' });
    expect(ids({ ...compared, quotes: DEMO.quotes, reader: 'bid' })).not.toContain('quotes');
  });
});

describe('hazardous waste by month', () => {
  const month = (name: string, category: 'very small' | 'small' | 'large', pickUps: number) => ({
    month: name,
    counted: 1234.56,
    acute: 0.04,
    category,
    pickUps,
    streams: ['pcb-solids', 'no-such-stream'],
  });
  const under = (months: readonly ReturnType<typeof month>[], event = '') => {
    const context = contextOf();
    const { project } = context.evaluation;
    const options = { ...project.options, 'episodic-event': event };
    const generator = { ...context.parts.generator, months } as unknown as NonNullable<
      EstimateContext['parts']['generator']
    >;
    return {
      ...context,
      parts: { ...context.parts, generator },
      evaluation: { ...context.evaluation, project: { ...project, options } },
    };
  };

  test('is a row a month, with its category and pick-ups, each opening the month', () => {
    const { rows, id, caption } = generatorTable(
      under([month('2027-05', 'small', 0), month('2027-06', 'large', 3)]),
    );
    expect([id, caption]).toEqual(['generator', 'Hazardous waste by month']);
    expect(rows.map(row => [row.id, row.kind, ...Object.values(row.cells).map(cell => cell.text)])).toEqual([
      ['2027-05', 'line', 'May 2027', '1,234.6', '0.0', 'small', '–'],
      ['2027-06', 'line', 'Jun 2027', '1,234.6', '0.0', 'large', '3'],
    ]);
    const [first] = rows;
    expect(Object.values(first?.cells ?? {}).map(cell => cell.why)).toEqual([
      undefined,
      ...['counted', 'acute', 'category', 'pickUps'].map(() => 'generator:2027-05'),
    ]);
  });

  test.each([
    [[], '', 'The site is never a large generator.'],
    [['large'], '', 'Large in 1 month: manifests, 90-day storage and a contingency plan are priced.'],
    [
      ['large', 'small', 'large'],
      '',
      'Large in 2 months: manifests, 90-day storage and a contingency plan are priced.',
    ],
    [
      ['small'],
      'planned',
      'The site is never a large generator. A planned episodic event counts for no month.',
    ],
  ] as const)('of categories %j with an event “%s” says: %s', (categories, event, note) => {
    const months = categories.map((category, at) => month(`2027-0${at + 1}`, category, 1));
    expect(plain(generatorTable(under(months, event)).note)).toBe(note);
  });

  test('opens as what was generated and the limits it is held against', () => {
    const told = generatorWhy(under([month('2027-05', 'large', 1)]), 'generator:2027-05');
    const stream = LIBRARY.rateBook.streams.find(one => one.id === 'pcb-solids');
    const points = ['generator-very-small', 'generator-large', 'generator-acute'].map(id =>
      LIBRARY.tripPoints.find(one => one.id === id),
    );
    expect(told).toEqual({
      id: 'generator:2027-05',
      title: 'Hazardous waste of May 2027',
      path: 'Budget, waste',
      value: { text: '1,234.6', unit: 'kg that count' },
      words: 'The activities that make waste in the month, over their work days: a large generator.',
      rows: [
        {
          depth: 0,
          operator: '',
          value: { text: '', why: 'streams/pcb-solids/tonnes' },
          words: stream?.title,
        },
        {
          depth: 0,
          operator: '',
          value: { text: '', why: 'streams/no-such-stream/tonnes' },
          words: 'no-such-stream',
        },
        ...points.map(point => ({
          depth: 0,
          operator: '',
          value: {
            text: Number(point?.figure.value).toLocaleString('en-US', { maximumFractionDigits: 0 }),
            unit: 'kg',
            why: `trip:${point?.id ?? ''}`,
          },
          words: point?.title,
        })),
      ],
      usedBy: [],
      bases: BASES,
      home: 'budget',
    });
    expect(generatorWhy(under([]), 'generator:2027-05')).toBeUndefined();
    expect(generatorWhy(under([month('2027-05', 'large', 1)]), 'generator-2027-05')).toBeUndefined();
  });
});

describe('without a grant', () => {
  test.each([
    'grant:cash|2027-05|paid',
    'grant:beside|carrying',
    'grant:county|total',
    'grant:step|cash|estimate',
  ])('“%s” opens nothing', name => {
    const bare = awkward('without grant, bid, record, deadline, quotes and compartments');
    expect(new WhyDesk(bare, 'us').answer(name)).toBeUndefined();
  });

  test('the cost of carrying the gap is told as the table tells it, with the gaps of all months', () => {
    const desk = deskOf();
    const cell = desk.opened('funding')?.beside.rows.find(row => row.id === 'carrying')?.cells['amount'];
    const told = desk.answer('grant:beside|carrying');
    const amount = (text = '') => Number(text.replaceAll(',', ''));
    expect(amount(cell?.text)).toBeGreaterThan(0);
    expect(Math.abs(amount(told?.value.text) - amount(cell?.text))).toBeLessThanOrEqual(0.5);
    expect(told?.rows.every(row => /^[A-Z][a-z]{2} \d{4}$/.test(row.words))).toBe(true);
  });
});
