/** Whether people fill a figure in, the schedule or the program gives it, or it is a result. */
export type FigureRole = 'input' | 'schedule' | 'given' | 'result';

/** What stands in a cell of a paper workbook. Formulas come from the calculation sheets or name their totals. */
export type PaperContent =
  | { readonly kind: 'text'; readonly text: string }
  | {
      readonly kind: 'number';
      readonly value: number;
      readonly decimals: number | undefined;
      readonly role: FigureRole;
    }
  | { readonly kind: 'money'; readonly value: number; readonly role: FigureRole }
  /** An open cell in which nothing stands yet. */
  | { readonly kind: 'open'; readonly text: string }
  | { readonly kind: 'date'; readonly iso: string }
  | {
      readonly kind: 'formula';
      readonly formula: string;
      readonly result: number | string;
      readonly format: 'money' | 'number' | 'factor' | 'text';
      readonly decimals: number | undefined;
    };

/** How a cell is set. */
export type PaperStyle =
  'title' | 'heading' | 'unit' | 'total' | 'note' | 'caution' | 'plain' | 'words' | 'bar' | 'bar-critical';

export interface PaperCell {
  readonly row: number;
  readonly column: number;
  readonly content: PaperContent;
  readonly style?: PaperStyle;
}

export interface PaperSheet {
  /** At most 31 characters, without any of : \ / ? * [ ] and apostrophes. */
  readonly name: string;
  readonly cells: readonly PaperCell[];
  /** Widths of columns in characters, from A on. */
  readonly widths: readonly number[];
  /** Rows that stay in view and repeat on each page. */
  readonly headingRows: number;
  readonly landscape: boolean;
  /** How many columns are printed; all unless given. */
  readonly printColumns?: number;
  /** Ranges of input cells that take numbers only. */
  readonly numberInputs?: readonly string[];
  /** Ranges in which one of a few words may stand. */
  readonly choices?: readonly { readonly range: string; readonly words: readonly string[] }[];
  /** Differences of this sheet that must be nothing: the master check of the cover takes them in. */
  readonly checks?: readonly PaperCheck[];
  /** Charts that stand below each other from this sheet's first row on. */
  readonly charts?: readonly PaperChart[];
}

/** A check of a sheet: a formula that gives a difference, nothing when the sheet holds. */
export interface PaperCheck {
  readonly title: string;
  readonly formula: string;
  /** What the formula gives in the workbook as it is written; nothing unless given. */
  readonly result?: number;
}

/** A live chart over ranges of the workbook. */
export interface PaperChart {
  readonly title: string;
  readonly kind: 'bars' | 'columns' | 'line';
  readonly names: string;
  readonly values: string;
}

export interface PaperName {
  readonly name: string;
  readonly range: string;
}

/** A workbook as plain data; an adapter of the host writes it. */
export interface PaperWorkbook {
  readonly title: string;
  readonly sheets: readonly PaperSheet[];
  readonly names: readonly PaperName[];
  /** The day that stands as created and modified, so that the same project gives the same file. */
  readonly date: string;
}
