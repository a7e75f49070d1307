import type { WhyStep } from '../sheet';
import { decimalsFor, printed, roundText } from './number-text';
import type { Shown } from './rows';

function decimalsOf(value: string, unit: string): number {
  return unit === 'USD' ? 2 : Math.max(decimalsFor(value), /\./.test(value) ? 2 : 0);
}

/** A value of a step as text, with more decimals than usual where `least` asks for them. */
export function valueText(
  value: string | undefined,
  unit: string,
  least = 0,
): Pick<Shown, 'text' | 'absent'> {
  if (value === undefined) return { text: 'not yet', absent: true };
  const text = roundText(value, Math.max(least, decimalsOf(value, unit)));
  return { text: printed(unit !== 'USD' && text.includes('.') ? text.replace(/\.?0+$/, '') : text) };
}

/** Whether a value is nothing, however many decimals it has. */
export function isNothing(value: string | undefined): boolean {
  return value !== undefined && /^-?0(\.0*)?$/.test(value);
}

/** Most decimals of a factor. */
const MOST_DECIMALS = 10;

/**
 * Decimals that a factor needs so that the factors as they are shown, multiplied or divided by hand, give the result
 * as it is shown: all of them together move it by half of its last digit at most.
 */
export function factorDecimals({ value, unit }: WhyStep, of: WhyStep, count: number): number {
  if (value === undefined || of.value === undefined || unit === 'USD' || isNothing(value)) return 0;
  const isFactor = of.operation === 'product' || of.operation === 'quotient';
  if (!isFactor) return 0;
  const most = 10 ** -decimalsOf(of.value, of.unit) / (2 * count);
  const moved = (decimals: number) =>
    Math.abs((Number(roundText(value, decimals)) / Number(value) - 1) * Number(of.value));
  let decimals = decimalsOf(value, unit);
  while (decimals < MOST_DECIMALS && moved(decimals) > most) decimals += 1;
  return decimals;
}
