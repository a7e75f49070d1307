import {
  modeOf,
  TRIALS_PER_CHUNK,
  type Distribution,
  type MoneyBatch,
  type PreparedRun,
  type TrialScheduler,
  type UncertainInput,
} from '../../../core/risk';

/** Reads an input of one trial, or of the plan. */
export type Reader = (input: string) => number;

/** A project small enough to be worked out by hand: a formula for every line and activity. */
export interface SmallProject extends Partial<
  Pick<PreparedRun, 'drivers' | 'events' | 'correlations' | 'weather'>
> {
  readonly ranges: Readonly<Record<string, Distribution>>;
  /** Dollars of each line; `wait` gives the days an activity waited for weather. */
  readonly lines?: Readonly<Record<string, (read: Reader, finish: number, wait: Reader) => number>>;
  /** Work days of each activity and what it follows. */
  readonly activities?: Readonly<
    Record<string, { readonly days: (read: Reader) => number; readonly after?: readonly string[] }>
  >;
  readonly moves?: Readonly<Record<string, readonly string[]>>;
}

/** Makes the prepared run of a small project; dollars are not rounded, so that moments can be checked exactly. */
export function prepare(project: SmallProject): PreparedRun {
  const inputs: UncertainInput[] = Object.entries(project.ranges).map(([id, distribution]) => ({
    id,
    title: `Input ${id}`,
    distribution,
    moves: project.moves?.[id] ?? [],
  }));
  const activities = Object.entries(project.activities ?? { only: { days: () => 1 } });
  const lines = Object.entries(project.lines ?? { only: () => 0 });
  const scheduler = earliestDates(activities.map(([id, a]) => ({ id, after: a.after ?? [] })));
  const modes: Reader = id => modeOf(project.ranges[id] ?? { kind: 'certain', value: Number.NaN });
  const finish = scheduler.decode(
    Float64Array.from(activities, ([, a]) => a.days(modes)),
    new Float64Array(activities.length),
    new Float64Array(activities.length),
    new Float64Array(activities.length),
  );
  const planLines = lines.map(([, dollars]) => dollars(modes, finish, () => 0));
  const durations = activities.map(() => new Float64Array(TRIALS_PER_CHUNK));
  const columns = lines.map(() => new Float64Array(TRIALS_PER_CHUNK));
  const total = new Float64Array(TRIALS_PER_CHUNK);
  return {
    inputs,
    columns: new Map(inputs.map(i => [i.id, new Float64Array(TRIALS_PER_CHUNK)])),
    drivers: project.drivers ?? [],
    events: project.events ?? [],
    correlations: project.correlations ?? [],
    ...(project.weather === undefined ? {} : { weather: project.weather }),
    lines: lines.map(([id]) => id),
    activities: activities.map(([id]) => id),
    plan: { total: planLines.reduce((a, b) => a + b, 0), lines: planLines, finish },
    work(batch) {
      for (let t = 0; t < batch.n; t++) {
        const read: Reader = id => batch.inputs.get(id)?.[t] ?? Number.NaN;
        activities.forEach(([, a], i) => durations[i]?.fill(a.days(read), t, t + 1));
      }
      return durations;
    },
    scheduler,
    money(batch: MoneyBatch) {
      for (let t = 0; t < batch.n; t++) {
        const read: Reader = id => batch.inputs.get(id)?.[t] ?? Number.NaN;
        const wait: Reader = id => batch.waits[activities.findIndex(([a]) => a === id)]?.[t] ?? Number.NaN;
        const end = Math.max(...batch.finishes.map(f => f[t] ?? Number.NaN));
        lines.forEach(([, dollars], l) => columns[l]?.fill(dollars(read, end, wait), t, t + 1));
        total[t] = columns.reduce((sum, c) => sum + (c[t] ?? Number.NaN), 0);
      }
      return { total, lines: columns };
    },
  };
}

/** Each activity as early as its predecessors (listed before it) and its not-before day allow. */
function earliestDates(activities: readonly { id: string; after: readonly string[] }[]): TrialScheduler {
  const before = activities.map(a => a.after.map(id => activities.findIndex(b => b.id === id)));
  let last: Float64Array = new Float64Array(0);
  let begun: Float64Array = new Float64Array(0);
  return {
    decode(durations, notBefore, starts, finishes) {
      before.forEach((list, i) => {
        starts[i] = Math.max(notBefore[i] ?? 0, ...list.map(p => finishes[p] ?? Number.NaN));
        finishes[i] = (starts[i] ?? Number.NaN) + (durations[i] ?? Number.NaN);
      });
      last = finishes;
      begun = starts;
      return Math.max(...finishes);
    },
    drivesFinish(flags) {
      flags.fill(0);
      const mark = (i: number): void => {
        if (flags[i] === 1) return;
        flags[i] = 1;
        for (const p of before[i] ?? []) if (last[p] === begun[i]) mark(p);
      };
      last.forEach((f, i) => {
        if (f === Math.max(...last)) mark(i);
      });
    },
  };
}
