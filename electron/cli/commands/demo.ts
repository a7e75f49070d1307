import { summarise } from '../../../core/evaluation';
import { moneyText, type Money } from '../../../core/money';
import { PAPERS } from '../../papers/kinds';
import type { Command, Outcome } from '../command';
import { loadProject } from '../load';

const FILE = 'demo/wrenfield.reef.json';
const FOLDER = 'demo/out';

/** The main job on the invented example: every scenario on one screen, and its papers. */
export const demoCommand: Command = {
  name: 'demo',
  words: 'The main job on the invented example: a summary of its scenarios, and their papers in demo/out.',
  usage: 'reefwright demo',
  options: {},
  run: async (call): Promise<Outcome> => {
    const { writePapers } = await import('../../papers/paper-set');
    const { project, findings } = loadProject(FILE);
    if (project === undefined) return { json: { findings }, lines: [], findings };
    const lines = [project.title, 'Ship, place, prices and quotes are invented.', '', head()];
    const files: string[] = [];
    const { comparedScenarios } = await import('../../papers/compared');
    const today = call.today ?? project.statusDate ?? project.rates.priceDate;
    const comparison = comparedScenarios(project, { today, isSimulated: true });
    for (const evaluation of comparison.evaluations) {
      const { estimate, letter, scenario } = evaluation;
      const summary = estimate?.money && summarise({ ...estimate, money: estimate.money });
      lines.push(
        [
          letter,
          scenario.title.padEnd(42),
          dollars(summary?.total),
          dollars(summary?.budget),
          estimate?.schedule.start ?? '–',
          estimate?.schedule.finish ?? '–',
          String(estimate?.schedule.peakCrew ?? '–').padStart(5),
        ].join('  '),
      );
      files.push(...(await writePapers(evaluation, FOLDER, PAPERS, comparison)).files);
    }
    return { json: { files }, lines: [...lines, '', ...files.map(file => `wrote ${file}`)], findings };
  },
};

function head(): string {
  return [
    '',
    'Scenario'.padEnd(43),
    'Total, USD'.padStart(14),
    'Budget, USD'.padStart(14),
    'Start     ',
    'Finish    ',
    'People',
  ].join('  ');
}

function dollars(amount: Money | undefined): string {
  return (amount === undefined ? 'absent' : moneyText(amount).replace(/\B(?=(\d{3})+(?!\d))/g, ',')).padStart(
    14,
  );
}
