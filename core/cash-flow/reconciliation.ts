import { sumCents, type Cents } from './cents';

/** One step from one figure to another: signed, named, and with the lines it comes from where it has some. */
export interface ReconciliationStep {
  readonly id: string;
  readonly title: string;
  readonly amount: Cents;
  readonly lineIds?: readonly string[];
}

/** From one figure to another by named steps. `difference` is what the steps leave unexplained: 0 when it closes. */
export interface Reconciliation {
  readonly id: string;
  readonly from: ReconciliationStep;
  readonly steps: readonly ReconciliationStep[];
  readonly to: ReconciliationStep;
  readonly difference: Cents;
  readonly closes: boolean;
}

/**
 * Reconciles a figure to another. The target must come from its own book, never from the steps; else the
 * reconciliation proves nothing.
 */
export function reconcile(
  id: string,
  from: ReconciliationStep,
  steps: readonly ReconciliationStep[],
  to: ReconciliationStep,
): Reconciliation {
  const difference = from.amount + sumCents(steps.map(step => step.amount)) - to.amount;
  return {
    id,
    from,
    steps: steps.filter(step => step.amount !== 0),
    to,
    difference,
    closes: difference === 0,
  };
}
