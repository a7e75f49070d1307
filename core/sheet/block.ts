import { BugError } from '../base';
import type { Given } from './given';
import { givenStep } from './kinds/leaves';
import { nameOf, type Step } from './step';
import type { SheetUnit } from './unit';

/** What a sheet checks before a step is placed in it. */
export type Placing = <S extends Step>(step: S, key: string, title: string) => S;

/** A named block of single values: key, title, value and unit, so that rows can fetch one by its key. */
export class Block {
  readonly id: string;
  readonly heading: string;
  readonly #place: Placing;
  readonly #entries: Step[] = [];

  constructor(id: string, heading: string, place: Placing) {
    this.id = id;
    this.heading = heading;
    this.#place = place;
  }

  /** The values placed so far. */
  entries(): readonly Step[] {
    return this.#entries;
  }

  /** A single given value. */
  given<U extends SheetUnit>(key: string, title: string, unit: U, given: Given | undefined): Step<U> {
    return this.place(key, title, givenStep(unit, [given], undefined));
  }

  /** Places a calculated single value. @throws BugError when it stands in the rows of a table. */
  place<U extends SheetUnit>(key: string, title: string, step: Step<U>): Step<U> {
    if (step.scope !== undefined)
      throw new BugError(
        `${this.id}/${key}: ${nameOf(step)} stands in rows of ${step.scope.id}; total or fetch it`,
      );
    if (this.#entries.some(entry => entry.home?.key === key))
      throw new BugError(`${this.id}/${key} is placed twice`);
    const placed = this.#place(step, key, title);
    this.#entries.push(placed);
    return placed;
  }
}
