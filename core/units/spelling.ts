import { PLAIN_UNITS, isPlainUnit, isUnit, type PlainUnit, type Unit } from './unit';

/** How people write the units. Names that could mean two units are left out on purpose; see AMBIGUOUS. */
const SPELLINGS: Readonly<Record<PlainUnit, readonly string[]>> = {
  USD: ['$', 'us$', 'dollar', 'dollars', 'us dollars'],
  h: ['hr', 'hrs', 'hour', 'hours', 'man-hours', 'labour hours'],
  'work-day': ['work day', 'work days', 'workday', 'workdays', 'working days'],
  day: ['calendar day', 'calendar days'],
  month: ['months', 'mo'],
  year: ['years', 'yr', 'yrs'],
  m: ['metre', 'metres', 'meter', 'meters'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
  km: ['kilometre', 'kilometres', 'kilometer', 'kilometers'],
  ft: ['foot', 'feet', "'"],
  mi: ['statute mile', 'statute miles'],
  nmi: ['nm', 'nautical mile', 'nautical miles'],
  kn: ['knot', 'knots', 'kt', 'kts'],
  m2: ['m²', 'm^2', 'sq m', 'sqm', 'square metres', 'square meters'],
  ft2: ['ft²', 'ft^2', 'sq ft', 'sqft', 'square feet'],
  m3: ['m³', 'm^3', 'cu m', 'cubic metres', 'cubic meters'],
  ft3: ['ft³', 'ft^3', 'cu ft', 'cubic feet'],
  gal: ['us gal', 'gallon', 'gallons', 'us gallons'],
  bbl: ['barrel', 'barrels'],
  kg: ['kilogram', 'kilograms', 'kilo', 'kilos'],
  lb: ['lbs', 'pound', 'pounds'],
  t: ['tonne', 'tonnes', 'metric ton', 'metric tons', 'mt'],
  'long-ton': ['lt', 'long ton', 'long tons', 'ldt'],
  'short-ton': ['short ton', 'short tons'],
  each: ['ea', 'pieces', 'pcs', 'no.'],
  person: ['persons', 'people'],
  '1': [],
};

/** Words that name more than one unit, and what to write instead. */
const AMBIGUOUS = new Map(
  Object.entries({
    ton: 'long tons, short tons or tonnes',
    tons: 'long tons, short tons or tonnes',
    st: 'short tons',
    day: 'work days or calendar days',
    days: 'work days or calendar days',
    d: 'work days or calendar days',
    mile: 'statute miles (mi) or nautical miles (nmi)',
    miles: 'statute miles (mi) or nautical miles (nmi)',
    '%': 'a share such as 0.15',
  }),
);

const BY_SPELLING: ReadonlyMap<string, PlainUnit> = new Map(
  PLAIN_UNITS.flatMap(unit => SPELLINGS[unit].map((word): [string, PlainUnit] => [word, unit])),
);

/** What a written unit means: the unit, or the words to choose from, or nothing known. */
export type SpelledUnit = { readonly unit: Unit } | { readonly choose: string } | 'unknown';

/** The unit that a written word means; `tons` and `days` are refused because they name several. */
export function spelledUnit(written: string): SpelledUnit {
  const text = written.trim().toLowerCase().replace(/\s+/g, ' ');
  const choose = AMBIGUOUS.get(text);
  if (choose !== undefined) return { choose };
  const plain = plainUnit(text);
  if (plain !== undefined) return { unit: plain };
  const [top, bottom, ...rest] = text.split(/\s*(?:\/| per )\s*/);
  if (top === undefined || bottom === undefined || rest.length > 0) return 'unknown';
  const chooseBottom = AMBIGUOUS.get(bottom);
  if (chooseBottom !== undefined) return { choose: chooseBottom };
  const rate = `${plainUnit(top) ?? '?'}/${plainUnit(bottom) ?? '?'}`;
  return isUnit(rate) ? { unit: rate } : 'unknown';
}

function plainUnit(text: string): PlainUnit | undefined {
  if (text === 'usd') return 'USD';
  return isPlainUnit(text) && text !== 'day' ? text : BY_SPELLING.get(text);
}
