import { withId } from '../../base';
import { dayOf } from '../../calendar';
import { dollars } from '../../cash-flow';
import { CostCurve } from '../../scheduling';
import type { Evaluation } from '../evaluate';
import type { CrewPlanPoint } from './plan-point';

/** Which plan costs least, and the whole curve of cost over time. */
export interface CrewPlanAnswer {
  /** The last day asked for, or the end of the grant period; absent: none. */
  readonly finishBy?: string;
  /** The plan as it stands, estimated with as many passes as the others. */
  readonly present?: CrewPlanPoint;
  /** The cheapest that keeps the last day; absent when none does. */
  readonly best?: CrewPlanPoint;
  readonly earliest?: CrewPlanPoint;
  /** The cheapest plan found for every finish, the earliest first. */
  readonly curve: readonly CrewPlanPoint[];
  /** Ids of the plans that no other beats in both cost and time. */
  readonly frontier: readonly string[];
  readonly tried: number;
  /** What it comes to, in one sentence. */
  readonly sentence: string;
  readonly cautions: readonly string[];
  /** What the plans rest on. */
  readonly notes: readonly string[];
}

export function answerOf(
  evaluation: Evaluation,
  points: readonly CrewPlanPoint[],
  finishBy: string | undefined,
): CrewPlanAnswer {
  const curve = new CostCurve<CrewPlanPoint>();
  for (const point of points) curve.add(point);
  const present = points.find(point => point.isPresent);
  const best = curve.best(finishBy);
  const all = curve.points();
  const earliest = all[0];
  return {
    ...(finishBy === undefined ? {} : { finishBy }),
    ...(present === undefined ? {} : { present }),
    ...(best === undefined ? {} : { best }),
    ...(earliest === undefined ? {} : { earliest }),
    curve: all,
    frontier: curve.frontier().map(point => point.id),
    tried: points.length,
    sentence: sentence(present, best, earliest, finishBy),
    cautions: cautions(evaluation, all),
    notes: notes(evaluation),
  };
}

function sentence(
  present: CrewPlanPoint | undefined,
  best: CrewPlanPoint | undefined,
  earliest: CrewPlanPoint | undefined,
  finishBy: string | undefined,
): string {
  if (earliest === undefined) return 'No plan could be estimated.';
  const { finish, cost, words, isPresent } = best ?? earliest;
  if (finishBy !== undefined && finish > finishBy)
    return `No plan found finishes by ${finishBy}: the earliest finishes on ${finish}, ${dayOf(finish) - dayOf(finishBy)} calendar days after it.`;
  if (present === undefined)
    return `The plan as it stands could not be estimated. The cheapest plan found finishes on ${finish}: ${words}.`;
  if (isPresent) return 'No plan found costs less than the plan as it stands.';
  const less = present.cost - cost;
  const days = dayOf(present.finish) - dayOf(finish);
  const when =
    days === 0
      ? 'on the same day'
      : `${Math.abs(days)} calendar day${Math.abs(days) === 1 ? '' : 's'} ${days > 0 ? 'earlier' : 'later'}`;
  if (finishBy === undefined || less >= 0)
    return `The cheapest plan found costs ${inWords(less)} less than the plan as it stands and finishes ${when}: ${words}.`;
  return `The cheapest plan found that keeps ${finishBy} costs ${inWords(-less)} more than the plan as it stands and finishes ${when}: ${words}.`;
}

/** Dollars in words, to the cent. */
function inWords(amount: number): string {
  return dollars(Math.round(amount * 100));
}

/** Longer shifts hurt people before they hurt the schedule. */
function cautions({ library }: Evaluation, curve: readonly CrewPlanPoint[]): string[] {
  const hurried = [
    'Larger crews get in each other’s way: more people in a tank, under a lift or near a torch than the place is fit for is a danger before it is a loss. The competent person on site decides how many may work in a space.',
  ];
  const long = [
    'Long shifts and long weeks tire people; tired people fall, burn and misjudge, above all in tanks, at height and with torches. Hours, breaks, rest days and night work follow local codes, the contract and the competent person on site, not this table.',
  ];
  return [
    ...(curve.some(point => point.crews.length > 0) ? hurried : []),
    ...(curve.some(point => point.isLong || point.shift.startsWith('two-')) ? long : []),
    library.cautionClosing,
  ];
}

function notes({ library }: Evaluation): string[] {
  const { crowding } = library.rateBook.crewSizes;
  const shifts = withId(library.options, 'shift-pattern').values;
  const tired = shifts.flatMap(({ title, shift }) =>
    shift === undefined || shift.hoursFactor.value === '1'
      ? []
      : [
          `${title}: hours × ${shift.hoursFactor.value} (${shift.hoursFactor.basis}: ${shift.hoursFactor.source}).`,
        ],
  );
  return [
    'Every plan shown is a whole estimate of its own: direct cost, time-dependent cost, escalation and mark-ups. Compared is the total with what waiting for weather is expected to cost: mean days from the chain of workable days of the risk file, at the rates of the equipment on hire.',
    `Crowding: ${Number(crowding.value) * 100} % more hours with twice the usual crews, other numbers in proportion (${crowding.basis}: ${crowding.source}).`,
    ...tired,
    'The search is a rule of thumb: cheaper plans may exist.',
  ];
}
