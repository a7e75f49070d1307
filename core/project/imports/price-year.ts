import type { Figure, Finding } from '../../base';
import type { ImportMapping } from './mapping';

/** Rates of which nothing says of what year they are: asked once for the whole file, since they count all the same. */
export function withoutYear(
  rates: readonly { readonly figure: Figure }[],
  mapping: ImportMapping,
  bookYear: number,
): Finding[] {
  const count = rates.filter(({ figure }) => figure.year === undefined).length;
  if (count === 0) return [];
  const [rateOf, they] =
    count === 1 ? ['1 rate is of no year', 'It counts'] : [`${count} rates are of no year`, 'They count'];
  return [
    {
      code: 'imports/no-price-year',
      weight: 'warns',
      place: `/imports/${mapping.id}`,
      message: `${rateOf}.`,
      meaning: `${they} as prices of ${bookYear}, the year of the rate book, and are brought to the price date from there.`,
      remedy: 'Choose the column of the price year, or write the year for the whole file.',
    },
  ];
}
