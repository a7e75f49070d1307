import type { Edit } from '../../core/views';

/** What was typed, as the document keeps it, or what is wrong with it. */
export type Typed = { readonly value: string } | { readonly fault: string };

const NUMBER = /^-?\d{1,15}(\.\d{1,12})?$/;
const WHOLE = /^\d{1,9}$/;
const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** Reads a typed number: thousands marks and spaces go, a true minus is a minus. Nothing is computed. */
function plain(text: string): string {
  return text.replace(/[,\s\u00a0\u202f$]/g, '').replace('\u2212', '-');
}

export function readTyped(kind: Edit['kind'], text: string): Typed {
  const trimmed = text.trim();
  if (kind === 'figure' || kind === 'decimal') {
    const number = plain(trimmed);
    return NUMBER.test(number)
      ? { value: number }
      : { fault: 'Write a plain number, such as 12.5. The value before still counts.' };
  }
  if (kind === 'whole') {
    const number = plain(trimmed);
    return WHOLE.test(number)
      ? { value: number }
      : { fault: 'Write a whole number, such as 1968. The value before still counts.' };
  }
  if (kind === 'date') {
    return DATE.test(trimmed)
      ? { value: trimmed }
      : { fault: 'Write the date as YYYY-MM-DD, such as 2027-04-05. The date before still counts.' };
  }
  return { value: text };
}
