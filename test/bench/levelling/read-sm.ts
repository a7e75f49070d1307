import type { SearchProblem } from '../../../core/scheduling/search';

/**
 * Reads a single-mode instance of the public project-scheduling library (`.sm`).
 * The two dummy activities (source and sink, no duration, no demand) are left out.
 * @source Kolisch and Sprecher, European Journal of Operational Research 96 (1997) 205-216.
 */
export function readSm(text: string): SearchProblem {
  const lines = text.split(/\r?\n/);
  const jobs = numberAfter(lines, 'jobs (incl. supersource/sink )');
  const inner = jobs - 2;
  const precedence = lines.findIndex(line => line.startsWith('PRECEDENCE RELATIONS'));
  const requests = lines.findIndex(line => line.startsWith('REQUESTS/DURATIONS'));
  const availabilities = lines.findIndex(line => line.startsWith('RESOURCEAVAILABILITIES'));
  const capacities = numbersOf(lines[availabilities + 2]);
  const activities = rows(lines, requests + 3, jobs)
    .slice(1, -1)
    .map(row => ({ duration: row[2] ?? 0, demands: row.slice(3) }));
  const relationships = rows(lines, precedence + 2, jobs).flatMap(row =>
    row
      .slice(3)
      .map(to => ({ from: (row[0] ?? 0) - 2, to: to - 2, kind: 'FS' as const, minimumLag: 0 }))
      .filter(({ from, to }) => from >= 0 && to < inner),
  );
  return {
    horizon: activities.reduce((sum, activity) => sum + activity.duration, 0),
    activities,
    resources: capacities.map(capacity => ({ capacity })),
    relationships,
    calendars: [],
    exclusions: [],
  };
}

function numberAfter(lines: readonly string[], label: string): number {
  const line = lines.find(text => text.startsWith(label));
  if (line === undefined) throw new Error(`No line "${label}": this is not a single-mode instance.`);
  return Number(line.split(':')[1]);
}

function rows(lines: readonly string[], from: number, count: number): number[][] {
  return lines.slice(from, from + count).map(numbersOf);
}

function numbersOf(line: string | undefined): number[] {
  return (line ?? '').trim().split(/\s+/).map(Number);
}
