import { expect, it } from 'vitest';
import { plainNetOf } from '../../../core/scheduling/search/compile-plain';
import { Dice } from '../../../core/scheduling/search/dice';
import { individualOf } from '../../../core/scheduling/search/individual';
import { ListMaker } from '../../../core/scheduling/search/list-maker';
import { reversedNet, type PlainNet } from '../../../core/scheduling/search/plain-net';
import { PlainSide } from '../../../core/scheduling/search/plain-side';
import { randomOrder } from '../../../core/scheduling/search/random-order';
import {
  fitsFrom,
  holdFrom,
  passMemoryOf,
  releaseFrom,
  serialPass,
} from '../../../core/scheduling/search/serial-pass';
import { randomProblem } from './random-problem';

/** Small problems in both time directions, each with some random lists. */
function* passes(): Generator<{ net: PlainNet; list: Int32Array }> {
  for (let seed = 1; seed <= 60; seed++) {
    const net = plainNetOf(randomProblem(seed, { activities: 5 + (seed % 20) }));
    const dice = new Dice(seed, 'lists');
    for (const side of [net, reversedNet(net)]) {
      for (let k = 0; k < 5; k++) yield { net: side, list: randomOrder(side, dice) };
    }
  }
}

it('a pass places every activity at the first moment at which it fits, day by day', () => {
  for (const { net, list } of passes()) {
    const finishes = new Int32Array(net.count);
    serialPass(net, passMemoryOf(net), list, finishes);
    const free = new Map<number, number>();
    for (const i of list) {
      const duration = net.durations[i] ?? 0;
      const before = net.predecessors.list.slice(net.predecessors.first[i], net.predecessors.first[i + 1]);
      let start = Math.max(0, ...Array.from(before, p => finishes[p] ?? 0));
      const left = (day: number) => ((free.get(day) ?? net.freeDay[0] ?? 0) - (net.demands[i] ?? 0)) | 0;
      const guards = net.guards[0] ?? 0;
      const fits = (from: number) =>
        Array.from({ length: duration }, (_, d) => left(from + d)).every(word => (word & guards) === guards);
      while (!fits(start)) start++;
      for (let day = start; day < start + duration; day++) free.set(day, left(day));
      expect(finishes[i]).toBe(start + duration);
    }
  }
});

it('a pass ends early when, and only when, it must end later than its limit', () => {
  let [tried, early] = [0, 0];
  for (const { net, list } of passes()) {
    tried++;
    const memory = passMemoryOf(net);
    const whole = new Int32Array(net.count);
    const last = serialPass(net, memory, list, whole);
    const limited = new Int32Array(net.count);
    expect(serialPass(net, memory, list, limited, last)).toBe(last);
    expect(limited).toEqual(whole);
    const placed = -serialPass(net, memory, list, limited, last - 1);
    expect(placed).toBeGreaterThan(0);
    if (placed < net.count) early++;
    expect(serialPass(net, memory, list, limited)).toBe(last);
  }
  expect(early).toBeGreaterThan(0.15 * tried);
});

it('with several words, a pass places every activity at the first moment at which it fits all resources, day by day', () => {
  let waiting = 0;
  for (let seed = 1; seed < 31; seed++) {
    const problem = randomProblem(seed, { activities: 6 + (seed % 9), resources: 10 });
    const net = plainNetOf(problem);
    expect(net.words).toBeGreaterThan(1);
    const dice = new Dice(seed, 'lists');
    const memory = passMemoryOf(net);
    for (let k = 0; k < 5; k++) {
      const list = randomOrder(net, dice);
      const finishes = new Int32Array(net.count);
      const last = serialPass(net, memory, list, finishes);
      const starts = new Map<number, number>();
      const durationOf = (i: number) => problem.activities[i]?.duration ?? 0;
      const used = (r: number, day: number) =>
        [...starts].reduce((sum, [i, start]) => {
          const isOn = start <= day && day < start + durationOf(i);
          return sum + (isOn ? (problem.activities[i]?.demands[r] ?? 0) : 0);
        }, 0);
      for (const i of list) {
        const before = problem.relationships.filter(({ to }) => to === i).map(({ from }) => from);
        const earliest = Math.max(0, ...before.map(p => (starts.get(p) ?? 0) + durationOf(p)));
        const fits = (start: number) =>
          Array.from({ length: durationOf(i) }, (_, d) => start + d).every(day =>
            problem.resources.every(
              ({ capacity }, r) => used(r, day) + (problem.activities[i]?.demands[r] ?? 0) <= capacity,
            ),
          );
        let start = earliest;
        while (!fits(start)) start++;
        if (start > earliest) waiting++;
        expect(finishes[i]).toBe(start + durationOf(i));
        starts.set(i, start);
      }
      expect(last).toBe(Math.max(...finishes));
    }
  }
  expect(waiting).toBeGreaterThan(100);
});

it('what was held and given back leaves every day as it was, with one word and with several', () => {
  for (const resources of [2, 10])
    for (let seed = 1; seed < 11; seed++) {
      const net = plainNetOf(randomProblem(seed, { activities: 8, resources }));
      const memory = passMemoryOf(net);
      const free = [...memory.free];
      for (let i = 0; i < net.count; i++) {
        const start = (i * 7) % 5;
        const duration = net.durations[i] ?? 0;
        const isFree = fitsFrom(net, memory, i, start);
        expect(isFree).toBe(true);
        holdFrom(net, memory, i, start);
        const held = Array.from({ length: net.words }, (_, word) =>
          Array.from({ length: 12 }, (__, day) => {
            const demand =
              day >= start && day < start + duration ? (net.demands[i * net.words + word] ?? 0) : 0;
            return ((free[day * net.words + word] ?? 0) - demand) | 0;
          }),
        );
        held.forEach((days, word) => {
          expect(days).toEqual(days.map((_, day) => memory.free[day * net.words + word]));
        });
        releaseFrom(net, memory, i, start);
        expect([...memory.free]).toEqual(free);
      }
    }
});

it('the list of a child holds the block of the one parent between what the other orders, each after its predecessors', () => {
  for (let seed = 1; seed <= 40; seed++) {
    const net = plainNetOf(randomProblem(seed, { activities: 8 + (seed % 20) }));
    const dice = new Dice(seed, 'parents');
    const forward = new PlainSide(net);
    const lists = new ListMaker(new PlainSide(reversedNet(net)), dice, 4);
    const [keeper, other] = [individualOf(net.count), individualOf(net.count)];
    for (const parent of [keeper, other]) {
      forward.decode(randomOrder(net, dice), parent, Infinity);
      lists.sort(parent);
    }
    const block = { from: Math.floor(keeper.last / 3), to: Math.ceil(keeper.last / 2) };
    const list = new Int32Array(net.count);
    lists.fromTwo(keeper, other, block, list);
    const part = (i: number) => {
      const finish = keeper.finishes[i] ?? 0;
      return finish > block.to ? 0 : finish > block.from ? 1 : 2;
    };
    const places = new Map([...list].map((i, place) => [i, place]));
    expect(places.size).toBe(net.count);
    for (const [place, i] of list.entries()) {
      const next = list[place + 1] ?? i;
      expect(part(next)).toBeGreaterThanOrEqual(part(i));
      const by = part(i) === 1 ? keeper : other;
      if (part(next) === part(i)) expect(by.finishes[next]).toBeLessThanOrEqual(by.finishes[i] ?? 0);
      const { first, list: links } = net.successors;
      for (const later of links.slice(first[i], first[i + 1])) {
        expect(places.get(later)).toBeLessThan(place);
      }
    }
  }
});
