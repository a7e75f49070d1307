import type { Finding } from '../base';
import { innerOf, type Inner } from './inner';
import { idIn, type SheetResult } from './result';
import { unitIn, type Step } from './step';

/**
 * Why figures are absent, found by walking back from the figures asked for: a branch not taken and a rate
 * behind a quote raise nothing.
 * @param roots ids of figures; every calculated figure that is placed unless stated.
 * @returns one finding for each cause: a value not given, in another unit, a division by zero, a key beyond
 * its table, a row that does not exist.
 */
export function sheetFindings(result: SheetResult, roots?: readonly string[]): Finding[] {
  const inner = innerOf(result);
  const findings = new Map<string, Finding>();
  for (const finding of causesBehind(
    inner,
    roots?.map(id => result.cellOf(id)) ?? placedCells(result, inner),
    new Map(),
  ))
    findings.set(`${finding.place} ${finding.message}`, finding);
  return [...findings.values()];
}

/** The absent cells that were walked over, by the sheet that they are of. */
type Walked = Map<Inner, Set<number>>;

/** What lies behind absent cells, in sheets that figures are carried from as well; nothing is walked over twice. */
function* causesBehind(inner: Inner, roots: readonly number[], walked: Walked): Generator<Finding> {
  const seen = walked.get(inner) ?? new Set<number>();
  walked.set(inner, seen);
  for (const { cell, shownAs, behind } of walkBack(inner, roots, seen)) {
    if (behind.length > 0 && !behind.includes(-1)) continue;
    yield* causesOf(inner, cell, shownAs, walked);
  }
}

/** The absent cells that calculated figures depend on; an absent quote that nothing needed is not among them. */
export function reachedAbsent(result: SheetResult): ReadonlySet<number> {
  const inner = innerOf(result);
  return new Set(walkBack(inner, placedCells(result, inner), new Set()).map(({ cell }) => cell));
}

/**
 * The absent cells behind some that were not seen before, each with the id it is shown under: its own, or that of the
 * step it is written into.
 */
function walkBack(inner: Inner, roots: readonly number[], seen: Set<number>): Shown[] {
  const found: Shown[] = [];
  const open = roots.map(cell => ({ cell, user: '' })).reverse();
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { cell, user } = next;
    if (seen.has(cell) || !inner.isAbsent(cell)) continue;
    const { step, row } = inner.order.at(cell);
    const shownAs = step.home === undefined ? user : idIn(step, row);
    seen.add(cell);
    const behind = absentOperands(inner, cell);
    found.push({ cell, shownAs, behind });
    const exist = behind.filter(operand => operand >= 0);
    open.push(...exist.map(operand => ({ cell: operand, user: shownAs })).reverse());
  }
  return found;
}

/** An absent cell, the id that it is shown under and its operands that are absent; -1 for one that does not exist. */
interface Shown {
  readonly cell: number;
  readonly shownAs: string;
  readonly behind: readonly number[];
}

/** The cells of all placed steps that are calculated. */
function placedCells(result: SheetResult, { order }: Inner): number[] {
  const steps = [
    ...result.sheet.tables.flatMap(t => t.placed),
    ...result.sheet.blocks.flatMap(b => b.entries()),
  ];
  return steps
    .filter(step => step.unit !== 'text' && step.kind.givens === undefined)
    .flatMap(step => (step.scope?.rows ?? [undefined]).map((_, row) => order.cell(step, row)));
}

/** The operands that are absent and matter; -1 for one that does not exist. */
function absentOperands(inner: Inner, cell: number): number[] {
  const { order } = inner;
  const { step, row } = order.at(cell);
  const operands = order.operands(step, row);
  const matters = step.kind.shown?.(inner.values(operands));
  return operands.filter((operand, i) => {
    if (matters?.includes(i) === false) return false;
    return operand < 0 || (inner.isAbsent(operand) && order.at(operand).step.unit !== 'text');
  });
}

function causesOf(inner: Inner, cell: number, shownAs: string, walked: Walked): Iterable<Finding> {
  const { step, row } = inner.order.at(cell);
  const before = step.kind.carried;
  const carriedId = before?.id(row);
  if (before !== undefined && carriedId !== undefined)
    return causesBehind(innerOf(before.from), [before.from.cellOf(carriedId)], walked);
  const operands = inner.values(inner.order.operands(step, row));
  const reason = step.kind.reason?.(operands, row) ?? 'it cannot be calculated';
  const given = step.kind.givens?.[row];
  const place = given?.place ?? step.scope?.rows[row]?.place ?? shownAs;
  return [finding(step, row, place, reason)];
}

function finding(step: Step, row: number, place: string, reason: string): Finding {
  const at = step.scope?.rows[row];
  const what =
    step.home?.title ?? step.kind.words(...step.inputs.map(input => input.home?.title ?? 'a step'));
  const isGiven = step.kind.givens !== undefined;
  const unit = unitIn(step, row);
  return {
    code: isGiven ? 'sheet/not-given' : 'sheet/not-calculable',
    weight: 'blocks',
    place,
    message: `${what}${at ? ` of ${at.title}` : ''}: ${reason}.`,
    meaning: 'Every figure that depends on it is absent.',
    remedy: isGiven
      ? `Give a value${unit === '1' ? '' : ` in ${unit.replace(/\/1$/, ' each')}`}.`
      : 'Correct the values it is calculated from.',
  };
}
