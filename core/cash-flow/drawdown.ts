import type { Finding } from '../base';
import type { Cents } from './cents';
import { dollars } from './dollars';
import type { MonthAmount } from './estimate-lines';
import { gatherMonths, monthSpan, totalOfMonths } from './months';
import { upTo } from './receipts';

/** One month of drawing a grant. */
export interface Draw {
  readonly month: string;
  readonly draw: Cents;
  readonly drawn: Cents;
  readonly matchSpent: Cents;
}

/** What the drawing of a grant rests on, by month of payment. */
export interface DrawBasis {
  /** The grant's share of the payments. */
  readonly grant: readonly MonthAmount[];
  /** The match spent, cash and in kind. */
  readonly match: readonly MonthAmount[];
  /** Program income under deduction: what it bears of the payments, and when it comes in. It is used first. */
  readonly income?: { readonly bears: readonly MonthAmount[]; readonly received: readonly MonthAmount[] };
  /** Construction and land may be drawn ahead of the match where the grant's rule says so. */
  readonly mayRunAhead?: boolean;
}

/**
 * The drawdown plan: each month as much as the grant's share of the payments so far, but never a larger part of
 * the grant than the part of the match spent by then, and only after program income in hand is used. Where a
 * credit will lower the match later on, the plan waits for it: what is drawn is not paid back.
 * @source 50 CFR 80.96 (federal money is not drawn faster than the match is spent) and 80.124 (program income first).
 */
export function drawdownPlan(basis: DrawBasis): Draw[] {
  const months = gatherMonths([
    ...basis.grant,
    ...basis.match,
    ...(basis.income?.received ?? []),
    ...(basis.income?.bears ?? []),
  ]);
  const [first, last] = [months[0], months.at(-1)];
  if (!first || !last) return [];
  const [grantTotal, matchTotal] = [totalOfMonths(basis.grant), totalOfMonths(basis.match)];
  let drawn: Cents = 0;
  const span = monthSpan(first.month, last.month);
  return span.map((month, index) => {
    const matchSpent = upTo(basis.match, month);
    const matchKept = Math.max(0, Math.min(...span.slice(index).map(later => upTo(basis.match, later))));
    const due = Math.max(0, upTo(basis.grant, month) - incomeWaiting(basis, month));
    const limit =
      basis.mayRunAhead === true || matchTotal === 0 ? due : inStep(grantTotal, matchKept, matchTotal);
    const target = Math.max(drawn, Math.min(due, limit));
    const draw = target - drawn;
    drawn = target;
    return { month, draw, drawn, matchSpent };
  });
}

/** The largest part of the grant that stands in step with the match spent, rounded down. */
function inStep(grant: Cents, matchSpent: Cents, match: Cents): Cents {
  return Number((BigInt(grant) * BigInt(matchSpent)) / BigInt(match));
}

/** Program income in hand and not yet used: the grant waits for it. */
function incomeWaiting({ income }: DrawBasis, month: string): Cents {
  return income ? Math.max(0, upTo(income.received, month) - upTo(income.bears, month)) : 0;
}

/** Finds the months of a plan in which the grant runs ahead of the match. */
export function checkDrawdown(plan: readonly Draw[], grant: Cents, match: Cents): Finding[] {
  return plan
    .filter(row => BigInt(row.drawn) * BigInt(match) > BigInt(grant) * BigInt(Math.max(0, row.matchSpent)))
    .map(row => ({
      code: 'cash/drawn-ahead-of-match',
      weight: 'warns',
      place: `/drawdown/${row.month}`,
      message: `by the end of ${row.month} ${dollars(row.drawn)} of the grant is drawn against ${dollars(row.matchSpent)} of match spent`,
      meaning: 'the grantor may ask for the money back, with interest',
      remedy: 'draw later, or spend the match earlier',
      rule: '50 CFR 80.96',
    }));
}
