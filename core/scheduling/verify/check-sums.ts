import type { Finding } from '../../base';
import type { Facts } from './facts';
import { wrong } from './wrong';

/** What is said about the whole agrees with its parts: first and last day, bound, hammocks. */
export function checkSums(facts: Facts): Finding[] {
  const { result, problem } = facts;
  const findings: Finding[] = [];
  const dates = result.activities;
  if (dates.length > 0) {
    const start = dates.reduce((first, a) => (a.start < first ? a.start : first), '9999-12-31');
    const finish = dates.reduce((last, a) => (a.finish > last ? a.finish : last), '0000-01-01');
    const days = (facts.position.get(finish) ?? -1) + 1;
    const bound = result.lowerBoundDays ?? 0;
    if (result.start !== undefined && result.start < start)
      findings.push(wrong('start', '/start', `Starts on ${result.start}, but the first day is ${start}.`));
    if (result.finish !== finish)
      findings.push(
        wrong('finish', '/finish', `Ends on ${result.finish ?? ''}, but the last day is ${finish}.`),
      );
    if (bound > days)
      findings.push(
        wrong('bound', '/lowerBoundDays', `${days} days is less than the least possible, ${bound}.`),
      );
    if (result.status === 'optimal' && result.lowerBoundDays !== result.calendarDays)
      findings.push(wrong('optimal', '/status', 'Said to be optimal without proof.'));
  }
  for (const hammock of problem.hammocks ?? []) findings.push(...checkHammock(facts, hammock));
  return findings;
}

function checkHammock(facts: Facts, hammock: NonNullable<Facts['problem']['hammocks']>[number]): Finding[] {
  const told = facts.result.hammocks.find(h => h.id === hammock.id);
  if (hammock.fromStartOf.length === 0 || hammock.toFinishOf.length === 0) return [];
  const starts = hammock.fromStartOf.flatMap(id => facts.activities.get(id)?.given.start ?? []).sort();
  const finishes = hammock.toFinishOf.flatMap(id => facts.activities.get(id)?.given.finish ?? []).sort();
  const [start = '', finish = ''] = [starts[0], finishes.at(-1)];
  const worked = facts.worked.get(hammock.calendar) ?? new Uint8Array(0);
  const first = facts.position.get(start) ?? 0;
  const behind = (facts.position.get(finish) ?? -1) + 1;
  const workDays = worked.subarray(first, behind).reduce((sum, isWorked) => sum + isWorked, 0);
  const isSame =
    told?.start === start &&
    told.finish === finish &&
    told.calendarDays === Math.max(0, behind - first) &&
    told.workDays === workDays;
  return isSame
    ? []
    : [
        wrong(
          'hammock',
          `/hammocks/${hammock.id}`,
          `${hammock.title} runs ${start} to ${finish}, ${workDays} work days.`,
        ),
      ];
}
