import { known, withId } from '../../base';
import type { Stage } from '../../cash-flow';
import { STAGES } from '../../cash-flow';
import { isObligation } from '../../estimate';
import type { ReviewActivity, ReviewRelationship, ReviewSchedule } from '../../review';
import type { Holding, ScheduledActivity } from '../../scheduling';
import type { WorkItem } from '../../work';
import type { Evaluation } from '../evaluate';
import { wholeSpan } from '../timing';
import { paidHours, type BookBasis } from './book-lines';

/** The schedule as a reviewer sees it. */
export function reviewSchedule(basis: BookBasis): ReviewSchedule {
  const { schedule, items, problem } = basis.parts;
  const { start, finish } = wholeSpan(schedule);
  const activities = [
    ...schedule.activities.map(activity => reviewActivity(activity, withId(items, activity.id), basis)),
    ...spansAndObligations(basis),
  ];
  return {
    activities,
    relationships: problem.relationships.map(one => reviewRelationship(one, basis)),
    resourceLinks: resourceLinks(schedule.activities),
    start,
    finish,
    stageDates: stageDates(activities),
    ...baselineOf(basis),
  };
}

/** The approved plan that the record keeps. */
function baselineOf({ evaluation }: BookBasis): Pick<ReviewSchedule, 'baseline'> {
  const kept = evaluation.project.record?.baseline;
  return kept === undefined ? {} : { baseline: { finish: kept.finish, keptOn: kept.keptOn } };
}

function reviewActivity(activity: ScheduledActivity, item: WorkItem, basis: BookBasis): ReviewActivity {
  const { parts, evaluation } = basis;
  const change = parts.input.adjustments.get(item.id);
  const reason = reasonOf(item, evaluation);
  return {
    id: item.id,
    title: activity.title,
    stage: item.stage,
    lineIds: [item.id],
    kind: activity.workDays === 0 ? 'milestone' : 'activity',
    workDays: activity.workDays,
    start: activity.start,
    finish: activity.finish,
    totalFloat: activity.totalFloat,
    isCritical: activity.critical,
    hours: paidHours(basis, item.id),
    ...(item.crew !== undefined && { crew: item.crew }),
    ...(change?.notBefore !== undefined && { fixedDate: change.notBefore }),
    ...(reason !== undefined && { reason }),
    ...(change?.actualStart !== undefined && { actualStart: change.actualStart }),
    ...(change?.actualFinish !== undefined && { actualFinish: change.actualFinish }),
  };
}

/** Why an activity takes its time or has its date: what the record says, the note of a date, else the source of a time. */
function reasonOf({ id, duration }: WorkItem, { project }: Evaluation): string | undefined {
  const written = project.record?.reasons.find(one => one.item === id)?.reason;
  const change = project.items.find(one => one.item === id && one.notBefore !== undefined);
  if (written !== undefined || change !== undefined) return written ?? change?.note;
  if (duration === undefined) return undefined;
  return 'perUnit' in duration ? duration.perUnit.source : duration.source;
}

/** What lasts as long as others do, and what follows the sinking: neither is an activity of its own. */
function spansAndObligations(basis: BookBasis): ReviewActivity[] {
  const { parts, spans } = basis;
  const hammocks = new Map(parts.schedule.hammocks.map(one => [one.id, one.workDays]));
  const follow = parts.items.filter(item => hammocks.has(item.id) || isObligation(item));
  return follow.map(item => ({
    id: item.id,
    title: item.title,
    stage: item.stage,
    lineIds: [item.id],
    kind: 'hammock' as const,
    workDays: hammocks.get(item.id) ?? 0,
    ...known(spans, item.id),
    totalFloat: 0,
    isCritical: false,
    hours: paidHours(basis, item.id),
    crew: item.crew ?? 'hired with what it serves',
  }));
}

function reviewRelationship(
  one: BookBasis['parts']['problem']['relationships'][number],
  { parts, evaluation }: BookBasis,
): ReviewRelationship {
  const { from, to, kind, lag = 0 } = one;
  const after = parts.items
    .find(item => item.id === to)
    ?.after.find(before => before.item === from && before.kind === kind);
  const own = evaluation.project.relationships.find(
    other => other.from === from && other.to === to && other.kind === kind,
  );
  const reason = own?.note ?? own?.lag?.source ?? after?.lag?.source;
  return { from, to, kind, lag, ...(reason !== undefined && { reason }) };
}

/** Where a crew, a place or a state, not logic, makes one activity follow another. */
function resourceLinks(activities: readonly ScheduledActivity[]): { from: string; to: string }[] {
  return activities.flatMap(({ id: to, heldBy }) =>
    heldBy.flatMap(holding => holdersOf(holding).map(from => ({ from, to }))),
  );
}

function holdersOf(holding: Holding): readonly string[] {
  if (holding.kind === 'resource' || holding.kind === 'crew-limit') return holding.activities;
  return holding.kind === 'exclusion' || holding.kind === 'zone-state' ? [holding.activity] : [];
}

function stageDates(
  activities: readonly ReviewActivity[],
): { stage: Stage; start: string; finish: string }[] {
  return STAGES.flatMap(stage => {
    const own = activities.filter(one => one.stage === stage && one.kind !== 'hammock');
    const start = own.map(one => one.start).toSorted()[0];
    const finish = own
      .map(one => one.finish)
      .toSorted()
      .at(-1);
    return start === undefined || finish === undefined ? [] : [{ stage, start, finish }];
  });
}
