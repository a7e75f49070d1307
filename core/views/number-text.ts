import { BugError } from '../base';
import { thousandsApart } from '../units';

/** A true minus, as figures are printed. */
const MINUS = '\u2212';
/** Does not apply. */
export const DASH = '–';

/**
 * Rounds decimal text to a number of decimals, half away from zero, exactly.
 * @example roundText('2.345', 2) // '2.35'
 */
export function roundText(text: string, decimals: number): string {
  const found = /^(-?)(\d*)(?:\.(\d*))?$/.exec(text);
  if (found === null) throw new BugError(`"${text}" is not plain decimal text`);
  const [, sign = '', whole = '', fraction = ''] = found;
  const kept = fraction.slice(0, decimals).padEnd(decimals, '0');
  const isUp = (fraction[decimals] ?? '0') >= '5';
  const scaled = BigInt(`${whole === '' ? '0' : whole}${kept}`) + (isUp ? 1n : 0n);
  const digits = scaled.toString().padStart(decimals + 1, '0');
  const point = digits.length - decimals;
  const rounded = decimals === 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`;
  return scaled === 0n || sign === '' ? rounded : `-${rounded}`;
}

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

/** Decimals that leave about three digits of meaning: 1234 -> 0, 45.6 -> 1, 2.35 -> 2, 0.46 -> 3, 0.046 -> 4. */
export function decimalsFor(text: string): number {
  const size = Math.abs(Number(text));
  if (size >= 1000 || size === 0) return 0;
  if (size >= 100) return /\.\d*[1-9]/.test(text) ? 1 : 0;
  return size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4;
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
