const WORDS: Readonly<Record<string, string>> = {
  'long-ton': 'long tons',
  'short-ton': 'short tons',
  t: 'tonnes',
  m2: 'm²',
  m3: 'm³',
  ft2: 'sq ft',
  ft3: 'cu ft',
  'work-day': 'work days',
  day: 'calendar days',
  month: 'months',
  year: 'years',
  each: '',
  '1': '',
  person: 'people',
  USD: '$',
};

const SINGULAR: Readonly<Record<string, string>> = {
  'long-ton': 'long ton',
  'short-ton': 'short ton',
  t: 'tonne',
  'work-day': 'work day',
  day: 'calendar day',
  month: 'month',
  year: 'year',
  person: 'person',
};

/** A unit in words: `long tons`, `h per sq ft`, `$ per h`. */
export function unitWords(unit: string): string {
  const [top = '', bottom] = unit.split('/');
  const above = WORDS[top] ?? top;
  if (bottom === undefined) return above;
  if (bottom === 'each' || bottom === '1') return `${above} each`;
  return `${above} per ${SINGULAR[bottom] ?? WORDS[bottom] ?? bottom}`.trim();
}

/** A unit in words after a number of it: `1 year`, `5 years`. */
export function countedUnit(unit: string, value: number): string {
  return value === 1 ? (SINGULAR[unit] ?? unitWords(unit)) : unitWords(unit);
}
