import { roundText } from './rounding';
import { unitWords } from './unit-words';

/**
 * Decimal text with its thousands apart.
 * @example thousandsApart('26124.01') // '26,124.01'
 */
export function thousandsApart(text: string): string {
  const [whole = '', fraction] = text.split('.');
  const apart = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return fraction === undefined ? apart : `${apart}.${fraction}`;
}

/**
 * A figure as a sentence says it, its unit in words and dollars before the number, with both digits of the cents where
 * it has any, and a sign before all of it.
 * @example amountWords({ value: '10803', unit: 'USD/t' }) // '$10,803 per tonne'
 * @example amountWords({ value: '-5', unit: 'USD/h' }) // '−$5 per h'
 */
export function amountWords({ value, unit }: { readonly value: string; readonly unit: string }): string {
  if (value.startsWith('-')) return `\u2212${amountWords({ value: value.slice(1), unit })}`;
  const words = unitWords(unit);
  return words.startsWith('$')
    ? `$${thousandsApart(value.replace(/\.\d$/, '$&0'))}${words.slice(1)}`
    : `${thousandsApart(value)} ${words}`.trim();
}

/** A share as so many in a hundred: whole, but never 0 or 100 when it is neither. */
export function inHundred(share: number): string {
  if (share > 0 && share < 0.005) return 'fewer than 1';
  if (share < 1 && share >= 0.995) return 'more than 99';
  return roundText((share * 100).toFixed(6), 0);
}
