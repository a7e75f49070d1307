import { lowerFirst, type Finding } from '../base';
import {
  allocateOver,
  contingencyByMonth,
  contractPayments,
  dollars,
  lastMonths,
  ownPayments,
  spendingByMonth,
  sumCents,
  type Cents,
  type EstimateLine,
  type MonthAmount,
  type PaymentTerms,
} from '../cash-flow';
import { scopePiece, type AwardPeriod, type ScopedPiece } from './award-period';
import type { BudgetRow } from './budget-row';
import { checkContingency } from './contingency';
import { piecesOfLine, type CostPiece } from './cost-pieces';
import { mapToForm, type Activity, type MappingRow } from './forms';
import { pieceKind } from './procurement';
import type { Contingency, FundingPlan, NotAllowable } from './plan';
import type { FundingRules } from './rules';

/** What the direct rows of an award are made from. */
export interface AwardScope {
  readonly lines: readonly EstimateLine[];
  readonly contingency?: Contingency | undefined;
  readonly period: AwardPeriod;
  readonly plan: FundingPlan;
  readonly rules: FundingRules;
  readonly activities: readonly Activity[];
  readonly mapping: readonly MappingRow[];
}

/** The direct rows of an award: each piece of each line and the contingency, in scope, with its form line. */
export function directRows(scope: AwardScope): { rows: BudgetRow[]; findings: Finding[] } {
  const { plan, rules } = scope;
  const pieces = scope.lines.flatMap(line =>
    piecesOfLine(line, activityOf(line.stage, scope.activities), cost =>
      pieceKind(cost, rules, plan.awardDate, plan.county),
    ),
  );
  const refusals = refusedParts(pieces, plan.notAllowable);
  const scoped = pieces.map(piece => scopePiece(piece, scope.period, refusals.get(piece.id) ?? 0));
  const reserve = contingencyPieces(scope);
  const isRefused = scope.contingency !== undefined && checkContingency(scope.contingency).length > 0;
  const reserved = reserve.map(piece => scopePiece(piece, scope.period, isRefused ? piece.amount : 0));
  return placeRows([...scoped, ...reserved], scope);
}

function placeRows(
  scoped: readonly ScopedPiece[],
  scope: AwardScope,
): { rows: BudgetRow[]; findings: Finding[] } {
  const rows: BudgetRow[] = [];
  const findings: Finding[] = [];
  const last = lastMonths(scope.lines);
  for (const entry of scoped) {
    const classId = mapToForm(scope.mapping, entry.piece);
    if (classId === undefined) findings.push(unplaced(entry.piece));
    else rows.push(toRow(entry, classId, scope.plan.payment, last));
  }
  return { rows, findings };
}

function toRow(
  entry: ScopedPiece,
  classId: string,
  terms: PaymentTerms,
  last: ReadonlyMap<string, string>,
): BudgetRow {
  const { piece, months, ...amounts } = entry;
  const { amount, months: _spent, ...who } = piece;
  return {
    ...who,
    ...amounts,
    classId,
    total: amount,
    months,
    paidMonths: paidMonths(piece, months, terms, last),
  };
}

function paidMonths(
  piece: CostPiece,
  months: readonly MonthAmount[],
  terms: PaymentTerms,
  last: ReadonlyMap<string, string>,
): readonly MonthAmount[] {
  if (piece.isInKind) return months;
  if (piece.kind === 'contract')
    return contractPayments(
      months,
      terms,
      piece.contractId === undefined ? undefined : last.get(piece.contractId),
    ).paid;
  return ownPayments(months, terms);
}

/** The column of the form a stage stands in: the first that lists it, else the last. */
export function activityOf(stage: string, activities: readonly Activity[]): string {
  const fits = activities.find(activity => activity.stages.some(own => own === stage));
  return (fits ?? activities.at(-1))?.id ?? 'project';
}

/** The parts of the pieces that the grantor does not allow, by piece id. */
function refusedParts(pieces: readonly CostPiece[], refusals: readonly NotAllowable[]): Map<string, Cents> {
  const parts = new Map<string, Cents>();
  for (const refusal of refusals) {
    const ofLine = pieces.filter(piece => piece.lineId === refusal.lineId);
    const whole = sumCents(ofLine.map(piece => piece.amount));
    if (whole <= 0) continue;
    const refused = Math.min(whole, refusal.amount ?? whole);
    for (const { item, amount } of allocateOver(refused, ofLine, piece => piece.amount))
      parts.set(item.id, (parts.get(item.id) ?? 0) + amount);
  }
  return parts;
}

/** Contingency in proportion to the work of each column, by the months of the work not yet spent. */
function contingencyPieces({ contingency, lines, activities }: AwardScope): CostPiece[] {
  const columns = activities
    .map(activity => ({
      activity,
      own: lines.filter(line => activityOf(line.stage, activities) === activity.id),
    }))
    .map(column => ({ ...column, cost: Math.max(0, sumCents(column.own.map(line => line.total))) }));
  if (!contingency || sumCents(columns.map(column => column.cost)) === 0) return [];
  return allocateOver(contingency.amount, columns, column => column.cost).flatMap(({ item, amount }) => {
    const { activity, own } = item;
    if (amount === 0) return [];
    return [
      {
        id: `contingency/${activity.id}`,
        title: `Contingency, ${lowerFirst(activity.title)}`,
        kind: 'contingency' as const,
        activityId: activity.id,
        isInKind: false,
        amount,
        months: contingencyByMonth(amount, spendingByMonth(own), contingency.fromMonth),
      },
    ];
  });
}

function unplaced(piece: CostPiece): Finding {
  return {
    code: 'funding/no-form-line',
    weight: 'blocks',
    place: piece.lineId === undefined ? '/funding/mapping' : `/lines/${piece.lineId}`,
    message: `${piece.title}, ${piece.kind}, ${dollars(piece.amount)}, goes to no line of the form`,
    meaning: 'the form would be short by that amount',
    remedy: 'add a row to the mapping of the form',
  };
}
