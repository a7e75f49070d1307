import type { TrialScheduler } from '../../core/risk';

/** A network for benches: activities with up to two predecessors and demands on four resources. */
export interface BenchNetwork {
  readonly ids: readonly string[];
  readonly days: Float64Array;
  readonly after: readonly (readonly number[])[];
  readonly demand: readonly (readonly number[])[];
}

const CAPACITY = 10;
const HORIZON = 4096;

export function benchNetwork(count: number): BenchNetwork {
  let state = 12345;
  const random = () => (state = (Math.imul(state, 1103515245) + 12345) >>> 0) / 4294967296;
  const indices = Array.from({ length: count }, (_, i) => i);
  return {
    ids: indices.map(i => `a${i}`),
    days: Float64Array.from(indices, () => 1 + Math.floor(random() * 10)),
    after: indices.map(i =>
      i < 3 ? [] : [Math.floor(random() * i), Math.max(0, i - 1 - Math.floor(random() * 6))],
    ),
    demand: indices.map(() => Array.from({ length: 4 }, () => Math.floor(random() * 6))),
  };
}

/** The serial scheme over a fixed list, whole days, four resources: what every trial of the bench runs. */
export function serialScheduler(network: BenchNetwork): TrialScheduler {
  const n = network.ids.length;
  const after = network.after.map(list => Int32Array.from(list));
  const demand = Int32Array.from(network.demand.flat());
  const used = new Int32Array(HORIZON * 4);
  let touched = 0;
  const fits = (i: number, from: number, days: number): number => {
    for (let day = from; day < from + days; day++) {
      for (let r = 0; r < 4; r++)
        if ((used[day * 4 + r] ?? 0) + (demand[i * 4 + r] ?? 0) > CAPACITY) return day + 1;
    }
    return -1;
  };
  return {
    decode(durations, notBefore, starts, finishes) {
      used.fill(0, 0, touched * 4);
      touched = 0;
      let end = 0;
      for (let i = 0; i < n; i++) {
        let from = Math.ceil(notBefore[i] ?? 0);
        for (const p of after[i] ?? []) if ((finishes[p] ?? 0) > from) from = finishes[p] ?? 0;
        const days = Math.ceil(durations[i] ?? 0);
        for (let next = fits(i, from, days); next >= 0; next = fits(i, from, days)) from = next;
        for (let day = from; day < from + days; day++)
          for (let r = 0; r < 4; r++) used[day * 4 + r] = (used[day * 4 + r] ?? 0) + (demand[i * 4 + r] ?? 0);
        starts[i] = from;
        finishes[i] = from + days;
        if (from + days > end) end = from + days;
      }
      touched = end;
      return end;
    },
  };
}
