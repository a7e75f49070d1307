import type { Finding } from '../../base';
import type { CheckedActivity, Facts } from './facts';
import { wrong } from './wrong';

/** Excluded work does not meet, and work that needs a state of its zone finds it open and not lost. */
export function checkZones(facts: Facts): Finding[] {
  return [...checkExclusions(facts), ...checkStates(facts)];
}

function checkExclusions(facts: Facts): Finding[] {
  const asChecked = (ids: readonly string[]) =>
    ids.flatMap(id => facts.activities.get(id) ?? []).filter(activity => !isHistory(activity));
  return (facts.problem.exclusions ?? []).flatMap(exclusion => {
    const { id, reach = 'touching' } = exclusion;
    const second = asChecked(exclusion.second);
    return asChecked(exclusion.first).flatMap(a =>
      second
        .filter(b => a !== b && overlap(a, b) && isReached(facts, a.asked.place, b.asked.place, reach))
        .map(b =>
          wrong(
            'exclusion',
            `/exclusions/${id}`,
            `${a.asked.title} and ${b.asked.title} run at the same time.`,
          ),
        ),
    );
  });
}

function isHistory(activity: CheckedActivity): boolean {
  return activity.asked.actualFinish !== undefined || activity.crew.workDays === 0;
}

function isReached(
  facts: Facts,
  a: string | undefined,
  b: string | undefined,
  reach: 'zone' | 'touching' | 'anywhere',
): boolean {
  if (reach === 'anywhere') return true;
  if (a === undefined || b === undefined) return false;
  if (a === b || reach === 'zone') return a === b;
  const touches = (one: string, other: string) =>
    facts.problem.zones?.some(z => z.id === one && z.touches?.includes(other)) ?? false;
  return touches(a, b) || touches(b, a);
}

function overlap(a: CheckedActivity, b: CheckedActivity): boolean {
  return a.planned < b.finish && b.planned < a.finish;
}

/** For all work under a state: an opening before it, and nothing that ends the state from there to its finish. */
function checkStates(facts: Facts): Finding[] {
  const all = [...facts.activities.values()];
  return (facts.problem.zoneStates ?? []).flatMap(({ id, title }) => {
    const allOpeners = all.filter(other => other.asked.opensStates?.includes(id));
    const allEnders = all.filter(other => other.asked.endsStates?.includes(id));
    return all.flatMap(user => {
      if (!user.asked.needsStates?.includes(id) || user.asked.actualStart !== undefined) return [];
      const isBeside = (other: CheckedActivity) => other.asked.place === user.asked.place && other !== user;
      const openers = allOpeners.filter(isBeside);
      const enders = allEnders.filter(isBeside);
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
    });
  });
}
