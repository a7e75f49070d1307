import type { Finding } from '../../../core/base';
import { evaluate, summarise, type Evaluation } from '../../../core/evaluation';
import { moneyText } from '../../../core/money';
import { compareScenarios, comparisonJson, type Bridge } from '../../../core/scenario';
import type { Command } from '../command';
import { fileOf, loadProject, todayOf } from '../load';

export const compareCommand: Command = {
  name: 'compare',
  words: 'All scenarios side by side, and what separates the first from each other.',
  usage: 'reefwright compare FILE [--json]',
  options: {},
  run: call => {
    const { project, findings } = loadProject(fileOf(call));
    if (project === undefined) return { json: { findings }, lines: [], findings };
    const today = todayOf(call, project);
    const evaluations = project.scenarios.map(scenario =>
      evaluate(project, { today, seed: 1, scenario: scenario.id }),
    );
    const comparison = compareScenarios(evaluations);
    const all = once([...findings, ...evaluations.flatMap(evaluation => evaluation.findings)]);
    const lines = [...evaluations.map(scenarioLine), ...comparison.bridges.flatMap(bridgeLines)];
    return { json: { ...comparisonJson(comparison), findings: all }, lines, findings: all };
  },
};

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

function bridgeLines({ from, to, steps, total }: Bridge): string[] {
  const row = (title: string, dollars: string) => `  ${title.padEnd(40)} ${dollars.padStart(16)}`;
  return [
    '',
    `From ${from} to ${to}`,
    ...steps.map(({ title, amount }) => row(title, moneyText(amount))),
    row('Difference of the totals', moneyText(total)),
  ];
}
