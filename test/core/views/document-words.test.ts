import { describe, expect, test } from 'vitest';
import { evaluate, shippedLibrary } from '../../../core/evaluation';
import type { Project, Scenario } from '../../../core/project';
import { importView, WhyDesk, windowRows, type OpenedRows } from '../../../core/views';
import { changeOf } from '../../../core/views/index-of';
import { Derivations } from '../../../core/views/simulated';
import { shades } from '../../../core/views/schedule-shades';
import { difference } from '../../../core/views/funding/tie-out-table';
import { summaryOf } from '../../../core/views/window';
import { AWKWARD, awkward, DEMO, evaluatedAs, figure, FULL, LIBRARY, TODAY } from './awkward';
import { plain } from './laws';

const full = awkward('with all that a document may hold');
const desk = new WhyDesk(full, 'us');
const rowsOf = (table: OpenedRows['scenarios']['changes'] | undefined, ...keys: string[]) =>
  table?.rows.map(row => keys.map(key => row.cells[key]?.text));

describe('the changes of a scenario', () => {
  const changes: Scenario['changes'] = [
    { at: '/options/diver-access', to: 'open' },
    { at: '/options/diver-access', to: 'of-old' },
    { at: '/options/shift-pattern', to: null },
    { at: '/calendars/federalHolidays', to: true },
    { at: '/calendars/federalHolidays', to: false },
    { at: '/vessel/built', to: 1960 },
    {
      at: '/vessel/length',
      to: { value: '1430', unit: 'ft', basis: 'surveyed', source: 'Invented for this test' },
    },
    { at: '/vessel/length', to: { value: '12' } },
    { at: '/calendars/closures', to: [] },
    { at: '/calendars/closures', to: ['one'] },
    { at: '/items/ocean-tow/hoursPerUnit', to: 'x' },
    { at: '/items/no-such-item/note', to: 'x' },
  ];
  const project = { ...DEMO, scenarios: [{ id: 'a', title: 'A', changes }] };
  const { scenarios, changes: table } = new WhyDesk({ ...full, project }, 'us').opened('scenarios') ?? {};

  test('are told as what they change and to what, in words', () => {
    expect(rowsOf(table, 'what', 'to')).toEqual([
      ['Diver access', 'Open interior'],
      ['Diver access', 'of-old'],
      ['Shifts', 'nothing'],
      ['Calendars, federal holidays', 'yes'],
      ['Calendars, federal holidays', 'no'],
      ['Vessel, built', '1960'],
      ['Vessel, length', '1,430 ft'],
      ['Vessel, length', '12'],
      ['Calendars, closures', '0 entries'],
      ['Calendars, closures', '1 entry'],
      ['Tow to the site, hours per unit', 'x'],
      ['Items, no such item, note', 'x'],
    ]);
  });

  test('of the only scenario can be taken out, the scenario itself cannot', () => {
    expect(scenarios?.rows[0]?.cells).not.toHaveProperty('remove');
    expect(table?.rows[0]?.cells['remove']).toBeDefined();
  });
});

test('laboratory results stand beside the rule that speaks of them in their unit, or beside none', () => {
  expect(rowsOf(desk.opened('materials')?.laboratory, 'sample', 'reportingLimit', 'verdict')).toEqual([
    ['L-1', '–', 'trips at 50 ppm'],
    ['L-2', '5', 'clear of 50 ppm'],
    ['L-3', '–', 'cannot tell'],
    ['L-4', '–', 'trips at 1 %'],
    ['L-5', '–', 'clear of 5 mg per litre'],
    ['L-6', '–', 'cannot tell'],
    ['L-7', '–', 'no trip-point'],
    ['L-8', '–', 'no trip-point'],
  ]);
  expect(desk.answer('laboratory:7')).toBeUndefined();
  expect(desk.answer('laboratory:0')?.words).toMatch(/^Trips at /);
});

test('evidence tells its page and what it proves where that is known, and who names it', () => {
  expect(rowsOf(desk.opened('evidence')?.attachments, 'name', 'page', 'note', 'usedBy')).toEqual([
    ['tug.pdf', '3', 'Signed offer', 'Lantern Towing (invented)'],
    ['plan.pdf', '–', '–', ''],
  ]);
});

describe('the window of a full document', () => {
  const window = windowRows(FULL, full, 'us', undefined)?.rows;

  test('tells a quote relied on from one that is not, and can take out a cover only where one is left', () => {
    const tow = window?.work.stages.flatMap(stage => stage.lines).find(line => line.id === 'tow-tug');
    expect(tow?.quotes.map(words => words.split(':')[0])).toEqual(['Quote relied on', 'Quote', 'Quote']);
    expect(window?.work.covers.rows.map(row => row.cells['remove'] !== undefined)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  test('writes a changed rate as given here, with the crews that were set', () => {
    const line = window?.work.stages.flatMap(stage => stage.lines).find(one => one.id === 'cable-stripping');
    const shown = (line?.says ?? []).flatMap(part => (typeof part === 'string' ? [] : [part]));
    expect(shown.map(part => part.why)).toContain('given:/items/cable-stripping/hoursPerUnit');
    expect(shown.flatMap(part => part.edit?.at ?? [])).toContain('/items/cable-stripping/crews');
    expect(desk.answer('given:/items/cable-stripping/hoursPerUnit')?.title).toBe(
      'Cable pulled and cut: hours for one',
    );
  });

  test('tells holidays that are worked, a first day that was set, and days to spare before the last date', () => {
    expect(window?.schedule?.calendar.rows.find(row => row.id === 'holidays')?.cells['value']?.text).toBe(
      'worked',
    );
    const row = window?.schedule?.table.rows.find(one => one.id === 'cable-stripping');
    expect(row?.cells['notBefore']?.text).toBe('1 Mar 2027');
    expect(plain(window?.schedule?.sentence)).toMatch(
      /, \d+ calendar days before the last date\. There is work on \d+ days\.$/,
    );
    expect(window?.schedule?.marks.map(mark => mark.kind)).toEqual([
      'finish',
      'last-date',
      'grant-end',
      'status',
    ]);
    expect(window?.schedule?.shades.every(shade => shade.kind === 'closed')).toBe(true);
  });

  test('marks the end of the grant where it is another day than the last date, and not years after the work', () => {
    const { funding } = DEMO;
    const [source] = funding?.sources ?? [];
    if (funding === undefined || source === undefined) throw new Error('the example has a grant');
    const marksWith = (finish: string) => {
      const sources = [{ ...source, period: { start: '2027-01-01', finish } }];
      const project = { ...DEMO, funding: { ...funding, sources } };
      const shown = windowRows(project, evaluatedAs(project), 'us', undefined)?.rows.schedule;
      return shown?.marks.map(({ title, date }) => [title, date]);
    };
    const { deadline = '' } = DEMO.calendars;
    expect(marksWith('2029-09-30')).toContainEqual(['Grant ends', '30 Sep 2029']);
    expect(marksWith(deadline)?.map(([title]) => title)).not.toContain('Grant ends');
    expect(marksWith('2039-09-30')?.map(([title]) => title)).not.toContain('Grant ends');
  });

  test('says that a planned event counts for no month, and how the topside is cut', () => {
    expect(plain(window?.budget.generator.note)).toContain('A planned episodic event counts for no month.');
    expect(plain(window?.vessel.sentence)).toMatch(/^With its topside cut down, the ship rests under/);
  });

  test('opens the openings of a compartment one by one, and says that there are none', () => {
    const [hold, space] = FULL.vessel.compartments;
    expect(desk.answer(`openings:${hold?.id ?? ''}`)?.rows.map(row => row.words)).toEqual([
      '2 to port, the area of one',
      '1 to bottom, the area of one',
    ]);
    expect(desk.answer(`openings:${space?.id ?? ''}`)?.rows.map(row => row.value.text)).toEqual(['none']);
    expect(window?.vessel.picture?.openings.map(opening => opening.side)).toEqual(['port', 'port']);
    expect(window?.vessel.picture?.vents).toHaveLength(1);
  });

  test('tells where a given number comes from, with its note and without a year where it has none', () => {
    expect(desk.answer('given:/rates/overrides/trades~1burner~1wage/figure')).toMatchObject({
      value: { text: '41', unit: '$ per h' },
      words: 'Invented for this test. Note: As agreed in the yard',
    });
  });

  test('keeps the plan agreed with its total, and asks for the role of who agreed', () => {
    const [approval, baseline] = desk.opened('review')?.record ?? [];
    expect(rowsOf(approval, 'what', 'value')).toContainEqual(['In the role of', '–']);
    expect(rowsOf(baseline, 'what', 'value', 'unit')).toContainEqual(['Total', '5,000,000', '$']);
  });
});

describe('bids received', () => {
  const { comparison } = desk.opened('bid') ?? {};
  const [lowest, lacking] = FULL.receivedBids ?? [];

  test('one that lacks a price is told last, without a total and a place', () => {
    expect(
      comparison?.totals.rows.map(row => [row.id, row.cells['rank']?.text, row.cells['total']?.text]),
    ).toEqual([
      [lowest?.id, '1', expect.stringMatching(/^[\d,.]+$/)],
      [lacking?.id, '–', 'no total'],
    ]);
    const first = comparison?.table.rows[0]?.cells;
    expect(first?.[lacking?.id ?? '']).toMatchObject({ text: 'no price', absent: true });
    expect(first?.['median']?.text).toBe('–');
  });

  test('each price opens as it was written: an amount, or a price for one unit', () => {
    const item = lacking?.prices[0]?.item ?? '';
    const opened = (bid: string | undefined, of: string) => desk.answer(`bid:received|${bid ?? ''}|${of}`);
    expect(opened(lacking?.id, item)?.rows[0]?.words).toBe('price for one unit');
    expect(opened(lowest?.id, item)?.rows[0]?.words).toBe('amount as written');
    expect(opened(lacking?.id, 'mobilisation')).toBeUndefined();
  });

  test.each([
    [[], 'No bid has a price for every item, so none can be ranked.'],
    [lowest?.prices ?? [], / is lowest of 1 at \$[\d,]+, \$[\d,]+ under the estimate\.$/],
  ])('are told in a sentence', (prices, words) => {
    const bids = [{ id: 'one', bidder: 'One', prices, alternates: [] }];
    const opened = new WhyDesk({ ...full, project: { ...full.project, receivedBids: bids } }, 'us').opened(
      'bid',
    );
    expect(plain(opened?.comparison?.sentence)).toMatch(words);
    expect(opened?.bidders[0]?.rows[0]?.cells['openedOn']?.text).toBe('–');
  });

  test('one that asks just what was estimated is exactly the estimate', () => {
    const items = comparison?.table.rows.filter(row => row.kind === 'line') ?? [];
    const prices = items.map(row => ({
      item: row.id,
      amount: figure((row.cells['estimate']?.text ?? '').replaceAll(',', ''), 'USD'),
    }));
    const receivedBids = [{ id: 'one', bidder: 'One', prices, alternates: [] }];
    const opened = new WhyDesk({ ...full, project: { ...full.project, receivedBids } }, 'us').opened('bid');
    expect(plain(opened?.comparison?.sentence)).toMatch(
      /^One is lowest of 1 at \$[\d,]+, exactly the estimate\.$/,
    );
  });
});

describe('a bid with an allowance and a unit price', () => {
  const [first, second, ...others] = DEMO.bid?.items ?? [];
  if (first === undefined || second === undefined) throw new Error('the example has bid items');
  const allowance = figure('50000', 'USD');
  const items = [
    { ...first, allowance },
    { ...second, unitPriced: true, quantity: figure('7', 'each') },
    ...others,
  ];
  const project = { ...full.project, bid: { items, alternates: [] } };
  const own = new WhyDesk({ ...full, project }, 'us');

  test('opens the allowance as the owner set it, and the unit price as the cost divided', () => {
    expect(own.answer(`bid:item|${first.id}`)?.value).toMatchObject({
      text: '50,000.00',
      why: `given:/bid/items/${first.id}/allowance`,
    });
    expect(own.answer(`bid:item|${second.id}`)?.words).toMatch(/^7 .* at [\d,.]+ \$ each: /);
    const unitPrices = own.opened('bid')?.sheet.rows.map(row => row.cells['unitPrice']?.text);
    expect(unitPrices?.[0]).toBe('–');
    expect(unitPrices?.[1]).toMatch(/^[\d,]+\.\d\d$/);
  });
});

describe('the grant on the construction form', () => {
  const { awards, sources, cash, sentence } = desk.opened('funding') ?? {};

  test('has totals where the form has them, and every figure of it opens the rows behind it', () => {
    const [award] = awards ?? [];
    expect(award?.form).toBe('SF-424C');
    expect(award?.sections).toEqual([]);
    expect(award?.table.rows.filter(row => row.kind === 'total').map(row => row.id)).toEqual([
      '12',
      '14',
      '16',
    ]);
    const names = ['total', 'notAllowable', 'allowable'].map(
      part => award?.table.rows[0]?.cells[part]?.why ?? '',
    );
    const amounts = names.map(name => Number(desk.answer(name)?.value.text.replaceAll(',', '')));
    expect((amounts[0] ?? NaN) - (amounts[1] ?? NaN)).toBeCloseTo(amounts[2] ?? NaN, 2);
    expect(desk.answer('grant:section|sport-fish-grant|A|total|total')).toBeUndefined();
  });

  test('is told with who pays when, and where the gap is widest', () => {
    expect(sources?.rows.map(row => row.cells['pays']?.text)).toContain('after 1 month');
    expect(cash?.worst).toBeDefined();
    const month = '[A-Z][a-z]{2} \\d{4}';
    expect(plain(sentence)).toMatch(
      new RegExp(
        `^At the end of ${month} the county lends \\$[\\d,]+ beyond its own share; it has \\$[\\d,]+ out at most, at the end of ${month}\\. The county pays in all \\$[\\d,]+(: its share of the forms, \\$[\\d,]+, and what nobody else bears, \\$[\\d,]+: [a-z ,]+)?\\.$`,
      ),
    );
  });

  test('says what the county pays in all: its share and what nobody else bears, to the dollar', () => {
    const amounts = (sentence ?? []).flatMap(part => (typeof part === 'string' ? [] : [part]));
    const of = (part: string) => amounts.find(({ why }) => why === `grant:county|${part}`);
    const number = (text = '') => Number(text.replace(/[$,]/g, ''));
    const [total, share, outside] = ['total', 'share', 'outside'].map(of);
    expect(number(share?.text) + number(outside?.text)).toBe(number(total?.text));
    for (const amount of [total, share, outside]) {
      const opened = desk.answer(amount?.why ?? '');
      expect(Math.abs(number(opened?.value.text) - number(amount?.text)), amount?.why).toBeLessThan(1);
      const parts = opened?.rows.map(row => number(row.value.text.replace('−', '-'))) ?? [];
      expect(parts.reduce((sum, one) => sum + one, 0)).toBeCloseTo(number(opened?.value.text), 2);
    }
    expect(desk.answer('grant:county|nothing')).toBeUndefined();
  });
});

test('a grant paid in advance leaves no gap, and the page says so', () => {
  const opened = new WhyDesk(awkward('with a grant paid in advance'), 'us').opened('funding');
  expect(plain(opened?.sentence)).toMatch(
    /^The sources pay for it as it is spent; the county lends nothing beyond its own share. It has \$[\d,]+ out at most, at the end of [A-Z][a-z]{2} \d{4}. The county pays in all /,
  );
  expect(opened?.cash?.worst).toBeUndefined();
  expect(opened?.cash?.words).toContain('There is no gap.');
  expect(opened?.sources.rows.map(row => row.cells['pays']?.text)).toContain('in advance');
});

test('prices held at a year are told', () => {
  const fixed = windowRows(AWKWARD['at fixed prices'], awkward('at fixed prices'), 'us', undefined)?.rows;
  expect(plain(fixed?.budget.sentence)).toContain('at the prices of 2026');
});

test('a month in which nothing is spent opens as nothing', () => {
  const told = new WhyDesk(awkward('the example'), 'us').answer('month:');
  expect([told?.title, told?.value.text]).toEqual(['Without a month', '0.00']);
});

test('a difference that is not nothing draws the eye', () => {
  expect(difference(0, 'x')).toEqual({ text: '0.00', why: 'x' });
  expect(difference(5, 'x')).toEqual({ text: '0.05', why: 'x', accent: true });
});

test('of two changes of one item the first counts', () => {
  const [change] = FULL.items;
  if (change === undefined) throw new Error('an item is changed');
  expect(changeOf({ ...DEMO, items: [change, { ...change, note: 'Later' }] }, change.item)).toBe(change);
});

/** A file as rows of cells. */
const tableOfText = (text: string) =>
  text
    .split('\n')
    .filter(line => line !== '')
    .map(line => line.split(','));

describe('an import', () => {
  const library = shippedLibrary();
  const ask = (kind: 'wages' | 'prices' | 'tanks' | 'laboratory', text: string) =>
    importView(DEMO, library, { kind, title: 'a.csv', table: tableOfText(text) });

  test.each([
    ['wages', 'Trade,Wage\nrigger,31\n', 'trades'],
    ['prices', 'Item,Price\nocean-tow,5\n', 'items'],
    ['laboratory', 'Sample,Material\nS,pcb-cable\n', 'materials'],
  ] as const)('of %s asks for words of the document, which it offers', (kind, text, of) => {
    const view = ask(kind, text);
    const known = of === 'trades' ? library.rateBook.trades : library[of];
    expect(view.meaningChoices.map(choice => choice.id)).toEqual(known.map(({ id }) => id));
    expect(view.meanings).toHaveLength(1);
  });

  test('of tanks has no words to be asked for; one of an empty file has no heading', () => {
    const view = ask('tanks', 'Tank,Capacity,Contents\nFore peak,12 m3,ballast\n');
    expect([view.meanings, view.meaningChoices]).toEqual([[], []]);
    expect([ask('tanks', '').headings, ask('wages', '').meanings]).toEqual([[], []]);
  });

  test('takes a row that ends early as one without that word, and counts changes beyond the fortieth', () => {
    expect(ask('laboratory', 'Sample,Material\nA\nB,pcb-cable\n').meanings.map(one => one.word)).toEqual([
      'pcb-cable',
    ]);
    const many = Array.from({ length: 45 }, (_, at) => `Tank ${at},12,ballast`).join('\n');
    const view = importView(DEMO, library, {
      kind: 'tanks',
      title: 'a.csv',
      table: tableOfText(`Name,Capacity,Contents\n${many}\n`),
      mapping: {
        ...ask('tanks', 'Name,Capacity,Contents\n').mapping,
        columns: { title: 'Name', capacity: 'Capacity', contents: 'Contents' },
        constants: { unit: 'm3' },
      },
    });
    expect(view.changes.rows.length).toBe(40);
    expect(plain(view.changes.note)).toBe('And 5 more.');
  });
});

describe('derivations of figures that no sheet holds', () => {
  const table = {
    id: 't',
    caption: 'T',
    columns: [
      { key: 'name', title: 'Name', kind: 'words' },
      { key: 'a', title: 'A', unit: '$', kind: 'number' },
      { key: 'b', title: 'B', kind: 'number' },
    ],
    rows: [
      { id: 'one', kind: 'line', cells: { name: { text: 'One' }, a: { text: '1' }, b: { text: '2' } } },
      { id: 'bare', kind: 'line', cells: { a: { text: '3' }, beside: { text: '4' } } },
    ],
  } as const;

  test('are made for each figure of a column that has a rule, and for nothing else', () => {
    const told = new Derivations('x');
    const rows = told.table(table, {
      path: 'P',
      home: 'h',
      words: ({ key }) => (key === 'a' ? 'A rule.' : undefined),
      steps: () => [],
    }).rows;
    expect(Object.values(told.whys).map(({ id, title, value }) => [id, title, value.unit])).toEqual([
      ['x:t|one|a', 'A: One', '$'],
      ['x:t|bare|a', 'A', '$'],
    ]);
    expect(rows.map(row => Object.values(row.cells).map(cell => 'why' in cell))).toEqual([
      [false, true, false],
      [true, false],
    ]);
  });
});

test('work that may go on only between dates is shaded once for all lanes that wait for the same window', () => {
  const { estimate } = full;
  const [first, second, ...others] = estimate?.problem.activities ?? [];
  const windows = [{ id: 'calm', title: 'Calm', from: '2027-05-01', to: '2027-05-20' }] as never;
  if (estimate === undefined || first === undefined || second === undefined) throw new Error('it is planned');
  const activities = [{ ...first, windows }, { ...second, windows }, ...others];
  const parts = { ...estimate, problem: { ...estimate.problem, activities } };
  const lanes = [first, second].map(({ id }) => ({ id, bars: [{ id }] })) as never;
  const context = { evaluation: full, parts, measures: 'us', summary: summaryOf(estimate) } as const;
  const found = shades(context, { from: 20_000, to: 24_000 }, lanes).filter(shade => shade.kind === 'window');
  expect(found.map(shade => [shade.title, shade.lanes])).toEqual([['Weather window', [first.id, second.id]]]);
});

test('a ship that keeps its topside, or lies too high, is told so', () => {
  const shallow = { ...DEMO, site: { ...DEMO.site, clearanceRequired: figure('100', 'ft') } };
  const vessel = (project: Project) =>
    windowRows(project, evaluatedAs(project), 'metric', undefined)?.rows.vessel;
  const view = vessel(shallow);
  expect(plain(view?.sentence)).toMatch(/ m of clear water, [\d.]+ m less than required\.$/);
  expect(view?.picture).toMatchObject({ isTooLittle: true, axisUnit: 'm' });
});

test('work begun before the status date is held by nothing', () => {
  const today = '2027-03-01';
  const project: Project = {
    ...DEMO,
    statusDate: today,
    items: [{ item: 'source-screen', actualStart: '2027-01-04', actualFinish: '2027-01-08', note: 'Done' }],
  };
  const evaluation = evaluate(project, {
    today: TODAY,
    seed: 1,
    schedules: 5,
    upright: false,
    library: LIBRARY,
  });
  const window = windowRows(project, evaluation, 'us', undefined)?.rows;
  const row = window?.schedule?.table.rows.find(one => one.id === 'source-screen');
  expect(row?.cells['start']?.text).toBe('4 Jan 2027');
  expect(window?.schedule?.marks.find(mark => mark.kind === 'status')?.date).toBe('1 Mar 2027');
});

describe('a ship of which a given cannot be read', () => {
  const vesselOf = (project: Project) =>
    windowRows(project, evaluatedAs(project), 'us', undefined)?.rows.vessel;
  const [hold, ...spaces] = FULL.vessel.compartments;
  if (hold === undefined) throw new Error('the document has compartments');
  const drawn = (change: Partial<typeof hold>) =>
    vesselOf({ ...DEMO, vessel: { ...DEMO.vessel, compartments: [{ ...hold, ...change }, ...spaces] } })
      ?.picture;
  const count = spaces.length + 1;

  test.each([['t'], ['fathoms'], ['m/h']])('is not drawn in water %s deep, and says why', unit => {
    const view = vesselOf({ ...DEMO, site: { ...DEMO.site, waterDepth: figure('118', unit) } });
    expect(view?.picture).toBeUndefined();
    expect(plain(view?.sentence)).toBe(
      'The ship cannot be drawn: a particular or the depth of the site is missing.',
    );
  });

  test('is drawn without a compartment whose place is not known, and without what is cut in it', () => {
    for (const field of ['from', 'to'] as const) {
      const picture = drawn({ [field]: figure('6', 't') });
      expect(picture?.compartments.map(one => one.id)).not.toContain(hold.id);
      expect([picture?.compartments.length, picture?.openings, picture?.vents]).toEqual([count - 1, [], []]);
    }
    for (const field of ['bottom', 'top'] as const)
      expect(drawn({ [field]: figure('6', 't') })?.compartments).toHaveLength(count - 1);
  });

  test('is drawn without an opening or an air escape whose size or height is not known', () => {
    const [opening] = hold.openings;
    if (opening === undefined) throw new Error('the hold has openings');
    expect(drawn({})?.openings).toHaveLength(2);
    expect(drawn({ openings: [{ ...opening, area: figure('2', 'm') }] })?.openings).toEqual([]);
    expect(drawn({ openings: [{ ...opening, centre: figure('2', 't') }] })?.openings).toEqual([]);
    expect(drawn({ vents: [{ area: figure('1', 'm2'), centre: figure('2', 't') }] })?.vents).toEqual([]);
  });

  test('lies in deep water with no more than a dozen heights beside it', () => {
    const axis = vesselOf({ ...DEMO, site: { ...DEMO.site, waterDepth: figure('1800', 'ft') } })?.picture
      ?.axis;
    expect(axis?.map(tick => tick.text).slice(0, 3)).toEqual(['0', '200', '400']);
    expect(axis?.at(-1)).toMatchObject({ text: '1,800', strong: true });
  });
});
