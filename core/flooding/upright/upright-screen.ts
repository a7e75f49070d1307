import { anyBlocks, type Finding } from '../../base';
import { simulateFlooding } from '../simulate/simulate';
import type { SimulationResult } from '../simulate/ship';
import { distinct, screenCases, type ScreenCase } from './cases';
import { checkUprightInput } from './check-input';
import { UPRIGHT_DEFAULTS } from './defaults';
import { hearFacts, type KgEvidence } from './kg-facts';
import { missingInputs } from './missing';
import { floodPlan, resolveShip, type ResolvedShip } from './resolved';
import { shipToSimulate } from './to-simulate';
import { siteOf } from './site-result';
import { sizeOpenings } from './sizing';
import { spaceFindings } from './space-findings';
import { stagesOf } from './stages';
import { judge, worstCase, type Judged } from './verdict';
import type { UprightInput, UprightResult, UprightSizing } from './types';
import { CANNOT_SEE, CAUTION } from './words';

/** How many times the target time the simulation follows her. */
const PATIENCE = 6;

function withheld(input: UprightInput, findings: readonly Finding[]): UprightResult {
  return {
    verdict: 'cannot tell',
    reasons: ['The input cannot be a ship: see the findings.'],
    sinks: false,
    stages: [],
    sizing: [],
    missingInputs: missingInputs(input),
    site: { notes: [] },
    findings,
    caution: CAUTION,
    cannotSee: CANNOT_SEE,
  };
}

function nothingFloods(): Finding {
  return {
    code: 'upright/nothing-floods',
    weight: 'warns',
    place: '/compartments',
    message: 'No compartment has an opening or is meant to flood.',
    meaning: 'She does not sink, and nothing can be said about how.',
    remedy: 'Enter the compartments with their openings, or mark those that are to be flooded.',
  };
}

/** The cases of a screen and the likely one among them. */
export interface Screened {
  readonly cases: readonly ScreenCase[];
  readonly likely: ScreenCase;
  readonly judged: Judged;
}

/** Runs the section check over the ranges; absent when no case came out. */
export function screenRanges(ship: ResolvedShip, evidence: KgEvidence, steps?: number): Screened | undefined {
  const { input } = ship;
  const mismatch = input.openingsMismatch ?? UPRIGHT_DEFAULTS.mismatch.value;
  const ranges = {
    displacements: distinct(input.displacement),
    kgs: distinct(evidence.kg),
    mismatches: [...new Set([0, mismatch])],
  };
  const cases = screenCases(ship, ranges, input.limits ?? UPRIGHT_DEFAULTS.limits.value, steps);
  const middle = { displacement: input.displacement.likely, kg: evidence.kg.likely, mismatch };
  const likely = cases.find(
    one =>
      one.displacement === middle.displacement && one.kg === middle.kg && one.mismatch === middle.mismatch,
  );
  return likely && { cases, likely, judged: judge(cases, middle, input.kg.basis) };
}

function simulate(
  ship: ResolvedShip,
  sizing: readonly UprightSizing[],
  likely: ScreenCase,
  seconds: number,
): SimulationResult {
  const depth = ship.input.site?.waterDepth;
  return simulateFlooding(shipToSimulate(ship, sizing, likely), {
    seconds: PATIENCE * seconds,
    longestStep: seconds / 120,
    ...(depth === undefined ? {} : { waterDepth: depth }),
  });
}

/** Hears the simulation too: what it shows and the section check does not. */
function heard(judged: Judged, likely: ScreenCase, run: SimulationResult): Judged {
  if (run.outcome === 'afloat' && likely.standing !== 'does not sink')
    return {
      verdict: 'does not sink',
      reasons: [
        'The flooding simulation ends afloat: air or openings above the water hold her up.',
        ...judged.reasons,
      ],
    };
  if (run.outcome === 'rolled over' && judged.verdict !== 'may roll over') {
    const at = run.history.at(-1);
    const isLate = (at?.draught ?? 0) > 0.9 * likely.path.plan.depth;
    const words = `The flooding simulation rolls over at a mean draught of ${(at?.draught ?? 0).toFixed(1)} m.`;
    if (isLate)
      return { ...judged, reasons: [...judged.reasons, `${words} The deck is nearly under by then.`] };
    return { verdict: 'may roll over', reasons: [words, ...judged.reasons] };
  }
  return judged;
}

function filled(
  sizing: readonly UprightSizing[],
  ship: ResolvedShip,
  run: SimulationResult,
): UprightSizing[] {
  return sizing.map((size, i) => {
    const hasOwn = (ship.spaces[i]?.compartment.openings.length ?? 0) > 0;
    const at = run.fullAt[i];
    return hasOwn && at !== undefined ? { ...size, fillMinutes: at / 60 } : size;
  });
}

function settlement(input: UprightInput, judged: Judged): Pick<UprightResult, 'settles'> {
  if (!judged.settles) return {};
  return { settles: { ...judged.settles, ...input.measurementCosts?.[judged.settles.measurement] } };
}

/**
 * The roll-over screen: greatest equilibrium heel along the flooding path over the ranges of KG, displacement and
 * unevenness of the openings, a flooding simulation, sizes of openings, the site. Screening, not a study.
 * Findings: `upright/nonsense` (blocks), `upright/kg-contradicted`, `upright/air-trapped`, `upright/air-left`,
 * `upright/tight-low`, `upright/nothing-floods`.
 */
export function uprightScreen(input: UprightInput): UprightResult {
  const faults = checkUprightInput(input);
  if (anyBlocks(faults)) return withheld(input, faults);
  const ship = resolveShip(input);
  const evidence = hearFacts(ship);
  const screened = screenRanges(ship, evidence);
  if (!screened) return withheld(input, faults);
  const { cases, likely } = screened;
  const seconds = input.targetSinkTime ?? UPRIGHT_DEFAULTS.sinkTime.value[input.method];
  const plan = floodPlan(ship, input.displacement.likely, 0);
  const sizing = sizeOpenings(ship, plan, seconds, input.ventShare ?? UPRIGHT_DEFAULTS.ventShare.value);
  const run = simulate(ship, sizing, likely, seconds);
  const judged = heard(screened.judged, likely, run);
  const worst = worstCase(cases.filter(({ standing }) => standing !== 'does not sink')) ?? likely;
  const lowest = cases.reduce((a, b) => (b.lowestGm.gm < a.lowestGm.gm ? b : a)).lowestGm;
  const isGone = run.outcome === 'sunk' || run.outcome === 'on the bottom';
  const sharing = cases.filter(one => one.path === likely.path);
  return {
    verdict: judged.verdict,
    reasons: judged.reasons,
    ...(worst.greatestHeel === undefined ? {} : { greatestHeelDegrees: worst.greatestHeel }),
    ...(likely.greatestHeel === undefined ? {} : { likelyHeelDegrees: likely.greatestHeel }),
    atStage: `flood level ${worst.worst.level.toFixed(2)} m, mean draught ${worst.worst.draught.toFixed(2)} m`,
    lowestGmMetres: lowest.gm,
    atLevel: lowest.level,
    sinks: judged.verdict !== 'does not sink' && likely.standing !== 'does not sink',
    ...(isGone ? { sinkMinutes: run.seconds / 60 } : {}),
    stages: stagesOf(run, sharing, likely),
    sizing: filled(sizing, ship, run),
    missingInputs: missingInputs(input),
    ...settlement(input, judged),
    site: siteOf(input, run),
    findings: [
      ...faults,
      ...evidence.findings,
      ...(ship.spaces.length === 0 ? [nothingFloods()] : []),
      ...spaceFindings(ship, run, evidence.kg.likely),
    ],
    caution: CAUTION,
    cannotSee: CANNOT_SEE,
  };
}
