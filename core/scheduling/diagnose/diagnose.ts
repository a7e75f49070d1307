import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import { capacityConflicts } from './capacity-conflicts';
import { dateConflicts } from './date-conflicts';
import type { EarliestStarts } from './earliest';
import { windowConflicts } from './window-conflicts';

/**
 * Constraints that cannot hold together and that no search is needed to see: a crew larger than there ever is, a
 * window shorter than the run that must lie in it, a chain of relationships longer than its deadline.
 */
export function diagnose(compiled: Compiled, earliest: EarliestStarts): ConflictSet[] {
  const single = [...capacityConflicts(compiled), ...windowConflicts(compiled)];
  return single.length > 0 ? single : dateConflicts(compiled, earliest);
}
