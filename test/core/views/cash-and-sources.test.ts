import { describe, expect, test } from 'vitest';
import { grantView, type CashPart } from '../../../core/evaluation';
import type { CashMonth } from '../../../core/cash-flow';
import { cashPicture, cashTable } from '../../../core/views/funding/cash';
import { besideTable, contractTable, sourceTable } from '../../../core/views/funding/sources';
import { awkward, DEMO } from './awkward';

const view = () => grantView(awkward('the example'));

/** The cash of the example with months of the test’s own, in dollars: paid, come in, carried, lent. */
function cashOf(
  months: readonly (readonly [string, number, number, number, number])[],
  peak?: { month: string; amount: number },
): CashPart {
  const { cash } = view();
  if (cash === undefined) throw new Error('the example has a grant');
  const { peak: _peak, ...rest } = cash.cash.view;
  const rows = months.map(([month, paid, received, carried, gap]): CashMonth => ({
    month,
    paid: paid * 100,
    received: received * 100,
    carried: carried * 100,
    gap: gap * 100,
  }));
  const own = { ...rest, months: rows, ...(peak === undefined ? {} : { peak }) };
  return { ...cash, cash: { ...cash.cash, view: own } };
}

/** A quiet month: nothing paid and nothing lent. */
const quiet = (month: string) => [month, 0, 0, 0, 0] as const;

describe('the cash by month', () => {
  test('is a row a month in whole dollars, each figure under its own name', () => {
    const { id, caption, columns, rows } = cashTable(cashOf([['2027-03', 1000.5, 0, 1000.49, -250]]));
    expect([id, caption]).toEqual(['cash', 'Cash by month']);
    expect(columns.map(({ key }) => key)).toEqual(['month', 'paid', 'received', 'carried', 'gap']);
    const why = (key: string) => `grant:cash|2027-03|${key}`;
    expect(rows).toEqual([
      {
        id: '2027-03',
        kind: 'line',
        cells: {
          month: { text: 'Mar 2027' },
          paid: { text: '1,001', why: why('paid') },
          received: { text: '–', why: why('received') },
          carried: { text: '1,000', why: why('carried') },
          gap: { text: '−250', why: why('gap') },
        },
      },
    ]);
    expect(cashTable(undefined).rows).toEqual([]);
  });

  test('is drawn as what is paid so far beside what is in so far, with the county’s own share', () => {
    const drawn = cashPicture(
      cashOf(
        [
          ['2027-11', 40_000, 0, 40_000, 30_000],
          ['2027-12', 20_000, 35_000, 25_000, 10_000],
        ],
        { month: '2027-11', amount: 3_000_000 },
      ),
    );
    expect(drawn?.points).toEqual([
      {
        month: '2027-11',
        text: 'Nov',
        year: '2027',
        paid: 40_000,
        paidSoFar: 40_000,
        inSoFar: 10_000,
        words: 'Nov 2027: $40,000 paid, $0 came in, $30,000 short',
      },
      {
        month: '2027-12',
        text: 'Dec',
        year: '2027',
        paid: 20_000,
        paidSoFar: 60_000,
        inSoFar: 50_000,
        words: 'Dec 2027: $20,000 paid, $35,000 came in, $10,000 short',
      },
    ]);
    expect(drawn).toMatchObject({
      title: 'Cash, $ million',
      worst: { at: 0, text: '$30,000 short, end of Nov 2027' },
      comeIn: 'come in, and the county’s own share',
      after: '',
      words: 'Cash from Nov 2027 to Dec 2027. The gap is widest at the end of Nov 2027: $30,000.',
    });
    // Sixty thousand in steps of ten thousand, six of them, in millions with two decimals.
    expect(drawn?.ticks.map(({ text }) => text)).toEqual('0.00 0.01 0.02 0.03 0.04 0.05 0.06'.split(' '));
  });

  test('has no worst month without a gap, and no picture without a month', () => {
    const drawn = cashPicture(cashOf([['2027-01', 500_000, 500_000, 0, 0]]));
    expect(drawn?.worst).toBeUndefined();
    expect(drawn?.words).toBe('Cash from Jan 2027 to Jan 2027. There is no gap.');
    expect(drawn?.ticks.map(({ text }) => text)).toEqual(['0.00', '0.10', '0.20', '0.30', '0.40', '0.50']);
    expect([cashPicture(undefined), cashPicture(cashOf([]))]).toEqual([undefined, undefined]);
  });

  test.each([
    [60_001, '0.000 0.025 0.050 0.075'],
    [300_001, '0.00 0.10 0.20 0.30 0.40'],
    [240_000, '0.00 0.05 0.10 0.15 0.20 0.25'],
    [6_000_000, '0.0 1.0 2.0 3.0 4.0 5.0 6.0'],
    [14_000_000, '0.00 2.50 5.00 7.50 10.00 12.50 15.00'],
    [90_000_000, '0.0 20.0 40.0 60.0 80.0 100.0'],
  ])('of %d dollars has an axis of %s', (paid, texts) => {
    const drawn = cashPicture(cashOf([['2027-01', paid, 0, 0, 0]]));
    expect(drawn?.ticks.map(({ text }) => text).join(' ')).toBe(texts);
  });

  test('is drawn two months beyond the last that matters, six at least; the table has the rest', () => {
    const months = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10'].map(
      (month): readonly [string, number, number, number, number] => quiet(`2027-${month}`),
    );
    const peak = { month: '2027-01', amount: 10_000_000 };
    /** The months with a gap of so many dollars in the fifth of them; 2 in 100 of the worst is small. */
    const withGap = (gap: number) =>
      cashPicture(
        cashOf(
          months.map((one, place) => (place === 5 ? [one[0], 0, 0, gap, gap] : one)),
          peak,
        ),
      );
    expect(withGap(2001)?.points.length).toBe(8);
    expect(withGap(2001)?.after).toBe('2 more months to Oct 2027 stand in the table; the gap stays small.');
    expect(withGap(2000)?.points.length).toBe(6);
    expect(withGap(2000)?.after).toMatch(/^4 more months to Oct 2027 /);
    expect(cashPicture(cashOf(months.slice(0, 4), peak))?.after).toBe('');
  });
});

describe('the tables of the funding', () => {
  const funding = DEMO.funding;
  if (funding === undefined) throw new Error('the example has a grant');
  const [grant, second] = funding.sources;
  if (grant === undefined || second === undefined) throw new Error('the example has sources');

  test('of sources give whole dollars and shares that add up, and what is left of a cap', () => {
    const { book } = view();
    if (book === undefined) throw new Error('the example has books');
    const bySource = [
      { sourceId: grant.id, title: 'A grant', amount: 1050, leftOfCap: 150 },
      { sourceId: 'gone', title: 'A source of before', amount: 2050 },
    ];
    const { rows } = sourceTable({ ...book, bySource }, funding);
    const cells = rows.map(row => Object.values(row.cells).map(({ text, why }) => [text, why]));
    const of = (id: string) => `grant:source|${id}`;
    // $10.50 and $20.50 are $11 and $20 of $31; 1050 of 3100 are 33.87 per cent.
    expect(cells).toEqual([
      [
        ['A grant', undefined],
        ['11', of(grant.id)],
        ['33.9', of(grant.id)],
        ['2', `grant:cap|${grant.id}`],
        ['after 2 months', undefined],
      ],
      [
        ['A source of before', undefined],
        ['20', of('gone')],
        ['66.1', of('gone')],
        ['–', undefined],
        ['', undefined],
      ],
      [
        ['All', undefined],
        ['31', of('all')],
        ['100.0', of('all')],
      ],
    ]);
    expect(rows.at(-1)).toMatchObject({ id: 'total', kind: 'total' });
    expect(sourceTable(undefined, funding).rows).toEqual([]);
  });

  test('of sources tell shares of the budget of the forms, what no source bears yet, and 0 left of a full cap', () => {
    const { book } = view();
    if (book === undefined) throw new Error('the example has books');
    const bySource = [{ sourceId: grant.id, title: 'A grant', amount: 35_000_000, leftOfCap: 0 }];
    const { rows } = sourceTable({ ...book, bySource, unfunded: 65_000_000 }, funding);
    expect(
      rows.map(({ id, cells }) => [id, ...['title', 'amount', 'share', 'left'].map(key => cells[key]?.text)]),
    ).toEqual([
      [grant.id, 'A grant', '350,000', '35.0', '0'],
      ['not-found', 'Not funded yet', '650,000', '65.0', '–'],
      ['total', 'All', '1,000,000', '100.0', undefined],
    ]);
  });

  test('of contracts tell the class that is chosen, the method and what each class would make', () => {
    const [contract] = funding.contracts;
    if (contract === undefined) throw new Error('the example has a contract');
    const { class: _class, ...open } = contract;
    const result = { base: 1000, indirect: 149, contractClass: 'subaward' as const };
    const made = {
      ...view(),
      contracts: [
        { contractId: contract.id, amount: 250_050, results: [result] },
        { contractId: 'all-the-rest', amount: 100, results: [] },
      ],
      procurement: [{ ...view().procurement[0], contractId: contract.id, method: 'sealed bids' }],
    };
    const table = (contracts: typeof funding.contracts) =>
      contractTable(made as ReturnType<typeof view>, { ...funding, contracts });
    const [first, rest] = table([open]).rows;
    expect([first?.id, first?.kind, rest?.id]).toEqual([contract.id, 'line', 'all-the-rest']);
    expect(Object.values(first?.cells ?? {}).map(({ text }) => text)).toEqual([
      contract.title,
      '2,501',
      'sealed bids',
      'not chosen',
      ...['–', '1', '–'],
    ]);
    expect(first?.cells['subaward']?.why).toBe(`grant:contract|${contract.id}|subaward`);
    expect(first?.cells['amount']?.why).toBe(`grant:contract|${contract.id}|amount`);
    expect(first?.cells['class']?.edit).toEqual({
      at: `/funding/contracts/${contract.id}/class`,
      kind: 'choice',
      value: '',
      label: `Class of the contract ${contract.title}`,
      choices: ['', 'service procurement', 'subaward', 'capital'].map(id => ({
        id,
        title: id === '' ? 'not chosen' : id,
      })),
    });
    expect(Object.values(rest?.cells ?? {}).map(({ text }) => text)).toEqual([
      'all the rest',
      '1',
      '',
      ...['–', '–', '–', '–'],
    ]);
    const [chosen] = table([{ ...contract, class: 'capital' }]).rows;
    expect(chosen?.cells['class']?.text).toBe('capital');
    expect(chosen?.cells['class']?.edit?.choices?.map(({ id }) => id)).not.toContain('');
  });

  test('beside the budget tell fiscal years, carrying and what is owed only if it happens', () => {
    const { cash } = view();
    if (cash === undefined) throw new Error('the example has a grant');
    const { carrying: _carrying, ...rest } = cash;
    const [owed] = cash.contingent;
    const contingent =
      owed === undefined ? [] : [{ ...owed, id: 'lien', title: 'A lien', party: 'the county' }];
    const own = {
      ...rest,
      fiscalYears: [{ fiscalYear: 2028, amount: 12_350 }],
      contingent: contingent.map(one => ({ ...one, amount: undefined })),
    };
    const told = (part: object) =>
      besideTable(part as CashPart).rows.map(row => [
        row.id,
        row.cells['title']?.text,
        row.cells['amount']?.text,
        row.cells['amount']?.why,
      ]);
    const year = ['year-2028', 'Paid in fiscal year 2028', '124', 'grant:beside|year-2028'];
    const only = ['only-lien', 'A lien, only if it happens; the county', 'not known', undefined];
    expect(told(own)).toEqual([year, only]);
    expect(told({ ...own, carrying: 49 })).toEqual([
      year,
      ['carrying', 'Interest on the cash gap at the county’s rate', '–', 'grant:beside|carrying'],
      only,
    ]);
    expect(besideTable(undefined).rows).toEqual([]);
  });
});
