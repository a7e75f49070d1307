import type { ReviewActivity, ReviewRelationship, ReviewSchedule } from './input';
import type { Fault } from './standing';

/** Which dates of two activities a kind of relationship holds together: the first may not come after the second. */
const HELD: Readonly<
  Record<ReviewRelationship['kind'], (from: ReviewActivity, to: ReviewActivity) => readonly [string, string]>
> = {
  FS: (from, to) => [from.finish, to.start],
  SS: (from, to) => [from.start, to.start],
  FF: (from, to) => [from.finish, to.finish],
  SF: (from, to) => [from.start, to.finish],
};

/** Relationships the dates do not keep. A lead allows an overlap and is judged elsewhere. */
export function brokenRelationships({ activities, relationships }: ReviewSchedule): Fault[] {
  const byId = new Map(activities.map(one => [one.id, one]));
  return relationships.flatMap(relationship => {
    const [from, to] = [byId.get(relationship.from), byId.get(relationship.to)];
    if (!from || !to)
      return [
        {
          id: relationship.to,
          evidence: `a relationship names ${relationship.from} and ${relationship.to}, of which one is not there`,
        },
      ];
    if (relationship.lag < 0) return [];
    const [first, second] = HELD[relationship.kind](from, to);
    if (first <= second) return [];
    return [
      {
        id: to.id,
        evidence: `${to.title} does not wait for ${from.title} (${relationship.kind}, ${first} is after ${second})`,
      },
    ];
  });
}

/** Stages whose dates are not those of their activities. */
export function brokenStages({ activities, stageDates }: ReviewSchedule): Fault[] {
  return stageDates.flatMap(({ stage, start, finish }) => {
    const own = activities.filter(one => one.stage === stage && one.kind !== 'hammock');
    const first = own.map(one => one.start).toSorted()[0];
    const last = own
      .map(one => one.finish)
      .toSorted()
      .at(-1);
    if (first === undefined || last === undefined || (first === start && last === finish)) return [];
    return [
      {
        id: stage,
        evidence: `the stage ${stage} runs ${start} to ${finish}, its activities ${first} to ${last}`,
      },
    ];
  });
}
