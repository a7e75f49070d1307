import { BugError, type Finding } from '../base';
import type { Cents } from './cents';
import type { MonthAmount } from './estimate-lines';
import { dollars } from './dollars';

/** One figure of a book, under a key that says where it stands, such as `B/f/preparing`. */
export interface BookEntry {
  readonly key: string;
  readonly title: string;
  readonly amount: Cents;
}

/** A book as a flat list of its figures: what is compared, cell by cell, with what the estimate gives. */
export interface Book {
  readonly id: string;
  readonly title: string;
  readonly entries: readonly BookEntry[];
}

/** Amounts by month as a book, such as the payments of the cash view. */
export function bookOfMonths(id: string, title: string, months: readonly MonthAmount[]): Book {
  const entries = months.map(({ month, amount }) => ({ key: month, title: `${title}, ${month}`, amount }));
  return { id, title, entries };
}

/** A figure of a book that is not what the estimate gives. An absent figure is a difference too. */
export interface BookDifference {
  readonly bookId: string;
  readonly key: string;
  readonly title: string;
  readonly expected?: Cents;
  readonly found?: Cents;
}

/**
 * Compares a book as it stands (read back from a workbook, a saved file, a form) with the one the estimate
 * gives now, and names every figure that differs.
 */
export function locateDifferences(expected: Book, found: Book): BookDifference[] {
  const there = keyed(found);
  const wanted = keyed(expected);
  const changed = expected.entries.flatMap(entry => {
    const other = there.get(entry.key);
    if (other?.amount === entry.amount) return [];
    return [difference(expected, entry, { expected: entry.amount, ...(other && { found: other.amount }) })];
  });
  const added = found.entries
    .filter(entry => !wanted.has(entry.key))
    .map(entry => difference(expected, entry, { found: entry.amount }));
  return [...changed, ...added];
}

/** The differences as findings, each with its place in the book. */
export function differenceFindings(differences: readonly BookDifference[], title: string): Finding[] {
  return differences.map(one => ({
    code: 'books/figure-differs',
    weight: 'blocks',
    place: `/books/${one.bookId}/${one.key}`,
    message: `${one.title} in the ${title} is ${shown(one.found)}, the estimate gives ${shown(one.expected)}`,
    meaning: 'the paper and the estimate no longer tell the same, and only one of them can be right',
    remedy: 'write the book again from the estimate, or put the change into the estimate',
  }));
}

function shown(amount: Cents | undefined): string {
  return amount === undefined ? 'absent' : dollars(amount);
}

function difference(
  book: Book,
  entry: BookEntry,
  amounts: { expected?: Cents; found?: Cents },
): BookDifference {
  return { bookId: book.id, key: entry.key, title: entry.title, ...amounts };
}

function keyed(book: Book): Map<string, BookEntry> {
  const entries = new Map(book.entries.map(entry => [entry.key, entry]));
  if (entries.size !== book.entries.length) throw new BugError(`the book ${book.id} has a key twice`);
  return entries;
}
