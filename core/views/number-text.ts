import { BugError } from '../base';
import { decimalsFor, roundText, thousandsApart } from '../units';

export { decimalsFor, roundText };

/** A true minus, as figures are printed. */
const MINUS = '\u2212';
/** Does not apply. */
export const DASH = '–';

/** Plain decimal text of a double that the float parts of the engine give, at a number of decimals. */
export function textOf(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new BugError(`${value} cannot be shown`);
  return roundText(value.toFixed(Math.min(decimals + 6, 20)), decimals);
}

/** Decimal text as it is printed: thousands separated, a true minus. */
export function printed(text: string): string {
  const isNegative = text.startsWith('-');
  return `${isNegative ? MINUS : ''}${thousandsApart(isNegative ? text.slice(1) : text)}`;
}

/** Rounded and printed. */
export function shownNumber(text: string, decimals: number): string {
  return printed(roundText(text, decimals));
}

/** A whole number of tenths as it is printed: `12.5`, `−0.5`. */
export function tenthsText(tenths: number): string {
  return shownNumber((tenths / 10).toFixed(1), 1);
}

/** Three digits of meaning without empty decimals: for rates and factors. */
export function shortNumber(text: string): string {
  const rounded = roundText(text, decimalsFor(text));
  return printed(rounded.includes('.') ? rounded.replace(/\.?0+$/, '') : rounded);
}

/** Dollars of whole cents, rounded to whole dollars: `$2,557,747`. */
export function dollars(cents: number): string {
  const text = roundText((cents / 100).toFixed(2), 0);
  return text.startsWith('-') ? `${MINUS}$${printed(text.slice(1))}` : `$${printed(text)}`;
}

/** A change of money: always with its sign, `no change` for none. */
export function dollarChange(cents: number): string {
  const text = dollars(cents);
  if (text === '$0') return 'no change';
  return text.startsWith(MINUS) ? text : `+${text}`;
}

/** Hidden digits that line texts of a column up on the decimal. */
export function padsOf(texts: readonly string[]): readonly string[] {
  const fractions = texts.map(
    text => /\.(\d+)$/.exec(text)?.[1]?.length ?? (/\d$/.test(text) ? 0 : undefined),
  );
  const most = Math.max(0, ...fractions.map(count => count ?? 0));
  return fractions.map(count =>
    count === undefined || count === most
      ? ''
      : count === 0
        ? `.${'0'.repeat(most)}`
        : '0'.repeat(most - count),
  );
}
