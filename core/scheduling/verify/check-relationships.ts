import type { Finding } from '../../base';
import type { ScheduleRelationship } from '../model';
import type { CheckedActivity, Facts } from './facts';
import { wrong } from './wrong';

/** Every relationship with its least and most lag, counted day by day. */
export function checkRelationships(facts: Facts): Finding[] {
  return facts.problem.relationships.flatMap((relationship, i) => {
    const [from, to] = [facts.activities.get(relationship.from), facts.activities.get(relationship.to)];
    return from && to && !isHistory(relationship, from, to) ? checkOne(facts, relationship, i, from, to) : [];
  });
}

/** What has happened is not judged by the plan; a rest of work begun keeps the plan again. */
function isHistory(relationship: ScheduleRelationship, from: CheckedActivity, to: CheckedActivity): boolean {
  if (to.asked.actualFinish !== undefined) return true;
  if (to.asked.actualStart === undefined || relationship.kind.endsWith('F')) return false;
  return relationship.kind === 'SS'
    ? from.asked.actualStart !== undefined
    : from.asked.actualFinish !== undefined;
}

function checkOne(
  facts: Facts,
  relationship: ScheduleRelationship,
  index: number,
  from: CheckedActivity,
  to: CheckedActivity,
): Finding[] {
  const { kind, lag = 0, maximumLag } = relationship;
  const a = kind.startsWith('F') ? from.finish : from.start;
  const b = kind.endsWith('F') ? to.finish : to.planned;
  const findings: Finding[] = [];
  const pair = `${to.asked.title} after ${from.asked.title}`;
  const least = lag === 0 ? b - a : daysBetween(facts, relationship, to, a, b);
  if (least < lag)
    findings.push(
      wrong(
        'relationship',
        `/relationships/${index}`,
        `${pair}: ${least} days where at least ${lag} are due.`,
      ),
    );
  if (maximumLag === undefined) return findings;
  const most = maximumLag === 0 ? b - a : daysBetween(facts, relationship, to, a, b);
  if (most > maximumLag)
    findings.push(
      wrong(
        'maximum-lag',
        `/relationships/${index}`,
        `${pair}: ${most} days where at most ${maximumLag} may be.`,
      ),
    );
  return findings;
}

/** Days of the lag's kind from one boundary to another; negative when the second is the earlier. */
function daysBetween(
  facts: Facts,
  relationship: ScheduleRelationship,
  to: CheckedActivity,
  a: number,
  b: number,
): number {
  const worked = facts.worked.get(to.asked.calendar);
  let count = 0;
  for (let i = Math.min(a, b); i < Math.max(a, b); i++) {
    if (i < facts.days.length && (relationship.lagUnit === 'day' || worked?.[i] === 1)) count++;
  }
  return b >= a ? count : -count;
}
