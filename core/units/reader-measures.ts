import { convert, isConvertible } from './convert';
import { quantity } from './quantity';
import { isUnit, type Unit } from './unit';

export type Measures = 'us' | 'metric';

/** An amount in plain decimal text with its unit. */
export interface Measured {
  readonly value: string;
  readonly unit: string;
}

/** The unit a reader of the one or the other system wants instead. What is not listed stays. */
const INSTEAD: Readonly<Record<Measures, Readonly<Record<string, Unit>>>> = {
  us: { m: 'ft', km: 'mi', t: 'long-ton', m2: 'ft2', m3: 'ft3', kg: 'lb' },
  metric: {
    ft: 'm',
    mi: 'km',
    'long-ton': 't',
    'short-ton': 't',
    ft2: 'm2',
    ft3: 'm3',
    gal: 'm3',
    bbl: 'm3',
    lb: 'kg',
  },
};

/** The unit in which a reader takes such amounts, however large they are. */
export function unitFor(unit: string, measures: Measures): string {
  return unit
    .split('/')
    .map(part => INSTEAD[measures][part] ?? part)
    .join('/');
}

/** The measures of those who write a length in this unit. */
export function measuresOf(unit: string): Measures {
  return unitFor(unit, 'us') === unit ? 'us' : 'metric';
}

/** An amount in another unit, as exact as it converts; as it is where it does not. */
export function converted(value: string, unit: string, to: string): Measured {
  if (to === unit || !isUnit(unit) || !isUnit(to) || !isConvertible(unit, to)) return { value, unit };
  return { value: convert(quantity(value, unit), to).value, unit: to };
}
