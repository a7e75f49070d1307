/** The settings of the genetic search. One rule gives them from size and budget, for every kind of network. */
export interface Tuning {
  /** Whether a schedule is never replaced by a longer one. */
  readonly keepsShorter: boolean;
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
}

/** Beyond so many activities random orders for equal times are fewer: drawing them takes longer than a pass. */
const MANY = 1000;

/**
 * Up to so many activities a schedule is never replaced by a longer one: passes end early, and the population goes on
 * improving to the end. Populations of larger networks come to rest too soon that way.
 */
const KEEPING_AT_MOST = 90;

/**
 * Settings from the number of activities and the schedules that may be spent. Found by trials on parts of public
 * instance sets (every fourth, every eighth, the hard ones), one formula for all: a population grows with the budget, faster the larger it is, and
 * small networks need more members, a harder choice of mates, more shifts and longer blocks, since their
 * populations soon hold the same schedules.
 */
export function tuningFor(count: number, schedules: number): Tuning {
  const budget = Math.log(Math.max(schedules, 100) / 1000);
  const smallness = 120 / Math.min(Math.max(count, 20), 400);
  const population =
    17 * Math.exp(budget * (0.5 + 0.06 * budget)) * smallness ** Math.min(1.2, 0.7 + 0.3 * budget);
  return {
    keepsShorter: count <= KEEPING_AT_MOST,
    population: Math.round(Math.min(Math.max(population, 6), 2500)),
    tournament: Math.max(3, Math.round(4 + Math.log2(smallness))),
    blockLow: 0.1 * smallness ** 0.5,
    blockHigh: 0.35 * smallness ** 0.35,
    blockTries: Math.round(4 * smallness ** 0.4),
    shifts: Math.min(2, 0.8 * smallness ** 0.8),
    tail: 20,
    tieOrders: count > MANY ? 4 : 32,
    bias: 2,
  };
}
