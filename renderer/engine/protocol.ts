import type { Finding } from '../../core/base';
import type { Project } from '../../core/project';
import type { ImportAsk, ImportView, OpenedName, OpenedRows, WhyRows } from '../../core/views';
import type { WindowRows } from '../../core/views';

/** What the window asks of the engine. One answer each; long work also reports progress. */
export interface Questions {
  readonly read: { ask: { text: string }; answer: ReadAnswer };
  readonly write: { ask: { project: Project }; answer: { text: string } };
  readonly evaluate: {
    ask: { project: Project; scenario: string; today: string; measures: 'us' | 'metric'; document: string };
    answer: { rows?: WindowRows; findings: readonly Finding[] };
  };
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

export interface ReadAnswer {
  readonly project?: Project;
  readonly findings: readonly Finding[];
  readonly readOnly: boolean;
}

export type QuestionName = keyof Questions;

export interface Asked {
  readonly number: number;
  readonly name: QuestionName;
  readonly ask: unknown;
}

/** What the worker says back. */
export type Said =
  | { readonly number: number; readonly kind: 'answer'; readonly answer: unknown }
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
  ): Promise<Questions[Q]['answer']>;
  /** Ends what is being worked out; the engine starts afresh and the last answer stays. */
  cancel(): void;
}
export type Progress = (done: number, of: number, words: string) => void;
