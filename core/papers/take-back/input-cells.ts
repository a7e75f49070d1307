import type { Basis } from '../../base';
import type { EstimateParts, Evaluation } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import { homeOf, idOf, type Given, type SheetResult, type Step } from '../../sheet';
import { targetOf, type InputKind } from './targets';

/** A figure of the document that people may change in the exported workbook, and every figure that reads it. */
export interface InputCell {
  /** Its key in the workbook: the place in the document. */
  readonly key: string;
  readonly kind: InputKind;
  readonly title: string;
  /** Decimal text; nothing when the document has none and the estimate works the figure out. */
  readonly value: string | undefined;
  readonly unit: string;
  readonly basis?: Basis;
  readonly source?: string;
  readonly year?: number;
  /** Whether it feeds hours and days: then a change may move dates, which a workbook cannot follow. */
  readonly movesDates: boolean;
  /** The figures of the calculation sheets that are this one, by id. */
  readonly figures: readonly string[];
}

/** An evaluation that has its money. */
export type WholeEvaluation = Evaluation & {
  readonly estimate: EstimateParts & { readonly money: MoneySheet };
};

/**
 * Every figure that may be changed in a workbook and taken back: each once, however many lines read it. A figure that
 * the scenario itself sets is left out, and so is one that has no single place in the document.
 */
export function inputCells(evaluation: WholeEvaluation): InputCell[] {
  const { work, money } = evaluation.estimate;
  const found = new Map<string, SameInput>();
  for (const [result, movesDates] of [
    [work.result, true],
    [money.result, false],
  ] as const)
    for (const cell of cellsOf(result, evaluation, movesDates)) {
      const known = found.get(cell.key);
      if (known === undefined) found.set(cell.key, { first: cell, others: [] });
      else known.others.push(cell);
    }
  return [...found.values()].flatMap(merged);
}

/** Cells that read the same figure. */
interface SameInput {
  readonly first: InputCell;
  readonly others: InputCell[];
}

/** One cell of several that read the same figure; none when they do not agree. */
function merged({ first, others }: SameInput): InputCell[] {
  const isOne = others.every(cell => cell.value === first.value && cell.unit === first.unit);
  if (!isOne) return [];
  return [
    {
      ...first,
      movesDates: first.movesDates || others.some(cell => cell.movesDates),
      figures: [first, ...others].flatMap(cell => cell.figures),
    },
  ];
}

function cellsOf(result: SheetResult, evaluation: WholeEvaluation, movesDates: boolean): InputCell[] {
  const steps: Step[] = [
    ...result.sheet.blocks.flatMap(block => [...block.entries()]),
    ...result.sheet.tables.flatMap(table => [...table.placed]),
  ];
  return steps.flatMap(step =>
    (step.kind.givens ?? []).flatMap((given, row) => inputCell(step, row, given, evaluation, movesDates)),
  );
}

function inputCell(
  step: Step,
  row: number,
  given: Given | undefined,
  evaluation: WholeEvaluation,
  movesDates: boolean,
): InputCell[] {
  if (given?.basis === 'schedule') return [];
  const at = step.scope?.rows[row];
  const home = homeOf(step);
  const column = `${home.id}/${home.key}`;
  const target = targetOf({ column, rowKey: at?.key, own: at?.own, given }, evaluation);
  if (target === undefined) return [];
  const isGiven = given !== undefined && given.neutral !== true && given.value !== undefined;
  return [
    {
      key: target.key,
      kind: target.kind,
      title: at === undefined ? home.title : `${at.title}: ${home.title}`,
      value: given?.value,
      unit: target.unit,
      ...(isGiven && { source: given.source, basis: given.basis }),
      ...(isGiven && given.year !== undefined && { year: given.year }),
      movesDates,
      figures: [idOf(step, at?.key)],
    },
  ];
}
