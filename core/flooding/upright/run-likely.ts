import { simulateFlooding } from '../simulate/simulate';
import type { SimulationResult } from '../simulate/ship';
import { UPRIGHT_DEFAULTS } from './defaults';
import { floodPlan, type ResolvedShip } from './resolved';
import { sizeOpenings } from './sizing';
import { shipToSimulate } from './to-simulate';
import type { UprightInput, UprightSizing } from './types';

/** How many times the target time the simulation follows her. */
const PATIENCE = 6;

/** One set of values the simulation is run with: tonnes before removal, metres, share. */
export interface LikelyValues {
  readonly displacement: number;
  readonly kg: number;
  readonly mismatch: number;
}

/** The simulation of one set of values with the sizes its openings have. */
export interface LikelyRun {
  readonly sizing: readonly UprightSizing[];
  readonly run: SimulationResult;
}

/** Seconds from release to gone that the plan aims at. */
export function targetSeconds(input: UprightInput): number {
  return input.targetSinkTime ?? UPRIGHT_DEFAULTS.sinkTime.value[input.method];
}

/** Simulates with sizes already known. */
export function simulateWith(
  ship: ResolvedShip,
  sizing: readonly UprightSizing[],
  at: LikelyValues,
): SimulationResult {
  const target = targetSeconds(ship.input);
  const depth = ship.input.site?.waterDepth;
  return simulateFlooding(shipToSimulate(ship, sizing, at), {
    seconds: PATIENCE * target,
    longestStep: target / 120,
    ...(depth === undefined ? {} : { waterDepth: depth }),
  });
}

/** Sizes the openings of a ship and simulates her. */
export function runLikely(ship: ResolvedShip, at: LikelyValues): LikelyRun {
  const { input } = ship;
  const share = input.ventShare ?? UPRIGHT_DEFAULTS.ventShare.value;
  const plan = floodPlan(ship, input.displacement.likely, 0);
  const sizing = input.sizes ?? sizeOpenings(ship, plan, targetSeconds(input), share);
  return { sizing, run: simulateWith(ship, sizing, at) };
}
