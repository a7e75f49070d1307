import type { Finding } from '../base';
import type { MoneySheet } from '../estimate';
import { idOf, sheetFindings } from '../sheet';

/** What a ship and her place are given by: what else is absent may follow from them. */
const GIVEN = /^\/(vessel|site|calendars|options|survey|contingency|rates)\b/;

/**
 * Why there is no total. Where a given of the ship or of her place is missing, that is told alone, and not the other
 * ways in which each line might have had its quantity; where it is beyond its limits, it is told so, not as missing.
 * @param checked what was found in the project before anything was worked out.
 */
export function absentCauses({ result, sums }: MoneySheet, checked: readonly Finding[]): Finding[] {
  const causes = sheetFindings(result, [idOf(sums.total)]);
  const ofGivens = causes.filter(({ place }) => GIVEN.test(place));
  if (ofGivens.length === 0) return causes;
  const told = checked.filter(({ weight }) => weight === 'blocks').map(({ place }) => place);
  return ofGivens.filter(({ place }) => !told.some(at => at === place || at.startsWith(`${place}/`)));
}
