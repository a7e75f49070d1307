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
    const known = (item?.choices ?? []).flatMap(choice => {
      const run = bySize.get(choice.size);
      const found = run && modeOf(choice, activity, item?.crew ?? '', run);
      return found === undefined
        ? []
        : [{ choice, mode: found, extra: lineOf(run, activity.id) - lineOf(plain, activity.id) }];
    });
    return {
      activity:
        known.length === 0
          ? activity
          : withModes(
              activity,
              known.map(one => one.mode),
            ),
      known,
    };
  });
  return {
    problem: { ...plain.parts.problem, activities: made.map(one => one.activity) },
    choices: made.map(({ known }) => [undefined, ...known.map(one => one.choice)]),
    extra: made.map(({ known }) => [0, ...known.map(one => one.extra)]),
  };
}

function modeOf(
  choice: CrewChoice,
  activity: ScheduleActivity,
  crew: string,
  run: RanPlan,
): CrewMode | undefined {
  const planned = run.parts.planned.find(one => one.item.id === activity.id);
  if (planned === undefined) return undefined;
  return { crewSize: choice.crews * choice.crewSize, workDays: planned.days, uses: { [crew]: choice.crews } };
}

function withModes(activity: ScheduleActivity, modes: readonly CrewMode[]): ScheduleActivity {
  const { workDays = 0, crewSize = 0, uses = {}, ...rest } = activity;
  return { ...rest, modes: [{ workDays, crewSize, uses }, ...modes] };
}

/** The total of a line, dollars; 0 when it is absent. */
function lineOf(run: RanPlan | undefined, id: string): number {
  const { money } = run?.parts ?? {};
  const total = money?.result.money(money.lines.columns.total, id);
  return total === undefined ? 0 : dollarsOf(total);
}
