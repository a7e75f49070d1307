import type { Distribution } from './distributions/distribution';

/**
 * One given with a range. Its draws belong to its id: another input added or removed moves none of them.
 * An input without a range of its own (moved by drivers only) has the distribution `certain`.
 */
export interface UncertainInput {
  readonly id: string;
  readonly title: string;
  readonly distribution: Distribution;
  /** Ids of the lines and activities whose figures it moves (for the double-counting finding). */
  readonly moves: readonly string[];
  /** A survey that would narrow the range: its price in dollars and the share of the range left after it. */
  readonly survey?: { readonly cost: number; readonly rangeLeft: number };
}

/**
 * A risk driver: one factor that multiplies every input mapped to it, so that these move together. With
 * `probability` below 1 it acts in that share of the trials only and is 1 in the others.
 * @source D. Hulett, Integrated Cost-Schedule Risk Analysis, 2011 (risk driver method).
 */
export interface RiskDriver {
  readonly id: string;
  readonly title: string;
  readonly probability: number;
  readonly factor: Distribution;
  /** Ids of the inputs it multiplies. */
  readonly inputs: readonly string[];
  /** Why a figure it shares with a range or an event is not counted twice. */
  readonly note?: string;
}

/** What can be done about an event, what that costs (dollars, on one line) and what it then leaves. */
export interface Mitigation {
  readonly title: string;
  readonly cost: number;
  readonly line: string;
  /** The probability after mitigation. */
  readonly probability: number;
  /** The share of each impact left after mitigation, 1 = no change. */
  readonly impactLeft: number;
}

/**
 * An event of the risk register. In a trial it happens or it does not; when it does, one severity draw
 * decides all its impacts, so that a worse event costs more and lasts longer.
 */
export interface RegisterEvent {
  readonly id: string;
  readonly title: string;
  readonly owner?: string;
  /** 0 to 1. */
  readonly probability: number;
  /** Dollars of the month of spending, added to a line as they stand: no mark-up is put on them. */
  readonly costs: readonly { readonly line: string; readonly dollars: Distribution }[];
  /** Work days added to the duration of an activity. */
  readonly delays: readonly { readonly activity: string; readonly workDays: Distribution }[];
  readonly mitigation?: Mitigation;
  readonly note?: string;
}

/** A correlation asked for between two inputs or drivers, brought about by reordering their draws. */
export interface RankCorrelation {
  readonly first: string;
  readonly second: string;
  /** Above -1 and below 1. */
  readonly correlation: number;
  /**
   * What it is the correlation of: the normal `scores` of the ranks (default; the ranks then have
   * (6/pi) asin(r/2)), the `ranks` themselves (Spearman), or the `values` (Pearson).
   */
  readonly of?: 'scores' | 'ranks' | 'values';
}

/** Workability of one kind of operation: the share of days it can work, and how the weather persists. */
export interface WorkabilitySeries {
  readonly id: string;
  readonly title: string;
  /** Share of workable days, 0 to 1, January to December (12 values). */
  readonly workable: readonly number[];
  /** Correlation of one day with the next, 0 to below 1, January to December (12 values). */
  readonly persistence: readonly number[];
}

/** An activity that may start only at the head of a run of consecutive workable days. */
export interface WeatherOperation {
  /** Id of the activity. */
  readonly activity: string;
  /** Id of its workability series. */
  readonly series: string;
  /** Consecutive workable days needed from the start on, at least 1. */
  readonly windowDays: number;
  /** For each day number 1 when the season allows a start, 0 when closed. Absent: always open. */
  readonly open?: Uint8Array;
  /**
   * For each day number the number of its season, rising, and the season of the plan: a trial whose
   * operation starts in a later one needs another season. Absent: there is one season.
   */
  readonly season?: { readonly ofDay: Int16Array; readonly planned: number };
}

/** The weather of the run. Day numbers are calendar days from the origin of the schedule. */
export interface WeatherModel {
  /** Month of each day number, 0 = January; its length is the horizon. */
  readonly month: Uint8Array;
  readonly series: readonly WorkabilitySeries[];
  readonly operations: readonly WeatherOperation[];
}

/** Draws of a batch of trials. Every array has TRIALS_PER_CHUNK values, of which the first `n` count. */
export interface WorkBatch {
  readonly n: number;
  /** The `columns` of the prepared run: the drawn value of each input times the factors of its drivers. */
  readonly inputs: ReadonlyMap<string, Float64Array>;
}

/** What the money sheet gets: the draws and, by position in `activities`, the dates of each trial. */
export interface MoneyBatch extends WorkBatch {
  /** Work days of each activity, delays by events included. */
  readonly durations: readonly Float64Array[];
  /** Day number of the start, and of the finish, of each activity, as the scheduler gave them. */
  readonly starts: readonly Float64Array[];
  readonly finishes: readonly Float64Array[];
  /** Calendar days each activity waited for a weather window (standby); zero without weather. */
  readonly waits: readonly Float64Array[];
  /** Whether the cash need is wanted: only of trials as they are. */
  readonly asksCash: boolean;
}

/** What the money sheet answers, valid until the next call. Dollars, rounded to the cent. */
export interface MoneyColumns {
  readonly total: Float64Array;
  /** By position in `lines`; their sum is the total, but for cents that are allotted to lines by rounding. */
  readonly lines: readonly Float64Array[];
  /** The greatest cash need of the trial, dollars, when cash flow is asked for. */
  readonly cashNeed?: Float64Array;
}

/** One schedule a trial: the same priority list, other durations. */
export interface TrialScheduler {
  /**
   * Schedules one trial, resources kept. Arrays are by position in `activities`.
   * @param durations work days, not negative, whole or not as the scheduler likes.
   * @param notBefore day numbers no activity may start before (0 = no limit).
   * @param starts, finishes filled with day numbers.
   * @returns the day number of the project's finish, or NaN when there is no schedule.
   */
  decode(
    durations: Float64Array,
    notBefore: Float64Array,
    starts: Float64Array,
    finishes: Float64Array,
  ): number;
  /** Sets 1 for each activity that drives the finish in the schedule decoded last, 0 for the others. */
  drivesFinish?(flags: Uint8Array): void;
}

/** What an activity waits for beyond its calendar: a window of weather. */
export interface StartGate {
  /** Called before the trials of a chunk. */
  begin(): void;
  /** The day it may start, not before the earliest; NaN when there is none. */
  startOf(trial: number, earliest: number): number;
}

/** The trials of a chunk to schedule: columns by position in `activities`, each with one value a trial. */
export interface ChunkDates {
  readonly n: number;
  /** Work days, not negative, whole or not. */
  readonly durations: readonly Float64Array[];
  /** Filled with day numbers. */
  readonly starts: readonly Float64Array[];
  readonly finishes: readonly Float64Array[];
  /** Filled with the day number of the project's finish, NaN where there is no schedule. */
  readonly finish: Float64Array;
  /** By position: activities that wait. */
  readonly gates: ReadonlyMap<number, StartGate>;
  /** Whether the dates of an activity already stand in the columns, as far as nothing before it is new. */
  readonly stands: (activity: number) => boolean;
}

/** Schedules a chunk of trials at once, activity by activity: many times faster than one trial after the other. */
export interface ChunkScheduler {
  chunk(dates: ChunkDates): void;
  /** Adds to each activity in how many trials of the chunk scheduled last it drives the finish. */
  countDriving?(dates: ChunkDates, counts: Float64Array): void;
}

/** The deterministic estimate the simulation belongs to. */
export interface PlanFigures {
  readonly total: number;
  /** By position in `lines`. */
  readonly lines: readonly number[];
  /** Day number, as the scheduler counts. */
  readonly finish: number;
  readonly cashNeed?: number;
}

/**
 * All that a simulation needs, handed in by the evaluation of the project: the risk module knows neither
 * the sheets nor the network. For each batch of at most
 * TRIALS_PER_CHUNK trials the simulation calls `work` (draws to durations), then
 * `scheduler.decode` trial by trial, then `money` (draws and dates to dollars). The three may reuse their
 * buffers from call to call, and must give the same figures for a trial whatever batch it stands in.
 */
export interface PreparedRun {
  readonly inputs: readonly UncertainInput[];
  readonly drivers: readonly RiskDriver[];
  readonly events: readonly RegisterEvent[];
  readonly correlations: readonly RankCorrelation[];
  readonly weather?: WeatherModel;
  /** Ids in the order of the columns. */
  readonly lines: readonly string[];
  readonly activities: readonly string[];
  readonly plan: PlanFigures;
  /**
   * By input id an array of TRIALS_PER_CHUNK values. It belongs to the prepared run, so that the sheets can be
   * bound to it once; the simulation fills it before every call of `work`.
   */
  readonly columns: ReadonlyMap<string, Float64Array>;
  /** Durations in work days, one column for each of `activities`, valid until the next call. */
  work(batch: WorkBatch): readonly Float64Array[];
  readonly scheduler: TrialScheduler | ChunkScheduler;
  money(batch: MoneyBatch): MoneyColumns;
}
