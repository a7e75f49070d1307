import type { DayNumber } from '../../calendar';
import type { CrewMode, ScheduleProblem } from '../model';
import type { SearchProblem } from '../search';
import type { OpenDays } from './day-tables';
import type { ActivityState } from './progress';
import type { StateSpell } from './zone-states';

/** A schedule problem in packed form, with the way back from positions to ids and reasons. */
export interface Compiled {
  readonly problem: ScheduleProblem;
  /** The day number of slot 0. */
  readonly first: DayNumber;
  /** Activities in the order of the problem; anchors of work begun follow them. */
  readonly search: SearchProblem;
  readonly activities: readonly CompiledActivity[];
  readonly position: ReadonlyMap<string, number>;
  /** What stands behind each packed resource, relationship and exclusion. */
  readonly resources: readonly ResourceOrigin[];
  readonly relationships: readonly RelationshipOrigin[];
  readonly exclusions: readonly string[];
  readonly spells: readonly StateSpell[];
  /** Slot of the status date; 0 without one. */
  readonly statusSlot: number;
}

export interface CompiledActivity {
  readonly mode: number;
  readonly crew: CrewMode;
  readonly open: OpenDays;
  readonly state: ActivityState;
  readonly isMilestone: boolean;
  /** A milestone at the close of its day. */
  readonly isClosing: boolean;
}

export type ResourceOrigin = { readonly resource: string } | { readonly zone: string };
export type RelationshipOrigin =
  { readonly relationship: number } | { readonly state: string; readonly zone: string };
