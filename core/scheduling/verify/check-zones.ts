import type { Finding } from '../../base';
import type { CheckedActivity, Facts } from './facts';
import { wrong } from './wrong';

/** Excluded work does not meet, and work that needs a state of its zone finds it open and not lost. */
export function checkZones(facts: Facts): Finding[] {
  return [...checkExclusions(facts), ...checkStates(facts)];
}

function checkExclusions(facts: Facts): Finding[] {
  return (facts.problem.exclusions ?? []).flatMap(exclusion =>
    exclusion.first.flatMap(one =>
      exclusion.second.flatMap(other => {
        const [a, b] = [facts.activities.get(one), facts.activities.get(other)];
        if (!a || !b || one === other || isHistory(a) || isHistory(b) || !overlap(facts, a, b)) return [];
        const reach = exclusion.reach ?? 'touching';
        const isNear =
          reach === 'anywhere' ||
          (a.asked.place !== undefined && isReached(facts, a.asked.place, b.asked.place, reach));
        if (!isNear) return [];
        return [
          wrong(
            'exclusion',
            `/exclusions/${exclusion.id}`,
            `${a.asked.title} and ${b.asked.title} run at the same time.`,
          ),
        ];
      }),
    ),
  );
}

function isHistory(activity: CheckedActivity): boolean {
  return activity.asked.actualFinish !== undefined || activity.crew.workDays === 0;
}

function isReached(facts: Facts, a: string, b: string | undefined, reach: 'zone' | 'touching'): boolean {
  if (a === b) return true;
  if (reach === 'zone' || b === undefined) return false;
  const touches = (one: string, other: string) =>
    facts.problem.zones?.some(z => z.id === one && z.touches?.includes(other)) ?? false;
  return touches(a, b) || touches(b, a);
}

function overlap(facts: Facts, a: CheckedActivity, b: CheckedActivity): boolean {
  const from = (activity: CheckedActivity) =>
    activity.given.resumed === undefined
      ? activity.start
      : (facts.position.get(activity.given.resumed) ?? activity.start);
  return from(a) < b.finish && from(b) < a.finish;
}

/** For all work under a state: an opening before it, and nothing that ends the state from there to its finish. */
function checkStates(facts: Facts): Finding[] {
  const all = [...facts.activities.values()];
  return (facts.problem.zoneStates ?? []).flatMap(({ id, title }) =>
    all.flatMap(user => {
      if (!user.asked.needsStates?.includes(id) || user.asked.actualStart !== undefined) return [];
      const inZone = all.filter(other => other.asked.place === user.asked.place && other !== user);
      const openers = inZone.filter(other => other.asked.opensStates?.includes(id));
      const enders = inZone.filter(other => other.asked.endsStates?.includes(id));
      const isHeld = openers.some(
        opener =>
          opener.finish <= user.start &&
          !enders.some(ender => ender.finish > opener.finish && ender.start < user.finish),
      );
      if (isHeld || openers.length === 0) return [];
      return [
        wrong(
          'zone-state',
          `/activities/${user.asked.id}`,
          `${user.asked.title} runs without ${title} in its zone.`,
        ),
      ];
    }),
  );
}
