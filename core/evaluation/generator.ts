import generatorTemplate from '../../templates/generator.json';
import { BugError, keeping, keepingParts } from '../base';
import {
  generatorFile,
  generatorLimits,
  generatorPlan,
  type Generation,
  type GeneratorPlan,
} from '../disposal';
import { projectCalendars, type EstimateInput, type GenerationPlan, type WorkSheet } from '../estimate';
import { tripPoint } from '../materials';
import type { ScheduleResult } from '../scheduling';
import type { Library, WorkItem } from '../work';

/** When work is done: first and last day. */
export interface Dates {
  readonly start: string;
  readonly finish: string;
}

/** The dates of a schedule by item, of activities and of spans. */
export function datesOf(schedule: ScheduleResult): Map<string, Dates> {
  return new Map([...schedule.hammocks, ...schedule.activities].map(one => [one.id, one]));
}

/**
 * The generator category by calendar month: what each activity makes of each waste stream, over its work days.
 * @param dates when each item is done; an item without dates makes no waste of a month.
 */
export function hazardousWaste(
  input: EstimateInput,
  work: WorkSheet,
  dates: ReadonlyMap<string, Dates>,
): GeneratorPlan {
  const { columns } = work.wastes;
  const tonnes = work.result.numbers(columns.tonnes);
  const made: MadeWaste[] = [];
  let row = 0;
  for (const { item } of work.rows) {
    const at = dates.get(item.id);
    for (const { stream } of item.wastes) {
      if (at !== undefined)
        made.push({ item: item.id, stream, calendar: item.calendar, tonnes: tonnes[row] ?? 0, at });
      row += 1;
    }
  }
  return planOf(input, made);
}

/** Waste of an item that has dates; the table of wastes has its rows in the order of the items. */
interface MadeWaste {
  readonly item: string;
  readonly stream: WorkItem['wastes'][number]['stream'];
  readonly calendar: WorkItem['calendar'];
  readonly tonnes: number;
  readonly at: Dates;
}

/** The plan of the waste that is made; the same object as before while neither waste, dates nor calendars change. */
const planOf = keepingParts(
  4,
  ({ library, calendars, options }: EstimateInput, made: readonly MadeWaste[]) => {
    const parts: unknown[] = [library, calendars, options['episodic-event']];
    for (const { item, stream, calendar, tonnes, at } of made) parts.push(item, stream, calendar, tonnes, at);
    return parts;
  },
  (input, made) => {
    const calendars = projectCalendars(input.calendars);
    const generation = made.flatMap((waste): Generation[] => {
      const calendar = calendars[waste.calendar];
      if (calendar === undefined) return [];
      const { counts, acute } = streamOf(input.library, waste.stream);
      const { start, finish } = waste.at;
      return [
        {
          item: waste.item,
          stream: waste.stream,
          kilograms: waste.tonnes * 1000,
          counts,
          acute,
          start,
          finish,
          calendar,
        },
      ];
    });
    const episodic = input.options['episodic-event'] === 'planned';
    return generatorPlan(generatorLimits(input.library.tripPoints), generation, episodic);
  },
);

function streamOf(library: Library, id: WorkItem['wastes'][number]['stream']) {
  const stream = library.rateBook.streams.find(candidate => candidate.id === id);
  if (stream === undefined)
    throw new BugError(`no waste stream ${id}: the library is checked when it is read`);
  return stream;
}

const { fees } = generatorFile.parse(generatorTemplate);

/** The months and shares with the figures that price them, as the money sheet takes them. */
export const pricedGeneration = keeping(4, (library: Library, plan: GeneratorPlan): GenerationPlan => {
  const limit = (id: string) => tripPoint(library.tripPoints, id).figure;
  return {
    months: plan.months,
    shares: plan.shares.map(share => ({ ...share, acute: streamOf(library, share.stream).acute })),
    limits: {
      verySmall: limit('generator-very-small'),
      large: limit('generator-large'),
      acute: limit('generator-acute'),
    },
    fees,
  };
});
