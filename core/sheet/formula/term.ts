import type { LookUp } from '../look-up';

/** How tightly a piece of formula holds together: 1 sum, 2 product, 3 nothing can come between. */
export type Binding = 1 | 2 | 3;

/** A piece of a workbook formula. */
export interface Term {
  readonly text: string;
  readonly binding: Binding;
}

/** What a kind may name in its formula: its inputs' values, ranges of columns, keys and tables. */
export interface FormulaContext {
  /** The value of an input in the same row (or the single value): a cell, or the input's own formula. */
  readonly term: (input: number) => Term;
  /** All inputs as terms. */
  readonly terms: () => readonly Term[];
  /** The name of the range of an input's column. */
  readonly range: (input: number) => string;
  /** The name of the range of row keys of an input's table or block. */
  readonly keys: (input: number) => string;
  /** The cells of an input's column from its heading down to this row, or to the row before. */
  readonly downTo: (input: number, until: 'this row' | 'the row before') => string;
  readonly lookUp: (table: LookUp) => { readonly keys: string; readonly values: string };
  /** The cell or range of a figure of a sheet that was run before; row keys of a column only. */
  readonly carried: () => { readonly keys: string | undefined; readonly values: string };
}

/** An atom: a call, a name, a cell or a literal. */
export function atom(text: string): Term {
  return { text, binding: 3 };
}

/** A function call. */
export function call(name: string, ...args: readonly (Term | string | number)[]): Term {
  return atom(`${name}(${args.map(arg => (typeof arg === 'object' ? arg.text : String(arg))).join(',')})`);
}

/** A term in brackets when it binds less tightly than its place needs. */
export function held(term: Term, needs: Binding): string {
  return term.binding < needs ? `(${term.text})` : term.text;
}

/** `a+b+c`. */
export function added(terms: readonly Term[]): Term {
  return { text: terms.map(term => held(term, 1)).join('+'), binding: 1 };
}

/** `a*b*c`; quotients among the factors keep their brackets, so the order of calculation stays the sheet's. */
export function multiplied(terms: readonly Term[]): Term {
  return { text: terms.map((term, i) => held(term, i === 0 ? 2 : 3)).join('*'), binding: 2 };
}

/** `a/b`. */
export function divided(a: Term, b: Term): Term {
  return { text: `${held(a, 2)}/${held(b, 3)}`, binding: 2 };
}

/** `a-b`. */
export function subtracted(a: Term, b: Term): Term {
  return { text: `${held(a, 1)}-${held(b, 2)}`, binding: 1 };
}
