import { at, BASES } from '../base';
import type { Column, Row, Sentence, Shown, TableRows, WhyRow, WhyRows } from './rows';

/** Derivations of figures that no sheet holds, by the name of the figure. */
export type Whys = Readonly<Record<string, WhyRows>>;

/** How the figures of one table came about. */
export interface Origin {
  /** Where the reader is: `Risk, percentiles`. */
  readonly path: string;
  readonly home: string;
  /** The rule of a column in words, for one row. Undefined: the column is no figure. */
  readonly words: (column: Column, row: Row) => string | undefined;
  /** The second line of a column head names something else than a unit. */
  readonly hasNoUnits?: true;
  /** What stands behind it, each step with a way to its own derivation. */
  readonly steps: (column: Column, row: Row) => readonly WhyRow[];
}

const FIGURES = new Set<Column['kind']>(['number', 'share', 'range']);

/** Collects the derivations of the figures of a view that are worked out beside the sheets. */
export class Derivations {
  readonly #whys: Record<string, WhyRows> = {};
  readonly #prefix: string;

  constructor(prefix: string) {
    this.#prefix = prefix;
  }

  get whys(): Whys {
    return this.#whys;
  }

  /** A figure that stands in a sentence or in the bottom line, as one that opens. */
  figure(
    name: string,
    shown: Shown,
    title: string,
    origin: Omit<Origin, 'steps' | 'words'>,
    words: string,
    steps: readonly WhyRow[],
  ): Shown {
    const id = `${this.#prefix}:${name}`;
    this.#add(id, title, shown, origin, words, steps);
    return { ...shown, why: id };
  }

  /** A sentence in which every amount of money opens how it came about. */
  sentence(
    name: string,
    text: string,
    origin: Omit<Origin, 'steps' | 'words'>,
    words: string,
    steps: readonly WhyRow[],
  ): Sentence {
    return text
      .split(/(\$[\d,.]*\d)/)
      .map((part, place) =>
        part.startsWith('$')
          ? this.figure(`${name}-${place}`, { text: part }, text, origin, words, steps)
          : part,
      );
  }

  /** The table with every figure of it that had no derivation opening one. */
  table(table: TableRows, origin: Origin): TableRows {
    const first = at(table.columns, 0).key;
    const rows = table.rows.map((row): Row => {
      const cells = Object.entries(row.cells).map(([key, shown]): readonly [string, Shown] => {
        const column = table.columns.find(one => one.key === key);
        return [key, column === undefined ? shown : this.#cell(table, row, column, shown, origin, first)];
      });
      return { ...row, cells: Object.fromEntries(cells) };
    });
    return { ...table, rows };
  }

  #cell(table: TableRows, row: Row, column: Column, shown: Shown, origin: Origin, first: string): Shown {
    const isFigure = FIGURES.has(column.kind) && /\d/.test(shown.text);
    if (!isFigure || shown.why !== undefined || shown.edit !== undefined) return shown;
    const words = origin.words(column, row);
    if (words === undefined) return shown;
    const id = `${this.#prefix}:${table.id}|${row.id}|${column.key}`;
    const name = column.key === first ? '' : (row.cells[first]?.text ?? '');
    const title = name === '' ? column.title : `${column.title}: ${name}`;
    this.#add(
      id,
      title,
      { ...shown, unit: shown.unit ?? (origin.hasNoUnits === true ? '' : (column.unit ?? '')) },
      origin,
      words,
      origin.steps(column, row),
    );
    return { ...shown, why: id };
  }

  #add(
    id: string,
    title: string,
    shown: Shown,
    origin: Omit<Origin, 'steps' | 'words'>,
    words: string,
    rows: readonly WhyRow[],
  ): void {
    const unit = shown.unit ?? '';
    this.#whys[id] = {
      id,
      title,
      path: origin.path,
      value: { text: shown.text, ...(unit === '' ? {} : { unit }) },
      words,
      rows,
      usedBy: [],
      bases: BASES,
      home: origin.home,
    };
  }
}

/** One step of such a derivation. */
export function step(value: Shown, words: string, operator = ''): WhyRow {
  return { depth: 0, operator, value, words };
}
