import {
  allocateOver,
  contractIdOf,
  totalOfMonths,
  type Cents,
  type EstimateLine,
  type MonthAmount,
  type Stage,
} from '../cash-flow';
import type { PieceKind } from './forms';

/** The part of a line that goes to one line of a form: a whole contract line, or one element of the owner's own cost. */
export interface CostPiece {
  readonly id: string;
  readonly lineId?: string;
  readonly title: string;
  readonly kind: PieceKind;
  readonly stage?: Stage;
  readonly activityId: string;
  readonly contractId?: string;
  readonly isInKind: boolean;
  readonly amount: Cents;
  readonly months: readonly MonthAmount[];
}

/**
 * The pieces of a line. A contract line is one piece at its price; rent and travel are one piece; the owner's
 * own cost falls apart by element, with fringe benefits apart from wages and bought pieces by their price.
 * @param pieceOf equipment or supply, for a piece of that price.
 */
export function piecesOfLine(
  line: EstimateLine,
  activityId: string,
  pieceOf: (unitCost: Cents) => PieceKind,
): CostPiece[] {
  const kinds = wholeKind(line);
  const parts = kinds ? [{ kind: kinds, amount: line.total }] : elementParts(line, pieceOf);
  return parts
    .filter(part => part.amount !== 0)
    .map(part => ({
      id: `${line.id}/${part.kind}`,
      lineId: line.id,
      title: line.title,
      kind: part.kind,
      stage: line.stage,
      activityId,
      ...contractOf(line, part.kind),
      isInKind: line.inKind === true,
      amount: part.amount,
      months: monthsLike(part.amount, line.months),
    }));
}

function wholeKind(line: EstimateLine): PieceKind | undefined {
  if (line.contract) return 'contract';
  if (line.travel === true) return 'travel';
  return line.rent === true ? 'rent' : undefined;
}

function elementParts(
  line: EstimateLine,
  pieceOf: (unitCost: Cents) => PieceKind,
): { kind: PieceKind; amount: Cents }[] {
  const fringe = line.fringe ?? 0;
  const { labour, equipment, material, ...others } = line.amounts;
  const bought = line.unitCost === undefined ? undefined : pieceOf(line.unitCost);
  const kinds: readonly (readonly [PieceKind, Cents])[] = [
    ['labour', labour - fringe],
    ['fringe', fringe],
    ...(bought
      ? ([[bought, equipment + material]] as const)
      : ([
          ['equipment', equipment],
          ['material', material],
        ] as const)),
    ['disposal', others.disposal],
    ['subcontract', others.subcontract],
    ['fee', others.fee],
    ['markUp', others.markUp],
  ];
  return kinds.map(([kind, amount]) => ({ kind, amount }));
}

/** A bought service of the owner is a contract of its own; a contract line belongs to its contract. */
function contractOf(line: EstimateLine, kind: PieceKind): { contractId?: string } {
  if (kind === 'contract') return { contractId: contractIdOf(line) };
  return kind === 'subcontract' ? { contractId: line.contractId ?? line.id } : {};
}

/** An amount over the months of its line; months that cancel out share it evenly. */
function monthsLike(amount: Cents, months: readonly MonthAmount[]): MonthAmount[] {
  const isEven = totalOfMonths(months) === 0;
  return allocateOver(amount, months, month => (isEven ? 1 : month.amount)).map(part => ({
    month: part.item.month,
    amount: part.amount,
  }));
}
