import type { PlainUnit } from './unit';

/** How a plain unit is measured: what it measures, and how much of that dimension's base unit one of it is. */
export interface UnitFactor {
  /** Only units of the same dimension convert into one another. */
  readonly dimension: string;
  /** Exact, as decimal text. */
  readonly factor: string;
  readonly words: string;
  readonly source: string;
}

const DEFINITION = 'definition of the dimension in this program';
const SP811 = 'NIST SP 811 (2008), Appendix B.8 and B.9, exact factor';
const HB44 = 'NIST Handbook 44, Appendix C, General Tables of Units of Measurement, exact by definition';

const unit = (dimension: string, factor: string, words: string, source: string): UnitFactor => ({
  dimension,
  factor,
  words,
  source,
});

/**
 * The exact factors. A work day, a month and a calendar day are dimensions of their own against hours where
 * only a calendar can convert them.
 * @source NIST Special Publication 811 (2008) Appendix B; NIST Handbook 44 Appendix C (gallon 231 cubic
 * inches, petroleum barrel 42 gallons, long ton 2240 lb, short ton 2000 lb).
 */
export const UNIT_FACTORS: Readonly<Record<PlainUnit, UnitFactor>> = {
  USD: unit('money', '1', 'US dollars', DEFINITION),
  h: unit('time', '1', 'hours', DEFINITION),
  day: unit('time', '24', 'calendar days', SP811),
  'work-day': unit('work time', '1', 'work days', DEFINITION),
  month: unit('calendar', '1', 'months', DEFINITION),
  year: unit('calendar', '12', 'years', DEFINITION),
  m: unit('length', '1', 'metres', DEFINITION),
  mm: unit('length', '0.001', 'millimetres', SP811),
  km: unit('length', '1000', 'kilometres', SP811),
  ft: unit('length', '0.3048', 'feet', SP811),
  mi: unit('length', '1609.344', 'statute miles', SP811),
  nmi: unit('length', '1852', 'nautical miles', SP811),
  kn: unit('speed', '1', 'knots', SP811),
  m2: unit('area', '1', 'square metres', DEFINITION),
  ft2: unit('area', '0.09290304', 'square feet', SP811),
  m3: unit('volume', '1', 'cubic metres', DEFINITION),
  ft3: unit('volume', '0.028316846592', 'cubic feet', HB44),
  gal: unit('volume', '0.003785411784', 'US gallons', HB44),
  bbl: unit('volume', '0.158987294928', 'petroleum barrels', HB44),
  kg: unit('mass', '1', 'kilograms', DEFINITION),
  lb: unit('mass', '0.45359237', 'pounds', SP811),
  t: unit('mass', '1000', 'tonnes', SP811),
  'long-ton': unit('mass', '1016.0469088', 'long tons', HB44),
  'short-ton': unit('mass', '907.18474', 'short tons', HB44),
  each: unit('count', '1', 'each', DEFINITION),
  person: unit('people', '1', 'persons', DEFINITION),
  '1': unit('factor', '1', '', DEFINITION),
};
