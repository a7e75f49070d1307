import { BugError } from '../../base';
import { homeOf, inputOf, nameOf, type Step } from '../step';
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
  const input = (i: number): Step => inputOf(step, i);
  const term = (i: number) => termOf(input(i), table, names);
  return {
    term,
    terms: () => step.inputs.map((_, i) => term(i)),
    range: i => names.range(input(i)),
    keys: i => names.keys(homeOf(input(i)).id),
    downTo: (i, until) => {
      const { letter, place } = columnIn(input(i), table);
      const top = place.row + HEADING_ROWS - 1;
      return `${letter}$${top}:${letter}${until === 'this row' ? ROW : ROW_BEFORE}`;
    },
    lookUp: lookUp => ({ keys: names.keys(lookUp.id), values: names.values(lookUp.id) }),
    carried: () => {
      const source = step.kind.carried?.step;
      if (source === undefined) throw new BugError(`${nameOf(step)} carries no figure`);
      const keys = source.scope && names.keys(homeOf(source).id);
      return { values: names.column(source), keys };
    },
  };
}

function termOf(step: Step, table: TablePlace | undefined, names: Names): Term {
  if (step.home === undefined) return step.kind.formula(contextOf(step, table, names));
  if (step.scope === undefined) return atom(names.column(step));
  return atom(`${columnIn(step, table).letter}${ROW}`);
}

/** The letter of a placed step's column in this table; one that is not written out is the row's own key, column A. */
function columnIn(step: Step, place: TablePlace | undefined): { letter: string; place: TablePlace } {
  if (place?.table.id !== homeOf(step).id)
    throw new BugError(`${nameOf(step)} is no column of the table in hand`);
  const at = place.columns.indexOf(step);
  return { letter: letterOf(at < 0 ? 1 : place.leading + at + 1), place };
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
