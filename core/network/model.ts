import type { ExpandedCalendar } from '../calendar';

/** FS finish to start, SS start to start, FF finish to finish, SF start to finish. */
export type RelationshipKind = 'FS' | 'SS' | 'FF' | 'SF';

/** An activity of a network without resources. */
export interface NetworkActivity {
  readonly id: string;
  readonly title: string;
  /** Days, 0 or more; fractions allowed without a calendar, whole work days with one. */
  readonly duration: number;
  /** Its work days; absent: time runs on without idle days. */
  readonly calendar?: ExpandedCalendar;
  /** The earliest moment it may start. */
  readonly notBefore?: number;
}

/** The named moment of `to` lies at least `lag` after that of `from`; a negative lag lets them overlap. */
export interface NetworkRelationship {
  readonly from: string;
  readonly to: string;
  readonly kind: RelationshipKind;
  /** In the time of `to`: work days of its calendar if it has one. Default 0. */
  readonly lag?: number;
}

/** From the first start of some activities to the last finish of others. */
export interface NetworkHammock {
  readonly id: string;
  readonly fromStartOf: readonly string[];
  readonly toFinishOf: readonly string[];
}

export interface Network {
  readonly activities: readonly NetworkActivity[];
  readonly relationships: readonly NetworkRelationship[];
  readonly hammocks?: readonly NetworkHammock[];
  /** The moment by which all must be finished; absent: the earliest finish. */
  readonly finishBy?: number;
}

/**
 * Times of one activity as moments: without calendars in days from the start, with calendars as day numbers,
 * a finish being the moment after the last day worked. Floats in the activity's own (work) days.
 */
export interface ActivityTimes {
  readonly id: string;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  readonly totalFloat: number;
  readonly freeFloat: number;
  readonly critical: boolean;
}
