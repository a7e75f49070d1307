import { at } from '../../base';
import { dayOf, civilOf } from '../../calendar';
import { moneyText, type Money } from '../../money';
import { thousandsApart } from '../../units';
import { ABSENT } from '../workbook/cells';

/** An amount in dollars and cents with separators: `$4,702,024.24`; a credit with a true minus. */
export function dollarsAndCents(amount: Money | undefined): string {
  if (amount === undefined) return ABSENT;
  const [whole = '', cents = ''] = moneyText(amount).replace('-', '').split('.');
  return `${amount.cents < 0 ? '\u2212' : ''}$${thousandsApart(whole)}.${cents}`;
}

/** A difference with its sign: `+$1,200.00`. */
export function signedDollars(amount: Money): string {
  return amount.cents > 0 ? `+${dollarsAndCents(amount)}` : dollarsAndCents(amount);
}

/** A number with its separators, as many decimals as it has. */
export function numberWords(value: number | undefined): string {
  if (value === undefined) return ABSENT;
  return `${value < 0 ? '\u2212' : ''}${thousandsApart(String(Math.abs(value)))}`;
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A date in words: `July 7, 2029`. */
export function dateWords(iso: string | undefined): string {
  if (iso === undefined) return ABSENT;
  const { year, month, day } = civilOf(dayOf(iso));
  return `${monthName(month)} ${day}, ${year}`;
}

/** The name of a month, 1 to 12. */
export function monthName(month: number): string {
  return at(MONTHS, month - 1);
}

/** A month in words: `July 2029`. */
export function monthWords(month: string): string {
  const { year, month: number } = civilOf(dayOf(`${month}-01`));
  return `${monthName(number)} ${year}`;
}

/** A share in whole percent. */
export function percentWords(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** A number of dollars in whole dollars: `$5,324,476`. Simulated figures are not known to the cent. */
export function wholeDollars(dollars: number): string {
  return `${dollars < 0 ? '\u2212' : ''}$${thousandsApart(String(Math.round(Math.abs(dollars))))}`;
}
