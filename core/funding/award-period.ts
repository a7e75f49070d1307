import { dayOf } from '../calendar';
import {
  allocateCents,
  daysInside,
  firstDayOf,
  gatherMonths,
  lastDayOf,
  spreadLike,
  sumCents,
  totalOfMonths,
  type Cents,
  type MonthAmount,
} from '../cash-flow';
import type { CostPiece } from './cost-pieces';

/** What of a piece falls before, inside and after the award period, and what of it is allowed. */
export interface ScopedPiece {
  readonly piece: CostPiece;
  /** Cost before the start that the grantor did not agree to: pre-award cost. */
  readonly before: Cents;
  /** Cost after the finish: unallowable. */
  readonly after: Cents;
  readonly notAllowable: Cents;
  readonly allowable: Cents;
  /** The allowable cost by month. */
  readonly months: readonly MonthAmount[];
}

/** The period of an award. */
export interface AwardPeriod {
  readonly start: string;
  readonly finish: string;
  readonly preAwardApproved: boolean;
}

/**
 * Finds by month what of a piece the award bears. A month the award starts or ends in is split by its calendar
 * days. Pre-award cost counts only where the grantor agreed to it.
 * @param notAllowable the part of the piece the grantor does not allow, taken from the cost inside the period.
 * @source 2 CFR 200.403(h), 200.308 and 200.458 (pre-award cost); 2 CFR 200.344 (after the period).
 */
export function scopePiece(piece: CostPiece, period: AwardPeriod, notAllowable: Cents): ScopedPiece {
  const split = piece.months.map(entry => splitMonth(entry, period));
  const before = sumCents(split.map(part => part.before));
  const after = sumCents(split.map(part => part.after));
  const inside = gatherMonths(
    split.flatMap((part, index) => {
      const month = piece.months[index]?.month;
      return month === undefined || part.inside === 0 ? [] : [{ month, amount: part.inside }];
    }),
  );
  const insideTotal = totalOfMonths(inside);
  const refused = insideTotal > 0 ? Math.max(0, Math.min(notAllowable, insideTotal)) : 0;
  const allowable = insideTotal - refused;
  const months = refused === 0 ? inside : spreadLike(allowable, inside);
  return { piece, before, after, notAllowable: refused, allowable, months };
}

interface SplitMonth {
  readonly before: Cents;
  readonly inside: Cents;
  readonly after: Cents;
}

function splitMonth({ month, amount }: MonthAmount, period: AwardPeriod): SplitMonth {
  const [start, finish] = [dayOf(period.start), dayOf(period.finish)];
  const [first, last] = [firstDayOf(month), lastDayOf(month)];
  const days = [
    daysInside(month, first, Math.min(start - 1, last)),
    daysInside(month, start, finish),
    daysInside(month, Math.max(finish + 1, first), last),
  ];
  const [before = 0, inside = 0, after = 0] = allocateCents(amount, days);
  return period.preAwardApproved ? { before: 0, inside: inside + before, after } : { before, inside, after };
}
