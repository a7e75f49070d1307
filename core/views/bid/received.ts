import { tabulationView, type Evaluation, type TabulationView } from '../../evaluation';
import type { EstimateContext } from '../context';
import { aligned, editCell, REMOVE_COLUMN, removeCell, words } from '../cells';
import { findingWords } from '../finding-words';
import { optionalFigure } from '../term-rows';
import { cents } from '../funding/tie-out-table';
import { dollars, roundText, shortNumber } from '../number-text';
import type { Column, Row, Sentence, TableRows } from '../rows';
import { bidId, bidOf } from './bid-of';
import type { BidComparisonRows } from './rows';

const KNOWN = new WeakMap<Evaluation, TabulationView>();

/** The bids received beside the estimate, worked out once. */
export function tabulationOf(evaluation: Evaluation): TabulationView {
  const known = KNOWN.get(evaluation) ?? tabulationView(evaluation);
  KNOWN.set(evaluation, known);
  return known;
}

/** Bids against the estimate, item by item, lowest total first. */
export function comparisonRows({ evaluation }: EstimateContext): BidComparisonRows | undefined {
  const view = tabulationOf(evaluation);
  const { comparison } = view;
  if (comparison === undefined) return undefined;
  const ranked = comparison.totals.toSorted((a, b) => (a.rank ?? 99) - (b.rank ?? 99));
  const columns: readonly Column[] = [
    { key: 'title', title: 'Item', kind: 'words' },
    { key: 'quantity', title: 'Quantity', kind: 'number' },
    { key: 'unit', title: 'Unit', kind: 'unit' },
    { key: 'estimate', title: 'Estimate', unit: '$', kind: 'number' },
    ...ranked.map((one): Column => ({ key: one.bidId, title: one.bidder, unit: '$', kind: 'number' })),
    { key: 'median', title: 'Middle', unit: '$', kind: 'number' },
  ];
  const rows = comparison.rows.map((row): Row => ({
    id: row.item.id,
    kind: 'line',
    cells: {
      title: words(row.item.title),
      quantity: { text: shortNumber(String(row.item.quantity)), why: bidId('item', row.item.id) },
      unit: words(row.item.unit),
      estimate: cents(row.item.estimate, bidId('item', row.item.id)),
      ...Object.fromEntries(
        ranked.map(one => {
          const amount = row.byBid[one.bidId];
          return [
            one.bidId,
            amount === undefined
              ? { text: 'no price', absent: true as const }
              : cents(amount, bidId('received', one.bidId, row.item.id)),
          ];
        }),
      ),
      median: row.median === undefined ? words('–') : cents(row.median, bidId('middle', row.item.id)),
    },
  }));
  const total: Row = {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('Total'),
      estimate: cents(comparison.estimate, bidId('base')),
      ...Object.fromEntries(
        ranked.map(one => [
          one.bidId,
          one.total === undefined
            ? { text: 'no total', absent: true as const }
            : cents(one.total, bidId('received', one.bidId, 'total')),
        ]),
      ),
    },
  };
  return {
    sentence: sentence(ranked),
    table: {
      id: 'bids',
      caption: 'Bids beside the estimate',
      columns,
      rows: aligned(columns, [...rows, total]),
    },
    totals: totalTable(ranked),
    findings: view.findings.map(findingWords),
  };
}

type Total = NonNullable<TabulationView['comparison']>['totals'][number];

function sentence(ranked: readonly Total[]): Sentence {
  const lowest = ranked.find(one => one.rank === 1);
  if (lowest?.total === undefined || lowest.overEstimate === undefined)
    return ['No bid has a price for every item, so none can be ranked.'];
  const over = lowest.overEstimate;
  return [
    `${lowest.bidder} is lowest of ${ranked.length} at `,
    { text: dollars(lowest.total), why: bidId('received', lowest.bidId, 'total') },
    over === 0
      ? ', exactly the estimate.'
      : `, ${dollars(Math.abs(over))} ${over > 0 ? 'over' : 'under'} the estimate.`,
  ];
}

const TOTAL_COLUMNS: readonly Column[] = [
  { key: 'rank', title: 'Place', kind: 'words' },
  { key: 'bidder', title: 'Bidder', kind: 'words' },
  { key: 'total', title: 'Total', unit: '$', kind: 'number' },
  { key: 'over', title: 'Over the estimate', unit: '$', kind: 'number' },
];

function totalTable(ranked: readonly Total[]): TableRows {
  const rows = ranked.map((one): Row => {
    const why = bidId('received', one.bidId, 'total');
    return {
      id: one.bidId,
      kind: 'line',
      cells: {
        rank: words(one.rank === undefined ? '–' : String(one.rank)),
        bidder: words(one.bidder),
        total: one.total === undefined ? { text: 'no total', absent: true } : cents(one.total, why),
        over: one.overEstimate === undefined ? words('–') : cents(one.overEstimate, why),
      },
    };
  });
  return {
    id: 'bid-totals',
    caption: 'Totals in their order',
    columns: TOTAL_COLUMNS,
    rows: aligned(TOTAL_COLUMNS, rows),
  };
}

const BIDDER_COLUMNS: readonly Column[] = [
  { key: 'bidder', title: 'Bidder', kind: 'words' },
  { key: 'openedOn', title: 'Opened on', kind: 'words' },
  REMOVE_COLUMN,
];

/** The bids as they were opened: who bid, and the price of each item. */
export function bidderTables({ evaluation, measures }: EstimateContext): readonly TableRows[] {
  const { project } = evaluation;
  const received = project.receivedBids ?? [];
  const items = bidOf(evaluation).schedule?.items ?? [];
  const who: TableRows = {
    id: 'bidders',
    caption: 'Bidders',
    columns: BIDDER_COLUMNS,
    rows: received.map((one): Row => {
      const at = `/receivedBids/${one.id}`;
      return {
        id: one.id,
        kind: 'line',
        cells: {
          bidder: editCell({
            at: `${at}/bidder`,
            kind: 'text',
            value: one.bidder,
            label: 'Name of the bidder',
          }),
          openedOn: editCell({
            at: `${at}/openedOn`,
            kind: 'date',
            value: one.openedOn ?? '',
            label: `Day the bid of ${one.bidder} was opened`,
            optional: true,
          }),
          remove: removeCell(at, `the bid of ${one.bidder}`),
        },
      };
    }),
    add: {
      at: '/receivedBids',
      what: 'a bid',
      idFrom: 'bidder',
      entry: { prices: items.map(({ item }) => ({ item: item.id })), alternates: [] },
      fields: [
        { path: 'bidder', kind: 'text', label: 'Bidder' },
        { path: 'openedOn', kind: 'date', label: 'Opened on', optional: true },
      ],
    },
  };
  if (received.length === 0) return [who];
  const columns: readonly Column[] = [
    { key: 'title', title: 'Item', kind: 'words' },
    { key: 'unit', title: 'Unit', kind: 'unit' },
    ...received.map((one): Column => ({ key: one.id, title: one.bidder, unit: '$ a unit', kind: 'number' })),
  ];
  const prices: TableRows = {
    id: 'bid-prices',
    caption: 'Prices as they were opened',
    columns,
    rows: aligned(
      columns,
      items.map(({ item }): Row => ({
        id: item.id,
        kind: 'line',
        cells: {
          title: words(item.title),
          unit: words(item.unit),
          ...Object.fromEntries(
            received.map(one => {
              const price = one.prices.find(row => row.item === item.id);
              const field =
                price?.amount !== undefined && price.unitPrice === undefined ? 'amount' : 'unitPrice';
              const label = `Price of ${one.bidder} for ${item.title}`;
              const at = `/receivedBids/${one.id}/prices/${item.id}/${field}`;
              return [one.id, optionalFigure(at, label, price?.[field], 'USD', measures)];
            }),
          ),
        },
      })),
    ),
  };
  return [who, prices];
}

/** A share in per cent at one decimal. */
export function percentText(share: number): string {
  return `${roundText((share * 100).toFixed(6), 1)} %`;
}
