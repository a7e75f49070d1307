import { at } from '../../base';
import type { BookBasis } from './book-lines';

/** From each price year the index has to the price date of the estimate. */
export function priceFactors({ parts }: BookBasis): Readonly<Record<number, number>> {
  const { result } = parts.money;
  const years = at(parts.input.library.indices.indices, 0).years;
  return Object.fromEntries(
    years.flatMap(({ year }) => {
      const id = `years/y${year}/factor`;
      const factor = result.has(id) ? result.figure(id).number : undefined;
      return factor === undefined ? [] : [[year, factor]];
    }),
  );
}
