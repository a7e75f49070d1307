import type { ReviewTrials, SimulatedContingency } from '../../core/evaluation';
import type { Project } from '../../core/project';
import type {
  ChoiceRows,
  CompareRows,
  CrewPlanRows,
  DecisionRows,
  LevellingRows,
  RiskRows,
} from '../../core/views';

/** What the last run of a scenario leaves for the estimate. */
export interface RunFound {
  /** The contingency that it sets, where the project leaves it to the runs. */
  readonly simulated?: SimulatedContingency;
  /** What it tells the quality review. */
  readonly trials?: ReviewTrials;
}

/** The long questions, each with its answer. They are worked out beside the engine, so that typing never waits. */
export interface StudyAnswers {
  /** Beside the rows, what the last run leaves for the estimate. */
  readonly risk: RiskRows & { readonly leaves?: RunFound };
  readonly compare: CompareRows;
  readonly decision: DecisionRows;
  readonly choices: ChoiceRows;
  readonly levelling: LevellingRows;
  readonly crewPlans: CrewPlanRows;
}
export type StudyName = keyof StudyAnswers;

/** A long question about a document as it stands. */
export interface StudyAsk {
  readonly number: number;
  readonly name: StudyName;
  readonly project: Project;
  /** Changes with every edit of the document. */
  readonly revision: number;
  /** Of every scenario; changes with every edit that its runs and searches look at: not with a vote, a note or another scenario. */
  readonly plans: Readonly<Record<string, number>>;
  /** Key of the open document: another document begins afresh. */
  readonly document: string;
  readonly scenario: string;
  readonly today: string;
  readonly measures: 'us' | 'metric';
  /** Whether the simulation or the search is run; without it the last run is shown, if there is one. */
  readonly runs: boolean;
}

export type StudyAsked = StudyAsk | { readonly stop: StudyName };

export type StudySaid =
  | { readonly number: number; readonly kind: 'answer'; readonly answer: StudyAnswers[StudyName] | undefined }
  | { readonly number: number; readonly kind: 'fault'; readonly message: string }
  | { readonly number: number; readonly kind: 'stopped' }
  | {
      readonly number: number;
      readonly kind: 'progress';
      readonly done: number;
      readonly of: number;
      readonly words: string;
    };
