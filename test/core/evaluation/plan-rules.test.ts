import { describe, expect, it } from 'vitest';
import type { Adjustment } from '../../../core/estimate';
import type { Project } from '../../../core/project';
import { compareBaseline, verifySchedule, type ScheduledActivity } from '../../../core/scheduling';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const parts = estimated(evaluated(base));
const dated = new Map(parts.schedule.activities.map(activity => [activity.id, activity]));
const of = (id: string): ScheduledActivity => {
  const found = dated.get(id);
  if (found === undefined) throw new Error(`${id} is not in the schedule`);
  return found;
};
const changed = (items: readonly Omit<Adjustment, 'note'>[], more: Partial<Project> = {}): Project => ({
  ...base,
  ...more,
  items: items.map(item => ({ note: '', ...item })),
});

describe('from the document to the schedule: states of zones', () => {
  const inState = (field: 'opensStates' | 'needsStates' | 'endsStates', place: string | undefined) =>
    parts.problem.activities.filter(
      one => one.place === place && one[field]?.includes('gas-free') === true && (one.workDays ?? 0) > 0,
    );
  const hot = parts.problem.activities.filter(one => one.needsStates?.includes('gas-free') === true);

  it('hot work begins after a certificate of its zone, and no work that takes it away lies between', () => {
    expect(hot.length).toBeGreaterThan(3);
    for (const { id, place } of hot) {
      const { start } = of(id);
      const certified = inState('opensStates', place)
        .map(one => of(one.id).finish)
        .filter(finish => finish < start);
      expect(certified.length, id).toBeGreaterThan(0);
      const last = certified.toSorted().at(-1) ?? '';
      const lost = inState('endsStates', place).filter(
        one => of(one.id).finish > last && of(one.id).start < start,
      );
      expect(
        lost.map(one => one.id),
        id,
      ).toEqual([]);
    }
  });
  it('the spells are told with their days of checks, and each is opened again after a long stop', () => {
    const { zoneStates } = parts.schedule;
    expect(zoneStates.length).toBeGreaterThan(0);
    for (const { from, to, workDays, reopened } of zoneStates) {
      expect([from <= to, workDays > 0]).toEqual([true, true]);
      for (const day of reopened) expect(day > from && day <= to).toBe(true);
    }
  });
  it('without the certificate of its zone a finding warns of all hot work there', () => {
    const only = hot.map(one => inState('opensStates', one.place)).find(openers => openers.length === 1)?.[0];
    expect(only).toBeDefined();
    const without = evaluated(changed([{ item: only?.id ?? '', include: false }]));
    const warned = without.findings.filter(finding => finding.code === 'schedule/state-not-opened');
    expect(warned.map(finding => finding.place).toSorted()).toEqual(
      hot
        .filter(one => one.place === only?.place)
        .map(one => `/activities/${one.id}`)
        .toSorted(),
    );
    expect(warned.every(finding => finding.weight === 'warns')).toBe(true);
  });
});

describe('from the document to the schedule: neighbours and spans', () => {
  it('hot work and fuel cleaning never share a day in one zone or in zones that touch', () => {
    const exclusion = parts.problem.exclusions?.find(one => one.id === 'hot-work-and-fuel');
    const places = new Map(parts.problem.activities.map(one => [one.id, one.place]));
    const zones = new Map(parts.problem.zones.map(zone => [zone.id, zone]));
    const isNear = (a = '', b = '') =>
      a === b || zones.get(a)?.touches?.includes(b) === true || zones.get(b)?.touches?.includes(a) === true;
    let pairs = 0;
    for (const first of exclusion?.first ?? []) {
      for (const second of exclusion?.second ?? []) {
        if (!isNear(places.get(first), places.get(second))) continue;
        pairs++;
        const isApart = of(first).finish < of(second).start || of(second).finish < of(first).start;
        expect(isApart, `${first} and ${second}`).toBe(true);
      }
    }
    expect(pairs).toBeGreaterThan(0);
  });
  it('a span runs from the first start of what opens it to the last finish of what closes it', () => {
    expect(parts.problem.hammocks.length).toBeGreaterThan(2);
    for (const { id, fromStartOf, toFinishOf } of parts.problem.hammocks) {
      const span = parts.schedule.hammocks.find(one => one.id === id);
      const first = fromStartOf.map(one => of(one).start).toSorted()[0];
      const last = toFinishOf
        .map(one => of(one).finish)
        .toSorted()
        .at(-1);
      expect([span?.start, span?.finish], id).toEqual([first, last]);
    }
  });
});

describe('from the document to the schedule: progress and baseline', () => {
  const first = parts.schedule.activities.find(one => one.workDays > 3 && one.start === parts.schedule.start);
  const next = parts.schedule.activities.find(one => one.workDays > 5 && one.id !== first?.id);

  it('what is done stays, what is begun goes on from the status date, and nothing else starts before it', () => {
    const project = changed(
      [
        { item: first?.id ?? '', actualStart: '2027-01-05', actualFinish: '2027-01-15' },
        {
          item: next?.id ?? '',
          actualStart: '2027-01-11',
          remaining: { value: '4', unit: 'work-day', basis: 'surveyed', source: 'Site diary', year: 2027 },
        },
      ],
      { statusDate: '2027-02-01' },
    );
    const { schedule, problem } = estimated(evaluated(project));
    const found = new Map(schedule.activities.map(one => [one.id, one]));
    expect(found.get(first?.id ?? '')).toMatchObject({ start: '2027-01-05', finish: '2027-01-15' });
    const begun = found.get(next?.id ?? '');
    // Its rest also waits for what it should have waited for, which is not done yet.
    expect([begun?.start, (begun?.resumed ?? '') >= '2027-02-01']).toEqual(['2027-01-11', true]);
    const others = schedule.activities.filter(one => ![first?.id, next?.id].includes(one.id));
    expect(others.every(one => one.start >= '2027-02-01')).toBe(true);
    expect(verifySchedule(problem, schedule)).toEqual([]);
  });
  it('against the plan as approved, work held back is told with the days it moved, and the finish with it', () => {
    const held = parts.schedule.criticalChain[0] ?? '';
    const later = estimated(evaluated(changed([{ item: held, notBefore: '2027-03-01' }]))).schedule;
    const { changed: moved, added, removed, finish = 0 } = compareBaseline(parts.schedule, later);
    expect([added, removed]).toEqual([[], []]);
    expect(moved.find(one => one.id === held)?.start).toBeGreaterThan(0);
    expect(finish).toBeGreaterThan(0);
  });
});
