import type { RegisterEvent } from '../../risk';
import { fromCents, dollarsOf, sumMoney } from '../../money';
import { spreadOf, type WholeParts } from './parts';
import type { RiskEventRow } from './risk-file';

/**
 * The events of the template's register on this estimate: a share of the cost of a stage in dollars on its largest
 * line, days on the activity named or on the longest of the stage. An event that finds neither is left out.
 */
export function registerEvents(parts: WholeParts, rows: readonly RiskEventRow[]): RegisterEvent[] {
  return rows.flatMap((row): RegisterEvent[] => {
    const line = row.cost && largestLine(parts, row.cost.stage);
    const activity = row.delay && activityOf(parts, row.delay);
    const costs =
      row.cost && line ? [{ line: line.id, dollars: spreadOf(row.cost.share, line.stageTotal) }] : [];
    const delays = row.delay && activity ? [{ activity, workDays: spreadOf(row.delay.workDays) }] : [];
    if (costs.length + delays.length === 0) return [];
    const { id, title, owner, note } = row;
    return [{ id, title, owner, probability: Number(row.probability.value), costs, delays, note }];
  });
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
  const open = parts.problem.activities.filter(a => a.actualStart === undefined);
  const named = open.find(a => a.id === activity);
  const longest = open
    .filter(a => a.stage === stage)
    .toSorted((a, b) => (b.workDays ?? 0) - (a.workDays ?? 0))[0];
  return (named ?? longest)?.id;
}
