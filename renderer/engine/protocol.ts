import type { Finding } from '../../core/base';
import type { LeftOut, LeftOutBook, Project } from '../../core/project';
import type { ImportAsk, ImportView, OpenedName, OpenedRows, WhyRows } from '../../core/views';
import type { BottomCell, WindowHead, WindowRows, WindowViewName } from '../../core/views';
import type { SentProject } from './sent-project';
import type { RunFound } from './study-protocol';

/** What the window asks of the engine. One answer each; long work also reports progress. */
export interface Questions {
  readonly read: { ask: { text: string }; answer: ReadAnswer };
  /** A copy for someone else, and what is left out of it. */
  readonly copy: {
    ask: { project: Project; without: LeftOutBook };
    answer: { text: string; leftOut: readonly LeftOut[] };
  };
  readonly write: { ask: { project: Project }; answer: { text: string } };
  readonly evaluate: {
    ask: {
      project: Project;
      scenario: string;
      today: string;
      measures: 'us' | 'metric';
      document: string;
      /** The view that is looked at: it comes with the bottom line, the others after it. */
      view: string;
      /** Views made when they are opened that are looked at beside it: a face, a panel. */
      beside?: readonly OpenedName[];
      /** What the last run of the scenario left. */
      found?: RunFound;
    };
    /** The rows have come in parts; without them the document has faults that leave nothing to work out. */
    answer: { hasRows: boolean; findings: readonly Finding[] };
  };
  /** The head of the last evaluation with what making its grant budget finds; nothing when it was told already. */
  readonly grant: { ask: object; answer: { head?: WindowHead } };
  /** The rows of a view that is made when it is opened, of the last evaluation. */
  readonly opened: { ask: { name: OpenedName }; answer: Partial<OpenedRows> };
  /** What a table read from a file would change; nothing is changed by asking. */
  readonly import: { ask: ImportAsk & { project: Project }; answer: ImportView };
  readonly why: { ask: { id: string }; answer: WhyRows | null };
  readonly start: {
    ask: { template: 'grant' | 'bid' | 'comparison'; hullType?: string; today: string };
    answer: ReadAnswer;
  };
}

/** Rows as they are known so far: the head, and the views made until now. */
export type ViewRows = Partial<Pick<WindowRows, WindowViewName>>;
export type ShownRows = WindowHead & ViewRows;

/** A part of an answer, before the whole: the bottom line while it settles, then head and view looked at, then the rest. */
export type Part =
  | { readonly kind: 'settling'; readonly bottom: readonly BottomCell[] }
  | {
      readonly kind: 'head';
      readonly rows: ShownRows;
      /** What is looked at of the views that are made when they are opened: it agrees with the bottom line. */
      readonly opened?: Partial<OpenedRows>;
    }
  | { readonly kind: 'view'; readonly rows: ViewRows };

export interface ReadAnswer {
  readonly project?: Project;
  readonly findings: readonly Finding[];
  readonly readOnly: boolean;
}

export type QuestionName = keyof Questions;

export interface Asked {
  readonly number: number;
  readonly name: QuestionName;
  readonly ask: object;
  /** The project of the question, when it has one. */
  readonly sent?: SentProject;
}

/** What the worker says back. */
export type Said =
  | { readonly number: number; readonly kind: 'answer'; readonly answer: unknown }
  | { readonly number: number; readonly kind: 'part'; readonly part: Part }
  | { readonly number: number; readonly kind: 'fault'; readonly message: string }
  | {
      readonly number: number;
      readonly kind: 'progress';
      readonly done: number;
      readonly of: number;
      readonly words: string;
    };

/** The engine as the window sees it. */
export interface Engine {
  ask<Q extends QuestionName>(
    name: Q,
    ask: Questions[Q]['ask'],
    onProgress?: Progress,
    onPart?: (part: Part) => void,
  ): Promise<Questions[Q]['answer']>;
  /** Ends what is being worked out; the engine starts afresh and the last answer stays. */
  cancel(): void;
}
export type Progress = (done: number, of: number, words: string) => void;
