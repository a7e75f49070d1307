import generatorTemplate from '../../templates/generator.json';
import { BugError } from '../base';
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
  const calendars = projectCalendars(input.calendars);
  const { columns } = work.wastes;
  const generation = work.rows.flatMap(({ item }) => {
    const at = dates.get(item.id);
    const calendar = calendars[item.calendar];
    if (at === undefined || calendar === undefined) return [];
    const { start, finish } = at;
    return item.wastes.map((waste): Generation => {
      const tonnes = work.result.number(columns.tonnes, `${item.id}.${waste.stream}`) ?? 0;
      const { counts, acute } = streamOf(input.library, waste.stream);
      return {
        item: item.id,
        stream: waste.stream,
        kilograms: tonnes * 1000,
        counts,
        acute,
        start,
        finish,
        calendar,
      };
    });
  });
  const episodic = input.options['episodic-event'] === 'planned';
  return generatorPlan(generatorLimits(input.library.tripPoints), generation, episodic);
}

function streamOf(library: Library, id: WorkItem['wastes'][number]['stream']) {
  const stream = library.rateBook.streams.find(candidate => candidate.id === id);
  if (stream === undefined)
    throw new BugError(`no waste stream ${id}: the library is checked when it is read`);
  return stream;
}

const { fees } = generatorFile.parse(generatorTemplate);

/** The months and shares with the figures that price them, as the money sheet takes them. */
export function pricedGeneration(library: Library, plan: GeneratorPlan): GenerationPlan {
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
}
