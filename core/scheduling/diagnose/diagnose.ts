import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import { capacityConflicts } from './capacity-conflicts';
import { dateConflicts } from './date-conflicts';
import type { EarliestStarts } from './earliest';
import { windowConflicts } from './window-conflicts';
import { workConflicts } from './work-conflicts';

/**
 * Constraints that cannot hold together and that no search is needed to see: a crew larger than there ever is, a
 * window shorter than the run that must lie in it, a chain of relationships longer than its deadline, more work than the crews can do by a deadline.
 */
export function diagnose(compiled: Compiled, earliest: EarliestStarts): ConflictSet[] {
  const single = [...capacityConflicts(compiled), ...windowConflicts(compiled)];
  if (single.length > 0) return single;
  const dates = dateConflicts(compiled, earliest);
  return dates.length > 0 ? dates : workConflicts(compiled, earliest);
}
