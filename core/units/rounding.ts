import { BugError } from '../base';

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

/** Decimals that leave about three digits of meaning: 1234 -> 0, 45.6 -> 1, 2.35 -> 2, 0.46 -> 3, 0.046 -> 4. */
export function decimalsFor(text: string): number {
  const size = Math.abs(Number(text));
  if (size >= 1000 || size === 0) return 0;
  if (size >= 100) return /\.\d*[1-9]/.test(text) ? 1 : 0;
  return size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4;
}
