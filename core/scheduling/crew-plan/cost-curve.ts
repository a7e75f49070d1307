import type { PricedPlan } from './plan';

/** Collects plans, keeping the cheapest for every finish. */
export class CostCurve {
  private readonly byFinish = new Map<string, PricedPlan>();

  /** Adds a plan if it is the cheapest so far for its finish. */
  add(plan: PricedPlan): void {
    const known = this.byFinish.get(plan.finish);
    if (!known || plan.cost < known.cost) this.byFinish.set(plan.finish, plan);
  }

  /** Earliest finish first. */
  points(): PricedPlan[] {
    return [...this.byFinish.values()].sort((a, b) => (a.finish < b.finish ? -1 : 1));
  }

  /** Without the plans that another one beats or equals in cost while finishing no later. */
  frontier(): PricedPlan[] {
    const points = this.points();
    return points.filter((plan, i) => points.slice(0, i).every(earlier => earlier.cost > plan.cost));
  }

  /** The cheapest plan that finishes by a day; among equals the earliest. */
  best(finishBy?: string): PricedPlan | undefined {
    let best: PricedPlan | undefined;
    for (const plan of this.points()) {
      if (finishBy !== undefined && plan.finish > finishBy) break;
      if (!best || plan.cost < best.cost) best = plan;
    }
    return best;
  }
}
