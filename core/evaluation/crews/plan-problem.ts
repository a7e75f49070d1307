import { known } from '../../base';
import { dollarsOf } from '../../money';
import type { CrewMode, ScheduleActivity, ScheduleProblem } from '../../scheduling';
import type { CrewChoice, SizedItem } from './crew-sizes';
import type { RanPlan } from './plan-run';

/** The schedule problem of a plan with every crew size its items may have, and what each costs more. */
export interface SizedProblem {
  readonly problem: ScheduleProblem;
  /** The choices by activity and mode; none stands for the plan's own. */
  readonly choices: readonly (readonly (CrewChoice | undefined)[])[];
  /** Dollars more than with the plan's own crew, by activity and mode. */
  readonly extra: readonly (readonly number[])[];
}

/**
 * Gives the activities of a plan their crew sizes as modes. Days and cost of a size are those of the estimate in which
 * all items have that size.
 * @param bySize the estimates, by size.
 */
export function sizedProblem(
  plain: RanPlan,
  sized: readonly SizedItem[],
  bySize: ReadonlyMap<string, RanPlan>,
): SizedProblem {
  const items = new Map(sized.map(one => [one.item, one]));
  const made = plain.parts.problem.activities.map(activity => {
    const item = items.get(activity.id);
    if (item === undefined) return { activity, modes: [] };
    const modes = item.choices.flatMap(choice => {
      const run = bySize.get(choice.size);
      if (run === undefined) return [];
      const extra = lineOf(run, activity.id) - lineOf(plain, activity.id);
      return [{ choice, mode: modeOf(choice, item.crew, run), extra }];
    });
    return {
      activity:
        modes.length === 0
          ? activity
          : withModes(
              activity,
              modes.map(one => one.mode),
            ),
      modes,
    };
  });
  return {
    problem: { ...plain.parts.problem, activities: made.map(one => one.activity) },
    choices: made.map(({ modes }) => [undefined, ...modes.map(one => one.choice)]),
    extra: made.map(({ modes }) => [0, ...modes.map(one => one.extra)]),
  };
}

function modeOf(choice: CrewChoice, crew: string, { parts }: RanPlan): CrewMode {
  const days = new Map(parts.planned.map(plan => [plan.item.id, plan.days]));
  const workDays = known(days, choice.item);
  return { crewSize: choice.crews * choice.crewSize, workDays, uses: { [crew]: choice.crews } };
}

function withModes(activity: ScheduleActivity, modes: readonly CrewMode[]): ScheduleActivity {
  const { workDays = 0, crewSize = 0, uses = {}, ...rest } = activity;
  return { ...rest, modes: [{ workDays, crewSize, uses }, ...modes] };
}

/** The total of a line, dollars; 0 when it is absent. */
function lineOf({ parts }: RanPlan, id: string): number {
  const { result, lines } = parts.money;
  const total = result.money(lines.columns.total, id);
  return total === undefined ? 0 : dollarsOf(total);
}
