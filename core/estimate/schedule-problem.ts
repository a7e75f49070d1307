import { isSameData, keepingParts, onceFor } from '../base';
import type { Closure } from '../calendar';
import type {
  Hammock,
  ScheduleActivity,
  ScheduleProblem,
  ScheduleRelationship,
  ScheduleResource,
  Zone,
} from '../scheduling';
import type { Adjustment } from './inputs';
import type { ItemRelationship, Library, WeatherWindow, WorkItem } from '../work';
import { projectCalendars, type CalendarChoices } from './calendars';

/** A work item with what the work sheet found for it. */
export interface PlannedItem {
  readonly item: WorkItem;
  /** Whole days in the unit of the item: work days, or calendar days where its duration is given in days. */
  readonly days: number;
  readonly unit: 'work-day' | 'day';
  readonly crews: number;
  readonly crewSize: number;
}

export interface PlanInput {
  readonly library: Library;
  readonly planned: readonly PlannedItem[];
  readonly relationships: readonly ItemRelationship[];
  readonly calendars: CalendarChoices;
  /** Crews that can be fielded, and people a place holds, by id. */
  readonly crewLimits: ReadonlyMap<string, number>;
  readonly placeLimits: ReadonlyMap<string, number>;
  readonly adjustments: ReadonlyMap<string, Adjustment>;
  /** Whether the season closures hold (an option), and the status date for a project under way. */
  readonly seasons: boolean;
  readonly statusDate?: string | undefined;
}

/** The schedule problem of a scenario, with spans and places even where there are none. */
export type PlanProblem = ScheduleProblem & Required<Pick<ScheduleProblem, 'hammocks' | 'zones'>>;

/**
 * The schedule problem of a scenario: plain data for the scheduler. Spans become hammocks. It stays the same object as
 * long as nothing it is made from changes: what work costs is no matter of the schedule.
 */
export const scheduleProblem: (input: PlanInput) => PlanProblem = keepingParts(4, partsOfProblem, newProblem);

function partsOfProblem(input: PlanInput): readonly unknown[] {
  const { library, relationships, calendars, crewLimits, placeLimits, seasons, statusDate } = input;
  const parts: unknown[] = [library, relationships, calendars, seasons, statusDate];
  parts.push([...crewLimits], [...placeLimits]);
  for (const planned of input.planned) {
    const { item } = planned;
    parts.push(namesOf(item));
    if (!isSpan(item) && !isObligation(item)) parts.push(activity(planned, input));
  }
  return parts;
}

/** What of an item stands in the problem beside its activity. */
const namesOf = onceFor(({ id, title, stage, span, calendar, hazard, crew }: WorkItem) => [
  ...[id, title, stage, span],
  ...[calendar, hazard, crew],
]);

function newProblem(input: PlanInput): PlanProblem {
  const spans = input.planned.flatMap(({ item }) =>
    item.span === undefined ? [] : [{ item, span: item.span }],
  );
  const worked = input.planned.filter(({ item }) => !isSpan(item) && !isObligation(item));
  const isWorked = new Set(worked.map(({ item }) => item.id));
  const problem: PlanProblem = {
    horizonStart: input.calendars.start,
    calendars: projectCalendars(input.calendars),
    closures: seasonClosures(input),
    resources: crewResources(input, worked),
    activities: worked.map(planned => activity(planned, input)),
    relationships: input.relationships
      .filter(({ from, to }) => isWorked.has(from) && isWorked.has(to))
      .map(toRelationship),
    zones: input.library.places.map(place => zone(place, input.placeLimits.get(place.id))),
    zoneStates: [{ id: 'gas-free', title: 'Gas-free', stopLimitDays: GAS_FREE_STOP_DAYS }],
    exclusions: exclusions(worked),
    hammocks: hammocks(spans, worked),
  };
  return input.statusDate === undefined ? problem : { ...problem, statusDate: input.statusDate };
}

/** Calendar days without work after which a gas-free certificate is asked for anew (judgement; the chemist decides). */
const GAS_FREE_STOP_DAYS = 7;

/** Whether an item is an obligation of the years after the sinking: it follows the finish and does not move it. */
export function isObligation(item: WorkItem): boolean {
  return (
    item.duration !== undefined && 'perUnit' in item.duration && item.duration.perUnit.unit === 'day/year'
  );
}

/** Whether an item lasts as long as others do: its quantity comes from the schedule. */
export function isSpan(item: WorkItem): boolean {
  return item.span !== undefined;
}

interface ActivityOf {
  readonly from: readonly unknown[];
  readonly made: ScheduleActivity;
}

const ACTIVITIES = new WeakMap<WorkItem, ActivityOf>();

/** The activity of an item; the same object as before when all it is made from says the same. */
function activity(planned: PlannedItem, input: PlanInput): ScheduleActivity {
  const { item, days, unit, crews, crewSize } = planned;
  const { library, adjustments, seasons } = input;
  const from = [days, unit, crews, crewSize, library.windows, adjustments.get(item.id), seasons];
  const known = ACTIVITIES.get(item);
  if (known !== undefined && isSameData(known.from, from)) return known.made;
  const made = newActivity(planned, input);
  ACTIVITIES.set(item, { from, made });
  return made;
}

function newActivity(planned: PlannedItem, input: PlanInput): ScheduleActivity {
  const { item, days, unit, crews, crewSize } = planned;
  const change = input.adjustments.get(item.id);
  const remaining = change?.remaining === undefined ? undefined : Number(change.remaining.value);
  const window = input.library.windows.find(candidate => candidate.id === item.window);
  const closures = input.seasons ? item.closures : [];
  return {
    id: item.id,
    title: item.title,
    stage: item.stage,
    place: item.place,
    workDays: days,
    crewSize: crews * crewSize,
    uses: item.crew === undefined || crews === 0 ? {} : { [item.crew]: crews },
    calendar: item.calendar,
    durationUnit: unit,
    waiting: item.crew === undefined && days > 0,
    ...(window === undefined ? {} : { consecutive: { weatherDays: weatherDays(window, days) } }),
    ...(closures.length === 0 ? {} : { closures }),
    ...gasFree(item),
    ...(change?.notBefore === undefined ? {} : { notBefore: change.notBefore }),
    ...(change?.actualStart === undefined ? {} : { actualStart: change.actualStart }),
    ...(change?.actualFinish === undefined ? {} : { actualFinish: change.actualFinish }),
    ...(remaining === undefined ? {} : { remaining }),
  };
}

/** Days kept free for weather behind the activity's own: a share of them, at least the stated days. */
function weatherDays(window: WeatherWindow, days: number): number {
  return Math.max(Number(window.weatherDays.value), Math.ceil(days * Number(window.weatherShare.value)));
}

function gasFree(item: WorkItem): Partial<ScheduleActivity> {
  if (item.gasFree === 'opens') return { opensStates: ['gas-free'] };
  if (item.gasFree === 'needs') return { needsStates: ['gas-free'] };
  if (item.gasFree === 'loses') return { endsStates: ['gas-free'] };
  return {};
}

function crewResources(input: PlanInput, worked: readonly PlannedItem[]): ScheduleResource[] {
  const used = new Set(
    worked.flatMap(({ item, crews }) => (item.crew === undefined || crews === 0 ? [] : [item.crew])),
  );
  return input.library.rateBook.crews
    .filter(crew => used.has(crew.id))
    .map(crew => ({
      id: crew.id,
      title: crew.title,
      capacity: input.crewLimits.get(crew.id) ?? Number(crew.available.value),
    }));
}

function zone(place: Library['places'][number], limit: number | undefined): Zone {
  return {
    id: place.id,
    title: place.title,
    touches: place.touches,
    ...(limit === undefined ? {} : { crewLimit: limit }),
  };
}

const RELATIONSHIPS = new WeakMap<ItemRelationship, ScheduleRelationship>();

function toRelationship(relationship: ItemRelationship): ScheduleRelationship {
  const known = RELATIONSHIPS.get(relationship);
  if (known !== undefined) return known;
  const made = newRelationship(relationship);
  RELATIONSHIPS.set(relationship, made);
  return made;
}

function newRelationship({ from, to, kind, lag, maximumLag }: ItemRelationship): ScheduleRelationship {
  return {
    from,
    to,
    kind,
    ...(lag === undefined
      ? {}
      : { lag: Number(lag.value), lagUnit: lag.unit === 'day' ? 'day' : 'work-day' }),
    ...(maximumLag === undefined ? {} : { maximumLag: Number(maximumLag.value) }),
  };
}

function seasonClosures(input: PlanInput): Record<string, Closure> {
  return Object.fromEntries(
    input.library.closures.map(({ id, title, from, to }) => [id, { id, title, from, to }]),
  );
}

/** Hot work and fuel cleaning exclude each other in a zone and in those it touches; an asbestos enclosure blocks its zone. */
function exclusions(worked: readonly PlannedItem[]): NonNullable<ScheduleProblem['exclusions']> {
  const withHazard = (hazard: string) =>
    worked.filter(({ item, days }) => item.hazard === hazard && days > 0).map(({ item }) => item.id);
  const onShip = worked
    .filter(({ item, days }) => days > 0 && item.crew !== undefined && item.hazard !== 'asbestos-enclosure')
    .map(({ item }) => item.id);
  return [
    {
      id: 'hot-work-and-fuel',
      title: 'Hot work and fuel cleaning',
      first: withHazard('hot-work'),
      second: withHazard('fuel-cleaning'),
      reach: 'touching' as const,
    },
    {
      id: 'asbestos-enclosure',
      title: 'Asbestos enclosure',
      first: withHazard('asbestos-enclosure'),
      second: onShip,
      reach: 'zone' as const,
    },
  ].filter(exclusion => exclusion.first.length > 0 && exclusion.second.length > 0);
}

/** Spans as hammocks; the same objects as before while neither they nor the items they may hang from are called otherwise. */
const hammocks = keepingParts(
  4,
  (spans: readonly SpanItem[], worked: readonly PlannedItem[]) => [
    spans.length,
    ...spans.map(({ item }) => namesOf(item)),
    ...worked.map(({ item }) => namesOf(item)),
  ],
  (spans, worked) => spans.flatMap(({ item, span }) => hammock(item, span, worked)),
);

interface SpanItem {
  readonly item: WorkItem;
  readonly span: NonNullable<WorkItem['span']>;
}

function hammock(item: WorkItem, span: SpanItem['span'], worked: readonly PlannedItem[]): Hammock[] {
  const named = (names: readonly string[]) => {
    const wanted = new Set(names);
    return worked.flatMap(({ item: { id, stage } }) => (wanted.has(id) || wanted.has(stage) ? [id] : []));
  };
  const from = named(span.from);
  const to = named(span.to);
  if (from.length === 0 || to.length === 0) return [];
  return [{ id: item.id, title: item.title, fromStartOf: from, toFinishOf: to, calendar: item.calendar }];
}
