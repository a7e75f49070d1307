import { uprightJson, withChoices } from '../../../core/evaluation';
import type { Command } from '../command';
import { evaluated } from '../load';
import { uprightLines } from '../upright-lines';
import { SCENARIO_OPTION } from './estimate';

export const uprightCommand: Command = {
  name: 'upright',
  words:
    'Whether the ship stays upright while sinking, and what each choice would cost: screening, not a naval architect’s study.',
  usage: 'reefwright upright FILE [--scenario ID] [--json]',
  options: SCENARIO_OPTION,
  run: call =>
    evaluated(call, screened => {
      const evaluation = withChoices(screened, { today: screened.today, seed: 1 });
      const { upright, findings } = evaluation;
      const json = uprightJson(evaluation);
      return { json, lines: upright === undefined ? [] : uprightLines(evaluation, upright), findings };
    }),
};
