import { anyBlocks, type Finding } from '../base';
import { buildResult } from './build-result';
import { checkProblem } from './check/check-problem';
import { compile } from './compile/compile';
import { plannedModes } from './compile/compile-activities';
import type { Compiled } from './compile/compiled';
import { shortened } from './compile/shortened';
import { tightHorizon } from './compile/tight-horizon';
import { conflictFindings, noResult } from './no-result';
import { diagnose } from './diagnose/diagnose';
import { earliestStarts } from './diagnose/earliest';
import { searchConflict } from './diagnose/search-conflict';
import type { ScheduleProblem } from './model';
import { placeAll, type Placed } from './placed';
import type { ConflictSet, ScheduleResult } from './result';
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
  const steps = scheduleInSteps(problem, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same schedule in a few steps of about equal length, so that between them newer work can be let by. */
export function* scheduleInSteps(
  problem: ScheduleProblem,
  options: ScheduleOptions,
): Generator<undefined, ScheduleResult, undefined> {
  const packed = pack(problem, options);
  if (!packed.compiled) return packed.failed;
  yield;
  const prepared = search(packed, options);
  if (!prepared.placed) return prepared.failed;
  yield;
  const { placed, lowerBound, schedules, findings } = prepared;
  return { ...buildResult(placed, lowerBound, schedules), findings };
}

/** The best schedule found before it is told in dates, or the answer that says why there is none. */
export type Prepared =
  | {
      readonly placed: Placed;
      readonly lowerBound: number;
      readonly schedules: number;
      readonly findings: readonly Finding[];
    }
  | { readonly placed?: undefined; readonly failed: ScheduleResult };

/** Checks, packs, diagnoses and searches. */
export function prepare(problem: ScheduleProblem, options: ScheduleOptions): Prepared {
  const packed = pack(problem, options);
  return packed.compiled ? search(packed, options) : packed;
}

/** A problem checked, packed and found to have no conflict on sight. */
interface Packed {
  readonly compiled: Compiled;
  readonly earliestFinish: number;
  readonly findings: readonly Finding[];
}

function pack(
  problem: ScheduleProblem,
  options: ScheduleOptions,
): Packed | { readonly compiled?: undefined; readonly failed: ScheduleResult } {
  const findings = checkProblem(problem);
  if (anyBlocks(findings)) return { failed: noResult('invalid', 0, findings) };
  const compiled = compile(problem, options.modes ?? plannedModes(problem));
  const earliest = earliestStarts(compiled.search);
  const conflicts = diagnose(compiled, earliest);
  if (conflicts.length > 0) return { failed: withoutSchedule('infeasible', 0, findings, conflicts) };
  return { compiled, earliestFinish: earliest.finishes.reduce((a, b) => Math.max(a, b), 0), findings };
}

function search({ compiled, earliestFinish, findings }: Packed, options: ScheduleOptions): Prepared {
  const { found, placed } = placeInTime(compiled, earliestFinish, options);
  if (placed) {
    const lowerBound = Math.max(earliestFinish, found.lowerBound);
    return { placed, lowerBound, schedules: found.schedules, findings };
  }
  const sets = found.conflict ? [searchConflict(compiled, found.conflict)] : [];
  const status = found.status === 'infeasible' ? 'infeasible' : 'not-found';
  return { failed: withoutSchedule(status, found.schedules, findings, sets) };
}

function withoutSchedule(
  status: 'infeasible' | 'not-found',
  schedules: number,
  findings: readonly Finding[],
  sets: readonly ConflictSet[],
): ScheduleResult {
  return noResult(status, schedules, [...findings, ...conflictFindings(sets)], sets);
}

/** Worth laying out anew: the shorter horizon is less than this share of the full one. */
const WORTH_SHORTENING = 0.75;

/** Searches within a horizon that any sensible schedule keeps, and within the full one if that finds nothing. */
function placeInTime(
  compiled: Compiled,
  earliestFinish: number,
  options: ScheduleOptions,
): ReturnType<typeof place> {
  const horizon = tightHorizon(compiled, earliestFinish);
  if (horizon < WORTH_SHORTENING * compiled.search.horizon) {
    const inTime = place(shortened(compiled, horizon), options);
    if (inTime.placed) return inTime;
  }
  return place(compiled, options);
}

/** Searches a packed problem and enters what it finds, moved as early as it fits. */
export function place(compiled: Compiled, options: SearchOptions): { found: SearchResult; placed?: Placed } {
  const found = searchSchedule(compiled.search, options);
  if (!found.starts || !found.finishes) return { found };
  const placed = placeAll(compiled, found.starts, found.finishes);
  shiftLeft(placed);
  return { found, placed };
}
