import { at, intAt, known, withId } from '../../base';
import { civilOf, dayOf } from '../../calendar';
import type { WeatherModel, WeatherOperation } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import type { WholeParts } from './parts';
import type { RiskFile } from './risk-file';

/**
 * The weather of the run: the operations with a weather window wait for as many workable days on end as the plan keeps
 * for them, their own and the allowance, inside an open season.
 * @returns nothing when no operation depends on the weather.
 */
export function weatherOf(
  parts: WholeParts,
  scheduler: ChainScheduler,
  { series }: RiskFile['weather'],
): WeatherModel | undefined {
  const days = new Map(parts.planned.map(plan => [plan.item.id, plan.days]));
  const operations = parts.problem.activities.flatMap((activity): WeatherOperation[] => {
    const { window } = withId(parts.items, activity.id);
    const runs = scheduler.openRuns.get(activity.id);
    if (activity.consecutive === undefined || runs === undefined || window === undefined) return [];
    if (activity.actualStart !== undefined || !series.some(s => s.id === window)) return [];
    const planned = withId(parts.schedule.activities, activity.id);
    const windowDays = Math.max(1, known(days, activity.id) + activity.consecutive.weatherDays);
    const open = Uint8Array.from(runs, run => (run >= windowDays ? 1 : 0));
    const ofDay = seasonsOf(runs);
    const season = { ofDay, planned: at(ofDay, dayOf(planned.start) - scheduler.first) };
    return [{ activity: activity.id, series: window, windowDays, open, season }];
  });
  if (operations.length === 0) return undefined;
  const used = series.filter(s => operations.some(o => o.series === s.id));
  return {
    month: Uint8Array.from(
      { length: scheduler.horizon },
      (_, day) => civilOf(scheduler.first + day).month - 1,
    ),
    series: used.map(({ id, title, workable, persistence }) => ({
      id,
      title,
      workable: workable.map(Number),
      persistence: workable.map(() => Number(persistence)),
    })),
    operations,
  };
}

/** Idle days between open ones that end a season; shorter breaks do not. */
const SEASON_BREAK = 30;

/** The number of the season each day belongs to, rising with every long closure. */
function seasonsOf(openRuns: Int32Array): Int16Array {
  const season = new Int16Array(openRuns.length);
  let [current, closed] = [0, 0];
  for (let day = 0; day < openRuns.length; day++) {
    const isOpen = intAt(openRuns, day) > 0;
    if (isOpen && closed >= SEASON_BREAK) current++;
    closed = isOpen ? 0 : closed + 1;
    season[day] = current;
  }
  return season;
}
