import {
  link,
  over,
  power,
  quoted,
  rounded,
  scaled,
  sum,
  unity,
  when,
  type Recipe,
  type Step,
  type Table,
} from '../sheet';
import { flagOf } from './condition-sets';
import { roundedTo, type DriverColumns } from './driver-tables';
import { bareField, changedGiven, type ItemFields } from './item-fields';

export interface QuantityColumns {
  readonly quantity: Step<'own'>;
  /** The same without its unit. */
  readonly number: Step<'1'>;
}

/** Where the number comes from that a quantity scales from. */
export type DriverOf = (t: Recipe<ItemFields>) => Step<'1'>;

/** The driver of the ship that an item names. */
export function shipDriver(drivers: Table<DriverColumns>): DriverOf {
  return t =>
    t.place(
      'driver',
      'Driver',
      link(
        t.key('driver-key', 'Driver (key)', row => row.item.driver, []),
        drivers.columns.number,
      ),
    );
}

/**
 * The cost-estimating relationship of the items, one form for all:
 * quantity = factor × reference × (driver ÷ reference)^exponent + fixed, rounded to the decimals it is printed with.
 * A quantity stated by the planner stands in its place. Of a time-dependent item it is the quantity of one day.
 */
export function quantityColumns(t: Recipe<ItemFields>, driverOf: DriverOf): QuantityColumns {
  const bare = (title: string, key: 'factor' | 'exponent' | 'reference' | 'fixed', absent: '0' | '1') =>
    t.field(key, title, '1', row => bareField(row, key, row.item[key], absent), []);
  const driver = driverOf(t);
  const reference = bare('Reference', 'reference', '1');
  const fixed = bare('Fixed part', 'fixed', '0');
  const factor = bare('Factor', 'factor', '1');
  const exponent = bare('Exponent', 'exponent', '1');
  const step = t.field('rounded-to', 'Rounded to', '1', row => roundedTo(row.item.decimals), []);
  const ratio = t.place(
    'ratio',
    'Ratio to the reference, to its power',
    rounded(power(rounded(over(driver, reference), 9), exponent), 9),
  );
  const raw = t.place(
    'quantity-raw',
    'Quantity before rounding',
    sum(scaled(reference, factor, ratio), fixed),
  );
  const computed = t.place(
    'quantity-computed',
    'Quantity worked out',
    scaled(unity('own'), step, rounded(rounded(over(raw, step), 8), 0)),
  );
  const stated = t.field(
    'quantity-stated',
    'Quantity stated by the planner',
    'own',
    row => changedGiven(row, 'quantity', row.own),
    [],
  );
  const isUnread = t.field('is-unread', 'Stated, not readable', '1', row => flagOf(isUnreadable(row)), []);
  const quantity = t.place('quantity', 'Quantity', quoted(stated, when(isUnread, stated, computed)));
  return {
    quantity,
    number: t.place('number', 'Quantity as a number', rounded(over(quantity, unity('own')), 6)),
  };
}

/** Whether the planner states a quantity in a unit that does not measure it: then no other stands in for it. */
function isUnreadable(row: ItemFields): boolean {
  const stated = changedGiven(row, 'quantity', row.own);
  return stated !== undefined && stated.value === undefined;
}
