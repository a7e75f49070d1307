import { TRIALS_PER_CHUNK, type MoneyBatch } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import type { WholeParts } from './parts';
import {
  dateRules,
  finishDay,
  greatest,
  least,
  monthTable,
  obligationRules,
  spanLength,
  spanRules,
  startDay,
  type DateRule,
} from './trial-days';

/** What the schedule gives the money sheet in trials: the same three columns as in the plan, by sheet id. */
export interface TrialTiming {
  readonly inputs: ReadonlyMap<string, Float64Array>;
  fill(batch: MoneyBatch): void;
}

/**
 * Months of spending, days of equipment and spans of each item from the dates of a trial, by the rules of
 * `itemTimings`. Days of waiting for weather are days of equipment, and of the spans that begin with the operation,
 * up to the limit of standing by.
 * @param obligationDays days of the obligations, by item; @param standby days a spread stands by at most.
 */
export function trialTiming(
  parts: WholeParts,
  scheduler: ChainScheduler,
  obligationDays: ReadonlyMap<string, Float64Array>,
  standby: number,
): TrialTiming {
  const inputs = new Map<string, Float64Array>();
  const column = (id: string, key: string) => {
    const values = new Float64Array(TRIALS_PER_CHUNK);
    inputs.set(`timing/${id}/${key}`, values);
    return values;
  };
  const months = monthTable(scheduler, parts.input.prices);
  const monthOfMiddle = (from: number, to: number) => months[Math.floor((from + to) / 2) + 1] ?? Number.NaN;
  const rules = dateRules(parts, scheduler);
  const fills = [
    ...scheduler.activities.map((id, i) =>
      activityFill(rules, i, standby, monthOfMiddle, column(id, 'months'), column(id, 'days')),
    ),
    ...spanRules(parts, scheduler).map(span => {
      const out = [column(span.id, 'months'), column(span.id, 'days'), column(span.id, 'span')] as const;
      const [from, to] = [span.from.map(i => rules[i]), span.to.map(i => rules[i])];
      return (batch: MoneyBatch) => {
        for (let t = 0; t < batch.n; t++) {
          const first = least(from, batch, t, standby);
          const last = greatest(to, batch, t);
          const length = spanLength(span, first, last);
          out[0][t] = monthOfMiddle(first, last);
          out[1][t] = length;
          out[2][t] = length;
        }
      };
    }),
    ...obligationRules(parts, scheduler).map(({ id, after }) => {
      const out = [column(id, 'months'), column(id, 'days')] as const;
      const days = obligationDays.get(id);
      const last = after.map(i => rules[i]);
      return (batch: MoneyBatch) => {
        for (let t = 0; t < batch.n; t++) {
          const start = greatest(last, batch, t);
          const lasts = days?.[t] ?? Number.NaN;
          out[0][t] = monthOfMiddle(start, start + lasts);
          out[1][t] = lasts;
        }
      };
    }),
  ];
  return {
    inputs,
    fill: batch => {
      for (const fill of fills) fill(batch);
    },
  };
}

function activityFill(
  rules: readonly DateRule[],
  i: number,
  standby: number,
  monthOfMiddle: (from: number, to: number) => number,
  months: Float64Array,
  days: Float64Array,
) {
  const rule = rules[i];
  return (batch: MoneyBatch) => {
    const lasting = batch.durations[i];
    const waits = batch.waits[i];
    if (rule === undefined || lasting === undefined || waits === undefined) return;
    for (let t = 0; t < batch.n; t++) {
      months[t] = monthOfMiddle(startDay(rule, batch.starts, t), finishDay(rule, batch, t));
      days[t] = Math.ceil((lasting[t] ?? Number.NaN) - 1e-9) + Math.min(waits[t] ?? 0, standby);
    }
  };
}
