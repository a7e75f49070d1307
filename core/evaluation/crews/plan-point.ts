import { at, lowerFirst } from '../../base';
import type { Change } from '../../project';
import { wholeSpan } from '../timing';
import type { CrewChoice } from './crew-sizes';
import type { Plan, RanPlan } from './plan-run';

/** A plan with what the estimate makes of it: one point of the curve of cost over time. */
export interface CrewPlanPoint {
  readonly id: string;
  /** The plan as it stands. */
  readonly isPresent: boolean;
  /** Its shifts are longer, or its weeks, than the usual one: people tire. */
  readonly isLong: boolean;
  readonly start: string;
  readonly finish: string;
  readonly shift: string;
  readonly crews: readonly CrewChoice[];
  /** The plan in words: shifts, crews, start. */
  readonly words: string;
  readonly changes: readonly Change[];
  /** The owner's total, dollars. */
  readonly total: number;
  /** Mean days waited for weather beyond the plan, and what they cost, dollars. */
  readonly standbyDays: number;
  readonly standby: number;
  /** Total and standby, dollars: what the plans are compared by. */
  readonly cost: number;
  readonly workDays: number;
  readonly peakCrew: number;
}

/** A shift pattern as the options name it. */
export interface ShiftPattern {
  readonly id: string;
  readonly title: string;
  readonly isLong: boolean;
}

/** Items named in full; of more the number is told. */
const MOST_NAMED = 4;

export function pointOf(
  run: RanPlan,
  plan: Plan,
  from: { readonly changes: readonly Change[]; readonly shift: ShiftPattern; readonly present: Plan },
): Omit<CrewPlanPoint, 'id'> {
  const { schedule } = run.parts;
  const { start, finish, workDays } = wholeSpan(schedule);
  const moved = plan.start === from.present.start ? [] : [`start ${plan.start}`];
  return {
    isPresent: from.changes.length === 0,
    isLong: from.shift.isLong,
    start,
    finish,
    shift: plan.shift,
    crews: plan.crews,
    words: [from.shift.title, ...crewWords(plan.crews), ...moved].join('; '),
    changes: from.changes,
    total: run.total,
    standbyDays: Math.round(run.standby.days * 10) / 10,
    standby: run.standby.cost,
    cost: Math.round((run.total + run.standby.cost) * 100) / 100,
    workDays,
    peakCrew: schedule.peakCrew,
  };
}

/** "more crews for A (1 → 2) and B (4 → 6)", and the same for fewer. */
function crewWords(crews: readonly CrewChoice[]): string[] {
  if (crews.length === 0) return ['crews as planned'];
  const more = crews.filter(one => one.crews > one.planned);
  const fewer = crews.filter(one => one.crews < one.planned);
  return [
    ...(more.length === 0 ? [] : [`more crews for ${named(more)}`]),
    ...(fewer.length === 0 ? [] : [`fewer crews for ${named(fewer)}`]),
  ];
}

function named(crews: readonly CrewChoice[]): string {
  const titles = crews.map(one => `${lowerFirst(one.title)} (${one.planned} → ${one.crews})`);
  const rest = titles.length - MOST_NAMED;
  if (rest > 0) return `${titles.slice(0, MOST_NAMED).join(', ')} and ${rest} more`;
  const [before, last] = [titles.slice(0, -1), at(titles, titles.length - 1)];
  return before.length === 0 ? last : `${before.join(', ')} and ${last}`;
}
