import { at, lowerFirst, withId } from '../base';
import { dayOf, isoOf } from '../calendar';
import type { ScheduleResult } from '../scheduling';
import type { EstimateContext } from './context';
import { aligned, words } from './cells';
import { dateWords } from './schedule-axis';
import type { Column, Row, TableRows } from './rows';
import type { PeopleStep, ScheduleView } from './window-rows';

type PeoplePart = Pick<
  ScheduleView,
  'people' | 'peopleTicks' | 'peopleLimit' | 'holdingTrade' | 'peak' | 'peopleTable'
>;

/** People at work day by day, and of the crew that holds the chain. */
export function people(context: EstimateContext): PeoplePart {
  const { parts } = context;
  const trade = holdingCrew(context);
  const steps = profile(context, trade?.id);
  const most = Math.max(1, ...steps.map(step => step.all));
  return {
    people: steps,
    peopleTicks: peopleTicks(most),
    peopleLimit: undefined,
    holdingTrade:
      trade === undefined ? undefined : { title: trade.title, limit: trade.people, text: trade.text },
    peak: `peak ${parts.schedule.peakCrew} people`,
    peopleTable: peopleTable(steps),
  };
}

interface HoldingCrew {
  readonly id: string;
  readonly title: string;
  readonly people: number;
  readonly text: string;
}

/** The crew that most activities of the chain wait for. */
function holdingCrew({ parts, evaluation }: EstimateContext): HoldingCrew | undefined {
  const waits = new Map<string, number>();
  for (const activity of parts.schedule.activities.filter(one => one.critical)) {
    const first = activity.heldBy[0];
    if (first?.kind === 'resource') waits.set(first.resource, (waits.get(first.resource) ?? 0) + 1);
  }
  const [most] = [...waits].toSorted((a, b) => b[1] - a[1]);
  if (most === undefined) return undefined;
  const [id] = most;
  const crew = withId(evaluation.library.rateBook.crews, id);
  const { capacity } = withId(parts.problem.resources, id);
  const size = parts.work.result.number(parts.work.crews.crews.columns.people, id) ?? 0;
  const people = Math.round(size * capacity);
  return {
    id: crew.id,
    title: lowerFirst(crew.title),
    people,
    text: `${crew.title}: ${people} people, all there are`,
  };
}

function profile({ parts }: EstimateContext, crew: string | undefined): readonly PeopleStep[] {
  const crews = new Map(parts.items.map(item => [item.id, item.crew]));
  return peopleAtWork(parts.schedule, id => crew !== undefined && crews.get(id) === crew);
}

/** People at work over time, all of them and those of the activities that are asked for. */
export function peopleAtWork(
  { activities }: Pick<ScheduleResult, 'activities'>,
  isHolding: (activity: string) => boolean,
): readonly PeopleStep[] {
  const changes = new Map<number, { all: number; holding: number }>();
  const change = (day: number, people: number, holds: boolean) => {
    const so = changes.get(day) ?? { all: 0, holding: 0 };
    changes.set(day, { all: so.all + people, holding: so.holding + (holds ? people : 0) });
  };
  for (const { id, start, finish, crewSize } of activities.filter(activity => activity.crewSize > 0)) {
    change(dayOf(start), crewSize, isHolding(id));
    change(dayOf(finish) + 1, -crewSize, isHolding(id));
  }
  const edges = [...changes].toSorted(([a], [b]) => a - b);
  let [all, holding] = [0, 0];
  return edges.slice(0, -1).map(([from, by], place) => {
    all += by.all;
    holding += by.holding;
    const [to] = at(edges, place + 1);
    return { from, to, all, holding };
  });
}

/** Ticks of an axis of people, from nothing to the most. */
export function peopleTicks(most: number): readonly number[] {
  const size = [2, 5, 10, 20, 50, 100].find(step => most / step <= 4) ?? 200;
  const count = Math.ceil(most / size);
  return Array.from({ length: count + 1 }, (_, tick) => tick * size);
}

const COLUMNS: readonly Column[] = [
  { key: 'from', title: 'From', kind: 'words' },
  { key: 'to', title: 'To', kind: 'words' },
  { key: 'all', title: 'People at work', kind: 'number' },
];

function peopleTable(steps: readonly PeopleStep[]): TableRows {
  const rows = steps.map((step): Row => ({
    id: String(step.from),
    kind: 'line',
    cells: {
      from: words(dateWords(isoOf(step.from))),
      to: words(dateWords(isoOf(step.to - 1))),
      all: { text: String(step.all), why: `people:${step.from}` },
    },
  }));
  return { id: 'people', caption: 'People at work', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}
