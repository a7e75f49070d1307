import type { Finding } from '../../base';
import { PLAIN_UNITS, UNIT_FACTORS, type PlainUnit } from '../../units';
import type { MappedRow } from './table';

/** What a price can be for one of. */
const PRICED: readonly PlainUnit[] = PLAIN_UNITS.filter(unit => unit !== 'USD' && unit !== '1');

const LUMP_SUM = /^(lump sum|lump|ls|l\.s\.|in all)$/;

/** Whether a price is for the whole of the work. */
export function isLumpSum(written: string): boolean {
  return LUMP_SUM.test(written.trim().toLowerCase());
}

/** What a price is for one of, with the sign of the money before it or not: `t`, `$/t`, `USD/t` and `per t` are the same. */
export function priceUnit(written: string): PlainUnit | undefined {
  const unit = written
    .trim()
    .toLowerCase()
    .replace(/^(?:us ?\$|\$|usd)\s*/, '')
    .replace(/^(?:\/|per\b)\s*/, '');
  return PRICED.find(one => one === unit || UNIT_FACTORS[one].words.toLowerCase() === unit);
}

/** A row whose price is for one of nothing that is known. */
export function unitNotKnown({ place, fields }: MappedRow): Finding {
  const { item = '', unit = '' } = fields;
  return {
    code: 'imports/unit-not-known',
    weight: 'warns',
    place,
    message: `The price for ${item} is for one “${unit.slice(0, 40)}”, which is no unit of a price.`,
    meaning: 'It is left out.',
    remedy: `Write one of these units, with “$/” before it or not, or “lump sum”: ${PRICED.join(', ')}.`,
  };
}
