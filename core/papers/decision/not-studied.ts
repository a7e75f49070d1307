import { at } from '../../base';
import { benefitView, historyView, type Evaluation } from '../../evaluation';

/** What this estimate has not looked into, found from what the project does not hold; the weightiest first. */
export function notStudied(evaluation: Evaluation, isSimulated: boolean): string[] {
  const { project, upright } = evaluation;
  const { intake, laboratory, measured } = project.survey;
  const unknown = Object.values(intake).filter(answer => answer !== 'yes').length;
  const conditions = project.site.permit?.conditions.filter(({ met }) => met === 'unknown') ?? [];
  return [
    ...(upright === undefined
      ? ['Whether the ship stays upright while sinking: the screen was not run.']
      : ['Stability beyond a screening: no naval architect has studied this ship.']),
    ...(upright !== undefined && upright.missingInputs.length > 0
      ? [
          `What the screen lacks: ${short(at(upright.missingInputs, 0))}${moreOf(upright.missingInputs.length - 1)}.`,
        ]
      : []),
    ...(isBelowHistory(evaluation)
      ? ['Why it costs less than past hulls of its kind and length did: Review sets them side by side.']
      : []),
    ...(isSimulated ? [] : ['The chance of overrunning: no simulation was run for this paper.']),
    ...(laboratory.length === 0 ? ['The materials on board: no laboratory result is in hand.'] : []),
    ...(measured.length === 0 ? ['Quantities: none was measured on board.'] : []),
    ...(project.quotes.length === 0 ? ['The market: no quote has been asked for.'] : []),
    ...(unknown > 0 || Object.keys(intake).length === 0
      ? ['Papers: not all that the guidance asks for are in hand.']
      : []),
    ...(project.site.permit === undefined ? ['The site permit: none is named.'] : []),
    ...(conditions.length > 0 ? ['Whether every condition of the site permit is met.'] : []),
    ...(project.funding === undefined ? ['Who pays: no source of funding is named.'] : []),
    ...(benefitView(evaluation).case?.likely === undefined
      ? ['Benefits to fishing, diving and the coast: the figures for them are not given.']
      : []),
  ];
}

/** Whether the total lies below the band in which past hulls alike came out. */
function isBelowHistory(evaluation: Evaluation): boolean {
  const { total, band } = historyView(evaluation);
  return total !== undefined && band !== undefined && total < band.low;
}

/** The first words of an input, without what stands in brackets or after a semicolon. */
function short(input: string): string {
  return at(input.split(/[(;]/), 0).trim();
}

function moreOf(count: number): string {
  return count > 0 ? `, and ${count} more` : '';
}
