import { BugError } from '../../base';
import { idOf } from '../result';
import { nameOf, type Step } from '../step';
import { HEADING_ROWS, letterOf, type TablePlace } from './layout';
import type { Names } from './names';
import { atom, type FormulaContext, type Term } from './term';

/** A formula with places for the row and the row before it, the same text for a whole column. */
export interface Pattern {
  readonly text: string;
}

const ROW = '\u0001';
const ROW_BEFORE = '\u0002';

/** A longer formula cannot be read in a cell: place more steps. */
export const LONGEST_FORMULA = 120;

/**
 * The formula of a placed step, for all its rows. Placed inputs are cells or defined names, hidden ones are
 * written into the formula.
 */
export function patternOf(step: Step, names: Names): Pattern {
  const table = step.scope === undefined ? undefined : names.tables.get(step.scope.id);
  const { text } = step.kind.formula(contextOf(step, table, names));
  return { text };
}

/** The formula in one row. */
export function formulaIn(pattern: Pattern, row: number): string {
  return pattern.text.replaceAll(ROW, String(row)).replaceAll(ROW_BEFORE, String(row - 1));
}

function contextOf(step: Step, table: TablePlace | undefined, names: Names): FormulaContext {
  const input = (i: number): Step => {
    const found = step.inputs[i];
    if (found === undefined) throw new BugError(`${step.kind.operation} has no input ${i + 1}`);
    return found;
  };
  const term = (i: number) => termOf(input(i), table, names);
  return {
    term,
    terms: () => step.inputs.map((_, i) => term(i)),
    range: i => names.column(input(i), 'range'),
    keys: i => names.keys(input(i).home?.id ?? ''),
    downTo: (i, until) => {
      const letter = letterIn(input(i), table);
      const top = (table?.row ?? 0) + HEADING_ROWS - 1;
      return `${letter}$${top}:${letter}${until === 'this row' ? ROW : ROW_BEFORE}`;
    },
    lookUp: lookUp => ({ keys: names.keys(lookUp.id), values: names.values(lookUp.id) }),
    carried: () => {
      const source = step.kind.carried?.step;
      if (source?.home === undefined) throw new BugError(`${nameOf(step)} carries no figure`);
      const single = source.scope === undefined;
      const values = names.column(source, single ? 'single' : 'range');
      return { single, values, keys: single ? '' : names.keys(source.home.id) };
    },
  };
}

function termOf(step: Step, table: TablePlace | undefined, names: Names): Term {
  if (step.home === undefined) return step.kind.formula(contextOf(step, table, names));
  if (step.scope === undefined) return atom(names.column(step, 'single'));
  return atom(`${letterIn(step, table)}${ROW}`);
}

/** The letter of a placed step's column in this table; the row's own key is column A. */
function letterIn(step: Step, table: TablePlace | undefined): string {
  if (table === undefined || step.home?.id !== table.table.id)
    throw new BugError(`${nameOf(step)} is no column of the table in hand`);
  const at = table.columns.indexOf(step);
  if (at >= 0) return letterOf(table.leading + at + 1);
  if (step.home.key === 'key') return letterOf(1);
  throw new BugError(`${idOf(step, 'any')} is not placed in the workbook`);
}

/** @throws BugError when a hidden step is written into two formulas: place it. */
export function requireHiddenOnce(steps: readonly Step[]): void {
  const users = new Map<Step, Step>();
  for (const step of steps) {
    for (const input of new Set(step.inputs)) {
      if (input.home !== undefined || input.inputs.length === 0) continue;
      const other = users.get(input);
      if (other !== undefined && other !== step)
        throw new BugError(
          `${input.kind.operation} is used by ${nameOf(other)} and ${nameOf(step)}: place it`,
        );
      users.set(input, step);
    }
  }
}
