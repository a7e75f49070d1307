import { BugError } from '../base';
import { Block } from './block';
import { checkLookUp, type LookUp, type LookUpEntry } from './look-up';
import type { SheetMemory } from './memory';
import type { Step } from './step';
import { Recipe, rowOf, scopeOf, type RowsOf, type Table } from './table';
import type { SheetUnit } from './unit';

const ID = /^[a-z][a-zA-Z0-9]*(?:-[a-zA-Z0-9]+)*$/;

/**
 * A sheet: a short list of tables, single values in blocks, and look-up tables. It is a description; what
 * it comes to is the business of the evaluators. Two sheets stand around the scheduler, each run whole.
 */
export class Sheet {
  readonly id: string;
  readonly tables: Table[] = [];
  readonly blocks: Block[] = [];
  readonly lookUps: LookUp[] = [];
  readonly #taken: Set<string>;

  /** What its last build read and came to, when it has a memory. */
  readonly memory: SheetMemory | undefined;

  /**
   * @param after the sheet whose figures this one carries on; their ids must not meet.
   * @param memory what the last build of it read; then a table's key, title, own and place read the row alone.
   */
  constructor(id: string, after?: Sheet, memory?: SheetMemory) {
    this.id = id;
    this.memory = memory;
    this.#taken = new Set(after === undefined ? [] : after.#taken);
  }

  /**
   * A table: the recipe, written once and run once, times the rows.
   * @returns the table with the columns that the recipe returns, for links and totals.
   * @throws BugError for any mistake of the recipe: units, steps of another table, raw quotients.
   */
  table<R, C>(id: string, rows: RowsOf<R>, recipe: (t: Recipe<R>) => C): Table<C> {
    this.#take(id);
    const make = () => scopeOf(id, rows);
    const scope = this.memory?.scope(id, rows.of, make, row => rowOf(id, rows, row)) ?? make();
    const builder = new Recipe(
      rows.of,
      scope,
      (step, key, title) => this.#placed(step, id, key, title),
      this.memory,
    );
    const columns = recipe(builder);
    const table = { id, heading: rows.heading, scope, columns, placed: builder.placed };
    this.tables.push(table);
    return table;
  }

  /** A named block of single values. */
  block(id: string, heading: string): Block {
    this.#take(id);
    const block = new Block(id, heading, (step, key, title) => this.#placed(step, id, key, title));
    this.blocks.push(block);
    return block;
  }

  /** A look-up table with ascending keys. @throws BugError when they do not ascend or units differ. */
  lookUpTable<K extends SheetUnit, U extends SheetUnit>(
    id: string,
    table: { title: string; keyUnit: K; unit: U; entries: readonly LookUpEntry[] },
  ): LookUp<K, U> {
    this.#take(id);
    const whole = { ...table, id, sheet: this };
    checkLookUp(whole);
    this.lookUps.push(whole);
    return whole;
  }

  #take(id: string): void {
    if (!ID.test(id)) throw new BugError(`"${id}" cannot be the id of a table or block`);
    const name = id.toLowerCase();
    if (this.#taken.has(name)) throw new BugError(`two tables or blocks have the id ${id}`);
    this.#taken.add(name);
  }

  #placed<S extends Step>(step: S, id: string, key: string, title: string): S {
    if (!ID.test(key)) throw new BugError(`${id}: "${key}" cannot be a column key`);
    if (title === '') throw new BugError(`${id}/${key} is placed without a title`);
    if (step.home !== undefined) throw new BugError(`${id}/${key} is already placed as ${step.home.key}`);
    for (const input of step.inputs) this.#requireOurs(input);
    return { ...step, home: { sheet: this, id, key, title } };
  }

  #requireOurs(step: Step): void {
    if (step.home === undefined) for (const input of step.inputs) this.#requireOurs(input);
    else if (step.home.sheet !== this)
      throw new BugError(`${step.home.id}/${step.home.key} belongs to another sheet: carry it over`);
  }
}
