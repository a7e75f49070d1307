import {
  bidJson,
  bidView,
  contractorRun,
  internalJson,
  marginView,
  quoteView,
  tabulationView,
  type BidView,
  type MarginView,
  type TabulationView,
} from '../../../core/evaluation';
import { dollars } from '../../../core/cash-flow';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';
import { TRIALS_OPTION, simulatedFor } from './simulated';

export const bidCommand: Command = {
  name: 'bid',
  words: 'The bid: items, alternates and base bid, and the bids received beside the estimate.',
  usage: 'reefwright bid FILE [--scenario ID] [--internal] [--trials N] [--seed S] [--json]',
  options: {
    ...SCENARIO_OPTION,
    internal: {
      type: 'boolean',
      words: 'with what does not leave the house: build-up, quotes and margin; --trials adds P50 and P80',
    },
    ...TRIALS_OPTION,
  },
  run: call =>
    evaluated(call, evaluation => {
      const view = bidView(evaluation);
      const tabulation = tabulationView(evaluation);
      const quotes = quoteView(evaluation);
      const simulation = call.flag('internal')
        ? simulatedFor(call, evaluation, prepared => contractorRun(evaluation, prepared))
        : undefined;
      const margin = marginView(evaluation, simulation);
      const json = bidJson(evaluation, view, tabulation);
      const inside = call.flag('internal');
      return {
        json: inside ? { ...json, internal: internalJson(view.internal, quotes, margin) } : json,
        lines: [...bidLines(view), ...tabulationLines(tabulation), ...(inside ? marginLines(margin) : [])],
        findings: [
          ...evaluation.findings,
          ...view.findings,
          ...tabulation.findings,
          ...(inside ? quotes.findings : []),
        ],
      };
    }),
};

function bidLines({ sheet, schedule }: BidView): string[] {
  if (sheet === undefined || schedule === undefined) return [];
  return [
    ...sheet.items.map(item => row(`${item.number}  ${item.title}`, item.amount)),
    row('Base bid', sheet.baseBid),
    ...sheet.alternates.map(({ number, title, amount }) =>
      amount === undefined
        ? `  Alternate ${number}  ${title}: no price`
        : row(`Alternate ${number}  ${title}`, amount),
    ),
  ];
}

function tabulationLines({ comparison }: TabulationView): string[] {
  if (comparison === undefined) return [];
  return [
    '',
    row('Estimate of the items', comparison.estimate),
    ...byRank(comparison.totals).map(({ bidder, total, rank }) =>
      total === undefined
        ? `  ${bidder}: no total`
        : row(`${rank === undefined ? '' : `${rank}.  `}${bidder}`, total),
    ),
  ];
}

/** The lowest first; bids without a total last. */
function byRank<T extends { readonly rank?: number }>(totals: readonly T[]): T[] {
  return totals.toSorted((a, b) => (a.rank ?? totals.length + 1) - (b.rank ?? totals.length + 1));
}

function marginLines({ plan, breakEvenGrowth, simulated }: MarginView): string[] {
  if (plan === undefined || breakEvenGrowth === undefined) return [];
  return [
    '',
    row('Margin in the plan', plan.margin),
    `  The cost may grow by ${percent(breakEvenGrowth)} before it is gone.`,
    ...(simulated === undefined
      ? []
      : [row('Margin at P50', simulated.atP50.margin), row('Margin at P80', simulated.atP80.margin)]),
  ];
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function row(title: string, amount: number): string {
  return `  ${title.padEnd(64)} ${dollars(amount).padStart(18)}`;
}
