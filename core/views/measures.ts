import type { Figure } from '../base';
import { convert, isConvertible, isUnit, quantity, type Unit } from '../units';
import { decimalsFor, roundText } from './number-text';

export type Measures = 'us' | 'metric';

/** The unit a reader of the one or the other system wants instead. What is not listed stays. */
const INSTEAD: Readonly<Record<Measures, Readonly<Record<string, Unit>>>> = {
  us: { m: 'ft', t: 'long-ton', m2: 'ft2', m3: 'ft3', kg: 'lb' },
  metric: {
    ft: 'm',
    'long-ton': 't',
    'short-ton': 't',
    ft2: 'm2',
    ft3: 'm3',
    gal: 'm3',
    bbl: 'm3',
    lb: 'kg',
  },
};

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

function wanted(unit: string, measures: Measures): string {
  return unit
    .split('/')
    .map(part => INSTEAD[measures][part] ?? part)
    .join('/');
}

export interface Measured {
  readonly value: string;
  readonly unit: string;
}

/** An amount in the reader's measures: as typed when the unit stays, else converted and rounded to be read. */
export function inMeasures(value: string, unit: string, measures: Measures): Measured {
  const to = wanted(unit, measures);
  if (to === unit || !isUnit(unit) || !isUnit(to) || !isConvertible(unit, to)) return { value, unit };
  const exact = convert(quantity(value, unit), to).value;
  return { value: roundText(exact, Math.max(decimalsFor(exact), 1)), unit: to };
}

/** A given number in the reader's measures, its range too. */
export function figureInMeasures(
  figure: Figure,
  measures: Measures,
): Measured & { readonly low?: string; readonly high?: string } {
  const range = (text: string | undefined) =>
    text === undefined ? undefined : inMeasures(text, figure.unit, measures).value;
  const low = range(figure.low);
  const high = range(figure.high);
  return {
    ...inMeasures(figure.value, figure.unit, measures),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  };
}
