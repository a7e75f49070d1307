import type { Finding } from '../../base';
import type { Project, Quote } from '../schema';
import { keyOf } from './cells';
import type { PriceRow } from './figures';
import type { ImportMapping } from './mapping';

type Override = Project['rates']['overrides'][number];

/** Prices as the document keeps them. */
export interface PriceEntries {
  readonly overrides: Override[];
  readonly quotes: Quote[];
  readonly findings: readonly Finding[];
}

/**
 * A price whose item is a place of the rate book, such as `streams/used-oil/unitPrice`, stands before the rate book.
 * Any other is a quote for the work item it names, not relied on until it is chosen; it needs the vendor and dates.
 */
export function priceEntries(rows: readonly PriceRow[], mapping: ImportMapping): PriceEntries {
  const overrides: Override[] = [];
  const quotes: Quote[] = [];
  const findings: Finding[] = [];
  rows.forEach((row, i) => {
    const { item, vendor, dated, validUntil, price } = row;
    // A quote is of its date.
    const { year: _year, ...amount } = price;
    if (item.includes('/')) overrides.push({ at: item, figure: price, note: mapping.title });
    else if (vendor !== '' && dated !== undefined && validUntil !== undefined)
      quotes.push({
        id: keyOf(`${vendor} ${item}`),
        vendor,
        dated,
        validUntil,
        covers: [{ item, share: '1' }],
        exclusions: [],
        amount,
        chosen: false,
        note: [row.title, row.quantity === undefined ? '' : `quantity ${row.quantity}`]
          .filter(part => part !== '')
          .join(', '),
      });
    else findings.push(incomplete(mapping, row, i));
  });
  return { overrides, quotes, findings };
}

function incomplete(mapping: ImportMapping, { item }: PriceRow, at: number): Finding {
  return {
    code: 'imports/quote-incomplete',
    weight: 'warns',
    place: `/imports/${mapping.id}/price-${at + 1}`,
    message: `The price for ${item} has no vendor, date or last day of validity.`,
    meaning: 'It is left out: nobody stands behind it.',
    remedy: 'Map the columns vendor, dated and validUntil, or give them once for the whole file.',
  };
}
