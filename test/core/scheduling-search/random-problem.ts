import { workDaysOf, type RelationshipKind, type SearchProblem } from '../../../core/scheduling/search';
import { randomStream } from '../../../core/base';

/** What a random problem may contain. */
export interface Ingredients {
  readonly activities: number;
  readonly hasCalendars?: boolean;
  readonly hasKinds?: boolean;
  readonly hasMaximums?: boolean;
  readonly hasWindows?: boolean;
  readonly hasVaryingCapacity?: boolean;
  readonly hasExclusions?: boolean;
  readonly hasFixed?: boolean;
  readonly resources?: number;
}

const KINDS: readonly RelationshipKind[] = ['FS', 'SS', 'FF', 'SF'];

/** A small random problem, the same for the same seed. */
export function randomProblem(seed: number, has: Ingredients): SearchProblem {
  const random = randomStream(seed, 'random problem');
  const below = (count: number): number => Math.floor(random() * count);
  const resources = has.resources ?? 2;
  const horizon = 60 + has.activities * 12;
  const capacities = Array.from({ length: resources }, () => 3 + below(4));
  const week = (idle: readonly number[]) =>
    workDaysOf(Array.from({ length: horizon }, (_, day) => !idle.includes(day % 7)));
  const calendars = has.hasCalendars === true ? [week([5, 6]), week([6]), week([])] : [];
  const activities = Array.from({ length: has.activities }, (_, i) => ({
    duration: below(8) === 0 ? 0 : 1 + below(5),
    demands: capacities.map(capacity => (below(3) === 0 ? 0 : 1 + below(Math.max(1, capacity - 1)))),
    ...(calendars.length > 0 && below(4) > 0 ? { calendar: below(calendars.length) } : {}),
    ...(has.hasWindows === true && below(4) === 0 ? { notBefore: below(12) } : {}),
    ...(has.hasWindows === true && below(4) === 0
      ? { startAllowed: windows(horizon, below(9) + 3, below) }
      : {}),
    ...(has.hasFixed === true && i === 0 ? { fixedStart: below(3) } : {}),
  }));
  const relationships = Array.from({ length: has.activities + 1 }, () => below(has.activities - 1)).map(
    from => {
      const to = from + 1 + below(has.activities - from - 1);
      const kind = has.hasKinds === true ? (KINDS[below(4)] ?? 'FS') : 'FS';
      const minimumLag = has.hasKinds === true ? below(5) - 1 : 0;
      const lagCalendar = calendars.length > 0 && below(2) === 0 ? { calendar: below(calendars.length) } : {};
      const maximum = has.hasMaximums === true && below(3) === 0 ? { maximumLag: minimumLag + below(5) } : {};
      return { from, to, kind, minimumLag, ...lagCalendar, ...maximum };
    },
  );
  return {
    horizon,
    activities,
    relationships,
    calendars,
    resources: capacities.map((capacity, r) => ({
      capacity,
      ...(has.hasVaryingCapacity === true && below(2) === 0
        ? {
            capacityByDay: Int32Array.from({ length: horizon }, (_, day) =>
              day % 9 < 2 ? capacity - 2 : capacity,
            ),
          }
        : {}),
      ...(has.hasCalendars === true && r === 0 ? { isHeldOnIdleDays: true } : {}),
    })),
    exclusions:
      has.hasExclusions === true
        ? [
            { first: [1], second: [2, 3] },
            { first: [2], second: [3] },
          ]
        : [],
  };
}

function windows(horizon: number, every: number, below: (count: number) => number): Uint8Array {
  const from = below(every);
  return Uint8Array.from({ length: horizon }, (_, day) => ((day + from) % every < 2 ? 1 : 0));
}
