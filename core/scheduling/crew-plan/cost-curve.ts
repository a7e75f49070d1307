/** A plan as the curve sees it: when it finishes, `YYYY-MM-DD`, and what it costs. */
export interface CurvePoint {
  readonly finish: string;
  readonly cost: number;
}

/** Collects plans, keeping the cheapest for every finish. */
export class CostCurve<P extends CurvePoint> {
  private readonly byFinish = new Map<string, P>();

  /** Adds a plan if it is the cheapest so far for its finish. */
  add(plan: P): void {
    const known = this.byFinish.get(plan.finish);
    if (!known || plan.cost < known.cost) this.byFinish.set(plan.finish, plan);
  }

  /** Earliest finish first. */
  points(): P[] {
    return [...this.byFinish.values()].sort((a, b) => (a.finish < b.finish ? -1 : 1));
  }

  /** Without the plans that another one beats or equals in cost while finishing no later. */
  frontier(): P[] {
    const points = this.points();
    return points.filter((plan, i) => points.slice(0, i).every(earlier => earlier.cost > plan.cost));
  }

  /** The cheapest plan that finishes by a day; among equals the earliest. */
  best(finishBy?: string): P | undefined {
    let best: P | undefined;
    for (const plan of this.points()) {
      if (finishBy !== undefined && plan.finish > finishBy) break;
      if (!best || plan.cost < best.cost) best = plan;
    }
    return best;
  }
}
