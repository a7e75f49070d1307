import { describe, expect, it } from 'vitest';
import { at, randomStream } from '../../../core/base';
import type { SearchProblem } from '../../../core/scheduling/search';
import { boundNetOf, criticalPath, type BoundNet } from '../../../core/scheduling/search/bounds/bound-net';
import { destructiveBound, energyBound } from '../../../core/scheduling/search/bounds/destructive';
import { withinCapacity } from '../../../core/scheduling/search/bounds/energetic';
import { incompatiblePairs, orderPairsByWindows } from '../../../core/scheduling/search/bounds/pairs';
import { besideCompulsoryParts } from '../../../core/scheduling/search/bounds/timetable';
import { alongRelationships, windowsFor, type Windows } from '../../../core/scheduling/search/bounds/windows';
import { windowsForEnd } from '../../../core/scheduling/search/bounds/windows-for-end';
import { allSchedules } from './all-schedules';
import {
  alongLinks,
  besideParts,
  inOrder,
  leastInside,
  pairsTooMuch,
  rangesOf,
  settled,
  type Ranges,
  type Rule,
} from './plain-rules';
import { randomProblem } from './random-problem';

const upTo = (count: number): number[] => Array.from({ length: count }, (_, k) => k + 1);
const never = (): boolean => false;

/** Schedules with a start that ranges do not have. */
const outside = (schedules: readonly number[][], { first, last }: Ranges): readonly number[][] =>
  schedules.filter(starts => starts.some((start, i) => start < at(first, i) || start > at(last, i)));

const startsIn = (net: BoundNet, { from, to }: Windows): Ranges =>
  rangesOf(
    from,
    to.map((finish, i) => finish - at(net.durations, i)),
  );

/** Small problems with the end of their shortest schedule. */
const small = upTo(70).map(seed => {
  const problem = randomProblem(seed, { activities: 5, resources: 1 + (seed % 3) });
  const net = boundNetOf(problem);
  let best = criticalPath(net);
  while (allSchedules(problem, best).length === 0) best++;
  return { seed, problem, net, best };
});

/** Windows drawn at random, wide and narrow, at least as long as each activity. */
function* randomWindows(
  seeds: number,
  most = 9,
): Generator<{ problem: SearchProblem; net: BoundNet; windows: Windows }> {
  for (const seed of upTo(seeds)) {
    const problem = randomProblem(seed, { activities: 6, resources: 2 });
    const net = boundNetOf(problem);
    const random = randomStream(seed, 'windows');
    const below = (count: number) => Math.floor(random() * count);
    for (let k = 0; k < 8; k++) {
      const windows = windowsFor(net, 14 + below(6));
      const wide = 1 + below(most);
      for (let i = 0; i < net.count; i++) {
        windows.from[i] = below(14 - at(net.durations, i));
        windows.to[i] = Math.min(windows.end, at(windows.from, i) + at(net.durations, i) + below(wide));
      }
      yield { problem, net, windows };
    }
  }
}

/** The rule until it moves nothing any more beside the same said plainly; how often they found a contradiction and moved. */
function compare(run: (net: BoundNet, windows: Windows) => boolean, rule: Rule) {
  const counts = { refuted: 0, moved: 0 };
  for (const { problem, net, windows } of randomWindows(60)) {
    const ranges = startsIn(net, windows);
    const expected = settled(problem, ranges, [rule]);
    let holds = true;
    let before = -1;
    while (holds && windows.moves !== before) {
      before = windows.moves;
      holds = run(net, windows);
    }
    expect(holds).toBe(expected);
    if (!holds) counts.refuted++;
    else {
      expect(startsIn(net, windows)).toEqual(ranges);
      if (windows.moves > 0) counts.moved++;
    }
  }
  return counts;
}

describe('each rule on windows', () => {
  it('along relationships moves what the relationships say, and no more', () => {
    const { refuted, moved } = compare(alongRelationships, alongLinks);
    expect(Math.min(refuted, moved)).toBeGreaterThan(10);
  });

  it('of pairs that demand too much together enforces the only order, and no more', () => {
    const { refuted, moved } = compare(
      (net, windows) => orderPairsByWindows(net, windows, incompatiblePairs(net)),
      inOrder,
    );
    expect(Math.min(refuted, moved)).toBeGreaterThan(20);
  });

  it('of compulsory parts moves what does not fit beside them, and no more', () => {
    const { refuted, moved } = compare(besideCompulsoryParts, besideParts);
    expect(Math.min(refuted, moved)).toBeGreaterThan(20);
  });

  it('counts a window that is moved, and one that is not does not count', () => {
    for (const { net, windows } of randomWindows(20)) {
      const before = startsIn(net, windows);
      const holds = alongRelationships(net, windows);
      const hasMoved = JSON.stringify(startsIn(net, windows)) !== JSON.stringify(before);
      if (holds) expect(windows.moves > 0).toBe(hasMoved);
    }
  });
});

/** Unit days of a resource that must lie in an interval. */
const workIn = ({ problem, ranges }: Ranged, r: number, left: number, right: number): number =>
  problem.activities.reduce(
    (sum, { demands }, i) => sum + at(demands, r) * leastInside(problem, ranges, i, left, right),
    0,
  );
interface Ranged {
  readonly problem: SearchProblem;
  readonly ranges: Ranges;
}

/** Left edges that the rule of intervals looks at: earliest starts and finishes and latest starts. */
function leftEdges({ problem, ranges }: Ranged, r: number): number[] {
  const users = [...problem.activities.keys()].filter(i => {
    const { demands, duration } = at(problem.activities, i);
    return at(demands, r) * duration > 0;
  });
  const first = users.map(i => at(ranges.first, i));
  const last = users.map(i => at(ranges.last, i));
  return [...first, ...last, ...users.map((i, u) => at(first, u) + at(problem.activities, i).duration)];
}

/** An interval in which there is too little room: what must lie inside, and one that would bring more when pushed there. */
function crowded(of: Ranged, end: number): { overfull: number; unmoved: number } {
  const { problem, ranges } = of;
  const found = { overfull: 0, unmoved: 0 };
  problem.resources.forEach(({ capacity }, r) => {
    const largest = (left: number) =>
      Math.max(
        ...problem.activities.map(({ duration, demands }, i) =>
          at(ranges.first, i) + duration > left ? at(demands, r) * duration : 0,
        ),
      );
    for (const left of leftEdges(of, r)) {
      for (let right = left + 1; right <= end; right++) {
        const work = workIn(of, r, left, right);
        const spare = capacity * (right - left) - work;
        if (spare < 0) found.overfull++;
        // Activities are moved at right edges behind which the work grows more slowly than in front of them.
        const [slope, next] = [work - workIn(of, r, left, right - 1), workIn(of, r, left, right + 1) - work];
        if (spare < 0 || spare >= largest(left) || next >= slope) continue;
        if (someFit(of, r, { left, right, spare })) found.unmoved++;
      }
    }
  });
  return found;
}

/** Whether an activity would bring more work into an interval than there is room for, as early or as late as it can be. */
function someFit(
  { problem, ranges }: Ranged,
  r: number,
  { left, right, spare }: { left: number; right: number; spare: number },
): boolean {
  return problem.activities.some(({ duration, demands }, i) => {
    const inside = (start: number) => Math.max(0, Math.min(right, start + duration) - Math.max(left, start));
    const least = leastInside(problem, ranges, i, left, right);
    const most = Math.max(inside(at(ranges.first, i)), inside(at(ranges.last, i)));
    return (most - least) * at(demands, r) > spare;
  });
}

describe('the work that must lie in intervals', () => {
  it('refutes windows when, and only when, it is more than the capacity gives', () => {
    let refuted = 0;
    for (const { problem, net, windows } of randomWindows(60)) {
      const ranges = startsIn(net, windows);
      const { overfull } = crowded({ problem, ranges }, windows.end);
      expect(withinCapacity(net, windows, false)).toBe(overfull === 0);
      expect(startsIn(net, windows)).toEqual(ranges);
      if (overfull > 0) refuted++;
    }
    expect(refuted).toBeGreaterThan(50);
  });

  it('moves activities until none brings more into an interval than there is room for', () => {
    let moved = 0;
    for (const { problem, net, windows } of randomWindows(60)) {
      let holds = true;
      let before = -1;
      while (holds && windows.moves !== before) {
        before = windows.moves;
        holds = withinCapacity(net, windows, true);
      }
      if (!holds) continue;
      expect(crowded({ problem, ranges: startsIn(net, windows) }, windows.end)).toEqual({
        overfull: 0,
        unmoved: 0,
      });
      if (windows.moves > 0) moved++;
    }
    expect(moved).toBeGreaterThan(50);
  });

  it('moves nothing that a schedule inside the windows needs', () => {
    let moved = 0;
    for (const { problem, net, windows } of randomWindows(60, 4)) {
      const { first, last } = startsIn(net, windows);
      const activities = problem.activities.map((activity, i) => ({
        ...activity,
        notBefore: at(first, i),
        latestFinish: at(last, i) + activity.duration,
      }));
      const schedules = allSchedules({ ...problem, activities, relationships: [] }, windows.end);
      const holds = withinCapacity(net, windows, true);
      if (!holds) expect(schedules).toEqual([]);
      else if (windows.moves > 0) {
        moved++;
        expect(outside(schedules, startsIn(net, windows))).toEqual([]);
      }
    }
    expect(moved).toBeGreaterThan(30);
  });
});

describe('windows for an assumed end', () => {
  it('hold every schedule that ends by then, and are refuted only where there is none', () => {
    let refuted = 0;
    for (const { problem, net, best } of small) {
      for (let end = criticalPath(net) - 1; end <= best; end++) {
        const schedules = allSchedules(problem, end);
        const windows = windowsForEnd(net, end);
        if (!windows) {
          expect(schedules).toEqual([]);
          if (end >= criticalPath(net)) refuted++;
          continue;
        }
        expect(outside(schedules, startsIn(net, windows))).toEqual([]);
      }
    }
    expect(refuted).toBeGreaterThan(20);
  });

  it('leave no rule anything to move', () => {
    for (const { problem, net, best } of small) {
      for (let end = criticalPath(net); end <= best + 1; end++) {
        const windows = windowsForEnd(net, end);
        if (!windows) continue;
        const ranges = startsIn(net, windows);
        const again = rangesOf(ranges.first, ranges.last);
        expect(settled(problem, again, [alongLinks, inOrder, besideParts])).toBe(true);
        expect(again).toEqual(ranges);
        expect(crowded({ problem, ranges }, end)).toEqual({ overfull: 0, unmoved: 0 });
      }
    }
  });
});

describe('bounds', () => {
  it('of pairs name those that demand too much together and last', () => {
    for (const { problem, net } of small) {
      const pairs = incompatiblePairs(net);
      const listed = Array.from({ length: pairs.length / 2 }, (_, p) => [
        at(pairs, 2 * p),
        at(pairs, 2 * p + 1),
      ]);
      expect(listed).toEqual(pairsTooMuch(problem));
    }
  });

  it('of work take the best of all sets that start late and end far from the end', () => {
    for (const { problem, net, best } of small) {
      let most = criticalPath(net);
      problem.resources.forEach(({ capacity }, r) => {
        for (const head of net.heads)
          for (const tail of net.tails) {
            const work = problem.activities.map(({ duration, demands }, i) =>
              at(net.heads, i) >= head && at(net.tails, i) >= tail ? duration * at(demands, r) : 0,
            );
            const sum = work.reduce((a, b) => a + b, 0);
            if (sum > 0) most = Math.max(most, head + Math.ceil(sum / capacity) + tail);
          }
      });
      expect(energyBound(net)).toBe(most);
      expect(most).toBeLessThanOrEqual(best);
    }
  });

  it('rise to the first end that the rules do not refute, and stop where nothing better is needed', () => {
    let raised = 0;
    for (const { net, best } of small) {
      const path = criticalPath(net);
      let open = path;
      while (windowsForEnd(net, open) === null) open++;
      expect(open).toBeLessThanOrEqual(best);
      expect(destructiveBound(net, path, best + 5, never)).toBe(open);
      expect(destructiveBound(net, path, path, never)).toBe(path);
      expect(destructiveBound(net, path, best + 5, () => true)).toBe(path);
      if (open > path) {
        raised++;
        expect(destructiveBound(net, path, path + 1, never)).toBe(path + 1);
      }
    }
    expect(raised).toBeGreaterThan(10);
  });

  it('are the longest paths before and behind each activity', () => {
    for (const { problem, net } of small) {
      const before = (i: number): number =>
        Math.max(
          0,
          ...problem.relationships
            .filter(({ to }) => to === i)
            .map(({ from }) => before(from) + at(problem.activities, from).duration),
        );
      const behind = (i: number): number =>
        Math.max(
          0,
          ...problem.relationships
            .filter(({ from }) => from === i)
            .map(({ to }) => behind(to) + at(problem.activities, to).duration),
        );
      const all = [...problem.activities.keys()];
      expect([...net.heads]).toEqual(all.map(before));
      expect([...net.tails]).toEqual(all.map(behind));
      expect(criticalPath(net)).toBe(
        Math.max(...all.map(i => before(i) + at(problem.activities, i).duration + behind(i))),
      );
    }
  });
});
