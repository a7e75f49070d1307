import { describe, expect, test } from 'vitest';
import { bidView, classOf, historyView, reviewRows, tabulationView } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { WhyDesk } from '../../../core/views';
import { bidRows } from '../../../core/views/bid/view';
import { bidderTables, comparisonRows, percentText } from '../../../core/views/bid/received';
import { insideTable, sheetTable } from '../../../core/views/bid/sheet-tables';
import type { EstimateContext } from '../../../core/views/context';
import { recordTables } from '../../../core/views/review/record';
import { summaryOf } from '../../../core/views/window';
import { awkward, DEMO, figure } from './awkward';
import { amountOf, plain } from './laws';

const example = () => awkward('the example');
function contextOf(change: Partial<Project> = {}): EstimateContext {
  const evaluation = example();
  const { estimate } = evaluation;
  if (estimate === undefined) throw new Error('the example is estimated');
  return {
    evaluation: { ...evaluation, project: { ...evaluation.project, ...change } },
    measures: 'us',
    parts: estimate,
    summary: summaryOf(estimate),
  };
}
const openedBid = (change: Partial<Project> = {}) => {
  const bid = new WhyDesk(contextOf(change).evaluation, 'us').opened('bid');
  if (bid === undefined) throw new Error('there is a bid');
  return bid;
};
const exactly = (cents: number) =>
  `${cents < 0 ? '−' : ''}${(Math.abs(cents) / 100).toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;

describe('the sheets of the bid', () => {
  test('say first that no bid can be made, where an item priced by unit has no quantity', () => {
    const { bid } = example().project;
    if (bid === undefined) throw new Error('the example is bid');
    const items = bid.items.map((item, place) =>
      place === 0 ? { ...item, unitPriced: true, quantity: figure('0', 'each') } : item,
    );
    expect(plain(bidRows(contextOf()).sentence)).toMatch(/items make a base bid of/);
    expect(plain(bidRows(contextOf({ bid: { ...bid, items } })).sentence)).toMatch(
      /^No bid can be made yet: .* is priced by unit and has no quantity\.$/,
    );
  });

  test('have a place for who offers and until when, and say what is not in the price', () => {
    const { bid } = example().project;
    if (bid === undefined) throw new Error('the example is bid');
    const rows = bidRows(contextOf({ bid: { ...bid, offer: { bidder: 'Brae Invented Works' } } }));
    expect(rows.offer.rows.map(row => row.cells['value']?.edit)).toMatchObject([
      { at: '/bid/offer/bidder', kind: 'text', value: 'Brae Invented Works' },
      { at: '/bid/offer/address', kind: 'text', value: '', optional: true },
      { at: '/bid/offer/contact', kind: 'text' },
      { at: '/bid/offer/validUntil', kind: 'date', optional: true },
      { at: '/bid/offer/addenda', kind: 'text' },
    ]);
    expect(rows.outside).toMatch(/^Hiring crews and letting them go is not in the price/);
    expect(rows.outside).not.toMatch(/\d/);
  });

  test('show an alternate that nobody has priced as one without a price, to be entered', () => {
    const { bid } = example().project;
    if (bid === undefined) throw new Error('the example is bid');
    const alternates = [{ id: 'rail', title: 'Add: a rail' }];
    const [row] = bidRows(contextOf({ bid: { ...bid, alternates } })).alternates.rows;
    expect(row?.cells['amount']).toMatchObject({
      text: 'no price',
      edit: { at: '/bid/alternates/rail/amount', kind: 'figure', value: '', optional: true },
    });
  });

  test('that leaves has each item with its price, and the base bid under them', () => {
    const view = bidView(example());
    const { sheet, schedule } = view;
    if (sheet === undefined || schedule === undefined) throw new Error('the example has a bid');
    const table = sheetTable(view);
    expect([table.id, table.caption]).toEqual(['bid-sheet', 'Sheet of bid items']);
    expect(table.rows.map(row => [row.id, row.kind])).toEqual([
      ...sheet.items.map(item => [String(item.number), 'line']),
      ['base', 'total'],
    ]);
    for (const [place, item] of sheet.items.entries()) {
      const cells = table.rows[place]?.cells;
      const why = `bid:item|${schedule.items[place]?.item.id ?? ''}`;
      expect(cells).toMatchObject({
        number: { text: String(item.number) },
        title: { text: item.title },
        quantity: { text: String(item.quantity), why },
        unit: { text: item.unit },
        unitPrice: item.unitPrice === undefined ? { text: '–' } : { text: exactly(item.unitPrice), why },
        amount: { text: exactly(item.amount), why },
      });
    }
    expect(table.rows.at(-1)?.cells).toMatchObject({
      number: { text: '' },
      title: { text: 'Base bid' },
      amount: { text: exactly(sheet.baseBid), why: 'bid:base' },
    });
    const { sheet: _sheet, ...unmade } = view;
    const { schedule: _schedule, ...unscheduled } = view;
    expect([sheetTable(unmade).rows, sheetTable(unscheduled).rows]).toEqual([[], []]);
  });

  test('that stays has the lines under each item, with every element that is something', () => {
    const view = bidView(example());
    const items = view.internal?.items ?? [];
    const { rows, id } = insideTable(view);
    expect(id).toBe('bid-inside');
    expect(rows.length).toBe(items.reduce((sum, item) => sum + 1 + item.lines.length, 0));
    let place = 0;
    const keys = ['labour', 'equipment', 'material', 'disposal', 'subcontract', 'fee', 'markUp'] as const;
    for (const item of items) {
      const group = rows[place];
      place += 1;
      expect([group?.id, group?.kind, group?.cells['title']?.text]).toEqual([
        item.itemId,
        'group',
        `${item.title}  ${item.lines.length}`,
      ]);
      expect(group?.cells['total']).toMatchObject({
        text: exactly(item.cost),
        why: `bid:cost|${item.itemId}`,
      });
      for (const key of keys)
        expect(group?.cells[key]).toMatchObject({
          text: exactly(item.elements[key]),
          why: `bid:element|${item.itemId}|${key}`,
        });
      for (const line of item.lines) {
        const row = rows[place];
        place += 1;
        expect([row?.id, row?.kind, row?.under]).toEqual([
          `${item.itemId}/${line.lineId}`,
          'line',
          item.itemId,
        ]);
        expect(row?.cells['total']).toMatchObject({
          text: exactly(line.total),
          why: `lines/${line.lineId}/total`,
        });
        for (const key of keys) {
          const sheetKey = key === 'markUp' ? 'mark-up' : key;
          const cell = { text: exactly(line.amounts[key]), why: `lines/${line.lineId}/${sheetKey}` };
          const shown = row?.cells[key];
          expect([shown?.text, shown?.why]).toEqual(
            line.amounts[key] === 0 ? ['–', undefined] : [cell.text, cell.why],
          );
        }
      }
    }
    const { internal: _internal, ...unmade } = view;
    expect(insideTable(unmade).rows).toEqual([]);
  });

  test('are told in a sentence with the mark-ups in it, and with the margin', () => {
    const { internal, sheet } = bidView(example());
    const built = internal?.buildUp;
    const whole = (cents = 0) => Math.floor((cents + 50) / 100).toLocaleString('en-US');
    const bid = openedBid();
    expect(plain(bid.sentence)).toBe(
      `${sheet?.items.length ?? 0} items make a base bid of $${whole(sheet?.baseBid)}; $${whole(
        (built?.price ?? 0) - (built?.direct ?? 0),
      )} of it are mark-ups.`,
    );
    expect(bid.missing).toEqual([]);
    expect(plain(bid.margin)).toMatch(
      /^In the plan the margin is \$[\d,]+, \d+\.\d % of the price\.( It is gone when the cost grows by \d+\.\d %\.)?$/,
    );
    const profit = built?.markUps.find(one => one.id === 'profit')?.amount;
    if (profit !== undefined) expect(plain(bid.margin)).toContain(`$${whole(profit)}, `);
  });

  test('are built up mark-up by mark-up, each standing on what is so far', () => {
    const built = bidView(example()).internal?.buildUp;
    if (built === undefined) throw new Error('the example has a build-up');
    const { rows, id } = openedBid().buildUp;
    expect(id).toBe('bid-build-up');
    expect(rows.map(row => [row.id, row.kind])).toEqual([
      ['direct', 'line'],
      ...built.markUps.map(one => [one.id, 'line']),
      ['price', 'total'],
    ]);
    let soFar = built.direct;
    for (const one of built.markUps) {
      soFar += one.amount;
      const row = rows.find(each => each.id === one.id);
      const why = `bid:mark-up|${one.id}`;
      expect(row?.cells['amount']).toMatchObject({ text: exactly(one.amount), why });
      expect(row?.cells['soFar']).toMatchObject({ text: exactly(soFar), why });
      expect(row?.cells['share']?.edit?.at).toBe(`/rates/overrides/markUps~1${one.id}~1share/figure`);
    }
    expect(rows[0]?.cells['soFar']).toMatchObject({ text: exactly(built.direct), why: 'bid:direct' });
    expect(rows.at(-1)?.cells['amount']).toMatchObject({ text: exactly(built.price), why: 'bid:price' });
    const overrides = [{ at: 'markUps/profit/share', figure: figure('0.2', '1') }];
    const own = openedBid({ rates: { ...DEMO.rates, overrides } }).buildUp.rows.find(
      row => row.id === 'profit',
    );
    expect(own?.cells['share']?.text).toBe('0.2');
    expect(own?.cells['basis']).toMatchObject({ text: 'surveyed', source: 'Invented for this test' });
  });
});

describe('bids received', () => {
  test('stand beside the estimate item by item, the lowest first', () => {
    const view = tabulationView(example());
    const { comparison } = view;
    const rows = comparisonRows(contextOf());
    if (comparison === undefined || rows === undefined) throw new Error('the example has received bids');
    const ranked = comparison.totals.toSorted((a, b) => (a.rank ?? 99) - (b.rank ?? 99));
    expect(rows.table.columns.map(({ key, unit }) => `${key} ${unit ?? ''}`.trim())).toEqual([
      'title',
      'quantity',
      'unit',
      'estimate $',
      ...ranked.map(one => `${one.bidId} $`),
      'median $',
    ]);
    for (const [place, item] of comparison.rows.entries()) {
      const cells = rows.table.rows[place]?.cells ?? {};
      expect(cells['estimate']).toMatchObject({
        text: exactly(item.item.estimate),
        why: `bid:item|${item.item.id}`,
      });
      for (const { bidId } of ranked) {
        const amount = item.byBid[bidId];
        expect(cells[bidId]?.text).toBe(amount === undefined ? 'no price' : exactly(amount));
      }
      if (item.median !== undefined)
        expect(cells['median']).toMatchObject({
          text: exactly(item.median),
          why: `bid:middle|${item.item.id}`,
        });
    }
    const total = rows.table.rows.at(-1);
    expect([total?.id, total?.kind, total?.cells['title']?.text]).toEqual(['total', 'total', 'Total']);
    expect(total?.cells['estimate']).toMatchObject({ text: exactly(comparison.estimate), why: 'bid:base' });
    for (const one of ranked)
      expect(total?.cells[one.bidId]?.text).toBe(one.total === undefined ? 'no total' : exactly(one.total));
    expect(
      rows.totals.rows.map(row => [row.id, ...Object.values(row.cells).map(({ text }) => text)]),
    ).toEqual(
      ranked.map(one => [
        one.bidId,
        one.rank === undefined ? '–' : String(one.rank),
        one.bidder,
        one.total === undefined ? 'no total' : exactly(one.total),
        one.overEstimate === undefined ? '–' : exactly(one.overEstimate),
      ]),
    );
    const [lowest] = ranked;
    const over = lowest?.overEstimate ?? 0;
    const whole = (cents = 0) => Math.floor((Math.abs(cents) + 50) / 100).toLocaleString('en-US');
    expect(plain(rows.sentence)).toBe(
      `${lowest?.bidder ?? ''} is lowest of ${ranked.length} at $${whole(lowest?.total)}, $${whole(over)} ${over > 0 ? 'over' : 'under'} the estimate.`,
    );
  });

  test('are typed in as they were opened: who, when, and a price for each item', () => {
    const [first] = DEMO.receivedBids ?? [];
    if (first === undefined) throw new Error('the example has received bids');
    const items = bidView(example()).schedule?.items ?? [];
    const [one, two, three] = items.map(({ item }) => item);
    if (one === undefined || two === undefined || three === undefined) throw new Error('the bid has items');
    const { openedOn: _openedOn, ...unopened } = first;
    const prices = [
      { item: one.id, amount: figure('5', 'USD') },
      { item: two.id, amount: figure('6', 'USD'), unitPrice: figure('7', 'USD') },
    ];
    const [who, asked] = bidderTables(contextOf({ receivedBids: [{ ...unopened, prices }] }));
    expect(who?.rows.map(row => [row.id, row.cells['openedOn']?.text])).toEqual([[first.id, '–']]);
    expect(who?.add?.entry).toEqual({ prices: items.map(({ item }) => ({ item: item.id })), alternates: [] });
    expect(who?.add?.fields.map(field => [field.path, field.kind, field.label, field.optional])).toEqual([
      ['bidder', 'text', 'Bidder', undefined],
      ['openedOn', 'date', 'Opened on', true],
    ]);
    const places = asked?.rows.slice(0, 3).map(row => {
      const cell = row.cells[first.id];
      return [row.cells['title']?.text, cell?.text, cell?.edit?.at, cell?.edit?.label];
    });
    const at = (item: string, field: string) => `/receivedBids/${first.id}/prices/${item}/${field}`;
    const label = (title: string) => `Price of ${first.bidder} for ${title}`;
    expect(places).toEqual([
      [one.title, '5', at(one.id, 'amount'), label(one.title)],
      [two.title, '7', at(two.id, 'unitPrice'), label(two.title)],
      [three.title, '', at(three.id, 'unitPrice'), label(three.title)],
    ]);
    expect(asked?.columns.map(({ title, unit }) => [title, unit])).toContainEqual([first.bidder, '$ a unit']);
    expect(bidderTables(contextOf({ receivedBids: [] })).map(table => table.id)).toEqual(['bidders']);
  });

  test('shares are told in per cent with one decimal', () => {
    expect([0.125, 0.0004, 0.00051, 1].map(percentText)).toEqual(['12.5 %', '0.0 %', '0.1 %', '100.0 %']);
  });
});

describe('the review', () => {
  const opened = (change: Partial<Project> = {}) => {
    const review = new WhyDesk(contextOf(change).evaluation, 'us').opened('review');
    if (review === undefined) throw new Error('there is a review');
    return review;
  };

  test('holds each guide with its practices, three sentences of evidence at most and the rest counted', () => {
    const rows = reviewRows(example());
    const { guides, practicesSentence } = opened();
    const titles = [...new Set(rows.map(row => row.guide))];
    expect(guides.map(guide => guide.title)).toEqual(titles);
    for (const guide of guides) {
      const own = rows.filter(row => row.guide === guide.title);
      const met = own.filter(row => row.standing === 'met').length;
      expect(guide.counts).toBe(`${met} of ${own.length} met`);
      expect(guide.lines.map(line => [line.id, line.standing, line.evidence.length, line.more])).toEqual(
        own.map(row => [
          row.practiceId,
          row.standing,
          Math.min(3, row.evidence.length),
          row.evidence.length > 3 ? `${row.evidence.length - 3} more` : '',
        ]),
      );
      for (const line of guide.lines)
        for (const said of [...line.evidence, line.remedy]) expect(said).toMatch(/^[^a-z].*[.!?]$/);
    }
    const count = (standing: string) => rows.filter(row => row.standing === standing).length;
    expect(plain(practicesSentence)).toContain(
      `Of ${rows.length} practices ${count('met')} are met, ${count('partly')} partly, ${count('not met')} not; ${count('cannot tell')} cannot be told.`,
    );
  });

  test('tells the class of the estimate by the share that is checked', () => {
    const { byBasis } = contextOf().summary ?? {};
    const found = byBasis === undefined ? undefined : classOf(byBasis);
    if (found === undefined) throw new Error('the example has a class');
    const { classSentence, classNote } = opened();
    expect(plain(classSentence)).toBe(
      `It is a class ${found.estimateClass} estimate: ${(found.share * 100).toFixed(1)} % of the money is surveyed or quoted for this ship.`,
    );
    const ends = [found.low, found.high].map(
      one => `${Math.round(Math.abs(one.narrow) * 100)} to ${Math.round(Math.abs(one.wide) * 100)} %`,
    );
    expect(classNote).toBe(
      `By the published classes such an estimate may come out ${ends[0] ?? ''} too high or ${ends[1] ?? ''} too low; it is for ${found.use}. Source: ${found.source}.`,
    );
  });

  test('holds past hulls: what they grew by, and what hulls alike have cost', () => {
    const history = historyView(example());
    const { cases, likeHulls, growth, growthSentence } = opened();
    expect(cases.rows.map(row => [row.id, ...Object.values(row.cells).map(({ text }) => text)])).toEqual(
      history.cases.map((one, at) => [
        `case-${at}`,
        one.hullClass,
        one.lengthFeet === undefined ? '–' : String(one.lengthFeet),
        one.factor.toFixed(2),
        Math.floor((one.cost + 50) / 100).toLocaleString('en-US'),
        one.what,
        one.source,
      ]),
    );
    expect(likeHulls.rows.map(row => [row.id, row.cells['year']?.text, row.cells['today']?.why])).toEqual(
      history.likeHulls.map((one, at) => [one.id, String(one.sunkYear), `past:like|${at}`]),
    );
    expect(growth?.past).toEqual(history.cases.map(one => ({ at: one.factor, text: one.hullClass })));
    expect(growth?.own).toEqual({ at: history.growth?.factor, text: 'this budget' });
    expect(plain(growthSentence)).toBe(
      `Past hulls grew by a middle factor of ${(history.growth?.median ?? 0).toFixed(2)}; this budget allows ${(
        history.growth?.factor ?? 0
      ).toFixed(2)}${history.growth?.isBelowMedian === true ? ', which is less.' : '.'}`,
    );
    const desk = new WhyDesk(example(), 'us');
    const told = desk.answer('past:case|0');
    const [one] = history.cases;
    expect(told?.title).toBe(`If it grew like the ${one?.hullClass ?? ''}`);
    expect(told?.rows.map(row => [row.value.why, row.words])).toEqual([
      ['sums/total', 'total of the estimate'],
      [undefined, one?.what],
    ]);
    const [base, factor] = told?.rows ?? [];
    const product = (amountOf(base?.value.text) ?? 0) * Number(factor?.value.text);
    expect(Math.abs(product - (amountOf(told?.value.text) ?? 0)) / product).toBeLessThan(0.01);
    const [like] = history.likeHulls;
    if (like !== undefined)
      expect(desk.answer('past:like|0')).toMatchObject({
        title: `${like.hullClass}, sunk ${like.sunkYear}`,
        rows: [{ words: like.scope, value: { basis: 'published', source: like.source } }],
      });
  });

  const lists = { crossChecks: [], leftOut: [], reasons: [], lessons: [] };
  const approval = { by: 'The board', on: '2026-11-01' };
  const baseline = { keptOn: '2026-11-02', finish: '2029-01-31' };
  test.each([
    [{}, 'Nobody has agreed to this estimate yet; no plan is kept to compare with.'],
    [{ approval }, 'The board agreed to this estimate; no plan is kept to compare with.'],
    [{ baseline }, 'Nobody has agreed to this estimate yet; a plan is kept to compare with.'],
    [{ approval, baseline }, 'The board agreed to this estimate; a plan is kept to compare with.'],
  ])('with %j on record says: %s', (record, said) => {
    expect(plain(opened({ record: { ...lists, ...record } }).recordSentence)).toBe(said);
  });

  test('asks for what is not on record yet, beginning with the plan as it stands', () => {
    const tables = recordTables(contextOf({ record: lists, statusDate: '2026-12-24' }));
    expect(tables.map(table => [table.id, table.caption, table.rows.length, table.add?.at])).toEqual([
      ['approval', 'Approval', 0, '/record/approval'],
      ['baseline', 'Plan kept to compare with', 0, '/record/baseline'],
      ['independent', 'Estimate by others', 0, '/record/independent'],
      ['lessons', 'Lessons', 0, '/record/lessons'],
    ]);
    const total = (contextOf().summary?.total?.cents ?? 0) / 100;
    expect(tables[1]?.add?.fields.map(field => [field.path, field.value])).toEqual([
      ['keptOn', '2026-12-24'],
      ['finish', contextOf().parts.schedule.finish],
      ['total', total.toFixed(2)],
      ['note', undefined],
    ]);
    const own = recordTables(
      contextOf({
        record: {
          ...lists,
          approval: { ...approval, role: 'Chair', note: 'Read twice' },
          baseline: { ...baseline, total: figure('5000', 'USD'), note: 'Kept' },
          independent: { by: 'Others', on: '2026-10-01', total: figure('6000', 'USD'), explanation: 'Wages' },
          lessons: [{ id: 'rain', on: '2026-09-01', title: 'Rain', lesson: 'Plan for it' }],
        },
      }),
    );
    expect(own.map(table => table.rows.map(row => [row.id, row.cells['value']?.text]))).toEqual([
      [
        ['by', 'The board'],
        ['role', 'Chair'],
        ['on', '2026-11-01'],
        ['note', 'Read twice'],
      ],
      [
        ['keptOn', '2026-11-02'],
        ['finish', '2029-01-31'],
        ['total', '5,000'],
        ['note', 'Kept'],
      ],
      [
        ['by', 'Others'],
        ['on', '2026-10-01'],
        ['total', '6,000'],
        ['explanation', 'Wages'],
      ],
      [['rain', undefined]],
    ]);
    expect(own.map(table => table.add?.at)).toEqual([undefined, undefined, undefined, '/record/lessons']);
    expect(own[1]?.rows[2]?.cells).toMatchObject({ unit: { text: '$' }, basis: { text: 'surveyed' } });
  });
});
