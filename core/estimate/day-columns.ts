import {
  bareGiven,
  link,
  maximum,
  none,
  over,
  priced,
  quoted,
  rounded,
  scaled,
  unity,
  wholeUp,
  when,
  type Recipe,
  type Step,
  type Table,
} from '../sheet';
import type { Figure } from '../base';
import { flagOf } from './condition-sets';
import type { DriverColumns } from './driver-tables';
import type { HourColumns } from './hour-columns';
import { bareField, type ItemFields } from './item-fields';

/**
 * How long an item takes, in whole days: the time it is given (permits, notices, tows), or its hours over crews,
 * people and shift. The count is of work days, or of calendar days where the time is given in days.
 */
export function dayColumns(
  t: Recipe<ItemFields>,
  work: HourColumns,
  shiftHours: Step<'h/work-day'>,
  drivers: Table<DriverColumns>,
): Step<'1'> {
  const stated = t.field('days-stated', 'Days given', '1', statedDays, []);
  const key = t.key('days-driver', 'Days scale from (key)', row => daysDriver(row) ?? NO_DRIVER, []);
  const scales = t.field('days-scale', 'Days scale', '1', row => flagOf(daysDriver(row) !== undefined), []);
  const found = t.place('days-base-found', 'Days scale from (found)', link(key, drivers.columns.number));
  const base = t.place('days-base', 'Days scale from', when(scales, found, none('1')));
  const perUnit = t.field(
    'days-per-unit',
    'Days for one',
    '1',
    row => bareField(row, 'duration', perUnitDays(row), '0'),
    [],
  );
  const scaledDays = t.place(
    'days-scaled',
    'Days by the driver',
    wholeUp(rounded(scaled(perUnit, base), 6), 4),
  );
  const people = maximum(unity('1'), rounded(over(scaled(work.people, work.crews), unity('person')), 4));
  const daily = t.place(
    'hours-a-day',
    'Hours a day',
    rounded(scaled(over(priced(unity('work-day'), shiftHours), unity('h')), people), 4),
  );
  const byHours = t.place(
    'days-by-hours',
    'Days by the hours',
    wholeUp(over(rounded(over(work.hours, unity('h')), 4), daily), 4),
  );
  return t.place('days', 'Days', quoted(stated, maximum(scaledDays, byHours)));
}

const NO_DRIVER = 'no-driver';

function daysDriver({ item }: ItemFields): string | undefined {
  return item.duration !== undefined && 'driver' in item.duration ? item.duration.driver : undefined;
}

function perUnitDays({ item }: ItemFields): Figure | undefined {
  return item.duration !== undefined && 'perUnit' in item.duration ? item.duration.perUnit : undefined;
}

/** Days that the planner or the library gives outright, whole. */
function statedDays(row: ItemFields) {
  const figure =
    row.change?.duration ??
    (row.item.duration !== undefined && 'value' in row.item.duration ? row.item.duration : undefined);
  return figure && bareGiven(figure, `/items/${row.item.id}/duration`);
}

/** Whether an item's days are calendar days. */
export function inCalendarDays(row: ItemFields): boolean {
  const figure = row.change?.duration ?? row.item.duration;
  if (figure === undefined) return false;
  const unit = 'value' in figure ? figure.unit : figure.perUnit.unit;
  return unit === 'day' || unit.startsWith('day/');
}
