import { lowerFirst } from '../../base';
import type { Evaluation } from '../../evaluation';
import type { Recommendation } from './recommendation';

/** What is asked of the board, in one sentence: approve, choose another scenario, do not approve, or wait; after its vote, what it has chosen. */
export function requestSentence(
  { project, scenario, letter }: Evaluation,
  unmet: readonly string[],
  recommended: Recommendation | undefined,
): string {
  const { county } = project.site;
  const named = `scenario ${letter}, ${lowerFirst(scenario.title)}`;
  if (unmet.length > 0)
    return `${county} cannot approve ${named}: it leaves a clean-up goal unmet (${unmet.join('; ')})`;
  if (recommended === undefined) return `${county} cannot decide on ${named} yet: it has no total`;
  if (recommended.isBoardsChoice)
    return recommended.scenario === scenario.id
      ? `The board of ${county} has chosen ${named}`
      : `The board of ${county} has chosen scenario ${recommended.letter}, ${lowerFirst(recommended.title)}, and not scenario ${letter}`;
  if (recommended.scenario !== scenario.id)
    return `${county} is asked to choose scenario ${recommended.letter}, ${lowerFirst(recommended.title)}, rather than scenario ${letter}`;
  return `${county} is asked to approve ${named}`;
}
