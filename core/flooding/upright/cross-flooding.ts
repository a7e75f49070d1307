import type { SimulationResult } from '../simulate/ship';
import { screenCases } from './cases';
import { UPRIGHT_DEFAULTS } from './defaults';
import { hearFacts } from './kg-facts';
import { resolveShip } from './resolved';
import { runLikely } from './run-likely';
import { cutAround, openingSet, STANDARD_AREA } from './sizing';
import type {
  CrossFlooding,
  CrossFloodingLimit,
  SizedCut,
  UprightCompartment,
  UprightConnection,
  UprightInput,
} from './types';

/** Limits on the cuts. */
export interface CrossFloodingLimits {
  /** Most of a common bulkhead that may be cut away. Judgement, default 0.2. */
  readonly shareOfBulkhead: number;
  /** Most cuts the plan can make. Judgement, default 60. */
  readonly cuts: number;
  /** Share of the peak list to remove, default 0.9. */
  readonly wanted: number;
}

export const CROSS_FLOODING_LIMITS: CrossFloodingLimits = { shareOfBulkhead: 0.2, cuts: 60, wanted: 0.9 };

interface Bulkhead {
  readonly from: UprightCompartment;
  readonly to: UprightCompartment;
  readonly area: number;
  readonly z: number;
  readonly height: number;
}

function overlap(a0: number, a1: number, b0: number, b1: number): number {
  return Math.min(a1, b1) - Math.max(a0, b0);
}

/** Bulkheads along the ship that two flooded compartments share. */
function bulkheads(spaces: readonly UprightCompartment[]): Bulkhead[] {
  return spaces.flatMap((from, i) =>
    spaces.slice(i + 1).flatMap((to): Bulkhead[] => {
      const isBeside = Math.abs(from.y1 - to.y0) < 1e-6 || Math.abs(to.y1 - from.y0) < 1e-6;
      const length = overlap(from.x0, from.x1, to.x0, to.x1);
      const height = overlap(from.z0, from.z1, to.z0, to.z1);
      if (!isBeside || length <= 0.5 || height <= 0.5) return [];
      const cut = Math.min(UPRIGHT_DEFAULTS.openingHeight.value, height);
      const floor = Math.max(from.z0, to.z0);
      return [{ from, to, area: length * height, z: floor + cut / 2, height: cut }];
    }),
  );
}

function cutsFor(walls: readonly Bulkhead[], share: number): SizedCut[] {
  return walls.map(({ from, to, area, z, height }): SizedCut => {
    const { count, each } = openingSet(area * share, false);
    return {
      from: from.id,
      to: to.id,
      count,
      area: count * each,
      cutLength: count * cutAround(each),
      z,
      height,
    };
  });
}

/** The input with cuts added as connections. */
export function withCuts(
  input: UprightInput,
  cuts: readonly (UprightConnection & { readonly from: string })[],
): UprightInput {
  const compartments = input.compartments.map(compartment => {
    const own = cuts.filter(({ from }) => from === compartment.id);
    if (own.length === 0) return compartment;
    return {
      ...compartment,
      connections: [...compartment.connections, ...own.map(({ from: _, ...connection }) => connection)],
    };
  });
  return { ...input, compartments };
}

function connectionsOf(cuts: readonly SizedCut[]): (UprightConnection & { readonly from: string })[] {
  return cuts
    .filter(({ count }) => count > 0)
    .map(({ from, to, area, z, height }) => ({ from, to, area, z, height, kind: 'cut' as const }));
}

function run(input: UprightInput): SimulationResult {
  const ship = resolveShip(input);
  const mismatch = input.openingsMismatch ?? UPRIGHT_DEFAULTS.mismatch.value;
  const at = { displacement: input.displacement.likely, kg: hearFacts(ship).kg.likely, mismatch };
  return runLikely(ship, at).run;
}

/** Greatest list, degrees, until the deck goes under all along or she is gone. */
function peak(result: SimulationResult): number {
  return result.history.reduce((most, { heel }) => Math.max(most, Math.abs(heel)), 0);
}

function limitOf(
  kind: CrossFloodingLimit,
  limits: CrossFloodingLimits,
  removed: number,
): NonNullable<CrossFlooding['limit']> {
  const words: Record<CrossFloodingLimit, string> = {
    structure: `no more than ${Math.round(limits.shareOfBulkhead * 100)} % of a bulkhead may be cut away`,
    'number of cuts': `no more than ${limits.cuts} cuts can be made`,
    'deck edge': 'the deck edge is under before the water has crossed',
    stability:
      'she is unstable with water free from side to side, and no cut mends that; take off topside weight',
  };
  const percent = Math.round(Math.abs(removed) * 100);
  const wanted = Math.round(limits.wanted * 100);
  const done =
    removed >= 0
      ? `The cuts remove ${percent} % of the peak list and not ${wanted} %`
      : `The cuts make the peak list ${percent} % greater and do not remove ${wanted} % of it`;
  return { kind, message: `${done}: ${words[kind]}.` };
}

/** Whether the deck edge goes under before the list is greatest: from then on it grows whatever crosses. */
function isDeckUnderFirst({ history }: SimulationResult, greatest: number): boolean {
  const worst = history.findIndex(({ heel }) => Math.abs(heel) >= greatest);
  return history.slice(0, worst + 1).some(({ event }) => event === 'deck edge under');
}

function stoppedBy(result: SimulationResult, isCounted: boolean, lolls: boolean): CrossFloodingLimit {
  if (lolls) return 'stability';
  if (isDeckUnderFirst(result, peak(result))) return 'deck edge';
  return isCounted ? 'number of cuts' : 'structure';
}

/** Whether the section check heels her with one level on both sides: the cause is then not the crossing. */
function lolls(input: UprightInput, after: number): boolean {
  const ship = resolveShip(input);
  const kgs = [hearFacts(ship).kg.likely];
  const ranges = { displacements: [input.displacement.likely], kgs, mismatches: [0] };
  const cases = screenCases(ship, ranges, UPRIGHT_DEFAULTS.limits.value, 16);
  return cases.some(({ greatestHeel }) => greatestHeel === undefined || greatestHeel > after / 2);
}

function withoutBulkheads(peakBefore: number): CrossFlooding {
  const message = 'No two flooded compartments share a bulkhead along the ship: there is nothing to cut.';
  return {
    cuts: [],
    peakBefore,
    peakAfter: peakBefore,
    removedShare: 0,
    limit: { kind: 'structure', message },
  };
}

/**
 * Sizes cuts in the bulkheads along the ship so that water crosses from the fast side to the slow one: the
 * smallest share of every common bulkhead, up to the limits, that removes the wanted share of the peak list.
 */
export function sizeCrossFlooding(
  input: UprightInput,
  limits: CrossFloodingLimits = CROSS_FLOODING_LIMITS,
): CrossFlooding {
  const peakBefore = peak(run(input));
  const walls = bulkheads(resolveShip(input).spaces.map(({ compartment }) => compartment));
  if (walls.length === 0) return withoutBulkheads(peakBefore);
  const at = (share: number): { cuts: SizedCut[]; result: SimulationResult; peak: number } => {
    const cuts = cutsFor(walls, share);
    const result = run(withCuts(input, connectionsOf(cuts)));
    return { cuts, result, peak: peak(result) };
  };
  const total = walls.reduce((sum, { area }) => sum + area, 0);
  const byCount = total > 0 ? (Math.max(0, limits.cuts - walls.length) * STANDARD_AREA) / total : 0;
  const most = Math.min(limits.shareOfBulkhead, byCount);
  const goal = (1 - limits.wanted) * peakBefore;
  let best = at(most);
  if (best.peak > goal) {
    const removed = peakBefore > 0 ? 1 - best.peak / peakBefore : 0;
    const kind = stoppedBy(best.result, byCount < limits.shareOfBulkhead, lolls(input, best.peak));
    return crossing(best, peakBefore, limitOf(kind, limits, removed));
  }
  let [low, high] = [0, most];
  for (let i = 0; i < 6; i++) {
    const middle = (low + high) / 2;
    const tried = at(middle);
    if (tried.peak <= goal) [high, best] = [middle, tried];
    else low = middle;
  }
  return crossing(best, peakBefore);
}

function crossing(
  best: { cuts: readonly SizedCut[]; peak: number },
  peakBefore: number,
  limit?: NonNullable<CrossFlooding['limit']>,
): CrossFlooding {
  return {
    cuts: best.cuts.filter(({ count }) => count > 0),
    peakBefore,
    peakAfter: best.peak,
    removedShare: peakBefore > 0 ? 1 - best.peak / peakBefore : 0,
    ...(limit ? { limit } : {}),
  };
}
