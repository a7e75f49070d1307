/** The settings of the genetic search. One rule gives them from size and budget, for every kind of network. */
export interface Tuning {
  /** Schedules a population. */
  readonly population: number;
  /** How many are drawn to find the second parent. */
  readonly tournament: number;
  /** Length of the kept block as a share of the horizon, from and to. */
  readonly blockLow: number;
  readonly blockHigh: number;
  /** Random blocks of which the busiest is kept. */
  readonly blockTries: number;
  /** Activities shifted a child, on average. */
  readonly shifts: number;
  /** Periods before the end in which work left over counts against a schedule of equal finish. */
  readonly tail: number;
  /** Random topological orders for equal times. */
  readonly tieOrders: number;
  /** Strength of the bias in the first population. */
  readonly bias: number;
  /** Experimental switches by name. */
  readonly extra: Readonly<Record<string, number>>;
}

/** Settings from the number of activities and the schedules that may be spent. */
export function tuningFor(count: number, schedules: number): Tuning {
  const thousands = Math.max(schedules, 100) / 1000;
  const population = 20 * thousands ** 0.7 * (120 / Math.max(count, 20)) ** 0.4;
  return {
    population: Math.round(Math.min(Math.max(population, 6), 2000)),
    tournament: schedules > 20_000 ? 4 : 3,
    blockLow: 0.1,
    blockHigh: 0.35,
    blockTries: 3,
    shifts: 0.8,
    tail: 20,
    tieOrders: 32,
    bias: 2,
    extra: {},
  };
}
