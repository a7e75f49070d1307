import { anyBlocks } from '../base';
import { buildResult } from './build-result';
import { checkProblem } from './check/check-problem';
import { compile } from './compile/compile';
import { plannedModes } from './compile/compile-activities';
import type { Compiled } from './compile/compiled';
import { conflictFindings, noResult } from './no-result';
import { diagnose } from './diagnose/diagnose';
import { earliestStarts } from './diagnose/earliest';
import { searchConflict } from './diagnose/search-conflict';
import type { ScheduleProblem } from './model';
import { placeAll, type Placed } from './placed';
import type { ScheduleResult } from './result';
import { searchSchedule, type SearchOptions, type SearchResult } from './search';

import { shiftLeft } from './shift-left';

/** How much the scheduler may spend; `modes` chooses a crew for each activity, absent the planned ones. */
export interface ScheduleOptions extends SearchOptions {
  readonly modes?: readonly number[];
}

/**
 * The schedule with the earliest finish that can be found: every relationship, calendar, closure, window, crew and
 * zone kept. The same problem, seed and number of schedules give the same answer on every machine.
 * @returns dates, floats, what holds each activity and the proven bound; or the constraints that cannot hold together.
 */
export function schedule(problem: ScheduleProblem, options: ScheduleOptions): ScheduleResult {
  const findings = checkProblem(problem);
  if (anyBlocks(findings)) return noResult('invalid', 0, findings);
  const compiled = compile(problem, options.modes ?? plannedModes(problem));
  const earliest = earliestStarts(compiled.search);
  const conflicts = diagnose(compiled, earliest);
  if (conflicts.length > 0)
    return noResult('infeasible', 0, [...findings, ...conflictFindings(conflicts)], conflicts);
  const { found, placed } = place(compiled, options);
  if (placed)
    return { ...buildResult(placed, Math.min(found.lowerBound, placed.finish), found.schedules), findings };
  const sets = found.conflict ? [searchConflict(compiled, found.conflict)] : [];
  const status = found.status === 'infeasible' ? 'infeasible' : 'not-found';
  return noResult(status, found.schedules, [...findings, ...conflictFindings(sets)], sets);
}

/** Searches a packed problem and enters what it finds, moved as early as it fits. */
export function place(compiled: Compiled, options: SearchOptions): { found: SearchResult; placed?: Placed } {
  const found = searchSchedule(compiled.search, options);
  if (!found.starts || !found.finishes) return { found };
  const placed = placeAll(compiled, found.starts, found.finishes);
  shiftLeft(placed);
  return { found, placed };
}
