import { onceFor } from '../base';
import type { DayUnit, RelationshipKind, ScheduleProblem, ScheduleRelationship } from './model';
import type { Holding } from './result';

/** "3 work days", "1 calendar day". */
export function daysWords(days: number, unit: DayUnit): string {
  return `${days} ${unit === 'day' ? 'calendar' : 'work'} day${days === 1 ? '' : 's'}`;
}

const ENDS: Readonly<Record<RelationshipKind, { readonly from: string; readonly to: string }>> = {
  FS: { from: 'finishes', to: 'starts' },
  SS: { from: 'starts', to: 'starts' },
  FF: { from: 'finishes', to: 'finishes' },
  SF: { from: 'starts', to: 'finishes' },
};

/**
 * A relationship seen from the activity that waits, as words.
 * @param title the title of the activity it waits for.
 * @example `relationshipWords({ kind: 'FS', lag: 3 }, 'Tank cleaning')` is "after Tank cleaning finishes, 3 work days later"
 */
export function relationshipWords(
  relationship: Pick<ScheduleRelationship, 'kind' | 'lag' | 'lagUnit' | 'maximumLag'>,
  title: string,
): string {
  const { kind, lag = 0, lagUnit = 'work-day', maximumLag } = relationship;
  const ends = ENDS[kind];
  const own = ends.to === 'finishes' ? 'finishes ' : '';
  const base = `${own}after ${title} ${ends.from}`;
  const least =
    lag > 0
      ? `${base}, ${daysWords(lag, lagUnit)} later`
      : lag < 0
        ? `${own}at most ${daysWords(-lag, lagUnit)} before ${title} ${ends.from}`
        : base;
  return maximumLag === undefined
    ? least
    : `${least}, and at most ${daysWords(maximumLag, lagUnit)} after that`;
}

/** Why an activity is where it is, as one sentence without its own title. */
export function holdingWords(problem: ScheduleProblem, holding: Holding): string {
  const names = namesOf(problem);
  switch (holding.kind) {
    case 'start':
      return `starts with the project on ${holding.date}`;
    case 'status-date':
      return `what is not done is planned from the status date ${holding.date} on`;
    case 'actual':
      return `has happened, on ${holding.date}`;
    case 'not-before':
      return `may not start before ${holding.date}`;
    case 'relationship':
      return relationshipWords({ ...holding, kind: holding.type }, names.activity(holding.from));
    case 'maximum-lag':
      return `must not run too far ahead of ${names.activity(holding.to)}`;
    case 'resource':
      return `waits for ${names.resource(holding.resource)}, in use by ${names.activities(holding.activities)}`;
    case 'crew-limit':
      return `waits for room in ${names.zone(holding.zone)}, where ${names.activities(holding.activities)} ${holding.activities.length === 1 ? 'is' : 'are'} at work`;
    case 'capacity':
      return `waits because ${names.resource(holding.resource)} is not at hand in that number until after ${holding.date}`;
    case 'exclusion':
      return `may not run at the same time as ${names.activity(holding.activity)} (${names.exclusion(holding.exclusion)})`;
    case 'zone-state':
      return `${names.state(holding.state)} in ${names.zone(holding.zone)}: after ${names.activity(holding.activity)}`;
    case 'calendar':
      return `no work from ${holding.idleFrom} on its calendar ${names.calendar(holding.calendar)}`;
    case 'closure':
      return `${names.closure(holding.closure)}, closed from ${holding.idleFrom}`;
    case 'window':
      return `needs an open window of ${daysWords(holding.daysNeeded, 'day')} on end; there is none from ${holding.idleFrom}`;
    case 'levelling':
      return 'placed later to even out the crews';
  }
}

/** Titles by id, read once for each problem; an id without a title speaks for itself. */
export const namesOf = onceFor((problem: ScheduleProblem) => {
  const titles = (list: readonly { readonly id: string; readonly title: string }[] = []) => {
    const byId = new Map(list.map(entry => [entry.id, entry.title]));
    return (id: string) => byId.get(id) ?? id;
  };
  const activity = titles(problem.activities);
  return {
    activity,
    activities: (ids: readonly string[]) => joinWords(ids.map(activity)),
    resource: titles(problem.resources),
    zone: titles(problem.zones),
    exclusion: titles(problem.exclusions),
    state: titles(problem.zoneStates),
    calendar: (id: string) => problem.calendars[id]?.title ?? id,
    closure: (id: string) => problem.closures?.[id]?.title ?? id,
  };
});

/** "A", "A and B", "A, B and C". */
export function joinWords(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.slice(-1).join('')}`;
}
