import { isSameData } from '../../core/base';
import type { Project } from '../../core/project';

/** Sections that no run and no search looks at: a vote, benefits, a note or a check sum leave what was simulated as it is. */
const APART: ReadonlySet<string> = new Set(['decision', 'benefits', 'notes', 'attachments', 'sha256']);

/** Whether runs and searches look at a section of a document. */
export function isOfPlan(section: string): boolean {
  return !APART.has(section);
}

let count = 0;
const whole = new WeakMap<Project, number>();
const plans = new WeakMap<Project, number>();
/** So many plans are known again when an edit is undone. */
const MOST = 12;
let recent: readonly Project[] = [];

/** A number of its own for each state of a document. */
export function revisionOf(project: Project): number {
  const known = whole.get(project) ?? ++count;
  whole.set(project, known);
  return known;
}

/** A number for each state of the plan in it, as runs and searches see it: states that differ only beside it share one. */
export function planRevisionOf(project: Project): number {
  const known = plans.get(project);
  if (known !== undefined) return known;
  const same = recent.find(one => isSamePlan(one, project));
  const number = (same && plans.get(same)) ?? ++count;
  plans.set(project, number);
  recent = [project, ...recent.filter(one => one !== same)].slice(0, MOST);
  return number;
}

/** Parts that no edit touched are the same objects; what an undone edit touched says the same again. */
function isSamePlan(a: Project, b: Project): boolean {
  const [before, now] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  return [...before.keys(), ...now.keys()].every(
    key => !isOfPlan(key) || isSameData(before.get(key), now.get(key)),
  );
}
