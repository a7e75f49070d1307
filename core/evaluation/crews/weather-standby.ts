import { known } from '../../base';
import { civilOf, dayOf } from '../../calendar';
import { moneySheet } from '../../estimate';
import { dollarsOf, minus } from '../../money';
import { expectedWait } from '../../risk';
import { pricedGeneration } from '../generator';
import type { WholeParts } from '../risk/parts';
import { shippedRisk, type RiskFile } from '../risk/risk-file';
import { itemTimings } from '../timing';

/** What waiting for weather is expected to cost beyond the plan, and how long it is. */
export interface ExpectedStandby {
  /** Dollars at the owner's price. */
  readonly cost: number;
  /** Calendar days waited on average, all operations added. */
  readonly days: number;
}

/**
 * The mean days that tow and sinking wait for their window of workable days, from where the plan puts them, and what the
 * estimate comes to more when the equipment on hire waits that long: the money sheet again with those days.
 * @returns undefined when a figure of the total is absent.
 */
export function expectedStandby(parts: WholeParts): ExpectedStandby | undefined {
  const { input, work, planned, schedule, money, generator, quoted } = parts;
  const waits = expectedWaits(parts, shippedRisk().weather);
  const days = [...waits.values()].reduce((sum, wait) => sum + wait, 0);
  if (days === 0) return { cost: 0, days };
  const timings = itemTimings(planned, schedule, input.prices);
  for (const [id, wait] of waits) {
    const timing = known(timings, id);
    timings.set(id, { ...timing, days: (Number(timing.days) + wait).toFixed(4) });
  }
  const generation = generator && pricedGeneration(input.library, generator);
  const waited = moneySheet(input, work, timings, quoted?.quotes ?? new Map(), generation);
  const [before, after] = [money.result.money(money.sums.total), waited.result.money(waited.sums.total)];
  return before && after && { cost: dollarsOf(minus(after, before)), days };
}

/** Mean calendar days waited, by activity, of those that need a window and have not begun. */
function expectedWaits(
  { items, planned, problem, schedule }: WholeParts,
  weather: RiskFile['weather'],
): Map<string, number> {
  const most = Number(weather.standbyDays.value);
  const starts = new Map(schedule.activities.map(({ id, start }) => [id, dayOf(start)]));
  const lasting = new Map(planned.map(plan => [plan.item.id, plan.days]));
  return new Map(
    problem.activities.flatMap((activity): [string, number][] => {
      const window = items.find(item => item.id === activity.id)?.window;
      const row = weather.series.find(one => one.id === window);
      const start = starts.get(activity.id);
      if (activity.consecutive === undefined || row === undefined || start === undefined) return [];
      if (activity.actualStart !== undefined) return [];
      const days = Math.max(1, known(lasting, activity.id) + activity.consecutive.weatherDays);
      const workable = row.workable.map(Number);
      const series = { ...row, workable, persistence: workable.map(() => Number(row.persistence)) };
      const month = Array.from({ length: most + days }, (_, day) => civilOf(start + day).month - 1);
      return [[activity.id, expectedWait({ series, days, month }, most)]];
    }),
  );
}
