import { uprightJson } from '../../../core/evaluation';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';

export const uprightCommand: Command = {
  name: 'upright',
  words: 'Whether the ship stays upright while sinking: screening, not a naval architect’s study.',
  usage: 'reefwright upright FILE [--scenario ID] [--json]',
  options: SCENARIO_OPTION,
  run: call =>
    evaluated(call, evaluation => {
      const { upright, findings } = evaluation;
      const json = uprightJson(evaluation);
      if (upright === undefined) return { json, lines: [], findings };
      const lines = [
        `${capital(upright.verdict)}. ${upright.caution}`,
        ...upright.reasons.map(reason => `  ${reason}`),
        ...(upright.settles === undefined
          ? []
          : [`  What would settle it: ${upright.settles.measurement}. ${upright.settles.why}`]),
        ...upright.sizing.map(
          size =>
            `  ${size.compartment}: ${size.openings} openings, ${size.area.toFixed(2)} m², ${size.cutLength.toFixed(1)} m of cut, fills in ${size.fillMinutes.toFixed(0)} min`,
        ),
        ...upright.missingInputs.map(missing => `  Missing: ${missing}`),
      ];
      return { json, lines, findings };
    }),
};

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
