import type { Change } from '../../project';
import type { FrontierPicture } from '../risk/rows';
import type { Sentence, TableRows } from '../rows';
import type { Whys } from '../simulated';
import type { PeopleStep } from '../window-rows';

/** People at work before and after, on one axis of time. */
export interface CrewPicture {
  readonly from: number;
  readonly to: number;
  readonly months: readonly { readonly at: number; readonly text: string }[];
  readonly ticks: readonly number[];
  readonly before: readonly PeopleStep[];
  readonly after: readonly PeopleStep[];
  readonly words: string;
}

/** One question about the crews of a plan with its answer. */
export interface CrewAnswer {
  readonly question: string;
  readonly answer: Sentence;
  /** Absent when there is no such plan. */
  readonly picture?: CrewPicture;
  readonly crews?: TableRows;
  readonly moved?: TableRows;
  /** What the money rests on. */
  readonly basis?: string;
  /** How its figures came about. */
  readonly whys?: Whys;
}

/** The crews evened out, and as few as the last day allows. */
export interface LevellingRows {
  readonly answers: readonly CrewAnswer[];
}

/** What the cheapest crews, shifts and start are, and the curve of cost over time. */
export interface CrewPlanRows {
  readonly question: string;
  /** Absent before the first search. */
  readonly found?: FoundPlans;
}

/** A plan that can be taken up as a scenario of its own. */
export interface OfferedPlan {
  readonly id: string;
  /** What the button says. */
  readonly label: string;
  /** Title of the scenario. */
  readonly title: string;
  /** What the scenario changes beside what the present one changes. */
  readonly changes: readonly Change[];
}

export interface FoundPlans {
  readonly answer: Sentence;
  /** How the figures came about. */
  readonly whys: Whys;
  /** An edit has been made since. */
  readonly isStale: boolean;
  readonly picture: FrontierPicture;
  readonly table: TableRows;
  /** Plans other than the one as it stands, the cheapest first. */
  readonly offers: readonly OfferedPlan[];
  readonly cautions: readonly string[];
  readonly notes: readonly string[];
}
