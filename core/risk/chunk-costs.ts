import { at, BugError, valueAt } from '../base';
import { roundOne } from '../sheet';
import type { MoneyColumns, PreparedRun, RegisterEvent } from './prepared';

/** The costs of a chunk of trials: what the money sheet gave plus what the events of the register add. */
export class ChunkCosts {
  readonly total: Float64Array;
  private readonly additions = new Map<number, Float64Array>();
  private readonly prepared: PreparedRun;
  private readonly money: MoneyColumns;

  constructor(prepared: PreparedRun, money: MoneyColumns, n: number) {
    this.prepared = prepared;
    this.money = money;
    this.total = money.total.slice(0, n);
  }

  /** Adds dollars to a line, trial by trial, each rounded to the cent. */
  add(line: number, dollars: Float64Array): void {
    const { total } = this;
    const added = this.additions.get(line) ?? new Float64Array(total.length);
    this.additions.set(line, added);
    for (let t = 0; t < total.length; t++) {
      const amount = roundOne(valueAt(dollars, t), 100);
      added[t] = valueAt(added, t) + amount;
      total[t] = roundOne(valueAt(total, t) + amount, 100);
    }
  }

  /** Adds the price of a mitigation to its line in every trial. */
  addMitigation(event: RegisterEvent | undefined): void {
    if (event?.mitigation === undefined) return;
    const line = this.prepared.lines.indexOf(event.mitigation.line);
    if (line < 0)
      throw new BugError(`the mitigation of ${event.id} names the unknown line ${event.mitigation.line}`);
    this.add(line, new Float64Array(this.total.length).fill(event.mitigation.cost));
  }

  /** Makes a trial with any figure that is not finite NaN in every figure, so that it is counted once. */
  dropBroken(finish: Float64Array, cashNeed: Float64Array | undefined): void {
    for (let t = 0; t < finish.length; t++) {
      const need = cashNeed === undefined ? 0 : cashNeed[t];
      const isWhole = Number.isFinite(this.total[t]) && Number.isFinite(finish[t]) && Number.isFinite(need);
      if (isWhole) continue;
      this.total[t] = Number.NaN;
      finish[t] = Number.NaN;
      if (cashNeed !== undefined) cashNeed[t] = Number.NaN;
    }
  }

  /** By line: the sum of its excess over the plan, and of that times the excess of the total. */
  excess(): { lineExcess: Float64Array; lineProduct: Float64Array } {
    const { plan, lines } = this.prepared;
    const lineExcess = new Float64Array(lines.length);
    const lineProduct = new Float64Array(lines.length);
    const whole = this.total.map(x => (Number.isNaN(x) ? Number.NaN : x - plan.total));
    for (let l = 0; l < lines.length; l++) {
      const sums = lineSums(at(this.money.lines, l), this.additions.get(l), at(plan.lines, l), whole);
      lineExcess[l] = sums.excess;
      lineProduct[l] = sums.product;
    }
    return { lineExcess, lineProduct };
  }
}

function lineSums(column: Float64Array, added: Float64Array | undefined, plan: number, whole: Float64Array) {
  let excess = 0;
  let product = 0;
  for (let t = 0; t < whole.length; t++) {
    const total = valueAt(whole, t);
    if (Number.isNaN(total)) continue;
    const own = valueAt(column, t) - plan + (added === undefined ? 0 : valueAt(added, t));
    excess += own;
    product += own * total;
  }
  return { excess, product };
}
