import type { RememberedRun } from '../../electron/channels';
import type { Project } from '../../core/project';
import { isOfPlan } from './revisions';

/** So many plans are remembered. */
const MOST = 20;

/** The mark of a plan: the same for a document that was saved and read again, or edited only beside the plan. */
export async function markOf(project: Project): Promise<string> {
  const plan = Object.fromEntries(Object.entries(project).filter(([key]) => isOfPlan(key)));
  const bytes = new TextEncoder().encode(JSON.stringify(plan, inOrder));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest.subarray(0, 16)].map(byte => byte.toString(16).padStart(2, '0')).join('');
}

/** The fields of an object by name: the order in which they were entered is no matter. */
function inOrder(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

/** The remembered runs with one more, which goes first; scenarios that were run before of the same plan stay. */
export function withRun(
  ran: readonly RememberedRun[],
  plan: string,
  scenarios: readonly string[],
): readonly RememberedRun[] {
  const before = ran.find(one => one.plan === plan)?.scenarios ?? [];
  const all = [...new Set([...before, ...scenarios])];
  return [{ plan, scenarios: all }, ...ran.filter(one => one.plan !== plan)].slice(0, MOST);
}

/**
 * Which study runs the trials of a plan again: that of the scenario shown when no other was run, that of all of them
 * otherwise, none of a plan that is not remembered.
 */
export function studyAgain(
  ran: readonly RememberedRun[],
  plan: string,
  shown: string,
): 'risk' | 'compare' | undefined {
  const known = ran.find(one => one.plan === plan);
  if (known === undefined) return undefined;
  return known.scenarios.every(id => id === shown) ? 'risk' : 'compare';
}
