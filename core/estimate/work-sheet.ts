import { keepingParts, onceFor } from '../base';
import {
  Sheet,
  evaluateSheet,
  link,
  quoted,
  rounded,
  totalWhere,
  over,
  unity,
  type Recipe,
  type SheetResult,
  type SheetUnit,
  type Step,
  type Table,
} from '../sheet';
import { takeOff, type TakeOff } from '../vessel';
import type { WorkItem } from '../work';
import { conditionSets } from './condition-sets';
import { crewTables, type CrewTables } from './crew-tables';
import { dayColumns } from './day-columns';
import { driverTables, type DriverColumns } from './driver-tables';
import { hourColumns } from './hour-columns';
import { memoryOf, type EstimateInput } from './inputs';
import { itemFields, type ItemFields } from './item-fields';
import { paceOf } from './pace';
import { quantityColumns, shipDriver, type DriverOf } from './quantity-columns';
import { removalTable, scrapTable, wasteTable, type TonnesColumns } from './waste-table';

/** What the work sheet finds for an item. Of a time-dependent item: for one day or month of it. */
export interface ItemColumns {
  readonly quantity: Step<'own'>;
  /** The same without its unit. */
  readonly number: Step<'1'>;
  readonly hours: Step<'h'>;
  readonly crews: Step<'1'>;
  readonly people: Step<'person'>;
  /** Whole days in the unit the item counts. */
  readonly days: Step<'1'>;
}

/** The work sheet, run: quantities, hours, days and tonnes, before anything has a date or a price. */
export interface WorkSheet {
  readonly sheet: Sheet;
  readonly result: SheetResult;
  readonly rows: readonly ItemFields[];
  readonly takeOff: TakeOff;
  readonly drivers: Table<DriverColumns>;
  readonly crews: CrewTables;
  /** All items, those that haul waste included. */
  readonly items: Table<ItemColumns>;
  readonly wastes: Table<TonnesColumns>;
  /** Tonnes by waste stream. */
  readonly streams: Table<{ readonly tonnes: Step<'t'> }>;
  readonly scrap: ReturnType<typeof scrapTable>;
  readonly removals: ReturnType<typeof removalTable>;
}

type Drivers = EstimateInput['library']['drivers'];

/**
 * Builds and runs the work sheet of a scenario. What work costs does not enter it: when nothing else of the items has
 * changed, the figures of the sheet before are told again.
 * @param drivers the drivers the ship has, in the order of the library.
 * @param items the items of the scenario.
 */
export function workSheet(input: EstimateInput, drivers: Drivers, items: readonly WorkItem[]): WorkSheet {
  const rows = itemFields(items, input);
  const sheet = sheetOf(input, drivers, rows);
  return sheet.rows === rows ? sheet : { ...sheet, rows };
}

/** All that the sheet looks at: dates and prices are no matter of it. */
function partsOf(input: EstimateInput, drivers: Drivers, rows: readonly ItemFields[]): readonly unknown[] {
  const { calendars: _c, prices: _p, contingencyShare: _s, statusDate: _d, ...rest } = input;
  const { adjustments: _a, measured, ...others } = rest;
  return [others, [...measured], drivers, ...rows.map(workOf)];
}

/** What of an item the sheet looks at: everything but what it costs. */
const workOf = onceFor(({ item, own, change }: ItemFields) => {
  const { materialPerUnit: _m, subcontractPerUnit: _s, subcontractFixed: _f, ...rest } = item;
  const { feePerUnit: _p, feeFixed: _x, equipment: _e, ...work } = rest;
  return [work, own, change];
});

const sheetOf = keepingParts(2, partsOf, newSheet);

function newSheet(input: EstimateInput, drivers: Drivers, rows: readonly ItemFields[]): WorkSheet {
  const sheet = new Sheet('work', undefined, memoryOf(input.library));
  const taken = takeOff(sheet, input.ship);
  const driven = driverTables(sheet, input, taken, drivers);
  const conditions = conditionSets(
    sheet,
    input,
    rows.map(row => row.item),
  );
  const crews = crewTables(sheet, input);
  const shift = sheet
    .block('shift', 'Shift')
    .given('shift-hours', 'Hours of a shift', 'h/work-day', input.shiftHours);
  const pace = paceOf(sheet, input);
  const table = (
    id: string,
    heading: string,
    of: readonly ItemFields[],
    driverOf: DriverOf,
  ): Table<ItemColumns> =>
    sheet.table(id, rowsOf(heading, of), t => {
      const quantity = quantityColumns(t, driverOf);
      const hours = hourColumns(t, quantity.quantity, crews.crews, conditions, pace, input.overrides);
      return { ...quantity, ...hours, days: dayColumns(t, hours, shift, driven) };
    });
  const worked = table(
    'worked',
    'Work item',
    rows.filter(row => row.item.disposes === undefined),
    shipDriver(driven),
  );
  const wastes = wasteTable(sheet, rows, worked);
  const streams = streamTable(sheet, input, wastes);
  const hauled = table(
    'hauled',
    'Waste hauled',
    rows.filter(row => row.item.disposes !== undefined),
    tonnesOf(streams),
  );
  return {
    sheet,
    rows,
    takeOff: taken,
    drivers: driven,
    crews,
    items: allItems(sheet, rows, worked, hauled),
    wastes,
    streams,
    scrap: scrapTable(sheet, rows, worked),
    removals: removalTable(sheet, rows, worked),
    result: evaluateSheet(sheet),
  };
}

function rowsOf(heading: string, of: readonly ItemFields[]) {
  return {
    heading,
    of,
    key: (row: ItemFields) => row.item.id,
    title: (row: ItemFields) => row.item.title,
    own: (row: ItemFields) => row.own,
    place: (row: ItemFields) => `/items/${row.item.id}`,
  };
}

function streamTable(sheet: Sheet, input: EstimateInput, wastes: Table<TonnesColumns>): WorkSheet['streams'] {
  const { streams } = input.library.rateBook;
  return sheet.table(
    'streams',
    { heading: 'Waste stream', of: streams, key: stream => stream.id, title: stream => stream.title },
    t => ({
      tonnes: t.place(
        'tonnes',
        'Tonnes',
        rounded(totalWhere(wastes.columns.tonnes, wastes.columns.stream, t.rowKey()), 2),
      ),
    }),
  );
}

/** What a haul scales from: the tonnes of its stream. */
function tonnesOf(streams: WorkSheet['streams']): DriverOf {
  return t => {
    const tonnes = t.place(
      'stream-tonnes',
      'Tonnes of the stream',
      link(
        t.key('stream', 'Stream (key)', row => row.item.disposes, []),
        streams.columns.tonnes,
      ),
    );
    return t.place('driver', 'Driver', rounded(over(tonnes, unity('t')), 2));
  };
}

/** One table of all items, so that the money sheet finds each by its key. */
function allItems(
  sheet: Sheet,
  rows: readonly ItemFields[],
  worked: Table<ItemColumns>,
  hauled: Table<ItemColumns>,
): Table<ItemColumns> {
  return sheet.table('items', rowsOf('Work item', rows), t => {
    const key = t.rowKey();
    const either = <U extends SheetUnit>(id: keyof ItemColumns, title: string, a: Step<U>, b: Step<U>) =>
      either2(t, key, id, title, a, b);
    const [a, b] = [worked.columns, hauled.columns];
    return {
      quantity: either('quantity', 'Quantity', a.quantity, b.quantity),
      number: either('number', 'Quantity as a number', a.number, b.number),
      hours: either('hours', 'Hours', a.hours, b.hours),
      crews: either('crews', 'Crews', a.crews, b.crews),
      people: either('people', 'People of a crew', a.people, b.people),
      days: either('days', 'Days', a.days, b.days),
    };
  });
}

function either2<U extends SheetUnit>(
  t: Recipe<ItemFields>,
  key: Step<'text'>,
  id: string,
  title: string,
  a: Step<U>,
  b: Step<U>,
): Step<U> {
  const first = t.place(`${id}-worked`, `${title} of work`, link(key, a));
  return t.place(id, title, quoted(first, link(key, b)));
}
