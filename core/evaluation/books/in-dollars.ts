import type { Cents, Reconciliation } from '../../cash-flow';
import type { JsonObject } from '../json';

/** Cents as a number of dollars with at most two decimals, as the command line prints money. */
export function inDollars(amount: Cents): number {
  return amount / 100;
}

/** A record of amounts in dollars. */
export function amountsJson(record: Readonly<Record<string, Cents>>): JsonObject {
  return Object.fromEntries(Object.entries(record).map(([key, amount]) => [key, inDollars(amount)]));
}

/** A reconciliation with its steps in dollars. */
export function reconciliationJson({ id, from, steps, to, difference, closes }: Reconciliation): JsonObject {
  const step = (one: Reconciliation['from']): JsonObject => ({
    id: one.id,
    title: one.title,
    amount: inDollars(one.amount),
    ...(one.lineIds && one.lineIds.length > 0 && { lines: one.lineIds }),
  });
  return {
    id,
    from: step(from),
    steps: steps.map(step),
    to: step(to),
    difference: inDollars(difference),
    closes,
  };
}
