import { known, type Finding } from '../../base';
import { fromCents, dollarsOf, sumMoney } from '../../money';
import type { RiskSection } from '../../project';
import type { Mitigation, RegisterEvent } from '../../risk';
import { spreadOf, type WholeParts } from './parts';
import type { RiskEventRow } from './risk-file';

type OwnEvent = RiskSection['register'][number];

/**
 * The events of the register on this estimate: those of the project, and those of the library that it neither replaces
 * nor leaves out. An event that finds no line and no activity of the scenario is left out.
 * @param faulty whether a place of the document has a fault that blocks it.
 */
export function registerEvents(
  parts: WholeParts,
  rows: readonly RiskEventRow[],
  section: Pick<RiskSection, 'register' | 'leftOut'>,
  faulty: (place: string) => boolean,
): RegisterEvent[] {
  const own = section.register.filter(event => !faulty(`/risk/register/${event.id}`));
  const gone = new Set(
    [...section.register, ...section.leftOut.map(({ event }) => ({ id: event }))].map(e => e.id),
  );
  return [
    ...rows.filter(row => !gone.has(row.id)).flatMap(row => libraryEvent(parts, row)),
    ...own.flatMap(event => ownEvent(parts, event)),
  ];
}

/** Names of events that the library does not have. */
export function leftOutFindings(
  rows: readonly RiskEventRow[],
  { leftOut }: Pick<RiskSection, 'leftOut'>,
): Finding[] {
  return leftOut
    .filter(({ event }) => !rows.some(row => row.id === event))
    .map(({ event }) => ({
      code: 'risk/unknown-event',
      weight: 'warns',
      place: `/risk/leftOut/${event}`,
      message: `The library has no event ${event} that could be left out.`,
      meaning: 'The entry changes nothing.',
      remedy: 'Take the entry out, or name an event of the register.',
    }));
}

/** A share of the cost of a stage in dollars on its largest line, days on the activity named or the longest of the stage. */
function libraryEvent(parts: WholeParts, row: RiskEventRow): RegisterEvent[] {
  const line = row.cost && largestLine(parts, row.cost.stage);
  const activity = row.delay && activityOf(parts, row.delay);
  const costs =
    row.cost && line ? [{ line: line.id, dollars: spreadOf(row.cost.share, line.stageTotal) }] : [];
  const delays = row.delay && activity ? [{ activity, workDays: spreadOf(row.delay.workDays) }] : [];
  if (costs.length + delays.length === 0) return [];
  const { id, title, owner, note } = row;
  const payer = line?.id ?? (row.delay && largestLine(parts, row.delay.stage)?.id);
  const mitigation = payer === undefined ? {} : { mitigation: mitigationOf(row.mitigation, payer) };
  return [
    { id, title, owner, probability: Number(row.probability.value), costs, delays, ...mitigation, note },
  ];
}

function ownEvent(parts: WholeParts, event: OwnEvent): RegisterEvent[] {
  const lines = new Set(parts.work.rows.map(row => row.item.id));
  const open = new Set(parts.problem.activities.filter(a => a.actualStart === undefined).map(a => a.id));
  const costs = event.costs.flatMap(({ item, dollars }) =>
    lines.has(item) ? [{ line: item, dollars: spreadOf(dollars) }] : [],
  );
  const delays = event.delays.flatMap(({ item, workDays }) =>
    open.has(item) ? [{ activity: item, workDays: spreadOf(workDays) }] : [],
  );
  if (costs.length + delays.length === 0) return [];
  const { id, title, owner, note, mitigation } = event;
  const payer = [mitigation?.item, costs[0]?.line, ...delays.map(d => d.activity)].find(
    item => item !== undefined && lines.has(item),
  );
  return [
    {
      id,
      title,
      ...(owner === undefined ? {} : { owner }),
      probability: Number(event.probability.value),
      costs,
      delays,
      ...(mitigation === undefined || payer === undefined
        ? {}
        : { mitigation: mitigationOf(mitigation, payer) }),
      ...(note === undefined ? {} : { note }),
    },
  ];
}

function mitigationOf(
  { title, cost, probability, impactLeft }: RiskEventRow['mitigation'],
  line: string,
): Mitigation {
  const [price, after, left] = [Number(cost.value), Number(probability.value), Number(impactLeft.value)];
  return { title, cost: price, line, probability: after, impactLeft: left };
}

/** The largest line of a stage, and what the whole stage costs, in dollars; nothing where it costs nothing. */
function largestLine(
  { items, money }: WholeParts,
  stage: string,
): { id: string; stageTotal: number } | undefined {
  const lines = items.flatMap(item => {
    const total = item.stage === stage ? money.result.money(money.lines.columns.total, item.id) : undefined;
    return total === undefined ? [] : [{ id: item.id, total }];
  });
  const stageTotal = dollarsOf(lines.length === 0 ? fromCents(0) : sumMoney(lines.map(line => line.total)));
  const largest = lines.toSorted((a, b) => b.total.cents - a.total.cents)[0];
  return largest === undefined || stageTotal <= 0 ? undefined : { id: largest.id, stageTotal };
}

/** The activity named, when it is in the plan, else the longest of the stage; never one that has begun. */
function activityOf(
  parts: WholeParts,
  { stage, activity }: { stage: string; activity?: string | undefined },
) {
  const days = new Map(parts.planned.map(plan => [plan.item.id, plan.days]));
  const open = parts.problem.activities.filter(a => a.actualStart === undefined);
  const named = open.find(a => a.id === activity);
  const longest = open
    .filter(a => a.stage === stage)
    .toSorted((a, b) => known(days, b.id) - known(days, a.id))[0];
  return (named ?? longest)?.id;
}
