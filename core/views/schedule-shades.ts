import { spansOf, dayOf, type DayNumber } from '../calendar';
import type { EstimateContext } from './context';
import type { ScheduleLane, ScheduleShade } from './window-rows';

/** Closures of seasons and of the project within the span, with the lanes whose work they stop. */
export function shades(
  context: EstimateContext,
  span: { from: DayNumber; to: DayNumber },
  lanes: readonly ScheduleLane[],
): readonly ScheduleShade[] {
  return [
    ...seasons(context, span, lanes),
    ...ownClosures(context, span, lanes),
    ...weatherWindows(context, span, lanes),
  ];
}

function lanesWith(
  lanes: readonly ScheduleLane[],
  isStopped: (activity: string) => boolean,
): readonly string[] {
  return lanes.filter(lane => lane.bars.some(bar => isStopped(bar.id))).map(lane => lane.id);
}

function seasons(
  context: EstimateContext,
  span: { from: DayNumber; to: DayNumber },
  lanes: readonly ScheduleLane[],
): ScheduleShade[] {
  const { problem } = context.parts;
  const used = new Set(problem.activities.flatMap(activity => activity.closures ?? []));
  return Object.entries({ ...problem.closures }).flatMap(([id, closure]): ScheduleShade[] => {
    if (!used.has(id)) return [];
    const stopped = new Set(
      problem.activities
        .filter(activity => activity.closures?.includes(id) === true)
        .map(activity => activity.id),
    );
    return spansOf(closure, span.from, span.to).map(([first, last]) => ({
      id,
      title: closure.title,
      from: first,
      to: last + 1,
      kind: 'closed',
      lanes: lanesWith(lanes, activity => stopped.has(activity)),
    }));
  });
}

function ownClosures(
  context: EstimateContext,
  span: { from: DayNumber; to: DayNumber },
  lanes: readonly ScheduleLane[],
): ScheduleShade[] {
  const { evaluation, parts } = context;
  const calendars = new Map(parts.problem.activities.map(activity => [activity.id, activity.calendar]));
  return evaluation.project.calendars.closures
    .filter(closure => dayOf(closure.to) >= span.from && dayOf(closure.from) <= span.to)
    .map(closure => ({
      id: closure.id,
      title: closure.title,
      from: Math.max(span.from, dayOf(closure.from)),
      to: Math.min(span.to, dayOf(closure.to) + 1),
      kind: 'closed' as const,
      lanes: lanesWith(lanes, activity =>
        closure.calendars.some(calendar => calendar === calendars.get(activity)),
      ),
    }));
}

/** Spans in which work that needs the weather may go on, each once, with the lanes that wait for it. */
function weatherWindows(
  context: EstimateContext,
  span: { from: DayNumber; to: DayNumber },
  lanes: readonly ScheduleLane[],
): ScheduleShade[] {
  const found = new Map<string, ScheduleShade & { readonly activities: Set<string> }>();
  for (const activity of context.parts.problem.activities) {
    for (const window of activity.windows ?? []) {
      for (const [first, last] of spansOf(window, span.from, span.to)) {
        const id = `window-${first}-${last}`;
        const known = found.get(id) ?? {
          id,
          title: 'Weather window',
          from: Math.max(first, span.from),
          to: Math.min(last, span.to) + 1,
          kind: 'window' as const,
          lanes: [],
          activities: new Set<string>(),
        };
        known.activities.add(activity.id);
        found.set(id, known);
      }
    }
  }
  return [...found.values()].map(({ activities, ...shade }) => ({
    ...shade,
    lanes: lanesWith(lanes, activity => activities.has(activity)),
  }));
}
