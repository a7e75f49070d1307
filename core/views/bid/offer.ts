import type { EstimateContext } from '../context';
import { aligned, editCell, words } from '../cells';
import type { Column, Edit, Row, TableRows } from '../rows';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Of the offer', kind: 'words' },
  { key: 'value', title: 'As printed', kind: 'words' },
];

/** Who bids, until when, and what addenda he has: printed on the bid, and an empty line where nothing stands here. */
export function offerTable({ evaluation: { project } }: EstimateContext): TableRows {
  const offer = project.bid?.offer ?? {};
  const row = (field: keyof typeof offer, title: string, kind: 'text' | 'date' = 'text'): Row => {
    const at = `/bid/offer/${field}`;
    const edit: Edit = { at, kind, value: offer[field] ?? '', label: title, optional: true };
    return { id: field, kind: 'line', cells: { title: words(title), value: editCell(edit) } };
  };
  const rows = [
    row('bidder', 'Bidder'),
    row('address', 'Address of the bidder'),
    row('contact', 'Contact of the bidder'),
    row('validUntil', 'Offer can be accepted until', 'date'),
    row('addenda', 'Addenda received'),
  ];
  return {
    id: 'bid-offer',
    caption: 'Who offers, and until when',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
  };
}
