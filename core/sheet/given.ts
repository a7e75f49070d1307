import type { Basis } from '../base';
import type { Unit } from '../units';

/**
 * A given number with where it comes from. `value` is plain decimal text; an absent value makes every figure
 * that depends on it absent, with a finding at `place`.
 */
export interface Given {
  readonly value: string | undefined;
  readonly unit: Unit;
  /** `schedule`: the levelled schedule gave it. */
  readonly basis: Basis | 'schedule';
  readonly source: string;
  readonly year?: number;
  /** The range of an uncertain value, decimal text in the same unit. */
  readonly low?: string;
  readonly high?: string;
  /** What the user typed, with its own unit, when that differs from `value` and `unit`. */
  readonly typed?: string;
  /** Where the document holds it, such as `/vessel/lightship`; without it the row's place stands in the finding. */
  readonly place?: string;
  /** A flag, a rounding step or a date: it weighs on no basis. */
  readonly neutral?: true;
}
