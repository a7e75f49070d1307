import { anyBlocks, at, type Finding } from '../../base';
import { SEA_WATER } from '../../stability';
import type { SimulationResult } from '../simulate/ship';
import { afterDeckEdge } from './after-deck-edge';
import { compareChoices } from './choices';
import { sizeCrossFlooding } from './cross-flooding';
import { checkUprightInput } from './check-input';
import { hearFacts } from './kg-facts';
import { hearSimulation, listBeforeUnder } from './hear-simulation';
import { missingInputs } from './missing';
import { resolveShip, type ResolvedShip } from './resolved';
import { runLikely } from './run-likely';
import { screenRanges } from './screen-ranges';
import { siteOf } from './site-result';
import { spaceFindings } from './space-findings';
import { stagesOf } from './stages';
import { worstCase, type Judged } from './verdict';
import type { UprightInput, UprightResult, UprightSizing } from './types';
import { whatIfs } from './what-if';
import { CANNOT_SEE, CAUTION } from './words';
import { yardsticks } from './yardsticks';

function withheld(input: UprightInput, findings: readonly Finding[]): UprightResult {
  return {
    verdict: 'cannot tell',
    reasons: ['The input cannot be a ship: see the findings.'],
    sinks: false,
    stages: [],
    sizing: [],
    whatIfs: [],
    missingInputs: missingInputs(input),
    site: { notes: [] },
    yardsticks: [],
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

/** A displacement that the closed hull cannot carry: particulars and lines contradict each other. */
function overloaded({ hull, input }: ResolvedShip): Finding | undefined {
  const most = hull.capacity * SEA_WATER;
  if (input.displacement.high < most) return undefined;
  return {
    code: 'upright/nonsense',
    weight: 'blocks',
    place: '/displacement/high',
    message: `A displacement of ${input.displacement.high} t is more than the closed hull can carry (${most.toFixed(0)} t).`,
    meaning: 'The upright screen is withheld.',
    remedy: 'Check the displacement with its unit, and the lines of the hull.',
  };
}

function filled(
  sizing: readonly UprightSizing[],
  ship: ResolvedShip,
  run: SimulationResult,
): UprightSizing[] {
  return sizing.map((size, i) => {
    const hasOwn = at(ship.spaces, i).compartment.openings.length > 0;
    const full = run.fullAt[i];
    return hasOwn && full !== undefined ? { ...size, fillMinutes: full / 60 } : size;
  });
}

function settlement(input: UprightInput, judged: Judged): Pick<UprightResult, 'settles'> {
  if (!judged.settles) return {};
  return { settles: { ...judged.settles, ...input.measurementCosts?.[judged.settles.measurement] } };
}

/** List of the simulation, degrees, from which cuts across the ship are sized. Judgement. */
const WORTH_CUTTING = 2;

/** Cuts across the ship, where the simulation lists her while there is freeboard. */
function crossingOf(input: UprightInput, run: SimulationResult): Pick<UprightResult, 'crossFlooding'> {
  const list = listBeforeUnder(run, input.particulars.depth);
  return list > WORTH_CUTTING ? { crossFlooding: sizeCrossFlooding(input) } : {};
}

function choicesOf(input: UprightInput, judged: Judged): Pick<UprightResult, 'choices'> {
  const choices = compareChoices(input, judged.verdict);
  return choices ? { choices } : {};
}

/**
 * The upright screen: greatest equilibrium heel along the flooding path over the ranges of KG, displacement and
 * unevenness of the openings, a flooding simulation, sizes of openings, the site. Screening, not a study.
 * Findings: `upright/nonsense` (blocks), `upright/kg-contradicted`, `upright/kg-above-km`, `upright/air-trapped`, `upright/air-left`,
 * `upright/tight-low`, `upright/nothing-floods`.
 */
export function uprightScreen(input: UprightInput): UprightResult {
  const faults = checkUprightInput(input);
  if (anyBlocks(faults)) return withheld(input, faults);
  const ship = resolveShip(input);
  const overload = overloaded(ship);
  if (overload) return withheld(input, [...faults, overload]);
  const evidence = hearFacts(ship);
  const screened = screenRanges(ship, evidence);
  const { cases, likely } = screened;
  const { sizing, run } = runLikely(ship, likely);
  const judged = hearSimulation(screened.judged, likely, run, input);
  const sinking = cases.filter(({ standing }) => standing !== 'does not sink');
  const worst = sinking.length === 0 ? likely : worstCase(sinking);
  const lowest = cases.reduce((a, b) => (b.lowestGm.gm < a.lowestGm.gm ? b : a)).lowestGm;
  const isGone = run.outcome === 'sunk' || run.outcome === 'on the bottom';
  const sinks = judged.verdict !== 'does not sink' && likely.standing !== 'does not sink';
  const sharing = cases.filter(one => one.path === likely.path);
  return {
    verdict: judged.verdict,
    reasons: judged.reasons,
    ...(worst.greatestHeel === undefined ? {} : { greatestHeelDegrees: worst.greatestHeel }),
    ...(likely.greatestHeel === undefined ? {} : { likelyHeelDegrees: likely.greatestHeel }),
    atStage: `flood level ${worst.worst.level.toFixed(2)} m, mean draught ${worst.worst.draught.toFixed(2)} m`,
    lowestGmMetres: lowest.gm,
    atLevel: lowest.level,
    sinks,
    ...(sinks && isGone ? { sinkMinutes: run.seconds / 60 } : {}),
    stages: stagesOf(ship, run, sharing, likely),
    atTheEnd: { outcome: run.outcome, listDegrees: at(run.history, run.history.length - 1).heel },
    mayRollOver:
      judged.verdict === 'may roll over' || cases.some(({ standing }) => standing === 'may roll over'),
    sizing: filled(sizing, ship, run),
    missingInputs: missingInputs(input),
    ...settlement(input, judged),
    ...crossingOf(input, run),
    ...choicesOf(input, judged),
    whatIfs: whatIfs(input, sizing, likely),
    site: siteOf(input, run),
    yardsticks: yardsticks(ship, likely),
    afterDeckEdge: afterDeckEdge(ship, likely, run),
    findings: [
      ...faults,
      ...evidence.findings,
      ...(ship.spaces.length === 0 ? [nothingFloods()] : []),
      ...spaceFindings(ship, run, likely),
    ],
    caution: CAUTION,
    cannotSee: CANNOT_SEE,
  };
}
