import { dollarsOf } from '../../money';
import { structuredCloneJson, type Change, type Project } from '../../project';
import { evaluate, type EvaluateOptions } from '../evaluate';
import type { WholeParts } from '../risk/parts';
import type { CrewChoice } from './crew-sizes';
import { expectedStandby, type ExpectedStandby } from './weather-standby';

/** One way to run the project: its shift pattern, its first day, and the items with other crews than their own. */
export interface Plan {
  readonly shift: string;
  readonly start: string;
  readonly crews: readonly CrewChoice[];
}

/** What the estimate says of a plan. */
export interface RanPlan {
  readonly parts: WholeParts;
  /** The owner's total, dollars. */
  readonly total: number;
  readonly standby: ExpectedStandby;
}

/** Passes spent on the schedule of each plan; the plan as it stands is scheduled with as many. */
export const PASSES = 100;

/** What to change in the document to take a plan. */
export function changesOf(project: Project, present: Pick<Plan, 'shift' | 'start'>, plan: Plan): Change[] {
  const crews = plan.crews.map((choice): Change => {
    const own = project.items.find(one => one.item === choice.item);
    const figure = {
      value: String(choice.crews),
      unit: 'each',
      basis: 'judgement',
      source: `Crew plan: ${choice.words}`,
    };
    const to = structuredCloneJson({ note: '', ...own, item: choice.item, crews: figure });
    return { at: `/items/${choice.item}`, to };
  });
  return [
    ...(plan.shift === present.shift ? [] : [{ at: '/options/shift-pattern', to: plan.shift }]),
    ...(plan.start === present.start ? [] : [{ at: '/calendars/start', to: plan.start }]),
    ...crews,
  ];
}

/**
 * The whole estimate again with a plan laid over the project.
 * @param project as its scenario sees it.
 * @returns undefined when there is no schedule, or a figure of the total is absent.
 */
export function runPlan(
  project: Project,
  changes: readonly Change[],
  options: EvaluateOptions,
): RanPlan | undefined {
  const id = 'crew-plan';
  const alone = { ...project, scenarios: [{ id, title: 'A crew plan', changes: [...changes] }] };
  const { estimate } = evaluate(alone, { ...options, scenario: id, schedules: PASSES, upright: false });
  if (estimate?.money === undefined) return undefined;
  const parts = { ...estimate, money: estimate.money };
  const total = parts.money.result.money(parts.money.sums.total);
  const standby = total && expectedStandby(parts);
  return standby && { parts, total: dollarsOf(total), standby };
}
