import type { Finding } from '../../base';
import { keyOf } from './cells';
import type { Imported, PriceRow } from './figures';
import type { ImportMapping } from './mapping';

interface Item {
  readonly id: string;
  readonly title: string;
}

/**
 * The rows of a price list under the work items they price: a row names an item by its key, or by its title when no
 * other item has it, in capitals or not. A place of the rate book stays as it is. What names no item, or more than one,
 * is left out with a finding.
 */
export function underItems(
  read: Imported<PriceRow>,
  mapping: ImportMapping,
  items: readonly Item[],
): Imported<PriceRow> {
  const rows: PriceRow[] = [];
  const findings: Finding[] = [...read.findings];
  for (const row of read.rows) {
    const named = row.item.includes('/') ? [row.item] : itemsNamed(row.item, items);
    const [item, ...others] = named;
    if (item === undefined) findings.push(notKnown(row, mapping));
    else if (others.length > 0) findings.push(ambiguous(row, mapping, named));
    else rows.push({ ...row, item });
  }
  return { rows, findings };
}

function itemsNamed(written: string, items: readonly Item[]): readonly string[] {
  if (items.some(({ id }) => id === written)) return [written];
  return items.filter(({ title }) => keyOf(title) === keyOf(written)).map(({ id }) => id);
}

function notKnown({ item }: PriceRow, mapping: ImportMapping): Finding {
  return {
    code: 'imports/item-not-known',
    weight: 'warns',
    place: `/imports/${mapping.id}`,
    message: `The project has no work item "${item}".`,
    meaning: 'Its price is left out.',
    remedy:
      'Write the title of the work item as the Work view has it, or say in the words of the mapping which it is.',
  };
}

function ambiguous({ item }: PriceRow, mapping: ImportMapping, named: readonly string[]): Finding {
  return {
    code: 'imports/item-not-unique',
    weight: 'warns',
    place: `/imports/${mapping.id}`,
    message: `${named.length} work items are called "${item}".`,
    meaning: 'Its price is left out: nobody can tell which is meant.',
    remedy: `Write the key of the one that is meant: ${named.join(', ')}.`,
  };
}
