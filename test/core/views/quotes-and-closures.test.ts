import { describe, expect, test } from 'vitest';
import type { Project } from '../../../core/project';
import type { EstimateContext } from '../../../core/views/context';
import { evidenceView } from '../../../core/views/evidence';
import { coverAdditions, coverHint, coverTable, quoteTable } from '../../../core/views/quotes';
import { activityTable, calendarTable, closureTable } from '../../../core/views/schedule-tables';
import { clearanceOf, shipPicture } from '../../../core/views/ship-picture';
import { topsideParts } from '../../../core/views/topside-parts';
import { USUAL_TOPSIDE } from '../../../core/vessel';
import { summaryOf } from '../../../core/views/window';
import { awkward, DEMO, figure } from './awkward';

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

describe('quotes', () => {
  const tug = {
    id: 'tug',
    vendor: 'A tug',
    dated: '2026-10-20',
    validUntil: '2027-06-30',
    chosen: true,
    amount: figure('71500', 'USD'),
    covers: [
      { item: 'tow-tug', share: '0.9' },
      { item: 'no-such-work', share: '0.1' },
    ],
    exclusions: [],
    attachment: 'tug.pdf',
    note: 'By letter',
  };
  const { attachment: _attachment, note: _note, ...bare } = tug;
  const quotes = [
    tug,
    { ...bare, id: 'other', vendor: 'Another', chosen: false, covers: tug.covers.slice(0, 1) },
  ];
  const attachments = [{ name: 'tug.pdf', sha256: '0123456789abcdef0123' }];
  const context = () => contextOf({ quotes, attachments });
  const titleOf = (id: string) => context().parts.items.find(item => item.id === id)?.title ?? id;

  test('for work in the contract bear the mark-ups of the contractor, and that is told of those relied on', () => {
    expect(context().parts.items.find(({ id }) => id === 'tow-tug')?.contract).toBe(true);
    expect(quoteTable(context()).note).toEqual([
      'A quote for work in the contract is priced as a subcontractor’s: the contractor’s mark-ups come on top. That is so for A tug.',
    ]);
    expect(quoteTable(contextOf({ quotes: quotes.slice(1) })).note).toBeUndefined();
  });

  test('are told with what they price, how long they hold and what proves them', () => {
    const { rows, add } = quoteTable(context());
    expect(rows.map(row => [row.id, row.kind, row.subject])).toEqual([
      ['tug', 'line', 'tug'],
      ['other', 'line', 'other'],
    ]);
    const read = (place: number) =>
      Object.entries(rows[place]?.cells ?? {}).map(([key, { text, edit, remove }]) => [
        key,
        text,
        edit?.at ?? remove?.at,
        edit?.label ?? remove?.label,
      ]);
    const at = '/quotes/tug';
    expect(read(0)).toEqual([
      ['vendor', 'A tug', `${at}/vendor`, 'Vendor of the quote of A tug'],
      ['covers', `${titleOf('tow-tug')}; no-such-work`, undefined, undefined],
      ['amount', '71,500', `${at}/amount`, 'Amount of the quote of A tug'],
      ['unit', '$ in all', `${at}/amount/unit`, 'What the price of the quote of A tug is for'],
      ['dated', '2026-10-20', `${at}/dated`, 'Date of the quote of A tug'],
      ['validUntil', '2027-06-30', `${at}/validUntil`, 'Last day of the quote of A tug'],
      ['chosen', 'true', `${at}/chosen`, 'Rely on the quote of A tug'],
      ['attachment', 'tug.pdf', `${at}/attachment`, 'File that proves the quote of A tug'],
      ['note', 'By letter', `${at}/note`, 'Note on the quote of A tug'],
      ['remove', 'Remove', at, 'the quote of A tug'],
    ]);
    expect(read(1).map(([key, text]) => [key, text])).toContainEqual(['attachment', '–']);
    expect(rows[1]?.cells['attachment']?.edit).toMatchObject({
      value: '',
      optional: true,
      choices: [
        { id: '', title: 'none' },
        { id: 'tug.pdf', title: 'tug.pdf' },
      ],
    });
    expect(rows[1]?.cells['note']?.edit).toMatchObject({ value: '', optional: true });
    expect([add?.at, add?.what, add?.idFrom]).toEqual(['/quotes', 'a quote', 'vendor']);
    expect(add?.fields.map(field => field.path)).toEqual(
      'vendor covers/0/item amount amount/unit dated validUntil chosen note'.split(' '),
    );
    expect(add?.fields.find(field => field.path === 'amount')?.basis).toBe('quoted');
    const titles = add?.fields[1]?.choices?.map(choice => choice.title) ?? [];
    expect(titles).toEqual(titles.toSorted((a, b) => a.localeCompare(b)));
    expect(titles.length).toBe(context().parts.items.length);
  });

  test('price their work item by item; the last item of a quote stays', () => {
    const { rows } = coverTable(context());
    const read = rows.map(row => [
      row.id,
      row.subject,
      row.cells['vendor']?.text,
      row.cells['item']?.edit?.at,
      row.cells['item']?.edit?.label,
      row.cells['share']?.text,
      row.cells['share']?.edit?.label,
      row.cells['remove']?.remove?.label,
    ]);
    const of = 'the quote of A tug';
    expect(read).toEqual([
      [
        ...['tug-0', 'tug', 'A tug', '/quotes/tug/covers/0/item', `Work item 1 of ${of}`, '0.9'],
        ...[`Share of work item 1 in ${of}`, `work item 1 of ${of}`],
      ],
      [
        ...['tug-1', 'tug', 'A tug', '/quotes/tug/covers/1/item', `Work item 2 of ${of}`, '0.1'],
        ...[`Share of work item 2 in ${of}`, `work item 2 of ${of}`],
      ],
      [
        ...['other-0', 'other', 'Another', '/quotes/other/covers/0/item'],
        ...['Work item 1 of the quote of Another', '0.9', 'Share of work item 1 in the quote of Another'],
        undefined,
      ],
    ]);
    expect(coverAdditions(context()).map(({ at, what }) => [at, what])).toEqual([
      ['/quotes/tug/covers', 'a work item to the quote of A tug'],
      ['/quotes/other/covers', 'a work item to the quote of Another'],
    ]);
    expect(coverAdditions(context())[0]?.fields.map(({ path, kind, value }) => [path, kind, value])).toEqual([
      ['item', 'choice', undefined],
      ['share', 'decimal', '1'],
    ]);
    const one = contextOf({ quotes: quotes.slice(0, 1) }).evaluation;
    expect(coverHint(one)).toBe('');
    expect(coverHint(context().evaluation)).toMatch(/^A work item goes to the quote chosen /);
  });

  test('are proved by files: each with its page, what it proves, who names it and the first of its sum', () => {
    const files = [
      ...attachments,
      { name: 'plan.pdf', sha256: 'fedcba9876543210fedc', page: 7, note: 'The hull' },
    ];
    const { rows, id, caption } = evidenceView(contextOf({ quotes, attachments: files })).attachments;
    expect([id, caption]).toEqual(['attachments', 'Evidence']);
    expect(rows.map(row => [row.id, ...Object.values(row.cells).map(({ text }) => text)])).toEqual([
      ['attachment-0', 'tug.pdf', '–', '–', 'A tug', '0123456789abcdef', 'Remove'],
      ['attachment-1', 'plan.pdf', '7', 'The hull', '', 'fedcba9876543210', 'Remove'],
    ]);
    expect(rows[1]?.cells['page']?.edit).toEqual({
      at: '/attachments/1/page',
      kind: 'whole',
      value: '7',
      label: 'Page of plan.pdf',
      optional: true,
    });
    expect(rows[0]?.cells['note']?.edit).toMatchObject({
      at: '/attachments/0/note',
      label: 'What tug.pdf proves',
    });
    expect(rows[0]?.cells['remove']?.remove).toEqual({ at: '/attachments/0', label: 'the file tug.pdf' });
  });
});

describe('the calendar', () => {
  test('tells start, last date and holidays, each to be changed', () => {
    const { deadline: _deadline, ...calendars } = DEMO.calendars;
    const own = { ...calendars, start: '2027-01-04', federalHolidays: true };
    const read = (change: Project['calendars']) =>
      calendarTable(contextOf({ calendars: change })).rows.map(row => [
        row.id,
        ...Object.values(row.cells).map(({ text }) => text),
      ]);
    expect(read(own)).toEqual([
      ['start', 'Start of the project', '4 Jan 2027'],
      ['deadline', 'Last date of the project', '–'],
      ['holidays', 'Federal holidays', 'not worked'],
    ]);
    expect(
      read({ ...own, deadline: '2029-03-31', federalHolidays: false }).map(([, , text]) => text),
    ).toEqual([...['4 Jan 2027', '31 Mar 2029', 'worked']]);
    const edits = calendarTable(contextOf({ calendars: own })).rows.map(row => row.cells['value']?.edit);
    expect(edits.map(edit => [edit?.at, edit?.kind, edit?.value, edit?.label, edit?.optional])).toEqual([
      ['/calendars/start', 'date', '2027-01-04', 'Start of the project', undefined],
      ['/calendars/deadline', 'date', '', 'Last date of the project', true],
      ['/calendars/federalHolidays', 'switch', 'true', 'Federal holidays', undefined],
    ]);
  });

  test('tells closures with what they stop, and asks for another', () => {
    const closures: Project['calendars']['closures'] = [
      {
        id: 'fair',
        title: 'The fair',
        from: '2027-07-02',
        to: '2027-07-06',
        calendars: ['sea', 'continuous'],
      },
    ];
    const { rows, add, id } = closureTable(contextOf({ calendars: { ...DEMO.calendars, closures } }));
    const at = '/calendars/closures/fair';
    expect([id, rows[0]?.id]).toEqual(['closures', 'fair']);
    expect(
      Object.entries(rows[0]?.cells ?? {}).map(([key, { text, edit, remove }]) => [
        key,
        text,
        edit?.at ?? remove?.at,
        edit?.label ?? remove?.label,
      ]),
    ).toEqual([
      ['title', 'The fair', `${at}/title`, 'Name of The fair'],
      ['from', '2 Jul 2027', `${at}/from`, 'The fair, first day'],
      ['to', '6 Jul 2027', `${at}/to`, 'The fair, last day'],
      ['yard', 'false', `${at}/calendars/yard`, 'The fair stops the yard'],
      ['sea', 'true', `${at}/calendars/sea`, 'The fair stops the sea'],
      ['office', 'false', `${at}/calendars/office`, 'The fair stops the office'],
      ['continuous', 'true', `${at}/calendars/continuous`, 'The fair stops waiting'],
      ['remove', 'Remove', at, 'the closure The fair'],
    ]);
    expect(add?.entry).toEqual({ calendars: [''] });
    expect(add?.fields.map(({ path, kind, label }) => [path, kind, label])).toEqual([
      ['title', 'text', 'Name'],
      ['from', 'date', 'First day'],
      ['to', 'date', 'Last day'],
      ['calendars/0', 'choice', 'Stops work of'],
    ]);
  });

  test('tells each activity in order of its start, with its place, float and people', () => {
    const context = contextOf({ items: [{ item: 'tow-tug', note: '', notBefore: '2028-03-01' }] });
    const { rows } = activityTable(context);
    const { activities } = context.parts.schedule;
    expect(rows.length).toBe(activities.length);
    const dated = rows.map(row => activities.find(one => one.id === row.id));
    const starts = dated.map(one => `${one?.start ?? ''} ${one?.finish ?? ''}`);
    expect(starts).toEqual(starts.toSorted());
    for (const [place, one] of dated.entries()) {
      const cells = rows[place]?.cells;
      const item = context.parts.items.find(each => each.id === one?.id);
      const where = context.evaluation.library.places.find(each => each.id === item?.place);
      expect([cells?.['title']?.text, cells?.['place']?.text]).toEqual([one?.title, where?.title]);
      expect(cells?.['days']?.text).toBe(String(one?.workDays));
      expect(cells?.['float']?.text).toBe(one?.critical === true ? '0' : String(one?.totalFloat));
      expect(cells?.['people']?.text).toBe(one?.crewSize === 0 ? '–' : String(one?.crewSize));
      expect(cells?.['notBefore']?.text).toBe(one?.id === 'tow-tug' ? '1 Mar 2028' : '–');
      expect(cells?.['notBefore']?.edit).toMatchObject({
        at: `/items/${one?.id ?? ''}/notBefore`,
        value: one?.id === 'tow-tug' ? '2028-03-01' : '',
        optional: true,
      });
      expect(cells?.['start']?.why).toBe(`activity:${one?.id ?? ''}`);
      expect(cells?.['holds']?.text === '').toBe(one?.heldBy[0] === undefined);
    }
  });
});

describe('the ship to scale', () => {
  const { vessel, site } = DEMO;
  const [space] = vessel.compartments;
  if (space === undefined) throw new Error('the example has spaces');
  const hold = {
    ...space,
    id: 'hold',
    title: 'Hold',
    from: figure('10', 'm'),
    to: figure('30', 'm'),
    bottom: figure('1', 'm'),
    top: figure('9', 'm'),
    openings: [
      {
        id: 'door',
        side: 'port' as const,
        area: figure('8', 'm2'),
        height: figure('2', 'm'),
        centre: figure('6', 'm'),
        count: 2,
      },
      {
        id: 'chest',
        side: 'bottom' as const,
        area: figure('1', 'm2'),
        height: figure('1', 'm'),
        centre: figure('0', 'm'),
        count: 1,
      },
      {
        id: 'hatch',
        side: 'both' as const,
        area: figure('9', 'm2'),
        height: figure('2', 'm'),
        centre: figure('7', 'm'),
        count: 1,
      },
    ],
    vents: [
      { area: figure('1', 'm2'), centre: figure('11', 'm') },
      { area: figure('1', 'm2'), centre: figure('12', 'm') },
    ],
  };
  const aft = {
    ...hold,
    id: 'aft',
    title: 'Aft',
    from: figure('2', 'm'),
    to: figure('8', 'm'),
    openings: [],
    vents: [],
  };
  const nowhere = { ...aft, id: 'nowhere', title: 'Nowhere', from: figure('5', 't'), vents: hold.vents };
  const pictureOf = (change: Partial<Project> = {}, measures: 'us' | 'metric' = 'metric') => {
    const compartments = [aft, nowhere, hold];
    return shipPicture(contextOf({ vessel: { ...vessel, compartments }, ...change }, measures));
  };

  test('has its spaces from bow to stern, with what is cut in each spread along it', () => {
    const picture = pictureOf();
    expect(
      picture?.compartments.map(one => [one.id, one.number, one.from, one.to, one.bottom, one.top]),
    ).toEqual([
      ['hold', '1', 10, 30, 1, 9],
      ['aft', '3', 2, 8, 1, 9],
    ]);
    // Three openings in the sides of 20 m: at a sixth, a half and five sixths of it. Of 8 m² for two each has 4 m².
    expect(picture?.openings.map(one => [one.id, one.compartment, one.height, one.side, one.size])).toEqual([
      ['hold-door-0', 'hold', 6, 'port', 2],
      ['hold-door-1', 'hold', 6, 'port', 2],
      ['hold-hatch-0', 'hold', 7, 'both', 3],
    ]);
    expect(picture?.openings.map(one => one.at.toFixed(4))).toEqual(
      [1 / 6, 1 / 2, 5 / 6].map(share => (10 + 20 * share).toFixed(4)),
    );
    expect(picture?.vents).toEqual([
      { id: 'hold-vent-0', compartment: 'hold', at: 15, height: 11, size: 1, side: 'both' },
      { id: 'hold-vent-1', compartment: 'hold', at: 25, height: 12, size: 1, side: 'both' },
    ]);
  });

  test('lies so deep that it is told how clear she rests, and whether that is too little', () => {
    const rest = (required: string, measures: 'us' | 'metric' = 'metric') => {
      const change = {
        site: { ...site, waterDepth: figure('40', 'm'), clearanceRequired: figure(required, 'm') },
      };
      const picture = pictureOf(change, measures);
      if (picture === undefined) throw new Error('she can be drawn');
      return { picture, clear: clearanceOf(contextOf(change, measures), picture) };
    };
    const { picture, clear } = rest('15');
    const above = 40 - picture.highestStaying;
    expect(clear).toEqual({
      clear: `${above.toFixed(1)} m`,
      spare: `${Math.abs(above - 15).toFixed(1)} m`,
      isTooLittle: above < 15,
    });
    expect(picture.clearance).toBe(`${above.toFixed(1)} m clear`);
    expect([picture.required, picture.atRest]).toEqual([
      '15.0 m required',
      'At rest on the seabed, 40.0 m down',
    ]);
    expect([rest('1').picture.isTooLittle, rest('39.9').picture.isTooLittle]).toEqual([false, true]);
    expect(rest(String(above)).clear.isTooLittle).toBe(false);
    expect(picture.words).toMatch(
      /^The ship to scale: [\d.]+ m long, [\d.]+ m wide, [\d.]+ m deep, afloat at [\d.]+ m and at rest in 40\.0 m of water with [\d.]+ m clear above its highest point\.$/,
    );
    expect(picture.axisUnit).toBe('m');
    const down = picture.axis.filter(tick => tick.at <= 0 && tick.strong !== true);
    expect(down.every(tick => Number(tick.text) === (tick.at === 0 ? 0 : -tick.at))).toBe(true);
    expect(picture.axis.at(-1)).toEqual({ at: -40, text: '40', strong: true });
    const ups = picture.axis.filter(tick => tick.at > 0).map(tick => tick.at);
    expect(ups).toEqual(ups.toSorted((a, b) => b - a));
    expect(rest('15', 'us').picture.axisUnit).toBe('ft');
    // Forty metres are 131 feet.
    expect(rest('15', 'us').picture.axis.at(-1)?.text).toBe('131');
  });

  test('is not drawn where the depth of the site or the clearance is no length', () => {
    expect(pictureOf({ site: { ...site, waterDepth: figure('40', 't') } })).toBeUndefined();
    expect(pictureOf({ site: { ...site, clearanceRequired: figure('40', 't') } })).toBeUndefined();
  });

  test('keeps the parts of its topside that the choice does not take', () => {
    const hull = { length: 100, depth: 10 };
    const extents = [...new Set(USUAL_TOPSIDE.flatMap(part => part.goes))];
    for (const extent of [undefined, ...extents]) {
      const parts = topsideParts(hull, extent);
      expect(parts.map(part => [part.id, part.stays, part.label])).toEqual(
        USUAL_TOPSIDE.map(({ id, title, goes }) => {
          const stays = extent === undefined || !goes.includes(extent);
          return [id, stays, stays ? '' : title];
        }),
      );
      const [first] = parts;
      const [usual] = USUAL_TOPSIDE;
      expect([first?.from, first?.to, first?.bottom, first?.top]).toEqual([
        100 * (usual?.from ?? NaN),
        100 * (usual?.to ?? NaN),
        10 * (usual?.bottom ?? NaN),
        10 * (usual?.top ?? NaN),
      ]);
    }
  });
});
