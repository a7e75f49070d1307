import type { Book } from '../cash-flow';
import type { BidSheet } from './sheets';

/** Every amount of a bid sheet under its place, for the comparison with a file that came back. */
export function bookOfBid(sheet: BidSheet): Book {
  const items = sheet.items.flatMap(row => [
    ...(row.unitPrice === undefined
      ? []
      : [
          {
            key: `items/${row.number}/unit-price`,
            title: `item ${row.number}, unit price`,
            amount: row.unitPrice,
          },
        ]),
    { key: `items/${row.number}/amount`, title: `item ${row.number}`, amount: row.amount },
  ]);
  const alternates = sheet.alternates.flatMap(({ number, amount }) =>
    amount === undefined ? [] : [{ key: `alternates/${number}`, title: `alternate ${number}`, amount }],
  );
  const total = { key: 'base-bid', title: 'base bid', amount: sheet.baseBid };
  return { id: 'bid', title: 'bid sheet', entries: [...items, ...alternates, total] };
}
