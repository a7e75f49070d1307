import type { Basis } from '../base';
import type { Cents, Stage } from '../cash-flow';

/** A line of the estimate as a reviewer sees it. */
export interface ReviewLine {
  readonly id: string;
  readonly stage: Stage;
  readonly title: string;
  readonly total: Cents;
  /** The sum of its elements, taken apart from the total. */
  readonly elementSum: Cents;
  readonly hours: number;
  readonly basis: Basis;
  readonly source: string;
  /** Quantity times rate in words; absent for a lump sum. */
  readonly workings?: string;
  /** Whether a given behind it has a range, so that a simulation moves it. */
  readonly isRanged: boolean;
  /** The year its prices are of. */
  readonly priceYear: number;
  /** Carried from its own price year to that of the estimate. */
  readonly isNormalised: boolean;
  /** What is assumed where the basis is unchecked. */
  readonly assumption?: string;
  readonly isCrossChecked: boolean;
  /** First and last month of its spending, `YYYY-MM`; absent for a line of nothing. */
  readonly firstMonth?: string;
  readonly lastMonth?: string;
  /** Owed after the sinking: its months may lie after the schedule. */
  readonly followsFinish?: true;
}

/** An activity of the schedule. Dates are `YYYY-MM-DD`, durations and floats work days. */
export interface ReviewActivity {
  readonly id: string;
  readonly title: string;
  readonly stage: Stage;
  readonly lineIds: readonly string[];
  readonly kind: 'activity' | 'milestone' | 'hammock';
  readonly workDays: number;
  readonly start: string;
  readonly finish: string;
  readonly totalFloat: number;
  readonly isCritical: boolean;
  readonly hours: number;
  readonly crew?: string;
  /** A fixed date of the user. */
  readonly fixedDate?: string;
  /** Why it is long, floats far, or has a fixed date. */
  readonly reason?: string;
  readonly actualStart?: string;
  readonly actualFinish?: string;
}

/** A relationship between activities; the lag is in work days. */
export interface ReviewRelationship {
  readonly from: string;
  readonly to: string;
  readonly kind: 'FS' | 'SS' | 'FF' | 'SF';
  readonly lag: number;
  /** Why there is a lag. */
  readonly reason?: string;
}

/** The schedule as a reviewer sees it. */
export interface ReviewSchedule {
  readonly activities: readonly ReviewActivity[];
  readonly relationships: readonly ReviewRelationship[];
  /** Where a crew or berth, not logic, makes one activity follow another. */
  readonly resourceLinks: readonly { readonly from: string; readonly to: string }[];
  readonly start: string;
  readonly finish: string;
  readonly stageDates: readonly { readonly stage: Stage; readonly start: string; readonly finish: string }[];
  readonly baseline?: { readonly finish: string; readonly keptOn: string };
}

/** Everything the quality review looks at. What is absent is answered with "cannot tell" or "not met". */
export interface ReviewInput {
  readonly lines: readonly ReviewLine[];
  readonly total: Cents;
  readonly contingency?: Cents;
  readonly priceYear: number;
  readonly isEscalated: boolean;
  /** Stages left out in writing. */
  readonly excludedStages: readonly Stage[];
  /** The particulars and papers a price rests on, and which of them are known. */
  readonly definition: readonly { readonly title: string; readonly isKnown: boolean }[];
  readonly schedule?: ReviewSchedule;
  readonly approval?: { readonly by: string; readonly on: string };
  /** The last estimate and the named steps to this one; `first` when there was none before. */
  readonly earlier?:
    | 'first'
    | {
        readonly total: Cents;
        readonly steps: readonly { readonly title: string; readonly amount: Cents }[];
      };
  /** Drivers of cost in their order. */
  readonly drivers?: readonly string[];
  /** The percentile of the plan figure in the simulation, 0 to 100. */
  readonly planPercentile?: number;
  /** The percentile of the total with its contingency in the simulation, 0 to 100. */
  readonly budgetPercentile?: number;
  /** The cost that 80 in 100 runs do not exceed. */
  readonly costAtP80?: Cents;
  /** The chance of the planned finish in the simulation, 0 to 1. */
  readonly chanceOfFinish?: number;
  /** What went otherwise than planned and was written down. */
  readonly lessons: readonly string[];
  readonly independent?: { readonly total: Cents; readonly explanation?: string };
  readonly madeOn: string;
  /** The day up to which progress is known, `YYYY-MM-DD`. */
  readonly statusDate?: string;
  readonly hull: { readonly hullClass: string; readonly lengthFeet?: number };
  /** From a price year to the money of the estimate; absent for a year the index has not. */
  readonly priceFactors: Readonly<Record<number, number>>;
}
