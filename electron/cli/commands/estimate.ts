import { estimateJson, splitAgainstHistory, splitLines, summarise } from '../../../core/evaluation';
import { moneyText, type Money } from '../../../core/money';
import { stageTitle } from '../../../core/estimate';
import { STAGES } from '../../../core/work';
import type { Command } from '../command';
import { evaluated } from '../load';

/** The options of every command that speaks of one scenario. */
export const SCENARIO_OPTION = {
  scenario: {
    type: 'string',
    words: 'the scenario by its id; the first of the file unless given',
    sample: 'ID',
  },
} as const;

export const estimateCommand: Command = {
  name: 'estimate',
  words: 'What one scenario costs and how long it takes.',
  usage: 'reefwright estimate FILE [--scenario ID] [--json]',
  options: SCENARIO_OPTION,
  run: call =>
    evaluated(call, evaluation => {
      const { estimate, findings, scenario, letter } = evaluation;
      const json = estimateJson(evaluation);
      if (estimate?.money === undefined) return { json, lines: [], findings };
      const summary = summarise({ ...estimate, money: estimate.money });
      const { schedule } = estimate;
      const lines = [
        `Scenario ${letter}, ${scenario.title}`,
        ...STAGES.map(stage => row(stageTitle(stage), summary.byStage[stage])),
        row('Total', summary.total),
        row('Contingency', summary.contingency),
        row('Budget', summary.budget),
        `Start ${schedule.start ?? '–'}, finish ${schedule.finish ?? '–'}, ${schedule.workDays ?? '–'} work days, ${schedule.peakCrew} people at the peak`,
        `${Math.round((summary.uncheckedShare ?? 0) * 100)} % of the total rests on figures nobody has checked yet`,
        ...splitLines(splitAgainstHistory(estimate, summary)),
      ];
      return { json, lines, findings };
    }),
};

function row(title: string, amount: Money | undefined): string {
  const dollars =
    amount === undefined ? 'absent, see findings' : moneyText(amount).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  return `  ${title.padEnd(24)} ${dollars.padStart(18)}`;
}
