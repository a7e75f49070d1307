import type { Figure } from '../base';
import { convert, isConvertible, isUnit, quantity, type Unit } from '../units';
import type { Given } from './given';

/** What makes a figure absent although it is written down: a unit that does not measure what is asked for. */
function inUnit(text: string | undefined, from: string, to: Unit): string | undefined {
  if (text === undefined || !isUnit(from) || !isConvertible(from, to)) return undefined;
  return convert(quantity(text, from), to).value;
}

/**
 * A figure of a template or document as a given of a sheet, in the unit the sheet calculates in. What was typed stays
 * beside it. A figure in a unit that does not convert is absent, so that nothing is worked out from it.
 * @param place where it is held, such as `/vessel/length`.
 */
export function givenFrom(figure: Figure, unit: Unit, place?: string): Given {
  const { value, low, high, basis, source, year } = figure;
  const [lowest, highest] = [inUnit(low, figure.unit, unit), inUnit(high, figure.unit, unit)];
  return {
    value: inUnit(value, figure.unit, unit),
    unit,
    basis,
    source,
    ...(year === undefined ? {} : { year }),
    ...(lowest === undefined ? {} : { low: lowest }),
    ...(highest === undefined ? {} : { high: highest }),
    ...(figure.unit === unit ? {} : { typed: `${value} ${figure.unit}` }),
    ...(place === undefined ? {} : { place }),
  };
}

/** A given that does not apply in a row: nothing, or a factor of one. It changes no figure and weighs on no basis. */
export function notApplying(value: '0' | '1', unit: Unit): Given {
  return { value, unit, basis: 'common practice', source: 'does not apply here', neutral: true };
}
