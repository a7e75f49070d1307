import type { Finding } from '../base';
import type { DayUnit, RelationshipKind } from './model';

/**
 * `optimal`: proved that no schedule finishes earlier. `feasible`: at most `gapDays` above the earliest.
 * `infeasible`: proved that none exists. `not-found`: none found and none excluded. `invalid`: the problem has
 * faults. In the last three cases dates and day counts are absent and `findings` says why.
 */
export type ScheduleStatus = 'optimal' | 'feasible' | 'infeasible' | 'not-found' | 'invalid';

/** The answer. Dates are `YYYY-MM-DD`; a finish is the last day worked. */
export interface ScheduleResult {
  readonly status: ScheduleStatus;
  /** Calendar days from the horizon start to the end of the last day worked. */
  readonly calendarDays?: number;
  /** No schedule takes fewer calendar days from the horizon start. */
  readonly lowerBoundDays?: number;
  /** calendarDays less lowerBoundDays. */
  readonly gapDays?: number;
  /** gapDays as a share of lowerBoundDays; 0 when proved optimal. */
  readonly gap?: number;
  /** Forward and backward passes spent. */
  readonly schedules: number;
  readonly start?: string;
  readonly finish?: string;
  /** Days from start to finish on which at least one activity works. */
  readonly workDays?: number;
  readonly activities: readonly ScheduledActivity[];
  readonly hammocks: readonly ScheduledHammock[];
  readonly resourcePeaks: Readonly<Record<string, ResourcePeak>>;
  readonly profiles: Readonly<Record<string, ResourceProfile>>;
  readonly zoneStates: readonly ZoneStatePeriod[];
  /** Most workers (crew sizes) on one day. */
  readonly peakCrew: number;
  /** The resource-constrained critical chain, first to last, activity ids. */
  readonly criticalChain: readonly string[];
  /** When there is no schedule: the sets of constraints that cannot hold together. */
  readonly infeasible?: readonly ConflictSet[];
  readonly findings: readonly Finding[];
}

export interface ScheduledActivity {
  readonly id: string;
  readonly title: string;
  /** First day worked. A milestone without predecessors opens its day, one with predecessors closes it. */
  readonly start: string;
  /** Last day worked; of a milestone the same day as its start. */
  readonly finish: string;
  /** For work begun before the status date: the day on which the rest begins. */
  readonly resumed?: string;
  /** Work days on its own calendar from start to finish (calendar days for `day` durations). */
  readonly workDays: number;
  readonly crewSize: number;
  /** Position in `modes`; 0 for a fixed duration. */
  readonly mode: number;
  /** Work days it can start later, resources kept, without a later finish or a missed deadline. */
  readonly totalFloat: number;
  /** Work days it can start later while nothing else moves. */
  readonly freeFloat: number;
  readonly critical: boolean;
  /** What keeps it from starting earlier, the strongest first. */
  readonly heldBy: readonly Holding[];
}

/** Why an activity is not earlier, as data; `holdingWords` makes the sentence. */
export type Holding =
  | { readonly kind: 'start'; readonly date: string }
  | { readonly kind: 'status-date'; readonly date: string }
  | { readonly kind: 'actual'; readonly date: string }
  | { readonly kind: 'not-before'; readonly date: string }
  | {
      readonly kind: 'relationship';
      readonly relationship: number;
      readonly from: string;
      readonly type: RelationshipKind;
      readonly lag: number;
      readonly lagUnit: DayUnit;
    }
  | {
      readonly kind: 'maximum-lag';
      readonly relationship: number;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: 'resource'; readonly resource: string; readonly activities: readonly string[] }
  | { readonly kind: 'crew-limit'; readonly zone: string; readonly activities: readonly string[] }
  | { readonly kind: 'capacity'; readonly resource: string; readonly date: string }
  | { readonly kind: 'exclusion'; readonly exclusion: string; readonly activity: string }
  | { readonly kind: 'zone-state'; readonly state: string; readonly zone: string; readonly activity: string }
  | { readonly kind: 'calendar'; readonly calendar: string; readonly idleFrom: string }
  | { readonly kind: 'closure'; readonly closure: string; readonly idleFrom: string }
  | { readonly kind: 'window'; readonly daysNeeded: number; readonly idleFrom: string }
  | { readonly kind: 'levelling' };

export interface ScheduledHammock {
  readonly id: string;
  readonly title: string;
  readonly start: string;
  readonly finish: string;
  readonly workDays: number;
  readonly calendarDays: number;
}

export interface ResourcePeak {
  readonly units: number;
  /** The first day of the peak. */
  readonly date: string;
}

/** Units in use day by day. */
export interface ResourceProfile {
  readonly from: string;
  readonly units: readonly number[];
  readonly capacity: readonly number[];
}

/** A spell in which a zone holds a state: what it costs to keep (checks) and to open again. */
export interface ZoneStatePeriod {
  readonly zone: string;
  readonly state: string;
  readonly from: string;
  readonly to: string;
  /** Work days on which work under the state is done: each needs its check. */
  readonly workDays: number;
  /** Days on which it must be opened again after a stop longer than its limit. */
  readonly reopened: readonly string[];
}

/** Constraints that cannot hold together. */
export interface ConflictSet {
  readonly kind: string;
  readonly activities: readonly string[];
  readonly relationships: readonly number[];
  readonly resources: readonly string[];
  /** One sentence that names them all. */
  readonly sentence: string;
}
