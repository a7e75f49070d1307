/** What one leg found. */
export interface Outcome {
  readonly ok: boolean;
  /** The figures, in words. */
  readonly words: string;
}

/** One promise that is put to the test. `long` is the whole leg, by hand; otherwise a short one for every run. */
export interface Leg {
  readonly name: string;
  readonly run: (long: boolean) => Promise<Outcome>;
}

/** The middle and the largest of some times in milliseconds. */
export function spread(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1);
  return `middle ${at(0.5)} ms, longest ${at(1)} ms`;
}

/** Numbers between 0 and 1 that are the same in every run (xorshift32, Marsaglia 2003). */
export function sequence(seed: number): () => number {
  let x = seed | 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}
