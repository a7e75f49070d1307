import { readTypedDate } from '../calendar';
import { readTypedAmount } from '../units';
import type { Measures } from './measures';
import type { Edit } from './rows';

/** What was typed, as the document keeps it, or what is wrong with it. */
export type Typed = { readonly value: string } | { readonly fault: string };

const WHOLE = /^\d{1,9}$/;

/**
 * Reads what was typed into a field or a cell, by what the field asks for: a number in its unit or with another unit
 * behind it, a whole number, a date in the order of the reader's measures, or words as they are.
 * @example readTyped({ kind: 'figure', unit: 'm' }, '240 ft', 'us') // { value: '73.152' }
 */
export function readTyped(
  { kind, unit }: Pick<Edit, 'kind' | 'unit'>,
  text: string,
  measures: Measures,
): Typed {
  if (kind === 'figure' || kind === 'decimal') return kept(readTypedAmount(text, unit), 'value');
  if (kind === 'date') {
    const read = readTypedDate(text, measures === 'us');
    return 'date' in read ? { value: read.date } : kept(read, 'date');
  }
  if (kind !== 'whole') return { value: text };
  const digits = text.replace(/[,\s]/g, '');
  return WHOLE.test(digits)
    ? { value: digits }
    : kept({ fault: 'Write a whole number, such as 1968.' }, 'value');
}

/** A fault leaves what stood there. */
function kept(read: Typed, what: 'value' | 'date'): Typed {
  return 'fault' in read ? { fault: `${read.fault} The ${what} before still counts.` } : read;
}
