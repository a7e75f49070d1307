import { summarise, type EstimateSummary, type Evaluation } from '../evaluation';

const KNOWN = new WeakMap<Evaluation, EstimateSummary>();

/** The estimate of a scenario in figures; nothing when it has no money. */
export function summaryOf(evaluation: Evaluation): EstimateSummary | undefined {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const known = KNOWN.get(evaluation) ?? summarise({ ...estimate, money: estimate.money });
  KNOWN.set(evaluation, known);
  return known;
}

/** Whether a scenario may be carried out: no clean-up goal is left unmet. Without an estimate nobody knows, so no. */
export function isPermittable({ estimate }: Evaluation): boolean {
  return estimate?.unmetGoals.length === 0;
}
