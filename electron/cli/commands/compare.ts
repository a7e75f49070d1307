import type { Finding } from '../../../core/base';
import { evaluate, summarise, type Evaluation } from '../../../core/evaluation';
import { moneyText } from '../../../core/money';
import {
  comparedWords,
  compareScenarios,
  comparisonJson,
  decisionOf,
  riskFacts,
  type Bridge,
  type Comparison,
  type RiskFacts,
} from '../../../core/scenario';
import { UsageError, type Call, type Command } from '../command';
import { fileOf, loadProject, todayOf } from '../load';

export const compareCommand: Command = {
  name: 'compare',
  words: 'All scenarios side by side, and what separates the first from each other.',
  usage: 'reefwright compare FILE [--trials N] [--json]',
  options: {
    trials: {
      type: 'string',
      words: 'simulate every scenario with the same luck, this many trials; none unless given',
      sample: 'N',
    },
  },
  run: call => {
    const { project, findings } = loadProject(fileOf(call));
    if (project === undefined) return { json: { findings }, lines: [], findings };
    const today = todayOf(call, project);
    const evaluations = project.scenarios.map(scenario =>
      evaluate(project, { today, seed: 1, scenario: scenario.id }),
    );
    const comparison = compareScenarios(evaluations, simulated(call, evaluations));
    const all = once([...findings, ...evaluations.flatMap(evaluation => evaluation.findings)]);
    const lines = [
      ...evaluations.map(scenarioLine),
      ...rankingLines(comparison),
      ...comparison.bridges.flatMap(bridge => bridgeLines(bridge, evaluations)),
    ];
    return { json: { ...comparisonJson(comparison), findings: all }, lines, findings: all };
  },
};

/** Simulations of all scenarios with one seed, when asked for. */
function simulated(call: Call, evaluations: readonly Evaluation[]): RiskFacts[] {
  const text = call.option('trials');
  if (text === undefined) return [];
  const trials = Number(text);
  if (!/^\d+$/.test(text) || trials < 100 || trials > 100_000)
    throw new UsageError(`--trials takes a whole number from 100 to 100000, not "${text}".`);
  return evaluations.flatMap(evaluation => riskFacts(evaluation, { trials, seed: 1 }) ?? []);
}

function scenarioLine({ letter, scenario, estimate, upright }: Evaluation): string {
  const summary = estimate?.money && summarise({ ...estimate, money: estimate.money });
  const total = summary?.total === undefined ? 'absent, see findings' : moneyText(summary.total);
  const days = estimate?.schedule.workDays === undefined ? '' : `${estimate.schedule.workDays} work days`;
  const heel = upright?.greatestHeelDegrees;
  const lean = heel === undefined ? 'no heel found' : `greatest heel ${heel.toFixed(1)} degrees`;
  const screen = upright === undefined ? '' : `${lean}, ${upright.verdict} (screening)`;
  return `${letter}  ${scenario.title.padEnd(42)} ${total.padStart(16)}  ${estimate?.schedule.finish ?? ''}  ${days.padStart(13)}  ${screen}`;
}

/** Each finding once: what is wrong with the project is found in every scenario. */
function once(findings: readonly Finding[]): Finding[] {
  const seen = new Map(findings.map(finding => [`${finding.place} ${finding.message}`, finding]));
  return [...seen.values()];
}

/** The order by the weights, and who is not in it. */
function rankingLines(comparison: Comparison): string[] {
  const table = decisionOf(comparison);
  const { ranked, leftOut, isBoardsOwn } = table;
  const order = ranked.map(({ letter, score }) => `${letter} ${score.toFixed(2)}`).join(', ');
  return [
    '',
    `Order by ${isBoardsOwn ? 'the weights of the board' : 'usual weights'}: ${order || 'none'}`,
    ...comparedWords(table),
    ...leftOut.map(({ letter, reason }) => `${letter} is not ranked: it ${reason}`),
  ];
}

function bridgeLines({ from, to, steps, total, risk }: Bridge, evaluations: readonly Evaluation[]): string[] {
  const letter = (id: string) => evaluations.find(({ scenario }) => scenario.id === id)?.letter ?? id;
  const row = (title: string, dollars: string) => `  ${title.padEnd(60)} ${dollars.padStart(16)}`;
  return [
    '',
    `From ${letter(from)} to ${letter(to)}`,
    ...steps.map(({ title, amount }) => row(title, moneyText(amount))),
    row('Difference of the totals', moneyText(total)),
    ...(risk === undefined
      ? []
      : [row(risk.title, moneyText(risk.amount)), row(risk.end.title, moneyText(risk.end.amount))]),
  ];
}
