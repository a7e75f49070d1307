import { at, intAt } from '../../base';
import { bindingResources } from './binding';
import type { AxisCalendar, DatedNet, Uses, Watched } from './dated-net';
import { NONE } from './dice';
import { exclusionUnits } from './exclusion-units';
import { layLanes, packUnits, type Lanes } from './lanes';
import { LastingOrders } from './ordered';
import type { SearchProblem } from './problem';
import { peakOf, weightsOf } from './weights';

/** The axis of a network under construction. */
export interface AxisTimes {
  readonly lead: number;
  readonly slots: number;
  readonly calendarOf: Int32Array;
  readonly calendars: readonly AxisCalendar[];
}

type HeldTables =
  'words' | 'guards' | 'workDemands' | 'idleDemands' | 'uses' | 'template' | 'weights' | 'orders' | 'watched';

/** What activities hold and what there is: the resources that can run short and those that stand for exclusions, packed. */
export function heldOf(problem: SearchProblem, times: AxisTimes): Pick<DatedNet, HeldTables> {
  const orders = new LastingOrders(problem);
  const watched = watchedResources(problem, orders, times);
  const lanes = layLanes(
    watched.map(({ peak }) => peak),
    usedTogether(watched, problem.activities.length),
  );
  const count = problem.activities.length;
  const workDemands = new Int32Array(count * lanes.words);
  const idleDemands = new Int32Array(count * lanes.words);
  const template = templateOf(problem, watched, lanes, times);
  watched.forEach(({ units, isHeldOnIdleDays }, r) => {
    const word = intAt(lanes.wordOf, r);
    const shift = intAt(lanes.shiftOf, r);
    for (let i = 0; i < count; i++) {
      if (units[i] === 0 || problem.activities[i]?.fixedStart !== undefined) continue;
      const place = i * lanes.words + word;
      const packed = intAt(units, i) << shift;
      workDemands[place] = intAt(workDemands, place) + packed;
      if (isHeldOnIdleDays) idleDemands[place] = intAt(idleDemands, place) + packed;
    }
  });
  return {
    words: lanes.words,
    guards: lanes.guards,
    workDemands,
    idleDemands,
    uses: usesOf(count, lanes.words, workDemands, idleDemands),
    template,
    weights: weightsOf(problem),
    orders,
    watched,
  };
}

/** The resources that can run short, and those that stand for exclusions. */
function watchedResources(problem: SearchProblem, orders: LastingOrders, times: AxisTimes): Watched[] {
  const { activities } = problem;
  const resources = bindingResources(problem, orders).flatMap((r): Watched[] => {
    const resource = problem.resources[r];
    if (!resource) return [];
    const { capacityByDay = null, isHeldOnIdleDays = false } = resource;
    const units = new Int32Array(activities.length);
    activities.forEach(({ demands }, i) => {
      units[i] = at(demands, r);
    });
    return [{ peak: peakOf(resource), units, capacityByDay, isHeldOnIdleDays, isExclusion: false }];
  });
  const exclusions = problem.exclusions.flatMap(exclusion =>
    exclusionUnits(exclusion, orders).map((kept): Watched => {
      const units = new Int32Array(activities.length);
      const peak = kept.units;
      for (const i of kept.around) units[i] = 1;
      for (const i of kept.centre) units[i] = peak;
      const isHeldOnIdleDays = !meetOnWorkDays(problem, times, [...kept.centre, ...kept.around]);
      return { peak, units, capacityByDay: null, isHeldOnIdleDays, isExclusion: true };
    }),
  );
  return [...resources, ...exclusions];
}

/**
 * Whether any two of some activities that are under way at once also work on one same day: those of one calendar do,
 * since they start on its work days.
 */
function meetOnWorkDays(
  { activities }: SearchProblem,
  { calendarOf }: AxisTimes,
  some: readonly number[],
): boolean {
  const calendar = calendarOf[at(some, 0)];
  return some.every(i => calendarOf[i] === calendar && activities[i]?.fixedStart === undefined);
}

/** Most watched resources that are compared two by two; beyond, their order decides where their lanes lie. */
const MOST_COMPARED = 64;

/** How many activities hold units of both of two watched resources. */
function usedTogether(watched: readonly Watched[], count: number): (a: number, b: number) => number {
  if (watched.length > MOST_COMPARED) return () => 0;
  const together = new Int32Array(watched.length ** 2);
  for (let i = 0; i < count; i++) {
    const held = watched.flatMap(({ units }, r) => (units[i] === 0 ? [] : [r]));
    for (const a of held) {
      for (const b of held) {
        const place = a * watched.length + b;
        together[place] = intAt(together, place) + 1;
      }
    }
  }
  return (a, b) => intAt(together, a * watched.length + b);
}

function usesOf(count: number, words: number, workDemands: Int32Array, idleDemands: Int32Array): Uses {
  const first = new Int32Array(count + 1);
  const held: number[] = [];
  for (let i = 0; i < count; i++) {
    for (let w = i * words; w < (i + 1) * words; w++) {
      if (workDemands[w] !== 0 || idleDemands[w] !== 0) held.push(w);
    }
    first[i + 1] = held.length;
  }
  return {
    first,
    word: Int32Array.from(held, w => w % words),
    work: Int32Array.from(held, w => intAt(workDemands, w)),
    idle: Int32Array.from(held, w => intAt(idleDemands, w)),
  };
}

/**
 * The packed units of every day of the axis, less what fixed activities hold; outside the problem's days every
 * capacity is at its largest.
 */
function templateOf(
  problem: SearchProblem,
  watched: readonly Watched[],
  lanes: Lanes,
  times: AxisTimes,
): Int32Array {
  const { slots, lead } = times;
  const template = new Int32Array(slots * lanes.words);
  const peaks = packUnits(
    lanes,
    watched.map(({ peak }) => peak),
  );
  for (let word = 0; word < lanes.words; word++) {
    template.fill(intAt(peaks, word) | intAt(lanes.guards, word), word * slots, (word + 1) * slots);
  }
  const fixed = [...problem.activities.keys()].filter(i => problem.activities[i]?.fixedStart !== undefined);
  watched.forEach(({ peak, capacityByDay, units: held, isHeldOnIdleDays }, r) => {
    const holders = fixed.filter(i => held[i] !== 0);
    if (!capacityByDay && holders.length === 0) return;
    const taken = takenByFixed(problem, times, holders, held, isHeldOnIdleDays);
    const row = intAt(lanes.wordOf, r) * slots + lead;
    const shift = intAt(lanes.shiftOf, r);
    for (let day = 0; day < problem.horizon; day++) {
      const units = Math.max(0, (capacityByDay?.[day] ?? peak) - intAt(taken, day));
      template[row + day] = intAt(template, row + day) - ((peak - units) << shift);
    }
  });
  return template;
}

/** Units that fixed activities hold on each day of the problem. */
function takenByFixed(
  problem: SearchProblem,
  times: AxisTimes,
  holders: readonly number[],
  units: Int32Array,
  isHeldOnIdleDays: boolean,
): Int32Array {
  const taken = new Int32Array(problem.horizon);
  for (const i of holders) {
    const calendar = times.calendars[intAt(times.calendarOf, i)];
    let left = at(problem.activities, i).duration;
    for (let day = problem.activities[i]?.fixedStart ?? NONE; left > 0 && day < problem.horizon; day++) {
      const slot = times.lead + day;
      const isWork = calendar?.indexOfDay[slot] !== calendar?.indexOfDay[slot + 1];
      if (isWork || isHeldOnIdleDays) taken[day] = intAt(taken, day) + intAt(units, i);
      if (isWork) left--;
    }
  }
  return taken;
}
