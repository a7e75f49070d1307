import { randomStream } from '../../../core/base';
import type { ScheduleActivity, ScheduleProblem, ScheduleRelationship } from '../../../core/scheduling';
import { calendars, work } from './problems';

/** A project of many activities on four calendars, with crews, crane, zones, lags, a hurricane season and a tow. */
export function bigProblem(count: number, seed = 1): ScheduleProblem {
  const random = randomStream(seed, 'big');
  const pick = (n: number) => Math.floor(random() * n);
  const calendar = () => ['five', 'six', 'yard', 'yard'][pick(4)] ?? 'five';
  const zones = ['bow', 'engine', 'holds', 'deck', 'stern'];
  const activities: ScheduleActivity[] = Array.from({ length: count - 1 }, (_, i) =>
    work(`w${i}`, pick(25) === 0 ? 0 : 1 + pick(15), {
      calendar: calendar(),
      place: zones[pick(5)] ?? 'bow',
      crewSize: 2,
      uses: { [`crew${pick(4)}`]: 1 + pick(2), ...(pick(4) === 0 ? { crane: 1 } : {}) },
      ...(pick(20) === 0 ? { durationUnit: 'day' as const, uses: {}, waiting: true, crewSize: 0 } : {}),
    }),
  );
  const relationships: ScheduleRelationship[] = [];
  for (let i = 5; i < count - 1; i++) {
    for (let n = 0; n < 2; n++) {
      const from = Math.max(0, i - 1 - pick(25));
      relationships.push({
        from: `w${from}`,
        to: `w${i}`,
        kind: pick(8) === 0 ? 'SS' : 'FS',
        lag: pick(5) === 0 ? 2 : 0,
      });
    }
  }
  activities.push(
    work('tow', 6, { calendar: 'all', consecutive: { weatherDays: 4 }, closures: ['hurricanes'] }),
  );
  for (let i = Math.max(0, count - 12); i < count - 1; i++)
    relationships.push({ from: `w${i}`, to: 'tow', kind: 'FS' });
  return {
    horizonStart: '2027-03-01',
    calendars,
    closures: { hurricanes: { id: 'hurricanes', title: 'Hurricane season', from: '06-01', to: '11-30' } },
    resources: [
      ...Array.from({ length: 4 }, (_, i) => ({ id: `crew${i}`, title: `Crew ${i}`, capacity: 3 })),
      {
        id: 'crane',
        title: 'Crane',
        capacity: 1,
        heldOnIdleDays: true,
        capacityChanges: [{ from: '2027-05-01', to: '2027-05-10', capacity: 0 }],
      },
    ],
    activities,
    relationships,
    zones: zones.map((id, i) => ({ id, title: id, crewLimit: 12, touches: zones.slice(i + 1, i + 2) })),
    exclusions: [
      {
        id: 'hot',
        title: 'Hot work and fuel',
        first: activities.slice(0, 10).map(a => a.id),
        second: activities.slice(20, Math.min(30, count - 1)).map(a => a.id),
      },
    ],
  };
}
