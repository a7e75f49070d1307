import { at } from '../../base';
import type { CashMonth } from '../../cash-flow';
import type { CashPart } from '../../evaluation';
import { aligned, words } from '../cells';
import { dollarCell } from '../context';
import { monthWords } from '../../calendar';
import { dollars, roundText } from '../number-text';
import type { Column, Row, TableRows } from '../rows';
import { roundedDollars } from '../whole-dollars';
import { grantId } from './names';
import type { CashPicture, CashPoint } from './rows';

const COLUMNS: readonly Column[] = [
  { key: 'month', title: 'Month', kind: 'words' },
  { key: 'paid', title: 'Paid in the month', unit: '$', kind: 'number' },
  { key: 'received', title: 'Came in', unit: '$', kind: 'number' },
  { key: 'carried', title: 'Carried by the county', unit: '$', kind: 'number' },
  { key: 'gap', title: 'Beyond its own share', unit: '$', kind: 'number' },
];

/** The owner’s cash month by month. */
export function cashTable(cash: CashPart | undefined): TableRows {
  const months = cash?.cash.view.months ?? [];
  const rows = months.map((one): Row => ({
    id: one.month,
    kind: 'line',
    cells: {
      month: words(monthWords(one.month)),
      ...Object.fromEntries(
        (['paid', 'received', 'carried', 'gap'] as const).map(key => [
          key,
          dollarCell(roundedDollars(one[key]), grantId('cash', one.month, key)),
        ]),
      ),
    },
  }));
  return { id: 'cash', caption: 'Cash by month', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}

/** A month whose gap is under this share of the worst, and all after it, is left to the table. */
const SMALL = 0.02;

/** The cash as it is drawn: months up to where the gap has closed. */
export function cashPicture(cash: CashPart | undefined): CashPicture | undefined {
  const view = cash?.cash.view;
  const worst = view?.peak;
  if (view === undefined || view.months.length === 0) return undefined;
  const last = view.months.findLastIndex(one => one.gap > (worst?.amount ?? 0) * SMALL);
  const shown = view.months.slice(0, Math.min(view.months.length, Math.max(last + 3, 6)));
  const points = pointsOf(shown);
  const most = Math.max(1, ...points.map(point => Math.max(point.paidSoFar, point.inSoFar)));
  const place = points.findIndex(point => point.month === worst?.month);
  const rest = view.months.length - shown.length;
  return {
    title: 'Cash, $ million',
    points,
    ticks: ticksTo(most),
    worst:
      worst === undefined || place < 0
        ? undefined
        : { at: place, text: `${dollars(worst.amount)} short, end of ${monthWords(worst.month)}` },
    comeIn: 'come in, and the county’s own share',
    after:
      rest === 0
        ? ''
        : `${rest} more months to ${monthWords(at(view.months, view.months.length - 1).month)} stand in the table; the gap stays small.`,
    words: wordsOf(points, worst),
  };
}

function pointsOf(months: readonly CashMonth[]): readonly CashPoint[] {
  let paidSoFar = 0;
  return months.map(one => {
    paidSoFar += one.paid;
    const name = monthWords(one.month);
    return {
      month: one.month,
      text: name.slice(0, 3),
      year: one.month.slice(0, 4),
      paid: one.paid / 100,
      paidSoFar: paidSoFar / 100,
      inSoFar: (paidSoFar - one.gap) / 100,
      words: `${name}: ${dollars(one.paid)} paid, ${dollars(one.received)} came in, ${dollars(one.gap)} short`,
    };
  });
}

/** Steps of the money axis in millions: three to six of them. */
function ticksTo(most: number): CashPicture['ticks'] {
  const size =
    [
      10_000, 25_000, 50_000, 100_000, 250_000, 500_000, 1_000_000, 2_000_000, 2_500_000, 5_000_000,
      10_000_000,
    ].find(step => most / step <= 6) ?? 20_000_000;
  const count = Math.ceil(most / size);
  const decimals = size % 10_000 !== 0 ? 3 : size % 1_000_000 === 0 ? 1 : 2;
  return Array.from({ length: count + 1 }, (_, step) => ({
    at: step * size,
    text: roundText(((step * size) / 1_000_000).toFixed(4), decimals),
  }));
}

function wordsOf(points: readonly CashPoint[], worst: { month: string; amount: number } | undefined): string {
  const [first, last] = [at(points, 0), at(points, points.length - 1)];
  const span = `Cash from ${monthWords(first.month)} to ${monthWords(last.month)}.`;
  return worst === undefined
    ? `${span} There is no gap.`
    : `${span} The gap is widest at the end of ${monthWords(worst.month)}: ${dollars(worst.amount)}.`;
}
