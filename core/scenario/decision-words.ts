import type { Criterion } from '../project';
import { criterionTitle, type Reading } from './criteria';
import type { DecisionTable } from './decision-table';

/** What the scenarios are compared by, what is alike in all, and what has not been looked at yet. */
export function comparedWords(table: DecisionTable): string[] {
  const { reading, weights, alike, ranked } = table;
  if (ranked.length < 2) return [];
  const titles = (criteria: readonly Criterion[]) => titled(criteria, reading);
  const counted = weights.map(({ criterion }) => criterion);
  return [
    ...(counted.length === 0 ? [] : [`Compared: ${titles(counted)}.`]),
    ...(alike.length === 0 ? [] : [`No difference, so it turns no order: ${titles(alike)}.`]),
    ...notComparedWords(table),
  ];
}

/** What has not been looked at yet, for several scenarios that are ranked. */
export function notComparedWords({ reading, notCompared, ranked }: DecisionTable): string[] {
  if (ranked.length < 2) return [];
  const unread = notCompared.filter(criterion => criterion !== 'confidence');
  return [
    ...(notCompared.includes('confidence')
      ? ['Left out: the chance to be done in time. It counts once the trials are run for every scenario.']
      : []),
    ...(unread.length === 0
      ? []
      : [`Left out, because a scenario has no figure for it: ${titled(unread, reading)}.`]),
  ];
}

function titled(criteria: readonly Criterion[], reading: Reading): string {
  return listed(criteria.map(criterion => `“${criterionTitle(criterion, reading)}”`));
}

/** A sentence for each scenario that leaves others behind, whichever way the board weighs what is compared. */
export function dominanceWords({ dominance, reading }: DecisionTable): string[] {
  const better = [...new Set(dominance.map(pair => pair.better))];
  return better.map(one => {
    const worse = dominance.filter(pair => pair.better === one).map(pair => pair.worse);
    const said = `${one} is at least as good as ${listed(worse)} in all that is compared, and better in some.`;
    return reading === 'plan' ? `By the plan ${said}` : said;
  });
}

/** That scenarios nobody would choose turn the order; nothing where they do not. */
export function turnedByWorseWords({
  dominance,
  firstWithoutWorse,
  ranked,
}: DecisionTable): string | undefined {
  const [first] = ranked;
  if (firstWithoutWorse === undefined || first === undefined) return undefined;
  const worse = [...new Set(dominance.map(pair => pair.worse))].toSorted();
  return `${first.letter} comes first only beside ${listed(worse)}, which another scenario leaves behind in all that is compared: scores run from the worst to the best of those compared. Without ${worse.length === 1 ? 'it' : 'them'} ${firstWithoutWorse} comes first.`;
}

/** `B`, `B and C`, `A, B and C`. */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
