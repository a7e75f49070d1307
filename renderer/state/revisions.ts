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
const plans = new Map<string, Plans>();
/** So many plans of a scenario are known again when an edit is undone. */
const MOST = 12;

/** The plans of one scenario: the number of each document, and the last documents that differ. */
interface Plans {
  readonly numbers: WeakMap<Project, number>;
  recent: readonly Project[];
}

/** A number of its own for each state of a document. */
export function revisionOf(project: Project): number {
  const known = whole.get(project) ?? ++count;
  whole.set(project, known);
  return known;
}

/**
 * A number for each state of the plan of a scenario, as runs and searches see it: states that differ only beside it, or
 * in other scenarios, share one.
 */
export function planRevisionOf(project: Project, scenario: string): number {
  const own = plans.get(scenario) ?? { numbers: new WeakMap<Project, number>(), recent: [] };
  plans.set(scenario, own);
  const known = own.numbers.get(project);
  if (known !== undefined) return known;
  const same = own.recent.find(one => isSamePlan(one, project, scenario));
  const number = (same && own.numbers.get(same)) ?? ++count;
  own.numbers.set(project, number);
  own.recent = [project, ...own.recent.filter(one => one !== same)].slice(0, MOST);
  return number;
}

/** The number of the plan of every scenario of a document. */
export function plansOf(project: Project): Readonly<Record<string, number>> {
  return Object.fromEntries(project.scenarios.map(({ id }) => [id, planRevisionOf(project, id)]));
}

/** Parts that no edit touched are the same objects; what an undone edit touched says the same again. */
function isSamePlan(a: Project, b: Project, scenario: string): boolean {
  const [before, now] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  return (
    isSameData(changesOf(a, scenario), changesOf(b, scenario)) &&
    [...before.keys(), ...now.keys()].every(
      key => !isOfPlan(key) || key === 'scenarios' || isSameData(before.get(key), now.get(key)),
    )
  );
}

function changesOf({ scenarios }: Project, scenario: string): unknown {
  return scenarios.find(({ id }) => id === scenario)?.changes;
}
