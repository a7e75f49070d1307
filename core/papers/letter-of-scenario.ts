import { at } from '../base';
import type { Evaluation } from '../evaluation';

/** The letter of a scenario that is among those compared. @throws BugError when it is not. */
export function letterOfScenario(evaluations: readonly Evaluation[], id: string): string {
  return at(
    evaluations.filter(({ scenario }) => scenario.id === id),
    0,
  ).letter;
}
