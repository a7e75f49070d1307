import { BugError } from '../base';
import { isDecimalText } from '../units';
import { Exact, exactOfText, type Value } from './decimal';
import type { Given } from './given';
import type { SheetUnit } from './unit';

/** One entry of a look-up table: key as decimal text, what it is called, and the value given for it. */
export interface LookUpEntry {
  readonly key: string;
  readonly title: string;
  readonly given: Given;
}

/** A look-up table: values by an ascending numeric key, such as an index by month or a fee by length. */
export interface LookUp<K extends SheetUnit = SheetUnit, U extends SheetUnit = SheetUnit> {
  readonly id: string;
  readonly title: string;
  readonly keyUnit: K;
  readonly unit: U;
  readonly entries: readonly LookUpEntry[];
  readonly sheet: object;
}

/** @throws BugError when keys are not plain decimals in ascending order, or a value has another unit. */
export function checkLookUp(table: LookUp): void {
  table.entries.forEach((entry, i) => {
    const before = table.entries[i - 1];
    if (!isDecimalText(entry.key))
      throw new BugError(`${table.id}: key "${entry.key}" is not a plain number`);
    if (before && new Exact(before.key).gte(entry.key))
      throw new BugError(`${table.id}: keys must ascend, but ${before.key} comes before ${entry.key}`);
    if (entry.given.unit !== table.unit)
      throw new BugError(`${table.id}: entry ${entry.key} is in ${entry.given.unit}, not in ${table.unit}`);
  });
}

/** The value of an entry; absent beyond the table and where none is given. */
export function entryValue(table: LookUp, entry: number | undefined): Value {
  const text = entry === undefined ? undefined : table.entries[entry]?.given.value;
  return text === undefined ? undefined : exactOfText(text);
}
