import { parseIsoDate } from '../../../core/calendar';
import {
  crewPlanJson,
  crewPlanStudy,
  levelledJson,
  levelledPlan,
  type CrewPlanAnswer,
  type CrewPlanPoint,
  type CrewsUsed,
  type Evaluation,
  type LevelledPlan,
  type NoPlan,
} from '../../../core/evaluation';
import { UsageError, type Call } from '../command';
import { todayOf } from '../load';
import type { Answers } from './schedule-questions';

const SEED = 1;
const MOST_STARTS = 36;

/** The questions about crews: evened out, as few as a last day allows, or planned for the least cost. */
export function crewAnswers(call: Call, evaluation: Evaluation): Answers {
  const by = lastDay(call);
  const answers = [
    call.flag('level') ? told('levelled', drained(levelledPlan(evaluation, { seed: SEED }))) : NOTHING,
    call.flag('least-crew') ? leastCrew(evaluation, by) : NOTHING,
    call.flag('crew-plan') ? crewPlan(call, evaluation, by) : NOTHING,
  ];
  return {
    json: Object.fromEntries(answers.flatMap(answer => Object.entries(answer.json))),
    lines: answers.flatMap(answer => answer.lines),
    findings: answers.flatMap(answer => answer.findings),
  };
}

const NOTHING: Answers = { json: {}, lines: [], findings: [] };

function lastDay(call: Call): string | undefined {
  const by = call.option('by');
  if (by === undefined) return undefined;
  if (parseIsoDate(by) === undefined)
    throw new UsageError(`--by takes a date such as 2028-05-31, not "${by}".`);
  if (!call.flag('least-crew') && !call.flag('crew-plan'))
    throw new UsageError('--by is the last day for --least-crew or --crew-plan; name one of them.');
  return by;
}

function leastCrew(evaluation: Evaluation, by: string | undefined): Answers {
  if (by === undefined) throw new UsageError('--least-crew needs the last day: --by YYYY-MM-DD.');
  return told('leastCrew', drained(levelledPlan(evaluation, { seed: SEED, leastCrewBy: by })));
}

function told(key: string, plan: LevelledPlan | NoPlan | undefined): Answers {
  if (plan === undefined)
    return { json: {}, lines: ['There is no schedule with prices to plan crews for.'], findings: [] };
  return {
    json: { [key]: levelledJson(plan) },
    lines:
      'earliest' in plan
        ? [`No schedule keeps that day: the earliest finish is ${plan.earliest}.`]
        : levelLines(plan),
    findings: 'earliest' in plan ? [] : plan.findings,
  };
}

function levelLines(plan: LevelledPlan): string[] {
  const { before, after, schedule } = plan;
  const head =
    plan.kind === 'level'
      ? `Crews evened out, finish kept at ${schedule.finish ?? ''}:`
      : `Fewest crews found that finish by ${plan.by ?? ''} (on ${schedule.finish ?? ''}):`;
  return [
    '',
    head,
    `  people at work at once ${plan.peopleBefore} -> ${plan.peopleAfter}; crews hired ${before.hired} -> ${after.hired}`,
    `  hiring and releasing ${before.cost.toFixed(2)} -> ${after.cost.toFixed(2)}, saved ${plan.saved.toFixed(2)}`,
    `    ${plan.basis}`,
    ...(plan.totalBefore === undefined || plan.totalAfter === undefined
      ? []
      : [`  estimate with these dates ${plan.totalBefore.toFixed(2)} -> ${plan.totalAfter.toFixed(2)}`]),
    '  crew: most at once, hired',
    ...crewLines(before, after),
    `  ${plan.moved.length} activities start on another day`,
    ...plan.moved.map(({ title, from, to }) => `    ${from} -> ${to}  ${title}`),
  ];
}

function crewLines(before: CrewsUsed, after: CrewsUsed): string[] {
  return before.crews.map(({ crew, title, peak, hired }) => {
    const now = after.crews.find(one => one.crew === crew);
    return `    ${title}: ${peak} -> ${now?.peak ?? 0}, hired ${hired} -> ${now?.hired ?? 0}`;
  });
}

function crewPlan(call: Call, evaluation: Evaluation, by: string | undefined): Answers {
  const study = crewPlanStudy(
    evaluation,
    { today: todayOf(call, evaluation.project), seed: SEED },
    { ...(by === undefined ? {} : { finishBy: by }), ...startsOf(call) },
  );
  const answer = drained(study);
  if (answer === undefined)
    return { ...NOTHING, lines: ['There is no schedule with prices to plan crews for.'] };
  return { json: { crewPlan: crewPlanJson(answer) }, lines: planLines(answer), findings: [] };
}

/** The answer of work done in steps, all of them taken at once: the command line is stopped as a whole. */
function drained<R>(steps: Generator<unknown, R>): R {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}

function startsOf(call: Call): { starts?: number } {
  const text = call.option('starts');
  if (text === undefined) return {};
  const starts = Number(text);
  if (!Number.isInteger(starts) || starts < 1 || starts > MOST_STARTS)
    throw new UsageError(`--starts takes a whole number from 1 to ${MOST_STARTS}, not "${text}".`);
  return { starts: starts - 1 };
}

function planLines({ curve, frontier, best, sentence, cautions, notes, tried }: CrewPlanAnswer): string[] {
  const mark = (point: CrewPlanPoint) =>
    [
      point.id === best?.id ? 'cheapest' : '',
      point.isPresent ? 'as it stands' : '',
      frontier.includes(point.id) ? '' : 'dearer and no earlier than another',
    ]
      .filter(word => word !== '')
      .join(', ');
  return [
    '',
    sentence,
    `Cost over time, ${tried} plans estimated (finish, total with expected standby, standby in it, people at once, plan):`,
    ...curve.map(
      point =>
        `  ${point.finish}  ${point.cost.toFixed(2).padStart(12)}  ${point.standby.toFixed(2).padStart(10)}  ${String(point.peakCrew).padStart(4)}  ${point.words}${mark(point) === '' ? '' : ` (${mark(point)})`}`,
    ),
    ...cautions.map(caution => `Caution: ${caution}`),
    ...notes,
  ];
}
