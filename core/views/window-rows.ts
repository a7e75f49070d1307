import type { Basis } from '../base';
import type { Addition, BottomCell, Edit, FindingRow, Sentence, Shown, TableRows, Verdict } from './rows';
import type { SinkingView } from './sinking-rows';
import type { StillMissing } from './still-missing';

/** A part of the ship as it is drawn: metres from the stern, the centreline and the keel. */
export interface DrawnPart {
  readonly id: string;
  readonly title: string;
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
  readonly stays: boolean;
  /** What is written at it: name and weight. */
  readonly label: string;
}

export interface DrawnCompartment {
  readonly id: string;
  readonly title: string;
  readonly number: string;
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
  /** Lightness step by filling time: 0 soonest. */
  readonly step: 0 | 1 | 2 | undefined;
}

/** An opening or vent at its true size: place along the ship, height of its centre, width and height. */
export interface DrawnOpening {
  readonly id: string;
  readonly compartment: string;
  readonly at: number;
  readonly height: number;
  readonly size: number;
  readonly side: 'port' | 'starboard' | 'both' | 'bottom';
}

/** The ship to scale, in metres. Words and figures beside it are ready made. */
export interface ShipPicture {
  readonly length: number;
  readonly beam: number;
  readonly depth: number;
  readonly draught: number;
  readonly blockCoefficient: number;
  readonly waterDepth: number;
  readonly clearanceRequired: number;
  /** Highest point above the keel that stays. */
  readonly highestStaying: number;
  readonly parts: readonly DrawnPart[];
  readonly compartments: readonly DrawnCompartment[];
  readonly openings: readonly DrawnOpening[];
  readonly vents: readonly DrawnOpening[];
  readonly axis: readonly { readonly at: number; readonly text: string; readonly strong?: true }[];
  readonly axisUnit: string;
  readonly afloat: string;
  readonly atRest: string;
  readonly clearance: string;
  readonly required: string;
  readonly isTooLittle: boolean;
  readonly steps: readonly { readonly step: 0 | 1 | 2; readonly text: string }[];
  /** The picture in words, for those who cannot see it. */
  readonly words: string;
}

export interface VesselView {
  readonly sentence: Sentence;
  readonly particulars: TableRows;
  readonly site: TableRows;
  readonly names: TableRows;
  readonly compartments: TableRows;
  readonly openings: TableRows;
  readonly vents: TableRows;
  readonly connections: TableRows;
  /** What may be added to each compartment: openings, vents, ways to others. */
  readonly compartmentAdditions: readonly Addition[];
  readonly tanks: TableRows;
  readonly weights: TableRows;
  readonly picture: ShipPicture | undefined;
  readonly notes: Sentence;
}

/** A work item as a sentence with editable numbers. */
export interface WorkLine {
  readonly id: string;
  readonly title: string;
  readonly says: Sentence;
  readonly cost: Shown;
  readonly hours: Shown;
  readonly basis: Basis | undefined;
  readonly findings: readonly string[];
  readonly note: Edit;
  readonly quotes: readonly string[];
}

export interface WorkStage {
  readonly id: string;
  readonly title: string;
  readonly count: string;
  readonly hours: Shown;
  readonly cost: Shown;
  readonly lines: readonly WorkLine[];
}

export interface WorkView {
  readonly sentence: Sentence;
  readonly stages: readonly WorkStage[];
  readonly table: TableRows;
  readonly byPayee: TableRows;
  readonly options: TableRows;
  readonly quotes: TableRows;
  /** What each quote prices, and what may be added to each. */
  readonly covers: TableRows;
  readonly coverAdditions: readonly Addition[];
  /** Which quote another work item goes to; empty where there is only one. */
  readonly coverHint: string;
  readonly leftOut: readonly {
    readonly id: string;
    readonly title: string;
    readonly why: string;
    readonly include: Edit;
  }[];
}

export interface RatesView {
  readonly sentence: Sentence;
  readonly tables: readonly TableRows[];
}

export interface ScheduleBar {
  readonly id: string;
  readonly title: string;
  /** Day numbers; `to` is the day after the last. */
  readonly from: number;
  readonly to: number;
  readonly kind: 'held' | 'float' | 'waiting';
  readonly earlier?: { readonly from: number; readonly to: number };
  /** What holds its start, in words, and the activity that does. */
  readonly holds: string;
  readonly heldBy?: string;
  /** The day its relationships alone would let it start. */
  readonly couldStart: number;
  readonly couldStartWords: string;
  /** Everything about it in one sentence, for those who do not see it. */
  readonly words: string;
  readonly why: string;
}

export interface ScheduleLane {
  readonly id: string;
  readonly title: string;
  readonly part: 'office' | 'whole' | 'tanks' | 'machinery' | 'house' | 'hull' | 'sea' | 'site' | 'yard';
  readonly bars: readonly ScheduleBar[];
}

export interface ScheduleShade {
  readonly id: string;
  readonly title: string;
  readonly from: number;
  readonly to: number;
  readonly kind: 'closed' | 'window';
  readonly lanes: readonly string[];
}

export interface ScheduleMark {
  readonly at: number;
  readonly title: string;
  readonly date: string;
  readonly kind: 'finish' | 'grant-end' | 'last-date' | 'status';
}

export interface PeopleStep {
  readonly from: number;
  readonly to: number;
  readonly all: number;
  readonly holding: number;
}

export interface ScheduleView {
  readonly sentence: Sentence;
  readonly from: number;
  readonly to: number;
  readonly months: readonly {
    readonly at: number;
    readonly to: number;
    readonly text: string;
    readonly isQuarter: boolean;
  }[];
  readonly weeks: readonly { readonly at: number; readonly text: string }[];
  readonly lanes: readonly ScheduleLane[];
  readonly shades: readonly ScheduleShade[];
  readonly marks: readonly ScheduleMark[];
  readonly people: readonly PeopleStep[];
  readonly peopleTicks: readonly number[];
  readonly peopleLimit: { readonly at: number; readonly text: string } | undefined;
  readonly holdingTrade:
    { readonly title: string; readonly limit: number; readonly text: string } | undefined;
  readonly peak: string;
  readonly table: TableRows;
  readonly peopleTable: TableRows;
  readonly calendar: TableRows;
  readonly closures: TableRows;
  readonly words: string;
}

export interface BasisPart {
  readonly basis: Basis;
  readonly share: Shown;
  readonly amount: Shown;
  /** Share of the strip's length, 0 to 1. */
  readonly part: number;
}

export interface BudgetView {
  readonly sentence: Sentence;
  readonly byStage: TableRows;
  /** Length of each row's bar against the longest, 0 to 1, by row id. */
  readonly bars: Readonly<Record<string, number>>;
  readonly byElement: TableRows;
  readonly byMaterial: TableRows;
  readonly byMonth: TableRows;
  readonly buildUp: TableRows;
  readonly basisHead: string;
  readonly basis: readonly BasisPart[];
  readonly waste: TableRows;
  readonly generator: TableRows;
}

/** Everything the window shows of one scenario of one project. */
export interface WindowRows {
  readonly scenario: string;
  /** How the bottom line moved since the evaluation before, by cell; empty when nothing moved or nothing was before. */
  readonly changes: Readonly<Record<string, string>>;
  readonly changeWords: string;
  readonly isSample: boolean;
  readonly ship: string;
  readonly scenarios: readonly { readonly id: string; readonly letter: string; readonly title: string }[];
  readonly counts: Readonly<Record<string, string>>;
  readonly bottom: readonly BottomCell[];
  readonly verdict: Verdict | undefined;
  readonly sinking: SinkingView | undefined;
  /** Every open finding, those of the grant budget among them, and how many there are in words. */
  readonly findings: readonly FindingRow[];
  readonly openSentence: string;
  /** What the reader of the project still has to give. */
  readonly missing: StillMissing;
  readonly vessel: VesselView;
  readonly work: WorkView;
  readonly rates: RatesView;
  readonly schedule: ScheduleView | undefined;
  readonly budget: BudgetView;
}
