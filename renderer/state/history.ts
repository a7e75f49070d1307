import { applyPatches, enablePatches, produceWithPatches, type Patch } from 'immer';
import type { Project } from '../../core/project';
import type { NamedEdit } from '../edits/edits';

enablePatches();

export interface Step {
  readonly label: string;
  readonly patches: Patch[];
  readonly inverse: Patch[];
}

/** The document with all that can be undone and done again. `saved` is how many steps were done when it was saved. */
export interface History {
  readonly project: Project;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  readonly saved: number;
}

export function startHistory(project: Project): History {
  return { project, past: [], future: [], saved: 0 };
}

/** Makes an edit. One that changes nothing leaves no step. */
export function edited(history: History, edit: NamedEdit): History {
  const [project, patches, inverse] = produceWithPatches(history.project, draft => edit.apply(draft));
  if (patches.length === 0) return history;
  const isSavedLost = history.saved > history.past.length;
  return {
    project,
    past: [...history.past, { label: edit.label, patches, inverse }],
    future: [],
    saved: isSavedLost ? -1 : history.saved,
  };
}

export function undone(history: History): History {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    ...history,
    project: applyPatches(history.project, step.inverse),
    past: history.past.slice(0, -1),
    future: [step, ...history.future],
  };
}

export function redone(history: History): History {
  const step = history.future[0];
  if (step === undefined) return history;
  return {
    ...history,
    project: applyPatches(history.project, step.patches),
    past: [...history.past, step],
    future: history.future.slice(1),
  };
}

export function markSaved(history: History): History {
  return { ...history, saved: history.past.length };
}

export function isEdited(history: History): boolean {
  return history.saved !== history.past.length;
}
