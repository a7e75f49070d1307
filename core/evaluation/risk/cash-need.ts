import { monthOf } from '../../calendar';
import type { Funding } from '../../project';
import { TRIALS_PER_CHUNK, type MoneyBatch } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import type { WholeParts } from './parts';
import { dateRules, finishDay, greatest, least, spanRules, startDay } from './trial-days';

/** Money that comes back: the share of every payment, and the months until it does. */
interface Returned {
  readonly share: number;
  readonly months: number;
}

/** Works out the greatest cash need of each trial of a batch, from the costs of its lines. */
export type CashNeed = (batch: MoneyBatch, lines: readonly Float64Array[]) => Float64Array;

/**
 * The greatest cash need of trials: what has been paid and will be reimbursed, and has not been yet, at the end of the
 * month where that is most. Lines are paid evenly over the days of their work; obligations after the sinking are left
 * out, and so are caps of a source and money held back from a contractor: the cash view of the plan has those.
 * @returns undefined where no source reimburses a share after some months.
 */
export function cashNeedOf(
  parts: WholeParts,
  scheduler: ChainScheduler,
  funding: Funding | undefined,
  standby: number,
): CashNeed | undefined {
  const returned = (funding?.sources ?? []).flatMap(({ mode, share, lagMonths }): Returned[] =>
    mode === 'reimbursement' && share !== undefined && lagMonths > 0
      ? [{ share: Number(share.value), months: lagMonths }]
      : [],
  );
  if (returned.length === 0) return undefined;
  const months = monthsOf(scheduler);
  const spenders = spendersOf(parts, scheduler, standby);
  const paid = new Float64Array(months.count);
  const need = new Float64Array(TRIALS_PER_CHUNK);
  return (batch, lines) => {
    for (let t = 0; t < batch.n; t++) {
      paid.fill(0);
      for (const { line, first, last } of spenders)
        spend(paid, months, first(batch, t), last(batch, t), lines[line]?.[t] ?? Number.NaN);
      need[t] = greatestGap(paid, returned);
    }
    return need;
  };
}

interface Months {
  /** The month of each day of the horizon, counted from the first. */
  readonly ofDay: Int32Array;
  /** First day of each month, and the end. */
  readonly starts: readonly number[];
  readonly count: number;
}

function monthsOf({ first, horizon }: ChainScheduler): Months {
  const starts: number[] = [];
  let last = '';
  const ofDay = Int32Array.from({ length: horizon }, (_, day) => {
    const month = monthOf(first + day);
    if (month !== last) starts.push(day);
    last = month;
    return starts.length - 1;
  });
  return { ofDay, starts: [...starts, horizon], count: starts.length };
}

type DayOf = (batch: MoneyBatch, t: number) => number;

interface Spender {
  readonly line: number;
  readonly first: DayOf;
  readonly last: DayOf;
}

/** The lines whose days follow from the schedule, with those days. */
function spendersOf(parts: WholeParts, scheduler: ChainScheduler, standby: number): Spender[] {
  const lineOf = new Map(parts.work.rows.map((row, line) => [row.item.id, line]));
  const rules = dateRules(parts, scheduler);
  const activities = scheduler.activities.flatMap((id, i): Spender[] => {
    const [line, rule] = [lineOf.get(id), rules[i]];
    if (line === undefined || rule === undefined) return [];
    return [
      {
        line,
        first: (batch, t) => startDay(rule, batch.starts, t),
        last: (batch, t) => finishDay(rule, batch, t),
      },
    ];
  });
  const spans = spanRules(parts, scheduler).flatMap(({ id, from, to }): Spender[] => {
    const line = lineOf.get(id);
    const [begins, ends] = [from.map(i => rules[i]), to.map(i => rules[i])];
    if (line === undefined) return [];
    return [
      {
        line,
        first: (batch, t) => least(begins, batch, t, standby),
        last: (batch, t) => greatest(ends, batch, t),
      },
    ];
  });
  return [...activities, ...spans];
}

function spend(
  paid: Float64Array,
  { ofDay, starts }: Months,
  from: number,
  to: number,
  dollars: number,
): void {
  const [first, last] = [Math.max(0, from), Math.max(from, to)];
  const [begin, end] = [ofDay[first], ofDay[last]];
  if (begin === undefined || end === undefined) return;
  if (begin === end) {
    paid[begin] = (paid[begin] ?? 0) + dollars;
    return;
  }
  const perDay = dollars / (last - first + 1);
  for (let m = begin; m <= end; m++) {
    const days = Math.min(last + 1, starts[m + 1] ?? 0) - Math.max(first, starts[m] ?? 0);
    paid[m] = (paid[m] ?? 0) + perDay * days;
  }
}

function greatestGap(paid: Float64Array, returned: readonly Returned[]): number {
  let most = 0;
  for (let m = 0; m < paid.length; m++) {
    let gap = 0;
    for (const { share, months } of returned)
      for (let k = Math.max(0, m - months + 1); k <= m; k++) gap += share * (paid[k] ?? 0);
    if (gap > most) most = gap;
  }
  return Math.round(most * 100) / 100;
}
