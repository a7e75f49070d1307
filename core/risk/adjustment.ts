/** What is changed for a run with the same draws, to see what one uncertainty does. Plain data for workers. */
export interface Adjustment {
  /** Inputs, drivers and events held at their mode: an event of probability below a half does not happen. */
  readonly held?: readonly string[];
  /** Inputs whose range is narrowed about its mean to this share of its width. */
  readonly narrowed?: Readonly<Record<string, number>>;
  /** Events whose mitigation is carried out and paid for. */
  readonly mitigated?: readonly string[];
}

/** The run as it is. */
export const AS_IT_IS: Adjustment = {};
