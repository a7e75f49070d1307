import type { Finding } from '../../base';
import { isAtWork, type CheckedActivity, type Facts } from './facts';
import { wrong } from './wrong';

/** Every activity is there, has as many days as asked, begins and ends on days it may work, and keeps its dates. */
export function checkDays(facts: Facts): Finding[] {
  const missing = facts.problem.activities.filter(a => !facts.activities.has(a.id));
  return [
    ...missing.map(a => wrong('missing', `/activities/${a.id}`, `${a.title} has no dates.`)),
    ...[...facts.activities.values()].flatMap(activity => checkActivity(facts, activity)),
  ];
}

function checkActivity(facts: Facts, activity: CheckedActivity): Finding[] {
  const { asked, given, crew } = activity;
  const say = (code: string, message: string) => [
    wrong(code, `/activities/${asked.id}`, `${asked.title} ${message}`),
  ];
  if (asked.actualFinish !== undefined) {
    const isKept = given.start === asked.actualStart && given.finish === asked.actualFinish;
    return isKept ? [] : say('actual', `is dated ${given.start} to ${given.finish}, not as it happened.`);
  }
  const findings = [...checkDates(facts, activity)];
  if (crew.workDays === 0 && !asked.consecutive) return findings;
  const from = given.resumed === undefined ? activity.first : (facts.position.get(given.resumed) ?? -1);
  if (from < 0 || !isAtWork(activity, from))
    findings.push(...say('idle-start', `starts on ${given.resumed ?? given.start}, a day it cannot work.`));
  if (!isAtWork(activity, activity.last))
    findings.push(...say('idle-finish', `ends on ${given.finish}, a day it cannot work.`));
  let days = 0;
  for (let day = Math.max(0, from); day <= activity.last; day++) if (isAtWork(activity, day)) days++;
  const due = daysDue(facts, activity);
  if (due !== undefined && days !== due)
    findings.push(...say('duration', `has ${days} days where ${due} are due.`));
  if (asked.consecutive && days !== activity.last - from + 1)
    findings.push(...say('consecutive', 'does not run on consecutive days.'));
  return findings;
}

/** The days an activity must have; undefined where only the program's own count of what is left says so. */
function daysDue(facts: Facts, { asked, crew }: CheckedActivity): number | undefined {
  if (asked.actualStart === undefined) return crew.workDays + (asked.consecutive?.weatherDays ?? 0);
  return facts.problem.statusDate === undefined ? undefined : asked.remaining;
}

function checkDates(facts: Facts, activity: CheckedActivity): Finding[] {
  const { asked, given, crew } = activity;
  const findings: Finding[] = [];
  const say = (code: string, message: string) =>
    findings.push(wrong(code, `/activities/${asked.id}`, `${asked.title} ${message}`));
  const begins = given.resumed ?? given.start;
  const { statusDate } = facts.problem;
  if (given.start > given.finish)
    say('order', `ends on ${given.finish}, before it starts on ${given.start}.`);
  if (asked.actualStart !== undefined && given.start !== asked.actualStart)
    say('actual', `starts on ${given.start}, not as it happened.`);
  if (asked.actualStart === undefined && asked.notBefore !== undefined && given.start < asked.notBefore) {
    say('not-before', `starts on ${given.start}, before ${asked.notBefore}.`);
  }
  if (asked.deadline !== undefined && given.finish > asked.deadline)
    say('deadline', `ends on ${given.finish}, after ${asked.deadline}.`);
  if (statusDate !== undefined && begins < statusDate)
    say('status-date', `is planned on ${begins}, before the status date.`);
  const mode = asked.modes ? asked.modes[given.mode] : given.mode === 0 ? crew : undefined;
  if (!mode || given.crewSize !== crew.crewSize)
    say('crew', `has a crew of ${given.crewSize} that was not asked for.`);
  return findings;
}
