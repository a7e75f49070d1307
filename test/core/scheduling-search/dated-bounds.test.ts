import { describe, expect, it } from 'vitest';
import { at } from '../../../core/base';
import type { SearchProblem } from '../../../core/scheduling/search';
import { DatedRefuter, raisedBound } from '../../../core/scheduling/search/bounds/dated/destructive';
import { suppliesOf, withinSupply } from '../../../core/scheduling/search/bounds/dated/energy';
import { incompatiblePairs, orderPairs, rivalsOf } from '../../../core/scheduling/search/bounds/dated/pairs';
import { besideCompulsory } from '../../../core/scheduling/search/bounds/dated/timetable';
import {
  alongRelationships,
  openWindows,
  windowsOf,
} from '../../../core/scheduling/search/bounds/dated/windows';
import { datedNetsOf } from '../../../core/scheduling/search/compile-dated';
import { normalised } from '../../../core/scheduling/search/lags';
import { allSchedules, heldOn, partOf, unitsOn, worksOn } from './all-schedules';
import { randomProblem, type Ingredients } from './random-problem';
import { finishDay, scheduleFaults } from './schedule-faults';

const KINDS: Readonly<Record<string, Ingredients>> = {
  'one calendar': { activities: 5 },
  calendars: { activities: 5, hasCalendars: true },
  'four kinds of relationship': { activities: 5, hasKinds: true, hasCalendars: true },
  'windows and varying capacities': {
    activities: 5,
    hasWindows: true,
    hasVaryingCapacity: true,
    hasCalendars: true,
  },
  'maximum lags': { activities: 5, hasKinds: true, hasMaximums: true, hasCalendars: true },
  'windows and calendars': { activities: 5, hasWindows: true, hasCalendars: true },
  exclusions: { activities: 5, hasExclusions: true, hasCalendars: true },
  'many resources': { activities: 5, resources: 12, hasCalendars: true },
};

/** The problem with no more of each resource than its largest user needs, and one unit fewer on every third day. */
function withLittle(problem: SearchProblem): SearchProblem {
  const resources = problem.resources.map((resource, r) => {
    const capacity = Math.max(1, ...problem.activities.map(({ demands }) => at(demands, r)));
    const capacityByDay = Int32Array.from({ length: problem.horizon }, (_, day) =>
      day % 3 === 2 ? capacity - 1 : capacity,
    );
    return { ...resource, capacity, ...(r === 1 ? { capacityByDay } : {}) };
  });
  return { ...problem, resources };
}

/** The problem with the same allowed starts for all, whatever their calendars and durations. */
function withSharedStarts(problem: SearchProblem): SearchProblem {
  const startAllowed = Uint8Array.from({ length: problem.horizon }, (_, day) => (day % 5 < 3 ? 1 : 0));
  return { ...problem, activities: problem.activities.map(activity => ({ ...activity, startAllowed })) };
}

/** Earliest and latest start and finish of each activity, as days of the problem. */
interface Span {
  readonly earliest: number;
  readonly earliestEnd: number;
  readonly latest: number;
  readonly latestEnd: number;
}

/** The windows in which the rules settle for an assumed end; undefined where they refute it. */
function spansFor(problem: SearchProblem, end: number): readonly Span[] | undefined {
  const nets = datedNetsOf(problem, normalised(problem));
  const [forward, backward] = nets;
  const windows = windowsOf(nets);
  const rivals = rivalsOf(forward.count, incompatiblePairs(forward));
  const supplies = suppliesOf(forward, problem.horizon);
  openWindows(windows, forward.base + end);
  for (let before = -1; before !== windows.moves;) {
    before = windows.moves;
    const holds =
      alongRelationships(windows, 0) &&
      alongRelationships(windows, 1) &&
      orderPairs(windows, rivals) &&
      besideCompulsory(windows, 0) &&
      besideCompulsory(windows, 1) &&
      withinSupply(windows, 0, supplies) &&
      withinSupply(windows, 1, supplies);
    if (!holds) return undefined;
  }
  const [early, late] = windows.views;
  return problem.activities.map((_, i) => ({
    earliest: at(early.times.starts, i) - forward.base,
    earliestEnd: at(early.times.finishes, i) - forward.base,
    latest: backward.slots - at(late.times.finishes, i) - forward.base,
    latestEnd: backward.slots - at(late.times.starts, i) - forward.base,
  }));
}

/** Beyond so many days the shortest schedule of a problem is not looked for. */
const MOST_DAYS = 16;
const shortest = new Map<string, number>();

/** Problems with their shortest finish; those without a schedule in the first days are left out. */
function* problems(
  ingredients: Ingredients,
  seeds: number,
): Generator<{ problem: SearchProblem; best: number }> {
  for (let seed = 1; seed < seeds + 1; seed++) {
    const drawn = randomProblem(seed, ingredients);
    const roomy = ingredients.hasWindows === true && seed % 3 === 0 ? withSharedStarts(drawn) : drawn;
    const problem = seed % 2 === 0 ? withLittle(roomy) : roomy;
    const key = JSON.stringify([seed, ingredients]);
    let best = shortest.get(key) ?? 0;
    while (best < MOST_DAYS && !shortest.has(key) && allSchedules(problem, best).length === 0) best++;
    shortest.set(key, best);
    if (best < MOST_DAYS) yield { problem, best };
  }
}

const all = ({ activities }: SearchProblem): number[] => [...activities.keys()];
const length = (problem: SearchProblem, i: number): number => at(problem.activities, i).duration;
const units = (problem: SearchProblem, r: number, i: number): number =>
  at(at(problem.activities, i).demands, r);

/** Work days of an activity's calendar from one moment to before another. */
function workDays(problem: SearchProblem, i: number, from: number, to: number): number {
  let count = 0;
  for (let day = from; day < to; day++) if (worksOn(problem, i, day)) count++;
  return count;
}

/** Units that the others hold on a day wherever they start. */
const surelyHeld = (
  problem: SearchProblem,
  spans: readonly Span[],
  r: number,
  i: number,
  day: number,
): number =>
  spans.reduce((sum, { latest, earliestEnd }, j) => {
    const isOn = j !== i && latest <= day && day < earliestEnd;
    return sum + (isOn ? heldOn(problem, r, j, day) : 0);
  }, 0);

/** Activities that, at their earliest or at their latest, do not fit beside what others hold in any case. */
function misfits(problem: SearchProblem, spans: readonly Span[]): number[] {
  return all(problem).filter(i => {
    const { earliest, earliestEnd, latest, latestEnd } = at(spans, i);
    return [
      [earliest, earliestEnd],
      [latest, latestEnd],
    ].some(([from = 0, to = 0]) =>
      problem.resources.some((_, r) => {
        for (let day = from; day < to; day++) {
          const own = heldOn(problem, r, i, day);
          if (own > 0 && own + surelyHeld(problem, spans, r, i, day) > unitsOn(problem, r, day)) return true;
        }
        return false;
      }),
    );
  });
}

/** Pairs that can never run at once on account of a resource or an exclusion. */
function apart(problem: SearchProblem): (readonly [number, number])[] {
  const lasting = all(problem).filter(i => length(problem, i) > 0);
  const calendarOf = (i: number) => at(problem.activities, i).calendar;
  return lasting.flatMap(i =>
    lasting
      .filter(j => j > i)
      .filter(j => {
        const isTooMuch = problem.resources.some(({ isHeldOnIdleDays, capacity, capacityByDay }, r) => {
          const most = Math.max(...(capacityByDay ? Array.from(capacityByDay) : [capacity]));
          const meet = isHeldOnIdleDays === true || calendarOf(i) === calendarOf(j);
          const [own, other] = [units(problem, r, i), units(problem, r, j)];
          return meet && own > 0 && other > 0 && own + other > most;
        });
        const isExcluded = problem.exclusions.some(
          ({ first, second }) =>
            (first.includes(i) && second.includes(j)) || (first.includes(j) && second.includes(i)),
        );
        return isTooMuch || isExcluded;
      })
      .map(j => [i, j] as const),
  );
}

/** Such pairs of which neither order is possible, or only one that is not kept. */
function unordered(problem: SearchProblem, spans: readonly Span[]): (readonly [number, number])[] {
  const canBe = (a: number, b: number) => at(spans, a).earliestEnd <= at(spans, b).latest;
  const isKept = (a: number, b: number) =>
    at(spans, b).earliest >= at(spans, a).earliestEnd && at(spans, a).latestEnd <= at(spans, b).latest;
  return apart(problem).filter(([i, j]) => {
    if (canBe(i, j) && canBe(j, i)) return false;
    return !(canBe(i, j) && isKept(i, j)) && !(canBe(j, i) && isKept(j, i));
  });
}

/** Days that an activity works in an interval at its earliest and at its latest. */
function inside(problem: SearchProblem, spans: readonly Span[], i: number, left: number, right: number) {
  const { earliest, earliestEnd, latest, latestEnd } = at(spans, i);
  const early = workDays(problem, i, Math.max(left, earliest), Math.min(right, earliestEnd));
  const late = workDays(problem, i, Math.max(left, latest), Math.min(right, latestEnd));
  return { least: Math.min(early, late), most: Math.max(early, late) };
}

/** Intervals between earliest starts and latest finishes that offer less than must lie inside, or less than may come. */
function crowded(problem: SearchProblem, spans: readonly Span[]): string[] {
  return problem.resources.flatMap((_, r) => {
    const users = all(problem).filter(i => units(problem, r, i) * length(problem, i) > 0);
    const isOpen = (day: number) => users.some(i => worksOn(problem, i, day));
    const lefts = users.map(i => at(spans, i).earliest);
    const rights = users.map(i => at(spans, i).latestEnd);
    return lefts.flatMap(left =>
      rights.flatMap(right => {
        if (right <= left) return [];
        let offered = 0;
        for (let day = left; day < right; day++) offered += isOpen(day) ? unitsOn(problem, r, day) : 0;
        const held = users.map(i => {
          const { least, most } = inside(problem, spans, i, left, right);
          return { least: least * units(problem, r, i), more: (most - least) * units(problem, r, i) };
        });
        const spare = offered - held.reduce((sum, { least }) => sum + least, 0);
        const isCrowded = spare < 0 || held.some(({ more }) => more > spare);
        return isCrowded ? [`resource ${r} from ${left} to ${right}`] : [];
      }),
    );
  });
}

/** Faults of the relationships, dates and calendars alone when everything starts at some moments. */
const faultsAlone = (problem: SearchProblem, starts: readonly number[]): string[] =>
  scheduleFaults({ ...problem, resources: [], exclusions: [] }, starts);

describe('windows for an assumed end with dates', () => {
  for (const [name, ingredients] of Object.entries(KINDS)) {
    it(`hold every schedule that ends by then, and are refuted only where there is none: ${name}`, () => {
      let seen = 0;
      for (const { problem, best } of problems(ingredients, 12)) {
        const refuter = new DatedRefuter(datedNetsOf(problem, normalised(problem)), problem.horizon);
        for (let end = Math.max(0, best - 2); end <= best; end++) {
          const spans = spansFor(problem, end);
          expect(refuter.refutes(end)).toBe(spans === undefined);
          const schedules = allSchedules(problem, end);
          if (!spans) expect(schedules).toEqual([]);
          const outside = schedules.filter(starts =>
            starts.some(
              (start, i) => start < (spans?.[i]?.earliest ?? 0) || start > (spans?.[i]?.latest ?? 0),
            ),
          );
          expect(outside).toEqual([]);
          seen += schedules.length;
        }
      }
      expect(seen).toBeGreaterThan(10);
    });

    it(`leave no rule anything to move: ${name}`, () => {
      let open = 0;
      for (const { problem, best } of problems(ingredients, 25)) {
        for (let end = Math.max(0, best - 2); end <= best + 2; end++) {
          const spans = spansFor(problem, end);
          if (!spans) continue;
          open++;
          for (const [i, { earliest, earliestEnd, latest, latestEnd }] of spans.entries()) {
            expect(earliestEnd).toBe(finishDay(problem, i, earliest));
            expect(latestEnd).toBe(finishDay(problem, i, latest));
            expect(earliest).toBeLessThanOrEqual(latest);
            expect(latestEnd).toBeLessThanOrEqual(end);
            for (const start of [earliest, latest])
              expect(scheduleFaults(partOf(problem, [i]), [start])).toEqual([]);
          }
          const early = spans.map(({ earliest }) => earliest);
          const late = spans.map(({ latest }) => latest);
          expect({
            early: faultsAlone(problem, early),
            late: faultsAlone(problem, late),
            misfits: misfits(problem, spans),
            unordered: unordered(problem, spans),
            crowded: crowded(problem, spans),
          }).toEqual({ early: [], late: [], misfits: [], unordered: [], crowded: [] });
        }
      }
      expect(open).toBeGreaterThan(20);
    });
  }
});

describe('beside what is fixed', () => {
  it('nothing can start where what is fixed leaves too few units', () => {
    const task = { duration: 2, demands: [2] };
    const problem: SearchProblem = {
      ...{ horizon: 30, calendars: [], exclusions: [], relationships: [], resources: [{ capacity: 3 }] },
      activities: [{ duration: 4, demands: [2], fixedStart: 1 }, task, { duration: 1, demands: [1] }],
    };
    // Days 1 to 4 leave one unit: two days of two units fit from day 5 on, and before an end at 7 there only; one unit always fits.
    const spans = spansFor(problem, 7);
    expect(spans?.map(({ earliest, latest }) => [earliest, latest])).toEqual([
      [1, 1],
      [5, 5],
      [0, 6],
    ]);
    expect([spansFor(problem, 6), spansFor(problem, 8)?.[1]?.latest]).toEqual([undefined, 6]);
  });
});

describe('the bound with dates', () => {
  it('rises to the first end that is not refuted, and no further than the best known', () => {
    let raised = 0;
    for (const { problem, best } of problems({ activities: 5, hasCalendars: true }, 40)) {
      const refuter = new DatedRefuter(datedNetsOf(problem, normalised(problem)), problem.horizon);
      let open = 0;
      while (refuter.refutes(open)) open++;
      expect(open).toBeLessThanOrEqual(best);
      for (const known of [best, best + 1, best + 5])
        expect(raisedBound(refuter, 0, known, () => false)).toBe(open);
      expect(raisedBound(refuter, open - 1, open, () => false)).toBe(open);
      expect(raisedBound(refuter, 0, best, () => true)).toBe(0);
      if (open > 0) raised++;
    }
    expect(raised).toBeGreaterThan(20);
  });

  it('refutes an end as often as it is asked, whatever was asked before', () => {
    for (const ingredients of Object.values(KINDS))
      for (let seed = 1; seed < 41; seed++) {
        const random = randomProblem(seed, ingredients);
        const anew = () => new DatedRefuter(datedNetsOf(random, normalised(random)), random.horizon);
        const used = anew();
        for (const end of [6, 6, 6, 9, 8, 8, 8, 7]) expect(used.refutes(end)).toBe(anew().refutes(end));
      }
  });

  it('is raised by trying both orders of pairs where the rules alone do not, never past the shortest schedule', () => {
    const never = () => false;
    let [byRules, byShaving] = [0, 0];
    for (const ingredients of Object.values(KINDS))
      for (const { problem, best } of problems(ingredients, 30)) {
        const refuter = new DatedRefuter(datedNetsOf(problem, normalised(problem)), problem.horizon);
        expect(refuter.refutesByShaving(best, 1000, never)).toBe(false);
        for (let end = Math.max(0, best - 3); end < best; end++) {
          const isRefuted = refuter.refutes(end);
          const isShaved = refuter.refutesByShaving(end, 1000, never);
          if (isRefuted) {
            byRules++;
            expect(isShaved).toBe(true);
            expect(refuter.refutesByShaving(end, 0, never)).toBe(true);
          } else {
            if (isShaved) byShaving++;
            expect(refuter.refutesByShaving(end, 0, never)).toBe(false);
            expect(refuter.refutesByShaving(end, 1000, () => true)).toBe(false);
          }
        }
      }
    expect(byRules).toBeGreaterThan(100);
    expect(byShaving).toBeGreaterThan(2);
  });
});
