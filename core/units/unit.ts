import { at, BugError } from '../base';

/**
 * The plain units of the program: a closed list, so that a misspelt unit does not compile. Long ton, short
 * ton and tonne (`t`) are three different units and never mix; `day` is a calendar day, `work-day` a day of
 * a work calendar; `1` is a share or a factor, `each` a count of things.
 */
export const PLAIN_UNITS = [
  'USD',
  'h',
  'work-day',
  'day',
  'month',
  'year',
  'm',
  'mm',
  'km',
  'ft',
  'mi',
  'nmi',
  'kn',
  'm2',
  'ft2',
  'm3',
  'ft3',
  'gal',
  'bbl',
  'kg',
  'lb',
  't',
  'long-ton',
  'short-ton',
  'each',
  'person',
  '1',
] as const;

export type PlainUnit = (typeof PLAIN_UNITS)[number];

/** A rate of one plain unit for another, such as `USD/h` or `h/m2`. */
export type RateUnit = `${PlainUnit}/${PlainUnit}`;

export type Unit = PlainUnit | RateUnit;

const PLAIN: ReadonlySet<string> = new Set(PLAIN_UNITS);

/** Whether a text is one of the plain units. */
export function isPlainUnit(text: string): text is PlainUnit {
  return PLAIN.has(text);
}

/** Whether a text is a plain unit or a rate of two. */
export function isUnit(text: string): text is Unit {
  const parts = text.split('/');
  return parts.length <= 2 && parts.every(isPlainUnit);
}

/** The parts of a unit: `['USD', 'h']` for `USD/h`, `['m', undefined]` for `m`. */
export function unitParts(unit: Unit): readonly [PlainUnit, PlainUnit | undefined] {
  const parts = unit.split('/').map(plainUnit);
  return [at(parts, 0), parts[1]];
}

function plainUnit(text: string): PlainUnit {
  const found = PLAIN_UNITS.find(unit => unit === text);
  if (found === undefined) throw new BugError(`${text} is not a unit`);
  return found;
}
