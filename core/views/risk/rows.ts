import type { Whys } from '../simulated';
import type { BottomCell, Sentence, TableRows, Verdict } from '../rows';

/** A place of an axis with its words. */
export interface Tick {
  readonly at: number;
  readonly text: string;
}

/** Something marked on a curve: where it stands, and what it is in words. */
export interface CurveMark {
  readonly id: 'plan' | 'p50' | 'chosen' | 'limit';
  readonly at: number;
  readonly share: number;
  readonly text: string;
}

/** An S-curve ready to draw: cost in dollars or finish in day numbers, against the share of runs that end by it. */
export interface CurvePicture {
  readonly title: string;
  readonly points: readonly { readonly at: number; readonly share: number }[];
  readonly ticks: readonly Tick[];
  readonly marks: readonly CurveMark[];
  readonly words: string;
}

/** Budgets and dates that hold together with one chance: one line a scenario, and where each plan stands. */
export interface FrontierPicture {
  readonly title: string;
  readonly lines: readonly {
    readonly letter: string;
    readonly isChosen: boolean;
    readonly points: readonly { readonly day: number; readonly dollars: number }[];
  }[];
  readonly plans: readonly {
    readonly letter: string;
    readonly isChosen: boolean;
    readonly isPermittable: boolean;
    readonly day: number;
    readonly dollars: number;
  }[];
  readonly dates: readonly Tick[];
  readonly money: readonly Tick[];
  /** Money in hand and the last date, as limits. */
  readonly inHand?: Tick;
  readonly lastDate?: Tick;
  readonly words: string;
  readonly table: TableRows;
}

/** An event of the library that can be taken into the project’s own register, to be changed there. */
export interface LibraryEvent {
  readonly id: string;
  readonly title: string;
  readonly entry: object;
}

/** The bar of a driver: where mean cost stands at its low and its high end, as shares of the width. */
export interface DriverBar {
  readonly from: number;
  readonly to: number;
  /** Share of the variance against the largest. */
  readonly part: number;
}

/** What a run has found, ready to show. */
export interface FoundRisk {
  readonly cost: CurvePicture;
  readonly finish: CurvePicture;
  readonly frontier: FrontierPicture;
  readonly percentiles: TableRows;
  readonly chances: TableRows;
  /** How likely the cost stays inside the award itself; absent without one. */
  readonly award: Sentence | undefined;
  readonly drivers: TableRows;
  readonly driverBars: Readonly<Record<string, DriverBar>>;
  readonly drivesFinish: TableRows;
  readonly contingency: TableRows;
  readonly contingencyNote: string;
  readonly surveys: TableRows;
  /** What would hold with the confidence asked for, and why the plan holds as seldom as it does. */
  readonly planWords: Sentence;
  readonly pastHulls: Sentence;
  /** What the run adds to the bottom line. */
  readonly bottom: readonly BottomCell[];
}

/** How sure cost and finish are. */
export interface RiskRows {
  readonly sentence: Sentence;
  /** What the figures come from: how many runs, which seed. */
  readonly run: string;
  readonly found: FoundRisk | undefined;
  readonly register: TableRows;
  readonly settings: TableRows;
  readonly library: readonly LibraryEvent[];
  /** The risk section as it is when nothing is set, for a document without one. */
  readonly emptySection: object;
  /** How each figure of the runs came about, by its name. */
  readonly whys: Whys;
  /** What is wrong with the register, the ranges or the runs, though they can be run. */
  readonly noted: readonly string[];
  /** Why nothing can be run, when nothing can. */
  readonly missing: readonly string[];
}

export type { Verdict };
