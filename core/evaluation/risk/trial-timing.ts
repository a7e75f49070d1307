import { at, known, valueAt } from '../../base';
import { TRIALS_PER_CHUNK, type MoneyBatch } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import type { WholeParts } from './parts';
import {
  dateRules,
  fillFinishDays,
  fillGreatest,
  fillLeast,
  fillStartDays,
  monthTable,
  obligationRules,
  spanLength,
  spanRules,
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
  const rules = dateRules(parts, scheduler);
  const first = new Float64Array(TRIALS_PER_CHUNK);
  const last = new Float64Array(TRIALS_PER_CHUNK);
  const fills = [
    ...scheduler.activities.map((id, i) => {
      const [rule, out] = [at(rules, i), { months: column(id, 'months'), days: column(id, 'days') }];
      return (batch: MoneyBatch) => {
        fillStartDays(rule, batch, first);
        fillFinishDays(rule, batch, last);
        fillMonths(out.months, months, first, last, batch.n);
        fillEquipmentDays(out.days, at(batch.durations, i), at(batch.waits, i), standby, batch.n);
      };
    }),
    ...spanRules(parts, scheduler).map(span => {
      const out = [column(span.id, 'months'), column(span.id, 'days'), column(span.id, 'span')] as const;
      const [from, to] = [span.from.map(i => at(rules, i)), span.to.map(i => at(rules, i))];
      return (batch: MoneyBatch) => {
        fillLeast(from, batch, first, standby);
        fillGreatest(to, batch, last);
        fillMonths(out[0], months, first, last, batch.n);
        for (let t = 0; t < batch.n; t++) {
          const length = spanLength(span, valueAt(first, t), valueAt(last, t));
          out[1][t] = length;
          out[2][t] = length;
        }
      };
    }),
    ...obligationRules(parts, scheduler).map(({ id, after }) => {
      const out = [column(id, 'months'), column(id, 'days')] as const;
      const days = known(obligationDays, id);
      const before = after.map(i => at(rules, i));
      return (batch: MoneyBatch) => {
        fillGreatest(before, batch, first);
        for (let t = 0; t < batch.n; t++) {
          const lasts = valueAt(days, t);
          last[t] = valueAt(first, t) + lasts;
          out[1][t] = lasts;
        }
        fillMonths(out[0], months, first, last, batch.n);
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

/** The month in the middle between two days of each trial, by the table of months. */
function fillMonths(
  out: Float64Array,
  months: Int32Array,
  first: Float64Array,
  last: Float64Array,
  n: number,
): void {
  for (let t = 0; t < n; t++)
    out[t] = months[Math.floor((valueAt(first, t) + valueAt(last, t)) / 2) + 1] ?? Number.NaN;
}

/** Days of equipment: the days of the work, and of standing by for weather up to the limit. */
function fillEquipmentDays(
  out: Float64Array,
  lasting: Float64Array,
  waits: Float64Array,
  standby: number,
  n: number,
): void {
  for (let t = 0; t < n; t++)
    out[t] = Math.ceil(valueAt(lasting, t) - 1e-9) + Math.min(valueAt(waits, t), standby);
}
