import { isoOf } from '../../calendar';
import { at } from '../../base';
import type { StateSpell } from '../compile/zone-states';
import type { Placed } from '../placed';
import type { ZoneStatePeriod } from '../result';

/** How long each zone holds each state, on how many days it is needed, and when a stop is too long to keep it. */
export function statePeriods(placed: Placed): ZoneStatePeriod[] {
  return placed.compiled.spells.filter(spell => spell.users.length > 0).map(spell => periodOf(placed, spell));
}

function periodOf(placed: Placed, { state, zone, opener, users }: StateSpell): ZoneStatePeriod {
  const { compiled } = placed;
  const opened = at(placed.finishes, opener);
  const closed = Math.max(...users.map(user => at(placed.finishes, user)));
  const days = Array.from({ length: Math.max(0, closed - opened) }, (_, i) => opened + i);
  const used = days.filter(day => users.some(user => isAtWork(placed, user, day)));
  const limit = compiled.problem.zoneStates?.find(rule => rule.id === state)?.stopLimitDays;
  const reopened = used.filter(
    (day, n) => limit !== undefined && day - (used[n - 1] ?? opened - 1) - 1 > limit,
  );
  return {
    zone,
    state,
    from: isoOf(compiled.first + opened),
    to: isoOf(compiled.first + Math.max(opened, closed - 1)),
    workDays: used.length,
    reopened: reopened.map(day => isoOf(compiled.first + day)),
  };
}

function isAtWork(placed: Placed, activity: number, day: number): boolean {
  const isUnderWay = at(placed.starts, activity) <= day && day < at(placed.finishes, activity);
  return isUnderWay && at(placed.compiled.activities, activity).open.flags[day] === 1;
}
