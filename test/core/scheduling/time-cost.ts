import type { CrewPlan, ScheduleProblem } from '../../../core/scheduling';
import { after, problemOf, work } from './problems';

/** An activity of a printed time-cost example: normal and crash time and cost, and what comes before. */
export interface Printed {
  readonly id: string;
  readonly normal: number;
  readonly crash: number;
  readonly normalCost: number;
  readonly crashCost: number;
  readonly before: string;
}

export function readTimeCosts(text: string): Printed[] {
  return text.split(';').map(row => {
    const [id = '', days = '', costs = '', before = '-'] = row.trim().split(' ');
    const [normal = 0, crash = 0] = days.split('/').map(Number);
    const [normalCost = 0, crashCost = 0] = costs.split('/').map(Number);
    return { id, normal, crash, normalCost, crashCost, before };
  });
}

/** Each unit of time saved is one more crew to choose from; its cost rises evenly from normal to crash. */
export function problemFrom(printed: readonly Printed[]): ScheduleProblem {
  return problemOf(
    printed.map(({ id, normal, crash }) => {
      const modes = Array.from({ length: normal - crash + 1 }, (_, n) => ({
        crewSize: 1 + n,
        workDays: normal - n,
        uses: {},
      }));
      const { workDays: _, ...rest } = work(id, 0, { calendar: 'all' });
      return { ...rest, modes };
    }),
    printed.flatMap(({ id, before }) =>
      before === '-' ? [] : Array.from(before).map(from => after(from, id)),
    ),
  );
}

export function directCost(printed: readonly Printed[], plan: CrewPlan): number {
  return printed.reduce((sum, { normal, crash, normalCost, crashCost }, i) => {
    const saved = plan.modes[i] ?? 0;
    return sum + normalCost + (saved === 0 ? 0 : (saved * (crashCost - normalCost)) / (normal - crash));
  }, 0);
}
