import { at } from '../../base';
import { ELEMENTS } from '../../cash-flow';
import { ELEMENT_TITLES, elementKey, type BidView } from '../../evaluation';
import { aligned, words } from '../cells';
import { cents } from '../funding/tie-out-table';
import { shortNumber } from '../number-text';
import type { Column, Row, TableRows } from '../rows';
import { bidId } from './bid-of';

const SHEET_COLUMNS: readonly Column[] = [
  { key: 'number', title: 'Item', kind: 'words' },
  { key: 'title', title: 'Description', kind: 'words' },
  { key: 'quantity', title: 'Quantity', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'unitPrice', title: 'Unit price', unit: '$', kind: 'number' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
];

/** The sheet that leaves: item numbers, titles, quantities and prices, nothing of what they are made of. */
export function sheetTable({ sheet, schedule }: BidView): TableRows {
  const rows = sheet === undefined || schedule === undefined ? [] : sheetRows(sheet, schedule);
  return {
    id: 'bid-sheet',
    caption: 'Sheet of bid items',
    columns: SHEET_COLUMNS,
    rows: aligned(SHEET_COLUMNS, rows),
  };
}

type Made = Required<BidView>;

function sheetRows({ items, baseBid }: Made['sheet'], schedule: Made['schedule']): readonly Row[] {
  const rows = items.map((item, place): Row => {
    const why = bidId('item', at(schedule.items, place).item.id);
    return {
      id: String(item.number),
      kind: 'line',
      cells: {
        number: words(String(item.number)),
        title: words(item.title),
        quantity: { text: shortNumber(String(item.quantity)), why },
        unit: words(item.unit),
        unitPrice: item.unitPrice === undefined ? words('–') : cents(item.unitPrice, why),
        amount: cents(item.amount, why),
      },
    };
  });
  return [
    ...rows,
    {
      id: 'base',
      kind: 'total',
      cells: { number: words(''), title: words('Base bid'), amount: cents(baseBid, bidId('base')) },
    },
  ];
}

const INSIDE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Item and the lines it is made of', kind: 'words' },
  ...ELEMENTS.map((key): Column => ({
    key,
    title: ELEMENT_TITLES[elementKey(key)],
    unit: '$',
    kind: 'number',
  })),
  { key: 'total', title: 'Price', unit: '$', kind: 'number' },
];

/** The sheet that stays: what each price is made of. */
export function insideTable({ internal }: BidView): TableRows {
  const rows = (internal?.items ?? []).flatMap((item): Row[] => [
    {
      id: item.itemId,
      kind: 'group',
      cells: {
        title: words(`${item.title}  ${item.lines.length}`),
        ...Object.fromEntries(
          ELEMENTS.map(element => [
            element,
            cents(item.elements[element], bidId('element', item.itemId, element)),
          ]),
        ),
        total: cents(item.cost, bidId('cost', item.itemId)),
      },
    },
    ...item.lines.map((line): Row => ({
      id: `${item.itemId}/${line.lineId}`,
      kind: 'line',
      under: item.itemId,
      cells: {
        title: words(line.title),
        ...Object.fromEntries(
          ELEMENTS.map(element => [
            element,
            line.amounts[element] === 0
              ? words('–')
              : cents(
                  line.amounts[element],
                  `lines/${line.lineId}/${element === 'markUp' ? 'mark-up' : element}`,
                ),
          ]),
        ),
        total: cents(line.total, `lines/${line.lineId}/total`),
      },
    })),
  ]);
  return {
    id: 'bid-inside',
    caption: 'What each price is made of',
    columns: INSIDE_COLUMNS,
    rows: aligned(INSIDE_COLUMNS, rows),
  };
}
