import type { Closure, DateSpan, Season, WorkCalendar } from '../calendar';

/**
 * What the scheduler is asked: plain data, dates as `YYYY-MM-DD`, durations in whole days. Everything refers
 * to everything else by id. Faults in it are findings of {@link checkProblem}, never exceptions.
 */
export interface ScheduleProblem {
  /** The first day on which anything may happen. */
  readonly horizonStart: string;
  readonly calendars: Readonly<Record<string, WorkCalendar>>;
  /** Seasonal and other closures that activities name in `closures`. */
  readonly closures?: Readonly<Record<string, Closure>>;
  readonly resources: readonly ScheduleResource[];
  readonly activities: readonly ScheduleActivity[];
  readonly relationships: readonly ScheduleRelationship[];
  readonly zones?: readonly Zone[];
  readonly zoneStates?: readonly ZoneState[];
  readonly exclusions?: readonly Exclusion[];
  readonly hammocks?: readonly Hammock[];
  /** Work up to the evening before this day is history; what is not done is planned from this day on. */
  readonly statusDate?: string;
}

/** Workers of a trade, a crane, a berth: whatever several activities want at the same time. */
export interface ScheduleResource {
  readonly id: string;
  readonly title: string;
  /** Units at hand on every day; `capacityChanges` overrules it. */
  readonly capacity: number;
  /** Units at hand in spans of dates (both ends included); the last span that holds a day counts. */
  readonly capacityChanges?: readonly CapacityChange[];
  /** Calendar id: activities that use it work only on its work days too. */
  readonly calendar?: string;
  /** Whether it stays taken on idle days between start and finish (a berth, a crane on hire); crews do not. */
  readonly heldOnIdleDays?: boolean;
}

export interface CapacityChange extends DateSpan {
  readonly capacity: number;
}

export type DayUnit = 'work-day' | 'day';

/** One crew that can do an activity. */
export interface CrewMode {
  readonly crewSize: number;
  /** Whole days in the activity's `durationUnit`. */
  readonly workDays: number;
  readonly uses: Readonly<Record<string, number>>;
}

export interface ScheduleActivity {
  readonly id: string;
  readonly title: string;
  /** Stage id, for grouping only. */
  readonly stage: string;
  /** Zone id: the zone's crew limit, exclusions and states apply. */
  readonly place?: string;
  /** Whole days in `durationUnit`; 0 is a milestone. Either this or `modes`. */
  readonly workDays?: number;
  /** Workers at the fixed duration; counts against the zone's crew limit. */
  readonly crewSize?: number;
  /** Units of resources at the fixed duration, by resource id. */
  readonly uses?: Readonly<Record<string, number>>;
  /** Alternative crews; the first is the planned one unless `plannedMode` says otherwise. */
  readonly modes?: readonly CrewMode[];
  readonly plannedMode?: number;
  readonly calendar: string;
  /** Default `work-day`. `day`: every calendar day counts and it may begin on any day (permit clocks, curing). */
  readonly durationUnit?: DayUnit;
  /** First day it may run. */
  readonly notBefore?: string;
  /** Last day by which it must have finished. */
  readonly deadline?: string;
  /** Uses nothing: a permit clock, curing, a tide. For display and holding words. */
  readonly waiting?: boolean;
  /**
   * Its days follow each other without an idle day between, inside one open window: its own days and then
   * `weatherDays` of allowance, which the plan keeps free too. Its dates include the allowance.
   */
  readonly consecutive?: { readonly weatherDays: number };
  /** It may run only inside these spans (seasons or dates). */
  readonly windows?: readonly (Season | DateSpan)[];
  /** Closure ids during which it may not run; work pauses over them unless `consecutive`. */
  readonly closures?: readonly string[];
  /** State ids this activity establishes in its zone (a marine chemist's certificate opens `gas-free`). */
  readonly opensStates?: readonly string[];
  /** State ids that must hold in its zone while it runs (hot work needs `gas-free`). */
  readonly needsStates?: readonly string[];
  /** State ids it ends in its zone (opening a tank, moving fuel). */
  readonly endsStates?: readonly string[];
  readonly actualStart?: string;
  readonly actualFinish?: string;
  /** Days left from the status date on, in `durationUnit`, for work begun and not finished. */
  readonly remaining?: number;
}

/** FS finish to start, SS start to start, FF finish to finish, SF start to finish. Never shown: see relationshipWords. */
export type RelationshipKind = 'FS' | 'SS' | 'FF' | 'SF';

export interface ScheduleRelationship {
  readonly from: string;
  readonly to: string;
  readonly kind: RelationshipKind;
  /** Default 0; negative is an overlap. */
  readonly lag?: number;
  /** Default `work-day`, counted on the calendar of `to`. */
  readonly lagUnit?: DayUnit;
  /** The most days that may lie between, same unit; negative: `to` lies at least so many days before `from`. */
  readonly maximumLag?: number;
}

/** A part of the ship or the yard. */
export interface Zone {
  readonly id: string;
  readonly title: string;
  /** Most workers at the same time. */
  readonly crewLimit?: number;
  /** Ids of zones that share a boundary with it; one side is enough. */
  readonly touches?: readonly string[];
}

/** A condition of a zone that work needs, that is opened, kept and lost, such as gas-free. */
export interface ZoneState {
  readonly id: string;
  readonly title: string;
  /** Calendar days without work under the state after which it must be opened again. */
  readonly stopLimitDays?: number;
}

/** Activities of the one list and of the other do not run at the same time in one zone or in touching zones. */
export interface Exclusion {
  readonly id: string;
  readonly title: string;
  readonly first: readonly string[];
  readonly second: readonly string[];
  /** Default `touching`. `anywhere`: whatever the zones. */
  readonly reach?: 'zone' | 'touching' | 'anywhere';
}

/** A span that follows others: from the first start of some activities to the last finish of some (berth hire). */
export interface Hammock {
  readonly id: string;
  readonly title: string;
  readonly fromStartOf: readonly string[];
  readonly toFinishOf: readonly string[];
  /** Calendar on which its work days are counted. */
  readonly calendar: string;
}
