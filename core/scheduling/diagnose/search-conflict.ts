import { at, known } from '../../base';
import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import type { SearchConflict } from '../search';
import { joinWords, namesOf, relationshipWords } from '../words';

/** What the search found to stand against each other, in ids and one sentence. */
export function searchConflict(compiled: Compiled, conflict: SearchConflict): ConflictSet {
  const { problem } = compiled;
  const names = namesOf(problem);
  const activities = conflict.activities.map(i => at(problem.activities, i).id);
  const relationships = conflict.relationships.flatMap(r => {
    const origin = compiled.relationships[r];
    return origin && 'relationship' in origin ? [origin.relationship] : [];
  });
  const origins = conflict.resources.map(r => at(compiled.resources, r));
  const words = [
    ...relationships.map(r => {
      const relationship = at(problem.relationships, r);
      return `${names.activity(relationship.to)} ${relationshipWords(relationship, names.activity(relationship.from))}`;
    }),
    ...activities.flatMap(id => deadlineWords(compiled, id)),
    ...origins.map(
      origin =>
        `what there is of ${'zone' in origin ? `room in ${names.zone(origin.zone)}` : names.resource(origin.resource)}`,
    ),
  ];
  const about = activities.length > 0 ? ` for ${names.activities(activities)}` : '';
  const sentence =
    words.length > 0 ? `These cannot hold together${about}: ${joinWords(words)}.` : noOrderSentence(compiled);
  const resources = origins.flatMap(origin => ('resource' in origin ? [origin.resource] : []));
  return { kind: conflict.kind, activities, relationships, resources, sentence };
}

function deadlineWords(compiled: Compiled, id: string): string[] {
  const activity = at(compiled.problem.activities, known(compiled.position, id));
  return activity.deadline === undefined ? [] : [`${activity.title} by ${activity.deadline}`];
}

/** When the search has shown that no order works, without a smaller set: the dates that stand against the crews. */
function noOrderSentence(compiled: Compiled): string {
  const due = compiled.problem.activities.flatMap(a =>
    a.deadline === undefined ? [] : [`${a.title} by ${a.deadline}`],
  );
  if (due.length === 0)
    return 'No order of the activities keeps the crews, zones, exclusions and relationships together.';
  return `No order of the activities keeps ${joinWords(due)} with the crews, zones and exclusions there are.`;
}
