/** Times of one kind of run, in milliseconds. */
export interface Times {
  readonly name: string;
  readonly runs: number;
  readonly median: number;
  readonly p95: number;
  readonly least: number;
}

/** Median, 95th percentile and least of times. */
export function timesOf(name: string, measured: readonly number[]): Times {
  const sorted = measured.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
  return { name, runs: sorted.length, median: at(0.5), p95: at(0.95), least: at(0) };
}

/** Runs something again and again, the first runs not counted. The number of the run is handed to it. */
export function measured(name: string, runs: number, warmUp: number, run: (i: number) => void): Times {
  for (let i = 0; i < warmUp; i++) run(i);
  const times = Array.from({ length: runs }, (_, i) => {
    const start = performance.now();
    run(warmUp + i);
    return performance.now() - start;
  });
  return timesOf(name, times);
}

/** Prints rows as a table, or as one JSON object. */
export function print(
  rows: readonly Times[],
  more: Readonly<Record<string, unknown>>,
  asJson: boolean,
): void {
  if (asJson) {
    process.stdout.write(`${JSON.stringify({ rows, ...more }, undefined, 2)}\n`);
    return;
  }
  for (const { name, runs, median, p95, least } of rows) {
    const ms = [median, p95, least].map(time => `${time.toFixed(1)} ms`.padStart(10));
    console.log(
      `${name.padEnd(58)} median${ms[0] ?? ''}  p95${ms[1] ?? ''}  least${ms[2] ?? ''}  (${runs} runs)`,
    );
  }
  for (const [key, value] of Object.entries(more)) console.log(`${key}: ${String(value)}`);
}
