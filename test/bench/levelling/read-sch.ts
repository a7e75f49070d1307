import type { SearchProblem, SearchRelationship } from '../../../core/scheduling/search';

/**
 * Reads an instance with minimum and maximum time lags between starts (`.sch`, ProGen/max format): a line of
 * counts, a line an activity with its successors and the lags in brackets, a line an activity with duration and
 * demands, a line of capacities. A negative lag from j to i says that j starts at most so much after i. The first
 * and last activity are dummies that are kept, since lags refer to them.
 * @source Kolisch, Schwindt and Sprecher, in: Weglarz (ed.), Project Scheduling (1999) 197-212.
 */
export function readSch(text: string): SearchProblem {
  const lines = text.split(/\r?\n/).filter(line => line.trim() !== '');
  const inner = Number(lines[0]?.trim().split(/\s+/)[0]);
  const count = inner + 2;
  if (!Number.isInteger(inner) || lines.length < 2 * count + 2)
    throw new Error('This is not a .sch instance.');
  const relationships = lines.slice(1, count + 1).flatMap(readSuccessors);
  const activities = lines.slice(count + 1, 2 * count + 1).map(line => {
    const row = line.trim().split(/\s+/).map(Number);
    return { duration: row[2] ?? 0, demands: row.slice(3) };
  });
  const capacities = (lines[2 * count + 1] ?? '').trim().split(/\s+/).map(Number);
  const lags = relationships.reduce((sum, link) => sum + Math.abs(link.minimumLag ?? 0), 0);
  return {
    horizon: activities.reduce((sum, activity) => sum + activity.duration, lags),
    activities,
    resources: capacities.map(capacity => ({ capacity })),
    relationships,
    calendars: [],
    exclusions: [],
  };
}

function readSuccessors(line: string): SearchRelationship[] {
  const row = line.trim().split(/\s+/);
  const from = Number(row[0]);
  const successors = Number(row[2]);
  return row.slice(3, 3 + successors).map((to, k) => {
    const minimumLag = Number((row[3 + successors + k] ?? '').replace(/[[\]]/g, ''));
    return { from, to: Number(to), kind: 'SS' as const, minimumLag };
  });
}
