import type { Figure } from '../base';
import { amountIn, converted, quantity, unitFor, type Measured, type Measures, type Unit } from '../units';
import { decimalsFor, roundText } from './number-text';

export { unitFor, unitWords, type Measured, type Measures } from '../units';

/** Metres from which a length is a road and no longer a ship: told in miles or kilometres. */
const ROAD_METRES = 5000;
const BY_ROAD: Readonly<Record<Measures, Unit>> = { us: 'mi', metric: 'km' };

function wanted(value: string, unit: string, measures: Measures): string {
  if ((unit === 'm' || unit === 'ft') && Math.abs(amountIn(quantity(value, unit), 'm')) >= ROAD_METRES)
    return BY_ROAD[measures];
  return unitFor(unit, measures);
}

/** An amount in the reader's measures, as exact as it converts. */
export function exactIn(value: string, unit: string, measures: Measures): Measured {
  return converted(value, unit, wanted(value, unit, measures));
}

/** An amount in the reader's measures: as typed when the unit stays, else converted and rounded to be read. */
export function inMeasures(value: string, unit: string, measures: Measures): Measured {
  return readable(value, unit, wanted(value, unit, measures));
}

/** The same of an amount on the ship, in one unit however long it is: a cable of miles is told in feet, as it is typed. */
export function onShip(value: string, unit: string, measures: Measures): Measured {
  return readable(value, unit, unitFor(unit, measures));
}

/** An amount in a unit that was chosen before, rounded to be read; as it is where it does not convert. */
export function readable(value: string, unit: string, to: string): Measured {
  const exact = converted(value, unit, to);
  if (exact.unit === unit) return exact;
  return { value: roundText(exact.value, readableDecimals(exact)), unit: exact.unit };
}

/** Roads of ten miles or kilometres and more are told in whole ones. */
function readableDecimals({ value, unit }: Measured): number {
  if (unit === 'mi' || unit === 'km') return Math.abs(Number(value)) < 10 ? 1 : 0;
  return Math.max(decimalsFor(value), 1);
}

/** A given number in the reader's measures, its range too. */
export function figureInMeasures(
  figure: Figure,
  measures: Measures,
): Measured & { readonly low?: string; readonly high?: string } {
  const to = wanted(figure.value, figure.unit, measures);
  const range = (text: string | undefined) =>
    text === undefined ? undefined : readable(text, figure.unit, to).value;
  const low = range(figure.low);
  const high = range(figure.high);
  return {
    ...readable(figure.value, figure.unit, to),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  };
}
