import { benefitJson, benefitView, type BenefitView } from '../../../core/evaluation';
import { dollars } from '../../../core/cash-flow';
import { ENDS, PLANNING_FIGURE } from '../../../core/benefit';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';

export const benefitCommand: Command = {
  name: 'benefit',
  words:
    'Benefits and life: service life, benefit against cost, duties after the sinking, alternatives. Planning figures.',
  usage: 'reefwright benefit FILE [--scenario ID] [--json]',
  options: SCENARIO_OPTION,
  run: call =>
    evaluated(call, evaluation => {
      const view = benefitView(evaluation);
      return {
        json: benefitJson(evaluation, view),
        lines: linesOf(view),
        findings: [...evaluation.findings, ...view.findings],
      };
    }),
};

const END_WORDS = { low: 'all figures low', likely: 'likely', high: 'all figures high' } as const;

function linesOf({ case: made, obligations, alternatives = [] }: BenefitView): string[] {
  const life = made?.life;
  return [
    PLANNING_FIGURE,
    ...(life === undefined ? [] : [`Plate lasts a band of ${life.lowYears} to ${life.highYears} years`]),
    ...ENDS.flatMap(end => {
      const figures = made?.[end];
      const words = END_WORDS[end];
      if (figures === undefined) return [];
      const { benefitCostRatio, breakEvenVisits, netPresentValue } = figures;
      return [
        row(`Net present value, ${words}`, netPresentValue),
        `  Benefit over cost, ${words}: ${benefitCostRatio?.toFixed(2) ?? 'absent'}; break-even visits a year: ${breakEvenVisits ?? 'absent'}`,
      ];
    }),
    ...(obligations?.beside ?? []).map(one =>
      row(
        `${one.title}, ${one.party}, ${one.years} years from year ${one.firstYear}, a year`,
        one.costPerYear,
      ),
    ),
    ...alternatives.map(one =>
      one.today === undefined ? `  ${one.title}: absent` : row(`${one.title}, published per ship`, one.today),
    ),
  ];
}

function row(title: string, amount: number): string {
  return `  ${title.padEnd(72)} ${dollars(amount).padStart(18)}`;
}
