/** A number as a whole number over a power of ten. */
export interface Whole {
  readonly whole: number;
  readonly decimals: number;
}

/** Plain decimal text of a whole number over a power of ten, without zeros behind. */
export function textOfWhole(whole: number, decimals: number): string {
  if (whole === 0) return '0';
  if (decimals === 0) return String(whole);
  const digits = String(Math.abs(whole)).padStart(decimals + 1, '0');
  let end = digits.length;
  const cut = digits.length - decimals;
  while (end > cut && digits.charCodeAt(end - 1) === ZERO) end--;
  const sign = whole < 0 ? '-' : '';
  return end === cut
    ? sign + digits.slice(0, cut)
    : `${sign}${digits.slice(0, cut)}.${digits.slice(cut, end)}`;
}

const ZERO = 48;
/** Digits of which every number is exact in a double. */
const SAFE_DIGITS = 15;

const READ = new Map<string, Whole | undefined>();
const MOST_READ = 20_000;

/** Plain decimal text as a whole number over a power of ten; undefined when it has too many digits for a double. */
export function wholeOfText(text: string): Whole | undefined {
  if (READ.has(text)) return READ.get(text);
  const read = readWhole(text);
  if (READ.size < MOST_READ) READ.set(text, read);
  return read;
}

/** Whether a text was read before as a number that fits. */
export function isReadWhole(text: string): boolean {
  return READ.get(text) !== undefined;
}

function readWhole(text: string): Whole | undefined {
  const point = text.indexOf('.');
  const kept = point < 0 ? text : text.replace(/0+$/, '');
  const digits = kept.replace('.', '');
  if (digits.length > SAFE_DIGITS) return undefined;
  return { whole: Number(digits) + 0, decimals: point < 0 ? 0 : kept.length - 1 - point };
}
