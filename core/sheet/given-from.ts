import type { Figure } from '../base';
import { convert, isConvertible, isUnit, quantity, type Unit } from '../units';
import type { Given } from './given';

/** What makes a figure absent although it is written down: a unit that does not measure what is asked for. */
function inUnit(text: string | undefined, from: string, to: Unit): string | undefined {
  if (text === undefined || !isUnit(from) || !isConvertible(from, to)) return undefined;
  return convert(quantity(text, from), to).value;
}

/** What stands for the unit of a figure that is withheld: nothing is worked out from it. */
export const NOT_USED = 'not used';

/** Givens already made, by their figure: templates are read again and again, and neither ever changes. */
const MADE = new WeakMap<Figure, Given[]>();
const MADE_BARE = new WeakMap<Figure, Given[]>();

/**
 * A figure of a template or document as a given of a sheet, in the unit the sheet calculates in. What was typed stays
 * beside it. A figure in a unit that does not convert is absent, so that nothing is worked out from it.
 * @param place where it is held, such as `/vessel/length`.
 */
export function givenFrom(figure: Figure, unit: Unit, place?: string): Given {
  return kept(figure, unit, place, false);
}

/** The number of a figure in its own unit, whatever that is, as a plain number: the unit stands in `typed`. */
export function bareGiven(figure: Figure, place?: string): Given {
  return kept(figure, '1', place, true);
}

function kept(figure: Figure, unit: Unit, place: string | undefined, isBare: boolean): Given {
  const all = isBare ? MADE_BARE : MADE;
  const made = all.get(figure) ?? [];
  const known = made.find(given => given.unit === unit && given.place === place);
  if (known !== undefined) return known;
  const given = make(figure, unit, place, isBare);
  all.set(figure, [...made, given]);
  return given;
}

function make(figure: Figure, unit: Unit, place: string | undefined, isBare: boolean): Given {
  const { value, low, high, basis, source, year } = figure;
  const bare = (text: string | undefined) => (figure.unit === NOT_USED ? undefined : text);
  const read = (text: string | undefined) => (isBare ? bare(text) : inUnit(text, figure.unit, unit));
  const [lowest, highest] = [read(low), read(high)];
  return {
    value: read(value),
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

const NOT_APPLYING = new Map<string, Given>();

/** A given that does not apply in a row: nothing, or a factor of one. It changes no figure and weighs on no basis. */
export function notApplying(value: '0' | '1', unit: Unit): Given {
  const key = `${value} ${unit}`;
  const known = NOT_APPLYING.get(key);
  if (known !== undefined) return known;
  const given: Given = {
    value,
    unit,
    basis: 'common practice',
    source: 'does not apply here',
    neutral: true,
  };
  NOT_APPLYING.set(key, given);
  return given;
}
