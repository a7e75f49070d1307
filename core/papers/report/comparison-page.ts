import { dollarsOf } from '../../money';
import { summarise, type Evaluation } from '../../evaluation';
import type { Bridge } from '../../scenario';
import { letterOfScenario } from '../letter-of-scenario';
import { barChart } from './charts';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, table, type Markup } from './markup';
import { dateWords, dollarsAndCents, percentWords, signedDollars } from './words';

/** The scenarios side by side, and what separates the first from each other. */
export function comparisonPage({ comparison }: ReportFacts): Markup | undefined {
  if (comparison === undefined || comparison.evaluations.length < 2) return undefined;
  const { evaluations, bridges } = comparison;
  return element(
    'section',
    { class: 'page' },
    heading(2, 'Scenarios side by side'),
    table(
      'Scenarios',
      [
        { title: 'Scenario' },
        { title: 'Total, USD', figures: true },
        { title: 'Budget, USD', figures: true },
        { title: 'Finish', figures: true },
        { title: 'Not yet checked', figures: true },
        { title: 'Upright screen' },
      ],
      evaluations.map(row),
      undefined,
      'compact',
    ),
    paragraph('The upright screen is a screening, not a naval architect’s study.'),
    ...bridges.map(bridge => bridgePart(bridge, evaluations)),
  );
}

function row(evaluation: Evaluation): string[] {
  const { estimate, letter, scenario, upright } = evaluation;
  const summary = estimate?.money && summarise({ ...estimate, money: estimate.money });
  return [
    `${letter}: ${scenario.title}`,
    dollarsAndCents(summary?.total),
    dollarsAndCents(summary?.budget),
    dateWords(estimate?.schedule.finish),
    summary?.uncheckedShare === undefined ? 'not known' : percentWords(summary.uncheckedShare),
    upright?.verdict ?? 'not run',
  ];
}

function bridgePart(bridge: Bridge, evaluations: readonly Evaluation[]): Markup {
  const letterOf = (id: string) => letterOfScenario(evaluations, id);
  const [from, to] = [letterOf(bridge.from), letterOf(bridge.to)];
  return element(
    'div',
    {},
    heading(3, `What separates ${from} from ${to}`),
    barChart(
      `Steps from the total of ${from} to the total of ${to}, US dollars`,
      bridge.steps.map(step => ({
        title: step.title,
        value: dollarsOf(step.amount),
        words: signedDollars(step.amount),
      })),
    ),
    paragraph(together(bridge)),
  );
}

/** What the steps come to, and what risk adds to it: the totals hold none. */
function together({ total, risk }: Bridge): string {
  const totals = signedDollars(total);
  if (risk === undefined) return `Together the totals differ by ${totals}.`;
  const [amount, end] = [signedDollars(risk.amount), signedDollars(risk.end.amount)];
  return risk.kind === 'contingency'
    ? `Totals differ by ${totals}, the contingency for risk by ${amount}, budgets by ${end}.`
    : `Totals differ by ${totals}; with the risk in 80 of 100 runs, ${amount}, it is ${end}.`;
}
