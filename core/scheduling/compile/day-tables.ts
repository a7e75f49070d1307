import { BugError } from '../../base';
import { closeSpans, dayFlags, keepSpans, type DayNumber } from '../../calendar';
import type { ScheduleActivity, ScheduleProblem } from '../model';
import { workDaysOf, type WorkDays } from '../search';

/** The days on which an activity can work, as flags and as index tables. */
export interface OpenDays {
  readonly flags: Uint8Array;
  readonly table: WorkDays;
  /** Position in the calendars of the packed problem; absent when every day is open. */
  readonly position?: number;
}

/**
 * Lays out the days that activities can work: their calendar, the calendars of the resources they use, the
 * closures they must keep and the windows they must stay in. Equal sets of rules share one table.
 */
export class DayTables {
  readonly tables: WorkDays[] = [];
  private readonly byKey = new Map<string, OpenDays>();
  private readonly starts = new Map<string, Uint8Array>();
  private readonly everyDay: OpenDays & { readonly position?: number };
  private readonly resourceCalendar: ReadonlyMap<string, string>;

  private readonly problem: ScheduleProblem;
  readonly first: DayNumber;
  readonly horizon: number;

  constructor(problem: ScheduleProblem, first: DayNumber, horizon: number) {
    this.problem = problem;
    this.first = first;
    this.horizon = horizon;
    const flags = new Uint8Array(horizon).fill(1);
    this.everyDay = { flags, table: workDaysOf(flags) };
    this.resourceCalendar = new Map(
      problem.resources.flatMap(r => (r.calendar === undefined ? [] : [[r.id, r.calendar] as const])),
    );
  }

  /** The open days of an activity that uses some resources. */
  openDays(activity: ScheduleActivity, uses: Readonly<Record<string, number>>): OpenDays {
    const calendars = activity.durationUnit === 'day' ? [] : this.calendarsOf(activity, uses);
    const closures = [...(activity.closures ?? [])].sort();
    const windows = activity.windows ?? [];
    if (calendars.length + closures.length + windows.length === 0) return this.everyDay;
    const key = JSON.stringify([calendars, closures, windows]);
    return this.byKey.get(key) ?? this.layOut(key, calendars, closures, windows);
  }

  /** The plain days of one calendar, on which work-day lags are counted. */
  calendarDays(id: string): OpenDays {
    const key = JSON.stringify([[id], [], []]);
    return this.byKey.get(key) ?? this.layOut(key, [id], [], []);
  }

  /** Where a run of `length` open days on end can start. */
  runStarts(open: OpenDays, length: number): Uint8Array {
    return this.remember(`run ${open.position ?? 'all'} ${length}`, starts => {
      let run = 0;
      for (let day = this.horizon - 1; day >= 0; day--) {
        run = open.flags[day] === 1 ? run + 1 : 0;
        starts[day] = run >= length ? 1 : 0;
      }
    });
  }

  /** Moments at which a milestone can be: the opening, or the close, of an open day. */
  milestoneMoments(open: OpenDays, isClosing: boolean): Uint8Array {
    return this.remember(`milestone ${open.position ?? 'all'} ${isClosing}`, starts => {
      if (isClosing) starts.set(open.flags.subarray(0, this.horizon - 1), 1);
      else starts.set(open.flags);
    });
  }

  private remember(key: string, fill: (starts: Uint8Array) => void): Uint8Array {
    const known = this.starts.get(key);
    if (known) return known;
    const starts = new Uint8Array(this.horizon);
    fill(starts);
    this.starts.set(key, starts);
    return starts;
  }

  private calendarsOf(activity: ScheduleActivity, uses: Readonly<Record<string, number>>): string[] {
    const ids = new Set([activity.calendar]);
    for (const [resource, units] of Object.entries(uses)) {
      const calendar = units > 0 ? this.resourceCalendar.get(resource) : undefined;
      if (calendar !== undefined) ids.add(calendar);
    }
    return [...ids].sort();
  }

  private layOut(
    key: string,
    calendars: readonly string[],
    closures: readonly string[],
    windows: NonNullable<ScheduleActivity['windows']>,
  ): OpenDays {
    const flags = new Uint8Array(this.horizon).fill(1);
    for (const id of calendars) intersect(flags, this.flagsOf(id));
    closeSpans(
      flags,
      this.first,
      closures.map(id => this.closure(id)),
    );
    if (windows.length > 0) keepSpans(flags, this.first, windows);
    // A calendar without an idle day needs no table.
    const open = flags.includes(0)
      ? { flags, table: workDaysOf(flags), position: this.tables.length }
      : this.everyDay;
    if (open.position !== undefined) this.tables.push(open.table);
    this.byKey.set(key, open);
    return open;
  }

  private flagsOf(id: string): Uint8Array {
    const calendar = this.problem.calendars[id];
    if (!calendar) throw new BugError(`calendar ${id} was not checked`);
    return dayFlags(calendar, this.first, this.horizon);
  }

  private closure(id: string): NonNullable<ScheduleProblem['closures']>[string] {
    const closure = this.problem.closures?.[id];
    if (!closure) throw new BugError(`closure ${id} was not checked`);
    return closure;
  }
}

function intersect(flags: Uint8Array, other: Uint8Array): void {
  for (let i = 0; i < flags.length; i++) if (other[i] === 0) flags[i] = 0;
}
