import { isoOf } from '../../calendar';
import { at } from '../../base';
import type { Compiled } from '../compile/compiled';
import { datesOfMoments } from '../compile/dates';
import type { ConflictSet } from '../result';
import { joinWords, namesOf, relationshipWords } from '../words';
import type { EarliestStarts } from './earliest';

/** Chains of relationships, calendars and closures that end after a deadline, or that chase each other for ever. */
export function dateConflicts(compiled: Compiled, earliest: EarliestStarts): ConflictSet[] {
  if (earliest.stuck !== undefined) return [stuckConflict(compiled, earliest, earliest.stuck)];
  return compiled.problem.activities.flatMap((activity, i) => {
    const { latestFinish, fixedStart } = at(compiled.search.activities, i);
    const finish = at(earliest.finishes, i);
    if (latestFinish === undefined || fixedStart !== undefined || finish <= latestFinish) return [];
    const chain = chainTo(compiled, earliest, i);
    const { finish: last } = datesOfMoments(compiled, i, at(earliest.starts, i), finish);
    const leading = chainWords(compiled, chain);
    const reason =
      leading.length > 1
        ? `${joinWords(leading)} lead to ${last} at the earliest`
        : `cannot finish before ${last}${activity.notBefore === undefined ? '' : `, begun no earlier than ${activity.notBefore}`}`;
    const sentence = `${activity.title} must finish by ${activity.deadline ?? ''}, but ${reason}.`;
    return [{ kind: 'deadline', ...chainIds(compiled, chain), resources: [], sentence }];
  });
}

function stuckConflict(compiled: Compiled, earliest: EarliestStarts, stuck: number): ConflictSet {
  const chain = chainTo(compiled, earliest, stuck);
  const rules = relationshipsOf(compiled, chain);
  const hasMost = rules.some(r => compiled.problem.relationships[r]?.maximumLag !== undefined);
  const words = rules.map(r => {
    const relationship = at(compiled.problem.relationships, r);
    const names = namesOf(compiled.problem);
    return `${names.activity(relationship.to)} ${relationshipWords(relationship, names.activity(relationship.from))}`;
  });
  const closures = closuresOf(compiled, chain);
  const also = closures.length > 0 ? ` and ${joinWords(closures)}` : '';
  const sentence =
    hasMost || words.length > 0
      ? `These cannot hold together: ${words.join('; ')}${also}.`
      : `${titleOf(compiled, stuck)} finds no room before ${isoOf(compiled.first + compiled.search.horizon)}${also}.`;
  return { kind: hasMost ? 'maximum-lag' : 'no-room', ...chainIds(compiled, chain), resources: [], sentence };
}

/** A link of the chain that leads to an activity: the activity, and the relationship that sets it. */
interface ChainLink {
  readonly activity: number;
  readonly setBy: number;
}

function chainTo(compiled: Compiled, earliest: EarliestStarts, last: number): ChainLink[] {
  const chain: ChainLink[] = [];
  const seen = new Set<number>();
  for (let activity = last; !seen.has(activity);) {
    seen.add(activity);
    const setBy = at(earliest.setBy, activity);
    chain.unshift({ activity, setBy });
    if (setBy < 0) break;
    const { from, to } = at(compiled.search.relationships, setBy);
    activity = from === activity ? to : from;
  }
  return chain;
}

function chainIds(
  compiled: Compiled,
  chain: readonly ChainLink[],
): { activities: string[]; relationships: number[] } {
  const activities = chain.flatMap(link => compiled.problem.activities[link.activity]?.id ?? []);
  return { activities, relationships: relationshipsOf(compiled, chain) };
}

function relationshipsOf(compiled: Compiled, chain: readonly ChainLink[]): number[] {
  return chain.flatMap(({ setBy }) => {
    const origin = setBy < 0 ? undefined : compiled.relationships[setBy];
    return origin && 'relationship' in origin ? [origin.relationship] : [];
  });
}

function chainWords(compiled: Compiled, chain: readonly ChainLink[]): string[] {
  const first = at(chain, 0).activity;
  const given = compiled.problem.activities[first];
  const from = given?.notBefore === undefined ? '' : ` from ${given.notBefore}`;
  const titles = chain.map(link => titleOf(compiled, link.activity));
  const closures = closuresOf(compiled, chain);
  return [`${at(titles, 0)}${from}`, ...titles.slice(1), ...closures, ...mostLagWords(compiled, chain)];
}

/** The relationships of a chain that say how far apart two activities may lie. */
function mostLagWords(compiled: Compiled, chain: readonly ChainLink[]): string[] {
  const names = namesOf(compiled.problem);
  return relationshipsOf(compiled, chain).flatMap(r => {
    const relationship = at(compiled.problem.relationships, r);
    if (relationship.maximumLag === undefined) return [];
    return [
      `"${names.activity(relationship.to)} ${relationshipWords(relationship, names.activity(relationship.from))}"`,
    ];
  });
}

function closuresOf(compiled: Compiled, chain: readonly ChainLink[]): string[] {
  const ids = chain.flatMap(link => compiled.problem.activities[link.activity]?.closures ?? []);
  return [...new Set(ids)].map(namesOf(compiled.problem).closure);
}

function titleOf(compiled: Compiled, activity: number): string {
  return compiled.problem.activities[activity]?.title ?? 'work begun';
}
