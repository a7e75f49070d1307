import { describe, expect, it } from 'vitest';
import { at, randomStream } from '../../../core/base';
import type { SearchProblem } from '../../../core/scheduling/search';
import { datedNetsOf } from '../../../core/scheduling/search/compile-dated';
import { DatedSide } from '../../../core/scheduling/search/dated-side';
import { Dice } from '../../../core/scheduling/search/dice';
import { individualOf } from '../../../core/scheduling/search/individual';
import { normalised } from '../../../core/scheduling/search/lags';
import { drawBiased, inOrder, randomOrder } from '../../../core/scheduling/search/random-order';
import { partOf } from './all-schedules';
import { randomProblem, type Ingredients } from './random-problem';
import { finishDay, scheduleFaults } from './schedule-faults';

const KINDS: Readonly<Record<string, Ingredients>> = {
  calendars: { activities: 8, hasCalendars: true },
  'four kinds of relationship': { activities: 8, hasKinds: true, hasCalendars: true },
  'windows and varying capacities': { activities: 7, hasWindows: true, hasVaryingCapacity: true },
  'everything but maximum lags': {
    activities: 8,
    hasCalendars: true,
    hasKinds: true,
    hasWindows: true,
    hasVaryingCapacity: true,
    hasExclusions: true,
    resources: 9,
  },
  'a fixed start': { activities: 7, hasCalendars: true, hasFixed: true },
};

/** A forward pass over a list; starts and finishes in days of the problem. */
function passed(problem: SearchProblem, list: Int32Array) {
  const [net] = datedNetsOf(problem, normalised(problem));
  const made = individualOf(net.count);
  const side = new DatedSide(net, true, { moment: net.slots, late: Infinity });
  side.decode(list, made);
  return {
    starts: [...made.starts].map(start => start - net.base),
    finishes: [...made.finishes].map(finish => finish - net.base),
    last: made.last - net.base,
    late: made.late,
    beyond: made.beyond,
  };
}

describe('a pass with dates', () => {
  for (const [name, ingredients] of Object.entries(KINDS)) {
    it(`places every activity on the first day on which no rule speaks against it: ${name}`, () => {
      let later = 0;
      for (let seed = 1; seed < 13; seed++) {
        const problem = randomProblem(seed, ingredients);
        const [net] = datedNetsOf(problem, normalised(problem));
        const list = randomOrder(net, new Dice(seed, 'lists'));
        const { starts, finishes, last } = passed(problem, list);
        // What is fixed holds its units before anything is placed.
        const isFixed = (i: number) => at(problem.activities, i).fixedStart !== undefined;
        const placed = [...list].filter(isFixed);
        for (const i of list) {
          if (isFixed(i)) {
            expect(starts[i]).toBe(at(problem.activities, i).fixedStart);
            continue;
          }
          const others = placed.map(j => at(starts, j));
          const part = partOf(problem, [...placed, i]);
          const own = partOf(problem, [i]);
          const faultsBefore = scheduleFaults(partOf(problem, placed), others).length;
          const fits = (start: number) =>
            scheduleFaults(own, [start]).length === 0 &&
            scheduleFaults(part, [...others, start]).length === faultsBefore;
          let start = 0;
          while (start < problem.horizon && !fits(start)) start++;
          // Beyond the days of the problem nothing is told apart any more.
          if (start === problem.horizon) break;
          expect({ seed, i, start: starts[i] }).toEqual({ seed, i, start });
          expect(finishes[i]).toBe(finishDay(problem, i, start));
          if (start > 0) later++;
          placed.push(i);
        }
        expect(last).toBe(Math.max(...finishes));
      }
      expect(later).toBeGreaterThan(30);
    });
  }

  it('is late by the days by which activities finish behind their latest finish, added up', () => {
    let late = 0;
    for (let seed = 1; seed < 41; seed++) {
      const random = randomStream(seed, 'latest finishes');
      const drawn = randomProblem(seed, { activities: 8, hasCalendars: true });
      const activities = drawn.activities.map(activity =>
        random() < 0.5 ? activity : { ...activity, latestFinish: 3 + Math.floor(random() * 14) },
      );
      const problem = { ...drawn, activities };
      const [net] = datedNetsOf(problem, normalised(problem));
      const made = passed(problem, randomOrder(net, new Dice(seed, 'lists')));
      const wanted = activities.map(({ latestFinish }, i) =>
        Math.max(0, at(made.finishes, i) - (latestFinish ?? problem.horizon)),
      );
      const sum = wanted.reduce((a, b) => a + b, 0);
      expect({ seed, late: made.late, beyond: made.beyond }).toEqual({ seed, late: sum, beyond: 0 });
      if (sum > 0) late++;
    }
    expect(late).toBeGreaterThan(10);
  });

  it('becomes the anchor of those backwards when it is less late, or as late and shorter', () => {
    const task = (duration: number) => ({ duration, demands: [1] });
    const problem: SearchProblem = {
      ...{ horizon: 40, calendars: [], exclusions: [], relationships: [], resources: [{ capacity: 1 }] },
      activities: [{ ...task(3), latestFinish: 8 }, task(5), { ...task(4), notBefore: 6 }],
    };
    const [net] = datedNetsOf(problem, normalised(problem));
    const anchor = { moment: net.slots, late: Infinity };
    const side = new DatedSide(net, true, anchor);
    const made = individualOf(net.count);
    const after = (...list: number[]) => {
      side.decode(Int32Array.from(list), made);
      return [anchor.moment - net.base, anchor.late];
    };
    // 2 from 6 to 10, 1 from 0 to 5, 0 from 10 to 13: five days late. In the order 1, 0, 2: 0 from 5 to 8, 2 to 12.
    expect(after(2, 1, 0)).toEqual([13, 5]);
    expect(after(1, 0, 2)).toEqual([12, 0]);
    // In the order 2, 0, 1: 0 from 0 to 3, 1 from 10 to 15: as late as that, but longer; and the first is late again.
    expect(after(2, 0, 1)).toEqual([12, 0]);
    expect(after(2, 1, 0)).toEqual([12, 0]);
  });

  it('backwards from an end keeps every rule as well, with what lies before the first day counted beyond', () => {
    let [inside, before] = [0, 0];
    for (let seed = 1; seed < 41; seed++) {
      const problem = randomProblem(seed, {
        activities: 7,
        hasCalendars: true,
        hasKinds: true,
        hasVaryingCapacity: true,
      });
      const [forward, backward] = datedNetsOf(problem, normalised(problem));
      const end = forward.base + (seed % 2 === 0 ? 40 : 12);
      const side = new DatedSide(backward, false, { moment: end, late: 0 });
      const made = individualOf(backward.count);
      side.decode(randomOrder(backward, new Dice(seed, 'lists')), made);
      const starts = [...made.finishes].map(finish => backward.slots - finish - forward.base);
      const finishes = [...made.starts].map(start => backward.slots - start - forward.base);
      expect(Math.max(...finishes)).toBeLessThanOrEqual(end - forward.base);
      expect(made.last).toBe(backward.slots - forward.base - Math.min(...starts));
      if (Math.min(...starts) < 0) before++;
      else {
        inside++;
        expect({ seed, faults: scheduleFaults(problem, starts) }).toEqual({ seed, faults: [] });
        starts.forEach((start, i) => {
          expect(finishes[i]).toBe(finishDay(problem, i, start));
        });
      }
    }
    expect(Math.min(inside, before)).toBeGreaterThan(5);
  });
});

describe('orders drawn at random', () => {
  it('draw with chances by the regret to the power of the bias', () => {
    // Priorities 5, 3, 1 have regrets 1, 3 and 5.
    const priorities = Int32Array.of(5, 3, 1, 99);
    for (const bias of [0, 1, 2, 3]) {
      const weights = [1, 3, 5].map(regret => regret ** bias);
      const sum = weights.reduce((a, b) => a + b, 0);
      const dice = new Dice(7 + bias, 'draws');
      const counts = [0, 0, 0];
      for (let k = 0; k < 9000; k++) {
        const place = drawBiased(Int32Array.of(2, 0, 1), 3, priorities, bias, dice);
        const activity = at([2, 0, 1], place);
        counts[activity] = at(counts, activity) + 1;
      }
      counts.forEach((count, i) => {
        const share = at(weights, i) / sum;
        // Four standard deviations of a binomial count.
        expect(Math.abs(count - 9000 * share)).toBeLessThan(4 * Math.sqrt(9000 * share * (1 - share)));
      });
    }
  });

  it('draw among very many mostly those of small priority, but any', () => {
    const priorities = Int32Array.from({ length: 100 }, (_, i) => i);
    const from = priorities.toReversed();
    const dice = new Dice(3, 'draws');
    const drawn = Array.from({ length: 4000 }, () => at(from, drawBiased(from, 100, priorities, 2, dice)));
    // The least of eight draws of 100 has the mean 100 / 9 - 0.5 or so, and is above 40 once in a hundred times.
    const mean = drawn.reduce((a, b) => a + b, 0) / drawn.length;
    expect(Math.abs(mean - 10.6)).toBeLessThan(1);
    const high = drawn.filter(priority => priority >= 40).length / drawn.length;
    expect(Math.abs(high - 0.6 ** 8)).toBeLessThan(0.01);
  });

  it('pull what comes before forward and leave the rest of a wished order as it is', () => {
    for (let seed = 1; seed < 31; seed++) {
      const problem = randomProblem(seed, { activities: 9, hasCalendars: true });
      const [net] = datedNetsOf(problem, normalised(problem));
      const random = randomStream(seed, 'wishes');
      const wished = [...problem.activities.keys()]
        .map(i => ({ i, key: random() }))
        .sort((a, b) => a.key - b.key)
        .map(({ i }) => i);
      const list = [...inOrder(net, wished)];
      const place = (i: number) => list.indexOf(i);
      expect(list.slice().sort((a, b) => a - b)).toEqual([...problem.activities.keys()]);
      for (const { from, to } of problem.relationships) expect(place(from)).toBeLessThan(place(to));
      const leads = (a: number, b: number): boolean =>
        problem.relationships.some(({ from, to }) => from === a && (to === b || leads(to, b)));
      // Where one stands before another against the wish, it is for one that is wished no later than the other.
      for (const [p, a] of wished.entries())
        for (const b of wished.slice(p + 1))
          if (place(b) < place(a))
            expect(wished.slice(0, p + 1).some(early => (early === a ? leads(b, a) : leads(b, early)))).toBe(
              true,
            );
    }
  });
});
