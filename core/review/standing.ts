import type { GrowthData, PracticeId, ReviewData } from './data';
import type { ReviewInput } from './input';

/** How far a practice is met. */
export type Standing = 'met' | 'partly' | 'not met' | 'cannot tell';

/** What a check found: its standing, the evidence in sentences, and the ids concerned. */
export interface Assessment {
  readonly standing: Standing;
  readonly evidence: readonly string[];
  readonly ids: readonly string[];
}

/** What a check is given. */
export interface CheckContext {
  readonly input: ReviewInput;
  readonly data: ReviewData;
  readonly growth: GrowthData;
}

export type Check = (context: CheckContext) => Assessment;
export type Checks<Ids extends PracticeId> = Readonly<Record<Ids, Check>>;

/** The practice is met; the evidence says on what ground. */
export function met(...evidence: readonly string[]): Assessment {
  return { standing: 'met', evidence, ids: [] };
}

/** The input needed is absent. */
export function cannotTell(...evidence: readonly string[]): Assessment {
  return { standing: 'cannot tell', evidence, ids: [] };
}

/** The practice is not met at all. */
export function notMet(...evidence: readonly string[]): Assessment {
  return { standing: 'not met', evidence, ids: [] };
}

/** One thing that breaks a practice. */
export interface Fault {
  readonly id: string;
  readonly evidence: string;
}

/**
 * The standing by how many of all break the practice: none is met, up to half is partly, more is not met.
 * @param all how many there are. @param ground the sentence when none breaks it.
 */
export function judge(faults: readonly Fault[], all: number, ground: string): Assessment {
  if (faults.length === 0) return met(ground);
  return {
    standing: faults.length * 2 > all ? 'not met' : 'partly',
    evidence: faults.map(fault => fault.evidence),
    ids: [...new Set(faults.map(fault => fault.id))],
  };
}
