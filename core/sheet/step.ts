import { at, BugError } from '../base';
import type { Kind } from './kind';
import type { Looseness } from './looseness';
import type { Scope } from './scope';
import { boundUnit, type StepUnit } from './unit';

/** Where a placed step stands: a column of a table or an entry of a block of single values. */
export interface Home {
  /** The sheet it belongs to; compared by identity. */
  readonly sheet: object;
  /** The table's or block's id. */
  readonly id: string;
  /** Stable, apart from the title: renaming a heading changes no id. */
  readonly key: string;
  readonly title: string;
}

/**
 * One step of a calculation, in a unit known to the compiler. It is a description: the evaluators, the
 * formulas of the workbook and the explanation are all made from it.
 */
export interface Step<U extends StepUnit = StepUnit> {
  readonly unit: U;
  readonly kind: Kind;
  readonly inputs: readonly Step[];
  /** The table in whose rows it is calculated; none for a single value. */
  readonly scope: Scope | undefined;
  readonly looseness: Looseness;
  /** Absent for a hidden step, which is written into its user's formula. */
  readonly home?: Home;
}

/** Makes a hidden step. Its scope is that of its inputs unless stated. @throws BugError when they stand in two tables. */
export function makeStep<U extends StepUnit>(
  unit: U,
  kind: Kind,
  inputs: readonly Step[],
  looseness: Looseness,
  scope: Scope | undefined = commonScope(kind.operation, inputs),
): Step<U> {
  for (const i of kind.repeats ?? []) {
    const input = at(inputs, i);
    if (input.home === undefined)
      throw new BugError(
        `${kind.operation}: place ${nameOf(input)} first, its formula would be written twice`,
      );
  }
  return { unit, kind, inputs, scope, looseness };
}

/** The single scope: for steps such as totals whose inputs stand in rows and whose result does not. */
export function makeSingle<U extends StepUnit>(
  unit: U,
  kind: Kind,
  inputs: readonly Step[],
  looseness: Looseness,
): Step<U> {
  return { unit, kind, inputs, scope: undefined, looseness };
}

function commonScope(operation: string, inputs: readonly Step[]): Scope | undefined {
  let scope: Scope | undefined;
  for (const input of inputs) {
    if (input.scope === undefined) continue;
    if (scope !== undefined && scope !== input.scope)
      throw new BugError(
        `${operation}: steps of ${scope.id} and ${input.scope.id} meet; use link, total or totalWhere between tables`,
      );
    scope = input.scope;
  }
  return scope;
}

/** The words a message names a step by. */
export function nameOf(step: Step): string {
  return step.home === undefined ? step.kind.operation : `"${step.home.title}"`;
}

/** Where a step is placed. @throws BugError when it is hidden. */
export function homeOf(step: Step): Home {
  if (step.home === undefined) throw new BugError(`${nameOf(step)} is not placed and has no id`);
  return step.home;
}

/** An input by its number from 0. @throws BugError when there is none. */
export function inputOf(step: Step, number: number): Step {
  const input = step.inputs[number];
  if (input === undefined) throw new BugError(`${step.kind.operation} has no input ${number + 1}`);
  return input;
}

/** The text of each row of a text step. @throws BugError when it is no text. */
export function textsOf(step: Step): readonly (string | undefined)[] {
  if (step.kind.texts === undefined) throw new BugError(`${nameOf(step)} is no text`);
  return step.kind.texts;
}

/** The unit of a step in a row of its table. */
export function unitIn(step: Step, row: number): string {
  return boundUnit(step.unit, step.scope?.rows[row]?.own);
}

/** @throws BugError unless all steps have the unit of the first. */
export function requireOneUnit(operation: string, steps: readonly Step[]): void {
  const { unit } = at(steps, 0);
  for (const step of steps) requireUnit(operation, step, unit);
}

/** @throws BugError unless the step has the unit. */
export function requireUnit(operation: string, step: Step, unit: StepUnit): void {
  if (step.unit !== unit)
    throw new BugError(`${operation}: ${nameOf(step)} is in ${step.unit}, not in ${unit}`);
}
