import type { Basis, Finding } from '../base';

/** One of several things to choose. */
export interface Choice {
  readonly id: string;
  readonly title: string;
  /** What is put at the place, where that is more than its id: a section whose other fields go with the choice. */
  readonly puts?: Plain;
}

/** An input the reader may change in place: where it stands in the document and how it is typed. */
export interface Edit {
  /** Path in the document, by field and id: `/vessel/length`, `/items/remove-mast/quantity`. */
  readonly at: string;
  /** A figure carries its unit and basis; a decimal is a plain number beside words that say its unit. */
  readonly kind: 'figure' | 'decimal' | 'text' | 'date' | 'choice' | 'whole' | 'switch';
  /** What stands there now, as typed. Empty when nothing does. */
  readonly value: string;
  readonly unit?: string;
  readonly choices?: readonly Choice[];
  /** What it is called, for the field's name and the undo list. */
  readonly label: string;
  /** Units a figure may be given in. */
  readonly units?: readonly string[];
  /** May be left empty: emptied, it is taken away. */
  readonly optional?: true;
  /** A number a new project begins with: entered again, the same number too becomes the reader’s own. */
  readonly begins?: true;
  /** A field beside it that may not stay empty alone: it takes the same words while it has none. */
  readonly pair?: string;
  /** Another place that still holds what it began with: it takes the same words, until it has its own. */
  readonly takesAlong?: string;
  /** What a number typed here rests on; judgement unless told otherwise. */
  readonly basis?: Basis;
  /** The price year of the number that stands there. */
  readonly year?: number;
  /** The price year of another number that is typed here. */
  readonly yearNow?: number;
  /** The place is a list of words, and the last step of the path is in it or not. */
  readonly member?: true;
}

/** An entry of a list of the document that can be taken out: its place, by id or by number. */
export interface Removal {
  readonly at: string;
  readonly label: string;
}

/** One field of a new entry: where it stands inside the entry and how it is typed. */
export interface AddField extends Pick<Edit, 'kind' | 'label' | 'unit' | 'choices' | 'optional' | 'basis'> {
  /** Path inside the new entry: `amount`, `covers/0/item`. */
  readonly path: string;
  /** What stands in the field at first. */
  readonly value?: string;
}

type Plain = string | number | boolean | readonly Plain[] | { readonly [key: string]: Plain };

/** What a reader may add to a list of the document: its fields, and what a new entry holds beside them. */
export interface Addition {
  /** The list: `/quotes`. */
  readonly at: string;
  /** What is added, for the button and the undo list: `a quote`. */
  readonly what: string;
  readonly fields: readonly AddField[];
  readonly entry: { readonly [key: string]: Plain };
  /** The field whose words make the entry’s id; entries without an id have none. */
  readonly idFrom?: string;
  /** The place holds one entry and no list. */
  readonly single?: true;
}

/** One figure or word as it is shown: text ready made, never computed by the window. */
export interface Shown {
  readonly text: string;
  readonly unit?: string;
  /** Hidden digits after the text that put its decimal point under those of its column. */
  readonly pad?: string;
  /** The figure's name for its derivation. */
  readonly why?: string;
  readonly basis?: Basis;
  readonly source?: string;
  /** The figure is not there, and the text says why. */
  readonly absent?: true;
  readonly edit?: Edit;
  /** The cell takes its row out of the document. */
  readonly remove?: Removal;
  /** Draws the reader's eye: it holds, it binds, it is too low. */
  readonly accent?: true;
}

/** A sentence of the program, written from the result: words and figures in turn. */
export type Sentence = readonly (string | Shown)[];

export interface Column {
  readonly key: string;
  readonly title: string;
  readonly unit?: string;
  /** A range is two numbers in words, at the right of its column. */
  readonly kind: 'words' | 'number' | 'range' | 'unit' | 'basis' | 'share' | 'action';
  /** Shown only where there is room. */
  readonly wide?: true;
}

export interface Row {
  readonly id: string;
  readonly kind: 'line' | 'group' | 'total';
  readonly cells: Readonly<Record<string, Shown>>;
  /** The group row it stands under. */
  readonly under?: string;
  /** What the row is about, for choosing it here and in a picture. */
  readonly subject?: string;
}

/** A table ready to show, to copy and to print. */
export interface TableRows {
  readonly id: string;
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly note?: Sentence;
  /** What can be added to the table. */
  readonly add?: Addition;
}

/** One step of a derivation, indented under what it belongs to. */
export interface WhyRow {
  readonly depth: number;
  readonly operator: string;
  readonly value: Shown;
  readonly words: string;
  readonly range?: { readonly low: string; readonly high: string; readonly at: number };
}

/** The derivation of one figure. */
export interface WhyRows {
  readonly id: string;
  readonly title: string;
  readonly path: string;
  readonly value: Shown;
  readonly words: string;
  readonly rows: readonly WhyRow[];
  readonly usedBy: readonly { readonly why: string; readonly title: string; readonly view: string }[];
  /** The bases an override may rest on. */
  readonly bases: readonly Basis[];
  /** The input itself, when the figure is one or has one that replaces it. */
  readonly edit?: Edit;
  /** The view where the input stands. */
  readonly home?: string;
}

/** A cell of the bottom line, always in view. */
export interface BottomCell {
  readonly key: string;
  readonly label: string;
  readonly value: Shown;
  readonly beside?: string;
  readonly verdict?: Verdict;
  /** Set while schedule and upright screen are still being worked out: the figure may move once more. */
  readonly isSettling?: true;
}

export const VERDICTS = ['stays up', 'leans', 'may roll over', 'does not sink', 'cannot tell'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** A finding with the view where it can be put right. */
export interface FindingRow {
  readonly finding: Finding;
  readonly view: string;
  /** Its place as the inputs of the window name it. */
  readonly at: string;
}
