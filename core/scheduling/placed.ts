import { at } from '../base';
import type { Compiled } from './compile/compiled';
import { DayBook } from './day-book';
import type { SearchRelationship } from './search';

/** A schedule found: where every activity of the packed problem lies, and who holds what on which day. */
export interface Placed {
  readonly compiled: Compiled;
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
  readonly finish: number;
  readonly book: DayBook;
  readonly into: readonly (readonly Link[])[];
  readonly outOf: readonly (readonly Link[])[];
}

/** A packed relationship and its position. */
export interface Link {
  readonly index: number;
  readonly relationship: SearchRelationship;
}

/** Enters a schedule in a day book and sorts its relationships by activity. */
export function placeAll(compiled: Compiled, starts: Int32Array, finishes: Int32Array): Placed {
  const { activities, relationships } = compiled.search;
  const book = new DayBook(compiled.search);
  const into: Link[][] = activities.map(() => []);
  const outOf: Link[][] = activities.map(() => []);
  relationships.forEach((relationship, index) => {
    at(into, relationship.to).push({ index, relationship });
    at(outOf, relationship.from).push({ index, relationship });
  });
  let finish = 0;
  activities.forEach((_, i) => {
    book.place(i, at(starts, i), at(finishes, i));
    finish = Math.max(finish, at(finishes, i));
  });
  return { compiled, starts: starts.slice(), finishes: finishes.slice(), finish, book, into, outOf };
}

/** Moves one activity. */
export function move(placed: Placed, activity: number, start: number, finish: number): void {
  if (placed.book.isPlaced(activity)) placed.book.remove(activity);
  placed.starts[activity] = start;
  placed.finishes[activity] = finish;
  placed.book.place(activity, start, finish);
}
