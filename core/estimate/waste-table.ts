import { link, priced, rounded, type Sheet, type Step, type Table } from '../sheet';
import { fieldGiven, perOwn, placeOf, type ItemFields } from './item-fields';
import { givenFrom } from '../sheet';
import type { QuantityColumns } from './quantity-columns';

/** What an item sends to a waste stream, or takes off the ship, in tonnes. */
export interface TonnesColumns {
  readonly item: Step<'text'>;
  readonly stream: Step<'text'>;
  readonly tonnes: Step<'t'>;
}

/** The tonnes each item sends to each stream: a row for each pair. Of a time-dependent item, the tonnes of one day. */
export function wasteTable(
  sheet: Sheet,
  rows: readonly ItemFields[],
  items: Table<Pick<QuantityColumns, 'quantity'>>,
): Table<TonnesColumns> {
  const wastes = rows.flatMap(wastesOf);
  return sheet.table(
    'wastes',
    {
      heading: 'Waste',
      of: wastes,
      key: ({ row, waste }) => `${row.item.id}.${waste.stream}`,
      title: ({ row, waste }) => `${row.item.title}: ${waste.stream}`,
      own: ({ row }) => row.own,
      place: ({ row }) => placeOf(row, 'wastes'),
    },
    t => {
      const item = t.key('item', 'Work item (key)', ({ row }) => row.item.id, []);
      const stream = t.key('stream', 'Stream (key)', ({ waste }) => waste.stream, []);
      const quantity = t.place('quantity', 'Quantity', link(item, items.columns.quantity));
      const each = t.field(
        'per-unit',
        'Tonnes for one',
        't/own',
        ({ row, waste }) => givenFrom(waste.perUnit, perOwn('t', row), placeOf(row, 'wastes')),
        [],
      );
      return { item, stream, tonnes: t.place('tonnes', 'Tonnes', rounded(priced(quantity, each), 4)) };
    },
  );
}

const WASTES = new WeakMap<
  ItemFields,
  readonly { row: ItemFields; waste: ItemFields['item']['wastes'][number] }[]
>();

/** The rows of an item's wastes, the same for the same item. */
function wastesOf(row: ItemFields) {
  const known = WASTES.get(row) ?? row.item.wastes.map(waste => ({ row, waste }));
  WASTES.set(row, known);
  return known;
}

/** Tonnes of scrap that items yield, by grade. */
export function scrapTable(
  sheet: Sheet,
  rows: readonly ItemFields[],
  items: Table<Pick<QuantityColumns, 'quantity'>>,
): Table<{ item: Step<'text'>; grade: Step<'text'>; tonnes: Step<'t'> }> {
  const yielding = rows.filter(row => row.item.scrap !== undefined);
  return sheet.table(
    'scrap',
    {
      heading: 'Scrap',
      of: yielding,
      key: row => row.item.id,
      title: row => row.item.title,
      own: row => row.own,
    },
    t => {
      const item = t.key('item', 'Work item (key)', row => row.item.id, []);
      const grade = t.key('grade', 'Grade (key)', row => row.item.scrap?.grade, []);
      const quantity = t.place('quantity', 'Quantity', link(item, items.columns.quantity));
      const each = t.field(
        'per-unit',
        'Tonnes for one',
        't/own',
        row => fieldGiven(row, 'scrap', row.item.scrap?.perUnit, perOwn('t', row), '0'),
        [],
      );
      return { item, grade, tonnes: t.place('tonnes', 'Tonnes', rounded(priced(quantity, each), 3)) };
    },
  );
}

/** Tonnes that items take off the ship, for the stability of what is left. */
export function removalTable(
  sheet: Sheet,
  rows: readonly ItemFields[],
  items: Table<Pick<QuantityColumns, 'quantity'>>,
): Table<{ tonnes: Step<'t'>; height: Step<'1'> }> {
  const removing = rows.filter(row => row.item.removes !== undefined);
  return sheet.table(
    'removals',
    {
      heading: 'Weight removed',
      of: removing,
      key: row => row.item.id,
      title: row => row.item.title,
      own: row => row.own,
    },
    t => {
      const quantity = t.place('quantity', 'Quantity', link(t.rowKey(), items.columns.quantity));
      const each = t.field(
        'per-unit',
        'Tonnes for one',
        't/own',
        row => fieldGiven(row, 'removes', row.item.removes?.perUnit, perOwn('t', row), '0'),
        [],
      );
      const height = t.field(
        'height',
        'Height above keel over depth',
        '1',
        row => fieldGiven(row, 'removes', row.item.removes?.heightOverDepth, '1', '0'),
        [],
      );
      return { tonnes: t.place('tonnes', 'Tonnes', rounded(priced(quantity, each), 3)), height };
    },
  );
}
