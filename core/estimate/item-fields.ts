import type { Figure } from '../base';
import { bareGiven, givenFrom, notApplying, type Given } from '../sheet';
import { isPlainUnit, isUnit, type PlainUnit, type Unit } from '../units';
import type { Driver, WorkItem } from '../work';
import type { Adjustment, EstimateInput } from './inputs';

/** The figures of an item that the estimate reads, as givens in the unit of the item. */
export interface ItemFields {
  readonly item: WorkItem;
  readonly own: PlainUnit;
  readonly change: Adjustment | undefined;
}

/** Items with their own unit and what the planner changed. */
export function itemFields(items: readonly WorkItem[], input: EstimateInput): ItemFields[] {
  const units = new Map(input.library.drivers.map(driver => [driver.id, unitOf(driver)]));
  return items.map(item =>
    fieldsOf(item, ownUnit(item, units.get(item.driver)), input.adjustments.get(item.id)),
  );
}

const FIELDS = new WeakMap<WorkItem, ItemFields>();

/** The fields of an item; the same object as before when it, its unit and its change are. */
function fieldsOf(item: WorkItem, own: PlainUnit, change: Adjustment | undefined): ItemFields {
  const known = FIELDS.get(item);
  if (known !== undefined && known.own === own && known.change === change) return known;
  const fields = { item, own, change };
  FIELDS.set(item, fields);
  return fields;
}

/** What one of an item is: of a time-dependent one a day or month, of a haul a tonne, else one of its driver. */
function ownUnit(item: WorkItem, driver: PlainUnit | undefined): PlainUnit {
  if (item.span !== undefined) return item.span.unit;
  return item.disposes === undefined ? (driver ?? '1') : 't';
}

function unitOf(driver: Driver): PlainUnit {
  return isPlainUnit(driver.unit) ? driver.unit : '1';
}

/** Where the library holds a field of an item, or the document its change. */
export function placeOf({ item }: ItemFields, field: string, changed = false): string {
  return changed ? `/items/${item.id}/${field}` : `templates/work/${item.stage}/${item.id}/${field}`;
}

/** A figure of the item in a unit, or what stands for one that does not apply. */
export function fieldGiven(
  row: ItemFields,
  field: string,
  figure: Figure | undefined,
  unit: Unit,
  absent: '0' | '1',
): Given {
  return figure === undefined ? notApplying(absent, unit) : givenFrom(figure, unit, placeOf(row, field));
}

/** The bare number of a figure of the item, or what stands for one that does not apply. */
export function bareField(
  row: ItemFields,
  field: string,
  figure: Figure | undefined,
  absent: '0' | '1',
): Given {
  return figure === undefined ? notApplying(absent, '1') : bareGiven(figure, placeOf(row, field));
}

/** A rate for one of the item's own unit, such as `h/m2`. */
export function perOwn(top: PlainUnit, row: ItemFields): Unit {
  const unit = `${top}/${row.own}`;
  return isUnit(unit) ? unit : '1';
}

/** A figure the planner set in place of the library's, when there is one. */
export function changedGiven(
  row: ItemFields,
  field: 'quantity' | 'hoursPerUnit' | 'crewsAtOnce' | 'duration',
  unit: Unit,
): Given | undefined {
  const figure = row.change?.[field];
  return figure && givenFrom(figure, unit, placeOf(row, field, true));
}
