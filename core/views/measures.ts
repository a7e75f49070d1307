import type { Figure } from '../base';
import { convert, isConvertible, isUnit, quantity, type Unit } from '../units';
import { decimalsFor, roundText } from './number-text';

export { unitWords } from '../units';

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

/** An amount in the reader's measures, as exact as it converts. */
export function exactIn(value: string, unit: string, measures: Measures): Measured {
  const to = wanted(unit, measures);
  if (to === unit || !isUnit(unit) || !isUnit(to) || !isConvertible(unit, to)) return { value, unit };
  return { value: convert(quantity(value, unit), to).value, unit: to };
}

/** An amount in the reader's measures: as typed when the unit stays, else converted and rounded to be read. */
export function inMeasures(value: string, unit: string, measures: Measures): Measured {
  const exact = exactIn(value, unit, measures);
  if (exact.unit === unit) return exact;
  return { value: roundText(exact.value, Math.max(decimalsFor(exact.value), 1)), unit: exact.unit };
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
