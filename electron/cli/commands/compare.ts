import { evaluate } from '../../../core/evaluation';
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
    const all = [
      ...findings,
      ...evaluations.flatMap(({ letter, findings: own }) =>
        own.map(finding => ({ ...finding, place: `${letter}${finding.place}` })),
      ),
    ];
    const lines = [
      ...evaluations.map(({ letter, scenario }) => `${letter}  ${scenario.title}`),
      ...comparison.bridges.flatMap(bridgeLines),
    ];
    return { json: { ...comparisonJson(comparison), findings: all }, lines, findings: all };
  },
};

function bridgeLines({ from, to, steps, total }: Bridge): string[] {
  const row = (title: string, dollars: string) => `  ${title.padEnd(40)} ${dollars.padStart(16)}`;
  return [
    '',
    `From ${from} to ${to}`,
    ...steps.map(({ title, amount }) => row(title, moneyText(amount))),
    row('Difference of the totals', moneyText(total)),
  ];
}
