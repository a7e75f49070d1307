import { historyJson, historyView, reviewJson, reviewRows, type HistoryView } from '../../../core/evaluation';
import { dollars } from '../../../core/cash-flow';
import { reviewFindings, type ReviewRow } from '../../../core/review';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';
import { TRIALS_OPTION, simulatedEstimate } from './simulated';

export const reviewCommand: Command = {
  name: 'review',
  words: 'The quality review of estimate and schedule, and the recorded growth and cost of past hulls.',
  usage: 'reefwright review FILE [--scenario ID] [--trials N] [--seed S] [--json]',
  options: { ...SCENARIO_OPTION, ...TRIALS_OPTION },
  run: call =>
    evaluated(call, plain => {
      const { evaluation, simulation } = simulatedEstimate(call, plain);
      const rows = reviewRows(evaluation, simulation);
      const history = historyView(evaluation);
      const json = {
        scenario: evaluation.scenario.id,
        simulated: simulation !== undefined,
        ...(simulation && { trials: simulation.trials, seed: simulation.seed }),
        review: reviewJson(rows),
        history: historyJson(history),
        findings: [...evaluation.findings, ...reviewFindings(rows)],
      };
      return {
        json,
        lines: [...rows.map(reviewLine), ...historyLines(history)],
        findings: evaluation.findings,
      };
    }),
};

/** A practice with its standing and the first of its evidence. */
export function reviewLine({ standing, practice, evidence }: ReviewRow): string {
  const [first, ...more] = evidence;
  return `${standing.padEnd(11)} ${practice}: ${first ?? ''}${more.length === 0 ? '' : ` (and ${more.length} more)`}`;
}

function historyLines({ growth, likeHulls }: HistoryView): string[] {
  return [
    '',
    ...(growth
      ? [
          `Past hulls grew by ${growth.least} to ${growth.most}, the middle is ${growth.median}; the budget is ${growth.factor.toFixed(2)} times the estimate.`,
        ]
      : []),
    ...likeHulls.map(hull => `${hull.hullClass}, ${hull.sunkYear}: ${dollars(hull.today)}`),
  ];
}
