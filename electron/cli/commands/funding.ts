import { fundingJson, grantView, type GrantView } from '../../../core/evaluation';
import { dollars, type Reconciliation } from '../../../core/cash-flow';
import { UNFUNDED_TITLE } from '../../../core/funding';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';
import { TRIALS_OPTION, simulatedEstimate } from './simulated';

export const fundingCommand: Command = {
  name: 'funding',
  words: 'The grant budget: forms, shares, match, cash gap, and how they come from the estimate.',
  usage: 'reefwright funding FILE [--scenario ID] [--trials N] [--seed S] [--json]',
  options: { ...SCENARIO_OPTION, ...TRIALS_OPTION },
  run: call =>
    evaluated(call, plain => {
      const { evaluation } = simulatedEstimate(call, plain);
      const view = grantView(evaluation);
      return {
        json: fundingJson(evaluation, view),
        lines: linesOf(view),
        findings: [...evaluation.findings, ...view.findings],
      };
    }),
};

function linesOf({ book, cash, contracts }: GrantView): string[] {
  const asked = contracts.filter(one => one.chosen !== undefined || book === undefined);
  const classes = asked.flatMap(({ contractId, amount, chosen, results }) => [
    `Contract ${contractId}, ${dollars(amount)}, ${chosen ?? 'class not chosen'}`,
    ...results.map(one => row(`as ${one.contractClass}: indirect cost`, one.indirect)),
  ]);
  if (book === undefined || cash === undefined) return classes;
  const { peak } = cash.cash.view;
  return [
    ...book.awards.map(({ source, form }) => `${source.title}: ${form.kind}`),
    row('Federal', book.federal),
    row('Match', book.match),
    ...book.bySource.map(source => row(`  ${source.title}`, source.amount)),
    ...(book.unfunded === 0 ? [] : [row(`  ${UNFUNDED_TITLE}`, book.unfunded)]),
    row('Indirect cost', book.indirect),
    row('Program income', book.programIncome),
    ...classes,
    ...[book.reconciliation, cash.cash.reconciliation].flatMap(stepsOf),
    peak === undefined ? 'No cash gap' : row(`Cash gap at its peak, ${peak.month}`, peak.amount),
  ];
}

function stepsOf({ from, steps, to, difference }: Reconciliation): string[] {
  return [
    '',
    ...[from, ...steps, to].map(step => row(step.title, step.amount)),
    row('Not explained', difference),
  ];
}

function row(title: string, amount: number): string {
  return `  ${title.padEnd(64)} ${dollars(amount).padStart(18)}`;
}
