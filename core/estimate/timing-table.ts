import { isSameData } from '../base';
import {
  carried,
  notApplying,
  rounded,
  scaled,
  type Given,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import type { ItemFields } from './item-fields';
import { escalation, type EscalationClass, type PriceLevel } from './price-level';
import type { WorkSheet } from './work-sheet';

/** When an item happens, as far as money depends on it. */
export interface ItemTiming {
  /** How long a time-dependent item lasts, in its own unit; none for other items. */
  readonly span?: string;
  /** Months from the price date to the middle of its spending. */
  readonly months: string;
  /** Days on which its equipment is wanted. */
  readonly days: string;
}

export interface TimingColumns {
  readonly quantity: Step<'own'>;
  readonly number: Step<'1'>;
  readonly hours: Step<'h'>;
  readonly crews: Step<'1'>;
  readonly days: Step<'1'>;
  readonly span: Step<'1'>;
  readonly escalation: Readonly<Record<EscalationClass, Step<'1'>>>;
}

/**
 * The items as the schedule leaves them: quantities and hours of time-dependent items by how long they last, and the
 * escalation of each class of prices to the month of spending.
 */
export function timingTable(
  sheet: Sheet,
  work: WorkSheet,
  level: PriceLevel,
  timing: ReadonlyMap<string, ItemTiming>,
): Table<TimingColumns> {
  const { result, items } = work;
  const rows = {
    heading: 'Work item',
    of: work.rows.map(row => timedRow(row, timing.get(row.item.id))),
    key: ({ row }: TimedRow) => row.item.id,
    title: ({ row }: TimedRow) => row.item.title,
    own: ({ row }: TimedRow) => row.own,
    place: ({ row }: TimedRow) => `/items/${row.item.id}`,
  };
  return sheet.table('timing', rows, t => {
    const key = t.rowKey();
    const columns = items.columns;
    const span = t.field('span', 'Lasts', '1', spanGiven, []);
    const months = t.fromSchedule(
      'months',
      'Months from the price date',
      '1',
      row => scheduled(row.timing?.months),
      [],
    );
    const days = t.fromSchedule('days', 'Days of equipment', '1', row => scheduled(row.timing?.days), []);
    const factor = (kind: EscalationClass, title: string) =>
      t.place(`escalation-${kind}`, `Escalation of ${title}`, escalation(level, kind, months));
    return {
      span,
      days,
      quantity: t.place('quantity', 'Quantity', scaled(carried(result, columns.quantity, key), span)),
      number: t.place('number', 'Quantity as a number', scaled(carried(result, columns.number, key), span)),
      hours: t.place('hours', 'Hours', rounded(scaled(carried(result, columns.hours, key), span), 1)),
      crews: t.place('crews', 'Crews', carried(result, columns.crews, key)),
      escalation: {
        labour: factor('labour', 'labour'),
        fuel: factor('fuel', 'fuel'),
        disposal: factor('disposal', 'disposal'),
        general: factor('general', 'other prices'),
      },
    };
  });
}

/** An item with when it happens. */
interface TimedRow {
  readonly row: ItemFields;
  readonly timing: ItemTiming | undefined;
}

const TIMED = new WeakMap<ItemFields, TimedRow>();

/** The row of an item; the same object as before when the item and its timing are. */
function timedRow(row: ItemFields, timing: ItemTiming | undefined): TimedRow {
  const known = TIMED.get(row);
  if (known !== undefined && isSameData(known.timing, timing)) return known;
  const made = { row, timing };
  TIMED.set(row, made);
  return made;
}

function spanGiven({ row, timing }: TimedRow): Given | undefined {
  if (row.item.span === undefined) return notApplying('1', '1');
  return timing?.span === undefined
    ? undefined
    : { value: timing.span, unit: '1', basis: 'schedule', source: 'levelled schedule' };
}

function scheduled(value: string | undefined) {
  return value === undefined ? undefined : { value, unit: '1' as const };
}
